//! Fold: pans into which blocks of fat went since they were last seen liquid. Until they melt, a block can lie across
//! bare heat.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Fill, TopUp};
use crate::domain::facts::run::{Contents, Heat};
use crate::domain::ids::PanId;
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;
use crate::domain::units::{Amount, Unit};

use super::runs::oil_out;

/// How long a pan counts as hot after its heat was seen on, with no later word on it: the longest trading day (project
/// default). A block that goes into hot fat melts there and then.
const HOT_MS: i64 = 16 * Millis::HOUR;

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct PanBlocks {
    /// When its heat was seen on.
    lit: Option<Millis>,
    /// When blocks last went into fat that was not hot.
    cold_blocks: Option<Millis>,
}

/// What is known of the blocks in each pan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Blocks(SortedMap<PanId, PanBlocks>);

impl Blocks {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        if let Fact::Fill(Fill { pan, amount, .. }) = &entry.fact {
            // An empty pan is never hot.
            self.0.or_default(*pan).lit = None;
            self.added(*pan, amount, entry.at);
        } else if let Fact::TopUp(TopUp { pan, amount, .. }) = &entry.fact {
            self.added(*pan, amount, entry.at);
        } else if let Fact::Job(job) = &entry.fact
            && let Some(pan) = job.pan
        {
            self.seen(pan, job.heat, job.contents == Some(Contents::Oil), entry.at);
        } else if let Fact::Run(run) = &entry.fact {
            // Only liquid fat leaves a pan.
            self.seen(run.pan, Some(run.heat), oil_out(run), entry.at);
        }
    }

    fn added(&mut self, pan: PanId, amount: &Amount, at: Millis) {
        let known = self.0.or_default(pan);
        let hot = known.lit.is_some_and(|lit| (0..HOT_MS).contains(&at.since(lit)));
        if amount.typed.unit == Unit::Block && !hot {
            known.cold_blocks = Some(at);
        }
    }

    fn seen(&mut self, pan: PanId, heat: Option<Heat>, liquid: bool, at: Millis) {
        let known = self.0.or_default(pan);
        match heat {
            Some(Heat::On) => known.lit = Some(at),
            Some(Heat::Low | Heat::OffSeen | Heat::Unknown) => known.lit = None,
            None => {}
        }
        if liquid {
            known.cold_blocks = known.cold_blocks.filter(|added| *added > at);
        }
    }

    pub(super) fn has(&self, pan: PanId) -> bool {
        self.0.get(&pan).is_some_and(|known| known.cold_blocks.is_some())
    }
}
