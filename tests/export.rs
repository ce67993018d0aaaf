//! Export and import: the same bytes come out as went in, and a file that is not sound is refused whole, by line.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod arbitrary;

use panward::domain::ids::Dev;
use panward::domain::time::Millis;
use panward::store::export::{About, export};
use panward::store::import::{ImportFault, import};
use panward::store::{BadEntry, Loaded, Odd, Record, Unreadable, World};
use proptest::prelude::*;

const LOG_V1: &str = include_str!("fixtures/log_v1.json");

fn about() -> About {
    About {
        kitchen: arbitrary::KITCHEN,
        name: "The \"test\" kitchen".into(),
        world: World::Real,
        made_at: Millis(1_780_000_000_000),
    }
}

/// Imports a file into an empty real kitchen, and exports that again.
fn there_and_back(text: &str) -> String {
    let import = import(text, World::Real, 0).expect("a sound file");
    let loaded = Loaded {
        records: import.records,
        unreadable: vec![],
    };
    export(&loaded, &import.about).expect("exports")
}

#[test]
fn the_frozen_sample_and_a_newer_apps_file_come_out_as_they_went_in() {
    for text in [LOG_V1, include_str!("fixtures/newer.json")] {
        assert_eq!(there_and_back(text), text);
    }
}

#[test]
fn an_empty_log_exports_and_imports() {
    let text = export(&Loaded::default(), &about()).unwrap();
    assert_eq!(there_and_back(&text), text);
    assert_eq!(text.lines().count(), 3);
}

#[test]
fn only_made_at_differs_between_two_exports() {
    let log = import(LOG_V1, World::Real, 0).unwrap();
    let loaded = Loaded {
        records: log.records,
        unreadable: vec![],
    };
    let later = About {
        made_at: log.about.made_at.plus(1),
        ..log.about.clone()
    };
    let text = export(&loaded, &later).unwrap();
    assert_ne!(text, LOG_V1);
    assert_eq!(text.replace("08:00:00.001Z", "08:00:00.000Z"), LOG_V1);
}

#[test]
fn unreadable_lines_are_in_the_export_and_handed_over_on_import() {
    let lines = ["{\"half", "a \"quoted\"\nbreak", ""];
    let row = |(seq, line): (u32, &str)| Unreadable {
        dev: Dev(1),
        seq,
        line: line.into(),
        why: BadEntry::Form(Odd::Null),
    };
    let mut loaded = Loaded::from_rows([]);
    loaded.unreadable = (1..).zip(lines).map(row).collect();
    let text = export(&loaded, &about()).unwrap();
    let back = import(&text, World::Real, 0).unwrap();
    assert_eq!(
        (back.records.len(), back.unreadable),
        (0, lines.map(String::from).to_vec())
    );
}

#[test]
fn a_file_survives_a_byte_order_mark_and_other_line_ends() {
    let carried = format!("\u{feff}{}", LOG_V1.replace('\n', "\r\n"));
    assert_eq!(there_and_back(&carried), LOG_V1);
}

/// A fixture, the line it is refused for, and why.
macro_rules! refused {
    ($file:literal, $line:literal, $($why:tt)+) => {{
        let refusal = import(include_str!(concat!("fixtures/", $file)), World::Real, 0).expect_err($file);
        assert_eq!(refusal.line, $line, "{}: {refusal}", $file);
        assert!(matches!(&refusal.why, $($why)+), "{}: {refusal}", $file);
    }};
}

#[test]
fn broken_files_are_refused_whole_with_line_and_reason() {
    refused!("broken_not_an_export.json", 1, ImportFault::NotAnExport);
    refused!("broken_newer_form.json", 1, ImportFault::NewerForm { version: 2 });
    refused!("broken_world.json", 1, ImportFault::OtherWorld { file: World::Demo });
    refused!("broken_other_kitchen.json", 3, ImportFault::OtherKitchen);
    refused!("broken_envelope.json", 5, ImportFault::Entry(BadEntry::Envelope(why)) if why == "missing field `off`");
    refused!("broken_null.json", 5, ImportFault::Entry(BadEntry::Form(Odd::Null)));
    refused!(
        "broken_float.json",
        14,
        ImportFault::Entry(BadEntry::Form(Odd::NotWhole))
    );
    refused!("broken_body.json", 8, ImportFault::Entry(BadEntry::Body { kind, v: 1, why })
        if kind == "pan" && why == "invalid value: string \"butter\", expected a fat");
    refused!("broken_repeated_id.json", 7, ImportFault::RepeatedId { first: 4 });
    refused!("broken_repeated_place.json", 7, ImportFault::RepeatedPlace { first: 4 });
    refused!("broken_order.json", 6, ImportFault::OutOfOrder);
    refused!("broken_count.json", 8, ImportFault::Count { said: 6, found: 5 });
    refused!("broken_digest.json", 1, ImportFault::Digest);
    refused!("broken_cut_short.json", 7, ImportFault::Layout);
}

#[test]
fn a_phone_with_a_log_refuses_any_file() {
    assert_eq!(
        import(LOG_V1, World::Real, 1).expect_err("refused").why,
        ImportFault::NotEmpty
    );
}

#[test]
fn the_demo_does_not_take_a_real_file() {
    let refusal = import(LOG_V1, World::Demo, 0).expect_err("refused");
    assert_eq!(refusal.why, ImportFault::OtherWorld { file: World::Real });
}

proptest! {
    #[test]
    fn any_log_comes_out_as_it_went_in(log in arbitrary::log().prop_shuffle()) {
        let records = log.into_iter().map(|e| Record::of(e).expect("writes")).collect();
        let text = export(&Loaded { records, unreadable: vec![] }, &about()).expect("exports");
        prop_assert_eq!(there_and_back(&text), text);
    }

    #[test]
    fn a_file_with_any_line_lost_is_refused(lost in 0..LOG_V1.lines().count()) {
        let cut: Vec<_> = LOG_V1.lines().enumerate().filter(|(n, _)| *n != lost).map(|(_, line)| line).collect();
        prop_assert!(import(&cut.join("\n"), World::Real, 0).is_err());
    }

    #[test]
    fn no_text_makes_the_reader_fall_over(text in any::<String>(), at in 0..2_000_usize) {
        prop_assert!(import(&text, World::Real, 0).is_err());
        let start = LOG_V1.char_indices().map(|(place, _)| place).nth(at).unwrap_or(0);
        prop_assert!(import(&LOG_V1[..start], World::Real, 0).is_err());
    }
}
