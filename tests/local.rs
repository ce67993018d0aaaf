//! A country's words and measures: what changes on the way to the screen, and what never does.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used)]

use std::borrow::Cow;

use panward::domain::measure::Measure;
use panward::domain::procedure::StepId;
use panward::words::Lang;
use panward::words::format::{NBSP, decimal};
use panward::words::local::{APART, Local, from_field, theirs, to_field};
use panward::words::steps::step_line;
use proptest::prelude::*;

fn said(country: &str, names: &[&str], text: &str) -> String {
    let local = Local::of(country, names.iter().copied());
    local.said(Cow::Owned(text.to_owned())).replace(NBSP, " ")
}

#[test]
fn words_change_whole_and_keep_their_capitals() {
    let text = "PAN 2 EMPTY. Pans off, scraps out, top-up by the frier; a pancake, expand, 2 pans.";
    assert_eq!(
        said("US", &[], text),
        "VAT 2 EMPTY. Vats off, crumbs out, top-off by the fry cook; a pancake, expand, 2 vats."
    );
    assert_eq!(
        said("NZ", &[], text),
        "VAT 2 EMPTY. Vats off, crumbs out, top-up by the cook; a pancake, expand, 2 vats."
    );
    assert_eq!(said("US", &[], "High-oleic rapeseed"), "High-oleic canola");
    for country in ["GB", "IE", "DE", ""] {
        assert_eq!(said(country, &[], text), text);
    }
}

#[test]
fn figures_change_with_their_unit() {
    for (ours, theirs) in [
        ("At 40 °C by probe, 100–180 °C.", "At 104 °F by probe, 212–356 °F."),
        ("39.5 °C, 7 L and 12.5 kg", "103 °F, 1.85 gal and 27.6 lb"),
        ("-18 °C", "0 °F"),
        ("5\u{202f}°C cooler", "9 °F cooler"),
        ("Temperature, °C", "Temperature, °F"),
        ("L", "gal"),
        ("g/L", "g/L"),
        ("5 Lids, 2 kgs, 30 s, 9 %", "5 Lids, 2 kgs, 30 s, 9 %"),
        ("Sheet 17 of 2017/2158", "Sheet 17 of 2017/2158"),
    ] {
        assert_eq!(said("US", &[], ours), theirs);
        assert_eq!(said("AU", &[], ours), ours.replace(APART, "\u{202f}"));
    }
}

#[test]
fn what_the_kitchen_typed_stands() {
    assert_eq!(
        said("US", &["fish pan", "2"], "Pan fish pan, pan 2"),
        "Vat fish pan, vat 2"
    );
    assert_eq!(said("AU", &["Big pan"], "Big pans"), "Big vats");
    let note = format!("Pan 1: “{}”", theirs("scraps at 40 °C in the pan"));
    assert_eq!(said("US", &[], &note), "Vat 1: “scraps at 40 °C in the pan”");
    assert_eq!(said("GB", &[], &note), "Pan 1: “scraps at 40 °C in the pan”");
    assert_eq!(theirs("busy night"), "busy night");
}

proptest! {
    /// What is typed in the United States reads the same again after it was kept in our units.
    #[test]
    fn typed_reads_the_same_again(whole in 0_i64..2_000, hundredths in 0_i64..100) {
        let temp = whole.to_string();
        prop_assert_eq!(to_field(&from_field(&temp, Measure::Temp), Measure::Temp), temp);
        let gallons = decimal(whole * 100 + hundredths, 2);
        prop_assert_eq!(to_field(&from_field(&gallons, Measure::Litres), Measure::Litres), gallons);
        let pounds = decimal(whole * 10 + hundredths / 10, 1);
        prop_assert_eq!(to_field(&from_field(&pounds, Measure::Kilograms), Measure::Kilograms), pounds);
    }

    /// Nothing but the table's words and figures with such a unit is touched, and no text breaks it.
    #[test]
    fn any_text_comes_through(text in "\\PC*") {
        let typed = theirs(&text).into_owned();
        if !text.contains(['\u{2068}', '\u{2069}']) {
            prop_assert_eq!(Local::of("US", [].into_iter()).said(Cow::Owned(typed)), text);
        }
    }
}

/// The words of another country keep the rule of a step's large line: at most eight.
#[test]
fn step_lines_stay_short_everywhere() {
    for country in ["US", "AU"] {
        let local = Local::of(country, std::iter::empty());
        for step in StepId::ALL {
            let line = local.said(Cow::Borrowed(step_line(*step, Lang::En)));
            assert!(line.split_whitespace().count() <= 8, "{country}: {line}");
        }
    }
}
