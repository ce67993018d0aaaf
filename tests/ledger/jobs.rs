//! Pans that do each other's jobs: for a day, on what they meet for good, never against a promise.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::facts::Fact;
use panward::domain::facts::oil::ClaimChange;
use panward::domain::ids::PanId;
use panward::domain::quick::{Quick, QuickRefusal, Said, drafts, own_job, swap, take_job};
use panward::domain::time::Day;
use proptest::prelude::*;

use crate::given::*;

/// A third pan, for prawns, that promises nothing.
const PRAWNS: PanId = PanId(3);

fn fish() -> Exposures {
    Exposures::of(&[Exposure::Gluten, Exposure::Fish])
}

fn prawns() -> Exposures {
    Exposures::of(&[Exposure::Crustacean])
}

fn kitchen() -> Log {
    let mut log = Log::filled();
    log.say(at(0, 9), Fact::Pan(Box::new(pan(PRAWNS, "3", prawns(), Vec::new()))));
    log.say(at(0, 9), fill(PRAWNS, 20));
    log
}

fn said(log: &mut Log, n: i64, hour: i64, what: Quick) -> Result<(), QuickRefusal> {
    let said = Said {
        what,
        who: Some(ANN),
        at: None,
        sure: false,
    };
    for draft in drafts(&log.ledger(), said, now(at(n, hour)))? {
        log.say(at(n, hour), draft.fact);
    }
    Ok(())
}

fn on(log: &Log, pan: PanId, day: Day) -> Option<PanId> {
    log.ledger().book.pan_job(pan, day).map(|job| job.of)
}

#[test]
fn two_pans_change_places_until_the_day_ends() {
    let mut log = kitchen();
    let change = swap(&log.ledger(), FISH, PRAWNS, day(1)).unwrap();
    said(&mut log, 1, 12, change).unwrap();
    assert_eq!(
        (on(&log, FISH, day(1)), on(&log, PRAWNS, day(1))),
        (Some(PRAWNS), Some(FISH))
    );
    assert_eq!((on(&log, FISH, day(2)), on(&log, FISH, day(0))), (None, None));
    let own = own_job(&log.ledger(), FISH, day(1)).unwrap();
    said(&mut log, 1, 15, own).unwrap();
    assert_eq!((on(&log, FISH, day(1)), on(&log, PRAWNS, day(1))), (None, None));
    let both = fish().and(prawns());
    for pan in [FISH, PRAWNS] {
        assert_eq!(log.ledger().pan_exposures(pan), both, "what was met is met");
    }
}

#[test]
fn one_pan_alone_takes_a_job_and_gives_it_back_alone() {
    let mut log = kitchen();
    let job = take_job(&log.ledger(), PRAWNS, FISH, day(0)).unwrap();
    said(&mut log, 0, 12, Quick::PanJobs(vec![job])).unwrap();
    assert_eq!((on(&log, PRAWNS, day(0)), on(&log, FISH, day(0))), (Some(FISH), None));
    assert_eq!(log.ledger().pan_exposures(FISH), fish());
    let own = own_job(&log.ledger(), PRAWNS, day(0)).unwrap();
    assert!(matches!(&own, Quick::PanJobs(jobs) if jobs.len() == 1));
}

#[test]
fn a_job_that_meets_a_promise_waits_until_the_promise_is_lost() {
    let mut log = kitchen();
    let refused = |exposure| {
        Err(QuickRefusal::ClaimMet {
            pan: CHIPS,
            claim: ClaimKind::GlutenFree,
            exposure,
        })
    };
    let change = swap(&log.ledger(), FISH, CHIPS, day(0)).unwrap();
    let before = log.entries.len();
    assert_eq!(said(&mut log, 0, 12, change.clone()), refused(Exposure::Gluten));
    assert_eq!(log.entries.len(), before, "neither of the two was written");
    let prawns = swap(&log.ledger(), CHIPS, PRAWNS, day(0)).unwrap();
    assert_eq!(said(&mut log.clone(), 0, 12, prawns), Ok(()), "prawns hold no gluten");
    let lost = ClaimChange {
        pan: CHIPS,
        what: ClaimKind::GlutenFree,
        why: "short of a pan".into(),
        basis: None,
    };
    log.say(at(0, 13), Fact::ClaimLost(lost));
    said(&mut log, 0, 14, change).unwrap();
    assert_eq!(on(&log, CHIPS, day(0)), Some(FISH));
}

#[test]
fn a_pan_out_of_use_lends_no_job() {
    let mut log = kitchen();
    let change = swap(&log.ledger(), FISH, PRAWNS, day(0)).unwrap();
    let mut gone = log.ledger().book.pan(PRAWNS).unwrap().clone();
    gone.in_use = false;
    log.say(at(0, 10), Fact::Pan(Box::new(gone)));
    let none = Err(QuickRefusal::NoSuchPan { pan: PRAWNS });
    assert_eq!(said(&mut log, 0, 12, change), none);
    assert_eq!(take_job(&log.ledger(), FISH, PanId(99), day(0)), None);
}

#[test]
fn fresh_oil_of_the_day_goes_on_with_the_job_and_tomorrows_does_not() {
    let changed_on = |n| {
        let mut log = kitchen();
        let job = take_job(&log.ledger(), PRAWNS, FISH, day(1)).unwrap();
        said(&mut log, 1, 12, Quick::PanJobs(vec![job])).unwrap();
        log.say(at(n, 14), change(PRAWNS));
        log.say(at(n, 15), fill(PRAWNS, 20));
        log.ledger().pan_exposures(PRAWNS)
    };
    assert_eq!(changed_on(1), fish().and(prawns()));
    assert_eq!(changed_on(2), prawns());
}

#[test]
fn a_machine_meets_what_a_pan_fried_for_another() {
    let mut log = kitchen();
    let job = take_job(&log.ledger(), PRAWNS, FISH, day(0)).unwrap();
    said(&mut log, 0, 12, Quick::PanJobs(vec![job])).unwrap();
    log.run(1, PRAWNS, SHARED, ANN, at(0, 22));
    assert_eq!(log.ledger().machine_exposures(SHARED), fish().and(prawns()));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    /// No sequence of jobs lets a pan that promises meet what it excludes, and none makes a pan forget.
    #[test]
    fn jobs_only_add_to_what_is_met_and_never_against_a_promise(
        steps in prop::collection::vec((0..3usize, 0..3usize, 0..3i64, 0..3u8), 1..20)
    ) {
        let pans = [FISH, CHIPS, PRAWNS];
        let mut log = kitchen();
        let mut day_now = 0;
        for (one, other, later, how) in steps {
            day_now += later / 2;
            let (one, other) = (pans[one], pans[other]);
            let ledger = log.ledger();
            let before = pans.map(|pan| ledger.pan_exposures(pan));
            let today = day(day_now);
            let what = match how {
                0 => swap(&ledger, one, other, today),
                1 => take_job(&ledger, one, other, today).map(|job| Quick::PanJobs(vec![job])),
                _ => own_job(&ledger, one, today),
            };
            let took = said(&mut log, day_now, 12, what.unwrap());
            let ledger = log.ledger();
            for (pan, before) in pans.into_iter().zip(before) {
                let met = ledger.pan_exposures(pan);
                prop_assert_eq!(met.and(before), met);
                prop_assert!(ledger.claims_lost(pan, today).is_empty(), "{took:?}");
            }
        }
    }
}
