//! Believing what was written. Applying cannot fail: it has already happened.

use super::DayJobs;
use super::state::{LightUp, LockUp, Owed, Stage};
use crate::domain::entry::Entry;
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Heat, Place, RunEvent, RunFact};
use crate::domain::facts::trouble::{TroubleEvent, TroubleFact};
use crate::domain::ids::PanId;
use crate::domain::sorted::{SortedMap, SortedSet};
use crate::domain::time::{Millis, Now};
use crate::domain::trouble;

impl DayJobs {
    /// Takes in an entry, of any kind: runs and services tell whether there can be scraps, and which pans are busy.
    /// `lived` is the instant it was written, when that was in this page life; an entry read back from the log has
    /// none, and leaves heat unknown and waits to be vouched for.
    pub fn apply(&mut self, entry: &Entry, lived: Option<&Now>) {
        if let Fact::Job(fact) = &entry.fact {
            match fact.what {
                JobKind::LightUp => self.take_light(fact, entry, lived),
                JobKind::LockUp => self.take_lock(fact, entry, lived),
                JobKind::OilChange | JobKind::BoilOut => self.take_pan(fact),
                JobKind::Filter => {}
            }
        } else if let Fact::Run(fact) = &entry.fact {
            self.take_run(fact);
        } else if let Fact::Trouble(fact) = &entry.fact {
            self.take_trouble(fact);
        } else if let Fact::RunNoted(noted) = &entry.fact {
            self.state.worked |= noted.how == Grade::Unguided && self.is_since_lock_up(entry.at);
        } else if let Fact::Service(service) = &entry.fact {
            self.state.worked |= service.fry.get() > 0 && self.is_since_lock_up(entry.at);
        }
    }

    /// Where a trouble stops heat, every pan that was begun is seen off first, and then looked at afresh.
    fn take_trouble(&mut self, fact: &TroubleFact) {
        let begins = fact.event == TroubleEvent::Began && trouble::row(fact.what).heat;
        let Some(light) = self.state.light.as_mut().filter(|_| begins) else {
            return;
        };
        let pans: Vec<PanId> = light.pans.keys().copied().collect();
        for id in pans.into_iter().filter(|id| fact.pan.is_none_or(|pan| pan == *id)) {
            let Some(pan) = light.pans.get_mut(&id) else { continue };
            pan.heat = Heat::Unknown;
            if pan.is_half_lit() || pan.stage == Stage::Lit {
                pan.stage = Stage::MakeSafe;
            } else if pan.stage != Stage::LeftLow {
                pan.stage = Stage::Look;
            }
        }
    }

    fn is_since_lock_up(&self, at: Millis) -> bool {
        self.state.locked_at.is_none_or(|locked| at > locked)
    }

    fn take_run(&mut self, fact: &RunFact) {
        match fact.event {
            RunEvent::Began => {
                // From here on the run sees to its heat.
                if let Some(light) = self.state.light.as_mut() {
                    light.pans.remove(&fact.pan);
                }
                self.state.in_run.add(fact.pan);
            }
            RunEvent::Ended => {
                self.state.in_run.remove(&fact.pan);
            }
            RunEvent::Answered
            | RunEvent::Pump
            | RunEvent::Stopped
            | RunEvent::Resumed
            | RunEvent::Reverified
            | RunEvent::Fault => {}
        }
        self.state.worked |= fact.place != Place::InPan;
        self.heated(fact.pan, Some(fact.heat));
    }

    /// A job about one pan sees to its heat, from its beginning to its end.
    fn take_pan(&mut self, fact: &JobFact) {
        let Some(pan) = fact.pan else { return };
        match fact.event {
            JobEvent::Opened => {
                if let Some(light) = self.state.light.as_mut() {
                    light.pans.remove(&pan);
                }
                self.state.in_job.add(pan);
            }
            JobEvent::Ended => {
                self.state.in_job.remove(&pan);
            }
            JobEvent::Proved
            | JobEvent::Broken
            | JobEvent::Answered
            | JobEvent::HeaterOn
            | JobEvent::HeaterOff
            | JobEvent::Away
            | JobEvent::LeftOpen
            | JobEvent::Looked
            | JobEvent::Noted => {}
        }
        self.heated(pan, fact.heat);
    }

    /// A pan that was seen off and lidded and is lit again must be seen off again.
    fn heated(&mut self, pan: PanId, heat: Option<Heat>) {
        if let (Some(lock), Some(Heat::On | Heat::Low)) = (self.state.lock.as_mut(), heat) {
            lock.pans.remove(&pan);
        }
    }

    fn take_light(&mut self, fact: &JobFact, entry: &Entry, lived: Option<&Now>) {
        match fact.event {
            JobEvent::Opened => {
                self.state.light = Some(LightUp {
                    job: fact.job,
                    who: entry.who,
                    pans: SortedMap::new(),
                });
            }
            JobEvent::Ended => self.state.light = None,
            JobEvent::Proved | JobEvent::Answered | JobEvent::Broken => {
                self.apply_light(fact, entry.who, entry.rec, lived);
                if let Some(pan) = fact.pan {
                    self.heated(pan, fact.heat);
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

    fn take_lock(&mut self, fact: &JobFact, entry: &Entry, lived: Option<&Now>) {
        let tables = self.tables;
        let state = &mut self.state;
        match fact.event {
            JobEvent::Opened => {
                state.lock = Some(LockUp {
                    job: fact.job,
                    who: entry.who,
                    heap: None,
                    wait: None,
                    scraps: None,
                    floor: false,
                    pans: SortedSet::new(),
                    warm: None,
                    probed: false,
                });
            }
            JobEvent::Proved | JobEvent::Answered | JobEvent::Broken => {
                if let Some(lock) = state.lock.as_mut().filter(|l| l.job == fact.job) {
                    lock.who = entry.who.or(lock.who);
                    lock.take(fact, &tables, entry.rec, lived);
                }
                // Seen off and lidded: what the morning saw of it no longer stands.
                if let (Some(light), Some(pan)) = (state.light.as_mut(), fact.pan) {
                    light.pans.remove(&pan);
                }
            }
            JobEvent::LeftOpen => {
                state.owed.push(Owed {
                    job: fact.job,
                    looker: fact.looker,
                    next_look: fact.next_look,
                    found: None,
                    asked_by: None,
                });
                self.locked(fact, entry.rec);
            }
            JobEvent::Ended => {
                state.owed.retain(|o| o.job != fact.job);
                self.locked(fact, entry.rec);
            }
            JobEvent::Looked => {
                let asked_by = state.light.as_ref().map(|l| l.job);
                if let Some(owed) = state.owed.iter_mut().find(|o| o.job == fact.job) {
                    owed.found = fact.evidence.word(Item::Found).filter(|found| *found != Word::Cold);
                    owed.asked_by = asked_by;
                    owed.looker = fact.looker.or(owed.looker);
                    owed.next_look = fact.next_look.or(owed.next_look);
                }
            }
            JobEvent::HeaterOn | JobEvent::HeaterOff | JobEvent::Away | JobEvent::Noted => {}
        }
    }

    /// The lock-up in hand is over; what is fried from here on belongs to the next.
    fn locked(&mut self, fact: &JobFact, rec: Millis) {
        if self.state.lock.as_ref().is_some_and(|l| l.job == fact.job) {
            self.state.lock = None;
            self.state.worked = false;
            self.state.locked_at = Some(rec);
        }
    }
}
