//! The journal's promise: entries are added, all of a decision or none, and come back as they were.

use std::future::Future;

use thiserror::Error;

use super::record::{BadEntry, Record};
use crate::domain::ids::Dev;
use crate::domain::sorted::in_order;

/// Where entries are kept, each under its store and number.
///
/// One journal belongs to one kitchen. When [`Journal::append`] has said yes, the entries outlive the app; when it
/// has said no, none of them was written. `tests/store_suite` holds every implementation to this.
pub trait Journal {
    /// The name of this store: made with it, new for every empty one, never changed.
    fn dev(&self) -> Dev;

    /// Writes all of the records, or none.
    ///
    /// # Errors
    /// Why nothing was written. A record whose place is taken is [`StoreFault::Taken`].
    fn append(&self, records: &[Record]) -> impl Future<Output = Result<(), StoreFault>>;

    /// Everything ever written, in order of cause.
    ///
    /// # Errors
    /// Why nothing could be read. Never an empty log in its place.
    fn load(&self) -> impl Future<Output = Result<Loaded, StoreFault>>;
}

/// Why the journal did not do what it was asked. Nothing was written.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum StoreFault {
    /// No room is left on the phone.
    #[error("no room is left for the log")]
    Full,
    /// The browser does not let this page keep anything.
    #[error("the browser does not let this page keep a log")]
    Blocked,
    /// The journal was closed: by another window, by the system, or on leaving.
    #[error("the log was closed")]
    Closed,
    /// Another window has the log: this one only shows it.
    #[error("another window has the log")]
    OtherWindow,
    /// An entry already stands in one of the places.
    #[error("another entry stands in that place of the log")]
    Taken,
    /// What is stored is not a journal.
    #[error("the log is damaged: {why}")]
    Damaged {
        /// What was found.
        why: String,
    },
    /// Anything else.
    #[error("the log could not be used: {why}")]
    Failed {
        /// The system's own name for it.
        why: String,
    },
}

/// What a journal holds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Loaded {
    /// Every entry that could be read, in order of cause; newer kinds among them.
    pub records: Vec<Record>,
    /// Every line that could not, as it stands.
    pub unreadable: Vec<Unreadable>,
}

/// A stored line nobody can read. It is counted, shown, exported, and never dropped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The store it is kept under.
    pub dev: Dev,
    /// The number it is kept under.
    pub seq: u32,
    /// The line.
    pub line: String,
    /// What is wrong with it.
    pub why: BadEntry,
}

impl Loaded {
    /// Reads stored rows: the place each is kept in, and its line.
    #[must_use]
    pub fn from_rows(rows: impl IntoIterator<Item = (Dev, u32, String)>) -> Self {
        let mut loaded = Self::default();
        for (dev, seq, line) in rows {
            match Record::read(line) {
                Ok(record) if (record.entry().dev, record.entry().seq) == (dev, seq) => loaded.records.push(record),
                Ok(record) => {
                    let (line, why) = (record.line().to_owned(), BadEntry::Misplaced);
                    loaded.unreadable.push(Unreadable { dev, seq, line, why });
                }
                Err((line, why)) => loaded.unreadable.push(Unreadable { dev, seq, line, why }),
            }
        }
        in_order(&mut loaded.records, |record| record.entry().cause());
        loaded
    }
}
