//! Oil change and boil-out: jobs about one pan, as one small machine over its own step tables.
//!
//! `decide(scene, command, now)` answers with drafts to be written, or refuses with a reason; `apply(entry)` then
//! believes what was written. The gates are those of [`super::guide`], so the same screens ask them. Oil that is pumped
//! out hot is the filter job's: this one points there, and takes up again when it stands shut in the machine.

mod apply;
mod decide;
mod gates;
mod leads_to;
mod refusal;
mod state;

pub use refusal::Refusal;
pub use state::{PanJob, PanState, Stage, Waste};

use super::evidence::Evidence;
use super::facts::job::JobKind;
use super::fat::Fat;
use super::ids::{JobId, PanId, PersonId};
use super::procedure::{PanTables, StepId};
use super::time::{Millis, Now};
use super::units::Amount;

/// How often boiling water is looked at, in milliseconds (5 minutes, project default).
pub const BOIL_LOOK_MS: i64 = 5 * Millis::MINUTE;
/// How long after a look the heat counts as unknown, in milliseconds (5 minutes past the next, project default).
pub const BOIL_SILENCE_MS: i64 = 2 * BOIL_LOOK_MS;

/// An order to the jobs about single pans.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Command {
    /// Begin a job on a pan. On an empty pan an oil change begins at the cleaning.
    Open {
        /// Its id.
        job: JobId,
        /// Oil change or boil-out.
        what: JobKind,
        /// The pan.
        pan: PanId,
        /// Who does it.
        who: PersonId,
        /// Who stands beside a starter.
        supervisor: Option<PersonId>,
    },
    /// Somebody else goes on with it.
    Who {
        /// The pan.
        pan: PanId,
        /// Who.
        who: PersonId,
        /// Who stands beside a starter.
        supervisor: Option<PersonId>,
    },
    /// Everything a gate asked, and Go on.
    Answer {
        /// The pan.
        pan: PanId,
        /// The gate's id.
        step: StepId,
        /// What was seen.
        evidence: Evidence,
        /// When a temperature among it was read.
        read: Option<Now>,
        /// What the heaviest container to lift weighs, in grams, where that was said.
        load_g: Option<u32>,
    },
    /// The oil was seen out of the pan: the last answer of its way out, how much it was, and why it is changed.
    Out {
        /// The pan.
        pan: PanId,
        /// The gate's id: [`StepId::EmptyByHand`], [`StepId::CutOut`] or [`StepId::InMachine`].
        step: StepId,
        /// What was seen.
        evidence: Evidence,
        /// How much came out.
        amount: Amount,
        /// Why it is changed.
        reason: String,
        /// What it went into, in somebody's words.
        container: Option<String>,
    },
    /// Which fat goes in.
    Fresh {
        /// The pan.
        pan: PanId,
        /// The fat.
        fat: Fat,
    },
    /// It is in: the level and the tag, how much it was, and its batch. Ends the job.
    Filled {
        /// The pan.
        pan: PanId,
        /// What was seen.
        evidence: Evidence,
        /// How much went in.
        amount: Amount,
        /// The batch on its container.
        batch: Option<String>,
    },
    /// Foam, a low level, second thoughts, or somebody has to go: heat off under this pan, and see it off.
    HeatOff {
        /// The pan.
        pan: PanId,
    },
    /// What a gate about old oil asked, and Go on; the job may be over by then.
    Waste {
        /// The oil change it came of.
        job: JobId,
        /// Who says so.
        who: PersonId,
        /// The gate's id.
        step: StepId,
        /// What was seen.
        evidence: Evidence,
        /// When a temperature among it was read.
        read: Option<Now>,
        /// What the heaviest container to lift weighs, in grams, where that was said.
        load_g: Option<u32>,
    },
    /// Leave the pan as it stands, on what [`PanJobs::leave_gate`] asks.
    End {
        /// The pan.
        pan: PanId,
        /// What was seen.
        evidence: Evidence,
    },
}

/// The machine of the jobs about single pans: its tables and what it knows.
#[derive(Clone, Debug)]
pub struct PanJobs {
    tables: PanTables,
    state: PanState,
}

impl PanJobs {
    /// A machine that has seen no entry.
    #[must_use]
    pub fn new(tables: PanTables) -> Self {
        Self {
            tables,
            state: PanState::default(),
        }
    }

    /// What it knows.
    #[must_use]
    pub const fn state(&self) -> &PanState {
        &self.state
    }

    /// The tables it runs by.
    #[must_use]
    pub const fn tables(&self) -> &PanTables {
        &self.tables
    }

    /// The open job of a pan.
    #[must_use]
    pub fn job(&self, pan: PanId) -> Option<&PanJob> {
        self.state.jobs.get(&pan)
    }
}
