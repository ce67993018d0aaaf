//! Fills: what begins and ends them, what belongs to which, how far back a date may go.

use panward::domain::facts::Fact;
use panward::domain::facts::oil::Age;
use panward::domain::ledger::{DateRefusal, Happened, check_at, check_redate};
use panward::domain::time::Millis;

use crate::given::*;

#[test]
fn a_fill_adds_up_its_hours_and_its_oil() {
    let mut log = Log::filled();
    log.say(at(0, 20), service(CHIPS, 300));
    log.say(at(1, 20), service(CHIPS, 150));
    log.say(at(1, 21), top_up(CHIPS, 4));
    let ledger = log.ledger();
    let fill = ledger.fill(CHIPS).unwrap();
    assert_eq!(fill.fry_min, 450);
    assert_eq!(fill.volume, litres(34).volume);
    assert_eq!(fill.days_since_fresh(day(3)), Some(3));
}

#[test]
fn a_top_up_above_the_full_mark_replaces_what_left_with_the_food() {
    let mut log = Log::filled();
    log.say(at(1, 20), top_up(FISH, 5));
    assert_eq!(log.ledger().fill(FISH).unwrap().volume, litres(40).volume);
}

#[test]
fn an_oil_change_ends_the_fill_and_leaves_the_pan_empty_until_a_fill() {
    let mut log = Log::filled();
    log.say(at(1, 9), change(FISH));
    assert_eq!(log.ledger().fill(FISH), None);
    assert_eq!(log.ledger().empties(), [FISH]);
    log.say(at(1, 9), fill(FISH, 40));
    assert!(log.ledger().empties().is_empty());
    assert_eq!(log.ledger().fills(FISH).len(), 2);
}

#[test]
fn a_corrected_date_moves_an_entry_to_another_fill() {
    let mut log = Log::filled();
    log.say(at(1, 9), change(FISH));
    log.say(at(1, 9), fill(FISH, 40));
    let worked = log.say(at(1, 20), service(FISH, 300));
    log.say(at(1, 21), moved_to(worked, at(0, 20)));
    let ledger = log.ledger();
    let hot: Vec<u32> = ledger.fills(FISH).iter().map(|f| f.fry_min).collect();
    assert_eq!(hot, [300, 0]);
    assert_eq!(ledger.fill_at(FISH, at(0, 20)).unwrap().fry_min, 300);
}

#[test]
fn oil_carried_into_an_empty_pan_is_of_unknown_age() {
    let mut log = Log::filled();
    log.say(at(1, 9), change(CHIPS));
    log.say(at(1, 10), Fact::Move(carried(FISH, CHIPS, 20)));
    let ledger = log.ledger();
    let fill = ledger.fill(CHIPS).unwrap();
    assert_eq!((fill.age, fill.volume), (Age::Unknown, litres(20).volume));
    let from = ledger.fill(FISH).unwrap();
    assert_eq!(from.volume, litres(20).volume);
    let came_from = Some(from.began);
    assert!(matches!(fill.events[0].what, Happened::MovedIn { from_fill, .. } if from_fill == came_from));
}

#[test]
fn what_happens_without_oil_is_kept_apart() {
    let mut log = Log::kitchen();
    let id = log.say(at(0, 20), service(FISH, 300));
    assert_eq!(log.ledger().loose(FISH), [id]);
}

#[test]
fn corrections_are_heard_in_order_and_can_be_taken_back() {
    let mut log = Log::filled();
    let worked = log.say(at(0, 20), service(FISH, 300));
    let hot = |log: &Log| log.ledger().fill(FISH).unwrap().fry_min;
    let amended = log.say(at(0, 21), says(worked, service(FISH, 200)));
    assert_eq!(hot(&log), 200);
    log.say(at(0, 21), says(worked, top_up(FISH, 2)));
    assert_eq!(hot(&log), 200, "a body of another kind is not taken");
    log.say(at(0, 22), void(amended));
    assert_eq!(hot(&log), 300);
    log.say(at(0, 23), void(worked));
    assert_eq!(hot(&log), 0);
}

#[test]
fn dates_reach_back_to_the_fill_and_two_minutes_ahead() {
    let mut log = Log::filled();
    log.say(at(2, 9), change(FISH));
    let filled = log.say(at(2, 9), fill(FISH, 40));
    let ledger = log.ledger();
    let now = at(3, 9);
    let top_up = top_up(FISH, 2);
    assert_eq!(check_at(&ledger, &top_up, at(2, 9), now), Ok(()));
    let early = DateRefusal::BeforeFill {
        pan: FISH,
        earliest: at(2, 9),
    };
    assert_eq!(check_at(&ledger, &top_up, at(2, 8), now), Err(early));
    let latest = now.plus(2 * Millis::MINUTE);
    assert_eq!(check_at(&ledger, &top_up, latest, now), Ok(()));
    assert_eq!(
        check_at(&ledger, &top_up, latest.plus(1), now),
        Err(DateRefusal::Ahead { latest })
    );
    let before = DateRefusal::BeforeLastChange {
        pan: FISH,
        earliest: at(2, 9),
    };
    assert_eq!(check_at(&ledger, &change(FISH), at(2, 8), now), Err(before));
    // A fill keeps its place between its neighbours; the first of a pan goes back without limit.
    assert_eq!(
        check_redate(&ledger, filled, &fill(FISH, 40), at(2, 8), now),
        Err(before)
    );
    assert_eq!(
        check_at(&Log::kitchen().ledger(), &fill(FISH, 40), at(-90, 8), now),
        Ok(())
    );
    let run = Fact::Run(Box::new(run(1, FISH, SHARED)));
    assert_eq!(check_at(&ledger, &run, at(3, 8), now), Err(DateRefusal::Evidence));
}
