//! No sequence of accepted commands lets a pan with a standing claim meet what that excludes; a stored entry that says
//! otherwise is heard, and the claim is broken by it.

use proptest::prelude::*;

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Age, ClaimChange, Fill, PartChange, TopUp, Vessel};
use panward::domain::facts::run::{Left, Place, RunEvent, RunFact};
use panward::domain::facts::setup::Claim;
use panward::domain::fat::Fat;
use panward::domain::ledger::{Ledger, meets};
use panward::domain::quick::{Doubt, Quick, QuickRefusal, Said, drafts};
use panward::domain::time::Millis;

use crate::given::*;

fn promising() -> Log {
    let mut log = Log::kitchen();
    let claim = |what| Claim {
        what,
        from: day(0),
        basis: String::new(),
        until: None,
    };
    let claims = ClaimKind::ALL.iter().copied().map(claim).collect();
    log.say(at(0, 8), Fact::Pan(Box::new(pan(CHIPS, "2", Exposures::NONE, claims))));
    log
}

fn said(pick: u8, chips: bool, n: u32) -> Option<Quick> {
    let (pan, other) = if chips { (CHIPS, FISH) } else { (FISH, CHIPS) };
    let fats = [
        Fat::Rapeseed,
        Fat::Sunflower,
        Fat::Dripping,
        Fat::Lard,
        Fat::Groundnut,
        Fat::Blend,
    ];
    let fat = fats[n as usize % fats.len()];
    let machine = Vessel::Machine(if n.is_multiple_of(2) { SHARED } else { KIT });
    let amount = litres(1 + n % 20);
    let (batch, age) = (None, Age::Fresh);
    let Fact::OilChange(out) = change(pan) else { return None };
    Some(match pick % 10 {
        0 => Quick::Fill(Fill {
            pan,
            fat,
            amount,
            batch,
            age,
        }),
        1 => Quick::TopUp(TopUp {
            pan,
            fat,
            amount: litres(1),
            batch,
        }),
        2 => Quick::PartChange(PartChange {
            pan,
            out: amount,
            fresh: amount,
        }),
        3 => Quick::Move(moved(Vessel::Pan(pan), Vessel::Pan(other), 1 + n % 9)),
        4 | 5 => Quick::Move(moved(Vessel::Pan(pan), machine, 1 + n % 9)),
        6 | 7 => Quick::Move(moved(machine, Vessel::Pan(pan), 1 + n % 9)),
        8 if n.is_multiple_of(4) => Quick::OilChange { out, fill: None },
        9 if n.is_multiple_of(5) => Quick::ClaimLost(ClaimChange {
            pan: CHIPS,
            what: ClaimKind::ALL[n as usize % 3],
            why: "a slip".into(),
            basis: None,
        }),
        _ => return None,
    })
}

/// Whether the guide's hold 6 lets a pan's oil through a machine, and hold 5 finds that empty.
fn may_run(ledger: &Ledger, pan: panward::domain::ids::PanId, machine: panward::domain::ids::MachineId) -> bool {
    let met = ledger.machine_exposures(machine);
    let standing = ledger.claims_standing(pan, day(0));
    ledger.fill(pan).is_some() && ledger.tank(machine).is_empty() && standing.iter().all(|c| meets(c, met).is_none())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_standing_claim_never_meets_what_it_excludes(
        rows in prop::collection::vec((0_u8..13, any::<bool>(), 0_u32..200), 1..40),
    ) {
        let mut log = promising();
        let mut accepted = 0;
        let mut promised = ClaimKind::ALL.to_vec();
        for (n, (pick, chips, m)) in rows.into_iter().enumerate() {
            let when = at(0, 9).plus(n as i64 * Millis::MINUTE);
            let ledger = log.ledger();
            if pick > 10 {
                let pan = if chips { CHIPS } else { FISH };
                let machine = if m % 2 == 0 { SHARED } else { KIT };
                if may_run(&ledger, pan, machine) {
                    log.run(n as u128 + 1, pan, machine, ANN, when);
                }
            } else if let Some(what) = said(pick, chips, m) {
                let said = Said { what, who: None, at: None, sure: true };
                for draft in drafts(&ledger, said, now(when)).unwrap_or_default() {
                    accepted += 1;
                    if let Fact::ClaimLost(lost) = &draft.fact {
                        promised.retain(|what| *what != lost.what);
                    }
                    log.say(when, draft.fact);
                }
            }
            let ledger = log.ledger();
            // A claim that its oil meets what it excludes stops standing by itself.
            let standing: Vec<ClaimKind> = ledger.claims_standing(CHIPS, day(0)).iter().map(|c| c.what).collect();
            prop_assert_eq!(standing, promised.clone(), "after {} accepted", accepted);
        }
    }
}

#[test]
fn what_stood_in_a_machine_is_not_moved_onto_a_claim_it_meets() {
    let mut log = Log::filled();
    log.say(at(0, 21), change(CHIPS));
    let asked = |log: &Log, what| {
        let said = Said {
            what: Quick::Move(what),
            who: None,
            at: None,
            sure: false,
        };
        drafts(&log.ledger(), said, now(at(0, 23)))
    };
    let (claim, exposure) = (ClaimKind::GlutenFree, Exposure::Gluten);
    let machine = Vessel::Machine(SHARED);
    log.say(at(0, 21), parked(FISH, SHARED, 20));
    let refusal = QuickRefusal::MoveMeets {
        pan: CHIPS,
        claim,
        exposure,
        from: machine,
    };
    assert_eq!(asked(&log, moved(machine, Vessel::Pan(CHIPS), 20)), Err(refusal));
    assert!(asked(&log, moved(machine, Vessel::Pan(FISH), 20)).is_ok());
    // Its own oil would not come back clean: asked before it goes in.
    let mut own = Log::filled();
    own.run(1, FISH, SHARED, ANN, at(0, 20));
    let doubt = QuickRefusal::Doubt(Doubt::CannotGoBack { claim, exposure });
    assert_eq!(asked(&own, moved(Vessel::Pan(CHIPS), machine, 20)), Err(doubt));
    // Stored all the same, by another app or by hand: heard, and broken.
    log.say(at(0, 22), brought(SHARED, CHIPS, 20));
    assert!(log.ledger().claims_standing(CHIPS, day(0)).is_empty());
}

#[test]
fn the_fresh_fat_of_a_part_change_is_the_pans_own() {
    let mut log = Log::kitchen();
    let groundnut = panward::domain::facts::setup::Pan {
        fat: Fat::Groundnut,
        ..pan(FISH, "10", Exposures::NONE, Vec::new())
    };
    log.say(at(0, 8), Fact::Pan(Box::new(groundnut)));
    log.say(at(0, 9), fill(FISH, 40));
    log.say(at(0, 9), fill(CHIPS, 20));
    log.say(
        at(1, 9),
        Fact::PartChange(PartChange {
            pan: FISH,
            out: litres(5),
            fresh: litres(5),
        }),
    );
    log.say(at(1, 10), Fact::Move(carried(FISH, CHIPS, 5)));
    assert!(log.ledger().pan_exposures(CHIPS).has(Exposure::Peanut));
}

#[test]
fn two_oils_share_a_tank_only_where_fat_claims_and_room_agree() {
    let asked = |log: &Log, what| {
        let said = Said {
            what: Quick::Move(what),
            who: None,
            at: None,
            sure: true,
        };
        drafts(&log.ledger(), said, now(at(1, 9))).map(|_| ())
    };
    let tank = Vessel::Machine(SHARED);
    let (machine, chips) = (SHARED, Vessel::Pan(CHIPS));
    let mut log = Log::filled();
    log.say(at(0, 22), parked(FISH, SHARED, 10));
    assert_eq!(
        asked(&log, moved(chips, tank, 5)),
        Err(QuickRefusal::OtherClaimsIn { machine, pan: FISH })
    );
    let plain = |log: &mut Log| {
        let plain = pan(CHIPS, "2", Exposures::NONE, Vec::new());
        log.say(at(0, 8), Fact::Pan(Box::new(plain)))
    };
    plain(&mut log);
    assert_eq!(asked(&log, moved(chips, tank, 5)), Ok(()));
    // 60 litres less a tenth is 54; the top of the window, 180 °C, needs 1.14 litres for each (project's own edge).
    let mut full = Log::filled();
    plain(&mut full);
    full.say(at(0, 22), parked(FISH, SHARED, 40));
    assert_eq!(asked(&full, moved(chips, tank, 7)), Ok(()), "47 litres are 53.58 hot");
    let small = QuickRefusal::TankTooSmall {
        machine,
        needs_ml: 54_720,
        has_ml: 54_000,
    };
    assert_eq!(asked(&full, moved(chips, tank, 8)), Err(small));
    let mut other = Log::filled();
    plain(&mut other);
    other.say(at(0, 21), change(CHIPS));
    let Fact::Fill(mut lard) = fill(CHIPS, 20) else {
        panic!()
    };
    lard.fat = Fat::Lard;
    other.say(at(0, 21), Fact::Fill(lard));
    other.say(at(0, 22), parked(FISH, SHARED, 10));
    let refusal = QuickRefusal::OtherFatIn {
        machine,
        fat: Fat::Rapeseed,
    };
    assert_eq!(asked(&other, moved(chips, tank, 5)), Err(refusal));
}

#[test]
fn oil_is_not_moved_where_none_is_or_no_room_is_or_a_run_has_the_machine() {
    let asked = |log: &Log, sure, what| {
        let said = Said {
            what: Quick::Move(what),
            who: None,
            at: None,
            sure,
        };
        drafts(&log.ledger(), said, now(at(0, 23))).map(|_| ())
    };
    let (tank, fish, chips) = (Vessel::Machine(SHARED), Vessel::Pan(FISH), Vessel::Pan(CHIPS));
    let machine = SHARED;
    let log = Log::filled();
    assert_eq!(
        asked(&log, true, moved(tank, fish, 5)),
        Err(QuickRefusal::NoOilIn { machine })
    );
    let has = litres(30).volume;
    assert_eq!(
        asked(&log, true, moved(chips, tank, 31)),
        Err(QuickRefusal::MoreThanThere { from: chips, has })
    );
    let room = litres(0).volume;
    let full = QuickRefusal::NoRoom { pan: FISH, room };
    assert_eq!(
        asked(&log, true, moved(chips, fish, 1)),
        Err(full),
        "filled to the brim today"
    );
    let mut fried = log.clone();
    fried.say(at(0, 22), service(FISH, 300));
    assert_eq!(
        asked(&fried, true, moved(chips, fish, 1)),
        Ok(()),
        "some left with the food"
    );
    assert_eq!(
        asked(&log, true, moved(tank, Vessel::Machine(KIT), 1)),
        Err(QuickRefusal::NoOilIn { machine })
    );
    let mut open = log.clone();
    let out = RunFact {
        place: Place::InMachine,
        ..run(1, FISH, SHARED)
    };
    open.say(at(0, 22), Fact::Run(Box::new(out.clone())));
    let refusal = QuickRefusal::MachineInRun { machine, pan: FISH };
    assert_eq!(asked(&open, true, moved(tank, fish, 40)), Err(refusal));
    let left = RunFact {
        event: RunEvent::Ended,
        left: Some(Left::OilOut),
        ..out
    };
    open.say(at(0, 22), Fact::Run(Box::new(left)));
    assert_eq!(asked(&open, true, moved(tank, fish, 40)), Ok(()));
    // Dripping sets in the machine: melt before use.
    let mut solid = log;
    solid.say(at(0, 10), change(FISH));
    let Fact::Fill(mut dripping) = fill(FISH, 20) else {
        panic!()
    };
    dripping.fat = Fat::Dripping;
    let kept = panward::domain::facts::setup::Pan {
        fat: Fat::Dripping,
        ..pan(FISH, "10", Exposures::NONE, Vec::new())
    };
    solid.say(at(0, 10), Fact::Pan(Box::new(kept)));
    solid.say(at(0, 10), Fact::Fill(dripping));
    solid.say(at(0, 22), parked(FISH, SHARED, 20));
    let melted = QuickRefusal::Doubt(Doubt::Melted { fat: Fat::Dripping });
    assert_eq!(asked(&solid, false, moved(tank, fish, 20)), Err(melted));
    assert_eq!(asked(&solid, true, moved(tank, fish, 20)), Ok(()));
}
