//! What going on from a gate leads to: its holds checked, and what the log keeps of it.

use super::decide::{cold_reading, draft, fact_of, other_step, prove};
use super::state::PanJob;
use super::{BOIL_LOOK_MS, PanJobs, Refusal, Stage};
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Heat, Place};
use crate::domain::guide::gate::Gate;
use crate::domain::guide::scene::PanNow;
use crate::domain::guide::{self, READING_FRESH_MS, Scene, answers};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::lifting::{Zone, help_from_kg, needs_help};
use crate::domain::procedure::{Hold, How, StepId};
use crate::domain::time::Now;

/// What came with an answer: what was seen, when a temperature was read, what the heaviest container weighs.
type Said<'a> = (&'a Evidence, Option<Now>, Option<u32>);

impl PanJobs {
    /// The gate of a step, where that is one of those asked now.
    pub(super) fn gate_of(&self, scene: &Scene, pan: PanId, step: StepId, now: &Now) -> Result<Gate, Refusal> {
        let mut gates = self.asks(scene, pan, now)?;
        match gates.iter().position(|gate| gate.id() == step) {
            Some(at) => Ok(gates.swap_remove(at)),
            None => Err(other_step(&gates)),
        }
    }

    pub(super) fn answer(
        &self,
        scene: &Scene,
        pan: PanId,
        step: StepId,
        said: Said<'_>,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let (job, pan_now) = self.at_hand(scene, pan)?;
        let gate = self.gate_of(scene, pan, step, now)?;
        if let Some(bad) = off_now(said.0).filter(|_| step == StepId::BoilLook) {
            // Nobody leans over to answer the rest.
            let mut fact = fact_of(job, pan, step);
            (fact.evidence, fact.heat) = (bad, Some(Heat::Unknown));
            return Ok(vec![draft(job.who, fact)]);
        }
        let mut fact = fact_of(job, pan, step);
        checked(&mut fact, &gate, said, now)?;
        if gate.holds.contains(&Hold::HeatOff) && !asks_off(&gate) && job.heat != Heat::OffSeen {
            return Err(guide::Refusal::LookAgainFirst.into());
        }
        prove(&mut fact, &gate.holds);
        if asks_off(&gate) {
            fact.heat = Some(Heat::OffSeen);
        }
        let ends = leads_to(&mut fact, job, pan_now, now)?;
        let mut drafts = vec![draft(job.who, fact)];
        if ends {
            let ended = JobFact::new(job.job, job.what, JobEvent::Ended);
            drafts.push(draft(
                job.who,
                JobFact {
                    pan: Some(pan),
                    ..ended
                },
            ));
        }
        Ok(drafts)
    }

    pub(super) fn put_by(
        &self,
        scene: &Scene,
        job: JobId,
        who: PersonId,
        step: StepId,
        said: Said<'_>,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        scene.person(who).ok_or(guide::Refusal::NoSuchPerson)?;
        let waste = self.state.waste.iter().find(|w| w.job == job).ok_or(Refusal::NoWaste)?;
        let gate = self.waste_gate(job).ok_or(Refusal::NoWaste)?;
        if gate.id() != step {
            return Err(other_step(&[gate]));
        }
        let mut fact = JobFact::new(job, JobKind::OilChange, JobEvent::Answered);
        (fact.pan, fact.step, fact.machine) = (Some(waste.pan), Some(step), waste.machine);
        checked(&mut fact, &gate, said, now)?;
        prove(&mut fact, &gate.holds);
        Ok(vec![draft(Some(who), fact)])
    }
}

/// Checks answers, temperature and weight, and keeps them as evidence.
fn checked(fact: &mut JobFact, gate: &Gate, (seen, read, load_g): Said<'_>, now: &Now) -> Result<(), Refusal> {
    fact.evidence = answers(gate, None, seen)?.evidence;
    let probe = [Item::OilTemp, Item::WaterTemp];
    if let Some(item) = probe.into_iter().find(|item| fact.evidence.number(*item).is_some()) {
        cold_reading(&fact.evidence, item, read, now)?;
        fact.deadline = read.map(|read| read.wall.plus(READING_FRESH_MS));
    }
    if gate.holds.contains(&Hold::Lift) {
        let load = load_g.and_then(|grams| i32::try_from(grams).ok().map(|kept| (grams, kept)));
        if fact.evidence.is(Item::Carry, Word::Alone) && load.is_none_or(|(grams, _)| needs_help(grams)) {
            let from_kg = help_from_kg(Zone::Floor, Zone::Elbow);
            return Err(Refusal::NeedsHelp { from_kg });
        }
        if let Some((_, kept)) = load {
            fact.evidence.put(Item::Load, Seen::Number(kept));
        }
    }
    Ok(())
}

/// Whether a gate asks for the two signs of heat off.
fn asks_off(gate: &Gate) -> bool {
    let asks = gate.steps.iter().flat_map(|step| step.asks);
    asks.filter(|ask| matches!(ask.how, How::OffSign(_))).count() > 0
}

/// What a look at the boil saw that means heat off before another word.
fn off_now(seen: &Evidence) -> Option<Evidence> {
    let bad = [
        (Item::Foam, Word::Rising),
        (Item::Foam, Word::Crackling),
        (Item::WaterLevel, Word::Below),
        (Item::WaterLevel, Word::High),
        (Item::Attended, Word::Leaving),
    ];
    let (item, word) = bad.into_iter().find(|(item, word)| seen.is(*item, *word))?;
    Some(Evidence::new().with(item, word))
}

/// What an answer leaves in the pan and under it, and whether the job is over with it.
fn leads_to(fact: &mut JobFact, job: &PanJob, pan: &PanNow, now: &Now) -> Result<bool, Refusal> {
    match fact.step {
        Some(StepId::EmptyByHand | StepId::CutOut) if fact.evidence.is(Item::ByHand, Word::InContainer) => {
            return Err(Refusal::AmountNeeded);
        }
        Some(StepId::InMachine) => return Err(Refusal::AmountNeeded),
        Some(StepId::FreshLevel) => return Err(Refusal::AmountNeeded),
        Some(StepId::LookAgain) if fact.evidence.word(Item::PanHolds).is_some() => looked_again(fact, job, pan)?,
        Some(StepId::Clean) => {
            fact.contents = Some(Contents::EmptyWet);
            return Ok(fact.evidence.is(Item::Cleaned, Word::BoilOut));
        }
        Some(StepId::Exit) => {
            fact.contents = Some(Contents::EmptyDry);
            return Ok(!refills(job));
        }
        // From here on water may be in it, whoever is called away.
        Some(StepId::BoilEmpty | StepId::BoilWater) => fact.contents = Some(Contents::CleaningWater),
        Some(StepId::BoilHeat | StepId::BoilLook) => {
            fact.heat = Some(Heat::Low);
            fact.next_look = Some(now.wall.plus(BOIL_LOOK_MS));
            fact.looker = job.who;
        }
        Some(StepId::BoilDrain | StepId::BoilRinse) => fact.contents = Some(Contents::EmptyWet),
        Some(_) | None => {}
    }
    Ok(false)
}

/// Whether fresh oil follows the exit gate.
fn refills(job: &PanJob) -> bool {
    match job.what {
        JobKind::OilChange => true,
        JobKind::BoilOut | JobKind::LightUp | JobKind::Filter | JobKind::LockUp => false,
    }
}

/// The log is believed where the look agrees. A pan seen empty is empty; oil or water that nobody logged is not put in by
/// a look.
fn looked_again(fact: &mut JobFact, job: &PanJob, pan: &PanNow) -> Result<(), Refusal> {
    let seen = fact.evidence.word(Item::PanHolds);
    let stands = match (pan.contents, seen) {
        (_, Some(Word::Oil)) if job.stage == Stage::Level => true,
        (Contents::Oil | Contents::SetFat, Some(Word::Oil))
        | (Contents::CleaningWater, Some(Word::Water))
        | (Contents::EmptyWet | Contents::EmptyDry, Some(Word::Empty)) => true,
        (_, Some(Word::Empty)) => {
            if pan.place == Place::InPan {
                fact.contents = Some(Contents::EmptyWet);
            }
            true
        }
        (_, _) => false,
    };
    if stands {
        return Ok(());
    }
    Err(guide::Refusal::NotSo {
        item: Item::PanHolds,
        word: seen,
    }
    .into())
}
