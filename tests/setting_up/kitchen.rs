//! The kitchen's own form: its country, its limits, and where they come from.

use panward::domain::facts::Fact;
use panward::domain::facts::setup::{AcidLimit, Kitchen, LimitBasis};
use panward::domain::fat::Fat;
use panward::domain::setting_up::{Answers, Fault, Field, Subject, limit_said};
use panward::domain::units::{AcidValue, Share};

use crate::{book, check, fact, right};

fn kitchen(answers: &Answers) -> Kitchen {
    match fact(Subject::Kitchen, answers) {
        Fact::Kitchen(kitchen) => *kitchen,
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
fn a_second_person_before_pumps_is_asked_for_until_the_owner_says_otherwise() {
    let form = right(Subject::Kitchen);
    assert!(kitchen(&form).second_person);
    assert!(!kitchen(&form.after(Field::SecondPerson, "no")).second_person);
}
