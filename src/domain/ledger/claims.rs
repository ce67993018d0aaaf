//! Fold: which claims of each pan stand, to the moment: set up, begun for an evening, lost, restored.
//!
//! A claim is lost when somebody says so, and by itself at the entry that brings its pan something it excludes: nobody
//! need notice. Lost stays lost, through changes of set-up too, until it is restored on evidence.

use crate::domain::claim::{ClaimKind, Exposure, Exposures};
use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::ClaimRestored;
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::ids::{EntryId, PanId};
use crate::domain::time::{Day, Millis};

use super::book::Book;
use super::exposures::Meetings;
use crate::domain::sorted::SortedMap;

/// What lost a claim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Because {
    /// Somebody said so.
    Said,
    /// The entry brought this to the pan.
    Met(Exposure),
}

/// A claim that was lost and not restored since.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lost {
    /// Which.
    pub what: ClaimKind,
    /// When.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// The entry that did it.
    pub by: EntryId,
    /// Through what.
    pub because: Because,
    /// Whether the pan was emptied since.
    pub emptied: bool,
}

/// A claim begun for an evening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Evening {
    /// Which.
    pub what: ClaimKind,
    /// Its last moment.
    pub until: Millis,
    /// Minutes the zone was ahead of UTC when it began.
    pub off_min: i16,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Turn {
    Lost(Because),
    /// Restored to what set-up says of it.
    Restored,
    /// Begun, on a basis, until a moment and its trading day.
    Begun(String, Millis, Day),
}

#[derive(Clone, Debug, PartialEq, Eq)]
struct Change {
    what: ClaimKind,
    at: Millis,
    day: Day,
    off_min: i16,
    id: EntryId,
    turn: Turn,
}

#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct PanClaims {
    /// As set up at the moment the fold has come to.
    listed: Vec<Claim>,
    changes: Vec<Change>,
    /// How many changes there were when the pan was last emptied.
    emptied: usize,
}

impl PanClaims {
    /// The last word on a claim among the changes that `counts`, and its place.
    fn last(&self, what: ClaimKind, counts: impl Fn(&Change) -> bool) -> Option<(usize, &Change)> {
        let mut changes = self.changes.iter().enumerate().rev();
        changes.find(|(_, c)| c.what == what && counts(c))
    }
}

/// What was said and found of claims, in oil order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Claims {
    pans: SortedMap<PanId, PanClaims>,
}

impl Claims {
    /// Takes in one entry, and `met` after it, and says whether it lost a claim; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, book: &Book, met: &Meetings) -> bool {
        if let Fact::Pan(pan) = &entry.fact {
            self.pans.or_default(pan.pan).listed.clone_from(&pan.claims);
        } else if let Fact::OilChange(change) = &entry.fact {
            let claims = self.pans.or_default(change.pan);
            claims.emptied = claims.changes.len();
        } else if let Fact::ClaimLost(lost) = &entry.fact {
            self.put(entry, book, lost.pan, lost.what, Turn::Lost(Because::Said));
        } else if let Fact::ClaimRestored(restored) = &entry.fact {
            self.restore(entry, book, met, restored);
        }
        let met_something = self.look(entry, book, met);
        met_something || matches!(entry.fact, Fact::ClaimLost(_))
    }

    fn put(&mut self, entry: &Entry, book: &Book, pan: PanId, what: ClaimKind, turn: Turn) {
        self.pans.or_default(pan).changes.push(Change {
            what,
            at: entry.at,
            day: book.day_of(entry.at, entry.off_min),
            off_min: entry.off_min,
            id: entry.id,
            turn,
        });
    }

    /// A restoration counts only for oil that came in after the loss and has met nothing the claim excludes: an entry
    /// that was dated back or put right cannot make it say otherwise.
    fn restore(&mut self, entry: &Entry, book: &Book, met: &Meetings, restored: &ClaimRestored) {
        let claims = self.pans.or_default(restored.pan);
        let lost = claims.last(restored.what, |_| true);
        let lost = lost.filter(|(_, c)| matches!(c.turn, Turn::Lost(_)));
        if restored.looked.is_some() && lost.is_some_and(|(place, _)| place >= claims.emptied) {
            return;
        }
        let basis = restored.basis.clone().unwrap_or_default();
        let turn = match restored.looked.and_then(|looked| looked.until) {
            Some(until) => {
                let until_day = book.day_of(until, entry.off_min);
                if excluded(restored.what, &basis, met.of_oil(restored.pan)).is_some() {
                    return;
                }
                Turn::Begun(basis, until, until_day)
            }
            None => Turn::Restored,
        };
        self.put(entry, book, restored.pan, restored.what, turn);
    }

    /// Loses every claim that does not go together with what its pan carries now.
    fn look(&mut self, entry: &Entry, book: &Book, met: &Meetings) -> bool {
        let day = book.day_of(entry.at, entry.off_min);
        let mut broken = Vec::new();
        for (pan, claims) in self.pans.iter() {
            for what in ClaimKind::ALL {
                let mut listed = claims.listed.iter();
                let listed = listed.find(|c| c.what == *what && c.until.is_none_or(|until| day <= until));
                let (basis, set) = match (claims.last(*what, |_| true).map(|(_, c)| &c.turn), listed) {
                    (Some(Turn::Lost(_)), _) => continue,
                    // What else the pan fries counts for as long as it is set up for the same.
                    (Some(Turn::Begun(basis, until, _)), None) if entry.at <= *until => (basis, met.of_oil(*pan)),
                    (_, Some(claim)) => (&claim.basis, met.carried(*pan)),
                    (_, None) => continue,
                };
                if let Some(exposure) = excluded(*what, basis, set) {
                    broken.push((*pan, *what, exposure));
                }
            }
        }
        let any = !broken.is_empty();
        for (pan, what, exposure) in broken {
            self.put(entry, book, pan, what, Turn::Lost(Because::Met(exposure)));
        }
        any
    }

    /// The claims of `pan` that stand on `day`, by all that was said up to its end or `at` a moment of it. Without a
    /// moment one begun for an evening counts for all of its days, which only ever refuses more.
    pub(super) fn standing(&self, pan: &Pan, day: Day, at: Option<Millis>) -> Vec<Claim> {
        let none = PanClaims::default();
        let claims = self.pans.get(&pan.pan).unwrap_or(&none);
        let counts = |c: &Change| c.day <= day && at.is_none_or(|at| c.at <= at);
        let stands = |what: &ClaimKind| match claims.last(*what, counts).map(|(_, c)| (c.day, &c.turn)) {
            Some((_, Turn::Lost(_))) => None,
            Some((from, Turn::Begun(basis, until, last))) if day <= *last && at.is_none_or(|at| at <= *until) => {
                Some(Claim {
                    what: *what,
                    from,
                    basis: basis.clone(),
                    until: Some(*last),
                })
            }
            Some((_, Turn::Begun(..) | Turn::Restored)) | None => pan.claims_on(day).find(|c| c.what == *what).cloned(),
        };
        ClaimKind::ALL.iter().filter_map(stands).collect()
    }

    /// The claims of `pan` that would stand on `day` had they not been lost.
    pub(super) fn lost(&self, pan: &Pan, day: Day) -> Vec<Lost> {
        let Some(claims) = self.pans.get(&pan.pan) else {
            return Vec::new();
        };
        let lost = |what: &ClaimKind| {
            let (place, change) = claims.last(*what, |c| c.day <= day)?;
            let Turn::Lost(because) = change.turn else {
                return None;
            };
            let begun = claims.last(*what, |c| matches!(c.turn, Turn::Begun(_, _, last) if day <= last));
            let promised = begun.is_some() || pan.claims_on(day).any(|c| c.what == *what);
            promised.then_some(Lost {
                what: *what,
                at: change.at,
                off_min: change.off_min,
                by: change.id,
                because,
                emptied: place < claims.emptied,
            })
        };
        ClaimKind::ALL.iter().filter_map(lost).collect()
    }

    /// Claims of a pan begun for an evening and not lost since, over or not.
    pub(super) fn evenings(&self, pan: PanId) -> impl Iterator<Item = Evening> {
        let claims = self.pans.get(&pan);
        ClaimKind::ALL.iter().filter_map(move |what| {
            let (_, change) = claims?.last(*what, |_| true)?;
            let Turn::Begun(_, until, _) = change.turn else {
                return None;
            };
            Some(Evening {
                what: *what,
                until,
                off_min: change.off_min,
            })
        })
    }
}

fn excluded(what: ClaimKind, basis: &str, set: Exposures) -> Option<Exposure> {
    let has_basis = !basis.trim().is_empty();
    set.iter().find(|e| what.excludes(*e, has_basis))
}

/// The first exposure of a set that a claim cannot stand beside; `None` when the two go together.
///
/// Halal meat and animal fat go together with the claim only where the owner gave a basis for it.
#[must_use]
pub fn meets(claim: &Claim, set: Exposures) -> Option<Exposure> {
    excluded(claim.what, &claim.basis, set)
}
