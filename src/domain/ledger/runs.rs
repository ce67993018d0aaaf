//! Fold: runs and jobs in order of cause, each as the last thing the log says of it.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Form, Heat, Left, Place, Pump, RunEvent, RunFact};
use crate::domain::facts::setup::Route;
use crate::domain::ids::{EntryId, JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::places::Places;
use crate::domain::procedure::StepId;
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
    /// The places of its lines, in order of cause.
    pub(super) lines: Vec<usize>,
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

    /// Whether one person filtered the pan alone, without a fault or a stop.
    #[must_use]
    pub const fn is_clean(&self) -> bool {
        self.filtered() && !self.troubled && self.alone
    }
}

/// A light-up, filter job or lock-up, as the log leaves it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JobState {
    /// The job.
    pub job: JobId,
    /// Which of the day's jobs.
    pub what: JobKind,
    /// Who does it: the last named before anything else of it was said.
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
    /// Whether anything but who does it was said.
    begun: bool,
    /// The places of its lines that belong to no run, in order of cause.
    pub(super) lines: Vec<usize>,
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

/// Every run and job. A kitchen has thousands of them behind it, so how many clean runs each person has is counted as
/// they come.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Runs {
    /// In the order they were first met.
    runs: Vec<RunState>,
    jobs: Vec<JobState>,
    run_places: Places,
    job_places: Places,
    clean: SortedMap<PersonId, u32>,
}

impl Runs {
    /// Takes in one entry, which stands at `place` among the lines; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry, place: usize) {
        if let Fact::Run(fact) = &entry.fact {
            self.take_run(entry, fact, place);
        } else if let Fact::Job(fact) = &entry.fact {
            self.take_job(entry, fact, place);
        }
    }

    /// One run.
    pub(super) fn run(&self, id: RunId) -> Option<&RunState> {
        self.runs.get(self.run_places.get(id.0)?)
    }

    /// One job.
    pub(super) fn job(&self, id: JobId) -> Option<&JobState> {
        self.jobs.get(self.job_places.get(id.0)?)
    }

    /// Runs that are not ended, in order of cause.
    pub(super) fn open_runs(&self) -> impl DoubleEndedIterator<Item = &RunState> {
        self.runs.iter().filter(|run| run.ended.is_none())
    }

    /// Runs, in order of cause.
    pub(super) fn runs(&self) -> std::slice::Iter<'_, RunState> {
        self.runs.iter()
    }

    /// Jobs, in order of cause.
    pub(super) fn jobs(&self) -> std::slice::Iter<'_, JobState> {
        self.jobs.iter()
    }

    /// The last job of a kind.
    pub(super) fn last_job(&self, kind: JobKind) -> Option<&JobState> {
        self.jobs.iter().rev().find(|job| job.what == kind)
    }

    /// How many clean runs a person began.
    pub(super) fn clean(&self, person: PersonId) -> u32 {
        self.clean.get(&person).copied().unwrap_or(0)
    }

    /// Whether this fact is the one that finished a run that filtered its pan.
    pub(super) fn filtered_by(&self, fact: &RunFact) -> bool {
        fact.event == RunEvent::Ended && self.run(fact.run).is_some_and(RunState::filtered)
    }

    fn take_run(&mut self, entry: &Entry, fact: &RunFact, line: usize) {
        let place = self.run_places.get(fact.run.0).unwrap_or(self.runs.len());
        if place == self.runs.len() {
            self.run_places.add(fact.run.0, place);
            self.runs.push(begun(entry, fact));
        }
        let Some(run) = self.runs.get_mut(place) else {
            return;
        };
        let was_clean = run.is_clean();
        run.take(entry, fact, line);
        if let (Some(by), true) = (run.by, run.is_clean() != was_clean) {
            let clean = self.clean.or_default(by);
            // A later word, of another store, may still find trouble in a run that was counted.
            *clean = if was_clean {
                clean.saturating_sub(1)
            } else {
                clean.saturating_add(1)
            };
        }
    }

    fn take_job(&mut self, entry: &Entry, fact: &JobFact, line: usize) {
        let place = self.job_places.get(fact.job.0).unwrap_or(self.jobs.len());
        if place == self.jobs.len() {
            self.job_places.add(fact.job.0, place);
            self.jobs.push(opened(entry, fact));
        }
        let Some(job) = self.jobs.get_mut(place) else {
            return;
        };
        job.take(entry, fact, line);
    }
}

fn begun(entry: &Entry, fact: &RunFact) -> RunState {
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
        lines: Vec::new(),
    }
}

fn opened(entry: &Entry, fact: &JobFact) -> JobState {
    JobState {
        job: fact.job,
        what: fact.what,
        by: entry.who,
        opened: entry.at,
        off_min: entry.off_min,
        machine: None,
        owed: None,
        ended: None,
        begun: false,
        lines: Vec::new(),
    }
}

impl RunState {
    fn take(&mut self, entry: &Entry, fact: &RunFact, line: usize) {
        self.machine = fact.machine.or(self.machine);
        self.form = fact.form;
        self.alone &= entry.who == self.by;
        self.drew |= oil_out(fact);
        self.troubled |= matches!(fact.event, RunEvent::Fault | RunEvent::Stopped);
        self.place = fact.place;
        self.contents = fact.contents;
        self.pump = fact.pump;
        self.heat = fact.heat;
        self.last = entry.id;
        self.last_at = entry.at;
        self.lines.push(line);
        if fact.event == RunEvent::Ended {
            self.ended = Some((fact.left.unwrap_or(how_left(fact.place)), entry.at));
        }
    }
}

impl JobState {
    fn take(&mut self, entry: &Entry, fact: &JobFact, line: usize) {
        self.machine = fact.machine.or(self.machine);
        if fact.step == Some(StepId::Who) && !self.begun {
            self.by = entry.who.or(self.by);
        }
        self.begun |= fact.step != Some(StepId::Who) && fact.event != JobEvent::Opened;
        if fact.event != JobEvent::Noted {
            self.lines.push(line);
        }
        match fact.event {
            JobEvent::LeftOpen => {
                self.owed = Some(Look {
                    left: entry.at,
                    due: fact.next_look,
                    looker: fact.looker,
                });
            }
            JobEvent::Looked => self.owed = None,
            JobEvent::Ended => {
                self.owed = None;
                self.ended = Some(entry.at);
            }
            JobEvent::Noted => self.ended = Some(entry.at),
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
