//! Every reason light-up and lock-up say no, carrying what its sentence will need.

use crate::domain::guide;
use crate::domain::ids::PanId;

/// Why not.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Refusal {
    /// For a reason the filter job knows too: no job, another step, an answer missing or not as it must be, the time
    /// to be asked.
    Guide(guide::Refusal),
    /// The pan stands empty, or some of its oil is out of it: do not light.
    PanEmpty,
    /// There is cleaning water in the pan, and no oil: do not light.
    WaterInPan,
    /// A filter run of this pan is open.
    PanInRun,
    /// An oil change or a boil-out of this pan is open.
    PanInJob,
    /// Scraps were left outdoors: first say what was found.
    FoundFirst,
    /// Heat under this pan was not seen off, or it is only half lit.
    PanHalfLit {
        /// Which.
        pan: PanId,
    },
    /// The second probe is not due yet.
    NotTenMinutes {
        /// Milliseconds left.
        left_ms: i64,
    },
    /// Something was fried or filtered, or a heap was probed: there are scraps somewhere.
    ScrapsSomewhere,
    /// Somebody who works here must be named for the next look.
    LookerUnknown,
    /// The next look lies behind, or more than a day ahead.
    LookNotAhead,
    /// No look is owed for that lock-up.
    NoLookOwed,
    /// "Not done" needs its reason.
    WhyNot,
}

impl From<guide::Refusal> for Refusal {
    fn from(refusal: guide::Refusal) -> Self {
        Self::Guide(refusal)
    }
}
