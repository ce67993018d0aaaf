//! Laws: order of arrival, one by one or at once, twice or once, the ledger is the same to the bit.

use std::cmp::Reverse;
use std::num::NonZeroU16;

use proptest::prelude::*;

use panward::domain::claim::{Exposure, Exposures};
use panward::domain::entry::Entry;
use panward::domain::facts::Fact;
use panward::domain::facts::closed::Closed;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::pan_job::PanJob;
use panward::domain::facts::rhythm::Rhythm;
use panward::domain::facts::run::{Contents, Heat, Left, Place, RunEvent, RunFact};
use panward::domain::facts::setup::Kitchen;
use panward::domain::ids::{Dev, EntryId, JobId, RunId};
use panward::domain::ledger::{JobState, Ledger, Line, RunState, history, is_evidence, pans};
use panward::domain::units::Share;
use panward::kitchen::log::{LogItem, days};
use panward::kitchen::{life, oil};

use crate::given::*;

fn fact(pick: u8, n: u32, of: u128) -> Fact {
    let pan = if n.is_multiple_of(2) { FISH } else { CHIPS };
    let machine = if n.is_multiple_of(3) { SHARED } else { KIT };
    match pick % 20 {
        0 => fill(pan, 1 + n % 40),
        1 => change(pan),
        2 => top_up(pan, 1 + n % 9),
        3 => service(pan, (n % 400) as u16),
        4 => Fact::Reading(polar(pan, 500 + (n % 2000) as u16)),
        5 if n.is_multiple_of(3) => Fact::Move(carried(FISH, CHIPS, 1 + n % 5)),
        5 if n % 3 == 1 => parked(pan, machine, 1 + n % 40),
        5 => brought(machine, pan, 1 + n % 40),
        6 => noted(pan, n.is_multiple_of(2).then_some(machine), Grade::Unguided),
        7 => cleaned(machine),
        8 => Fact::Run(Box::new(run(u128::from(n % 4), pan, machine))),
        9 => void(EntryId(of)),
        10 => moved_to(EntryId(of), at(i64::from(n % 9), 12)),
        11 => says(EntryId(of), top_up(pan, 7)),
        12 => Fact::Run(Box::new(RunFact {
            place: Place::InMachine,
            contents: Contents::EmptyWet,
            ..run(u128::from(n % 4), pan, machine)
        })),
        13 => Fact::Run(Box::new(RunFact {
            event: if n.is_multiple_of(5) {
                RunEvent::Fault
            } else {
                RunEvent::Ended
            },
            left: Some(if n.is_multiple_of(3) { Left::Relit } else { Left::Off }),
            ..run(u128::from(n % 4), pan, machine)
        })),
        14 => job(n),
        15 => noted(pan, None, Grade::NotDone),
        16 => service(pan, 0),
        17 if n.is_multiple_of(2) => Fact::Kitchen(Box::new(Kitchen {
            polar_limit: Share::from_cpc(2_000 + (n % 900) as u16),
            day_start_min: (n % 600) as u16,
            ..kitchen()
        })),
        18 => Fact::PanJob(PanJob {
            pan,
            of: if n.is_multiple_of(5) { pan } else { FISH },
            food: Exposures::of(&[Exposure::ALL[n as usize % Exposure::ALL.len()]]),
            day: day(i64::from(n % 9)),
        }),
        19 => {
            let from = day(i64::from(n % 9));
            Fact::Closed(Closed::between(from, from.plus(i64::from(n % 4)), None).unwrap())
        }
        _ => Fact::Pan(Box::new({
            let mut pan = pan_of(pan);
            pan.rhythm = [None, NonZeroU16::new(2).map(Rhythm::Sessions)][n as usize % 2];
            pan.full = litres(20 + n % 20).volume;
            pan
        })),
    }
}

fn job(n: u32) -> Fact {
    let events = [
        JobEvent::Opened,
        JobEvent::Answered,
        JobEvent::LeftOpen,
        JobEvent::Looked,
        JobEvent::Ended,
        JobEvent::Noted,
    ];
    let pick = |many: usize, n: u32| n as usize % many;
    let what = JobKind::ALL[pick(JobKind::ALL.len(), n)];
    let event = events[pick(events.len(), n / 3)];
    let mut job = JobFact::new(JobId(u128::from(n % 7)), what, event);
    job.pan = [None, Some(FISH), Some(CHIPS)][pick(3, n / 18)];
    job.heat = n.is_multiple_of(2).then_some(Heat::On);
    job.how = (event == JobEvent::Noted).then_some(Grade::NotDone);
    Fact::Job(Box::new(job))
}

fn pan_of(id: panward::domain::ids::PanId) -> panward::domain::facts::setup::Pan {
    pan(id, "x", Exposures::NONE, Vec::new())
}

prop_compose! {
    fn log()(rows in prop::collection::vec((any::<u8>(), 0u32..1000, 1u128..60, 0i64..200, 0i64..40, 1u64..3, -1i16..2), 1..50)) -> Log {
        let mut log = Log::filled();
        for (pick, n, of, hour, back, dev, off) in rows {
            let rec = at(0, 10 + hour);
            let happened = rec.plus(-back * 3_600_000);
            log.say_late(happened, rec, fact(pick, n, of));
            let entry = log.entries.last_mut().unwrap();
            (entry.dev, entry.off_min) = (Dev(dev), off * 600);
        }
        log
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn arrival_order_changes_nothing((log, seed) in (log(), any::<u64>())) {
        let whole = log.ledger();
        let mut shuffled = log.entries.clone();
        let mut state = seed;
        for i in (1..shuffled.len()).rev() {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            shuffled.swap(i, (state >> 33) as usize % (i + 1));
        }
        prop_assert_eq!(&Ledger::replay(&shuffled), &whole);
        let mut one_by_one = Ledger::default();
        for entry in shuffled.iter().chain(&log.entries) {
            one_by_one.push(entry.clone());
        }
        prop_assert_eq!(&one_by_one, &whole);
    }

    #[test]
    fn pushing_in_order_is_replaying(log in log()) {
        let mut ledger = Ledger::default();
        for entry in &log.entries {
            ledger.push(entry.clone());
        }
        prop_assert_eq!(ledger, log.ledger());
    }

    #[test]
    fn every_entry_is_kept(log in log()) {
        let ledger = log.ledger();
        prop_assert_eq!(ledger.lines().count(), log.entries.len());
        for entry in &log.entries {
            prop_assert_eq!(ledger.line(entry.id).unwrap().written(), entry);
        }
    }

    #[test]
    fn an_entry_that_stands_last_is_taken_in_where_it_stands(log in log()) {
        let mut entries = log.entries.clone();
        entries.sort_by_key(Entry::cause);
        let mut ledger = Ledger::default();
        for n in 0..entries.len() {
            ledger.push(entries[n].clone());
            prop_assert_eq!(&ledger, &Ledger::replay(&entries[..=n]));
        }
    }

    #[test]
    fn the_history_is_every_line_newest_first_and_the_log_shows_each_once(log in log()) {
        let ledger = log.ledger();
        for pan in [None, Some(FISH), Some(CHIPS)] {
            let about = |line: &Line<'_>| {
                let said = [line.shown(), line.written()].map(|entry| pans(&entry.fact));
                pan.is_none() || said.iter().flatten().any(|of| *of == pan)
            };
            let mut expected: Vec<Line<'_>> = ledger.lines().filter(about).collect();
            expected.retain(|line| match &line.written().fact {
                Fact::Correct(correct) => ledger.line(correct.of).is_none(),
                _ => true,
            });
            expected.sort_by_key(|line| Reverse(line.shown().oil_order()));
            let shown: Vec<EntryId> = history(&ledger, pan).map(|line| line.id).collect();
            let ids = expected.iter().map(|line| line.written().id);
            prop_assert_eq!(&shown, &ids.collect::<Vec<_>>());

            let (days, more) = days(&ledger, pan, usize::MAX);
            prop_assert!(!more);
            let items = days.iter().flat_map(|day| &day.items);
            let mut once: Vec<EntryId> = items
                .flat_map(|item| match item {
                    LogItem::Line(line) => vec![line.id],
                    LogItem::Fold(fold) => fold.lines.iter().map(|line| line.id).collect(),
                })
                .collect();
            let mut all = shown;
            all.sort();
            once.sort();
            prop_assert_eq!(once, all);
        }
    }

    #[test]
    fn what_is_kept_of_nights_runs_and_jobs_is_what_asking_for_each_would_find(log in log()) {
        let ledger = log.ledger();
        for today in [0, 4, 9, 12].map(day) {
            let asked = (-3..today.since(day(0))).map(day).filter(|d| !ledger.unanswered_pans(*d).is_empty());
            prop_assert_eq!(ledger.unanswered_nights(today), asked.collect::<Vec<_>>());
        }
        let runs: Vec<&RunState> = (0..4).filter_map(|n| ledger.run(RunId(n))).collect();
        let clean = runs.iter().filter(|run| run.by == Some(ANN) && run.is_clean());
        prop_assert_eq!(ledger.clean_runs(ANN) as usize, clean.count());
        let open = runs.iter().filter(|run| run.ended.is_none());
        prop_assert_eq!(ledger.open_runs().count(), open.count());
        let jobs: Vec<&JobState> = (0..7).filter_map(|n| ledger.job(JobId(n))).collect();
        prop_assert_eq!(ledger.looks_owed().count(), jobs.iter().filter(|job| job.owed.is_some()).count());
        for kind in JobKind::ALL {
            let open = |job: &&&JobState| job.what == *kind && job.ended.is_none() && job.owed.is_none();
            prop_assert_eq!(ledger.open_job(*kind).is_some(), jobs.iter().any(|job| open(&job)));
        }
    }

    /// A print stands for all of a fill: two of the same print are the same, and what is said of one pan alone changes
    /// the prints of no other.
    #[test]
    fn a_fill_keeps_its_print_until_something_touches_it((log, n) in (log(), 0u32..9)) {
        let before = log.ledger();
        let mut more = log.clone();
        let rec = at(30, 12);
        let fact = [top_up(FISH, 1 + n), service(FISH, 60), Fact::Reading(polar(FISH, 900))][n as usize % 3].clone();
        let said = more.say_late(rec, rec, fact);
        more.entries.last_mut().unwrap().id = EntryId(1_000);
        let after = more.ledger();
        prop_assert_eq!(before.fills(CHIPS), after.fills(CHIPS), "{:?}", said);
        for (was, is) in before.fills(FISH).iter().zip(after.fills(FISH)) {
            prop_assert_eq!(was.print == is.print, was == is);
            prop_assert_eq!(was.print == is.print, was.events.len() == is.events.len());
        }
    }

    #[test]
    fn a_corrected_fill_has_another_print((log, of) in (log(), 1u128..60)) {
        let before = log.ledger();
        let mut more = log.clone();
        let rec = at(30, 12);
        more.say_late(rec, rec, void(EntryId(of)));
        more.entries.last_mut().unwrap().id = EntryId(1_000);
        let after = more.ledger();
        let seen = before.line(EntryId(of)).is_some_and(|line| is_evidence(&line.written().fact));
        for was in [FISH, CHIPS].iter().flat_map(|pan| before.fills(*pan)) {
            let same = [FISH, CHIPS].iter().flat_map(|pan| after.fills(*pan)).find(|is| is.print == was.print);
            prop_assert!(same.is_none_or(|is| is == was));
            let touched = was.began == EntryId(of) || was.events.iter().any(|event| event.id == EntryId(of));
            prop_assert!(seen || !touched || same.is_none());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_kept_of_an_oil_is_what_it_would_be_worked_out_to_now(log in log()) {
        let mut ledger = Ledger::default();
        for (n, entry) in log.entries.iter().enumerate() {
            ledger.push(entry.clone());
            if n % 4 == 0 {
                for pan in [FISH, CHIPS] {
                    prop_assert_eq!(&*oil::life(&ledger, pan, day(9)), &life::of(&ledger, pan, day(9)));
                }
            }
        }
    }
}
