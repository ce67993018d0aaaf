//! An entry with the line it is stored as. A record is the export line itself: one JSON object, one line.

use thiserror::Error;

use super::json::{self, Json};
use super::plain::{self, Odd};
use super::wire::envelope::{self, Envelope};
use super::wire::{Unwritable, read_body, write_body};
use crate::domain::entry::Entry;
use crate::domain::facts::{Fact, Newer};
use crate::domain::ids::EntryId;

/// Why a line is not an entry, or an entry cannot become a line.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum BadEntry {
    /// It breaks a rule that holds for every line.
    #[error("not in the stored form: {0}")]
    Form(#[from] Odd),
    /// The envelope cannot be read.
    #[error("broken envelope: {0}")]
    Envelope(String),
    /// The envelope is sound, the body is nonsense.
    #[error("broken body of {kind} version {v}: {why}")]
    Body {
        /// The kind.
        kind: String,
        /// The body's version.
        v: u32,
        /// What is wrong.
        why: String,
    },
    /// It stands under another store and number than it says.
    #[error("kept in the place of another entry")]
    Misplaced,
    /// An entry that would not come back as itself.
    #[error("cannot be written: {0}")]
    Unwritable(String),
}

impl From<Unwritable> for BadEntry {
    fn from(why: Unwritable) -> Self {
        Self::Unwritable(why.0)
    }
}

/// An entry and its line. The two always say the same, and the line of an entry that was read is kept byte for byte.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    entry: Entry,
    line: String,
}

impl Record {
    /// The record of an entry about to be written. Its line is read back before anybody trusts it.
    ///
    /// # Errors
    /// [`BadEntry::Unwritable`] for an entry of a newer kind, which only its own bytes can say, and for one that
    /// would come back differently or not at all.
    pub fn of(entry: Entry) -> Result<Self, BadEntry> {
        let line = encode(&entry)?;
        let back = decode(&line).map_err(|why| BadEntry::Unwritable(why.to_string()))?;
        if back == entry {
            Ok(Self { entry, line })
        } else {
            Err(BadEntry::Unwritable("it would come back differently".into()))
        }
    }

    /// The record a stored line holds.
    ///
    /// # Errors
    /// The line again, and what is wrong with it.
    pub fn read(line: String) -> Result<Self, (String, BadEntry)> {
        match decode(&line) {
            Ok(entry) => Ok(Self { entry, line }),
            Err(why) => Err((line, why)),
        }
    }

    /// What it says.
    #[must_use]
    pub const fn entry(&self) -> &Entry {
        &self.entry
    }

    /// Its line, without a line feed.
    #[must_use]
    pub fn line(&self) -> &str {
        &self.line
    }

    /// Its entry alone.
    #[must_use]
    pub fn into_entry(self) -> Entry {
        self.entry
    }
}

/// The line of an entry: the same entry always gives the same bytes.
///
/// # Errors
/// [`BadEntry::Unwritable`] for an entry of a newer kind.
pub fn encode(entry: &Entry) -> Result<String, BadEntry> {
    let (kind, v, body) = write_body(&entry.fact)?;
    Ok(envelope::line(entry, kind, v, &body))
}

/// The entry a line holds. A kind or version this app does not know becomes [`Fact::Newer`]; keep the line.
///
/// # Errors
/// What is wrong with the line.
pub fn decode(line: &str) -> Result<Entry, BadEntry> {
    plain::check(line)?;
    let json = json::read(line).map_err(|why| BadEntry::Envelope(why.into()))?;
    let envelope = Envelope::read(json).map_err(BadEntry::Envelope)?;
    sound(&envelope).map_err(|why| BadEntry::Envelope(why.into()))?;
    let Envelope { kind, v, body, .. } = envelope;
    let fact = match read_body(&kind, v, body) {
        Ok(Some(fact)) => fact,
        Ok(None) => Fact::Newer(Newer {
            kind: kind.into_owned(),
            v,
        }),
        Err(why) => {
            return Err(BadEntry::Body {
                kind: kind.into_owned(),
                v,
                why,
            });
        }
    };
    Ok(Entry {
        id: envelope.id.0,
        dev: envelope.dev.0,
        seq: envelope.seq,
        at: envelope.at.0,
        rec: envelope.rec.0,
        clk: envelope.clk.map(|t| t.0),
        off_min: envelope.off,
        who: envelope.who.map(|p| p.0),
        fact,
    })
}

/// What an envelope must keep to beyond the form of its fields.
fn sound(envelope: &Envelope) -> Result<(), &'static str> {
    let kind = envelope.kind.as_bytes();
    let named = kind.first().is_some_and(u8::is_ascii_lowercase)
        && kind
            .iter()
            .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || *b == b'_');
    if !is_v7(envelope.id.0) {
        Err("id is not a UUID v7")
    } else if envelope.seq == 0 {
        Err("seq begins at 1")
    } else if envelope.clk.is_some_and(|clk| clk == envelope.rec) {
        Err("clk is given only when it differs from rec")
    } else if envelope.off.unsigned_abs() >= 24 * 60 {
        Err("off is a day or more")
    } else if !named {
        Err("kind is not a lower-case word")
    } else if envelope.v == 0 {
        Err("v begins at 1")
    } else if !matches!(envelope.body, Json::Object(_)) {
        Err("body is not an object")
    } else {
        Ok(())
    }
}

/// Version 7 and the variant of RFC 9562 (sections 4.1 and 4.2).
const fn is_v7(EntryId(bits): EntryId) -> bool {
    (bits >> 76) & 0xf == 7 && (bits >> 62) & 0b11 == 0b10
}
