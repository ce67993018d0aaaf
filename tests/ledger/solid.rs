//! Solid fat as the log tells of it: what may have set in a machine's line, and fresh blocks that lie cold in a pan.

use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::oil::Fill;
use panward::domain::facts::run::{Contents, Heat};
use panward::domain::fat::Fat;
use panward::domain::ids::{JobId, PanId};
use panward::domain::ledger::Ledger;
use panward::domain::procedure::StepId;
use panward::domain::time::Millis;
use panward::domain::units::{Amount, Unit};

use crate::given::{ANN, CHIPS, FISH, Log, SHARED, at, cleaned, fill, litres, noted, top_up};

fn dripping(pan: PanId) -> Fact {
    let Fact::Fill(oil) = fill(pan, 20) else { panic!() };
    Fact::Fill(Fill {
        fat: Fat::Dripping,
        ..oil
    })
}

/// A fish pan of dripping, a chip pan of rapeseed.
fn kitchen() -> Log {
    let mut log = Log::kitchen();
    log.say(at(0, 9), dripping(FISH));
    log.say(at(0, 9), fill(CHIPS, 20));
    log
}

fn line(word: Word) -> Fact {
    let mut job = JobFact::new(JobId(7), JobKind::Filter, JobEvent::Answered);
    job.step = Some(StepId::AwayLine);
    job.machine = Some(SHARED);
    job.evidence = Evidence::new().with(Item::Line, word);
    Fact::Job(Box::new(job))
}

#[test]
fn dripping_may_have_set_in_a_line_nobody_saw_run_empty() {
    let mut log = kitchen();
    let set = |log: &Log| log.ledger().set_in_line(SHARED);
    assert!(!set(&log));
    log.run(1, FISH, SHARED, ANN, at(0, 20));
    assert!(set(&log));
    log.say(at(0, 21), line(Word::RunEmpty));
    assert!(!set(&log));
    // Said not to be run empty; run empty; then used without the guide.
    log.say(at(0, 22), line(Word::Oil));
    assert!(set(&log));
    log.say(at(0, 23), line(Word::RunEmpty));
    log.say(at(1, 20), noted(FISH, Some(SHARED), Grade::Unguided));
    assert!(set(&log));
    // Rapeseed through it, or a strip-clean, leaves nothing that sets.
    let mut rinsed = log.clone();
    rinsed.run(2, CHIPS, SHARED, ANN, at(1, 21));
    assert!(!set(&rinsed));
    log.say(at(1, 22), cleaned(SHARED));
    assert!(!set(&log));
}

fn blocks(thousandths: u32) -> Amount {
    let mut amount = litres(14);
    (amount.typed.unit, amount.typed.thousandths) = (Unit::Block, thousandths);
    amount
}

fn block_in(pan: PanId) -> Fact {
    let Fact::TopUp(mut topup) = top_up(pan, 14) else {
        panic!()
    };
    (topup.fat, topup.amount) = (Fat::Dripping, blocks(1_000));
    Fact::TopUp(topup)
}

fn lit(pan: PanId, heat: Heat, contents: Option<Contents>) -> Fact {
    let mut job = JobFact::new(JobId(8), JobKind::LightUp, JobEvent::Answered);
    (job.pan, job.heat, job.contents) = (Some(pan), Some(heat), contents);
    Fact::Job(Box::new(job))
}

#[test]
fn blocks_count_until_the_fat_is_seen_liquid_again() {
    let has = |log: &Log| log.ledger().has_blocks(FISH);
    let mut log = kitchen();
    assert!(!has(&log), "litres are no blocks");
    log.say(at(0, 10), block_in(FISH));
    assert!(has(&log) && !log.ledger().has_blocks(CHIPS));
    log.say(at(0, 11), lit(FISH, Heat::Low, Some(Contents::SetFat)));
    assert!(has(&log), "melting is not melted");
    log.say(at(0, 12), lit(FISH, Heat::On, Some(Contents::Oil)));
    assert!(!has(&log));
    // Into hot fat a block melts there and then; into fat that was seen off it does not.
    log.say(at(0, 13), block_in(FISH));
    assert!(!has(&log));
    log.say(at(0, 22), lit(FISH, Heat::OffSeen, None));
    log.say(at(0, 23), block_in(FISH));
    assert!(has(&log));
}

#[test]
fn a_pan_nobody_saw_off_is_not_taken_as_hot_the_next_day() {
    let mut log = kitchen();
    log.say(at(0, 12), lit(FISH, Heat::On, Some(Contents::Oil)));
    let after = |ms| {
        let mut log = log.clone();
        log.say(at(0, 12).plus(ms), block_in(FISH));
        log.ledger().has_blocks(FISH)
    };
    assert!(!after(16 * Millis::HOUR - 1));
    assert!(after(16 * Millis::HOUR));
}

#[test]
fn fresh_blocks_into_an_empty_pan_count_and_a_run_says_they_have_melted() {
    let mut log = kitchen();
    log.say(at(0, 12), lit(FISH, Heat::On, Some(Contents::Oil)));
    let Fact::Fill(mut oil) = dripping(FISH) else { panic!() };
    oil.amount = blocks(2_000);
    log.say(at(0, 13), Fact::Fill(oil));
    assert!(log.ledger().has_blocks(FISH));
    let mut told: Ledger = log.ledger();
    log.run(3, FISH, SHARED, ANN, at(0, 20));
    for entry in log.entries.iter().skip(told.lines().count()) {
        told.push(entry.clone());
    }
    assert!(!told.has_blocks(FISH));
    assert_eq!(told, log.ledger());
}
