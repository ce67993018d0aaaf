//! Believing what was written. Applying cannot fail: it has already happened.

use super::gates::is_oil;
use super::state::{PanJob, Stage, Waste, look_wait, mark};
use super::{PanJobs, PanState};
use crate::domain::entry::Entry;
use crate::domain::evidence::{Item, Seen, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Heat, Place, RunEvent, RunFact};
use crate::domain::fat::Fat;
use crate::domain::guide::state::ReadTemp;
use crate::domain::guide::{IDLE_MS, READING_FRESH_MS};
use crate::domain::ids::PanId;
use crate::domain::procedure::{Hold, StepId};
use crate::domain::sorted::SortedSet;
use crate::domain::time::{Millis, Now, PageLife};
use crate::domain::units::Temp;
use crate::domain::wait::Wait;

impl PanJobs {
    /// Takes in an entry, of any kind: runs tell where a pan's oil is, the light-up what it has heat under. `lived` is
    /// the instant it was written, when that was in this page life; an entry read back from the log has none, and
    /// leaves heat unknown and the pan to be looked at again.
    pub fn apply(&mut self, entry: &Entry, lived: Option<&Now>) {
        if let Fact::Job(fact) = &entry.fact {
            match fact.what {
                JobKind::OilChange | JobKind::BoilOut => self.state.take(fact, entry, lived),
                JobKind::LightUp | JobKind::LockUp => self.state.heated(fact),
                JobKind::Filter => {}
            }
        } else if let Fact::Run(fact) = &entry.fact {
            self.state.run(fact);
        }
    }
}

impl PanState {
    fn run(&mut self, fact: &RunFact) {
        match fact.event {
            RunEvent::Began => {
                self.in_run.add(fact.pan);
                self.half_lit.remove(&fact.pan);
            }
            RunEvent::Ended => {
                self.in_run.remove(&fact.pan);
            }
            RunEvent::Answered
            | RunEvent::Pump
            | RunEvent::Stopped
            | RunEvent::Resumed
            | RunEvent::Reverified
            | RunEvent::Fault => {}
        }
        if let Some(job) = self.jobs.get_mut(&fact.pan) {
            // The run had its heat in hand: it is seen off again before hands are.
            job.heat = fact.heat;
            if matches!(job.stage, Stage::Temp | Stage::Container) {
                job.stage = Stage::HeatOff;
            }
        }
        match fact.machine.filter(|_| fact.place != Place::InPan) {
            Some(machine) => drop(self.machines.insert(fact.pan, machine)),
            None => drop(self.machines.remove(&fact.pan)),
        }
    }

    /// What light-up and lock-up say of the heat under a pan.
    fn heated(&mut self, fact: &JobFact) {
        let (Some(pan), Some(heat)) = (fact.pan, fact.heat) else {
            return;
        };
        match heat {
            Heat::Low | Heat::Unknown => {
                self.half_lit.add(pan);
            }
            Heat::On | Heat::OffSeen => {
                self.half_lit.remove(&pan);
            }
        }
        if let Some(job) = self.jobs.get_mut(&pan).filter(|_| heat == Heat::OffSeen) {
            job.heat = heat;
            if job.may_be_hot() {
                (job.stage, job.look) = (Stage::Off, None);
            }
        }
    }

    fn take(&mut self, fact: &JobFact, entry: &Entry, lived: Option<&Now>) {
        let Some(pan) = fact.pan else { return };
        match fact.event {
            JobEvent::Opened => {
                let job = opened(fact, entry, lived);
                self.jobs.insert(pan, job);
            }
            JobEvent::Ended => {
                if self.jobs.get(&pan).is_some_and(|job| job.job == fact.job) {
                    self.jobs.remove(&pan);
                }
            }
            JobEvent::Proved | JobEvent::Answered | JobEvent::Broken => {
                self.wasted(pan, fact);
                if let Some(job) = self.jobs.get_mut(&pan).filter(|job| job.job == fact.job) {
                    job.take(fact, entry, lived);
                }
            }
            JobEvent::HeaterOn
            | JobEvent::HeaterOff
            | JobEvent::Away
            | JobEvent::LeftOpen
            | JobEvent::Looked
            | JobEvent::Noted => {}
        }
    }

    /// Old oil leaves its pan, its machine, the kitchen.
    fn wasted(&mut self, pan: PanId, fact: &JobFact) {
        let out = fact.evidence.is(Item::ByHand, Word::InContainer);
        match fact.step {
            Some(StepId::InMachine) => self.waste.push(Waste {
                job: fact.job,
                pan,
                machine: fact.machine,
            }),
            Some(StepId::EmptyByHand | StepId::CutOut) if out => self.waste.push(Waste {
                job: fact.job,
                pan,
                machine: None,
            }),
            Some(StepId::LetOut) => {
                let waste = self.waste.iter_mut().find(|w| w.job == fact.job);
                waste.into_iter().for_each(|w| w.machine = None);
            }
            Some(StepId::Waste) => self.waste.retain(|w| w.job != fact.job),
            Some(_) | None => {}
        }
    }
}

fn opened(fact: &JobFact, entry: &Entry, lived: Option<&Now>) -> PanJob {
    let contents = fact.contents.unwrap_or(Contents::EmptyWet);
    let water = contents == Contents::CleaningWater;
    let boil = fact.what == JobKind::BoilOut;
    PanJob {
        job: fact.job,
        what: fact.what,
        who: entry.who,
        supervisor: None,
        stage: match (boil, is_oil(contents)) {
            (true, _) if water => Stage::Off,
            (true, _) => Stage::BoilEmpty,
            (false, true) => Stage::How,
            (false, false) => Stage::Clean,
        },
        way: None,
        heat: Heat::Unknown,
        fat: None,
        boiling_since: None,
        proved: SortedSet::new(),
        touched: mark(entry.clk.unwrap_or(entry.rec), lived),
        again: water,
        reading: None,
        look: None,
    }
}

impl PanJob {
    fn take(&mut self, fact: &JobFact, entry: &Entry, lived: Option<&Now>) {
        // The clock as it was read: one put back is as long an absence in the log as it was in the hand.
        let at = entry.clk.unwrap_or(entry.rec);
        self.settle(at, lived);
        self.touched = mark(at, lived);
        let seen = &fact.evidence;
        if let Some(heat) = fact.heat {
            self.heat = heat;
        }
        self.keep_reading(fact, entry.rec, lived);
        match fact.step {
            Some(StepId::Who) => self.is_now(fact, entry),
            Some(StepId::Kit) => {
                self.proved.add(Hold::Kit);
                self.proved.add(Hold::Chemical);
            }
            Some(StepId::Floor) => {
                self.proved.add(Hold::Floor);
            }
            Some(StepId::LookAgain) => self.looked_again(fact),
            Some(StepId::FreshFat) => {
                self.fat = match seen.get(Item::FreshFat) {
                    Some(Seen::Words(key)) => Fat::from_key(key),
                    Some(Seen::Is(_) | Seen::Number(_)) | None => None,
                };
                let other = seen.is(Item::Label, Word::Different);
                self.stage = if other { Stage::ChangeOver } else { Stage::FreshIn };
            }
            Some(StepId::BoilHeat | StepId::BoilLook) => {
                let low = fact.heat == Some(Heat::Low);
                self.look = low.then(|| look_wait(entry.rec, lived));
                self.stage = if low { Stage::Boiling } else { Stage::MakeSafe };
                self.boiling_since = self.boiling_since.or(Some(entry.rec));
            }
            step => self.stage = self.after(step, fact),
        }
        if lived.is_none() {
            if matches!(self.heat, Heat::On | Heat::Low) {
                self.heat = Heat::Unknown;
            }
            self.again = self.stage != Stage::How;
        }
    }

    /// Idleness breaks what was worn and where one stood, before this answer hides how long it was.
    fn settle(&mut self, rec: Millis, lived: Option<&Now>) {
        let now = lived.copied().unwrap_or(Now {
            wall: rec,
            mono: 0,
            life: PageLife(0),
            off_min: 0,
        });
        if self.touched.longest_ms(&now) >= IDLE_MS {
            for hold in [Hold::Kit, Hold::Chemical, Hold::Floor] {
                self.proved.remove(&hold);
            }
        }
    }

    /// The stage after a step that only leads on.
    fn after(&mut self, step: Option<StepId>, fact: &JobFact) -> Stage {
        let seen = &fact.evidence;
        match step {
            Some(StepId::ChangeHow) => {
                self.way = seen.word(Item::OutWay);
                if self.way == Some(Word::Pumped) {
                    Stage::Pump
                } else {
                    Stage::HeatOff
                }
            }
            Some(StepId::HeatOff | StepId::Isolate) => Stage::Temp,
            Some(StepId::OilTemp) => Stage::Container,
            Some(StepId::Container) => Stage::Taking,
            Some(StepId::EmptyByHand | StepId::CutOut) if seen.is(Item::ByHand, Word::Split) => Stage::Taking,
            Some(StepId::EmptyByHand | StepId::CutOut | StepId::InMachine) => Stage::Clean,
            Some(StepId::Clean) => Stage::Exit,
            Some(StepId::Exit) => Stage::Fresh,
            Some(StepId::ChangeOver) => Stage::FreshIn,
            Some(StepId::FreshIn | StepId::PackIn) => Stage::Level,
            Some(StepId::BoilEmpty) => Stage::Water,
            Some(StepId::BoilWater) => Stage::Chemical,
            Some(StepId::BoilChemical) => Stage::Heat,
            Some(StepId::BoilCool) => Stage::Drain,
            Some(StepId::BoilDrain) => Stage::Rinse,
            Some(StepId::BoilRinse) => Stage::Exit,
            Some(_) | None => self.stage,
        }
    }

    fn is_now(&mut self, fact: &JobFact, entry: &Entry) {
        if self.who != entry.who {
            // A new person has put nothing on yet.
            self.proved.remove(&Hold::Kit);
        }
        (self.who, self.supervisor) = (entry.who, fact.supervisor);
    }

    /// Heat is to be seen off, or was.
    fn looked_again(&mut self, fact: &JobFact) {
        if fact.event == JobEvent::Broken {
            (self.stage, self.look) = (Stage::MakeSafe, None);
            return;
        }
        self.again = false;
        if self.may_be_hot() {
            (self.stage, self.look) = (Stage::Off, None);
        }
        if fact.contents == Some(Contents::EmptyWet) {
            self.stage = match self.stage {
                Stage::How
                | Stage::Pump
                | Stage::HeatOff
                | Stage::Temp
                | Stage::Container
                | Stage::InMachine
                | Stage::Clean
                | Stage::Exit
                | Stage::Fresh
                | Stage::ChangeOver
                | Stage::FreshIn => Stage::Clean,
                Stage::BoilEmpty | Stage::Water => Stage::BoilEmpty,
                Stage::Chemical | Stage::Heat | Stage::Boiling | Stage::MakeSafe | Stage::Off | Stage::Drain => {
                    Stage::Rinse
                }
                Stage::Taking | Stage::Level | Stage::Filled | Stage::Rinse => self.stage,
            };
        }
    }

    fn keep_reading(&mut self, fact: &JobFact, rec: Millis, lived: Option<&Now>) {
        if !matches!(fact.step, Some(StepId::OilTemp | StepId::BoilCool)) {
            return;
        }
        let read = [Item::OilTemp, Item::WaterTemp].into_iter();
        let mut read = read.filter_map(|item| Temp::from_dc(i16::try_from(fact.evidence.number(item)?).ok()?));
        self.reading = read.next().map(|temp| {
            // The entry says when the reading goes stale: it may be older than the entry.
            let read_at = fact.deadline.map_or(rec, |due| due.plus(-READING_FRESH_MS));
            let recalled = ReadTemp {
                temp,
                fresh: Wait::recalled(READING_FRESH_MS, read_at),
            };
            lived.map_or(recalled, |now| {
                let then = Now {
                    wall: read_at,
                    mono: now.mono - now.wall.since(read_at).max(0),
                    ..*now
                };
                ReadTemp::taken(temp, &then)
            })
        });
    }
}
