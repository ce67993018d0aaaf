//! The orders a screen may give the guide.

use crate::domain::evidence::{Evidence, Word};
use crate::domain::facts::run::{Fault, Form, Plan};
use crate::domain::ids::{JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::Now;

/// An order to the guide.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Command {
    /// Open a filter job.
    Open(JobId),
    /// Say who is at the pans; and with it, where the kitchen asks for one, that a second person is in the building.
    /// Nobody else there is [`crate::domain::facts::trouble::TroubleKind::Alone`], and no pump.
    Who {
        /// Who.
        person: PersonId,
        /// Who stands beside a starter.
        supervisor: Option<PersonId>,
    },
    /// Say which machine, and whether it ran without the guide.
    Machine {
        /// Which.
        machine: MachineId,
        /// No, yes or not known.
        used_since: Word,
    },
    /// Everything a gate asked, and Go on.
    Answer {
        /// The gate's id.
        step: StepId,
        /// What was seen.
        evidence: Evidence,
        /// When a temperature among it was read.
        read: Option<Now>,
    },
    /// The machine's heater was seen on or off.
    Heater(bool),
    /// Begin a pan's run.
    Begin {
        /// Its id.
        run: RunId,
        /// The pan.
        pan: PanId,
        /// Which form.
        form: Form,
        /// Which optional parts.
        plan: Plan,
    },
    /// Stop, make safe.
    Stop,
    /// Something is wrong.
    Fault(Fault),
    /// The make-safe steps are done.
    MadeSafe,
    /// Leave it with oil out of the pan.
    LeaveOut(Evidence),
    /// Leave a pan of solid fat to set after a fault, closed and tagged.
    LeaveSet(Evidence),
    /// Do not filter this pan after all: its oil never left it.
    GiveUp,
    /// A hold of Ready no longer stands: a spill, an opened machine.
    Broke(Hold),
    /// The time shown is right, or not.
    TimeIs(bool),
    /// Go over to putting away.
    PutAway,
    /// End a job in which no pan was begun.
    End,
}
