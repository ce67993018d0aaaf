//! The kinds of quick entry, and which of them a pan can be told now.

use crate::domain::facts::Fact;
use crate::domain::ids::PanId;
use crate::domain::keyed::keyed;
use crate::domain::ledger::{Ledger, is_evidence};
use crate::domain::time::Day;

use super::moving::{is_parked, others};

keyed! {
    /// A kind of quick entry, the most frequent first.
    pub enum Kind {
        /// Fresh oil added.
        TopUp = "top_up",
        /// A service worked, or not.
        Service = "service",
        /// A measured number.
        Reading = "reading",
        /// Something seen, smelt or tasted.
        Sign = "sign",
        /// Some out, as much fresh in.
        PartChange = "part_change",
        /// All out; fresh in at once, or the pan stands empty.
        OilChange = "oil_change",
        /// Oil into an empty pan.
        Fill = "fill",
        /// From this pan into another.
        Move = "move",
        /// Words.
        Note = "note",
        /// A claim lost.
        ClaimLost = "claim_lost",
    }
}

impl Kind {
    /// The kinds that can be true of `pan` on `day`: no top-up without oil, no claim lost that does not stand.
    #[must_use]
    pub fn offered(ledger: &Ledger, pan: PanId, day: Day) -> Vec<Self> {
        let filled = ledger.fill(pan).is_some();
        let offers = |kind: &&Self| match kind {
            Self::TopUp | Self::Reading | Self::PartChange => filled,
            Self::OilChange => filled || is_parked(ledger, pan),
            Self::Move => !others(ledger, pan).is_empty(),
            Self::Fill => !filled || is_parked(ledger, pan),
            Self::Service | Self::Sign | Self::Note => true,
            Self::ClaimLost => !ledger.claims_standing(pan, day).is_empty(),
        };
        Self::ALL.iter().filter(offers).copied().collect()
    }
}

/// Whether an entry came of a quick entry or a one-touch word, and so can be put right in the log. Set-up is put
/// right in set-up; evidence stays.
#[must_use]
pub fn is_quick(fact: &Fact) -> bool {
    match fact {
        Fact::Fill(_)
        | Fact::TopUp(_)
        | Fact::PartChange(_)
        | Fact::Move(_)
        | Fact::OilChange(_)
        | Fact::Service(_)
        | Fact::PanJob(_)
        | Fact::Closed(_)
        | Fact::Reading(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::RunNoted(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_) => true,
        Fact::Job(_) => !is_evidence(fact),
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Correct(_)
        | Fact::Run(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => false,
    }
}
