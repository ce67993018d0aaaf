//! Day sheets: due, unanswered, in a row.

use std::num::NonZeroU16;

use panward::domain::claim::Exposures;
use panward::domain::facts::Fact;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::rhythm::Rhythm;
use panward::domain::facts::run::Heat;
use panward::domain::ids::JobId;
use panward::domain::ledger::{Filtered, Word};

use crate::given::*;

#[test]
fn a_pan_used_and_not_filtered_is_due() {
    let mut log = Log::filled();
    assert!(log.ledger().due(day(0)).is_empty());
    log.say(at(0, 20), service(FISH, 300));
    log.say(at(0, 20), service(CHIPS, 0));
    assert_eq!(log.ledger().due(day(0)), [FISH]);
    assert_eq!(log.ledger().word(CHIPS, day(0)), Word::NotUsed);
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    assert!(log.ledger().due(day(0)).is_empty());
}

#[test]
fn a_lit_pan_is_due_until_somebody_says_nothing_was_fried() {
    let mut log = Log::filled();
    let mut lit = JobFact::new(JobId(1), JobKind::LightUp, JobEvent::Answered);
    lit.pan = Some(FISH);
    lit.heat = Some(Heat::On);
    log.say(at(0, 10), Fact::Job(Box::new(lit)));
    assert_eq!(log.ledger().due(day(0)), [FISH]);
    log.say(at(0, 20), service(FISH, 0));
    assert!(log.ledger().due(day(0)).is_empty());
}

#[test]
fn a_run_past_midnight_belongs_to_the_evening() {
    let mut log = Log::filled();
    log.say(at(0, 20), service(FISH, 300));
    log.run(1, FISH, SHARED, ANN, at(1, 1));
    assert!(matches!(
        log.ledger().word(FISH, day(0)),
        Word::Filtered(Filtered::Guided(_))
    ));
    assert_eq!(log.ledger().last_filtered(FISH).unwrap().day, day(0));
}

#[test]
fn a_rhythm_of_two_asks_every_second_day_of_use() {
    let mut log = Log::filled();
    let mut slow = pan(FISH, "10", Exposures::NONE, Vec::new());
    slow.rhythm = NonZeroU16::new(2).map(Rhythm::Days);
    log.say(at(0, 10), Fact::Pan(Box::new(slow)));
    log.say(at(0, 20), service(FISH, 300));
    log.say(at(2, 20), service(FISH, 300));
    assert!(log.ledger().due(day(0)).is_empty());
    assert_eq!(log.ledger().due(day(2)), [FISH]);
}

#[test]
fn the_morning_asks_about_every_trading_day_without_a_word() {
    let mut log = Log::filled();
    let open = |log: &Log, n| log.ledger().unanswered_nights(day(n));
    assert!(open(&log, 0).is_empty());
    assert_eq!(open(&log, 1), [day(0)]);
    log.say(at(0, 22), noted(FISH, Some(SHARED), Grade::Unguided));
    assert_eq!(log.ledger().unanswered_pans(day(0)), [CHIPS]);
    log.say_late(at(0, 23), at(1, 9), noted(CHIPS, None, Grade::NotDone));
    assert!(open(&log, 1).is_empty());
    // Day 6 is a Sunday, on which this kitchen is closed.
    assert_eq!(open(&log, 8), [1, 2, 3, 4, 5, 7].map(day));
    log.say(at(6, 20), service(FISH, 60));
    assert_eq!(open(&log, 8), [1, 2, 3, 4, 5, 6, 7].map(day), "but it was fried in");
}

#[test]
fn a_whole_job_not_done_answers_for_every_pan() {
    let mut log = Log::filled();
    let mut none = JobFact::new(JobId(1), JobKind::Filter, JobEvent::Noted);
    none.how = Some(Grade::NotDone);
    none.why = Some("no time".into());
    log.say(at(0, 22), Fact::Job(Box::new(none)));
    assert!(log.ledger().unanswered_nights(day(1)).is_empty());
    assert_eq!(
        log.ledger().not_done(FISH, day(0)).unwrap().why.as_deref(),
        Some("no time")
    );
}

#[test]
fn days_in_a_row_end_at_a_day_missed_or_silent() {
    let mut log = Log::filled();
    for n in [0, 1, 3, 4, 5, 7] {
        log.say(at(n, 20), service(FISH, 300));
        log.run(n as u128 + 1, FISH, SHARED, ANN, at(n, 22));
    }
    let streak = |log: &Log, n| log.ledger().filter_streak(FISH, day(n));
    assert_eq!(streak(&log, 1), 2);
    assert_eq!(streak(&log, 5), 3, "day 2 has no word");
    assert_eq!(streak(&log, 7), 4, "the Sunday breaks nothing");
    log.say(at(8, 20), service(FISH, 300));
    assert_eq!(streak(&log, 8), 4, "today is not over");
    log.say(at(8, 22), noted(FISH, None, Grade::NotDone));
    assert_eq!(streak(&log, 8), 0);
}
