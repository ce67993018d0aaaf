//! The envelope every entry has, and the header of an export. The order of the fields is the order of the bytes.

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::scalar::Text;
use crate::domain::ids::{Dev, EntryId, KitchenId, PersonId};
use crate::domain::time::Millis;
use crate::store::World;

/// One entry: one line of the log.
#[derive(Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Envelope<'a> {
    /// A UUID v7.
    pub id: Text<EntryId>,
    /// The store it was written in.
    pub dev: Text<Dev>,
    /// Its number there.
    pub seq: u32,
    /// When it happened.
    pub at: Text<Millis>,
    /// When it was written.
    pub rec: Text<Millis>,
    /// What the clock said, when that differs from `rec`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clk: Option<Text<Millis>>,
    /// Minutes the kitchen's zone is ahead of UTC at `at`.
    pub off: i16,
    /// Who did it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub who: Option<Text<PersonId>>,
    /// What kind of thing the body says.
    pub kind: &'a str,
    /// The version of the body.
    pub v: u32,
    /// The body, as it came.
    #[serde(borrow)]
    #[cfg_attr(feature = "schema", schemars(with = "serde_json::Map<String, serde_json::Value>"))]
    pub body: &'a RawValue,
}

/// The header of an export. It says nothing of the phone.
#[derive(Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct HeaderV1 {
    /// What this file is.
    pub format: String,
    /// The version of the file's form; each entry has its own besides.
    pub version: u32,
    /// The kitchen's id.
    pub kitchen: Text<KitchenId>,
    /// The kitchen's name when the file was made.
    pub name: String,
    /// Which world the entries belong to.
    pub world: Text<World>,
    /// When the file was made.
    pub made_at: Text<Millis>,
    /// How many entries it holds.
    pub count: u32,
    /// SHA-256, in hex, over the entry lines, each without its comma and with one line feed.
    pub digest: String,
}
