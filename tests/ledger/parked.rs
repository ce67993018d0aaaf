//! Oil parked in a machine: whose it is, what becomes of its fill, and where it goes from there.

use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Age, PartChange, Vessel};
use panward::domain::facts::run::{Contents, Left, Place, RunEvent, RunFact};
use panward::domain::fat::Fat;
use panward::domain::ids::{MachineId, PanId};
use panward::domain::ledger::{Happened, Ledger, Parked};
use panward::domain::units::Volume;
use panward::kitchen::life;
use panward::store::World;
use panward::store::import::import;

use crate::given::*;

fn in_tank(ledger: &Ledger, machine: MachineId) -> Vec<(PanId, Option<u32>)> {
    let tank = ledger.tank(machine).into_iter();
    tank.map(|p: Parked| (p.pan, p.volume.map(Volume::ml))).collect()
}

fn in_pan(ledger: &Ledger, pan: PanId) -> Option<u32> {
    ledger.fill(pan).map(|fill| fill.volume.ml())
}

/// A run of `pan` that was left with its oil out.
fn left_out(log: &mut Log, n: u128, pan: PanId, place: Place, when: panward::domain::time::Millis) {
    let began = run(n, pan, SHARED);
    let out = RunFact {
        event: RunEvent::Pump,
        place,
        contents: Contents::EmptyWet,
        ..began.clone()
    };
    let left = RunFact {
        event: RunEvent::Ended,
        left: Some(Left::OilOut),
        ..out.clone()
    };
    for fact in [began, out, left] {
        log.say(when, Fact::Run(Box::new(fact)));
    }
}

/// A run that brings oil back into `pan`.
fn brought_back(log: &mut Log, n: u128, pan: PanId, when: panward::domain::time::Millis) {
    let began = RunFact {
        place: Place::InMachine,
        contents: Contents::EmptyWet,
        ..run(n, pan, SHARED)
    };
    let back = RunFact {
        event: RunEvent::Pump,
        place: Place::InPan,
        contents: Contents::Oil,
        ..began.clone()
    };
    let ended = RunFact {
        event: RunEvent::Ended,
        left: Some(Left::Off),
        ..back.clone()
    };
    for fact in [began, back, ended] {
        log.say(when, Fact::Run(Box::new(fact)));
    }
}

#[test]
fn a_parked_fill_is_not_ended_and_comes_back_as_itself() {
    let mut log = Log::filled();
    log.say(at(0, 20), service(FISH, 300));
    log.say(at(0, 22), parked(FISH, SHARED, 40));
    let ledger = log.ledger();
    assert_eq!(ledger.fill(FISH), None);
    assert_eq!(ledger.fills(FISH).last().unwrap().ended, None);
    assert_eq!(ledger.empties(), [FISH], "nothing in it: not to be lit");
    assert_eq!(in_tank(&ledger, SHARED), [(FISH, Some(40_000))]);
    assert_eq!(ledger.tank(SHARED)[0].since, at(0, 22));
    log.say(at(3, 9), brought(SHARED, FISH, 40));
    let ledger = log.ledger();
    let fill = ledger.fill(FISH).unwrap();
    assert_eq!((fill.at, fill.fry_min, fill.volume), (at(0, 9), 300, litres(40).volume));
    assert!(matches!(
        fill.events.last().unwrap().what,
        Happened::Returned { from: SHARED, .. }
    ));
    assert!(ledger.empties().is_empty() && ledger.tank(SHARED).is_empty());
}

#[test]
fn parked_oil_lives_on_beside_fresh_oil_in_its_pan_and_goes_into_another() {
    let mut log = Log::filled();
    log.say(at(0, 22), parked(FISH, SHARED, 40));
    log.say(at(1, 9), fill(FISH, 40));
    log.say(at(1, 9), change(CHIPS));
    let ledger = log.ledger();
    let [old, new] = ledger.fills(FISH) else { panic!() };
    assert_eq!((old.ended, new.ended), (None, None));
    log.say(at(1, 10), brought(SHARED, CHIPS, 40));
    let ledger = log.ledger();
    assert_eq!(
        ledger.fills(FISH)[0].ended.map(|end| end.at),
        Some(at(1, 10)),
        "none of it is left there"
    );
    let fill = ledger.fill(CHIPS).unwrap();
    assert_eq!((fill.age, fill.volume), (Age::Unknown, litres(40).volume));
    let came = &fill.events[0].what;
    assert!(
        matches!(came, Happened::MovedIn { from: FISH, from_fill, .. } if *from_fill == Some(ledger.fills(FISH)[0].began))
    );
}

#[test]
fn two_oils_in_one_tank_leave_it_each_in_its_part() {
    let mut log = Log::filled();
    log.say(at(0, 22), parked(FISH, SHARED, 30));
    log.say(at(0, 22), parked(CHIPS, SHARED, 10));
    log.say(at(0, 23), brought(SHARED, CHIPS, 20));
    let ledger = log.ledger();
    assert_eq!(in_tank(&ledger, SHARED), [(FISH, Some(15_000)), (CHIPS, Some(5_000))]);
    assert_eq!(
        (in_pan(&ledger, FISH), in_pan(&ledger, CHIPS)),
        (Some(10_000), Some(40_000))
    );
}

#[test]
fn what_a_run_left_in_the_machine_is_parked_until_its_return() {
    let mut log = Log::filled();
    left_out(&mut log, 1, FISH, Place::InMachine, at(0, 22));
    assert_eq!(in_tank(&log.ledger(), SHARED), [(FISH, Some(40_000))]);
    assert!(log.ledger().fill(FISH).is_some(), "a run has it, and it is that pan's");
    brought_back(&mut log, 2, FISH, at(1, 9));
    let ledger = log.ledger();
    assert!(ledger.tank(SHARED).is_empty());
    assert_eq!(in_pan(&ledger, FISH), Some(40_000));
    let mut log = Log::filled();
    left_out(&mut log, 1, FISH, Place::Split, at(0, 22));
    assert_eq!(in_tank(&log.ledger(), SHARED), [(FISH, None)], "how much nobody knows");
}

#[test]
fn oil_a_run_left_lives_on_when_its_pan_is_filled_and_is_brought_into_another() {
    let mut log = Log::filled();
    left_out(&mut log, 1, FISH, Place::InMachine, at(0, 22));
    log.say(at(1, 9), change(CHIPS));
    brought_back(&mut log, 2, CHIPS, at(1, 10));
    let ledger = log.ledger();
    assert!(ledger.tank(SHARED).is_empty());
    assert_eq!(in_pan(&ledger, CHIPS), Some(40_000));
    assert_eq!(in_pan(&ledger, FISH), None);
    assert_eq!(ledger.empties(), [FISH], "the pan it came from stays empty");
    let mut log = Log::filled();
    left_out(&mut log, 1, FISH, Place::InMachine, at(0, 22));
    log.say(at(1, 9), fill(FISH, 40));
    let ledger = log.ledger();
    assert_eq!(in_tank(&ledger, SHARED), [(FISH, Some(40_000))]);
    assert_eq!(ledger.fills(FISH)[0].ended, None);
    assert!(ledger.empties().is_empty());
}

#[test]
fn parked_oil_ends_with_a_change_of_its_pan_or_a_strip_clean_of_the_machine() {
    for end in [change(FISH), cleaned(SHARED)] {
        let mut log = Log::filled();
        log.say(at(0, 22), parked(FISH, SHARED, 40));
        log.say(at(1, 9), end);
        let ledger = log.ledger();
        assert!(ledger.tank(SHARED).is_empty());
        assert_eq!(ledger.fills(FISH)[0].ended.map(|end| end.at), Some(at(1, 9)));
        assert_eq!(ledger.empties(), [FISH]);
    }
}

#[test]
fn days_parked_cold_are_no_services() {
    let age = |log: &Log, n| life::of(&log.ledger(), FISH, day(n)).unwrap().polar.median;
    let mut log = Log::filled();
    log.say(at(0, 20), service(FISH, 300));
    let evening = age(&log, 0);
    let mut moved = log.clone();
    moved.say(at(0, 22), parked(FISH, SHARED, 40));
    moved.say(at(4, 9), brought(SHARED, FISH, 40));
    assert!((age(&moved, 4) - evening).abs() < 1e-9, "as it went in");
    let mut left = log.clone();
    left_out(&mut left, 1, FISH, Place::InMachine, at(0, 22));
    assert!((age(&left, 4) - evening).abs() < 1e-9, "a run has it still");
    brought_back(&mut left, 2, FISH, at(4, 9));
    assert!((age(&left, 4) - evening).abs() < 1e-9);
    assert!(age(&log, 4) > evening + 1.0, "unlike oil that stayed in its pan");
}

#[test]
fn another_fat_makes_a_blend_and_a_low_pan_is_not_lit() {
    let mut log = Log::filled();
    log.say(at(1, 9), change(CHIPS));
    let Fact::Fill(mut dripping) = fill(CHIPS, 20) else {
        panic!()
    };
    dripping.fat = Fat::Dripping;
    log.say(at(1, 9), Fact::Fill(dripping));
    log.say(at(1, 10), Fact::Move(moved(Vessel::Pan(FISH), Vessel::Pan(CHIPS), 20)));
    let ledger = log.ledger();
    let fill = ledger.fill(CHIPS).unwrap();
    assert_eq!((fill.fat, fill.filled_with), (Fat::Blend, Fat::Dripping));
    assert!(
        ledger.is_low(FISH) && !ledger.is_low(CHIPS),
        "20 of 25 litres at the mark"
    );
    log.say(at(1, 11), top_up(FISH, 6));
    assert!(!log.ledger().is_low(FISH));
}

#[test]
fn the_estimate_of_oil_out_of_a_machine_is_mixed_like_that_of_a_straight_move() {
    let worn = |log: &mut Log| {
        log.say(at(0, 10), change(CHIPS));
        log.say(at(0, 11), fill(CHIPS, 20));
        log.say(at(0, 20), service(FISH, 600));
    };
    let polar = |log: &Log, pan| life::of(&log.ledger(), pan, day(0)).unwrap().polar;
    let mut straight = Log::filled();
    worn(&mut straight);
    let (old, fresh) = (polar(&straight, FISH), polar(&straight, CHIPS));
    straight.say(at(0, 22), Fact::Move(carried(FISH, CHIPS, 10)));
    let mut by_tank = Log::filled();
    worn(&mut by_tank);
    by_tank.say(at(0, 22), parked(FISH, SHARED, 10));
    by_tank.say(at(0, 22), brought(SHARED, CHIPS, 10));
    assert_eq!(polar(&by_tank, CHIPS), polar(&straight, CHIPS));
    // P + f·(C0 − P), a third of the pan: to the spread of the belief, whose median is not its mean.
    let by_hand = fresh.median + 10.0 / 30.0 * (old.median - fresh.median);
    assert!((polar(&by_tank, CHIPS).median - by_hand).abs() < 0.5, "{by_hand}");
    // Two oils of one tank come out as what they are together.
    let mut blend = Log::filled();
    worn(&mut blend);
    blend.say(at(0, 22), parked(FISH, SHARED, 20));
    blend.say(at(0, 22), parked(CHIPS, SHARED, 20));
    blend.say(at(0, 23), brought(SHARED, CHIPS, 40));
    let by_hand = (old.median + fresh.median) / 2.0;
    assert!((polar(&blend, CHIPS).median - by_hand).abs() < 0.5, "{by_hand}");
}

#[test]
fn a_pan_part_changed_for_ever_names_the_level_it_holds_at_and_no_day() {
    let mut log = Log::filled();
    for n in 0..30 {
        log.say(at(n, 20), service(FISH, 300));
        log.say(at(n, 21), top_up(FISH, 2));
    }
    let shown = |log: &Log| {
        let today = panward::kitchen::today::of(&log.ledger(), day(30));
        today.pans.iter().find(|pan| pan.pan == FISH).unwrap().life.unwrap()
    };
    assert!(shown(&log).holds.is_none() && shown(&log).days_left.unwrap().median.is_some());
    let mut log = Log::filled();
    for n in 0..30 {
        log.say(at(n, 20), service(FISH, 300));
        log.say(at(n, 21), top_up(FISH, 2));
        if n % 3 == 2 {
            let half = PartChange {
                pan: FISH,
                out: litres(20),
                fresh: litres(20),
            };
            log.say(at(n, 22), Fact::PartChange(half));
        }
    }
    // A twentieth after each service and a half after each third, of which habit takes a thirty-first part off:
    // 3 points a service over about 0.05 + 5/31 of the pan, and 5 points fresh.
    let life = shown(&log);
    assert_eq!(life.days_left.unwrap().median, None);
    let by_hand = 5.0 + 3.0 / (0.05 + 5.0 / 31.0);
    let holds = f64::from(life.holds.unwrap());
    assert!((holds - by_hand).abs() < 1.0, "{holds} against {by_hand}");
}

#[test]
fn version_2_of_a_move_goes_into_a_machine_or_out_of_it() {
    let log = import(include_str!("../fixtures/log_v6.json"), World::Real, 0).expect("the frozen sample reads");
    let ways = log.records.iter().filter_map(|record| match &record.entry().fact {
        Fact::Move(moved) => Some((moved.from, moved.to, moved.arrived.volume.ml())),
        _ => None,
    });
    let pan = |n: u128| Vessel::Pan(PanId(0xcccc_cccc_cccc_4ccc_8ccc_0000_0000_0000 + n));
    let machine = Vessel::Machine(MachineId(0xdddd_dddd_dddd_4ddd_8ddd_0000_0000_0001));
    let expected = [(pan(2), machine, 28_000), (machine, pan(1), 27_300)];
    assert_eq!(ways.collect::<Vec<_>>(), expected);
}
