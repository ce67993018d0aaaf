//! The JSON schema of an export, made from the stored shapes. Only `cargo xtask schema` and its test build this.

use std::borrow::Cow;

use schemars::generate::SchemaSettings;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use super::wire::correct::CorrectV1;
use super::wire::envelope::{Envelope, HeaderV1};
use super::wire::parts::Pairs;
use super::wire::scalar::{AsText, AsWhole, Spelling, Text, Whole};
use super::wire::stored::Unless;
use super::wire::{claim, kitchen, machine, moved, oil, rhythm, setup, trouble, work};

/// The schema of an export, as indented JSON with a last line feed.
///
/// # Errors
/// Never in practice; serialising a schema has an error type.
pub fn export_schema() -> serde_json::Result<String> {
    let mut shapes = SchemaSettings::draft2020_12().into_generator();
    let header = shapes.subschema_for::<HeaderV1>();
    let envelope = shapes.subschema_for::<Envelope>();
    let known: Vec<Value> = bodies(&mut shapes)
        .into_iter()
        .map(|(kind, v, body)| {
            json!({
                "if": { "properties": { "kind": { "const": kind }, "v": { "const": v } } },
                "then": { "properties": { "body": body } },
            })
        })
        .collect();
    let mut schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Panward export, form 1",
        "description": "A kitchen's log. An entry of a kind or version not listed here was written by a newer app.",
        "type": "object",
        "required": ["panward_export", "entries"],
        "additionalProperties": false,
        "properties": {
            "panward_export": header,
            "entries": { "type": "array", "items": { "allOf": [envelope, { "allOf": known }] } },
            "unreadable": { "type": "array", "minItems": 1, "items": { "type": "string" } },
        },
        "$defs": shapes.take_definitions(true),
    });
    forbid_nulls(&mut schema);
    Ok(serde_json::to_string_pretty(&schema)? + "\n")
}

/// Every kind and version, with its body.
fn bodies(shapes: &mut SchemaGenerator) -> Vec<(&'static str, u32, Schema)> {
    vec![
        ("kitchen", 1, shapes.subschema_for::<setup::KitchenV1>()),
        ("kitchen", 2, shapes.subschema_for::<kitchen::KitchenV2>()),
        ("person", 1, shapes.subschema_for::<setup::PersonV1>()),
        ("pan", 1, shapes.subschema_for::<setup::PanV1>()),
        ("pan", 2, shapes.subschema_for::<rhythm::PanV2>()),
        ("machine", 1, shapes.subschema_for::<machine::MachineV1>()),
        ("machine", 2, shapes.subschema_for::<machine::MachineV2>()),
        ("machine", 3, shapes.subschema_for::<machine::MachineV3>()),
        ("instrument", 1, shapes.subschema_for::<setup::InstrumentV1>()),
        ("fill", 1, shapes.subschema_for::<oil::FillV1>()),
        ("topup", 1, shapes.subschema_for::<oil::TopUpV1>()),
        ("part_change", 1, shapes.subschema_for::<oil::PartChangeV1>()),
        ("move", 1, shapes.subschema_for::<moved::MoveV1>()),
        ("move", 2, shapes.subschema_for::<moved::MoveV2>()),
        ("oil_change", 1, shapes.subschema_for::<oil::OilChangeV1>()),
        ("service", 1, shapes.subschema_for::<oil::ServiceV1>()),
        ("pan_job", 1, shapes.subschema_for::<rhythm::PanJobV1>()),
        ("closed", 1, shapes.subschema_for::<rhythm::ClosedV1>()),
        ("reading", 1, shapes.subschema_for::<oil::ReadingV1>()),
        ("sign", 1, shapes.subschema_for::<oil::SignV1>()),
        ("note", 1, shapes.subschema_for::<oil::NoteV1>()),
        ("claim_lost", 1, shapes.subschema_for::<claim::ClaimChangeV1>()),
        ("claim_restored", 1, shapes.subschema_for::<claim::ClaimRestoredV1>()),
        ("claim_restored", 2, shapes.subschema_for::<claim::ClaimRestoredV2>()),
        ("correct", 1, shapes.subschema_for::<CorrectV1>()),
        ("job", 1, shapes.subschema_for::<work::JobV1>()),
        ("job", 2, shapes.subschema_for::<work::JobV1>()),
        ("run", 1, shapes.subschema_for::<work::RunV1>()),
        ("run_noted", 1, shapes.subschema_for::<work::RunNotedV1>()),
        ("machine_cleaned", 1, shapes.subschema_for::<work::MachineCleanedV1>()),
        (
            "allergens_checked",
            1,
            shapes.subschema_for::<claim::AllergensCheckedV1>(),
        ),
        ("practised", 1, shapes.subschema_for::<work::PractisedV1>()),
        ("trouble", 1, shapes.subschema_for::<trouble::TroubleV1>()),
    ]
}

/// The generator lets an optional field be null; the stored form leaves it out instead.
fn forbid_nulls(schema: &mut Value) {
    match schema {
        Value::Array(items) => items.iter_mut().for_each(forbid_nulls),
        Value::Object(fields) => {
            for (name, value) in fields.iter_mut() {
                if let ("type" | "enum" | "anyOf", Value::Array(choices)) = (name.as_str(), &mut *value) {
                    choices.retain(|choice| !(choice.is_null() || choice == "null" || choice["type"] == "null"));
                    if let ("type", [only]) = (name.as_str(), choices.as_slice()) {
                        *value = only.clone();
                    }
                }
                forbid_nulls(value);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
}

impl<T: AsText> JsonSchema for Text<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::WHAT.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        match T::spelling() {
            Spelling::Keys(keys) => json_schema!({ "type": "string", "enum": keys }),
            Spelling::Pattern(pattern) => json_schema!({ "type": "string", "pattern": pattern }),
        }
    }
}

impl<T: AsWhole> JsonSchema for Whole<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::WHAT.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "integer", "minimum": T::MIN, "maximum": T::MAX })
    }
}

impl<T: JsonSchema> JsonSchema for Unless<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(shapes: &mut SchemaGenerator) -> Schema {
        T::json_schema(shapes)
    }
}

impl<K: JsonSchema, V: JsonSchema> JsonSchema for Pairs<K, V> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "Pairs".into()
    }

    fn json_schema(shapes: &mut SchemaGenerator) -> Schema {
        let (names, values) = (shapes.subschema_for::<K>(), shapes.subschema_for::<V>());
        json_schema!({ "type": "object", "propertyNames": names, "additionalProperties": values })
    }
}
