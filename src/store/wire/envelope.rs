//! The envelope every entry has, and the header of an export. The order of the fields is the order of the bytes.

use std::borrow::Cow;

use super::scalar::Text;
use super::stored::{Reading, fields, put, stored, word};
use crate::domain::entry::Entry;
use crate::domain::ids::{Dev, EntryId, KitchenId, PersonId};
use crate::domain::time::Millis;
use crate::store::World;
use crate::store::json::{Json, Out};

/// One entry: one line of the log.
#[derive(Debug)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), serde(deny_unknown_fields))]
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
    pub clk: Option<Text<Millis>>,
    /// Minutes the kitchen's zone is ahead of UTC at `at`.
    pub off: i16,
    /// Who did it.
    pub who: Option<Text<PersonId>>,
    /// What kind of thing the body says.
    pub kind: Cow<'a, str>,
    /// The version of the body.
    pub v: u32,
    /// The body, as it came.
    #[cfg_attr(feature = "schema", schemars(with = "serde_json::Map<String, serde_json::Value>"))]
    pub body: Json<'a>,
}

const NAMES: [&str; 11] = [
    "id", "dev", "seq", "at", "rec", "clk", "off", "who", "kind", "v", "body",
];

impl<'a> Envelope<'a> {
    /// Reads one.
    pub fn read(json: Json<'a>) -> Result<Self, String> {
        let mut fields = fields(json)?;
        let mut whole = |name: &str| fields.take(name).ok_or_else(|| format!("missing field `{name}`"));
        let (kind, body) = (word(whole("kind")?)?, whole("body")?);
        let mut reading = Reading::from(fields);
        let read = Self {
            id: reading.take("id"),
            dev: reading.take("dev"),
            seq: reading.take("seq"),
            at: reading.take("at"),
            rec: reading.take("rec"),
            clk: reading.take("clk"),
            off: reading.take("off"),
            who: reading.take("who"),
            kind,
            v: reading.take("v"),
            body,
        };
        reading.end(&NAMES).map(|()| read)
    }
}

/// The line of an entry whose body was written already.
pub fn line(entry: &Entry, kind: &str, v: u32, body: &str) -> String {
    let mut out = Out::new();
    out.open('{');
    put(&mut out, "id", &Text(entry.id));
    put(&mut out, "dev", &Text(entry.dev));
    put(&mut out, "seq", &entry.seq);
    put(&mut out, "at", &Text(entry.at));
    put(&mut out, "rec", &Text(entry.rec));
    put(&mut out, "clk", &entry.clk.map(Text));
    put(&mut out, "off", &entry.off_min);
    put(&mut out, "who", &entry.who.map(Text));
    out.name("kind");
    out.word(kind);
    put(&mut out, "v", &v);
    out.name("body");
    out.raw(body);
    out.close('}');
    out.into_text()
}

stored! {
    /// The header of an export. It says nothing of the phone.
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
}
