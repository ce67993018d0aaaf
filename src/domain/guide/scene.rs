//! What the guide must know of the kitchen to decide: handed in, taken from the ledger by the kitchen.

use super::RUNS_BEFORE_SHORT;
use crate::domain::claim::Exposures;
use crate::domain::facts::run::{Contents, Place};
use crate::domain::facts::setup::{Claim, Machine, Pan, Person, Route};
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::fat::Fat;
use crate::domain::ids::{MachineId, PanId, PersonId};
use crate::domain::ledger::Parked;
use crate::domain::time::Day;
use crate::domain::trouble::Standing;

/// A pan as it stands.
#[derive(Clone, Debug)]
pub struct PanNow {
    /// As set up.
    pub pan: Pan,
    /// The claims that stand today.
    pub claims: Vec<Claim>,
    /// Where its oil was last left.
    pub place: Place,
    /// What is in it.
    pub contents: Contents,
    /// By which route its oil went out, while it stands outside.
    pub went: Option<Route>,
    /// Whether blocks of fat went in since it was last seen liquid.
    pub blocks: bool,
}

/// A machine as it stands.
#[derive(Clone, Debug)]
pub struct MachineNow {
    /// As set up.
    pub machine: Machine,
    /// What it has met since its last strip-clean.
    pub met: Exposures,
    /// The fat it held last.
    pub last_fat: Option<Fat>,
    /// The oil that stands in it.
    pub holds: Vec<Parked>,
    /// Whether that fat sets, and the line was not seen run empty since.
    pub set_in_line: bool,
    /// Who put it away last, dry and built for the next run; nobody where it was left otherwise.
    pub left_ready_by: Option<PersonId>,
}

impl MachineNow {
    /// Whether it held a fat last that sets in a cold pump or hose.
    #[must_use]
    pub fn held_solid(&self) -> bool {
        self.last_fat.is_some_and(Fat::is_solid)
    }
}

/// The kitchen, as far as a filter job is concerned.
#[derive(Clone, Debug)]
pub struct Scene {
    /// Everybody who works here, with the clean guided runs of each.
    pub people: Vec<(Person, u32)>,
    /// The pans in use.
    pub pans: Vec<PanNow>,
    /// The pans in use with no oil of their own: oil parked in a machine can be brought into them.
    pub bare: Vec<PanNow>,
    /// The machines and hand kits.
    pub machines: Vec<MachineNow>,
    /// The trading day.
    pub day: Day,
    /// Whether it is the winter half-year here, when a cold machine warms more slowly.
    pub winter: bool,
    /// Whether a second person must be in the building before pumps.
    pub second_person: bool,
    /// The troubles that stand.
    pub troubles: Vec<Standing>,
}

impl Scene {
    /// A person.
    #[must_use]
    pub fn person(&self, id: PersonId) -> Option<&Person> {
        self.people.iter().map(|(p, _)| p).find(|p| p.person == id)
    }

    /// How many clean guided runs a person has done.
    #[must_use]
    pub fn clean_runs(&self, id: PersonId) -> u32 {
        self.people.iter().find(|(p, _)| p.person == id).map_or(0, |(_, n)| *n)
    }

    /// Whether a person has done as many clean guided runs as the short form asks for.
    #[must_use]
    pub fn is_practised(&self, id: PersonId) -> bool {
        self.clean_runs(id) >= RUNS_BEFORE_SHORT
    }

    /// A pan.
    #[must_use]
    pub fn pan(&self, id: PanId) -> Option<&PanNow> {
        self.pans.iter().find(|p| p.pan.pan == id)
    }

    /// A pan with no oil of its own.
    #[must_use]
    pub fn bare(&self, id: PanId) -> Option<&PanNow> {
        self.bare.iter().find(|p| p.pan.pan == id)
    }

    /// The trouble that stops oil from leaving a pan by a machine.
    #[must_use]
    pub fn stops_draw(&self, pan: PanId, machine: MachineId) -> Option<TroubleKind> {
        let mut stops = self.troubles.iter().filter(|t| t.stops_draw(pan, machine));
        stops.next().map(|t| t.what)
    }

    /// The trouble that stops heat under a pan.
    #[must_use]
    pub fn stops_heat(&self, pan: PanId) -> Option<TroubleKind> {
        let mut stops = self.troubles.iter().filter(|t| t.stops_heat(pan));
        stops.next().map(|t| t.what)
    }

    /// Whether who goes on says with it that somebody else is in the building.
    #[must_use]
    pub fn asks_second(&self) -> bool {
        self.second_person && self.troubles.iter().all(|t| t.what != TroubleKind::Alone)
    }

    /// Whether a machine is down, and no oil stands outside its pan that must come back by it.
    #[must_use]
    pub fn is_down(&self, machine: MachineId) -> bool {
        let down = |t: &Standing| t.what == TroubleKind::MachineDown && t.machine == Some(machine);
        self.troubles.iter().any(down) && self.pans.iter().all(|p| p.place == Place::InPan)
    }

    /// A machine.
    #[must_use]
    pub fn machine(&self, id: MachineId) -> Option<&MachineNow> {
        self.machines.iter().find(|m| m.machine.machine == id)
    }
}
