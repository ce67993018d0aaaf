//! Fold: pans last seen with their oil below the mark. They carry a tag, and are topped up before they are lit.

use crate::domain::entry::Entry;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Fill, Move, TopUp, Vessel};
use crate::domain::ids::PanId;
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// When each pan that is low was seen so.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Lows(SortedMap<PanId, Millis>);

impl Lows {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        let fact = &entry.fact;
        if let Fact::Run(run) = fact {
            self.see(run.pan, &run.evidence, entry.at);
        } else if let Fact::Job(job) = fact
            && let Some(pan) = job.pan
        {
            self.see(pan, &job.evidence, entry.at);
        } else if let Fact::TopUp(TopUp { pan, .. })
        | Fact::Fill(Fill { pan, .. })
        | Fact::Move(Move {
            to: Vessel::Pan(pan), ..
        }) = fact
        {
            self.raised(*pan, entry.at);
        }
    }

    fn see(&mut self, pan: PanId, seen: &Evidence, at: Millis) {
        match seen.word(Item::Level) {
            Some(Word::Below) => {
                self.0.insert(pan, at);
            }
            Some(_) => {
                self.0.remove(&pan);
            }
            None => {}
        }
    }

    /// Oil went in: where it stands now is seen at the next look. What went in before the look is in what was seen.
    fn raised(&mut self, pan: PanId, at: Millis) {
        if self.0.get(&pan).is_some_and(|seen| *seen <= at) {
            self.0.remove(&pan);
        }
    }

    pub(super) fn has(&self, pan: PanId) -> bool {
        self.0.contains_key(&pan)
    }
}
