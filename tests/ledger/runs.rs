//! Runs, jobs, standing empties and the history.

use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::run::{Contents, Left, Place, RunEvent};
use panward::domain::ids::JobId;
use panward::domain::ledger::history;
use panward::domain::procedure::StepId;

use crate::given::*;

#[test]
fn clean_runs_are_counted_for_who_did_all_of_them_without_trouble() {
    let mut log = Log::filled();
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    log.run(2, FISH, SHARED, BEN, at(1, 22));
    assert_eq!([ANN, BEN].map(|p| log.ledger().clean_runs(p)), [1, 1]);
    let mut trouble = run(3, FISH, SHARED);
    trouble.event = RunEvent::Fault;
    log.say(at(2, 22), Fact::Run(Box::new(trouble)));
    log.run(3, FISH, SHARED, ANN, at(2, 22));
    assert_eq!(log.ledger().clean_runs(ANN), 1);
    assert!(log.ledger().open_runs().next().is_none());
}

/// A machine put away ready is known by whose hands did it; one left wet, by nobody's.
#[test]
fn a_machine_is_left_ready_by_who_put_it_away_last() {
    let mut log = Log::filled();
    let mut put_away = |n: i64, who, how| {
        let job = JobId(n as u128);
        let mut opened = JobFact::new(job, JobKind::Filter, JobEvent::Opened);
        opened.machine = Some(SHARED);
        let mut left = JobFact::new(job, JobKind::Filter, JobEvent::Answered);
        (left.step, left.evidence) = (Some(StepId::AwayMachine), Evidence::new().with(Item::Machine, how));
        let ended = JobFact::new(job, JobKind::Filter, JobEvent::Ended);
        for (fact, hour) in [(opened, 21), (left, 22), (ended, 23)] {
            log.say_as(who, at(n, hour), Fact::Job(Box::new(fact)));
        }
        [SHARED, KIT].map(|machine| log.ledger().left_ready_by(machine))
    };
    assert_eq!(put_away(1, ANN, Word::Ready), [Some(ANN), None]);
    assert_eq!(put_away(2, BEN, Word::NeedsDrying), [None, None]);
    assert_eq!(put_away(3, BEN, Word::Ready), [Some(BEN), None]);
}

#[test]
fn a_pan_stands_empty_from_the_first_oil_out_to_its_return() {
    let mut log = Log::filled();
    let mut out = run(1, FISH, SHARED);
    for (place, contents, empty) in [
        (Place::InPan, Contents::Oil, false),
        (Place::Split, Contents::Oil, true),
        (Place::InMachine, Contents::EmptyWet, true),
        (Place::InPan, Contents::EmptyDry, true),
        (Place::InPan, Contents::Oil, false),
        (Place::Gone, Contents::EmptyDry, true),
    ] {
        (out.place, out.contents) = (place, contents);
        log.say(at(0, 22), Fact::Run(Box::new(out.clone())));
        assert_eq!(log.ledger().empties() == [FISH], empty, "{place:?} {contents:?}");
    }
    (out.event, out.left) = (RunEvent::Ended, Some(Left::OilOut));
    log.say(at(0, 23), Fact::Run(Box::new(out)));
    assert_eq!(log.ledger().last_filtered(FISH), None);
    log.say_late(at(0, 9), at(1, 8), fill(FISH, 40));
    assert_eq!(
        log.ledger().empties(),
        [FISH],
        "a fill of the morning before says nothing about the pan now"
    );
    log.say(at(1, 9), fill(FISH, 40));
    assert!(log.ledger().empties().is_empty());
}

#[test]
fn evidence_is_remarked_upon_and_never_corrected() {
    let mut log = Log::filled();
    let mut out = run(1, FISH, SHARED);
    out.place = Place::InMachine;
    let id = log.say(at(0, 22), Fact::Run(Box::new(out)));
    let remark = log.say(at(0, 23), void(id));
    let ledger = log.ledger();
    assert_eq!(ledger.empties(), [FISH]);
    assert!(!ledger.line(id).unwrap().is_void());
    assert_eq!(ledger.line(id).unwrap().corrections(), [remark]);
}

#[test]
fn a_lock_up_left_open_owes_a_look() {
    let mut log = Log::filled();
    let mut say = |event, hour| {
        let mut fact = JobFact::new(JobId(7), JobKind::LockUp, event);
        fact.next_look = (event == JobEvent::LeftOpen).then_some(at(1, 0));
        log.say(at(0, hour), Fact::Job(Box::new(fact)));
        let ledger = log.ledger();
        let due = ledger.looks_owed().next().map(|job| job.owed.unwrap().due);
        (ledger.open_job(JobKind::LockUp), due)
    };
    assert_eq!(say(JobEvent::Opened, 22), (Some(JobId(7)), None));
    assert_eq!(say(JobEvent::LeftOpen, 23), (None, Some(Some(at(1, 0)))));
    assert_eq!(say(JobEvent::Looked, 24), (Some(JobId(7)), None));
    assert_eq!(say(JobEvent::Ended, 25), (None, None));
}

#[test]
fn the_history_shows_what_was_written_beside_what_stands() {
    let mut log = Log::filled();
    let worked = log.say(at(0, 20), service(FISH, 300));
    let added = log.say_late(at(0, 19), at(1, 9), top_up(FISH, 2));
    log.say(at(1, 10), says(worked, service(FISH, 200)));
    log.say(at(1, 10), void(added));
    let ledger = log.ledger();
    let lines: Vec<_> = history(&ledger, Some(FISH)).collect();
    assert_eq!(lines[0].id, worked);
    assert_eq!(*lines[0].fact, service(FISH, 200));
    assert_eq!(lines[0].was.unwrap().fact, service(FISH, 300));
    assert!(lines[1].void && lines[1].late && *lines[1].fact == top_up(FISH, 2));
    assert!(lines.iter().all(|line| *line.fact != fill(CHIPS, 30)));
    assert_eq!(
        history(&ledger, None).count(),
        log.entries.len() - 2,
        "corrections stand on the lines they correct"
    );
}

#[test]
fn a_pan_seen_below_the_mark_is_low_until_it_is_seen_above_or_oil_goes_in() {
    let seen = |word| {
        let mut fact = run(1, FISH, SHARED);
        fact.evidence = Evidence::new().with(Item::Level, word);
        Fact::Run(Box::new(fact))
    };
    let lit = |word| {
        let mut fact = JobFact::new(JobId(8), JobKind::LightUp, JobEvent::Answered);
        fact.pan = Some(FISH);
        fact.evidence = Evidence::new().with(Item::Level, word);
        Fact::Job(Box::new(fact))
    };
    let mut log = Log::filled();
    let mut low = |at, fact| {
        log.say(at, fact);
        (log.ledger().is_low(FISH), log.ledger().is_low(CHIPS))
    };
    assert_eq!(low(at(0, 22), seen(Word::Below)), (true, false));
    assert_eq!(low(at(0, 23), seen(Word::Enough)), (false, false));
    assert_eq!(low(at(1, 9), lit(Word::Below)), (true, false));
    assert_eq!(
        low(at(1, 8), top_up(FISH, 3)),
        (true, false),
        "that oil was in it when it was seen"
    );
    assert_eq!(low(at(1, 10), top_up(FISH, 3)), (false, false));
    assert_eq!(low(at(2, 9), lit(Word::Below)), (true, false));
    assert_eq!(low(at(2, 10), lit(Word::JustAbove)), (false, false));
}
