//! What happens to the oil. These facts name pans, never fills: a fill is found by time.

use crate::domain::claim::ClaimKind;
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, MachineId, PanId};
use crate::domain::keyed::keyed;
use crate::domain::time::{Day, Millis};
use crate::domain::units::{AcidValue, Amount, Minutes, Share, Temp};

/// How old oil was when the log first met it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Age {
    /// Fresh from its container.
    Fresh,
    /// Fresh on an earlier day.
    Since(Day),
    /// Nobody knows.
    Unknown,
}

/// Oil into an empty pan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fill {
    /// The pan.
    pub pan: PanId,
    /// The fat.
    pub fat: Fat,
    /// How much.
    pub amount: Amount,
    /// The batch on its container.
    pub batch: Option<String>,
    /// How old it is.
    pub age: Age,
}

/// Fresh oil added to a pan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TopUp {
    /// The pan.
    pub pan: PanId,
    /// The fat.
    pub fat: Fat,
    /// How much.
    pub amount: Amount,
    /// The batch on its container.
    pub batch: Option<String>,
}

/// Some oil out, fresh in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartChange {
    /// The pan.
    pub pan: PanId,
    /// Taken out.
    pub out: Amount,
    /// Fresh oil put in.
    pub fresh: Amount,
}

/// What oil stands in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Vessel {
    /// A pan.
    Pan(PanId),
    /// The tank of a filter machine, where oil is parked.
    Machine(MachineId),
}

impl Vessel {
    /// The pan, if it is one.
    #[must_use]
    pub const fn pan(self) -> Option<PanId> {
        match self {
            Self::Pan(pan) => Some(pan),
            Self::Machine(_) => None,
        }
    }

    /// The machine, if it is one.
    #[must_use]
    pub const fn machine(self) -> Option<MachineId> {
        match self {
            Self::Pan(_) => None,
            Self::Machine(machine) => Some(machine),
        }
    }
}

keyed! {
    /// Which way oil goes between a pan and a machine.
    pub enum Parking {
        /// Into the machine.
        Machine = "machine",
        /// Back into a pan.
        Pan = "pan",
    }
}

/// Oil from one vessel into another. Never from machine to machine: no hose joins two.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Move {
    /// Taken from.
    pub from: Vessel,
    /// Put into.
    pub to: Vessel,
    /// Taken out.
    pub out: Amount,
    /// What arrived.
    pub arrived: Amount,
}

/// All oil out of a pan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OilChange {
    /// The pan.
    pub pan: PanId,
    /// How much came out.
    pub amount: Amount,
    /// Why.
    pub reason: String,
    /// Its temperature when it was moved.
    pub temp: Option<Temp>,
    /// What it went into.
    pub container: Option<String>,
}

keyed! {
    /// How much was fried, as a frier says it.
    pub enum Load {
        /// A quiet day.
        Quiet = "quiet",
        /// A normal day.
        Normal = "normal",
        /// A heavy day.
        Heavy = "heavy",
    }
}

/// A service worked with a pan; no frying minutes means it was not used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Service {
    /// The pan.
    pub pan: PanId,
    /// Minutes at frying temperature.
    pub fry: Minutes,
    /// How busy.
    pub load: Load,
    /// Frying temperature.
    pub temp: Option<Temp>,
    /// Food fried, in grams.
    pub food_g: Option<u32>,
}

/// A measured value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// Polar compounds, % m/m.
    Polar(Share),
    /// Free fatty acids, % m/m as oleic.
    Ffa(Share),
    /// Acid value, mg KOH/g.
    Acid(AcidValue),
    /// Temperature of the oil.
    Temp(Temp),
    /// Temperature at which the oil began to smoke.
    Smoke(Temp),
}

/// A reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The pan.
    pub pan: PanId,
    /// What was measured.
    pub value: Measured,
    /// With what.
    pub instrument: Option<InstrumentId>,
    /// How hot the oil was.
    pub oil: Option<Temp>,
}

keyed! {
    /// Something seen, smelt or tasted.
    pub enum SignKind {
        /// Smoke at frying temperature.
        Smoke = "smoke",
        /// Foam that stays.
        Foam = "foam",
        /// An off smell.
        Smell = "smell",
        /// Dark oil.
        Dark = "dark",
        /// Gum on the walls.
        Gum = "gum",
        /// Carbon on the walls.
        Carbon = "carbon",
        /// Greasy or soggy food.
        Greasy = "greasy",
        /// Slow to come up to heat.
        Slow = "slow",
    }
}

impl SignKind {
    /// Whether the oil must be changed whatever the number says (Centre for Food Safety, Hong Kong, 2019/2020:
    /// change on abnormal smell, smoke or foam).
    #[must_use]
    pub const fn means_change(self) -> bool {
        match self {
            Self::Smoke | Self::Foam | Self::Smell => true,
            Self::Dark | Self::Gum | Self::Carbon | Self::Greasy | Self::Slow => false,
        }
    }
}

impl SignKind {
    /// Whether it is about the oil's colour, which a filter powder takes out while it leaves most polar compounds in
    /// (Lin et al. 1998).
    #[must_use]
    pub const fn is_colour(self) -> bool {
        match self {
            Self::Dark => true,
            Self::Smoke | Self::Foam | Self::Smell | Self::Gum | Self::Carbon | Self::Greasy | Self::Slow => false,
        }
    }
}

/// A sign.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sign {
    /// The pan, unless it is about the kitchen.
    pub pan: Option<PanId>,
    /// What was noticed.
    pub sign: SignKind,
    /// In words.
    pub text: Option<String>,
}

/// A note.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// The pan, unless it is about the kitchen.
    pub pan: Option<PanId>,
    /// The words.
    pub text: String,
}

/// A claim lost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClaimChange {
    /// The pan.
    pub pan: PanId,
    /// Which claim.
    pub what: ClaimKind,
    /// Why; empty while nobody has said.
    pub why: String,
    /// What it rests on.
    pub basis: Option<String>,
}

/// A claim restored, or begun for an evening.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClaimRestored {
    /// The pan.
    pub pan: PanId,
    /// Which claim.
    pub what: ClaimKind,
    /// Why.
    pub why: String,
    /// What it rests on.
    pub basis: Option<String>,
    /// What was looked at; absent from what was logged before it was asked.
    pub looked: Option<Looked>,
}

/// The pan was seen clean and dry before the fresh oil, and its utensils are its own: no answer but these is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Looked {
    /// The last moment of a claim that is begun for an evening; until then only food that keeps it goes in. Absent
    /// where the pan is kept for it by set-up.
    pub until: Option<Millis>,
}
