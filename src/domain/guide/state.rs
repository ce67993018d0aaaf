//! What the guide knows of the open filter job and of the pan in hand.

use super::{IDLE_MS, READING_FRESH_MS, SILENCE_MS, WARM_EXPIRY_MS};
use crate::domain::evidence::{Evidence, Word};
use crate::domain::facts::run::{Contents, Form, Heat, Left, Limits, Place, Plan, Pump};
use crate::domain::facts::setup::{Claim, Machine, Pan, Route};
use crate::domain::fat::Fat;
use crate::domain::ids::{JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::sorted::SortedSet;
use crate::domain::time::Now;
use crate::domain::units::Temp;
use crate::domain::wait::Wait;

/// The machine's warm-up for solid fat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Warm {
    /// The heater has not been on.
    Cold,
    /// The heater is on; over when the wait is.
    On(Wait),
    /// The heater is off after a finished warm-up; good until the wait runs out.
    Off(Wait),
}

impl Warm {
    /// The heater goes off: only a finished warm-up outlives it, and not for ever.
    #[must_use]
    pub fn heater_off(self, was_over: bool, now: &Now) -> Self {
        match self {
            Self::On(_) if was_over => Self::Off(Wait::begin(WARM_EXPIRY_MS, now)),
            Self::On(_) | Self::Cold => Self::Cold,
            Self::Off(left) => Self::Off(left),
        }
    }
}

/// A filter job.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct FilterJob {
    /// Its id.
    pub job: JobId,
    /// Who is at the pans.
    pub who: Option<PersonId>,
    /// Who stands beside a starter.
    pub supervisor: Option<PersonId>,
    /// The machine or hand kit in use.
    pub machine: Option<MachineId>,
    /// Holds of Ready that stand.
    pub proved: SortedSet<Hold>,
    /// Whether the test sound was asked about.
    pub sound_checked: bool,
    /// The warm-up.
    pub warm: Warm,
    /// Whether a fault happened in this job.
    pub fault: bool,
    /// Whether who is at the pans has earned the short form, and stands there alone.
    pub practised: bool,
    /// Whether the same person put this machine away ready, and nobody has used it since.
    pub kept_ready: bool,
    /// The pan in hand.
    pub run: Option<Run>,
    /// The pans done, and how they were left.
    pub done: Vec<(PanId, Left)>,
    /// The fat the machine held last in this job.
    pub held: Option<Fat>,
    /// What hose and line were seen to be since then.
    pub line: Option<Word>,
    /// Whether fat may have set in the machine's line before this job.
    pub set_in_line: bool,
    /// Whether the machine ran without the guide, or nobody knows: then it is closed to every pan with a claim.
    pub strange: bool,
    /// How many steps of Put away are answered.
    pub away: usize,
    /// When somebody last answered.
    pub touched: Wait,
}

impl FilterJob {
    /// A job just opened.
    #[must_use]
    pub const fn opened(job: JobId, touched: Wait) -> Self {
        Self {
            job,
            who: None,
            supervisor: None,
            machine: None,
            proved: SortedSet::new(),
            sound_checked: false,
            warm: Warm::Cold,
            fault: false,
            practised: false,
            kept_ready: false,
            run: None,
            done: Vec::new(),
            held: None,
            line: None,
            set_in_line: false,
            strange: false,
            away: 0,
            touched,
        }
    }

    /// Whether a hold of Ready stands now: twenty idle minutes with all oil in its pans break floor and kit, unless
    /// a wait of the guide was running.
    #[must_use]
    pub fn stands(&self, hold: Hold, now: &Now) -> bool {
        self.proved.contains(&hold) && !(matches!(hold, Hold::Kit | Hold::Floor) && self.is_idle(now))
    }

    /// Whether a hold of Ready is still to be proved. The machine's own melt is asked only where fat may have set in it.
    #[must_use]
    pub fn lacks(&self, hold: Hold, now: &Now) -> bool {
        (hold != Hold::WarmUp || self.set_in_line) && !self.stands(hold, now)
    }

    /// Whether a solid fat went through the machine last in this job.
    #[must_use]
    pub fn held_solid(&self) -> bool {
        self.held.is_some_and(Fat::is_solid)
    }

    /// Whether the job has lain idle too long, by whichever clock says longer.
    #[must_use]
    pub fn is_idle(&self, now: &Now) -> bool {
        let waited_ms = match self.warm {
            Warm::On(wait) => wait.due().since(self.touched.due()).max(0),
            Warm::Cold | Warm::Off(_) => 0,
        };
        !self.oil_out() && self.touched.longest_ms(now) - waited_ms >= IDLE_MS
    }

    /// Whether a step of Ready takes looks of one place in one answer, each still written: kit and floor for who has
    /// earned the short form; filter, tank and hose only where the same hands put them away dry and nobody has used
    /// them since. After a fault every look stands alone.
    #[must_use]
    pub fn is_short(&self, step: StepId) -> bool {
        let place = match step {
            StepId::Kit | StepId::Floor => true,
            StepId::Dry => self.kept_ready,
            _ => false,
        };
        place && self.practised && !self.fault
    }

    /// Whether oil of the pan in hand is out of it.
    #[must_use]
    pub fn oil_out(&self) -> bool {
        self.run.as_ref().is_some_and(|r| r.place != Place::InPan)
    }
}

/// A temperature that was read, and how long it counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ReadTemp {
    /// What was read.
    pub temp: Temp,
    /// A wait of the time it counts; unknown age means too old.
    pub fresh: Wait,
}

impl ReadTemp {
    /// Whether it still counts: at most five minutes old, by both clocks, in this page life.
    #[must_use]
    pub fn counts(&self, now: &Now) -> bool {
        self.fresh.is_within(now)
    }

    /// A reading taken now.
    #[must_use]
    pub const fn taken(temp: Temp, now: &Now) -> Self {
        Self {
            temp,
            fresh: Wait::begin(READING_FRESH_MS, now),
        }
    }
}

/// What stands between a run and its next step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Phase {
    /// Its steps are asked in order.
    Asking,
    /// Somebody stopped it, or something is wrong: make safe, then look again.
    Stopped,
    /// Heat, pump and place of the oil are to be looked at.
    LookAgain,
}

/// One pan's run.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Run {
    /// Its id.
    pub run: RunId,
    /// The pan, as it was set up when the run began.
    pub pan: PanNowKept,
    /// The machine, as it was set up when the run began.
    pub machine: MachineKept,
    /// How oil leaves the pan.
    pub route: Route,
    /// Which form.
    pub form: Form,
    /// Which optional parts.
    pub plan: Plan,
    /// The limits in force.
    pub limits: Limits,
    /// Index of the step asked now, in the run's own table.
    pub at: usize,
    /// What stands before it.
    pub phase: Phase,
    /// Where the oil is.
    pub place: Place,
    /// What is in the pan.
    pub contents: Contents,
    /// What the pump does.
    pub pump: Pump,
    /// What the heat does.
    pub heat: Heat,
    /// The reading that counts.
    pub reading: Option<ReadTemp>,
    /// Whether it began with its oil already out: what happened before then nobody can vouch for.
    pub came_out: bool,
    /// Whether oil has left the pan in this run.
    pub drawn: bool,
    /// Whether it has come back.
    pub returned: bool,
    /// Whether a fault happened.
    pub fault: bool,
    /// Whether somebody stopped it since everything was last looked at.
    pub stopped: bool,
    /// Whether it was stopped, interrupted or faulty at any time.
    pub troubled: bool,
    /// The level seen after the return.
    pub level: Option<Word>,
    /// What was seen last of each thing, since the run began or everything was looked at again.
    pub looked: Evidence,
    /// How long oil was drawn in this run, in milliseconds, all bursts together; `None` where nobody can say.
    pub drew_ms: Option<i64>,
    /// When the pump started, for the clock on the screen.
    pub moving_since: Option<Wait>,
}

/// The parts of a pan a run needs, kept as they were when it began.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanNowKept {
    /// As set up.
    pub pan: Pan,
    /// Claims standing.
    pub claims: Vec<Claim>,
}

/// The machine as it was when the run began.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MachineKept(pub Machine);

// Set-up cannot change inside a run, so its id stands for the whole when states are compared by hash.
impl std::hash::Hash for PanNowKept {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.pan.pan.hash(state);
    }
}

impl std::hash::Hash for MachineKept {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.0.machine.hash(state);
    }
}

impl Run {
    /// Whether five minutes passed without an answer while oil is out of the pan.
    #[must_use]
    pub fn silent(&self, touched: &Wait, now: &Now) -> bool {
        self.place != Place::InPan && touched.longest_ms(now) >= SILENCE_MS
    }

    /// Whether it went without a stop, an interruption or a fault.
    #[must_use]
    pub fn is_clean(&self) -> bool {
        !self.troubled && !self.fault
    }
}
