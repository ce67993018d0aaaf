//! Fold: pans that stand empty, or with their oil elsewhere, and must not be lit.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Move, Vessel};
use crate::domain::facts::run::{Contents, Place};
use crate::domain::ids::{EntryId, PanId, RunId};
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// Where a run left a pan's oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OilLeft {
    /// The run that says so.
    pub run: RunId,
    /// Its entry.
    pub id: EntryId,
    /// When.
    pub at: Millis,
    /// Where the oil is.
    pub place: Place,
    /// What is in the pan.
    pub contents: Contents,
}

impl OilLeft {
    /// Whether the pan holds all its oil.
    const fn is_home(&self) -> bool {
        let in_it = match self.contents {
            Contents::Oil | Contents::SetFat => true,
            Contents::CleaningWater | Contents::EmptyWet | Contents::EmptyDry => false,
        };
        in_it && matches!(self.place, Place::InPan)
    }
}

/// What the last run fact of each pan says, in order of cause.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Empties {
    out: SortedMap<PanId, OilLeft>,
}

impl Empties {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        if let Fact::Run(run) = &entry.fact {
            let left = OilLeft {
                run: run.run,
                id: entry.id,
                at: entry.at,
                place: run.place,
                contents: run.contents,
            };
            if left.is_home() {
                self.out.remove(&run.pan);
            } else {
                self.out.insert(run.pan, left);
            }
        } else if let Fact::Fill(fill) = &entry.fact {
            // A fill written late, of a time before the oil went out, says nothing about the pan now.
            if self.out.get(&fill.pan).is_some_and(|left| left.at <= entry.at) {
                self.out.remove(&fill.pan);
            }
        } else if let Fact::Move(Move {
            from: Vessel::Machine(_),
            to: Vessel::Pan(pan),
            ..
        }) = &entry.fact
            && self.out.get(pan).is_some_and(|left| left.at <= entry.at)
        {
            // Brought back without the guide.
            self.out.remove(pan);
        }
    }

    pub(super) fn of(&self, pan: PanId) -> Option<&OilLeft> {
        self.out.get(&pan)
    }

    pub(super) fn pans(&self) -> impl Iterator<Item = PanId> {
        self.out.keys().copied()
    }
}
