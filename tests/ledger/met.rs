//! What machines and pans have met.
//!
//! That filtering takes out crumbs and not allergens: Coeliac UK, *Guidance for fish and chip shops*.

use panward::domain::claim::{Exposure, Exposures};
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::run::{Left, RunEvent};
use panward::domain::facts::setup::Held;
use panward::domain::fat::Fat;
use panward::domain::ids::{JobId, MachineId};

use crate::given::*;

fn fish() -> Exposures {
    Exposures::of(&[Exposure::Gluten, Exposure::Fish])
}

#[test]
fn a_run_leaves_its_pan_in_the_machine_until_a_strip_clean() {
    let mut log = Log::filled();
    assert!(log.ledger().machine_exposures(SHARED).is_empty());
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    assert_eq!(log.ledger().machine_exposures(SHARED), fish());
    assert_eq!(log.ledger().last_fat(SHARED), Some(Fat::Rapeseed));
    assert!(log.ledger().machine_exposures(KIT).is_empty());
    log.say(at(1, 9), cleaned(SHARED));
    assert!(log.ledger().machine_exposures(SHARED).is_empty());
    assert_eq!(log.ledger().last_fat(SHARED), None);
}

#[test]
fn a_run_that_moved_no_oil_leaves_nothing() {
    let mut log = Log::filled();
    let mut begun = run(1, FISH, SHARED);
    log.say(at(0, 22), Fact::Run(Box::new(begun.clone())));
    begun.event = RunEvent::Ended;
    begun.left = Some(Left::AsWas);
    log.say(at(0, 22), Fact::Run(Box::new(begun)));
    assert!(log.ledger().machine_exposures(SHARED).is_empty());
    assert_eq!(log.ledger().last_filtered(FISH), None);
}

#[test]
fn a_strip_clean_dated_back_before_a_run_does_not_undo_it() {
    let mut log = Log::filled();
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    log.say_late(at(0, 21), at(1, 9), cleaned(SHARED));
    assert_eq!(log.ledger().machine_exposures(SHARED), fish());
}

#[test]
fn a_run_noted_without_a_machine_makes_every_machine_unknown() {
    let mut log = Log::filled();
    log.say(at(0, 22), noted(FISH, None, Grade::NotDone));
    assert!(log.ledger().machine_exposures(KIT).is_empty());
    log.say(at(0, 22), noted(FISH, None, Grade::Unguided));
    for machine in [SHARED, KIT] {
        assert!(log.ledger().machine_exposures(machine).has(Exposure::Unknown));
    }
}

#[test]
fn used_since_answered_yes_or_by_nobody_is_unknown() {
    for (word, unknown) in [(Word::Yes, true), (Word::NotKnown, true), (Word::No, false)] {
        let mut log = Log::filled();
        let mut proved = JobFact::new(JobId(1), JobKind::Filter, JobEvent::Proved);
        proved.machine = Some(SHARED);
        proved.evidence = Evidence::new().with(Item::UsedSince, word);
        log.say(at(0, 22), Fact::Job(Box::new(proved)));
        assert_eq!(
            log.ledger().machine_exposures(SHARED).has(Exposure::Unknown),
            unknown,
            "{word:?}"
        );
        assert!(log.ledger().machine_exposures(KIT).is_empty());
    }
}

#[test]
fn what_a_machine_held_at_set_up_counts_once() {
    let mut log = Log::kitchen();
    assert!(
        log.ledger().machine_exposures(MachineId(9)).has(Exposure::Unknown),
        "never set up"
    );
    let unknown = Fact::Machine(Box::new(machine(SHARED, Held::Unknown)));
    log.say(at(0, 8), unknown.clone());
    assert!(log.ledger().machine_exposures(SHARED).has(Exposure::Unknown));
    log.say(at(0, 9), cleaned(SHARED));
    log.say(at(0, 10), unknown);
    assert!(
        log.ledger().machine_exposures(SHARED).is_empty(),
        "a new name is no new oil"
    );
}

#[test]
fn oil_carries_what_it_met_from_machine_to_pan_to_machine() {
    let mut log = Log::filled();
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    log.run(2, CHIPS, SHARED, ANN, at(0, 23));
    assert!(log.ledger().pan_exposures(CHIPS).has(Exposure::Gluten));
    assert!(log.ledger().claims_standing(CHIPS, day(0)).is_empty());
    log.run(3, CHIPS, KIT, ANN, at(1, 22));
    assert!(log.ledger().machine_exposures(KIT).has(Exposure::Gluten));
    log.say(at(2, 9), change(CHIPS));
    assert!(!log.ledger().pan_exposures(CHIPS).has(Exposure::Gluten));
}

#[test]
fn a_move_brings_the_other_pans_exposures() {
    let mut log = Log::filled();
    log.say(at(1, 9), Fact::Move(carried(FISH, CHIPS, 5)));
    assert_eq!(log.ledger().pan_exposures(CHIPS), fish());
}

#[test]
fn food_a_pan_is_said_to_fry_later_counts_for_its_earlier_runs() {
    let mut log = Log::filled();
    log.run(1, CHIPS, KIT, ANN, at(0, 22));
    let egg = pan(CHIPS, "2", Exposures::of(&[Exposure::Egg]), Vec::new());
    log.say(at(1, 9), Fact::Pan(Box::new(egg)));
    assert!(log.ledger().machine_exposures(KIT).has(Exposure::Egg));
}
