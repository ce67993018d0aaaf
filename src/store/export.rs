//! The export: one JSON document, its entries one a line in order of cause, so that any tool can read it.
//!
//! ```text
//! {"panward_export":{"format":"panward-log","version":1, … ,"count":2,"digest":"…"},
//! "entries":[
//! {"id": … },
//! {"id": … }
//! ]}
//! ```
//!
//! Lines that nobody can read follow as strings in `unreadable`; the list is there only when it is not empty.

use std::fmt::Write;

use sha2::{Digest, Sha256};

use super::journal::{Loaded, StoreFault};
use super::json::Out;
use super::wire::envelope::HeaderV1;
use super::wire::scalar::Text;
use super::wire::stored::Stored;
use super::world::World;
use crate::domain::ids::KitchenId;
use crate::domain::sorted::in_order;
use crate::domain::time::Millis;

/// What the header's `format` says.
pub const FORMAT: &str = "panward-log";
/// The version of the file's form.
pub const VERSION: u32 = 1;

pub(super) const HEAD: &str = "{\"panward_export\":";
pub(super) const ENTRIES: &str = "\"entries\":[";
pub(super) const UNREADABLE: &str = "],\"unreadable\":[";
pub(super) const END: &str = "]}";

/// What an export says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct About {
    /// The kitchen's id.
    pub kitchen: KitchenId,
    /// What the kitchen is called now.
    pub name: String,
    /// The world its entries belong to.
    pub world: World,
    /// When it was made.
    pub made_at: Millis,
}

/// The text of an export. The same log and the same `about` always give the same bytes.
///
/// # Errors
/// [`StoreFault::Failed`] when the header cannot be written, which a time past the year 9999 would do.
pub fn export(loaded: &Loaded, about: &About) -> Result<String, StoreFault> {
    let mut lines: Vec<_> = loaded.records.iter().collect();
    in_order(&mut lines, |record| record.entry().cause());
    let lines: Vec<&str> = lines.into_iter().map(|record| record.line()).collect();
    let header = HeaderV1 {
        format: FORMAT.to_owned(),
        version: VERSION,
        kitchen: Text(about.kitchen),
        name: about.name.clone(),
        world: Text(about.world),
        made_at: Text(about.made_at),
        count: u32::try_from(lines.len()).map_err(|_| failed("too many entries"))?,
        digest: digest(lines.iter().copied()),
    };
    let mut out = Out::new();
    header.put(&mut out);
    let header = out.into_text();
    let mut text = String::with_capacity(lines.iter().map(|line| line.len() + 2).sum::<usize>() + 1024);
    text.extend([HEAD, &header, ",\n", ENTRIES, "\n"]);
    push_list(&mut text, lines);
    if !loaded.unreadable.is_empty() {
        let quoted: Vec<String> = loaded.unreadable.iter().map(|u| quoted(&u.line)).collect();
        text.extend([UNREADABLE, "\n"]);
        push_list(&mut text, quoted.iter().map(String::as_str));
    }
    text.extend([END, "\n"]);
    Ok(text)
}

/// A line nobody can read, as a JSON string.
fn quoted(line: &str) -> String {
    let mut out = Out::new();
    out.word(line);
    out.into_text()
}

/// Items one a line, with a comma between.
fn push_list<'a>(text: &mut String, items: impl IntoIterator<Item = &'a str>) {
    let mut between = "";
    for item in items {
        text.extend([between, item]);
        between = ",\n";
    }
    if !between.is_empty() {
        text.push('\n');
    }
}

/// SHA-256 in hex over lines, each followed by one line feed.
pub(super) fn digest<'a>(lines: impl Iterator<Item = &'a str>) -> String {
    let mut hash = Sha256::new();
    for line in lines {
        hash.update(line);
        hash.update(b"\n");
    }
    hash.finalize().iter().fold(String::with_capacity(64), |mut hex, byte| {
        // Writing into a string cannot fail.
        let _ = write!(hex, "{byte:02x}");
        hex
    })
}

fn failed(why: &str) -> StoreFault {
    StoreFault::Failed { why: why.to_owned() }
}
