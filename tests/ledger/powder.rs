//! Filter powder: which runs it went into, by what the machine was set up with when they were written.

use panward::domain::facts::Fact;
use panward::domain::facts::job::Grade;
use panward::domain::facts::setup::Held;
use panward::domain::ids::{EntryId, MachineId, PanId};
use panward::domain::oil_life::{Because, Estimate, OilLife, Role};
use panward::domain::units::{Dose, Share};
use panward::kitchen::life;

use crate::given::*;

fn dosed(machine_id: MachineId, g_per_l: u16) -> Fact {
    let mut machine = machine(machine_id, Held::Unknown);
    machine.powder = Dose::from_g_per_l(g_per_l);
    Fact::Machine(Box::new(machine))
}

/// Two services, with polar compounds under a limit.
fn worked() -> Log {
    let mut log = Log::filled();
    let mut kitchen = kitchen();
    kitchen.polar_limit = Share::from_cpc(2_500);
    log.say(at(0, 10), Fact::Kitchen(Box::new(kitchen)));
    log.say(at(0, 20), service(FISH, 600));
    log.say(at(1, 20), service(FISH, 600));
    log
}

fn life_of(log: &Log, pan: PanId) -> OilLife {
    life::of(&log.ledger(), pan, day(2)).unwrap()
}

fn polar(log: &Log) -> Estimate {
    life_of(log, FISH).polar
}

fn by_powder(log: &Log) -> Vec<EntryId> {
    let because = life_of(log, FISH).because.into_iter();
    let entries = because.filter_map(|because| match because {
        Because::Entry { entry, role } => (role == Role::Powder).then_some(entry),
        _ => None,
    });
    entries.collect()
}

#[test]
fn a_run_with_powder_takes_out_a_little_and_one_without_nothing() {
    let mut plain = worked();
    let before = polar(&plain);
    plain.run(1, FISH, SHARED, ANN, at(1, 22));
    assert_eq!(polar(&plain), before);

    let mut log = worked();
    log.say(at(1, 21), dosed(SHARED, 18));
    log.run(1, FISH, SHARED, ANN, at(1, 22));
    // 18 g to a litre of rapeseed oil, 915.3 g, is 1.97 %: at most 0.394 points, of which half is expected.
    let fell = before.median - polar(&log).median;
    assert!((fell - 0.197).abs() < 0.01, "{fell}");
    let ended = log.entries.last().unwrap().id;
    assert_eq!(by_powder(&log), [ended]);
}

#[test]
fn a_run_that_drew_no_oil_or_used_another_machine_takes_out_nothing() {
    let mut log = worked();
    log.say(at(1, 21), dosed(SHARED, 18));
    let before = polar(&log);
    log.run(1, FISH, KIT, ANN, at(1, 22));
    assert_eq!(polar(&log), before);
    log.say(at(1, 23), noted(FISH, Some(SHARED), Grade::NotDone));
    assert_eq!(polar(&log), before);
}

#[test]
fn a_run_without_the_guide_counts_only_where_it_names_the_machine() {
    let mut log = worked();
    log.say(at(1, 21), dosed(SHARED, 18));
    let before = polar(&log);
    log.say(at(1, 22), noted(FISH, None, Grade::Unguided));
    assert_eq!(polar(&log), before);
    let named = log.say(at(1, 23), noted(FISH, Some(SHARED), Grade::Unguided));
    assert!(polar(&log).median < before.median);
    assert_eq!(by_powder(&log), [named]);
}

#[test]
fn a_later_set_up_says_nothing_of_the_runs_before_it() {
    let mut log = worked();
    log.run(1, FISH, SHARED, ANN, at(1, 22));
    let without = polar(&log);
    log.say(at(1, 23), dosed(SHARED, 18));
    assert_eq!(polar(&log), without, "powder bought since");

    let mut log = worked();
    log.say(at(1, 21), dosed(SHARED, 18));
    log.run(1, FISH, SHARED, ANN, at(1, 22));
    let with = polar(&log);
    log.say(at(1, 23), Fact::Machine(Box::new(machine(SHARED, Held::Unknown))));
    assert_eq!(polar(&log), with, "given up since");
    assert!(with.median < without.median);
}
