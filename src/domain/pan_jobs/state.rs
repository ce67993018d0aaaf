//! What is known of the jobs about single pans, folded from their entries.

use super::{BOIL_LOOK_MS, BOIL_SILENCE_MS};
use crate::domain::evidence::Word;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::run::Heat;
use crate::domain::fat::Fat;
use crate::domain::guide::IDLE_MS;
use crate::domain::guide::state::ReadTemp;
use crate::domain::ids::{JobId, MachineId, PanId, PersonId};
use crate::domain::procedure::Hold;
use crate::domain::sorted::{SortedMap, SortedSet};
use crate::domain::time::{Millis, Now};
use crate::domain::wait::{Standing, Wait};

/// Everything the jobs about single pans remember.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct PanState {
    /// The open job of each pan.
    pub jobs: SortedMap<PanId, PanJob>,
    /// Old oil on its way out, the job over or not.
    pub waste: Vec<Waste>,
    /// Pans whose filter run is open.
    pub(super) in_run: SortedSet<PanId>,
    /// Pans the light-up has heat under and has not lit.
    pub(super) half_lit: SortedSet<PanId>,
    /// The machine or kit each pan's oil was last seen in.
    pub(super) machines: SortedMap<PanId, MachineId>,
}

/// Where a job stands with its pan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// How the oil leaves.
    How,
    /// A filter run takes the oil out and leaves it in the machine.
    Pump,
    /// Heat off, the oil still in it.
    HeatOff,
    /// Its temperature.
    Temp,
    /// What it goes into.
    Container,
    /// It is leaving, by hand.
    Taking,
    /// It stands shut in the machine.
    InMachine,
    /// Empty: heat off again, wiped or boiled.
    Clean,
    /// Wiped, dry, valve shut.
    Exit,
    /// Which fat goes in.
    Fresh,
    /// Another fat than before.
    ChangeOver,
    /// Before it goes in.
    FreshIn,
    /// It is going in; the level is next.
    Level,
    /// Oil was put in without the guide: nothing is left to ask.
    Filled,
    /// Boil-out, before the water.
    BoilEmpty,
    /// Water in.
    Water,
    /// Chemical in.
    Chemical,
    /// Before low heat.
    Heat,
    /// On low heat; looked at every five minutes.
    Boiling,
    /// Heat is to be seen off.
    MakeSafe,
    /// Off, with the water in it: it cools, or is heated again.
    Off,
    /// Cool enough: drained.
    Drain,
    /// Scrubbed and rinsed.
    Rinse,
}

/// One pan's job.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct PanJob {
    /// Its id.
    pub job: JobId,
    /// Which.
    pub what: JobKind,
    /// Who does it.
    pub who: Option<PersonId>,
    /// Who stands beside a starter.
    pub supervisor: Option<PersonId>,
    /// The stage its last entry left it at; [`PanJobs::stage`](super::PanJobs::stage) says which is asked now.
    pub stage: Stage,
    /// How the oil leaves, once that was said.
    pub way: Option<Word>,
    /// What the pan's heat does.
    pub heat: Heat,
    /// The fat that goes in, once that was said.
    pub fat: Option<Fat>,
    /// When low heat was first seen under the water.
    pub boiling_since: Option<Millis>,
    /// Holds of Ready that were proved.
    pub(super) proved: SortedSet<Hold>,
    /// When somebody last answered.
    pub(super) touched: Wait,
    /// Whether everything is looked at before it goes on.
    pub(super) again: bool,
    /// The reading that counts.
    pub(super) reading: Option<ReadTemp>,
    /// When the next look at the boil is due.
    pub(super) look: Option<Wait>,
}

impl PanJob {
    /// Whether a hold of Ready stands: twenty idle minutes break kit and floor.
    #[must_use]
    pub fn stands(&self, hold: Hold, now: &Now) -> bool {
        self.proved.contains(&hold) && self.touched.longest_ms(now) < IDLE_MS
    }

    /// Whether a reading still counts.
    #[must_use]
    pub fn reading_counts(&self, now: &Now) -> bool {
        self.reading.is_some_and(|read| read.counts(now))
    }

    /// Where the wait for the next look at the boil stands; a clock nobody can trust means look now.
    #[must_use]
    pub fn next_look(&self, now: &Now) -> Option<Standing> {
        self.look
            .filter(|_| self.stage == Stage::Boiling)
            .map(|wait| wait.standing(now))
    }

    /// Whether heat may be on under it.
    #[must_use]
    pub const fn may_be_hot(&self) -> bool {
        matches!(self.stage, Stage::Boiling | Stage::MakeSafe)
    }

    /// Whether five minutes passed since a look was due, or nobody can say: the heat is as good as unknown.
    #[must_use]
    pub(super) fn silent(&self, now: &Now) -> bool {
        let unseen = self.look.is_none_or(|look| look.longest_ms(now) >= BOIL_SILENCE_MS);
        self.stage == Stage::Boiling && unseen
    }
}

/// Old oil that is out of its pan and not put by yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Waste {
    /// The job it came of.
    pub job: JobId,
    /// The pan it came out of.
    pub pan: PanId,
    /// The machine it cools in; `None` once it stands in its container.
    pub machine: Option<MachineId>,
}

pub(super) const fn look_wait(rec: Millis, lived: Option<&Now>) -> Wait {
    match lived {
        Some(now) => Wait::begin(BOIL_LOOK_MS, now),
        None => Wait::recalled(BOIL_LOOK_MS, rec),
    }
}

/// A wait of no length: a mark of when something was, on both clocks.
pub(super) const fn mark(rec: Millis, lived: Option<&Now>) -> Wait {
    match lived {
        Some(now) => Wait::begin(0, now),
        None => Wait::recalled(0, rec),
    }
}
