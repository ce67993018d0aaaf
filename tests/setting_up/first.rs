//! A first set-up on the shortest honest way: what it asks, how many pages, touches and typed letters, and the time a
//! person takes for them.
//!
//! Keystroke-level estimate after Card, Moran and Newell, 1980 (from memory), with figures for a phone that are this
//! project's own: 1.5 s a touch with its aim, 0.3 s a typed letter, 3 s to read a page.

use panward::domain::facts::Fact;
use panward::domain::facts::setup::Held;
use panward::domain::ledger::Book;
use panward::domain::setting_up::{Answers, Around, Field, Subject};
use panward::words::Lang;
use panward::words::forms::{Control, control};
use panward::words::proposed::{proposed, stands};

use crate::{blank, book, today};

/// What an owner gives who skips nothing that is asked; everything else keeps the default it is shown with.
const GIVEN: &[(Subject, &[(Field, &str)])] = &[
    (Subject::Kitchen, &[(Field::KitchenName, "Quay Street Fryer")]),
    (
        Subject::Person,
        &[(Field::Initials, "AB"), (Field::Adult, "yes"), (Field::Vouched, "yes")],
    ),
    (
        Subject::Pan,
        &[
            (Field::PanFull, "20"),
            (Field::PanMin, "15"),
            (Field::PanFat, "rapeseed"),
            (Field::Food, "gluten"),
            (Field::Food, "gluten,fish"),
            (Field::InIt, "fresh"),
        ],
    ),
    (
        Subject::Machine,
        &[(Field::OutBy, "nozzle"), (Field::Tank, "60"), (Field::Heater, "no")],
    ),
];

fn first(subject: Subject, book: &Book) -> Answers {
    let words = Field::ALL.iter().filter_map(|f| Some((*f, proposed(*f, Lang::En)?)));
    words.fold(blank(subject, book), |form, (field, words)| match form.get(field) {
        "" => form.with(field, words),
        _ => form,
    })
}

/// What the way cost.
#[derive(Debug, Default)]
struct Cost {
    pages: usize,
    touches: usize,
    letters: usize,
}

impl Cost {
    /// In tenths of a second.
    fn estimate_ds(&self) -> usize {
        self.pages * 30 + self.touches * 15 + self.letters * 3
    }
}

/// Goes through a first set-up and returns what it wrote and what it cost.
fn way() -> (Vec<Fact>, Cost) {
    // The first screen and the last, a touch each.
    let mut cost = Cost {
        pages: 2,
        touches: 2,
        letters: 0,
    };
    let mut facts = Vec::new();
    for (subject, given) in GIVEN {
        let known = book(&facts);
        let around = Around {
            book: &known,
            today: today(),
        };
        let mut form = first(*subject, &known);
        for (field, value) in *given {
            form = form.after(*field, value);
            cost.touches += 1;
            let typed = matches!(control(*field, ""), Control::Words | Control::Number(_));
            cost.letters += if typed { value.chars().count() } else { 0 };
        }
        let pages = subject.first_pages(7, &form, around);
        for (field, _) in *given {
            assert!(pages.concat().contains(field), "{field:?} is not asked");
        }
        cost.pages += pages.len();
        cost.touches += pages.len();
        facts.extend(subject.check(7, &form, around).unwrap());
    }
    (facts, cost)
}

#[test]
fn one_pan_is_set_up_in_under_two_minutes() {
    let (facts, cost) = way();
    assert_eq!(Subject::first_missing(&book(&facts)), None);
    println!("{cost:?}: {} s", cost.estimate_ds() / 10);
    assert!(cost.pages <= 8 && cost.touches <= 22 && cost.letters <= 30, "{cost:?}");
    assert!(cost.estimate_ds() < 1_200, "{} s", cost.estimate_ds() / 10);
}

#[test]
fn a_first_set_up_asks_or_shows_every_field_of_the_whole_form() {
    let empty = Book::default();
    let around = Around {
        book: &empty,
        today: today(),
    };
    for subject in Subject::ALL {
        let form = first(*subject, &empty);
        let whole = subject.pages(7, &form, around).concat();
        let mut both = subject.first_pages(7, &form, around).concat();
        let rest = subject.rest_pages(7, &form, around).concat();
        assert!(rest.iter().all(|field| !both.contains(field)), "{subject:?}");
        both.extend(&rest);
        both.sort_unstable();
        let mut all = whole;
        all.sort_unstable();
        assert_eq!(both, all, "{subject:?}");
        // What is not asked stands there in words, unless it may stay empty and does.
        for field in rest {
            let said = stands(field, &form, Lang::En);
            assert_eq!(said.is_some(), !form.get(field).is_empty(), "{field:?}: {said:?}");
        }
    }
}

#[test]
fn what_a_hold_or_a_claim_rests_on_is_asked_and_never_only_proposed() {
    let empty = Book::default();
    let around = Around {
        book: &empty,
        today: today(),
    };
    let asked = |subject: Subject, answers: &[(Field, &str)]| {
        let form = answers
            .iter()
            .fold(first(subject, &empty), |form, (field, value)| form.after(*field, value));
        subject.first_pages(7, &form, around).concat()
    };
    let person = asked(Subject::Person, &[]);
    assert!(
        [Field::Adult, Field::Routes, Field::Vouched]
            .iter()
            .all(|f| person.contains(f))
    );
    let pan = asked(Subject::Pan, &[]);
    for field in [
        Field::PanFull,
        Field::PanMin,
        Field::PanMark,
        Field::OffSigns,
        Field::PanFat,
        Field::Food,
    ] {
        assert!(pan.contains(&field), "{field:?}");
    }
    let machine = asked(Subject::Machine, &[(Field::OutBy, "drain"), (Field::Heater, "no")]);
    for field in [
        Field::OutBy,
        Field::Tank,
        Field::TakesSolid,
        Field::WindowLow,
        Field::WindowHigh,
    ] {
        assert!(machine.contains(&field), "{field:?}");
    }
    // What the machine has met is not known until somebody says so, and that closes it to every claim.
    let (facts, _) = way();
    let machine = facts.iter().find_map(|fact| match fact {
        Fact::Machine(machine) => Some(machine),
        _ => None,
    });
    assert_eq!(machine.map(|m| m.held), Some(Held::Unknown));
}

#[test]
fn a_limit_on_acidity_is_asked_where_the_country_has_one_or_nothing_else_is_limited() {
    let form = first(Subject::Kitchen, &Book::default());
    let empty = Book::default();
    let around = Around {
        book: &empty,
        today: today(),
    };
    let asks = |form: &Answers| {
        let asked = Subject::Kitchen.first_pages(7, form, around).concat();
        asked.contains(&Field::LimitAcid)
    };
    assert!(!asks(&form));
    assert!(asks(&form.clone().after(Field::LimitPolar, "")));
    assert!(asks(&form.after(Field::LimitAcid, "2.5")));
}
