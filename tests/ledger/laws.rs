//! Laws: order of arrival, one by one or at once, twice or once, the ledger is the same to the bit.

use proptest::prelude::*;

use panward::domain::facts::Fact;
use panward::domain::facts::job::Grade;
use panward::domain::ids::{Dev, EntryId};
use panward::domain::ledger::Ledger;

use crate::given::*;

fn fact(pick: u8, n: u32, of: u128) -> Fact {
    let pan = if n.is_multiple_of(2) { FISH } else { CHIPS };
    let machine = if n.is_multiple_of(3) { SHARED } else { KIT };
    match pick % 13 {
        0 => fill(pan, 1 + n % 40),
        1 => change(pan),
        2 => top_up(pan, 1 + n % 9),
        3 => service(pan, (n % 400) as u16),
        4 => Fact::Reading(polar(pan, 500 + (n % 2000) as u16)),
        5 => Fact::Move(carried(FISH, CHIPS, 1 + n % 5)),
        6 => noted(pan, n.is_multiple_of(2).then_some(machine), Grade::Unguided),
        7 => cleaned(machine),
        8 => Fact::Run(Box::new(run(u128::from(n % 4), pan, machine))),
        9 => void(EntryId(of)),
        10 => moved_to(EntryId(of), at(i64::from(n % 9), 12)),
        11 => says(EntryId(of), top_up(pan, 7)),
        _ => Fact::Pan(Box::new({
            let mut pan = pan_of(pan);
            pan.full = litres(20 + n % 20).volume;
            pan
        })),
    }
}

fn pan_of(id: panward::domain::ids::PanId) -> panward::domain::facts::setup::Pan {
    pan(id, "x", panward::domain::claim::Exposures::NONE, Vec::new())
}

prop_compose! {
    fn log()(rows in prop::collection::vec((any::<u8>(), 0u32..1000, 1u128..60, 0i64..200, 0i64..40, 1u64..3), 1..50)) -> Log {
        let mut log = Log::filled();
        for (pick, n, of, hour, back, dev) in rows {
            let rec = at(0, 10 + hour);
            let happened = rec.plus(-back * 3_600_000);
            log.say_late(happened, rec, fact(pick, n, of));
            log.entries.last_mut().unwrap().dev = Dev(dev);
        }
        log
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn arrival_order_changes_nothing((log, seed) in (log(), any::<u64>())) {
        let whole = log.ledger();
        let mut shuffled = log.entries.clone();
        let mut state = seed;
        for i in (1..shuffled.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            shuffled.swap(i, (state >> 33) as usize % (i + 1));
        }
        prop_assert_eq!(&Ledger::replay(&shuffled), &whole);
        let mut one_by_one = Ledger::default();
        for entry in shuffled.iter().chain(&log.entries) {
            one_by_one.push(entry.clone());
        }
        prop_assert_eq!(&one_by_one, &whole);
    }

    #[test]
    fn pushing_in_order_is_replaying(log in log()) {
        let mut ledger = Ledger::default();
        for entry in &log.entries {
            ledger.push(entry.clone());
        }
        prop_assert_eq!(ledger, log.ledger());
    }

    #[test]
    fn every_entry_is_kept(log in log()) {
        let ledger = log.ledger();
        prop_assert_eq!(ledger.lines().len(), log.entries.len());
        for entry in &log.entries {
            prop_assert_eq!(ledger.line(entry.id).unwrap().written(), entry);
        }
    }
}
