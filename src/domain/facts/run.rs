//! What happens in one pan's part of a filter job, and where that leaves oil, pump and heat.

use crate::domain::evidence::Evidence;
use crate::domain::ids::{JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::keyed::keyed;
use crate::domain::procedure::StepId;
use crate::domain::time::Millis;
use crate::domain::units::Temp;

use super::setup::Route;

keyed! {
    /// Where the oil is.
    pub enum Place {
        /// In its pan.
        InPan = "in_pan",
        /// Some in the pan, some in the machine.
        Split = "split",
        /// In the closed machine.
        InMachine = "in_machine",
        /// In a lidded metal container, at or under 40 °C.
        InContainer = "in_container",
        /// Spilt, or taken away.
        Gone = "gone",
    }
}

keyed! {
    /// What is in the pan.
    pub enum Contents {
        /// Liquid oil.
        Oil = "oil",
        /// Fat that has set.
        SetFat = "set_fat",
        /// Cleaning water.
        CleaningWater = "cleaning_water",
        /// Nothing, with a film or wet.
        EmptyWet = "empty_wet",
        /// Nothing, seen dry.
        EmptyDry = "empty_dry",
    }
}

keyed! {
    /// What the pump (or the open drain) does.
    pub enum Pump {
        /// Seen off.
        Off = "off",
        /// Oil is leaving the pan.
        Drawing = "drawing",
        /// Oil goes round to rinse the pan.
        Rinsing = "rinsing",
        /// Oil is coming back.
        Returning = "returning",
        /// Nobody has looked since the guide was away.
        Unknown = "unknown",
    }
}

keyed! {
    /// What the pan's heat does.
    pub enum Heat {
        /// On.
        On = "on",
        /// At its lowest or melt setting.
        Low = "low",
        /// Seen off in the two ways the owner named.
        OffSeen = "off_seen",
        /// Nobody has looked since the guide was away.
        Unknown = "unknown",
    }
}

keyed! {
    /// Which form of the guide a run uses. Same holds, same evidence.
    pub enum Form {
        /// Every item asked by itself.
        Long = "long",
        /// Four stops, items grouped.
        Short = "short",
    }
}

keyed! {
    /// Something in a run.
    pub enum RunEvent {
        /// It was begun.
        Began = "began",
        /// A step was answered.
        Answered = "answered",
        /// The pump was started or seen off.
        Pump = "pump",
        /// Somebody stopped it.
        Stopped = "stopped",
        /// Made safe; the look again is next.
        Resumed = "resumed",
        /// Heat, pump and place of the oil were looked at again.
        Reverified = "reverified",
        /// Something is wrong.
        Fault = "fault",
        /// It was ended.
        Ended = "ended",
    }
}

keyed! {
    /// How a run ended.
    pub enum Left {
        /// Lit again.
        Relit = "relit",
        /// Left off.
        Off = "off",
        /// Left to set.
        Set = "set",
        /// Not filtered after all: its oil never left it.
        AsWas = "as_was",
        /// With oil out of the pan: the pan is tagged and stands as empty.
        OilOut = "oil_out",
    }
}

keyed! {
    /// What can go wrong.
    pub enum Fault {
        /// Oil comes slowly: set fat or a loaded filter.
        SlowDraw = "slow_draw",
        /// The pump will not start.
        WillNotStart = "will_not_start",
        /// The pump will not stop.
        WillNotStop = "will_not_stop",
        /// Hose, lid or tank damaged or leaking.
        Leak = "leak",
        /// Oil on the floor.
        Spill = "spill",
        /// The oil smokes.
        Smoke = "smoke",
        /// The heat will not go off.
        HeatStaysOn = "heat_stays_on",
        /// Water in the oil: foam, crackle, spitting.
        Water = "water",
        /// Something else.
        Other = "other",
    }
}

/// The limits a run was held to, kept with it so that a later change of settings cannot rewrite it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Limits {
    /// Lowest oil temperature for the draw.
    pub low: Temp,
    /// Highest oil temperature for the draw.
    pub high: Temp,
    /// The soft target.
    pub target: Temp,
    /// Longest rinse in seconds, on single-pass filters.
    pub rinse_max_s: Option<u16>,
    /// Shortest rinse in seconds, on recirculating filters.
    pub rinse_min_s: Option<u16>,
}

/// Which optional parts a run has.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Plan {
    /// Samples before and after, compared by eye.
    pub samples: bool,
    /// Wipe the pan hot instead of leaving it for the cold clean.
    pub wipe: bool,
    /// Rinse the pan with its own oil.
    pub rinse: bool,
}

/// Something in a run, and the state it leaves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunFact {
    /// The run.
    pub run: RunId,
    /// The filter job it belongs to.
    pub job: JobId,
    /// The pan.
    pub pan: PanId,
    /// The machine or hand kit.
    pub machine: Option<MachineId>,
    /// How oil leaves the pan.
    pub route: Route,
    /// Which form.
    pub form: Form,
    /// Which optional parts.
    pub plan: Plan,
    /// Who stands beside a starter.
    pub supervisor: Option<PersonId>,
    /// What happened.
    pub event: RunEvent,
    /// The step it happened at.
    pub step: StepId,
    /// What went wrong, for [`RunEvent::Fault`].
    pub fault: Option<Fault>,
    /// What was seen.
    pub evidence: Evidence,
    /// Where the oil is after it.
    pub place: Place,
    /// What is in the pan after it.
    pub contents: Contents,
    /// What the pump does after it.
    pub pump: Pump,
    /// What the heat does after it.
    pub heat: Heat,
    /// When a wait that began here is due.
    pub deadline: Option<Millis>,
    /// How it was left, for [`RunEvent::Ended`].
    pub left: Option<Left>,
    /// The limits in force.
    pub limits: Limits,
}
