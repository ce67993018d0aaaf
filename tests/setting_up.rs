//! The forms of set-up: what they offer, what they make of it, what they refuse.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::domain::claim::{ClaimKind, Exposure};
use panward::domain::entry::Entry;
use panward::domain::facts::Fact;
use panward::domain::facts::oil::Age;
use panward::domain::facts::setup::{
    AcidLimit, FilterKind, HeatKind, Held, Kitchen, LimitBasis, Machine, OffSign, OutBy, Pan, Person, Route,
};
use panward::domain::fat::Fat;
use panward::domain::ids::{Dev, EntryId};
use panward::domain::ledger::{Book, Ledger};
use panward::domain::setting_up::{Answers, Around, Fault, Field, MYSELF, Subject, limit_said};
use panward::domain::time::{Day, Millis};
use panward::domain::units::{AcidValue, Share, Temp};
use panward::words::Lang;
use panward::words::forms::{Control, control, limit_text, options};

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

fn kitchen(answers: &Answers) -> Kitchen {
    match fact(Subject::Kitchen, answers) {
        Fact::Kitchen(kitchen) => *kitchen,
        other => panic!("{other:?}"),
    }
}

fn person(answers: &Answers) -> Person {
    match fact(Subject::Person, answers) {
        Fact::Person(person) => person,
        other => panic!("{other:?}"),
    }
}

fn pan(answers: &Answers) -> Pan {
    match fact(Subject::Pan, answers) {
        Fact::Pan(pan) => *pan,
        other => panic!("{other:?}"),
    }
}

fn machine(answers: &Answers) -> Machine {
    match fact(Subject::Machine, answers) {
        Fact::Machine(machine) => *machine,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_kitchen_needs_only_its_name() {
    let kitchen = kitchen(&right(Subject::Kitchen));
    assert_eq!(kitchen.name, "Harbour Lane");
    assert_eq!(
        (kitchen.country.as_str(), kitchen.zone.as_str()),
        ("GB", "Europe/London")
    );
    assert_eq!((kitchen.day_start_min, kitchen.fry_min.get()), (300, 300));
    assert_eq!(kitchen.emergency_number, "999");
    assert_eq!(kitchen.polar_limit, Share::from_cpc(2_500));
    assert_eq!(kitchen.limit_basis, LimitBasis::Own, "the UK has no number in law");
    assert_eq!(kitchen.trading_days, [true; 7]);
}

#[test]
fn a_country_brings_its_number_and_its_limit_with_what_it_rests_on() {
    let form = right(Subject::Kitchen).after(Field::Country, "DE");
    assert_eq!(form.get(Field::LimitPolar), "24");
    assert_eq!(form.get(Field::Emergency), "112");
    let said = limit_said(&form);
    assert_eq!(said.basis, LimitBasis::Recommendation);
    assert!(said.source.is_some());

    let form = form.after(Field::Country, "KR");
    assert_eq!(form.get(Field::LimitPolar), "");
    let korea = kitchen(&form);
    assert_eq!(korea.acid_limit, AcidValue::from_cav(250).map(AcidLimit::AcidValue));
    assert_eq!((korea.polar_limit, korea.limit_basis), (None, LimitBasis::Law));

    let form = form.after(Field::Country, "other").after(Field::CountryCode, "no");
    let norway = kitchen(&form);
    assert_eq!((norway.country.as_str(), norway.limit_basis), ("NO", LimitBasis::Own));
}

#[test]
fn an_owner_may_choose_another_limit_and_keeps_it_when_the_country_changes() {
    let form = right(Subject::Kitchen)
        .after(Field::Country, "FR")
        .after(Field::LimitPolar, "20")
        .after(Field::Emergency, "18");
    let said = limit_said(&form);
    assert_eq!((said.basis, said.source), (LimitBasis::Own, None));
    assert!(said.published.is_some(), "what the law says is shown beside it");
    let form = form.after(Field::Country, "DE");
    assert_eq!((form.get(Field::LimitPolar), form.get(Field::Emergency)), ("20", "18"));
    assert_eq!(kitchen(&form).polar_limit, Share::from_cpc(2_000));
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
        (
            Subject::Machine,
            Field::Heater,
            "yes",
            Field::HeaterWatts,
            Fault::Missing,
        ),
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
fn the_owner_of_a_one_person_kitchen_vouches_for_themselves() {
    let owner = person(&right(Subject::Person));
    assert_eq!(owner.by, Some(owner.person));
    assert_eq!(owner.routes, [Route::Hot, Route::Cold]);
    assert!(
        owner.may_supervise,
        "else the vouching would lapse with the second person"
    );
}

#[test]
fn nobody_under_eighteen_is_signed_off_for_hot_oil_or_stands_beside_a_starter() {
    let form = right(Subject::Person).after(Field::Adult, "no");
    assert_eq!(
        check(Subject::Person, 7, &form, &Book::default()),
        Err(vec![
            (Field::Routes, Fault::UnderAge),
            (Field::MaySupervise, Fault::UnderAge),
            (Field::Vouched, Fault::UnderAge)
        ])
    );
}

#[test]
fn later_people_are_signed_off_by_somebody_else() {
    let book = book(&[fact(Subject::Person, &right(Subject::Person))]);
    let starter = blank(Subject::Person, &book)
        .after(Field::Initials, "NS")
        .after(Field::Adult, "yes");
    let said = check(Subject::Person, 8, &starter, &book).unwrap();
    let Fact::Person(person) = &said[0] else {
        panic!("{said:?}")
    };
    assert!(
        person.routes.is_empty() && person.by.is_none(),
        "a starter is signed off for nothing"
    );

    let frier = starter.after(Field::Routes, "hot");
    assert_eq!(
        check(Subject::Person, 8, &frier, &book),
        Err(vec![(Field::SignedBy, Fault::NobodySigned)])
    );
    let alone = frier
        .clone()
        .after(Field::SignedBy, MYSELF)
        .after(Field::Vouched, "yes");
    assert_eq!(
        check(Subject::Person, 8, &alone, &book),
        Err(vec![(Field::SignedBy, Fault::NotAlone)])
    );
    let signed = frier.after(Field::SignedBy, &format!("{:032x}", 7));
    assert!(check(Subject::Person, 8, &signed, &book).is_ok());
    assert_eq!(
        check(Subject::Person, 8, &signed.after(Field::Initials, "HL"), &book),
        Err(vec![(Field::Initials, Fault::NameTaken)])
    );
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
fn a_limit_at_or_under_fresh_oil_is_refused_from_both_sides() {
    let palm = right(Subject::Pan).after(Field::PanFat, "palm");
    let under = Fault::UnderFresh {
        fat: Fat::Palm,
        fresh: Share::from_cpc(750).unwrap(),
    };
    let low = right(Subject::Kitchen).after(Field::LimitPolar, "7.5");
    let kitchen_first = book(&[fact(Subject::Kitchen, &low)]);
    assert_eq!(
        check(Subject::Pan, 7, &palm, &kitchen_first),
        Err(vec![(Field::PanFat, under)])
    );
    let pan_first = book(&[fact(Subject::Pan, &palm)]);
    assert_eq!(
        check(Subject::Kitchen, 7, &low, &pan_first),
        Err(vec![(Field::LimitPolar, under)])
    );
}

#[test]
fn a_machine_starts_from_named_defaults() {
    let machine = machine(&right(Subject::Machine));
    assert_eq!((machine.low, machine.high), (Temp::celsius(100), Temp::celsius(180)));
    assert_eq!((machine.target, machine.free.cpc()), (Temp::celsius(150), 1_000));
    assert_eq!((machine.filter, machine.rinse_max_s), (FilterKind::Single, Some(30)));
    assert_eq!(machine.filters, ["mesh", "paper"]);
    assert_eq!((machine.heater_w, machine.held), (0, Held::Unknown));
}

#[test]
fn a_window_keeps_every_fat_used_here_liquid() {
    let dripping = right(Subject::Pan).after(Field::PanFat, "dripping");
    let book = book(&[fact(Subject::Pan, &dripping)]);
    let form = right(Subject::Machine).after(Field::WindowLow, "64");
    assert_eq!(
        check(Subject::Machine, 7, &form, &book),
        Err(vec![(
            Field::WindowLow,
            Fault::NotLiquid {
                fat: Fat::Dripping,
                from: Temp::celsius(65)
            }
        )])
    );
    assert!(check(Subject::Machine, 7, &form.after(Field::WindowLow, "65"), &book).is_ok());
}

#[test]
fn a_hand_kit_is_asked_little_and_never_goes_above_forty_degrees() {
    let kit = machine(&right(Subject::Machine).after(Field::OutBy, OutBy::Hand.key()));
    assert_eq!((kit.out_by, kit.high), (OutBy::Hand, Temp::celsius(40)));
    assert_eq!((kit.rinse_max_s, kit.heater_w), (None, 0));
}

#[test]
fn a_recirculating_filter_has_a_least_rinse_and_no_longest() {
    let form = right(Subject::Machine)
        .after(Field::FilterKind, "recirculating")
        .after(Field::RinseMin, "120");
    let machine = machine(&form);
    assert_eq!((machine.rinse_min_s, machine.rinse_max_s), (Some(120), None));
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

#[test]
fn every_field_that_is_chosen_has_choices_and_no_other_has() {
    for field in Field::ALL {
        let chosen = matches!(control(*field, ""), Control::Listed | Control::One | Control::Many);
        // Who may sign somebody off are people, known to the kitchen alone.
        let people = *field == Field::SignedBy;
        let choices = options(*field, HeatKind::Gas.key(), Lang::En).len();
        assert_eq!(choices > 1, chosen && !people, "{field:?} has {choices}");
    }
}

#[test]
fn an_own_limit_is_said_beside_the_published_one_with_its_source() {
    let form = right(Subject::Kitchen).after(Field::Country, "FR");
    let law = limit_text(limit_said(&form), Lang::En);
    assert!(law.contains("statute") && law.contains("Source: LGC"), "{law}");
    let own = limit_text(limit_said(&form.after(Field::LimitPolar, "20")), Lang::En).replace('\u{a0}', " ");
    assert!(
        own.starts_with("Your own choice.") && own.contains("25 % polar compounds (law)"),
        "{own}"
    );
    let uk = limit_text(limit_said(&right(Subject::Kitchen)), Lang::En);
    assert!(uk.contains("your own choice") && !uk.contains("Source"), "{uk}");
}
