//! The committed schema is the one the stored shapes make, and an independent validator agrees with our reader.
//!
//! Run with `cargo test --features schema --test schema`; `PANWARD_WRITE_SCHEMA=1` writes the schema anew.
#![cfg(all(feature = "schema", not(target_arch = "wasm32")))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod arbitrary;

use jsonschema::Validator;
use panward::domain::time::Millis;
use panward::store::export::{About, export};
use panward::store::schema::export_schema;
use panward::store::{Loaded, Record, World};
use proptest::prelude::*;
use serde_json::{Value, json};

const PATH: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/fixtures/export_v1.schema.json");
const LOG_V1: &str = include_str!("fixtures/log_v1.json");
const LOG_V2: &str = include_str!("fixtures/log_v2.json");
const LOG_V5: &str = include_str!("fixtures/log_v5.json");
const LOG_V3: &str = include_str!("fixtures/log_v3.json");
const LOG_V4: &str = include_str!("fixtures/log_v4.json");
const LOG_V6: &str = include_str!("fixtures/log_v6.json");
const LOG_V7: &str = include_str!("fixtures/log_v7.json");
const LOG_V8: &str = include_str!("fixtures/log_v8.json");

fn validator() -> Validator {
    let text = std::fs::read_to_string(PATH).expect("the committed schema");
    let schema: Value = serde_json::from_str(&text).expect("JSON");
    jsonschema::meta::validate(&schema).expect("a schema by its own draft");
    jsonschema::validator_for(&schema).expect("a schema")
}

fn sample() -> Value {
    parsed(LOG_V1)
}

fn parsed(log: &str) -> Value {
    serde_json::from_str(log).expect("JSON")
}

#[test]
fn the_committed_schema_is_fresh() {
    let made = export_schema().unwrap();
    if std::env::var_os("PANWARD_WRITE_SCHEMA").is_some() {
        std::fs::write(PATH, &made).unwrap();
    }
    let committed = std::fs::read_to_string(PATH).unwrap_or_default();
    assert!(
        committed == made,
        "run: PANWARD_WRITE_SCHEMA=1 cargo test --features schema --test schema"
    );
}

#[test]
fn the_samples_are_valid() {
    for log in [LOG_V1, LOG_V2, LOG_V3, LOG_V4, LOG_V5, LOG_V6, LOG_V7, LOG_V8] {
        let errors: Vec<_> = validator()
            .iter_errors(&parsed(log))
            .map(|e| format!("{}: {e}", e.instance_path))
            .collect();
        assert_eq!(errors, Vec::<String>::new());
    }
}

#[test]
fn a_dose_out_of_range_or_in_version_1_is_invalid() {
    let validator = validator();
    for (place, value) in [
        ("powder_g_per_l", json!(0)),
        ("powder_g_per_l", json!(101)),
        ("v", json!(1)),
    ] {
        let mut file = parsed(LOG_V2);
        let entry = &mut file["entries"][0];
        if place == "v" {
            entry["v"] = value.clone();
        } else {
            entry["body"][place] = value.clone();
        }
        assert!(!validator.is_valid(&file), "{place} {value}");
    }
}

#[test]
fn a_newer_apps_file_is_valid() {
    let newer = serde_json::from_str(include_str!("fixtures/newer.json")).unwrap();
    assert!(validator().is_valid(&newer));
}

/// The sample with one value changed; `None` takes it out.
#[track_caller]
fn changed(place: &str, value: Option<Value>) -> Value {
    let mut file = sample();
    let (parent, name) = place.rsplit_once('/').expect("a pointer");
    let parent = file
        .pointer_mut(parent)
        .expect("the place is there")
        .as_object_mut()
        .expect("an object");
    let old = match value.clone() {
        Some(value) => parent.insert(name.into(), value),
        None => parent.remove(name),
    };
    assert_ne!(old, value, "nothing was changed");
    file
}

#[test]
fn broken_files_are_invalid() {
    let validator = validator();
    for (place, value) in [
        ("/panward_export/digest", None),
        ("/panward_export/world", Some(json!("elsewhere"))),
        ("/entries/0/off", None),
        ("/entries/0/clk", Some(Value::Null)),
        ("/entries/0/at", Some(json!("2026-06-01T11:00:00+00:00"))),
        ("/entries/0/dev", Some(json!("C0FFEE"))),
        ("/entries/0/more", Some(json!(1))),
        ("/entries/0/body/country", None),
        ("/entries/0/body/closing_min", Some(Value::Null)),
        ("/entries/5/body/fat", Some(json!("butter"))),
        ("/entries/11/body/ml", Some(json!(17500.5))),
        ("/entries/11/body/ml", Some(json!(1_000_001))),
        ("/entries/11/body/age", Some(json!("old"))),
        ("/entries/22/body/ffa_cpc", Some(json!(100))),
        ("/entries/22/body/polar_cpc", None),
    ] {
        assert!(!validator.is_valid(&changed(place, value.clone())), "{place} {value:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn any_export_is_valid(log in arbitrary::log()) {
        let records = log.into_iter().map(|e| Record::of(e).expect("writes")).collect();
        let about = About {
            kitchen: arbitrary::KITCHEN,
            name: "k".into(),
            world: World::Practice,
            made_at: Millis(0),
        };
        let text = export(&Loaded { records, unreadable: vec![] }, &about).expect("exports");
        let file = serde_json::from_str(&text).expect("any tool reads it");
        let errors: Vec<_> = validator().iter_errors(&file).map(|e| format!("{}: {e}", e.instance_path)).collect();
        prop_assert_eq!(errors, Vec::<String>::new());
    }
}
