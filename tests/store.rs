//! The journal's promise on the journal in memory, and what only that one can show: damaged lines.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod store_suite;

use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::domain::ids::Dev;
use panward::domain::time::Millis;
use panward::store::stamp::Stamp;
use panward::store::{BadEntry, Journal, MemoryJournal, StoreFault};
use store_suite::note;

const DEV: Dev = Dev(0xabc);

/// The journal in memory never waits, so one poll is enough.
fn now<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("the journal in memory waited"),
    }
}

#[test]
fn append_then_load() {
    now(store_suite::append_then_load(&MemoryJournal::new(DEV)));
}

#[test]
fn order_is_of_cause() {
    now(store_suite::order_is_of_cause(&MemoryJournal::new(DEV)));
}

#[test]
fn all_or_nothing() {
    now(store_suite::all_or_nothing(&MemoryJournal::new(DEV)));
}

#[test]
fn a_place_is_taken_once() {
    now(store_suite::a_place_is_taken_once(&MemoryJournal::new(DEV)));
}

#[test]
fn nothing_is_nothing() {
    now(store_suite::nothing_is_nothing(&MemoryJournal::new(DEV)));
}

#[test]
fn a_refused_write_leaves_nothing() {
    for fault in [StoreFault::Full, StoreFault::Closed, StoreFault::Blocked] {
        let spoil = async |journal: &MemoryJournal| {
            journal.fail(Some(fault.clone()));
            fault
        };
        let reopen = async |journal: MemoryJournal| {
            journal.fail(None);
            journal
        };
        now(store_suite::a_refused_write_leaves_nothing(
            MemoryJournal::new(DEV),
            spoil,
            reopen,
        ));
    }
}

#[test]
fn an_unreadable_line_is_kept_and_its_number_stays_taken() {
    let journal = MemoryJournal::new(DEV);
    now(journal.append(&[note(DEV, 1, 0)])).unwrap();
    journal.put_raw(DEV, 2, "{\"half an ent");
    let misplaced = note(DEV, 9, 4);
    journal.put_raw(DEV, 3, misplaced.line());

    let loaded = now(journal.load()).unwrap();

    assert_eq!(loaded.records, [note(DEV, 1, 0)]);
    let kept: Vec<_> = loaded.unreadable.iter().map(|u| (u.seq, u.line.as_str())).collect();
    assert_eq!(kept, [(2, "{\"half an ent"), (3, misplaced.line())]);
    assert!(matches!(loaded.unreadable[0].why, BadEntry::Envelope(_)));
    assert_eq!(loaded.unreadable[1].why, BadEntry::Misplaced);
    let stamp = Stamp::after(DEV, &loaded);
    let next = stamp
        .stamp(vec![draft()], &mut moment(Millis(1_780_000_000_009), &mut || [0; 10]))
        .unwrap();
    assert_eq!(next[0].seq, 4);
}

fn draft() -> panward::domain::entry::Draft {
    panward::domain::entry::Draft::now(None, note(DEV, 1, 0).into_entry().fact)
}

fn moment(wall: Millis, random: &mut dyn FnMut() -> [u8; 10]) -> panward::store::stamp::Moment<'_> {
    panward::store::stamp::Moment {
        wall,
        trust: panward::store::stamp::Trust::Ask,
        off_min: &|_| 60,
        random,
    }
}
