//! Lock-up: hold 12 by two probes of the heap or by a named look outdoors, the floor, and every pan off and lidded.

use super::state::{LockUp, ScrapsAre, scraps_wait};
use super::{DayJobs, HEAP_COLD_DC, LOOK_AHEAD_MAX_MS, Refusal, draft, known};
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::Heat;
use crate::domain::guide::{self, Scene, answers};
use crate::domain::ids::{PanId, PersonId};
use crate::domain::procedure::{DayTables, Hold, StepId};
use crate::domain::time::{Millis, Now};
use crate::domain::wait::Standing;

impl DayJobs {
    pub(super) fn lock(
        &self,
        scene: &Scene,
        step: StepId,
        pan: Option<PanId>,
        evidence: &Evidence,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let lock = self.state.lock.as_ref().ok_or(guide::Refusal::NoJob)?;
        let asks = self.lock_asks(scene, now);
        let now_at = asks.first().map(|a| a.gate.id());
        let ask = asks
            .into_iter()
            .find(|a| a.gate.id() == step && a.pan == pan)
            .ok_or(guide::Refusal::OtherStep { now_at })?;
        if step == StepId::ScrapsAgain {
            match lock.wait.map(|w| w.standing(now)) {
                Some(Standing::Over { .. }) => {}
                Some(Standing::Running { left_ms }) => return Err(Refusal::NotTenMinutes { left_ms }),
                Some(Standing::AskTime) | None => return Err(guide::Refusal::AskTime.into()),
            }
        }
        let mut fact = answered(lock, step);
        fact.pan = pan;
        fact.evidence = answers(&ask.gate, None, evidence)?.evidence;
        if step == StepId::Scraps && first_stands(&self.tables, &fact.evidence) {
            fact.deadline = Some(scraps_wait(now.wall, Some(now)).due());
        } else if step == StepId::ScrapsAgain && cold(&self.tables, lock.heap, &fact.evidence) {
            prove(&mut fact, Hold::Scraps);
        } else if step == StepId::LockPans {
            prove(&mut fact, Hold::HeatOff);
            fact.heat = Some(Heat::OffSeen);
        }
        Ok(self.and_end(lock, scene, fact))
    }

    pub(super) fn no_scraps(&self, scene: &Scene, evidence: &Evidence) -> Result<Vec<Draft>, Refusal> {
        let lock = self.state.lock.as_ref().ok_or(guide::Refusal::NoJob)?;
        let gate = self.no_scraps_gate().ok_or(Refusal::ScrapsSomewhere)?;
        let mut fact = answered(lock, StepId::Scraps);
        fact.evidence = answers(&gate, None, evidence)?.evidence;
        prove(&mut fact, Hold::Scraps);
        Ok(self.and_end(lock, scene, fact))
    }

    pub(super) fn scraps_out(
        &self,
        scene: &Scene,
        evidence: &Evidence,
        looker: PersonId,
        next_look: Millis,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let lock = self.state.lock.as_ref().ok_or(guide::Refusal::NoJob)?;
        let gate = self
            .scraps_out_gate()
            .ok_or(guide::Refusal::OtherStep { now_at: None })?;
        if self.tables.scraps_out.holds.contains(&Hold::Scraps) {
            known(scene, looker).map_err(|_| Refusal::LookerUnknown)?;
            if !(1..=LOOK_AHEAD_MAX_MS).contains(&next_look.since(now.wall)) {
                return Err(Refusal::LookNotAhead);
            }
        }
        let mut fact = answered(lock, StepId::ScrapsOut);
        fact.evidence = answers(&gate, None, evidence)?.evidence;
        prove(&mut fact, Hold::Scraps);
        fact.looker = Some(looker);
        fact.next_look = Some(next_look);
        Ok(self.and_end(lock, scene, fact))
    }

    pub(super) fn time_is(&self, right: bool, now: &Now) -> Result<Vec<Draft>, Refusal> {
        let lock = self.state.lock.as_ref().ok_or(guide::Refusal::NoJob)?;
        let asked = lock.scraps.is_none() && lock.wait.is_some_and(|w| w.standing(now) == Standing::AskTime);
        let wait = lock
            .wait
            .filter(|_| asked)
            .ok_or(guide::Refusal::OtherStep { now_at: None })?;
        let mut fact = answered(lock, StepId::ScrapsAgain);
        fact.evidence = Evidence::new().with(Item::Clock, if right { Word::Yes } else { Word::No });
        fact.deadline = Some(wait.after_asking(right, now).due());
        Ok(vec![draft(lock.who, fact)])
    }

    /// The answer, and the end of the lock-up when it was the last: ended, or left open with its look.
    fn and_end(&self, lock: &LockUp, scene: &Scene, fact: JobFact) -> Vec<Draft> {
        let mut after = lock.clone();
        after.take(&fact, &self.tables, Millis(0), None);
        let pans_done = scene.pans.iter().all(|p| after.pans.contains(&p.pan.pan));
        let mut drafts = vec![draft(lock.who, fact)];
        if let (Some(scraps), true) = (after.scraps, after.floor && pans_done) {
            let mut end = JobFact::new(lock.job, JobKind::LockUp, JobEvent::Ended);
            if let ScrapsAre::Out { looker, next_look } = scraps {
                end.event = JobEvent::LeftOpen;
                (end.looker, end.next_look) = (looker, next_look);
            }
            drafts.push(draft(lock.who, end));
        }
        drafts
    }
}

impl LockUp {
    /// Believes one entry of this lock-up.
    pub(super) fn take(&mut self, fact: &JobFact, tables: &DayTables, rec: Millis, lived: Option<&Now>) {
        let seen = &fact.evidence;
        match fact.step {
            Some(StepId::Scraps) if seen.is(Item::Scraps, Word::None) => self.scraps = Some(ScrapsAre::None),
            Some(StepId::Scraps) => {
                self.probed = true;
                let stands = first_stands(tables, seen);
                let read = seen.number(Item::Heap);
                (self.heap, self.warm) = if stands { (read, None) } else { (None, read) };
                self.wait = stands.then(|| scraps_wait(rec, lived));
            }
            Some(StepId::ScrapsAgain) => self.take_again(fact, tables, rec, lived),
            Some(StepId::ScrapsOut) => {
                self.scraps = Some(ScrapsAre::Out {
                    looker: fact.looker,
                    next_look: fact.next_look,
                });
            }
            Some(StepId::LockFloor) => self.floor = true,
            Some(StepId::LockPans) => fact.pan.into_iter().for_each(|pan| _ = self.pans.add(pan)),
            Some(_) | None => {}
        }
    }

    fn take_again(&mut self, fact: &JobFact, tables: &DayTables, rec: Millis, lived: Option<&Now>) {
        let seen = &fact.evidence;
        if let Some(clock) = seen.word(Item::Clock) {
            let right = clock == Word::Yes;
            self.wait = match (self.wait, lived) {
                (Some(wait), Some(now)) => Some(wait.after_asking(right, now)),
                // Read back: a wait that was begun again began when that was written.
                (Some(wait), None) => Some(if right { wait } else { scraps_wait(rec, None) }),
                (None, _) => None,
            };
        } else if cold(tables, self.heap, seen) {
            self.scraps = Some(ScrapsAre::Cold);
        } else {
            // Warm or rising: the two probes begin anew.
            (self.heap, self.wait) = (None, None);
            self.warm = seen.number(Item::HeapAgain);
        }
    }
}

/// Hold 12, first half: under 40 °C in the middle of the heap.
fn first_stands(tables: &DayTables, seen: &Evidence) -> bool {
    !tables.scraps.holds.contains(&Hold::Scraps) || seen.number(Item::Heap).is_some_and(|dc| dc < HEAP_COLD_DC)
}

/// Hold 12, second half: under 40 °C ten minutes on, and not rising.
fn cold(tables: &DayTables, first: Option<i32>, seen: &Evidence) -> bool {
    let again = seen.number(Item::HeapAgain);
    !tables.scraps_again.holds.contains(&Hold::Scraps)
        || first
            .zip(again)
            .is_some_and(|(first, again)| again < HEAP_COLD_DC && again <= first)
}

fn prove(fact: &mut JobFact, hold: Hold) {
    (fact.event, fact.hold) = (JobEvent::Proved, Some(hold));
}

fn answered(lock: &LockUp, step: StepId) -> JobFact {
    let mut fact = JobFact::new(lock.job, JobKind::LockUp, JobEvent::Answered);
    fact.step = Some(step);
    fact
}
