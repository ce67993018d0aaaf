//! The demo kitchen: the same from the same seed, and a log its own quick entries would have let through.

use panward::demo::demo_drafts;
use panward::domain::entry::Entry;
use panward::domain::ids::{Dev, EntryId};
use panward::domain::ledger::{Ledger, Word, check_at};

use crate::given::day;

#[test]
fn one_seed_makes_one_kitchen() {
    let make = |seed| demo_drafts(seed, day(0), |_| 0);
    assert_eq!(make(7), make(7));
    assert_ne!(make(7), make(8));
}

#[test]
fn five_weeks_end_with_the_last_trading_day_whatever_today_is() {
    for n in 0..7 {
        let today = day(n);
        let demo = demo_drafts(1, today, |_| 60);
        let last = demo.drafts.iter().map(|d| d.at).max().unwrap();
        let mut ledger = Ledger::default();
        for (i, d) in demo.drafts.iter().enumerate() {
            let seq = i as u32 + 1;
            assert_eq!(check_at(&ledger, &d.draft.fact, d.at, d.at), Ok(()));
            let (id, who, fact) = (EntryId(i as u128), d.draft.who, d.draft.fact.clone());
            let off_min = d.off_min;
            ledger.push(Entry {
                id,
                dev: Dev(1),
                seq,
                at: d.at,
                rec: d.at,
                clk: None,
                off_min,
                who,
                fact,
            });
        }
        let end = ledger.book.day_of(last, 60);
        let back = if n == 1 { 2 } else { 1 };
        assert_eq!(end, today.plus(-back), "Mondays are closed");
        for pan in ledger.book.pans_in_use() {
            assert!(ledger.loose(pan.pan).is_empty());
            assert_eq!(ledger.fills(pan.pan).len(), 3);
            assert!(ledger.fill(pan.pan).unwrap().last_reading().is_some());
        }
        let without_word = |d| ledger.unanswered_pans(d).len();
        let missed = demo
            .nights
            .iter()
            .map(|n| n.day)
            .collect::<std::collections::BTreeSet<_>>();
        assert_eq!(missed.len(), 29, "thirty trading days, one of them missed");
        let [one, _, three, _] = demo.cast.pans;
        let silent = (0..35)
            .map(|n| end.plus(-n))
            .filter(|d| ledger.word(one, *d) == Word::NotDone);
        assert_eq!(silent.map(without_word).collect::<Vec<_>>(), [0]);
        let unguided = (0..35_i64).filter(|n| matches!(ledger.word(three, end.plus(-n)), Word::Filtered(_)));
        assert_eq!(unguided.count(), 1);
    }
}
