//! The log's own JSON reader and writer, held against serde_json as their oracle.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::store::json::{Json, Out, read};
use proptest::prelude::*;
use serde::{Serialize, Serializer};
use serde_json::Value;

/// What was read, told to serde's data model.
struct Told<'a>(&'a Json<'a>);

impl Serialize for Told<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self.0 {
            Json::Word(word) => to.serialize_str(word),
            Json::Whole(number) => to.serialize_i64(*number),
            Json::Flag(flag) => to.serialize_bool(*flag),
            Json::List(list) => to.collect_seq(list.iter().map(Told)),
            Json::Object(fields) => {
                let pairs: Vec<_> = fields.clone().into_pairs().collect();
                to.collect_map(pairs.iter().map(|(name, value)| (name, Told(value))))
            }
        }
    }
}

/// The same value as the oracle says it.
fn same(json: &Json<'_>) -> Value {
    serde_json::to_value(Told(json)).unwrap()
}

/// Whether the log has a form for it: whole numbers that fit, no nulls.
fn has_form(value: &Value) -> bool {
    match value {
        Value::Null => false,
        Value::Bool(_) | Value::String(_) => true,
        Value::Number(number) => number.as_i64().is_some(),
        Value::Array(list) => list.iter().all(has_form),
        Value::Object(fields) => fields.values().all(has_form),
    }
}

fn value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        ".*".prop_map(Value::from),
        "[\\x00-\\x7f]*".prop_map(Value::from),
    ];
    leaf.prop_recursive(4, 48, 6, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
            prop::collection::vec((".{0,8}", inner), 0..6).prop_map(|pairs| Value::Object(pairs.into_iter().collect())),
        ]
    })
}

proptest! {
    #[test]
    fn what_the_oracle_writes_is_read_and_written_byte_for_byte(value in value()) {
        let text = serde_json::to_string(&value).unwrap();
        let json = read(&text).expect("the oracle's own bytes");
        prop_assert_eq!(same(&json), value);
        let mut out = Out::new();
        json.put(&mut out);
        prop_assert_eq!(out.into_text(), text);
    }

    #[test]
    fn spaces_between_tokens_change_nothing(value in value()) {
        let text = serde_json::to_string_pretty(&value).unwrap();
        prop_assert_eq!(same(&read(&text).expect("indented")), value);
    }

    #[test]
    fn what_the_oracle_refuses_is_refused_and_what_is_read_is_what_it_reads(
        text in r#"([{}\[\],:"]|\\[nu"x]|\\ud83d\\ude00|\\ud83d|[0-9]{1,20}|-|0|true|false|tru|null|1\.5|1e3| |a|é|\x01){0,12}"#
    ) {
        match (read(&text), serde_json::from_str::<Value>(&text)) {
            (Ok(json), Ok(value)) => prop_assert_eq!(same(&json), value),
            (Ok(json), Err(why)) => prop_assert!(false, "{} was read as {:?}, refused by the oracle: {}", text, json, why),
            (Err(why), Ok(value)) => prop_assert!(!has_form(&value), "{} was refused: {}", text, why),
            (Err(_), Err(_)) => {}
        }
    }
}

#[test]
fn numbers_keep_to_their_one_spelling() {
    for (text, number) in [
        ("0", 0),
        ("-7", -7),
        ("9223372036854775807", i64::MAX),
        ("-9223372036854775808", i64::MIN),
    ] {
        assert_eq!(read(text), Ok(Json::Whole(number)));
    }
    for text in ["01", "-0", "-", "1.0", "1e2", "9223372036854775808", "+1", ""] {
        assert!(read(text).is_err(), "{text}");
    }
}

#[test]
fn no_depth_brings_it_down() {
    let deep = "[".repeat(100_000);
    assert!(read(&deep).is_err());
    let fits = format!("{}{}", "[".repeat(60), "]".repeat(60));
    assert!(read(&fits).is_ok());
}
