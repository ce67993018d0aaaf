//! The body of a correction, version 1.
//!
//! A whole right body is stored with its own kind and version, so that a correction can be read without the entry
//! it speaks of.

use super::scalar::Text;
use super::stored::{Stored, Verbatim, stored};
use super::{Unwritable, read_body, write_body};
use crate::domain::facts::{Correct, Correction};
use crate::domain::ids::EntryId;
use crate::domain::time::Millis;
use crate::store::json::{self, Json, Out};

stored! {
    /// A later word on an earlier entry: `void` 1, or one or more of `at`, `off` and `body`.
    #[cfg_attr(feature = "schema", schemars(extend(
        "oneOf" = [{ "required": ["void"] },
                   { "anyOf": [{ "required": ["at"] }, { "required": ["off"] }, { "required": ["body"] }] }],
        "dependentRequired" = { "body": ["kind", "v"], "kind": ["v", "body"], "v": ["kind", "body"] },
    )))]
    pub struct CorrectV1 {
        of: Text<EntryId>,
        why: String,
        void: Option<u8>,
        at: Option<Text<Millis>>,
        off: Option<i16>,
        kind: Option<String>,
        v: Option<u32>,
        #[cfg_attr(
            feature = "schema",
            schemars(with = "Option<serde_json::Map<String, serde_json::Value>>")
        )]
        body: Option<Verbatim>,
    }
}

/// The JSON of a correction's body.
pub fn write(fact: &Correct) -> Result<String, Unwritable> {
    let mut stored = CorrectV1 {
        of: Text(fact.of),
        why: fact.why.clone(),
        void: None,
        at: None,
        off: None,
        kind: None,
        v: None,
        body: None,
    };
    match &fact.how {
        Correction::Void => stored.void = Some(1),
        Correction::Amend { at, off_min, fact } => {
            stored.at = at.map(Text);
            stored.off = *off_min;
            if let Some(fact) = fact {
                let (kind, v, body) = write_body(fact)?;
                stored.kind = Some(kind.to_owned());
                stored.v = Some(v);
                stored.body = Some(Verbatim(body));
            }
        }
    }
    let mut out = Out::new();
    stored.put(&mut out);
    Ok(out.into_text())
}

/// The correction a body's JSON says; `None` when the body within is of a kind or version this app does not know.
pub fn read(body: Json<'_>) -> Result<Option<Correct>, String> {
    let stored: CorrectV1 = CorrectV1::from_json(body)?;
    let fact = match (stored.kind, stored.v, stored.body) {
        (Some(kind), Some(_), Some(_)) if kind == "correct" => {
            return Err("a correction may not be corrected; the last one holds".into());
        }
        (Some(kind), Some(v), Some(Verbatim(body))) => match read_body(&kind, v, json::read(&body)?)? {
            Some(fact) => Some(Box::new(fact)),
            None => return Ok(None),
        },
        (None, None, None) => None,
        _ => return Err("kind, v and body go together".into()),
    };
    let amends = stored.at.is_some() || stored.off.is_some() || fact.is_some();
    let how = match stored.void {
        Some(1) if !amends => Correction::Void,
        None if amends => Correction::Amend {
            at: stored.at.map(|t| t.0),
            off_min: stored.off,
            fact,
        },
        Some(_) | None => return Err("neither void 1 alone, nor at, off or body".into()),
    };
    Ok(Some(Correct {
        of: stored.of.0,
        why: stored.why,
        how,
    }))
}
