//! Light-up and lock-up: the two ends of a trading day, as one small machine over its own step tables.
//!
//! `decide(scene, command, now)` answers with drafts to be written, or refuses with a reason; `apply(entry)` then
//! believes what was written. The gates are those of [`super::guide`], so the same screens ask them.

mod apply;
mod gates;
mod light_up;
mod lock_up;
mod melt;
mod refusal;
mod state;

pub use gates::LockAsk;
pub use light_up::may_light;
pub use refusal::Refusal;
pub use state::{DayState, LightPan, LightUp, LockUp, Owed, ScrapsAre, Stage};

use super::entry::Draft;
use super::evidence::Evidence;
use super::facts::Fact;
use super::facts::job::{Grade, JobEvent, JobFact, JobKind};
use super::guide::{self, Scene};
use super::ids::{JobId, PanId, PersonId};
use super::procedure::{DayTables, StepId};
use super::time::{Millis, Now};

/// How long a look at a pan counts before heat goes up, in milliseconds (5 minutes, project default).
pub const FRESH_MS: i64 = 5 * Millis::MINUTE;
/// How often melting fat is looked at, in milliseconds (5 minutes, common practice, no source).
pub const LOOK_MS: i64 = 5 * Millis::MINUTE;
/// How long between the two probes of the heap, in milliseconds (10 minutes, project default).
pub const SCRAPS_WAIT_MS: i64 = 10 * Millis::MINUTE;
/// A heap at or above this is not cold, in tenths of a degree Celsius (40 °C, project default).
pub const HEAP_COLD_DC: i32 = 400;
/// When scraps found warm are looked at again, in milliseconds (1 hour, project default).
pub const LOOK_AGAIN_MS: i64 = Millis::HOUR;
/// How far ahead a named look may lie, in milliseconds (a day).
pub const LOOK_AHEAD_MAX_MS: i64 = 24 * Millis::HOUR;

/// An order to the day's jobs.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub enum Command {
    /// Begin a light-up or a lock-up.
    Open {
        /// Its id.
        job: JobId,
        /// Which; a filter job is the guide's.
        what: JobKind,
        /// Who does it, and stays.
        who: PersonId,
        /// Who stands beside a starter, for a light-up.
        supervisor: Option<PersonId>,
    },
    /// Somebody else goes on with it.
    Who {
        /// Which job.
        what: JobKind,
        /// Who.
        who: PersonId,
        /// Who stands beside a starter, for a light-up.
        supervisor: Option<PersonId>,
    },
    /// Everything a pan's gate asked in the light-up, and Go on.
    Light {
        /// The pan.
        pan: PanId,
        /// The gate's id.
        step: StepId,
        /// What was seen.
        evidence: Evidence,
    },
    /// Crackling, second thoughts: heat off under this pan, and see it off.
    HeatOff {
        /// The pan.
        pan: PanId,
    },
    /// End the light-up.
    EndLight,
    /// Everything a gate asked in the lock-up, and Go on.
    Lock {
        /// The gate's id.
        step: StepId,
        /// The pan, for [`StepId::LockPans`].
        pan: Option<PanId>,
        /// What was seen.
        evidence: Evidence,
    },
    /// There are no scraps tonight; what [`DayJobs::no_scraps_gate`] asked.
    NoScraps(Evidence),
    /// They are still warm and lie outdoors; what [`DayJobs::scraps_out_gate`] asked.
    ScrapsOut {
        /// What was seen.
        evidence: Evidence,
        /// Who looks next.
        looker: PersonId,
        /// When.
        next_look: Millis,
    },
    /// The time shown is right, or not: for the ten minutes between the probes.
    TimeIs(bool),
    /// What a look at scraps left outdoors found.
    Looked {
        /// The lock-up that was left open.
        lock_up: JobId,
        /// Who looked.
        who: PersonId,
        /// What was seen.
        evidence: Evidence,
    },
    /// A light-up or lock-up was done without the guide, or not done. It proves no hold.
    Note {
        /// A new id for it.
        job: JobId,
        /// Which.
        what: JobKind,
        /// Which of the two.
        how: Grade,
        /// Why not, or what was done; a reason is needed for "not done".
        why: String,
        /// Who says so.
        who: Option<PersonId>,
        /// When it was, if not now.
        at: Option<Millis>,
    },
}

/// The machine of the day's two jobs: its tables and what it knows.
#[derive(Clone, Debug)]
pub struct DayJobs {
    tables: DayTables,
    state: DayState,
}

impl DayJobs {
    /// A machine that has seen no entry.
    #[must_use]
    pub fn new(tables: DayTables) -> Self {
        Self {
            tables,
            state: DayState::default(),
        }
    }

    /// What it knows.
    #[must_use]
    pub const fn state(&self) -> &DayState {
        &self.state
    }

    /// The tables it runs by.
    #[must_use]
    pub const fn tables(&self) -> &DayTables {
        &self.tables
    }

    /// What an order leads to, or why it is refused. Nothing has happened until the drafts are written and applied.
    ///
    /// # Errors
    /// A [`Refusal`] with what its sentence needs; the state is unchanged.
    pub fn decide(&self, scene: &Scene, command: &Command, now: &Now) -> Result<Vec<Draft>, Refusal> {
        match command {
            Command::Open {
                job,
                what,
                who,
                supervisor,
            } => {
                self.not_open(*what)?;
                let proved = self.fit_for(scene, *job, *what, (*who, *supervisor))?;
                let ended = self
                    .open_job(*what)
                    .map(|old| JobFact::new(old, *what, JobEvent::Ended));
                let opened = JobFact::new(*job, *what, JobEvent::Opened);
                Ok(ended
                    .into_iter()
                    .chain([opened])
                    .chain(proved)
                    .map(|f| draft(Some(*who), f))
                    .collect())
            }
            Command::Who { what, who, supervisor } => {
                let job = self.open_job(*what).ok_or(guide::Refusal::NoJob)?;
                let proved = self.fit_for(scene, job, *what, (*who, *supervisor))?;
                let fact = proved.unwrap_or_else(|| JobFact {
                    step: Some(StepId::Who),
                    ..JobFact::new(job, *what, JobEvent::Answered)
                });
                Ok(vec![draft(Some(*who), fact)])
            }
            Command::Light { pan, step, evidence } => self.light(scene, *pan, *step, evidence, now),
            Command::HeatOff { pan } => self.heat_off(*pan),
            Command::EndLight => self.end_light(),
            Command::Lock { step, pan, evidence } => self.lock(scene, *step, *pan, evidence, now),
            Command::NoScraps(evidence) => self.no_scraps(scene, evidence),
            Command::ScrapsOut {
                evidence,
                looker,
                next_look,
            } => self.scraps_out(scene, evidence, *looker, *next_look, now),
            Command::TimeIs(right) => self.time_is(*right, now),
            Command::Looked { lock_up, who, evidence } => self.looked(scene, *lock_up, *who, evidence, now),
            Command::Note {
                job,
                what,
                how,
                why,
                who,
                at,
            } => {
                self.not_open(*what)?;
                let why = why.trim();
                if *how == Grade::NotDone && why.is_empty() {
                    return Err(Refusal::WhyNot);
                }
                let mut fact = JobFact::new(*job, *what, JobEvent::Noted);
                fact.how = Some(*how);
                fact.why = (!why.is_empty()).then(|| why.to_owned());
                Ok(vec![Draft {
                    at: *at,
                    ..draft(*who, fact)
                }])
            }
        }
    }

    fn open_job(&self, what: JobKind) -> Option<JobId> {
        match what {
            JobKind::LightUp => self.state.light.as_ref().map(|l| l.job),
            JobKind::LockUp => self.state.lock.as_ref().map(|l| l.job),
            JobKind::Filter | JobKind::OilChange | JobKind::BoilOut => None,
        }
    }

    /// An open lock-up is resumed, never replaced, so that none is forgotten half done; so is a light-up with heat
    /// under a pan that is not lit yet. Any other light-up nobody ended gives way to the next.
    fn not_open(&self, what: JobKind) -> Result<(), Refusal> {
        let in_hand = match what {
            JobKind::Filter | JobKind::OilChange | JobKind::BoilOut => {
                return Err(guide::Refusal::OtherStep { now_at: None }.into());
            }
            JobKind::LightUp => {
                let light = self.state.light.as_ref();
                light.is_some_and(|l| l.pans.values().any(LightPan::is_half_lit))
            }
            JobKind::LockUp => self.state.lock.is_some(),
        };
        if in_hand {
            Err(guide::Refusal::JobOpen.into())
        } else {
            Ok(())
        }
    }
}

fn known(scene: &Scene, who: PersonId) -> Result<(), Refusal> {
    scene
        .person(who)
        .map(|_| ())
        .ok_or(Refusal::Guide(guide::Refusal::NoSuchPerson))
}

fn draft(who: Option<PersonId>, fact: JobFact) -> Draft {
    Draft::now(who, Fact::Job(Box::new(fact)))
}
