//! The forms of set-up: what they offer, what they make of it, what they refuse.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod first;
mod kitchen;
mod machines;
mod pans;
mod people;
mod words;

use panward::domain::entry::Entry;
use panward::domain::facts::Fact;
use panward::domain::ids::{Dev, EntryId};
use panward::domain::ledger::{Book, Ledger};
use panward::domain::setting_up::{Answers, Around, Fault, Field, Subject};
use panward::domain::time::{Day, Millis};

/// 2026-11-25, noon UTC.
const NOON: Millis = Millis(1_795_608_000_000);

fn today() -> Day {
    Day::of(NOON, 0, 300)
}

fn book(facts: &[Fact]) -> Book {
    let entries: Vec<Entry> = (1..)
        .zip(facts)
        .map(|(seq, fact)| Entry {
            id: EntryId(u128::from(seq)),
            dev: Dev(1),
            seq,
            at: NOON,
            rec: NOON,
            clk: None,
            off_min: 0,
            who: None,
            fact: fact.clone(),
        })
        .collect();
    Ledger::replay(&entries).book
}

fn check(subject: Subject, id: u128, answers: &Answers, book: &Book) -> Result<Vec<Fact>, Vec<(Field, Fault)>> {
    let around = Around { book, today: today() };
    let wrongs = |wrongs: Vec<panward::domain::setting_up::Wrong>| wrongs.iter().map(|w| (w.field, w.why)).collect();
    subject.check(id, answers, around).map_err(wrongs)
}

fn blank(subject: Subject, book: &Book) -> Answers {
    subject.blank(Around { book, today: today() }, "Europe/London")
}

/// A form that is right, for `subject` in a kitchen with nothing else in it.
fn right(subject: Subject) -> Answers {
    let given: &[(Field, &str)] = match subject {
        Subject::Kitchen => &[(Field::KitchenName, "Harbour Lane")],
        Subject::Person => &[(Field::Initials, "HL"), (Field::Adult, "yes"), (Field::Vouched, "yes")],
        Subject::Pan => &[
            (Field::PanFull, "42"),
            (Field::PanMin, "33.5"),
            (Field::PanMark, "line in the back wall"),
            (Field::PanFat, "rapeseed"),
        ],
        Subject::Machine => &[
            (Field::OutBy, "nozzle"),
            (Field::MachineName, "The pump"),
            (Field::Tank, "60"),
            (Field::Heater, "no"),
            (Field::Filters, "mesh, paper"),
        ],
        Subject::Instrument => &[(Field::InstrumentName, "Probe")],
    };
    let start = blank(subject, &Book::default());
    given
        .iter()
        .fold(start, |form, (field, value)| form.after(*field, value))
}

fn fact(subject: Subject, answers: &Answers) -> Fact {
    check(subject, 7, answers, &Book::default()).unwrap().remove(0)
}

/// The pages of a form as answered.
fn pages(subject: Subject, answers: &Answers) -> Vec<Vec<Field>> {
    let book = Book::default();
    let around = Around {
        book: &book,
        today: today(),
    };
    subject.pages(7, answers, around)
}

#[test]
fn a_page_refuses_what_save_would_whatever_is_wrong_on_others() {
    for subject in Subject::ALL {
        let mut form = right(*subject);
        if *subject == Subject::Machine {
            form = form.after(Field::Heater, "yes").after(Field::HeaterWatts, "900");
        }
        let told = |form: &Answers, field| {
            let wrongs = check(*subject, 7, form, &Book::default()).err().unwrap_or_default();
            wrongs.iter().any(|(wrong, _)| *wrong == field)
        };
        let pages = |form: &Answers| pages(*subject, form);
        let fields = pages(&form).concat();
        let spoilt = |form: &Answers, field| [form.clone().with(field, ""), form.clone().with(field, "?")];
        for field in &fields {
            for alone in spoilt(&form, *field).iter().filter(|form| told(form, *field)) {
                let beside = pages(alone).into_iter().filter(|page| !page.contains(field));
                for other in beside.flatten() {
                    for both in spoilt(alone, other) {
                        assert!(
                            told(&both, *field) || !pages(&both).concat().contains(field),
                            "{field:?} goes untold while {other:?} is {:?}",
                            both.get(other)
                        );
                    }
                }
            }
        }
    }
}

#[test]
fn what_is_wrong_is_told_at_its_field() {
    let cases: &[(Subject, Field, &str, Field, Fault)] = &[
        (
            Subject::Kitchen,
            Field::KitchenName,
            "  ",
            Field::KitchenName,
            Fault::Missing,
        ),
        (
            Subject::Kitchen,
            Field::DayStart,
            "02:59",
            Field::DayStart,
            Fault::OutOfHours { from: 180, to: 660 },
        ),
        (
            Subject::Kitchen,
            Field::DayStart,
            "11:01",
            Field::DayStart,
            Fault::OutOfHours { from: 180, to: 660 },
        ),
        (Subject::Kitchen, Field::DayStart, "5", Field::DayStart, Fault::NotATime),
        (
            Subject::Kitchen,
            Field::TradingDays,
            "",
            Field::TradingDays,
            Fault::Missing,
        ),
        (
            Subject::Kitchen,
            Field::UsualHours,
            "five",
            Field::UsualHours,
            Fault::NotANumber,
        ),
        (
            Subject::Kitchen,
            Field::QuietFrom,
            "23:00",
            Field::QuietTo,
            Fault::Missing,
        ),
        (
            Subject::Kitchen,
            Field::LimitPolar,
            "",
            Field::LimitPolar,
            Fault::Missing,
        ),
        (Subject::Person, Field::Initials, "", Field::Initials, Fault::Missing),
        (Subject::Person, Field::Adult, "", Field::Adult, Fault::Missing),
        (
            Subject::Person,
            Field::Vouched,
            "no",
            Field::Vouched,
            Fault::NobodySigned,
        ),
        (
            Subject::Pan,
            Field::PanFull,
            "0.9",
            Field::PanFull,
            Fault::OutOfRange { least: 1, most: 300 },
        ),
        (
            Subject::Pan,
            Field::PanFull,
            "300.5",
            Field::PanFull,
            Fault::OutOfRange { least: 1, most: 300 },
        ),
        (Subject::Pan, Field::PanMin, "42", Field::PanMin, Fault::MinNotUnderFull),
        (Subject::Pan, Field::PanMark, "", Field::PanMark, Fault::Missing),
        (Subject::Pan, Field::OffSigns, "knob", Field::OffSigns, Fault::NotTwo),
        (
            Subject::Pan,
            Field::OffSigns,
            "knob,thermostat",
            Field::OffSigns,
            Fault::SameKind,
        ),
        (
            Subject::Pan,
            Field::OffSigns,
            "flame,light",
            Field::OffSigns,
            Fault::SameKind,
        ),
        (
            Subject::Pan,
            Field::OffSigns,
            "isolator,gas_tap",
            Field::OffSigns,
            Fault::SameKind,
        ),
        (
            Subject::Pan,
            Field::OffSigns,
            "knob,plug",
            Field::OffSigns,
            Fault::NotOnThisHeat,
        ),
        (Subject::Pan, Field::PanFat, "", Field::PanFat, Fault::Missing),
        (
            Subject::Pan,
            Field::Claims,
            "vegetarian",
            Field::ClaimBasis,
            Fault::Missing,
        ),
        (Subject::Pan, Field::InIt, "since", Field::FreshOn, Fault::Missing),
        (Subject::Pan, Field::InIt, "", Field::InIt, Fault::Missing),
        (
            Subject::Machine,
            Field::WindowHigh,
            "201",
            Field::WindowHigh,
            Fault::OutOfRange { least: 0, most: 200 },
        ),
        (
            Subject::Machine,
            Field::WindowHigh,
            "100",
            Field::WindowHigh,
            Fault::WindowTurned,
        ),
        (
            Subject::Machine,
            Field::Target,
            "90",
            Field::Target,
            Fault::OutsideWindow,
        ),
        (Subject::Machine, Field::Filters, " , ", Field::Filters, Fault::Missing),
        (Subject::Machine, Field::Heater, "", Field::Heater, Fault::Missing),
        (
            Subject::Instrument,
            Field::Measures,
            "",
            Field::Measures,
            Fault::Missing,
        ),
    ];
    for (subject, field, value, at, why) in cases {
        let form = right(*subject).after(*field, value);
        assert_eq!(
            check(*subject, 7, &form, &Book::default()),
            Err(vec![(*at, *why)]),
            "{subject:?} with {field:?} = {value:?}"
        );
    }
}

#[test]
fn every_form_that_was_saved_comes_back_as_it_was() {
    for subject in Subject::ALL {
        let said = check(*subject, 7, &right(*subject), &Book::default()).unwrap();
        let book = book(&said);
        let around = Around {
            book: &book,
            today: today(),
        };
        let form = subject.filled(7, around).unwrap();
        assert_eq!(
            check(*subject, 7, &form, &book),
            Ok(vec![said[0].clone()]),
            "{subject:?}: an edit that changes nothing says the same, and no second fill"
        );
    }
}

#[test]
fn an_unfinished_form_survives_being_put_away() {
    let form = right(Subject::Pan).after(Field::PanMin, "33,");
    let kept: Vec<(String, String)> = form.iter().map(|(f, v)| (f.key().to_owned(), v.to_owned())).collect();
    let back: Answers = kept
        .into_iter()
        .filter_map(|(key, value)| Some((Field::from_key(&key)?, value)))
        .collect();
    assert_eq!(back, form);
}

#[test]
fn a_first_set_up_asks_for_one_thing_after_the_other() {
    let mut said = Vec::new();
    let mut asked = Vec::new();
    while let Some(subject) = Subject::first_missing(&book(&said)) {
        asked.push(subject);
        said.push(fact(subject, &right(subject)));
    }
    assert_eq!(
        asked,
        [Subject::Kitchen, Subject::Person, Subject::Pan, Subject::Machine]
    );
}
