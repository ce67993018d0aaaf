//! A glance is taken of one state of one log on one day by one build, comes back as it was, and is nothing otherwise.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::play;
use panward::domain::claim::ClaimKind;
use panward::domain::entry::Draft;
use panward::domain::facts::Fact;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::oil::OilChange;
use panward::domain::ids::{Dev, EntryId, JobId};
use panward::domain::ledger::{Because, Lost, PutOff};
use panward::domain::oil_life::{Basis, DaysLeft, Usual, Word};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::{Amount, Typed, Unit};
use panward::kitchen::glance::{self, Taken};
use panward::kitchen::today::{self, LifeToday, Today};
use panward::kitchen::{Kitchen, Order, Outside};
use panward::store::MemoryJournal;

fn ready<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

fn at(day: Day, hour: i64) -> Now {
    Now {
        wall: day.begins(0, 0).plus(hour * Millis::HOUR),
        mono: 0,
        life: PageLife(1),
        off_min: 0,
    }
}

/// Wednesday 25 November 2026.
fn wednesday() -> Day {
    Day::of(Millis(1_795_608_000_000), 0, 0)
}

const DEV: Dev = Dev(7);

/// The demo's kitchen, and how many entries its log holds.
fn demo() -> (Kitchen<MemoryJournal>, usize) {
    let journal = MemoryJournal::new(DEV);
    let played = ready(play(3, wednesday(), |_| 0)).unwrap();
    for record in &played.records {
        journal.put_raw(record.entry().dev, record.entry().seq, record.line());
    }
    let outside = Outside {
        off_min: Box::new(|_| 0),
        random: Box::new(|| [9; 10]),
    };
    let kitchen = ready(Kitchen::open(journal, outside, &at(wednesday(), 12))).unwrap();
    (kitchen, played.records.len())
}

fn of(entries: usize) -> Taken {
    Taken {
        build: "panward-1.wasm".to_owned(),
        dev: DEV,
        entries,
    }
}

fn shown(kitchen: &Kitchen<MemoryJournal>) -> Today {
    today::of(kitchen.ledger(), wednesday())
}

fn kept(kitchen: &Kitchen<MemoryJournal>) -> Option<String> {
    glance::taken(
        kitchen,
        &shown(kitchen),
        &of(kitchen.entries_held()),
        &at(wednesday(), 12),
    )
}

#[test]
fn the_demos_today_comes_back_as_it_was_with_the_number_to_call() {
    let (kitchen, entries) = demo();
    assert_eq!(kitchen.entries_held(), entries);
    let glance = glance::read(&kept(&kitchen).unwrap(), &of(entries)).unwrap();
    assert_eq!(glance.today, shown(&kitchen));
    let set_up = kitchen.ledger().book.kitchen.clone().unwrap();
    assert_eq!(glance.country, set_up.country);
    assert_eq!(glance.emergency_number, set_up.emergency_number);
}

#[test]
fn every_word_figure_and_mark_comes_back() {
    let (kitchen, entries) = demo();
    let mut all = shown(&kitchen);
    let days = |low, median, high| Some(DaysLeft { low, median, high });
    let lives = [
        (
            Some(0),
            days(Some(0), Some(1), Some(60)),
            Some(Word::ChangeNow),
            None,
            Basis::Readings,
        ),
        (
            Some(100),
            days(None, None, None),
            Some(Word::Good),
            Some(Usual { days: 9, today: 4 }),
            Basis::UsualDaysAndPriors,
        ),
        (None, None, None, None, Basis::Readings),
    ];
    let lives = lives.map(|(score, days_left, word, usual, basis)| LifeToday {
        score,
        days_left,
        holds: score,
        word,
        usual,
        basis,
    });
    for (pan, life) in all.pans.iter_mut().zip(lives.into_iter().map(Some).chain([None])) {
        pan.life = life;
        pan.claims = ClaimKind::ALL.to_vec();
        (pan.used, pan.due, pan.shade) = (true, life.is_some(), life.map(|_| 5));
        pan.name = "2 \"left\"\n".to_owned();
        pan.last_filtered = None;
        pan.job = life.map(|_| "1".to_owned());
        pan.put_off = life.map(|_| PutOff {
            night: wednesday().plus(-1),
            why: Some("no time".to_owned()),
            nights: 2,
        });
    }
    all.closed = Some(wednesday().plus(9));
    all.unanswered = Some((wednesday(), vec!["1".to_owned(), "2".to_owned()]));
    all.done = JobKind::ALL.to_vec();
    all.none_filtered = true;
    all.look_owed = true;
    all.sheet_open = true;
    let text = glance::taken(&kitchen, &all, &of(entries), &at(wednesday(), 12)).unwrap();
    assert_eq!(glance::read(&text, &of(entries)).unwrap().today, all);
}

#[test]
fn another_log_length_or_build_and_a_broken_text_are_no_glance() {
    let (kitchen, entries) = demo();
    let text = kept(&kitchen).unwrap();
    let mine = of(entries);
    assert_eq!(glance::read(&text, &of(entries + 1)), None);
    assert_eq!(
        glance::read(
            &text,
            &Taken {
                dev: Dev(8),
                ..mine.clone()
            }
        ),
        None
    );
    let newer = Taken {
        build: "panward-2.wasm".to_owned(),
        ..mine.clone()
    };
    assert_eq!(glance::read(&text, &newer), None);
    for broken in [
        "",
        "{}",
        &text[..text.len() - 1],
        &text.replacen("\"word\":", "\"word\":9", 1),
    ] {
        assert_eq!(glance::read(broken, &mine), None, "{broken}");
    }
}

#[test]
fn it_holds_to_the_end_of_its_trading_day_and_not_after() {
    let (kitchen, entries) = demo();
    let glance = glance::read(&kept(&kitchen).unwrap(), &of(entries)).unwrap();
    let start = i64::from(kitchen.ledger().book.day_start_min()) * Millis::MINUTE;
    let end = wednesday().begins(0, 0).plus(24 * Millis::HOUR + start);
    let taken = at(wednesday(), 12).wall;
    assert!([taken, end.plus(-1)].into_iter().all(|wall| glance.holds_at(wall)));
    assert!(!glance.holds_at(end));
    assert!(!glance.holds_at(taken.plus(-1)), "a clock that ran back");
}

#[test]
fn none_is_kept_while_a_job_is_open_a_claim_is_lost_or_a_pan_stands_empty() {
    let (mut kitchen, entries) = demo();
    let job = JobFact::new(JobId(1), JobKind::LockUp, JobEvent::Opened);
    let draft = Draft::now(None, Fact::Job(Box::new(job)));
    ready(kitchen.send(
        Order::TimeConfirmed(Box::new(Order::Write(vec![draft]))),
        &at(wednesday(), 22),
    ))
    .unwrap();
    assert_eq!(kitchen.entries_held(), entries + 1);
    assert_eq!(kept(&kitchen), None);

    let (kitchen, entries) = demo();
    let mut all = today::of(kitchen.ledger(), wednesday());
    all.pans[0].lost.push(Lost {
        what: ClaimKind::Halal,
        at: at(wednesday(), 11).wall,
        off_min: 0,
        by: EntryId(1),
        because: Because::Said,
        emptied: false,
    });
    assert_eq!(glance::taken(&kitchen, &all, &of(entries), &at(wednesday(), 12)), None);

    let (mut kitchen, _) = demo();
    let (pan, volume) = {
        let ledger = kitchen.ledger();
        let pan = ledger.book.pans_in_use()[0].pan;
        (pan, ledger.fill(pan).unwrap().volume)
    };
    let typed = Typed {
        thousandths: volume.ml(),
        unit: Unit::Litres,
    };
    let change = OilChange {
        pan,
        amount: Amount { volume, typed },
        reason: "dark".to_owned(),
        temp: None,
        container: None,
    };
    let draft = Draft::now(None, Fact::OilChange(change));
    let order = Order::TimeConfirmed(Box::new(Order::Write(vec![draft])));
    ready(kitchen.send(order, &at(wednesday(), 22))).unwrap();
    assert_eq!(kitchen.ledger().empties(), [pan]);
    assert_eq!(kept(&kitchen), None);
}
