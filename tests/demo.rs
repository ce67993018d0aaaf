//! The demo as it is played: every entry by a real command, every run through the guide.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::{Played, WEEKS, play};
use panward::domain::entry::Entry;
use panward::domain::evidence::Item;
use panward::domain::facts::Fact;
use panward::domain::facts::job::{Grade, JobKind};
use panward::domain::facts::oil::Measured;
use panward::domain::facts::run::Form;
use panward::domain::ledger::{Ledger, Word};
use panward::domain::time::{Day, Millis};
use panward::kitchen::today;
use panward::store::{Journal, MemoryJournal};

/// Nothing in a memory journal waits: one poll is enough.
fn ready<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

/// Tuesday 24 November 2026 and the days after it.
fn day(n: i64) -> Day {
    Day::of(Millis(1_795_521_600_000), 0, 0).plus(n)
}

fn played(seed: u64, today: Day) -> Played {
    ready(play(seed, today, |_| 0)).unwrap()
}

fn entries(played: &Played) -> Vec<Entry> {
    played.records.iter().map(|r| r.entry().clone()).collect()
}

#[test]
fn one_seed_and_day_make_one_log() {
    assert_eq!(played(7, day(0)), played(7, day(0)));
    assert_ne!(played(7, day(0)), played(8, day(0)));
}

#[test]
fn it_ends_on_the_last_trading_day_whatever_today_is() {
    for n in 0..7 {
        let log = entries(&played(1, day(n)));
        let last = log.last().unwrap();
        let back = if day(n).weekday_index() == 1 { 2 } else { 1 };
        assert_eq!(last.day(300), day(n).plus(-back));
    }
}

#[test]
fn the_log_holds_what_there_is_to_look_round_in() {
    let played = played(3, day(0));
    let log = entries(&played);
    let ledger = Ledger::replay(&log);
    assert!(ledger.empties().is_empty(), "no pan stands empty");
    assert!(JobKind::ALL.iter().all(|kind| ledger.open_job(*kind).is_none()));

    let count = |test: &dyn Fn(&Fact) -> bool| log.iter().filter(|e| test(&e.fact)).count();
    let readings = count(&|f| matches!(f, Fact::Reading(r) if matches!(r.value, Measured::Polar(_))));
    assert!(readings >= 3, "{readings} readings");
    assert!(count(&|f| matches!(f, Fact::OilChange(_))) >= 1);
    assert_eq!(count(&|f| matches!(f, Fact::RunNoted(n) if n.how == Grade::NotDone)), 4);
    assert_eq!(
        count(&|f| matches!(f, Fact::RunNoted(n) if n.how == Grade::Unguided)),
        1
    );

    // 29 nights of four pans, one pan of them without the guide.
    let ends = log.iter().filter_map(|e| match &e.fact {
        Fact::Run(run) if run.left.is_some() => Some(run),
        _ => None,
    });
    assert_eq!(ends.clone().count(), 29 * 4 - 1);
    assert!(
        ends.clone().any(|run| run.form == Form::Short),
        "friers get the short form"
    );
    assert!(ends.clone().any(|run| run.form == Form::Long));
    for run in ends {
        let seen = |item| {
            let of_run = log.iter().filter_map(|e| match &e.fact {
                Fact::Run(r) if r.run == run.run => Some(r),
                _ => None,
            });
            of_run.filter(|r| r.evidence.get(item).is_some()).count()
        };
        for item in [Item::OilTemp, Item::Knob, Item::PanInside, Item::Level, Item::Left] {
            assert!(seen(item) > 0, "a run without {}", item.key());
        }
    }
}

#[test]
fn this_morning_there_is_nothing_left_to_answer() {
    let log = entries(&played(3, day(0)));
    let ledger = Ledger::replay(&log);
    // Monday was closed; the week before is all there.
    let shown = today::of(&ledger, day(0));
    assert_eq!(shown.pans.len(), 4);
    assert_eq!(shown.unanswered, None);
    for pan in &shown.pans {
        assert!(!pan.due);
        assert!(
            pan.life.as_ref().and_then(|l| l.days_left.as_ref()).is_some(),
            "pan {}",
            pan.name
        );
        assert!(matches!(ledger.word(pan.pan, day(-2)), Word::Filtered(_)));
    }
    assert!(log.first().unwrap().day(300) <= day(1 - WEEKS * 7));
}

#[test]
fn a_journal_gives_it_back_whole() {
    let played = played(3, day(0));
    let journal = MemoryJournal::new(played.dev);
    ready(journal.append(&played.records)).unwrap();
    let loaded = ready(journal.load()).unwrap();
    assert_eq!(loaded.unreadable, Vec::new());
    assert_eq!(loaded.records, played.records);
}
