//! Orders to the jobs about single pans, decided: nothing has happened until the drafts are written and applied.

use super::gates::is_oil;
use super::state::PanJob;
use super::{Command, PanJobs, Refusal, Stage};
use crate::domain::claim::Exposures;
use crate::domain::day_jobs::may_light;
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::oil::{Age, Fill, OilChange};
use crate::domain::facts::run::{Contents, Heat, Place};
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::fat::Fat;
use crate::domain::guide::{self, Scene, answers};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::ledger::meets;
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::Now;
use crate::domain::units::{Amount, Temp};

impl PanJobs {
    /// What an order leads to, or why it is refused.
    ///
    /// # Errors
    /// A [`Refusal`] with what its sentence needs; the state is unchanged.
    pub fn decide(&self, scene: &Scene, command: &Command, now: &Now) -> Result<Vec<Draft>, Refusal> {
        match command {
            Command::Open {
                job,
                what,
                pan,
                who,
                supervisor,
            } => self.open(scene, (*job, *what, *pan), *who, *supervisor),
            Command::Who { pan, who, supervisor } => {
                let (job, _) = self.at_hand(scene, *pan)?;
                let fact = self.fit(scene, (job.job, job.what, *pan), *who, *supervisor)?;
                Ok(vec![draft(Some(*who), fact)])
            }
            Command::Answer {
                pan,
                step,
                evidence,
                read,
                load_g,
            } => self.answer(scene, *pan, *step, (evidence, *read, *load_g), now),
            Command::Out {
                pan,
                step,
                evidence,
                amount,
                reason,
                container,
            } => {
                let change = OilChange {
                    pan: *pan,
                    amount: *amount,
                    reason: reason.trim().to_owned(),
                    temp: None,
                    container: container.clone(),
                };
                self.out(scene, *step, evidence, change, now)
            }
            Command::Fresh { pan, fat } => self.fresh(scene, *pan, *fat, now),
            Command::Filled {
                pan,
                evidence,
                amount,
                batch,
            } => self.filled(scene, *pan, evidence, (*amount, batch.clone()), now),
            Command::HeatOff { pan } => {
                let (job, _) = self.at_hand(scene, *pan)?;
                if job.stage != Stage::Boiling {
                    return Err(guide::Refusal::NothingToStop.into());
                }
                let mut fact = fact_of(job, *pan, StepId::LookAgain);
                (fact.event, fact.hold) = (JobEvent::Broken, Some(Hold::LookAgain));
                fact.heat = Some(Heat::Unknown);
                Ok(vec![draft(job.who, fact)])
            }
            Command::Waste {
                job,
                who,
                step,
                evidence,
                read,
                load_g,
            } => self.put_by(scene, *job, *who, *step, (evidence, *read, *load_g), now),
            Command::End { pan, evidence } => self.end(scene, *pan, evidence, now),
        }
    }

    fn open(
        &self,
        scene: &Scene,
        (job, what, pan): (JobId, JobKind, PanId),
        who: PersonId,
        supervisor: Option<PersonId>,
    ) -> Result<Vec<Draft>, Refusal> {
        if !what.is_of_pan() {
            return Err(guide::Refusal::OtherStep { now_at: None }.into());
        }
        if self.job(pan).is_some() {
            return Err(guide::Refusal::JobOpen.into());
        }
        let pan_now = scene.pan(pan).ok_or(guide::Refusal::NoSuchPan)?;
        if self.state.in_run.contains(&pan) {
            return Err(Refusal::PanInRun);
        }
        if self.state.half_lit.contains(&pan) {
            return Err(Refusal::HalfLit);
        }
        match (pan_now.place, pan_now.contents, what) {
            (Place::Split | Place::Gone, _, _) => return Err(Refusal::OilSplit),
            (Place::InPan | Place::InMachine | Place::InContainer, contents, JobKind::BoilOut) if is_oil(contents) => {
                return Err(Refusal::OilInPan);
            }
            (_, Contents::CleaningWater, JobKind::OilChange) => return Err(Refusal::WaterInPan),
            (Place::InPan | Place::InMachine | Place::InContainer, _, _) => {}
        }
        let proved = self.fit(scene, (job, what, pan), who, supervisor)?;
        let opened = JobFact {
            pan: Some(pan),
            contents: Some(pan_now.contents),
            ..JobFact::new(job, what, JobEvent::Opened)
        };
        Ok(vec![draft(Some(who), opened), draft(Some(who), proved)])
    }

    /// Hold 1, as for a lit pan: a signed-off adult, or an adult starter beside a named supervisor; under eighteen never.
    fn fit(
        &self,
        scene: &Scene,
        (job, what, pan): (JobId, JobKind, PanId),
        who: PersonId,
        supervisor: Option<PersonId>,
    ) -> Result<JobFact, Refusal> {
        scene.person(who).ok_or(guide::Refusal::NoSuchPerson)?;
        let mut fact = JobFact::new(job, what, JobEvent::Answered);
        (fact.pan, fact.step) = (Some(pan), Some(StepId::Who));
        if self.tables.who.holds.contains(&Hold::Person) {
            let word = may_light(scene, who, supervisor)?;
            (fact.event, fact.hold) = (JobEvent::Proved, Some(Hold::Person));
            fact.supervisor = supervisor.filter(|_| word == Word::Supervised);
            fact.evidence = Evidence::new().with(Item::SignOff, word);
        }
        Ok(fact)
    }

    fn fresh(&self, scene: &Scene, pan: PanId, fat: Fat, now: &Now) -> Result<Vec<Draft>, Refusal> {
        let (job, pan_now) = self.at_hand(scene, pan)?;
        let gates = self.asks(scene, pan, now)?;
        let stage = self.stage(job, pan_now, now);
        // A fat may be chosen anew until it goes in.
        if !matches!(stage, Stage::Fresh | Stage::ChangeOver | Stage::FreshIn) || self.is_interrupted(job, now) {
            return Err(other_step(&gates));
        }
        if self.tables.change_over.holds.contains(&Hold::Match) {
            claims_fit(&pan_now.claims, fat.exposures())?;
        }
        let mut fact = fact_of(job, pan, StepId::FreshFat);
        fact.evidence.put(Item::FreshFat, Seen::Words(fat.key().to_owned()));
        if fat != pan_now.pan.fat {
            fact.evidence.put(Item::Label, Seen::Is(Word::Different));
        }
        Ok(vec![draft(job.who, fact)])
    }

    fn out(
        &self,
        scene: &Scene,
        step: StepId,
        evidence: &Evidence,
        change: OilChange,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let pan = change.pan;
        let (job, pan_now) = self.at_hand(scene, pan)?;
        let gate = self.gate_of(scene, pan, step, now)?;
        let checked = answers(&gate, None, evidence)?.evidence;
        if !matches!(step, StepId::EmptyByHand | StepId::CutOut | StepId::InMachine)
            || checked.is(Item::ByHand, Word::Split)
        {
            return Err(other_step(&[gate]));
        }
        if change.reason.is_empty() {
            return Err(Refusal::WhyNot);
        }
        // As it was set up: a pan can hold no more than full when it comes out.
        fits(change.amount, &pan_now.pan)?;
        let machine = self.state.machines.get(&pan).filter(|_| step == StepId::InMachine);
        let mut fact = fact_of(job, pan, step);
        prove(&mut fact, &gate.holds);
        (fact.evidence, fact.contents) = (checked, Some(Contents::EmptyWet));
        fact.machine = machine.copied();
        let named = machine.and_then(|m| scene.machine(*m)).map(|m| m.machine.name.clone());
        let change = OilChange {
            temp: job.reading.map(|read| read.temp).filter(|_| step != StepId::InMachine),
            container: change.container.or(named),
            ..change
        };
        Ok(vec![draft(job.who, fact), Draft::now(job.who, Fact::OilChange(change))])
    }

    fn filled(
        &self,
        scene: &Scene,
        pan: PanId,
        evidence: &Evidence,
        (amount, batch): (Amount, Option<String>),
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        let (job, pan_now) = self.at_hand(scene, pan)?;
        let gate = self.gate_of(scene, pan, StepId::FreshLevel, now)?;
        let checked = answers(&gate, None, evidence)?.evidence;
        let fat = job.fat.ok_or(guide::Refusal::OtherStep { now_at: None })?;
        fits(amount, &pan_now.pan)?;
        if gate.holds.contains(&Hold::Level) {
            // Low, and the tag stays; high enough, and it comes off for whoever lights the pan.
            let low = checked.is(Item::Level, Word::Below);
            if checked.is(Item::Tag, Word::Hung) != low {
                return Err(guide::Refusal::NotSo {
                    item: Item::Tag,
                    word: checked.word(Item::Tag),
                }
                .into());
            }
        }
        let mut fact = fact_of(job, pan, StepId::FreshLevel);
        prove(&mut fact, &gate.holds);
        fact.evidence = checked;
        fact.contents = Some(if fat.is_solid() {
            Contents::SetFat
        } else {
            Contents::Oil
        });
        let fill = Fill {
            pan,
            fat,
            amount,
            batch,
            age: Age::Fresh,
        };
        let kept = (fat != pan_now.pan.fat).then(|| {
            Fact::Pan(Box::new(Pan {
                fat,
                ..pan_now.pan.clone()
            }))
        });
        let ended = JobFact::new(job.job, job.what, JobEvent::Ended);
        let mut drafts = vec![draft(job.who, fact), Draft::now(job.who, Fact::Fill(fill))];
        drafts.extend(kept.map(|fact| Draft::now(job.who, fact)));
        drafts.push(draft(
            job.who,
            JobFact {
                pan: Some(pan),
                ..ended
            },
        ));
        Ok(drafts)
    }

    fn end(&self, scene: &Scene, pan: PanId, evidence: &Evidence, now: &Now) -> Result<Vec<Draft>, Refusal> {
        let (job, _) = self.at_hand(scene, pan)?;
        if self.state.in_run.contains(&pan) {
            return Err(Refusal::PanInRun);
        }
        let mut drafts = Vec::new();
        if let Some(gate) = self.leave_gate(scene, pan, now)? {
            let mut fact = fact_of(job, pan, StepId::LeavePan);
            prove(&mut fact, &gate.holds);
            fact.evidence = answers(&gate, None, evidence)?.evidence;
            fact.heat = gate.holds.contains(&Hold::HeatOff).then_some(Heat::OffSeen);
            drafts.push(draft(job.who, fact));
        }
        let ended = JobFact::new(job.job, job.what, JobEvent::Ended);
        drafts.push(draft(
            job.who,
            JobFact {
                pan: Some(pan),
                ..ended
            },
        ));
        Ok(drafts)
    }
}

fn fits(amount: Amount, pan: &Pan) -> Result<(), Refusal> {
    if amount.volume > pan.full {
        return Err(Refusal::TooMuch { full: pan.full });
    }
    if amount.volume.ml() == 0 {
        return Err(Refusal::AmountNeeded);
    }
    Ok(())
}

fn claims_fit(claims: &[Claim], set: Exposures) -> Result<(), Refusal> {
    for claim in claims {
        if let Some(exposure) = meets(claim, set) {
            let claim = claim.what;
            return Err(Refusal::ClaimMet { claim, exposure });
        }
    }
    Ok(())
}

/// A reading of what is in the pan or the machine, at or under the limit for work by hand, at most five minutes old.
pub(super) fn cold_reading(seen: &Evidence, item: Item, read: Option<Now>, now: &Now) -> Result<Temp, Refusal> {
    let dc = seen.number(item).ok_or(guide::Refusal::Unanswered { item })?;
    let temp = i16::try_from(dc).ok().and_then(Temp::from_dc);
    let (temp, read_at) = temp.zip(read).ok_or(guide::Refusal::ReadingTooOld)?;
    if temp > guide::BY_HAND_MAX {
        let (read, high) = (temp, guide::BY_HAND_MAX);
        return Err(guide::Refusal::TooHot { read, high }.into());
    }
    if !guide::state::ReadTemp::taken(temp, &read_at).counts(now) {
        return Err(guide::Refusal::ReadingTooOld.into());
    }
    Ok(temp)
}

pub(super) fn other_step(gates: &[guide::gate::Gate]) -> Refusal {
    let now_at = gates.first().map(guide::gate::Gate::id);
    guide::Refusal::OtherStep { now_at }.into()
}

pub(super) fn prove(fact: &mut JobFact, holds: &[Hold]) {
    if let Some(hold) = holds.first() {
        (fact.event, fact.hold) = (JobEvent::Proved, Some(*hold));
    }
}

pub(super) fn fact_of(job: &PanJob, pan: PanId, step: StepId) -> JobFact {
    let mut fact = JobFact::new(job.job, job.what, JobEvent::Answered);
    (fact.pan, fact.step) = (Some(pan), Some(step));
    fact
}

pub(super) fn draft(who: Option<PersonId>, fact: JobFact) -> Draft {
    Draft::now(who, Fact::Job(Box::new(fact)))
}
