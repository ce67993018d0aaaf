//! Why a quick entry is not written, or not yet.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::facts::oil::Vessel;
use crate::domain::facts::setup::Measures;
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, InstrumentId, MachineId, PanId, PersonId};
use crate::domain::ledger::DateRefusal;
use crate::domain::units::{Share, Volume};

use super::restoring::Need;

/// Why it is not written. Nothing was changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuickRefusal {
    /// No pan in use by that id.
    NoSuchPan {
        /// The pan.
        pan: PanId,
    },
    /// No machine by that id.
    NoSuchMachine {
        /// The machine.
        machine: MachineId,
    },
    /// No person by that id.
    NoSuchPerson {
        /// The person.
        person: PersonId,
    },
    /// No instrument by that id, or one that measures something else.
    WrongInstrument {
        /// The instrument.
        instrument: InstrumentId,
        /// What it measures, if it is there.
        measures: Option<Measures>,
    },
    /// The log knows of no oil in the pan: a fill comes first.
    NoOil {
        /// The pan.
        pan: PanId,
    },
    /// There is oil in the pan: an oil change comes first.
    StillOil {
        /// The pan.
        pan: PanId,
    },
    /// There is cleaning water in the pan: it is drained, wiped and dry before oil goes in.
    WaterIn {
        /// The pan.
        pan: PanId,
    },
    /// The pan's oil is not in it: the run comes first.
    OilOut {
        /// The pan.
        pan: PanId,
    },
    /// More than the pan can hold.
    TooMuch {
        /// The pan.
        pan: PanId,
        /// What it holds when full.
        full: Volume,
    },
    /// More arrived than was taken out.
    MoreInThanOut,
    /// A number or words are missing.
    NothingTyped,
    /// From a pan into itself.
    SamePan {
        /// The pan.
        pan: PanId,
    },
    /// No such claim stands on that pan.
    NoSuchClaim {
        /// The pan.
        pan: PanId,
    },
    /// It would break a claim of the pan: log the claim as lost first, or leave it.
    ClaimMet {
        /// The pan.
        pan: PanId,
        /// The claim.
        claim: ClaimKind,
        /// What breaks it.
        exposure: Exposure,
    },
    /// Its oil, or the oil or machine it comes from, has met what a claim of the pan excludes: not moved there.
    MoveMeets {
        /// The pan.
        pan: PanId,
        /// The claim.
        claim: ClaimKind,
        /// What breaks it.
        exposure: Exposure,
        /// Where that comes from.
        from: Vessel,
    },
    /// The log knows of no oil in the machine.
    NoOilIn {
        /// The machine.
        machine: MachineId,
    },
    /// The kit has no tank that oil can stand in.
    NoTank {
        /// The kit.
        machine: MachineId,
    },
    /// A run is open with that machine.
    MachineInRun {
        /// The machine.
        machine: MachineId,
        /// The pan of the run.
        pan: PanId,
    },
    /// From a machine into a machine.
    NoHose,
    /// More than the log knows of there.
    MoreThanThere {
        /// Taken from.
        from: Vessel,
        /// What is there.
        has: Volume,
    },
    /// The pan holds too much to take it.
    NoRoom {
        /// The pan.
        pan: PanId,
        /// The most that can go in.
        room: Volume,
    },
    /// The tank does not hold it hot.
    TankTooSmall {
        /// The machine.
        machine: MachineId,
        /// Room all of it needs when hot.
        needs_ml: u32,
        /// Room there is.
        has_ml: u32,
    },
    /// Another fat stands in the machine.
    OtherFatIn {
        /// The machine.
        machine: MachineId,
        /// The fat in it.
        fat: Fat,
    },
    /// Oil stands in the machine of a pan whose promises are others.
    OtherClaimsIn {
        /// The machine.
        machine: MachineId,
        /// That pan.
        pan: PanId,
    },
    /// The claim is not restored: something that restores it is missing, or not seen.
    NotRestored {
        /// The pan.
        pan: PanId,
        /// The claim.
        claim: ClaimKind,
        /// What is missing first.
        need: Need,
        /// What the pan's oil carries that the claim excludes.
        exposure: Option<Exposure>,
    },
    /// Nobody who is set up here is named.
    Nobody,
    /// No frying oil reads so; the number or its unit is wrong.
    Impossible,
    /// The date does not stand.
    Date(DateRefusal),
    /// Unusual: ask once, and write it if they are sure.
    Doubt(Doubt),
    /// No entry by that id, or none that stands.
    NoSuchEntry {
        /// The entry.
        of: EntryId,
    },
    /// Evidence is remarked upon, never corrected.
    Evidence {
        /// The entry.
        of: EntryId,
    },
    /// A correction keeps the kind of the entry.
    OtherKind {
        /// The entry.
        of: EntryId,
    },
    /// The ten seconds are over: correct it instead.
    TooLate,
}

/// Something that may well be so, but is more often a slip of the finger.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// Higher than oil in use commonly reads.
    High,
    /// Lower than even fresh oil commonly reads.
    Low,
    /// Lower than the last reading though nothing fresh came in.
    Fell,
    /// Far from what this oil is believed to be.
    Unexpected {
        /// The lower end of what was expected, eight times in ten.
        low: Share,
        /// The upper end.
        high: Share,
    },
    /// Hotter than oil is fried in.
    Hot,
    /// More than sixteen hours at frying temperature.
    LongService,
    /// A service of that pan is logged for that day already.
    SecondService,
    /// More than half a pan as a top-up.
    BigTopUp,
    /// Another fat than the pan is kept with.
    OtherFat {
        /// The fat it is kept with.
        kept: Fat,
    },
    /// Less than the pan may be heated with.
    UnderMark {
        /// The least.
        min: Volume,
    },
    /// Nobody saw the pan wiped, dry and its valve shut by the guide: said to be so, it is logged as done without it.
    NotSeenDry {
        /// The fat it is kept with, where another goes in.
        kept: Option<Fat>,
    },
    /// The pan is logged as filtered on that day already.
    AlreadyFiltered,
    /// Another fat is in the pan: together they are a blend.
    Mixes {
        /// The fat in it.
        held: Fat,
    },
    /// The fat sets in a cold machine: was it all melted?
    Melted {
        /// The fat.
        fat: Fat,
    },
    /// The machine has met what a claim of the oil's own pan excludes: it could not go back into it.
    CannotGoBack {
        /// The claim.
        claim: ClaimKind,
        /// What breaks it.
        exposure: Exposure,
    },
}
