//! Every reason oil change and boil-out say no, carrying what its sentence will need.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::guide;
use crate::domain::units::Volume;

/// Why not.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Refusal {
    /// For a reason the filter job knows too: no job, another step, an answer missing or not as it must be, too hot.
    Guide(guide::Refusal),
    /// A filter run of this pan is open.
    PanInRun,
    /// The light-up has heat under it that was neither finished nor seen off.
    HalfLit,
    /// There is oil or set fat in the pan: no water, no heat, no fresh oil.
    OilInPan,
    /// There is water in the pan: the boil-out comes to its end first.
    WaterInPan,
    /// Some of its oil is in the pan and some is not, or nobody knows where: bring it together first.
    OilSplit,
    /// How many litres came out, and why, are asked with this answer.
    AmountNeeded,
    /// The fat would break a promise of the pan.
    ClaimMet {
        /// The claim.
        claim: ClaimKind,
        /// What breaks it.
        exposure: Exposure,
    },
    /// A reason for the change is needed.
    WhyNot,
    /// More than the pan holds.
    TooMuch {
        /// What it holds when full.
        full: Volume,
    },
    /// Too heavy for one person, or nobody said what it weighs: two people, or a trolley.
    NeedsHelp {
        /// From how many kilograms on.
        from_kg: u8,
    },
    /// Heat under the water comes off first, and is seen off.
    HeatFirst,
    /// Oil is on its way in or out: finish that first.
    Midway,
    /// No waste of that job stands anywhere.
    NoWaste,
}

impl From<guide::Refusal> for Refusal {
    fn from(refusal: guide::Refusal) -> Self {
        Self::Guide(refusal)
    }
}
