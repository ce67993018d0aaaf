//! A pan's page: what is tried on its oil, what would help, readings that do not fit, and what each figure rests on.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::play;
use panward::domain::country::keeps_chips_cooler;
use panward::domain::entry::Entry;
use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Measured, Reading};
use panward::domain::facts::setup::Measures;
use panward::domain::ids::{Dev, EntryId, InstrumentId, PanId};
use panward::domain::ledger::{Happened, Ledger};
use panward::domain::oil_life::{Because, Estimate, Figure, Knob, Lacking, Trial, fresh_polar};
use panward::domain::quick::{Amendment, Doubt, Quick, QuickRefusal, Said};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::Share;
use panward::kitchen::forecast::Forecast;
use panward::kitchen::life::Known;
use panward::kitchen::what_if::TooHot;
use panward::kitchen::{life, oil, said, what_if};

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

fn pans(ledger: &Ledger) -> Vec<PanId> {
    ledger.book.pans_in_use().iter().map(|pan| pan.pan).collect()
}

fn turned(from: Trial, knob: Knob, steps: i32) -> Trial {
    (0..steps.abs()).fold(from, |trial, _| trial.turned(knob, steps > 0))
}

/// Mean of the interval of days left, more than 60 counted as 61.
fn days(life: &panward::domain::oil_life::OilLife) -> f64 {
    let days = life.days_left.unwrap();
    let of = |n: Option<u8>| f64::from(n.unwrap_or(61));
    (of(days.low) + of(days.median) + of(days.high)) / 3.0
}

#[test]
fn hotter_or_longer_is_never_more_and_fresh_oil_never_fewer() {
    let ledger = demo();
    for pan in pans(&ledger) {
        let usual = what_if::trial(&ledger, pan, wednesday()).unwrap();
        assert!(usual.is_as_it_is());
        let now = life::of(&ledger, pan, wednesday()).unwrap();
        let tried = |knob, steps| {
            let what = turned(usual, knob, steps).what_if();
            what_if::tried(&ledger, pan, wednesday(), &what).unwrap()
        };
        assert!(days(&tried(Knob::Temp, 10).life) <= days(&now));
        assert!(days(&tried(Knob::Temp, -10).life) >= days(&now));
        assert!(days(&tried(Knob::Hours, 8).life) <= days(&now));
        assert!(days(&tried(Knob::TopUp, 4).life) >= days(&now));
        let part = tried(Knob::PartChange, 20);
        assert!(
            days(&part.life) > days(&now),
            "{:?} {:?}",
            part.life.days_left,
            now.days_left
        );
        assert!(part.life.polar.median < now.polar.median);
        assert!(part.life.score.unwrap().now > now.score.unwrap().now);
        // The change comes before the services ahead, which then wear the oil as fast as they do as it is.
        let as_it_is = oil::line(&ledger, pan, wednesday());
        let as_it_is = (*as_it_is).as_ref().unwrap();
        let grown = |line: &Forecast, now: Estimate| line.ahead.first().unwrap().polar.median - now.median;
        let (usual, after) = (grown(as_it_is, now.polar), grown(&part.line, part.life.polar));
        assert!((usual - after).abs() < 0.2 * usual, "{usual} {after}");
        assert_eq!(
            (&part.line.past, &part.line.readings),
            (&as_it_is.past, &as_it_is.readings)
        );
    }
}

#[test]
fn nothing_tried_is_the_oil_as_it_is() {
    let ledger = demo();
    for pan in pans(&ledger) {
        let usual = what_if::trial(&ledger, pan, wednesday()).unwrap();
        let there_and_back = turned(turned(usual, Knob::Temp, 3), Knob::Temp, -3);
        let tried = what_if::tried(&ledger, pan, wednesday(), &there_and_back.what_if()).unwrap();
        assert_eq!(Some(tried.life), life::of(&ledger, pan, wednesday()));
        assert_eq!(Some(&tried.line), (*oil::line(&ledger, pan, wednesday())).as_ref());
    }
}

/// The day both lines name goes by the median: of days past the drawing too, and of none past 60 services.
#[test]
fn the_day_to_change_is_the_medians_own_also_past_the_drawing() {
    let ledger = demo();
    let mut past_the_drawing = 0;
    for pan in pans(&ledger) {
        let usual = what_if::trial(&ledger, pan, wednesday()).unwrap();
        for litres in 0..=20 {
            let what = turned(usual, Knob::PartChange, litres).what_if();
            let tried = what_if::tried(&ledger, pan, wednesday(), &what).unwrap();
            let median = tried.life.days_left.unwrap().median;
            let day = tried.line.change;
            assert_eq!(day.is_some(), median.is_some(), "{litres} L: {median:?}");
            let Some((day, median)) = day.zip(median) else { continue };
            let trading = (1..=day.since(wednesday())).filter(|n| ledger.book.is_trading_day(wednesday().plus(*n)));
            assert_eq!(trading.count(), usize::from(median), "{litres} L");
            past_the_drawing += usize::from(tried.line.ahead.iter().all(|point| point.day < day));
        }
    }
    assert!(past_the_drawing > 0);
}

#[test]
fn knobs_stop_at_their_ends() {
    let ledger = demo();
    let usual = what_if::trial(&ledger, pans(&ledger)[0], wednesday()).unwrap();
    for (knob, low, high) in [
        (Knob::Temp, 1_500, 1_900),
        (Knob::Hours, 15, 960),
        (Knob::TopUp, 0, 21_000),
        (Knob::PartChange, 0, 42_000),
    ] {
        assert_eq!(turned(usual, knob, -200).at(knob), low, "{knob:?}");
        let top = turned(usual, knob, 200);
        assert_eq!(top.at(knob), high, "{knob:?}");
        assert!(!top.turns(knob, true) && top.turns(knob, false));
    }
}

#[test]
fn chips_are_fried_cooler_by_law_in_the_european_union_and_the_united_kingdom() {
    assert!(keeps_chips_cooler("GB") && keeps_chips_cooler("IE") && keeps_chips_cooler("FR"));
    assert!(!keeps_chips_cooler("US") && !keeps_chips_cooler(""));
}

#[test]
fn the_heat_of_chips_is_spoken_of_only_where_it_is_tried_or_known() {
    let ledger = demo();
    let pan = pans(&ledger)[0];
    assert!(what_if::heat_is_logged(&ledger, pan), "the demo logs how hot it fries");
    assert!(!what_if::heat_is_logged(&ledger, PanId(77)));
    let at_175 = what_if::trial(&ledger, pan, wednesday()).unwrap();
    assert_eq!(at_175.at(Knob::Temp), 1_750);
    let (cooler, hotter) = (turned(at_175, Knob::Temp, -1), turned(at_175, Knob::Temp, 1));
    let told = what_if::too_hot_for_chips;
    assert_eq!(told(at_175, at_175, true), Some(TooHot::Usual));
    assert_eq!(told(at_175, at_175, false), None, "guessed, and nothing tried");
    assert_eq!(told(at_175, hotter, false), Some(TooHot::Tried));
    assert_eq!(told(at_175, cooler, false), None);
    assert_eq!(told(cooler, cooler, true), None);
    assert_eq!(told(cooler, at_175, true), Some(TooHot::Tried));
}

#[test]
fn what_helps_is_at_most_three_things_most_first_and_no_trifles() {
    let ledger = demo();
    let mut said = 0;
    for pan in pans(&ledger) {
        let advice = what_if::advice(&ledger, pan, wednesday());
        assert!(advice.levers.len() <= 3);
        assert!(advice.levers.iter().all(|lift| lift.services >= 0.5));
        assert!(
            advice.levers.is_sorted_by(|a, b| a.services >= b.services),
            "{:?}",
            advice.levers
        );
        said += advice.levers.len();
        let Some(measure) = advice.measure else { continue };
        assert!(measure.after >= wednesday());
        assert!(measure.after == wednesday() || ledger.book.is_trading_day(measure.after));
        let tool = ledger.book.instrument(measure.with.unwrap()).unwrap();
        assert_eq!(tool.measures, Measures::Polar);
    }
    assert!(said > 0);
}

#[test]
fn every_reason_stands_behind_a_figure_and_every_figure_has_reasons() {
    let ledger = demo();
    for pan in pans(&ledger) {
        let because = life::of(&ledger, pan, wednesday()).unwrap().because;
        assert!(because.iter().all(|b| !b.behind().is_empty()));
        for figure in [Figure::Level, Figure::DaysLeft, Figure::Score] {
            assert!(because.iter().any(|b| b.behind().contains(&figure)), "{figure:?}");
        }
        let of = |wanted: fn(&Because) -> bool| because.iter().filter(|b| wanted(b)).count();
        assert_eq!(of(|b| matches!(b, Because::Limit(..))), 1);
        assert_eq!(of(|b| matches!(b, Because::Ahead { .. })), 1);
    }
}

struct Probe {
    ledger: Ledger,
    pan: PanId,
    tool: Option<InstrumentId>,
    expected: Estimate,
}

/// The first pan, and what its next reading should show.
fn probe() -> Probe {
    let ledger = demo();
    let pan = pans(&ledger)[0];
    let tools = ledger.book.instruments.values();
    let tool = tools
        .filter(|t| t.measures == Measures::Polar)
        .map(|t| t.instrument)
        .next();
    let known = Known::of(&ledger, pan, wednesday()).unwrap();
    let spread = tool.and_then(|id| ledger.book.instrument(id)?.spread);
    let habit = &known.outlook.habit;
    let expected = panward::domain::oil_life::reading_ahead(&known.history, habit, &known.shop, tool, spread);
    Probe {
        ledger,
        pan,
        tool,
        expected,
    }
}

/// Late on Wednesday evening.
fn now() -> Now {
    Now {
        wall: wednesday().begins(0, 0).plus(23 * Millis::HOUR),
        mono: 0,
        life: PageLife(1),
        off_min: 0,
    }
}

impl Probe {
    fn said(&self, percent: f64, sure: bool) -> Said {
        Said {
            what: Quick::Reading(Reading {
                pan: self.pan,
                value: Measured::Polar(Share::from_cpc((percent * 100.0).round() as u16).unwrap()),
                instrument: self.tool,
                oil: None,
            }),
            who: None,
            at: None,
            sure,
        }
    }

    fn say(&self, percent: f64, sure: bool) -> Result<usize, QuickRefusal> {
        said::drafts(&self.ledger, self.said(percent, sure), now()).map(|drafts| drafts.len())
    }
}

#[test]
fn a_reading_far_from_what_is_believed_is_asked_about_once_and_kept() {
    let mut probe = probe();
    let Estimate { low, median, high } = probe.expected;
    assert_eq!(probe.say(median, false), Ok(1), "{:?}", probe.expected);
    assert_eq!(probe.say(high, false), Ok(1));
    let far = median + 4.0 * (high - low);
    let Err(QuickRefusal::Doubt(Doubt::Unexpected { low: from, high: to })) = probe.say(far, false) else {
        panic!("{far} against {:?}", probe.expected)
    };
    assert!((from.percent() - low).abs() < 0.01 && (to.percent() - high).abs() < 0.01);
    assert_eq!(probe.say(far, true), Ok(1));
    assert_eq!(
        probe.say(0.0, false),
        Err(QuickRefusal::Impossible),
        "what cannot be is refused, not asked about"
    );

    // Saved, it is kept, and named among those that do not fit.
    let advised = |probe: &Probe| what_if::advice(&probe.ledger, probe.pan, wednesday()).measure;
    assert!(advised(&probe).is_none_or(|measure| !measure.again));
    let draft = said::drafts(&probe.ledger, probe.said(far, true), now())
        .unwrap()
        .remove(0);
    let id = EntryId(77);
    probe.ledger.push(Entry {
        id,
        dev: Dev(u64::MAX),
        seq: 1,
        at: now().wall,
        rec: now().wall,
        clk: None,
        off_min: 0,
        who: draft.who,
        fact: draft.fact,
    });
    let life = life::of(&probe.ledger, probe.pan, wednesday()).unwrap();
    assert!(life.contradicting.contains(&id), "{:?}", life.contradicting);
    assert!(
        life.because
            .iter()
            .any(|b| matches!(b, Because::Entry { entry, .. } if *entry == id))
    );

    // Until a reading of its kind comes after it, what helps most is to read it again.
    let again = advised(&probe).unwrap();
    assert_eq!((again.after, again.with, again.again), (wednesday(), probe.tool, true));
    let draft = said::drafts(&probe.ledger, probe.said(median, true), now())
        .unwrap()
        .remove(0);
    probe.ledger.push(Entry {
        id: EntryId(78),
        dev: Dev(u64::MAX),
        seq: 2,
        at: now().wall.plus(1),
        rec: now().wall.plus(1),
        clk: None,
        off_min: 0,
        who: draft.who,
        fact: draft.fact,
    });
    assert!(advised(&probe).is_none_or(|measure| !measure.again));
}

/// The demo's log with only what `keep` says.
fn demo_with(keep: impl Fn(&Fact) -> bool) -> Ledger {
    let played = ready(play(3, wednesday(), |_| 0)).unwrap();
    let entries = played.records.iter().map(|r| r.entry().clone());
    let kept: Vec<Entry> = entries.filter(|entry| keep(&entry.fact)).collect();
    Ledger::replay(&kept)
}

#[test]
fn oil_does_not_stay_fresh_for_want_of_a_pencil() {
    let silent = demo_with(|fact| !matches!(fact, Fact::Service(_) | Fact::Reading(_)));
    for pan in pans(&silent) {
        let life = life::of(&silent, pan, wednesday()).unwrap();
        let guessed = life
            .because
            .iter()
            .any(|b| matches!(b, Because::GuessedHours(n) if *n > 0));
        assert!(guessed && life.lacking.contains(&Lacking::Hours), "{:?}", life.because);
        let fresh = fresh_polar(silent.fill(pan).unwrap().fat).mean;
        assert!(life.polar.median > fresh + 1.0, "{:?}", life.polar);
    }
}

#[test]
fn a_first_fill_is_taken_to_be_topped_up_and_says_so() {
    let bare = demo_with(|fact| {
        matches!(
            fact,
            Fact::Kitchen(_) | Fact::Person(_) | Fact::Pan(_) | Fact::Machine(_) | Fact::Instrument(_) | Fact::Fill(_)
        )
    });
    let mut guessed = 0;
    for pan in pans(&bare) {
        let life = life::of(&bare, pan, wednesday()).unwrap();
        let first = bare.fills(pan).len() == 1;
        assert_eq!(life.because.contains(&Because::GuessedTopUps), first);
        guessed += usize::from(first);
    }
    // Where the log knows how earlier oil was topped up, nothing is guessed.
    let whole = demo();
    for pan in pans(&whole).into_iter().filter(|pan| whole.fills(*pan).len() > 1) {
        let life = life::of(&whole, pan, wednesday()).unwrap();
        assert!(!life.because.contains(&Because::GuessedTopUps));
        guessed += 1;
    }
    assert!(guessed > 0, "some pan is looked at");
}

#[test]
fn every_point_of_the_line_is_what_was_believed_that_night() {
    let played = ready(play(3, wednesday(), |_| 0)).unwrap();
    let entries: Vec<Entry> = played.records.iter().map(|r| r.entry().clone()).collect();
    let whole = Ledger::replay(&entries);
    let mut compared = 0;
    for pan in pans(&whole) {
        let line = oil::line(&whole, pan, wednesday());
        let line = (*line).as_ref().unwrap();
        for point in &line.past {
            // What other pans taught since is known when looking back; this oil's own later days are not.
            let its_later = whole
                .fill(pan)
                .unwrap()
                .events
                .iter()
                .filter(|event| event.day > point.day);
            let later: Vec<EntryId> = its_later
                .filter(|event| {
                    matches!(
                        event.what,
                        Happened::Service(_) | Happened::Reading(_) | Happened::TopUp(_)
                    )
                })
                .map(|event| event.id)
                .collect();
            let by_night = entries.iter().filter(|entry| !later.contains(&entry.id));
            let then = Ledger::replay(&by_night.cloned().collect::<Vec<_>>());
            let believed = life::of(&then, pan, point.day).unwrap().polar;
            let off = (believed.median - point.polar.median).abs();
            assert!(off < 1e-9, "{:?}: {believed:?}, not {:?}", point.day, point.polar);
            compared += 1;
        }
    }
    assert!(compared > 8, "{compared}");
}

#[test]
fn a_reading_put_right_is_asked_about_as_one_that_is_typed() {
    let mut probe = probe();
    let Estimate { low, median, high } = probe.expected;
    let mut write = |id: u128, percent: f64, minute: i64| {
        let draft = said::drafts(&probe.ledger, probe.said(percent, true), now())
            .unwrap()
            .remove(0);
        let at = now().wall.plus(minute * Millis::MINUTE);
        probe.ledger.push(Entry {
            id: EntryId(id),
            dev: Dev(u64::MAX),
            seq: u32::try_from(id).unwrap(),
            at,
            rec: at,
            clk: None,
            off_min: 0,
            who: draft.who,
            fact: draft.fact,
        });
    };
    write(77, median, 0);
    write(78, median + 0.5, 2);
    let later = Now {
        wall: now().wall.plus(5 * Millis::MINUTE),
        ..now()
    };
    let anew = |of: u128, percent: f64, sure: bool| {
        let Quick::Reading(reading) = probe.said(percent, sure).what else {
            panic!("a reading")
        };
        let amendment = Amendment {
            why: "mistyped".to_owned(),
            at: None,
            fact: Some(Fact::Reading(reading)),
        };
        said::amend(&probe.ledger, EntryId(of), amendment, sure, None, later)
    };
    assert!(anew(77, high, false).is_ok(), "what may well be so is not asked about");
    let far = median + 4.0 * (high - low);
    let asked = anew(77, far, false);
    let Err(QuickRefusal::Doubt(Doubt::Unexpected { low: from, high: to })) = asked else {
        panic!("{far} against {:?}: {asked:?}", probe.expected)
    };
    // Held against the oil as it stood before: what the entry said itself, and the later reading, are not believed.
    assert!((from.percent() - low).abs() < 0.01 && (to.percent() - high).abs() < 0.01);
    assert!(anew(77, far, true).is_ok(), "asked once, and kept");
    assert_eq!(anew(77, 0.0, false), Err(QuickRefusal::Impossible));
    let fell = anew(78, median - 3.2, false);
    assert!(
        matches!(fell, Err(QuickRefusal::Doubt(Doubt::Fell | Doubt::Unexpected { .. }))),
        "{fell:?}"
    );
}
