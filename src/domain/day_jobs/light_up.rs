//! Light-up: a pan at a time, resumable; heat only on liquid oil that was just seen above its mark.

use super::gates::safe_stage;
use super::state::{LightPan, LightUp, Stage, fresh_wait};
use super::{DayJobs, LOOK_AGAIN_MS, Refusal, draft, known, melt};
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Heat};
use crate::domain::facts::setup::Route;
use crate::domain::guide::{self, Scene, answers};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::procedure::{Hold, Step, StepId};
use crate::domain::time::{Millis, Now};

/// Hold 1 at the range: a signed-off adult, or an adult starter beside a named supervisor; never under eighteen, for a
/// lit pan is hot oil. A kitchen that only empties by hand lights by that sign-off.
///
/// # Errors
/// Why this person may not light, or not with that one beside.
pub fn may_light(scene: &Scene, who: PersonId, supervisor: Option<PersonId>) -> Result<Word, guide::Refusal> {
    match guide::fit_for_route(scene, who, supervisor, Route::Hot) {
        Err(why) if why != guide::Refusal::UnderAge => {
            guide::fit_for_route(scene, who, supervisor, Route::Cold).map_err(|_| why)
        }
        standing => standing,
    }
}

impl DayJobs {
    /// What proves hold 1 for a light-up, as it is to be written; a lock-up only asks for somebody who works here.
    pub(super) fn fit_for(
        &self,
        scene: &Scene,
        job: JobId,
        what: JobKind,
        (who, supervisor): (PersonId, Option<PersonId>),
    ) -> Result<Option<JobFact>, Refusal> {
        known(scene, who)?;
        if what != JobKind::LightUp || !self.tables.who.holds.contains(&Hold::Person) {
            return Ok(None);
        }
        let word = may_light(scene, who, supervisor)?;
        let mut fact = JobFact::new(job, what, JobEvent::Proved);
        fact.step = Some(self.tables.who.id);
        fact.hold = Some(Hold::Person);
        fact.supervisor = supervisor.filter(|_| word == Word::Supervised);
        fact.evidence = Evidence::new().with(Item::SignOff, word);
        Ok(Some(fact))
    }

    pub(super) fn light(
        &self,
        scene: &Scene,
        pan: PanId,
        step: StepId,
        evidence: &Evidence,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let light = self.state.light.as_ref().ok_or(guide::Refusal::NoJob)?;
        let gate = self
            .light_gate(scene, pan, now)?
            .ok_or(guide::Refusal::OtherStep { now_at: None })?;
        if gate.id() != step {
            return Err(guide::Refusal::OtherStep {
                now_at: Some(gate.id()),
            }
            .into());
        }
        let stage = match (light.pans.get(&pan), scene.pan(pan)) {
            (Some(begun), Some(pan_now)) => safe_stage(begun, pan_now, now),
            (Some(_) | None, _) => Stage::Look,
        };
        let mut fact = answered(light, pan, step);
        if stage == Stage::Melting && evidence.is(Item::Warming, Word::Crackling) {
            // Nobody leans over to answer the rest.
            fact.evidence = Evidence::new().with(Item::Warming, Word::Crackling);
            fact.heat = Some(Heat::Unknown);
            return Ok(vec![draft(light.who, fact)]);
        }
        fact.evidence = answers(&gate, None, evidence)?.evidence;
        self.leads_to(stage, &mut fact, light.who, now);
        Ok(vec![draft(light.who, fact)])
    }

    /// What going on from a stage leaves behind, as the log keeps it.
    fn leads_to(&self, stage: Stage, fact: &mut JobFact, who: Option<PersonId>, now: &Now) {
        let prove = |fact: &mut JobFact, hold| (fact.event, fact.hold) = (JobEvent::Proved, Some(hold));
        match stage {
            Stage::Look | Stage::LeftLow => {
                if high_enough(self.tables.level, &fact.evidence) {
                    prove(fact, Hold::Level);
                }
                let set = melt::is_set(&fact.evidence);
                fact.contents = Some(if set { Contents::SetFat } else { Contents::Oil });
            }
            Stage::LowTag | Stage::Lit => {}
            Stage::MeltLow => {
                melt::on_low_heat(fact, who, now);
                fact.contents = Some(Contents::SetFat);
            }
            Stage::Melting => {
                melt::on_low_heat(fact, who, now);
                let all = fact.evidence.is(Item::Melt, Word::AllLiquid);
                fact.contents = Some(if all { Contents::Oil } else { Contents::SetFat });
            }
            Stage::MeltFull => {
                if high_enough(self.tables.melt_full, &fact.evidence) {
                    prove(fact, Hold::Melt);
                } else {
                    fact.heat = Some(Heat::Unknown);
                }
            }
            Stage::On => {
                fact.heat = Some(Heat::On);
                fact.contents = Some(Contents::Oil);
            }
            Stage::MakeSafe => {
                prove(fact, Hold::LookAgain);
                fact.heat = Some(Heat::OffSeen);
            }
        }
    }

    pub(super) fn heat_off(&self, pan: PanId) -> Result<Vec<Draft>, Refusal> {
        let light = self.state.light.as_ref().ok_or(guide::Refusal::NoJob)?;
        if !light.pans.contains_key(&pan) {
            return Err(guide::Refusal::NothingToStop.into());
        }
        let mut fact = answered(light, pan, StepId::LookAgain);
        fact.event = JobEvent::Broken;
        fact.hold = Some(Hold::LookAgain);
        fact.heat = Some(Heat::Unknown);
        Ok(vec![draft(light.who, fact)])
    }

    pub(super) fn end_light(&self) -> Result<Vec<Draft>, Refusal> {
        let light = self.state.light.as_ref().ok_or(guide::Refusal::NoJob)?;
        if let Some((pan, _)) = light.pans.iter().find(|(_, p)| p.is_half_lit()) {
            return Err(Refusal::PanHalfLit { pan: *pan });
        }
        if self.found_first().is_some() {
            return Err(Refusal::FoundFirst);
        }
        let ended = JobFact::new(light.job, JobKind::LightUp, JobEvent::Ended);
        Ok(vec![draft(light.who, ended)])
    }

    /// Cold closes the lock-up that was left open; anything else leaves the look owed, an hour on.
    pub(super) fn looked(
        &self,
        scene: &Scene,
        lock_up: JobId,
        who: PersonId,
        evidence: &Evidence,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        known(scene, who)?;
        if !self.state.owed.iter().any(|o| o.job == lock_up) {
            return Err(Refusal::NoLookOwed);
        }
        let mut fact = JobFact::new(lock_up, JobKind::LockUp, JobEvent::Looked);
        fact.step = Some(StepId::Found);
        fact.evidence = answers(&self.found_gate(), None, evidence)?.evidence;
        if fact.evidence.is(Item::Found, Word::Cold) {
            let ended = JobFact::new(lock_up, JobKind::LockUp, JobEvent::Ended);
            return Ok(vec![draft(Some(who), fact), draft(Some(who), ended)]);
        }
        fact.looker = Some(who);
        fact.next_look = Some(now.wall.plus(LOOK_AGAIN_MS));
        Ok(vec![draft(Some(who), fact)])
    }

    pub(super) fn apply_light(&mut self, fact: &JobFact, who: Option<PersonId>, rec: Millis, lived: Option<&Now>) {
        let tables = self.tables;
        let Some(light) = self.state.light.as_mut().filter(|l| l.job == fact.job) else {
            return;
        };
        light.who = who.or(light.who);
        let (Some(pan), Some(step)) = (fact.pan, fact.step) else {
            return;
        };
        let seen = fresh_wait(rec, lived);
        let pan = light.pans.or_insert_with(pan, || LightPan::begun(seen));
        pan.seen = seen;
        if step == StepId::LightLevel {
            looked_at(pan, fact, tables.level);
        } else if step == StepId::LightOn {
            (pan.stage, pan.look, pan.low) = (Stage::Lit, None, false);
        } else if step == StepId::LookAgain && fact.event == JobEvent::Broken {
            pan.stage = Stage::MakeSafe;
        } else if step == StepId::LookAgain {
            let level = pan.level.filter(|level| *level == Word::Below);
            *pan = LightPan::begun(seen);
            (pan.stage, pan.level) = (if level.is_some() { Stage::LeftLow } else { Stage::Look }, level);
        } else {
            melt::apply(pan, fact, &tables, rec, lived);
        }
        if let Some(heat) = fact.heat {
            pan.heat = heat;
        }
        if lived.is_none() && matches!(pan.heat, Heat::On | Heat::Low) {
            pan.heat = Heat::Unknown;
        }
    }
}

/// Where a look at an unlit pan leaves it.
fn looked_at(pan: &mut LightPan, fact: &JobFact, level: &Step) {
    if fact.evidence.word(Item::Level).is_none() {
        pan.stage = Stage::LeftLow;
        return;
    }
    *pan = LightPan::begun(pan.seen);
    pan.level = fact.evidence.word(Item::Level);
    pan.melt = fact.evidence.word(Item::Melt);
    pan.stage = if !high_enough(level, &fact.evidence) {
        Stage::LowTag
    } else if melt::is_set(&fact.evidence) {
        Stage::MeltLow
    } else {
        Stage::On
    };
}

/// Hold 11: above the mark now. Cold oil only rises as it warms.
pub(super) fn high_enough(step: &Step, seen: &Evidence) -> bool {
    !step.holds.contains(&Hold::Level) || matches!(seen.word(Item::Level), Some(Word::Enough | Word::JustAbove))
}

fn answered(light: &LightUp, pan: PanId, step: StepId) -> JobFact {
    let mut fact = JobFact::new(light.job, JobKind::LightUp, JobEvent::Answered);
    fact.pan = Some(pan);
    fact.step = Some(step);
    fact
}
