//! Fold: claims lost and restored, and which of a pan's claims stand.

use crate::domain::claim::{ClaimKind, Exposure, Exposures};
use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::ClaimChange;
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::ids::PanId;
use crate::domain::time::Day;

use super::book::Book;
use crate::domain::sorted::SortedMap;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Change {
    what: ClaimKind,
    lost: bool,
    day: Day,
}

/// What was said of claims after set-up, in oil order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Claims {
    changes: SortedMap<PanId, Vec<Change>>,
}

impl Claims {
    /// Takes in one entry; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, book: &Book) {
        if let Fact::ClaimLost(change) = &entry.fact {
            self.put(entry, book, change, true);
        } else if let Fact::ClaimRestored(change) = &entry.fact {
            self.put(entry, book, change, false);
        }
    }

    fn put(&mut self, entry: &Entry, book: &Book, change: &ClaimChange, lost: bool) {
        self.changes.or_default(change.pan).push(Change {
            what: change.what,
            lost,
            day: book.day_of(entry.at, entry.off_min),
        });
    }

    /// The claims of `pan` that stand on `day`: set up for it, and not lost since without being restored. A claim
    /// that begins on a day after its loss is a new promise.
    pub(super) fn standing(&self, pan: &Pan, day: Day) -> Vec<Claim> {
        let changes = self.changes.get(&pan.pan).map_or(&[][..], Vec::as_slice);
        let lost = |claim: &Claim| {
            let said = changes.iter().rev().find(|c| c.what == claim.what && c.day <= day);
            said.is_some_and(|c| c.lost && c.day >= claim.from)
        };
        pan.claims_on(day).filter(|c| !lost(c)).cloned().collect()
    }
}

/// The first exposure of a set that a claim cannot stand beside; `None` when the two go together.
///
/// Halal meat and animal fat go together with the claim only where the owner gave a basis for it.
#[must_use]
pub fn meets(claim: &Claim, set: Exposures) -> Option<Exposure> {
    let has_basis = !claim.basis.trim().is_empty();
    set.iter().find(|e| claim.what.excludes(*e, has_basis))
}
