//! The stamp under clocks that jump: numbers without gaps, times of writing that never run back, doubts that are put.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::domain::entry::{Draft, Entry};
use panward::domain::evidence::Evidence;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::{Fact, oil};
use panward::domain::ids::{Dev, JobId};
use panward::domain::time::Millis;
use panward::store::stamp::{ClockDoubt, Moment, Stamp, Trust, Unstamped};
use panward::store::{Loaded, Record};
use proptest::prelude::*;

const DEV: Dev = Dev(7);
const NOON: Millis = Millis(1_780_000_000_000);

fn note() -> Draft {
    Draft::now(
        None,
        Fact::Note(oil::Note {
            pan: None,
            text: "n".into(),
        }),
    )
}

fn job(event: JobEvent) -> Fact {
    let mut job = JobFact::new(JobId(1), JobKind::LockUp, event);
    job.how = Some(Grade::NotDone);
    job.evidence = Evidence::new();
    Fact::Job(Box::new(job))
}

fn stamp_at(stamp: &Stamp, wall: Millis, trust: Trust, drafts: Vec<Draft>) -> Result<Vec<Entry>, Unstamped> {
    let mut byte = 0;
    let mut random = || {
        byte += 1;
        [byte; 10]
    };
    stamp.stamp(
        drafts,
        &mut Moment {
            wall,
            trust,
            off_min: &|_| 60,
            random: &mut random,
        },
    )
}

/// A stamp whose last entry was written at noon.
fn after_noon() -> Stamp {
    let mut stamp = Stamp::after(DEV, &Loaded::default());
    let first = stamp_at(&stamp, NOON, Trust::Ask, vec![note()]).expect("an empty log doubts no clock");
    stamp.wrote(&first);
    stamp
}

#[test]
fn one_decision_shares_its_time_and_counts_on() {
    let stamp = after_noon();
    let entries = stamp_at(&stamp, NOON.plus(10), Trust::Ask, vec![note(), note()]).unwrap();
    let said: Vec<_> = entries.iter().map(|e| (e.seq, e.rec, e.at, e.clk, e.off_min)).collect();
    let rec = NOON.plus(10);
    assert_eq!(said, [(2, rec, rec, None, 60), (3, rec, rec, None, 60)]);
    assert_ne!(entries[0].id, entries[1].id);
    for entry in entries {
        Record::of(entry).expect("what is stamped can be written");
    }
}

#[test]
fn what_was_refused_takes_no_number() {
    let stamp = after_noon();
    let lost = stamp_at(&stamp, NOON.plus(10), Trust::Ask, vec![note()]).unwrap();
    let again = stamp_at(&stamp, NOON.plus(20), Trust::Ask, vec![note()]).unwrap();
    assert_eq!((lost[0].seq, again[0].seq), (2, 2));
}

#[test]
fn an_id_tells_the_time_of_writing() {
    // RFC 9562, section 5.7: the first 48 bits are the Unix time in milliseconds.
    let entry = &stamp_at(&after_noon(), NOON.plus(10), Trust::Ask, vec![note()]).unwrap()[0];
    assert_eq!(entry.id.0 >> 80, 1_780_000_000_010);
}

#[test]
fn a_clock_is_doubted_behind_the_log_and_a_day_ahead_of_it() {
    let stamp = after_noon();
    let behind = |wall| ClockDoubt::Behind { last: NOON, wall };
    let ahead = |wall| ClockDoubt::FarAhead { last: NOON, wall };
    for (ms, doubt) in [
        (-5_001, Some(behind as fn(Millis) -> ClockDoubt)),
        (-5_000, None),
        (0, None),
        (24 * Millis::HOUR, None),
        (24 * Millis::HOUR + 1, Some(ahead as fn(Millis) -> ClockDoubt)),
    ] {
        let wall = NOON.plus(ms);
        let doubt = doubt.map(|of| of(wall));
        assert_eq!(stamp.doubt(wall), doubt, "{ms}");
        let written = stamp_at(&stamp, wall, Trust::Ask, vec![note()]);
        assert_eq!(written.err(), doubt.map(Unstamped::Clock), "{ms}");
    }
}

#[test]
fn a_clock_behind_is_written_right_after_the_last_and_marked() {
    let wall = NOON.plus(-Millis::HOUR);
    for trust in [Trust::Confirmed, Trust::RunOpen] {
        let entry = &stamp_at(&after_noon(), wall, trust, vec![note()]).unwrap()[0];
        assert_eq!(
            (entry.rec, entry.at, entry.clk),
            (NOON.plus(1), NOON.plus(1), Some(wall))
        );
    }
}

#[test]
fn a_leap_ahead_is_believed_when_confirmed_and_only_marked_during_a_run() {
    let wall = NOON.plus(400 * 24 * Millis::HOUR);
    let confirmed = &stamp_at(&after_noon(), wall, Trust::Confirmed, vec![note()]).unwrap()[0];
    assert_eq!((confirmed.rec, confirmed.clk), (wall, None));
    let in_a_run = &stamp_at(&after_noon(), wall, Trust::RunOpen, vec![note()]).unwrap()[0];
    assert_eq!((in_a_run.rec, in_a_run.clk), (NOON.plus(1), Some(wall)));
}

#[test]
fn two_minutes_ahead_is_the_most() {
    let draft = |ms| Draft {
        at: Some(NOON.plus(ms)),
        ..note()
    };
    let stamped = |ms| stamp_at(&after_noon(), NOON, Trust::Ask, vec![draft(ms)]);
    assert_eq!(stamped(120_000).unwrap()[0].at, NOON.plus(120_000));
    assert_eq!(
        stamped(120_001),
        Err(Unstamped::Future {
            at: NOON.plus(120_001),
            rec: NOON
        })
    );
    assert_eq!(
        stamped(-90 * 24 * Millis::HOUR).unwrap()[0].at,
        NOON.plus(-90 * 24 * Millis::HOUR)
    );
}

#[test]
fn evidence_is_never_dated_but_a_job_noted_later_is() {
    let dated = |fact| {
        vec![Draft {
            at: Some(NOON.plus(-Millis::HOUR)),
            who: None,
            fact,
        }]
    };
    let refused = stamp_at(&after_noon(), NOON, Trust::Ask, dated(job(JobEvent::Proved)));
    assert_eq!(refused, Err(Unstamped::DatedEvidence));
    let noted = stamp_at(&after_noon(), NOON, Trust::Ask, dated(job(JobEvent::Noted))).unwrap();
    assert_eq!(noted[0].at, NOON.plus(-Millis::HOUR));
}

#[test]
fn the_zone_is_asked_for_the_moment_it_happened() {
    let summer = NOON.plus(-Millis::HOUR);
    let off = |at: Millis| if at < NOON { 60 } else { 0 };
    let mut random = || [0; 10];
    let mut moment = Moment {
        wall: NOON.plus(1),
        trust: Trust::Ask,
        off_min: &off,
        random: &mut random,
    };
    let drafts = vec![
        Draft {
            at: Some(summer),
            ..note()
        },
        note(),
    ];
    let entries = after_noon().stamp(drafts, &mut moment).unwrap();
    assert_eq!((entries[0].off_min, entries[1].off_min), (60, 0));
}

#[test]
fn writing_follows_what_came_from_another_store() {
    let theirs = stamp_at(
        &Stamp::after(Dev(1), &Loaded::default()),
        NOON,
        Trust::Ask,
        vec![note()],
    )
    .unwrap();
    let records = theirs.into_iter().map(|e| Record::of(e).unwrap()).collect();
    let stamp = Stamp::after(
        DEV,
        &Loaded {
            records,
            unreadable: vec![],
        },
    );
    let entry = &stamp_at(&stamp, NOON.plus(-1), Trust::Ask, vec![note()]).unwrap()[0];
    assert_eq!((entry.dev, entry.seq, entry.rec), (DEV, 1, NOON.plus(1)));
}

proptest! {
    #[test]
    fn time_of_writing_never_runs_back(
        clock in prop::collection::vec((-40 * Millis::HOUR..40 * Millis::HOUR, 0..3_usize, 0..4_usize), 1..40),
    ) {
        let mut stamp = Stamp::after(DEV, &Loaded::default());
        let mut wall = NOON;
        let mut log: Vec<Entry> = Vec::new();
        for (jump, trust, count) in clock {
            wall = wall.plus(jump);
            let trust = [Trust::Ask, Trust::Confirmed, Trust::RunOpen][trust];
            match stamp_at(&stamp, wall, trust, vec![note(); count]) {
                Ok(entries) => {
                    // Every departure from the clock is marked with what the clock said, and only those.
                    prop_assert!(entries.iter().all(|e| e.clk == (e.rec != wall).then_some(wall)));
                    stamp.wrote(&entries);
                    log.extend(entries);
                }
                Err(refused) => prop_assert!(trust == Trust::Ask && refused == Unstamped::Clock(stamp.doubt(wall).unwrap())),
            }
        }
        for (n, entry) in (1..).zip(&log) {
            prop_assert_eq!(entry.seq, n);
        }
        for pair in log.windows(2) {
            prop_assert!(pair[0].rec <= pair[1].rec);
            prop_assert!(pair[0].cause() < pair[1].cause());
        }
    }
}
