//! One line of the log: who says that what happened when, and where it stands in the order of things.

use super::facts::Fact;
use super::ids::{Dev, EntryId, PersonId};
use super::time::{Day, Millis};

/// One entry. Entries are never changed; a mistake is put right by a later [`Fact::Correct`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// Its own id.
    pub id: EntryId,
    /// The store it was written in.
    pub dev: Dev,
    /// 1, 2, 3 … in that store, without gaps.
    pub seq: u32,
    /// When it happened.
    pub at: Millis,
    /// When it was written; never behind the store's last.
    pub rec: Millis,
    /// What the wall clock said, when that differs from `rec`.
    pub clk: Option<Millis>,
    /// Minutes the kitchen's zone was ahead of UTC at `at`.
    pub off_min: i16,
    /// Who did it; nobody for what the phone itself notes.
    pub who: Option<PersonId>,
    /// What happened.
    pub fact: Fact,
}

impl Entry {
    /// Order of cause: for runs, jobs, set-up and corrections.
    #[must_use]
    pub const fn cause(&self) -> (Millis, Dev, u32) {
        (self.rec, self.dev, self.seq)
    }

    /// Order of oil: for everything that changes what is in a pan.
    #[must_use]
    pub const fn oil_order(&self) -> (Millis, Millis, Dev, u32) {
        (self.at, self.rec, self.dev, self.seq)
    }

    /// Whether it was written more than 12 hours after it happened, which every view shows as late.
    #[must_use]
    pub const fn is_late(&self) -> bool {
        self.rec.since(self.at) > 12 * Millis::HOUR
    }

    /// The trading day it belongs to.
    #[must_use]
    pub fn day(&self, start_min: u16) -> Day {
        Day::of(self.at, self.off_min, start_min)
    }
}

/// What a decision wants written, before the store gives it an id, a place and a time of writing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// When it happened; `None` for "now, as it is written", which evidence always is.
    pub at: Option<Millis>,
    /// Who did it.
    pub who: Option<PersonId>,
    /// What happened.
    pub fact: Fact,
}

impl Draft {
    /// Something that happens as it is written.
    #[must_use]
    pub const fn now(who: Option<PersonId>, fact: Fact) -> Self {
        Self { at: None, who, fact }
    }
}
