//! What Today and a pan's page work out: the next job, the line of an oil, and notes made afterwards.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::play;
use panward::domain::claim::ClaimKind;
use panward::domain::entry::{Draft, Entry};
use panward::domain::evidence::{self as seen, Evidence, Item};
use panward::domain::facts::Fact;
use panward::domain::facts::closed::Closed;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::oil::{ClaimChange, Load, Service};
use panward::domain::facts::rhythm::Rhythm;
use panward::domain::facts::run::Place;
use panward::domain::ids::{Dev, EntryId, JobId, PanId};
use panward::domain::ledger::{Ledger, Word};
use panward::domain::quick::{Quick, Said, drafts, take_job};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::Minutes;
use panward::kitchen::nights::{self, Told};
use panward::kitchen::today::{self, Next};
use panward::kitchen::{forecast, life};

fn ready<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

/// Wednesday 25 November 2026: a trading day after a trading day.
fn wednesday() -> Day {
    Day::of(Millis(1_795_608_000_000), 0, 0)
}

fn demo() -> Ledger {
    let played = ready(play(3, wednesday(), |_| 0)).unwrap();
    let entries: Vec<Entry> = played.records.iter().map(|r| r.entry().clone()).collect();
    Ledger::replay(&entries)
}

fn write(ledger: &mut Ledger, draft: Draft, now: Millis) {
    let seq = u32::try_from(ledger.lines().count()).unwrap() + 1;
    ledger.push(Entry {
        id: EntryId(u128::from(seq)),
        dev: Dev(u64::MAX),
        seq,
        at: draft.at.unwrap_or(now),
        rec: now,
        clk: None,
        off_min: 0,
        who: draft.who,
        fact: draft.fact,
    });
}

fn at(day: Day, hour: i64) -> Now {
    let wall = day.begins(0, 0).plus(hour * Millis::HOUR);
    Now {
        wall,
        mono: 0,
        life: PageLife(1),
        off_min: 0,
    }
}

fn job(what: JobKind, event: JobEvent) -> Draft {
    let id = JobId(what as u128 + 1);
    Draft::now(None, Fact::Job(Box::new(JobFact::new(id, what, event))))
}

fn served(pan: PanId) -> Draft {
    let fact = Fact::Service(Service {
        pan,
        fry: Minutes::new(300).unwrap(),
        load: Load::Normal,
        temp: None,
        food_g: None,
    });
    Draft::now(None, fact)
}

#[test]
fn the_next_job_follows_the_trading_day() {
    let (mut ledger, day) = (demo(), wednesday());
    let next = |ledger: &Ledger| today::of(ledger, day).next();
    assert_eq!(next(&ledger), Next::Begin(JobKind::LightUp));

    write(&mut ledger, job(JobKind::LightUp, JobEvent::Opened), at(day, 10).wall);
    assert_eq!(next(&ledger), Next::Resume(JobKind::LightUp));
    write(&mut ledger, job(JobKind::LightUp, JobEvent::Ended), at(day, 11).wall);
    assert_eq!(next(&ledger), Next::Begin(JobKind::LockUp));

    let pan = today::of(&ledger, day).pans.first().unwrap().clone();
    write(&mut ledger, served(pan.pan), at(day, 20).wall);
    assert_eq!(next(&ledger), Next::Begin(JobKind::Filter));
    assert_eq!(today::of(&ledger, day).due_names(), vec![pan.name]);

    let why = "No time".to_owned();
    write(
        &mut ledger,
        nights::note(pan.pan, Told::NotDone(why), None, None),
        at(day, 21).wall,
    );
    assert_eq!(next(&ledger), Next::Begin(JobKind::LockUp));
    write(&mut ledger, job(JobKind::LockUp, JobEvent::Opened), at(day, 22).wall);
    write(&mut ledger, job(JobKind::LockUp, JobEvent::Ended), at(day, 23).wall);
    assert_eq!(next(&ledger), Next::Nothing);
}

#[test]
fn a_lost_claim_stands_on_today_as_lost_and_opens_the_allergen_sheet() {
    let (mut ledger, day) = (demo(), wednesday());
    let four = |ledger: &Ledger| {
        let today = today::at(ledger, day, at(day, 14).wall);
        (today.pans[3].clone(), today.sheet_open)
    };
    let (pan, open) = four(&ledger);
    assert_eq!(
        (pan.claims, pan.lost, open),
        (vec![ClaimKind::GlutenFree], Vec::new(), false)
    );
    let lost = ClaimChange {
        pan: pan.pan,
        what: ClaimKind::GlutenFree,
        why: String::new(),
        basis: None,
    };
    let said = Said {
        what: Quick::ClaimLost(lost),
        who: None,
        at: None,
        sure: false,
    };
    let now = at(day, 13);
    let draft = drafts(&ledger, said, now).unwrap().remove(0);
    write(&mut ledger, draft, now.wall);
    let (pan, open) = four(&ledger);
    assert!(pan.claims.is_empty() && open);
    assert_eq!((pan.lost[0].what, pan.lost[0].at), (ClaimKind::GlutenFree, now.wall));
}

#[test]
fn a_pan_whose_oil_is_out_is_drawn_empty() {
    let (mut ledger, day) = (demo(), wednesday());
    let of = |ledger: &Ledger, pan| {
        let today = today::of(ledger, day);
        let shown = today.pans.into_iter().find(|p| p.pan == pan).unwrap();
        (shown.level > 0, shown.out, shown.low)
    };
    let played = ready(play(3, wednesday(), |_| 0)).unwrap();
    let mut runs = played
        .records
        .iter()
        .rev()
        .filter_map(|record| match &record.entry().fact {
            Fact::Run(run) if of(&ledger, run.pan) == (true, false, false) => Some(run.clone()),
            _ => None,
        });
    let mut run = runs.next().unwrap();
    let pan = run.pan;
    run.place = Place::InMachine;
    run.evidence = Evidence::new();
    write(&mut ledger, Draft::now(None, Fact::Run(run.clone())), at(day, 22).wall);
    assert_eq!(of(&ledger, pan), (false, true, false), "the machine has it");
    run.place = Place::InPan;
    write(&mut ledger, Draft::now(None, Fact::Run(run.clone())), at(day, 23).wall);
    assert_eq!(of(&ledger, pan), (true, false, false), "it is back");
    run.evidence = Evidence::new().with(Item::Level, seen::Word::Below);
    write(&mut ledger, Draft::now(None, Fact::Run(run)), at(day, 23).wall);
    assert_eq!(of(&ledger, pan), (false, false, true), "below the mark");
}

#[test]
fn a_filter_job_without_a_pan_filtered_nothing() {
    let (mut ledger, day) = (demo(), wednesday());
    let none = |ledger: &Ledger, day| today::of(ledger, day).none_filtered;
    let filtered = ledger.last_job(JobKind::Filter).unwrap();
    let then = ledger.book.day_of(filtered.opened, filtered.off_min);
    assert_eq!((none(&ledger, then), none(&ledger, day)), (false, false));
    write(&mut ledger, job(JobKind::Filter, JobEvent::Opened), at(day, 21).wall);
    assert!(!none(&ledger, day), "it is open");
    write(&mut ledger, job(JobKind::Filter, JobEvent::Ended), at(day, 22).wall);
    assert!(none(&ledger, day));
    assert!(!none(&ledger, day.plus(1)), "it is over for that day alone");
}

#[test]
fn an_open_filter_job_comes_before_everything() {
    let (mut ledger, day) = (demo(), wednesday());
    for kind in [JobKind::LightUp, JobKind::Filter, JobKind::LockUp] {
        write(&mut ledger, job(kind, JobEvent::Opened), at(day, 12).wall);
    }
    assert_eq!(today::of(&ledger, day).next(), Next::Resume(JobKind::Filter));
}

#[test]
fn a_night_is_answered_the_morning_after_and_dated_on_it() {
    let (mut ledger, night) = (demo(), wednesday());
    let now = at(night.plus(1), 9);
    let morning = night.plus(1);
    assert_eq!(ledger.unanswered_nights(morning), vec![night], "nobody said anything");
    let moment = nights::moment(&ledger, night, 0, &now);
    assert_eq!(moment, Some(at(night, 22).wall), "the demo closes at 22:00");
    let pans = ledger.unanswered_pans(night);
    let told = [
        Told::Unguided,
        Told::NotUsed,
        Told::NotDone("Machine is down".into()),
        Told::NotUsed,
    ];
    for (pan, told) in pans.iter().zip(told) {
        write(&mut ledger, nights::note(*pan, told, None, moment), now.wall);
    }
    assert_eq!(ledger.unanswered_nights(morning), Vec::new());
    let words: Vec<Word> = pans.iter().map(|pan| ledger.word(*pan, night)).collect();
    assert!(matches!(words.first(), Some(Word::Filtered(_))));
    assert_eq!(words.get(1..), Some(&[Word::NotUsed, Word::NotDone, Word::NotUsed][..]));
}

#[test]
fn a_note_about_today_is_dated_as_it_is_written() {
    let ledger = demo();
    assert_eq!(nights::moment(&ledger, wednesday(), 0, &at(wednesday(), 23)), None);
}

#[test]
fn a_kitchen_that_closes_after_midnight_is_dated_after_midnight() {
    let mut ledger = demo();
    let mut kitchen = ledger.book.kitchen.clone().unwrap();
    kitchen.closing_min = Minutes::new(60);
    ledger.book.kitchen = Some(kitchen);
    let now = at(wednesday().plus(1), 9);
    let moment = nights::moment(&ledger, wednesday(), 0, &now);
    assert_eq!(moment, Some(at(wednesday(), 25).wall));
}

#[test]
fn the_line_ends_today_where_the_answer_stands_and_widens_from_there() {
    let (ledger, day) = (demo(), wednesday());
    for pan in ledger.book.pans_in_use() {
        let line = forecast::of(&ledger, pan.pan, day).unwrap();
        let now = life::of(&ledger, pan.pan, day).unwrap();
        let last = line.past.last().unwrap();
        assert_eq!((last.day, last.polar), (day, now.polar));
        assert_eq!(line.past.first().unwrap().day, line.first);
        assert!(!line.readings.is_empty());
        let width = |p: &forecast::Point| p.polar.high - p.polar.low;
        let ahead: Vec<f64> = line.ahead.iter().map(width).collect();
        assert!(ahead.windows(2).all(|w| w[1] > w[0] - 1e-9), "{ahead:?}");
        assert!(
            line.ahead
                .iter()
                .all(|p| ledger.book.is_trading_day(p.day) && p.day > day)
        );
    }
}

#[test]
fn the_day_to_change_is_the_last_that_stays_under_the_limit() {
    let (ledger, day) = (demo(), wednesday());
    let limit = 25.0;
    let mut foreseen = 0;
    for pan in ledger.book.pans_in_use() {
        let line = forecast::of(&ledger, pan.pan, day).unwrap();
        assert_eq!(line.limit, Some(limit));
        let Some(change) = line.change else { continue };
        // The median of the first service over and the first median over are near neighbours, not the same.
        let over = line.ahead.iter().find(|p| p.polar.median > limit).map(|p| p.day);
        if line.ahead.last().is_some_and(|last| change > last.day) {
            assert_eq!(over, None, "pan {}: nothing drawn is over", pan.name);
            continue;
        }
        foreseen += 1;
        let over = over.unwrap_or_else(|| line.ahead.last().unwrap().day);
        assert!(
            (-3..=3).contains(&over.since(change)),
            "pan {}: {change:?}, over on {over:?}",
            pan.name
        );
    }
    assert!(foreseen > 0);
}

fn closed(from: Day, to: Day) -> Draft {
    Draft::now(None, Fact::Closed(Closed::between(from, to, None).unwrap()))
}

fn by_session(ledger: &mut Ledger, now: Millis) -> PanId {
    let mut pan = ledger.book.pans_in_use()[0].clone();
    pan.rhythm = Some(Rhythm::Sessions(std::num::NonZeroU16::MIN));
    let id = pan.pan;
    write(ledger, Draft::now(None, Fact::Pan(Box::new(pan))), now);
    id
}

#[test]
fn a_pan_by_session_is_due_after_lunch_and_again_after_tea() {
    let (mut ledger, day) = (demo(), wednesday());
    let pan = by_session(&mut ledger, at(day, 9).wall);
    let shown = |ledger: &Ledger| {
        let today = today::of(ledger, day);
        (today.next(), today.due_names())
    };
    let one = vec!["1".to_owned()];
    write(&mut ledger, job(JobKind::LightUp, JobEvent::Opened), at(day, 10).wall);
    write(&mut ledger, job(JobKind::LightUp, JobEvent::Ended), at(day, 11).wall);
    write(&mut ledger, served(pan), at(day, 14).wall);
    assert_eq!(shown(&ledger), (Next::Begin(JobKind::Filter), one.clone()));
    let filtered = nights::note(pan, Told::Unguided, None, None);
    write(&mut ledger, filtered, at(day, 15).wall);
    assert_eq!(shown(&ledger), (Next::Begin(JobKind::LockUp), Vec::new()));
    write(&mut ledger, served(pan), at(day, 21).wall);
    assert_eq!(shown(&ledger), (Next::Begin(JobKind::Filter), one));
    assert!(ledger.unanswered_pans(day).contains(&pan));
}

#[test]
fn a_day_closed_begins_nothing_until_somebody_works() {
    let (mut ledger, day) = (demo(), wednesday());
    let before = ledger.unanswered_nights(day.plus(3));
    write(&mut ledger, closed(day, day.plus(1)), at(day, 9).wall);
    let of = |ledger: &Ledger, day| today::of(ledger, day);
    assert_eq!(of(&ledger, day).next(), Next::Closed(day.plus(2)));
    assert_eq!(of(&ledger, day.plus(2)).next(), Next::Begin(JobKind::LightUp));
    let asked = ledger.unanswered_nights(day.plus(3));
    assert_eq!((before.len() - asked.len(), asked.contains(&day)), (2, false));
    let pan = ledger.book.pans_in_use()[0].pan;
    write(&mut ledger, served(pan), at(day, 20).wall);
    assert_eq!(
        of(&ledger, day).next(),
        Next::Begin(JobKind::Filter),
        "worked all the same"
    );
    assert!(ledger.unanswered_nights(day.plus(3)).contains(&day));
}

#[test]
fn days_closed_move_the_change_by_as_many_and_leave_the_days_left() {
    let (mut ledger, day) = (demo(), wednesday());
    let pans: Vec<PanId> = ledger.book.pans_in_use().iter().map(|pan| pan.pan).collect();
    let lines = |ledger: &Ledger| {
        let line = |pan: &PanId| {
            let left = life::of(ledger, *pan, day).unwrap().days_left;
            (left, forecast::of(ledger, *pan, day).unwrap())
        };
        pans.iter().map(line).collect::<Vec<_>>()
    };
    let before = lines(&ledger);
    write(&mut ledger, closed(day.plus(1), day.plus(14)), at(day, 9).wall);
    let mut moved = 0;
    for ((left, line), (left_then, then)) in before.into_iter().zip(lines(&ledger)) {
        assert_eq!(left, left_then, "days left are trading days");
        assert!(then.ahead.iter().all(|point| point.day > day.plus(14)));
        assert_eq!(line.ahead.len(), then.ahead.len());
        if let (Some(change), Some(later)) = (line.change.filter(|change| *change > day), then.change) {
            assert_eq!(later.since(change), 14);
            moved += 1;
        }
    }
    assert!(moved > 0);
}

#[test]
fn a_pan_put_off_says_so_until_it_is_filtered() {
    let (mut ledger, day) = (demo(), wednesday());
    let pan = ledger.book.pans_in_use()[0].pan;
    let of = |ledger: &Ledger, day| today::of_pan(ledger, pan, day).unwrap().0.put_off;
    let why = || nights::note(pan, Told::NotDone("No time".into()), None, None);
    write(&mut ledger, served(pan), at(day, 20).wall);
    write(&mut ledger, why(), at(day, 22).wall);
    assert_eq!(of(&ledger, day), None);
    let next = day.plus(1);
    let put_off = of(&ledger, next).unwrap();
    assert_eq!((put_off.night, put_off.nights), (day, 1));
    assert_eq!(put_off.why.as_deref(), Some("No time"));
    write(&mut ledger, served(pan), at(next, 20).wall);
    assert!(today::of(&ledger, next).pans[0].due);
    write(&mut ledger, why(), at(next, 22).wall);
    assert_eq!(of(&ledger, next.plus(1)).unwrap().nights, 2);
    write(
        &mut ledger,
        nights::note(pan, Told::Unguided, None, None),
        at(next.plus(1), 12).wall,
    );
    assert_eq!(of(&ledger, next.plus(1)), None);
}

#[test]
fn today_says_whose_job_a_pan_does() {
    let (mut ledger, day) = (demo(), wednesday());
    let pans: Vec<PanId> = ledger.book.pans_in_use().iter().map(|pan| pan.pan).collect();
    let job = take_job(&ledger, pans[1], pans[0], day).unwrap();
    write(&mut ledger, Draft::now(None, Fact::PanJob(job)), at(day, 12).wall);
    let of = |day| today::of_pan(&ledger, pans[1], day).unwrap().0.job;
    assert_eq!((of(day).as_deref(), of(day.plus(1))), (Some("1"), None));
}
