//! What happens in a light-up, a filter job, a lock-up, an oil change or a boil-out.

use crate::domain::evidence::Evidence;
use crate::domain::ids::{JobId, MachineId, PanId, PersonId};
use crate::domain::keyed::keyed;
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::Millis;

use super::run::{Contents, Heat};

keyed! {
    /// Which job.
    pub enum JobKind {
        /// The start of the day, pan by pan.
        LightUp = "light_up",
        /// A sitting of filtering.
        Filter = "filter",
        /// The end of the day.
        LockUp = "lock_up",
        /// One pan's oil out, the pan cleaned, fresh in.
        OilChange = "oil_change",
        /// One empty pan boiled clean.
        BoilOut = "boil_out",
    }
}

impl JobKind {
    /// The jobs of every trading day.
    pub const DAILY: &'static [Self] = &[Self::LightUp, Self::Filter, Self::LockUp];

    /// Whether it is a job about one pan, done when that pan needs it.
    #[must_use]
    pub const fn is_of_pan(self) -> bool {
        match self {
            Self::OilChange | Self::BoilOut => true,
            Self::LightUp | Self::Filter | Self::LockUp => false,
        }
    }
}

keyed! {
    /// Something in a job.
    pub enum JobEvent {
        /// It was begun.
        Opened = "opened",
        /// A hold was proved, on evidence.
        Proved = "proved",
        /// A hold that was proved no longer is.
        Broken = "broken",
        /// A step was answered.
        Answered = "answered",
        /// The machine's heater was seen on.
        HeaterOn = "heater_on",
        /// The machine's heater was seen off.
        HeaterOff = "heater_off",
        /// Putting away was begun.
        Away = "away",
        /// People left with a look still owed.
        LeftOpen = "left_open",
        /// That look was taken.
        Looked = "looked",
        /// It was ended.
        Ended = "ended",
        /// It was done without the guide, or not done.
        Noted = "noted",
    }
}

keyed! {
    /// How honest a record is about the guide: these two prove no hold.
    pub enum Grade {
        /// Done without the guide.
        Unguided = "unguided",
        /// Not done.
        NotDone = "not_done",
    }
}

/// Something in a job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobFact {
    /// The job.
    pub job: JobId,
    /// Which job it is.
    pub what: JobKind,
    /// What happened.
    pub event: JobEvent,
    /// For [`JobEvent::Noted`].
    pub how: Option<Grade>,
    /// Why not, why broken, or what was done.
    pub why: Option<String>,
    /// The machine concerned.
    pub machine: Option<MachineId>,
    /// The pan concerned.
    pub pan: Option<PanId>,
    /// The step answered.
    pub step: Option<StepId>,
    /// The hold proved or broken.
    pub hold: Option<Hold>,
    /// Who stands beside a starter.
    pub supervisor: Option<PersonId>,
    /// What was seen.
    pub evidence: Evidence,
    /// The pan's heat after it.
    pub heat: Option<Heat>,
    /// What is in the pan after it.
    pub contents: Option<Contents>,
    /// When a wait that began here is due.
    pub deadline: Option<Millis>,
    /// When the next look is due.
    pub next_look: Option<Millis>,
    /// Who owes that look.
    pub looker: Option<PersonId>,
}

impl JobFact {
    /// A bare event; the caller fills in what it carries.
    #[must_use]
    pub const fn new(job: JobId, what: JobKind, event: JobEvent) -> Self {
        Self {
            job,
            what,
            event,
            how: None,
            why: None,
            machine: None,
            pan: None,
            step: None,
            hold: None,
            supervisor: None,
            evidence: Evidence::new(),
            heat: None,
            contents: None,
            deadline: None,
            next_look: None,
            looker: None,
        }
    }
}
