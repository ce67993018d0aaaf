//! What goes wrong in a kitchen, and what is said of it until it is over.

use crate::domain::evidence::Evidence;
use crate::domain::ids::{MachineId, PanId};
use crate::domain::keyed::keyed;

keyed! {
    /// A day that goes wrong.
    pub enum TroubleKind {
        /// No power: pump, fan and gas valve drop together.
        PowerCut = "power_cut",
        /// The filter machine is down.
        MachineDown = "machine_down",
        /// A pan's over-heat cut-out tripped.
        CutOut = "cut_out",
        /// Oil on the floor.
        Spill = "spill",
        /// A pan smokes.
        Smoke = "smoke",
        /// Nobody else is in the building.
        Alone = "alone",
        /// The counter opens in the middle of the job.
        CounterOpens = "counter_opens",
        /// The kitchen shuts for days, and opens again.
        Shut = "shut",
    }
}

keyed! {
    /// Something said of a trouble.
    pub enum TroubleEvent {
        /// It is so.
        Began = "began",
        /// What makes it safe was looked at.
        Looked = "looked",
        /// It is over, on what was seen then.
        Over = "over",
    }
}

/// Something said of a trouble.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TroubleFact {
    /// Which.
    pub what: TroubleKind,
    /// What is said.
    pub event: TroubleEvent,
    /// The pan, where one is meant.
    pub pan: Option<PanId>,
    /// The machine, where one is meant.
    pub machine: Option<MachineId>,
    /// What was seen.
    pub evidence: Evidence,
    /// Who mended it.
    pub text: Option<String>,
}
