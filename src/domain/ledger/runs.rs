//! Fold: runs and jobs in order of cause, each as the last thing the log says of it.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Form, Heat, Left, Place, Pump, RunEvent, RunFact};
use crate::domain::facts::setup::Route;
use crate::domain::ids::{EntryId, JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// One pan's part in a filter job, as the log leaves it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RunState {
    /// The run.
    pub run: RunId,
    /// Its filter job.
    pub job: JobId,
    /// The pan.
    pub pan: PanId,
    /// The machine last named.
    pub machine: Option<MachineId>,
    /// How oil leaves the pan.
    pub route: Route,
    /// Which form the guide used.
    pub form: Form,
    /// Who began it.
    pub by: Option<PersonId>,
    /// Whether everything in it was done by that one person.
    pub alone: bool,
    /// When it began.
    pub began: Millis,
    /// Whether oil left the pan in it.
    pub drew: bool,
    /// Whether a fault was met or somebody stopped it.
    pub troubled: bool,
    /// Where the oil is.
    pub place: Place,
    /// What is in the pan.
    pub contents: Contents,
    /// What the pump does.
    pub pump: Pump,
    /// What the heat does.
    pub heat: Heat,
    /// Its last entry.
    pub last: EntryId,
    /// When that happened.
    pub last_at: Millis,
    /// How it was left, and when; `None` while it is open.
    pub ended: Option<(Left, Millis)>,
}

impl RunState {
    /// Whether it filtered the pan: oil was out and came back.
    #[must_use]
    pub const fn filtered(&self) -> bool {
        match self.ended {
            Some((Left::Relit | Left::Off | Left::Set, _)) => self.drew,
            Some((Left::AsWas | Left::OilOut, _)) | None => false,
        }
    }

    /// Whether it filtered the pan without a fault or a stop.
    #[must_use]
    pub const fn is_clean(&self) -> bool {
        self.filtered() && !self.troubled
    }
}

/// A light-up, filter job or lock-up, as the log leaves it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobState {
    /// The job.
    pub job: JobId,
    /// Which of the day's jobs.
    pub what: JobKind,
    /// Who opened it.
    pub by: Option<PersonId>,
    /// When it was opened.
    pub opened: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// The machine last named.
    pub machine: Option<MachineId>,
    /// A look still owed.
    pub owed: Option<Look>,
    /// When it was ended; `None` while it is open.
    pub ended: Option<Millis>,
}

/// A look that somebody owes on scraps left outdoors.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// When people left.
    pub left: Millis,
    /// When the look is due.
    pub due: Option<Millis>,
    /// Who owes it.
    pub looker: Option<PersonId>,
}

/// Every run and job.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Runs {
    runs: SortedMap<RunId, RunState>,
    jobs: SortedMap<JobId, JobState>,
    /// Runs and jobs in the order they were first met.
    run_order: Vec<RunId>,
    job_order: Vec<JobId>,
}

impl Runs {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        if let Fact::Run(fact) = &entry.fact {
            self.run(entry, fact);
        } else if let Fact::Job(fact) = &entry.fact {
            self.job(entry, fact);
        }
    }

    /// Runs in order of cause.
    pub(super) fn runs(&self) -> impl DoubleEndedIterator<Item = &RunState> {
        self.run_order.iter().filter_map(|id| self.runs.get(id))
    }

    /// Jobs in order of cause.
    pub(super) fn jobs(&self) -> impl DoubleEndedIterator<Item = &JobState> {
        self.job_order.iter().filter_map(|id| self.jobs.get(id))
    }

    /// Whether this fact is the one that finished a run that filtered its pan.
    pub(super) fn filtered_by(&self, fact: &RunFact) -> bool {
        fact.event == RunEvent::Ended && self.runs.get(&fact.run).is_some_and(RunState::filtered)
    }

    fn run(&mut self, entry: &Entry, fact: &RunFact) {
        let order = &mut self.run_order;
        let run = self.runs.or_insert_with(fact.run, || {
            order.push(fact.run);
            RunState {
                run: fact.run,
                job: fact.job,
                pan: fact.pan,
                machine: None,
                route: fact.route,
                form: fact.form,
                by: entry.who,
                alone: true,
                began: entry.at,
                drew: false,
                troubled: false,
                place: fact.place,
                contents: fact.contents,
                pump: fact.pump,
                heat: fact.heat,
                last: entry.id,
                last_at: entry.at,
                ended: None,
            }
        });
        run.machine = fact.machine.or(run.machine);
        run.form = fact.form;
        run.alone &= entry.who == run.by;
        run.drew |= oil_out(fact);
        run.troubled |= matches!(fact.event, RunEvent::Fault | RunEvent::Stopped);
        run.place = fact.place;
        run.contents = fact.contents;
        run.pump = fact.pump;
        run.heat = fact.heat;
        run.last = entry.id;
        run.last_at = entry.at;
        if fact.event == RunEvent::Ended {
            run.ended = Some((fact.left.unwrap_or(how_left(fact.place)), entry.at));
        }
    }

    fn job(&mut self, entry: &Entry, fact: &JobFact) {
        let order = &mut self.job_order;
        let job = self.jobs.or_insert_with(fact.job, || {
            order.push(fact.job);
            JobState {
                job: fact.job,
                what: fact.what,
                by: entry.who,
                opened: entry.at,
                off_min: entry.off_min,
                machine: None,
                owed: None,
                ended: None,
            }
        });
        job.machine = fact.machine.or(job.machine);
        match fact.event {
            JobEvent::LeftOpen => {
                job.owed = Some(Look {
                    left: entry.at,
                    due: fact.next_look,
                    looker: fact.looker,
                });
            }
            JobEvent::Looked => job.owed = None,
            JobEvent::Ended => {
                job.owed = None;
                job.ended = Some(entry.at);
            }
            JobEvent::Noted => job.ended = Some(entry.at),
            JobEvent::Opened
            | JobEvent::Proved
            | JobEvent::Broken
            | JobEvent::Answered
            | JobEvent::Away
            | JobEvent::HeaterOn
            | JobEvent::HeaterOff => {}
        }
    }
}

/// Whether oil has left the pan, or is moving, after this fact.
pub(super) const fn oil_out(fact: &RunFact) -> bool {
    let moving = match fact.pump {
        Pump::Drawing | Pump::Rinsing | Pump::Returning => true,
        Pump::Off | Pump::Unknown => false,
    };
    let out = match fact.place {
        Place::Split | Place::InMachine | Place::InContainer | Place::Gone => true,
        Place::InPan => false,
    };
    moving || out
}

/// What an end without its word must mean: off, unless the oil is out.
const fn how_left(place: Place) -> Left {
    match place {
        Place::InPan => Left::Off,
        Place::Split | Place::InMachine | Place::InContainer | Place::Gone => Left::OilOut,
    }
}
