//! The form of a pan: what is in it, how its heat is seen off, what it promises.

use std::num::NonZeroU16;

use panward::domain::claim::{ClaimKind, Exposure};
use panward::domain::facts::Fact;
use panward::domain::facts::oil::Age;
use panward::domain::facts::rhythm::{Rhythm, Weekdays};
use panward::domain::facts::setup::{HeatKind, OffSign, Pan};
use panward::domain::ledger::Book;
use panward::domain::setting_up::{Answers, Around, Fault, Field, Subject};

use crate::{blank, book, check, fact, right, today};

fn pan(answers: &Answers) -> Pan {
    match fact(Subject::Pan, answers) {
        Fact::Pan(pan) => *pan,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_pan_brings_what_is_in_it() {
    let ages = [
        ("unknown", Some(Age::Unknown)),
        ("fresh", Some(Age::Fresh)),
        ("since", Some(Age::Since(today().plus(-4)))),
        ("nothing", None),
    ];
    for (key, age) in ages {
        let form = right(Subject::Pan)
            .after(Field::InIt, key)
            .after(Field::FreshOn, &today().plus(-4).date().to_string());
        let said = check(Subject::Pan, 7, &form, &Book::default()).unwrap();
        let found = said.iter().find_map(|fact| match fact {
            Fact::Fill(fill) => Some((fill.age, fill.amount.volume.ml())),
            _ => None,
        });
        assert_eq!(found, age.map(|age| (age, 42_000)), "{key}");
    }
}

#[test]
fn oil_is_not_fresh_tomorrow_nor_three_years_ago() {
    for (days, why) in [(1, Fault::DayAhead), (-1000, Fault::TooLongAgo)] {
        let form = right(Subject::Pan)
            .after(Field::InIt, "since")
            .after(Field::FreshOn, &today().plus(days).date().to_string());
        assert_eq!(
            check(Subject::Pan, 7, &form, &Book::default()),
            Err(vec![(Field::FreshOn, why)])
        );
    }
}

#[test]
fn two_signs_of_off_follow_the_heat() {
    assert_eq!(pan(&right(Subject::Pan)).off_signs, [OffSign::Knob, OffSign::Flame]);
    let electric = right(Subject::Pan).after(Field::PanHeat, HeatKind::Electric.key());
    assert_eq!(pan(&electric).off_signs, [OffSign::Knob, OffSign::Light]);
    let third = electric.toggled(Field::OffSigns, "plug");
    assert_eq!(third, "light,plug", "of three the oldest goes");
}

#[test]
fn a_promise_that_the_pan_breaks_itself_is_refused() {
    let broken = |what: ClaimKind, food: &str, fat: &str| {
        let form = right(Subject::Pan)
            .after(Field::Claims, what.key())
            .after(Field::ClaimBasis, "own pan")
            .after(Field::Food, food)
            .after(Field::PanFat, fat);
        check(Subject::Pan, 7, &form, &Book::default()).err()
    };
    let refused = |claim, met| Some(vec![(Field::Claims, Fault::BreaksClaim { claim, met })]);
    assert_eq!(
        broken(ClaimKind::GlutenFree, "fish,gluten", "rapeseed"),
        refused(ClaimKind::GlutenFree, Exposure::Gluten)
    );
    assert_eq!(
        broken(ClaimKind::Vegetarian, "", "dripping"),
        refused(ClaimKind::Vegetarian, Exposure::Meat)
    );
    assert_eq!(broken(ClaimKind::GlutenFree, "fish", "rapeseed"), None);
}

#[test]
fn a_promise_keeps_its_first_day_and_ends_with_its_last() {
    let form = right(Subject::Pan)
        .after(Field::Claims, "gluten_free")
        .after(Field::ClaimBasis, "own pan");
    let mut pan = pan(&form);
    let made = today().plus(-30);
    pan.claims[0].from = made;
    let book = book(&[Fact::Pan(Box::new(pan))]);
    let around = Around {
        book: &book,
        today: today(),
    };
    let form = Subject::Pan.filled(7, around).unwrap();
    let claims = |form: &Answers| match &check(Subject::Pan, 7, form, &book).unwrap()[0] {
        Fact::Pan(pan) => pan.claims.clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!((claims(&form)[0].from, claims(&form)[0].until), (made, None));
    let given_up = form.after(Field::Claims, "");
    let claims = claims(&given_up);
    assert_eq!((claims[0].from, claims[0].until), (made, Some(today().plus(-1))));
}

#[test]
fn a_second_pan_starts_as_the_first() {
    let book = book(&[fact(Subject::Pan, &right(Subject::Pan))]);
    let second = blank(Subject::Pan, &book);
    assert_eq!(second.get(Field::PanName), "2");
    assert_eq!(
        (second.get(Field::PanFull), second.get(Field::PanFat)),
        ("42", "rapeseed")
    );
    assert!(check(Subject::Pan, 8, &second, &book).is_ok());
}

#[test]
fn a_pan_is_filtered_by_days_by_sessions_or_on_its_own_nights() {
    let rhythm = |by: &str, field, answer: &str| {
        let form = right(Subject::Pan).after(Field::RhythmBy, by).after(field, answer);
        check(Subject::Pan, 7, &form, &Book::default()).map(|said| match &said[0] {
            Fact::Pan(pan) => pan.rhythm,
            other => panic!("{other:?}"),
        })
    };
    let every = |n| NonZeroU16::new(n).unwrap();
    let nights = Weekdays::of([false, false, true, false, false, false, true]).unwrap();
    for (by, field, answer, expected) in [
        ("days", Field::Rhythm, "", None),
        ("", Field::Rhythm, "3", Some(Rhythm::Days(every(3)))),
        ("days", Field::Rhythm, "2", Some(Rhythm::Days(every(2)))),
        // What stood in the field of another way says nothing.
        ("days", Field::RhythmSessions, "2", None),
        ("sessions", Field::RhythmSessions, "1", Some(Rhythm::Sessions(every(1)))),
        ("weekdays", Field::RhythmWeekdays, "6,2", Some(Rhythm::Weekdays(nights))),
    ] {
        assert_eq!(rhythm(by, field, answer), Ok(expected), "{by} {answer}");
    }
    let range = Fault::OutOfRange { least: 1, most: 60 };
    for (by, field, answer, why) in [
        ("days", Field::Rhythm, "0", range),
        ("sessions", Field::RhythmSessions, "0", range),
        ("sessions", Field::RhythmSessions, "", Fault::Missing),
        ("weekdays", Field::RhythmWeekdays, "", Fault::Missing),
    ] {
        assert_eq!(rhythm(by, field, answer), Err(vec![(field, why)]), "{by} {answer}");
    }
}

#[test]
fn a_form_brings_back_when_a_pan_is_filtered() {
    let every = |n| NonZeroU16::new(n).unwrap();
    let nights = Weekdays::of([true, false, false, false, true, false, false]).unwrap();
    for rhythm in [
        None,
        Some(Rhythm::Days(every(2))),
        Some(Rhythm::Sessions(every(3))),
        Some(Rhythm::Weekdays(nights)),
    ] {
        let mut pan = pan(&right(Subject::Pan));
        pan.rhythm = rhythm;
        let book = book(&[Fact::Pan(Box::new(pan))]);
        let around = Around {
            book: &book,
            today: today(),
        };
        let form = Subject::Pan.filled(7, around).unwrap();
        let said = check(Subject::Pan, 7, &form, &book).unwrap();
        assert!(matches!(&said[0], Fact::Pan(pan) if pan.rhythm == rhythm), "{rhythm:?}");
    }
}
