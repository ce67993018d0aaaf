//! Import: a file is read and checked whole before anything is kept, and refused whole with the line and the reason.

use thiserror::Error;

use super::export::{About, END, ENTRIES, FORMAT, HEAD, UNREADABLE, VERSION, digest};
use super::json::{self, Json};
use super::record::{BadEntry, Record};
use super::wire::envelope::HeaderV1;
use super::wire::stored::Stored;
use super::world::World;
use crate::domain::facts::Fact;
use crate::domain::ids::{Dev, KitchenId};
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// The largest file that is looked at: about a century of one kitchen.
const MAX_BYTES: usize = 200_000_000;
/// The most entries a file may announce.
const MAX_ENTRIES: u32 = 1_000_000;

/// What a good file holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Import {
    /// What it says of itself.
    pub about: About,
    /// Its entries, in order of cause, each line as it came.
    pub records: Vec<Record>,
    /// Lines the exporting app could not read. They have no place in a log, and are handed over to be shown.
    pub unreadable: Vec<String>,
}

/// Why a file is refused. Nothing of it was kept.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("line {line}: {why}")]
pub struct ImportRefusal {
    /// The line of the file, from 1.
    pub line: usize,
    /// What is wrong there.
    pub why: ImportFault,
}

/// What is wrong with a file.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum ImportFault {
    /// This phone has entries; merging is not built yet.
    #[error("this phone already has a log")]
    NotEmpty,
    /// It is larger than any log of one kitchen.
    #[error("the file is larger than 200 MB")]
    TooBig,
    /// It does not begin as an export does.
    #[error("this is not an export of this app")]
    NotAnExport,
    /// The form of the file is newer than this app.
    #[error("the file has form {version}; this app knows form 1: update the app")]
    NewerForm {
        /// The form's version.
        version: u32,
    },
    /// The header cannot be read.
    #[error("broken header: {0}")]
    Header(String),
    /// It comes from the demo or from practice, or from the real kitchen into one of those.
    #[error("the file belongs to another world ({})", file.key())]
    OtherWorld {
        /// The world of the file.
        file: World,
    },
    /// The layout breaks off or changes here: cut short, or written by another tool.
    #[error("the file is cut short or was changed here")]
    Layout,
    /// An entry cannot be read.
    #[error("{0}")]
    Entry(BadEntry),
    /// The same id as on an earlier line.
    #[error("the id of line {first} again")]
    RepeatedId {
        /// That line.
        first: usize,
    },
    /// The same store and number as on an earlier line.
    #[error("the dev and seq of line {first} again")]
    RepeatedPlace {
        /// That line.
        first: usize,
    },
    /// An entry that belongs before the one above it.
    #[error("out of order: it was written before the line above")]
    OutOfOrder,
    /// A set-up of another kitchen.
    #[error("an entry of another kitchen")]
    OtherKitchen,
    /// More or fewer entries than the header says.
    #[error("the header says {said} entries, the file holds {found}")]
    Count {
        /// What the header says.
        said: u32,
        /// What there is.
        found: usize,
    },
    /// The entries are not those the header was made for.
    #[error("the digest does not fit the entries: the file was changed")]
    Digest,
}

/// Reads a file into an empty kitchen of world `here`; `held` is how many entries this phone already has.
///
/// # Errors
/// The first thing that is wrong, with its line.
pub fn import(text: &str, here: World, held: usize) -> Result<Import, ImportRefusal> {
    let at = |line: usize, why: ImportFault| ImportRefusal { line, why };
    if held > 0 {
        return Err(at(1, ImportFault::NotEmpty));
    }
    if text.len() > MAX_BYTES {
        return Err(at(1, ImportFault::TooBig));
    }
    let mut lines = text.trim_start_matches('\u{feff}').lines().zip(1..);
    let header = header(lines.next().map_or("", |(line, _)| line)).map_err(|why| at(1, why))?;
    if header.world.0 != here {
        return Err(at(1, ImportFault::OtherWorld { file: header.world.0 }));
    }
    match lines.next() {
        Some((ENTRIES, _)) => {}
        Some(_) | None => return Err(at(2, ImportFault::Layout)),
    }

    let mut checks = Checks::new(header.kitchen.0);
    let mut records = Vec::new();
    let (end, last) = items(&mut lines, 2, |line, n| {
        let record = Record::read(line.to_owned()).map_err(|(_, why)| at(n, ImportFault::Entry(why)))?;
        checks.look(&record, n).map_err(|why| at(n, why))?;
        records.push(record);
        Ok(())
    })?;
    let found = records.len();
    if u32::try_from(found) != Ok(header.count) {
        return Err(at(
            last,
            ImportFault::Count {
                said: header.count,
                found,
            },
        ));
    }
    if digest(records.iter().map(Record::line)) != header.digest {
        return Err(at(1, ImportFault::Digest));
    }

    let mut unreadable = Vec::new();
    let (end, last) = if end == UNREADABLE {
        items(&mut lines, last, |line, n| {
            match json::read(line) {
                Ok(Json::Word(line)) => unreadable.push(line.into_owned()),
                _ => return Err(at(n, ImportFault::Layout)),
            }
            Ok(())
        })?
    } else {
        (end, last)
    };
    if end != END {
        return Err(at(last, ImportFault::Layout));
    }
    if let Some((_, n)) = lines.find(|(line, _)| !line.is_empty()) {
        return Err(at(n, ImportFault::Layout));
    }
    let about = About {
        kitchen: header.kitchen.0,
        name: header.name,
        world: header.world.0,
        made_at: header.made_at.0,
    };
    Ok(Import {
        about,
        records,
        unreadable,
    })
}

fn header(line: &str) -> Result<HeaderV1, ImportFault> {
    let json = line.strip_prefix(HEAD).ok_or(ImportFault::NotAnExport)?;
    let json = json.strip_suffix(',').ok_or(ImportFault::Layout)?;
    let json = json::read(json).map_err(|why| ImportFault::Header(why.to_owned()))?;
    let header = HeaderV1::from_json(json).map_err(ImportFault::Header)?;
    if header.format != FORMAT {
        Err(ImportFault::NotAnExport)
    } else if header.version > VERSION {
        Err(ImportFault::NewerForm {
            version: header.version,
        })
    } else if header.count > MAX_ENTRIES {
        Err(ImportFault::TooBig)
    } else {
        Ok(header)
    }
}

/// Hands over the items of a list, one a line with a comma between; gives the line after it, and its number.
fn items<'a>(
    lines: &mut impl Iterator<Item = (&'a str, usize)>,
    mut n: usize,
    mut each: impl FnMut(&'a str, usize) -> Result<(), ImportRefusal>,
) -> Result<(&'a str, usize), ImportRefusal> {
    let mut more = true;
    let mut first = true;
    for (line, number) in lines {
        n = number;
        if line.starts_with(']') {
            // A list ends after an item without a comma, or at once.
            if more && !first {
                break;
            }
            return Ok((line, n));
        }
        if !more {
            break;
        }
        let item = line.strip_suffix(',');
        more = item.is_some();
        first = false;
        each(item.unwrap_or(line), n)?;
    }
    Err(ImportRefusal {
        line: n,
        why: ImportFault::Layout,
    })
}

/// What entries must keep to among each other.
struct Checks {
    kitchen: KitchenId,
    ids: SortedMap<u128, usize>,
    places: SortedMap<(Dev, u32), usize>,
    last: Option<(Millis, Dev, u32)>,
}

impl Checks {
    const fn new(kitchen: KitchenId) -> Self {
        Self {
            kitchen,
            ids: SortedMap::new(),
            places: SortedMap::new(),
            last: None,
        }
    }

    fn look(&mut self, record: &Record, line: usize) -> Result<(), ImportFault> {
        let entry = record.entry();
        if let Some(first) = self.ids.insert(entry.id.0, line) {
            return Err(ImportFault::RepeatedId { first });
        }
        if let Some(first) = self.places.insert((entry.dev, entry.seq), line) {
            return Err(ImportFault::RepeatedPlace { first });
        }
        if self.last.is_some_and(|last| last > entry.cause()) {
            return Err(ImportFault::OutOfOrder);
        }
        self.last = Some(entry.cause());
        match &entry.fact {
            Fact::Kitchen(kitchen) if kitchen.kitchen != self.kitchen => Err(ImportFault::OtherKitchen),
            _ => Ok(()),
        }
    }
}
