//! What is asked now, as gates of the guide's own kind.

use super::state::{PanJob, Stage};
use super::{PanJobs, Refusal};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::job::JobKind;
use crate::domain::facts::run::{Contents, Place};
use crate::domain::facts::setup::{OutBy, Pan};
use crate::domain::fat::Fat;
use crate::domain::guide::gate::{Gate, Question, QuestionKind, grouped, single};
use crate::domain::guide::scene::PanNow;
use crate::domain::guide::{self, Scene};
use crate::domain::ids::{JobId, PanId};
use crate::domain::procedure::{Hold, Step};
use crate::domain::time::Now;

impl PanJobs {
    /// The stage a job stands at now: what the log says of the pan since its last entry goes before that entry.
    #[must_use]
    pub fn stage(&self, job: &PanJob, pan: &PanNow, now: &Now) -> Stage {
        let (home, oil) = (pan.place == Place::InPan, is_oil(pan.contents));
        // What a run still has in hand is not taken over.
        let in_run = self.state.in_run.contains(&pan.pan.pan);
        let elsewhere = matches!(pan.place, Place::InMachine | Place::InContainer) && !in_run;
        let stale = |step: &Step| step.holds.contains(&Hold::Temperature) && !job.reading_counts(now);
        match job.stage {
            Stage::How | Stage::Pump | Stage::HeatOff | Stage::Temp | Stage::Container if elsewhere => Stage::InMachine,
            Stage::How | Stage::Pump | Stage::HeatOff | Stage::Temp | Stage::Container if home && !oil => Stage::Clean,
            // Left there, and begun anew: it is not out for good until it was said.
            Stage::Clean if elsewhere => Stage::InMachine,
            Stage::Taking if home && oil => Stage::How,
            Stage::Container if stale(self.tables.container) => Stage::Temp,
            Stage::Drain if stale(self.tables.boil_drain) => Stage::Off,
            Stage::Boiling if oil || job.silent(now) => Stage::MakeSafe,
            Stage::Clean
            | Stage::Exit
            | Stage::Fresh
            | Stage::ChangeOver
            | Stage::FreshIn
            | Stage::Level
            | Stage::BoilEmpty
            | Stage::Water
            | Stage::Chemical
            | Stage::Heat
            | Stage::Off
            | Stage::Drain
            | Stage::Rinse
                if home && oil =>
            {
                Stage::Filled
            }
            Stage::How
            | Stage::Pump
            | Stage::HeatOff
            | Stage::Temp
            | Stage::Container
            | Stage::Taking
            | Stage::InMachine
            | Stage::Clean
            | Stage::Exit
            | Stage::Fresh
            | Stage::ChangeOver
            | Stage::FreshIn
            | Stage::Level
            | Stage::Filled
            | Stage::BoilEmpty
            | Stage::Water
            | Stage::Chemical
            | Stage::Heat
            | Stage::Boiling
            | Stage::MakeSafe
            | Stage::Off
            | Stage::Drain
            | Stage::Rinse => job.stage,
        }
    }

    /// Whether heat and pan are to be looked at before a job goes on.
    #[must_use]
    pub fn is_interrupted(&self, job: &PanJob, now: &Now) -> bool {
        let asked = self.tables.again.holds.contains(&Hold::LookAgain);
        (job.again && asked) || job.silent(now)
    }

    /// Everything that may be answered of a pan now, the next thing first; nothing where a fat is to be chosen, or where
    /// nothing is left to do but to end.
    ///
    /// # Errors
    /// No job on that pan, no such pan, or a filter run that has it in hand.
    pub fn asks(&self, scene: &Scene, pan: PanId, now: &Now) -> Result<Vec<Gate>, Refusal> {
        let (job, pan_now) = self.at_hand(scene, pan)?;
        let set_up = Some(&pan_now.pan);
        let tables = &self.tables;
        if self.is_interrupted(job, now) {
            return Ok(vec![gate(tables.again, set_up)]);
        }
        let stage = self.stage(job, pan_now, now);
        if stage == Stage::MakeSafe {
            return Ok(vec![gate(tables.boil_off, set_up)]);
        }
        if self.state.in_run.contains(&pan) {
            return Err(Refusal::PanInRun);
        }
        if matches!(pan_now.place, Place::Split | Place::Gone) {
            return Err(Refusal::OilSplit);
        }
        let waste = self.state.waste.iter().find(|w| w.job == job.job);
        if waste.is_some_and(|w| w.machine.is_none()) {
            return Ok(vec![gate(tables.waste, set_up)]);
        }
        if let Some(ready) = self.unproved(job, stage, now) {
            return Ok(vec![gate(ready, set_up)]);
        }
        let gates = self.steps(job, stage).into_iter().map(|step| gate(step, set_up));
        Ok(gates.map(|gate| offered(gate, pan_now, scene)).collect())
    }

    /// What old oil of an oil change asks next, the job over or not: out of the machine once it is cold, then put by.
    #[must_use]
    pub fn waste_gate(&self, job: JobId) -> Option<Gate> {
        let waste = self.state.waste.iter().find(|w| w.job == job)?;
        let step = if waste.machine.is_some() {
            self.tables.let_out
        } else {
            self.tables.waste
        };
        Some(gate(step, None))
    }

    /// What leaving a pan asks; nothing where it stands as it was found.
    ///
    /// # Errors
    /// Heat on under water, or oil on its way in or out: neither is left.
    pub fn leave_gate(&self, scene: &Scene, pan: PanId, now: &Now) -> Result<Option<Gate>, Refusal> {
        let (job, pan_now) = self.at_hand(scene, pan)?;
        if job.may_be_hot() {
            return Err(Refusal::HeatFirst);
        }
        match self.stage(job, pan_now, now) {
            Stage::Boiling | Stage::MakeSafe => Err(Refusal::HeatFirst),
            Stage::Taking | Stage::Level => Err(Refusal::Midway),
            Stage::How | Stage::Pump | Stage::HeatOff | Stage::Temp | Stage::Container | Stage::Filled
                if pan_now.place == Place::InPan =>
            {
                Ok(None)
            }
            Stage::How
            | Stage::Pump
            | Stage::HeatOff
            | Stage::Temp
            | Stage::Container
            | Stage::Filled
            | Stage::InMachine
            | Stage::Clean
            | Stage::Exit
            | Stage::Fresh
            | Stage::ChangeOver
            | Stage::FreshIn
            | Stage::BoilEmpty
            | Stage::Water
            | Stage::Chemical
            | Stage::Heat
            | Stage::Off
            | Stage::Drain
            | Stage::Rinse => Ok(Some(gate(self.tables.leave, Some(&pan_now.pan)))),
        }
    }

    /// The open job of a pan, and the pan.
    pub(super) fn at_hand<'a>(&'a self, scene: &'a Scene, pan: PanId) -> Result<(&'a PanJob, &'a PanNow), Refusal> {
        let job = self.job(pan).ok_or(guide::Refusal::NoJob)?;
        let pan_now = scene.pan(pan).ok_or(guide::Refusal::NoSuchPan)?;
        Ok((job, pan_now))
    }

    /// The hold of Ready that does not stand. Nobody who watches a boil is sent for an apron.
    fn unproved(&self, job: &PanJob, stage: Stage, now: &Now) -> Option<&'static Step> {
        let kit = match job.what {
            JobKind::BoilOut => self.tables.chemical_kit,
            JobKind::OilChange | JobKind::LightUp | JobKind::Filter | JobKind::LockUp => self.tables.kit,
        };
        let missing = |step: &&'static Step| step.holds.iter().any(|hold| !job.stands(*hold, now));
        let due = !matches!(stage, Stage::Boiling | Stage::Filled);
        [kit, self.tables.floor].into_iter().filter(|_| due).find(missing)
    }

    fn steps(&self, job: &PanJob, stage: Stage) -> Vec<&'static Step> {
        let tables = &self.tables;
        let cut = job.way == Some(Word::CutOut);
        let either = |one: bool, step, other| if one { step } else { other };
        vec![match stage {
            Stage::How | Stage::Pump => tables.how,
            Stage::HeatOff => either(cut, tables.isolate, tables.heat_off),
            Stage::Temp => tables.temp,
            Stage::Container => tables.container,
            Stage::Taking => either(cut, tables.cut_out, tables.drain),
            Stage::InMachine => tables.in_machine,
            Stage::Clean => tables.clean,
            Stage::Exit => tables.exit,
            Stage::ChangeOver => tables.change_over,
            Stage::FreshIn => either(job.fat.is_some_and(Fat::is_solid), tables.pack, tables.pour),
            Stage::Level => tables.level,
            Stage::BoilEmpty => tables.boil_empty,
            Stage::Water => tables.boil_water,
            Stage::Chemical => tables.boil_chemical,
            Stage::Heat => tables.boil_heat,
            Stage::Boiling => tables.boil_look,
            Stage::MakeSafe => tables.boil_off,
            Stage::Off => return vec![tables.boil_cool, tables.boil_heat],
            Stage::Drain => tables.boil_drain,
            Stage::Rinse => tables.boil_rinse,
            Stage::Fresh | Stage::Filled => return Vec::new(),
        }]
    }
}

/// Whether it is what a pan is fried with, liquid or set.
pub(super) const fn is_oil(contents: Contents) -> bool {
    match contents {
        Contents::Oil | Contents::SetFat => true,
        Contents::CleaningWater | Contents::EmptyWet | Contents::EmptyDry => false,
    }
}

/// The gate of one step; what is seen at one place is named in one answer.
fn gate(step: &'static Step, pan: Option<&Pan>) -> Gate {
    let asked = single(step, pan);
    let plain: Vec<(u8, Question)> = step.asks.iter().map(|ask| ask.together).zip(asked.questions).collect();
    Gate {
        questions: grouped(plain),
        ..asked
    }
}

/// Leaves out the ways this fat cannot go: what is set at 40 °C does not drain by hand, what does not set is not cut.
fn offered(mut gate: Gate, pan: &PanNow, scene: &Scene) -> Gate {
    let set = pan.contents == Contents::SetFat;
    let may_set = set || pan.pan.fat.is_solid() || pan.pan.fat == Fat::PalmOlein;
    let pumps = scene.machines.iter().any(|m| m.machine.out_by != OutBy::Hand);
    for question in &mut gate.questions {
        if let QuestionKind::Look {
            item: Item::OutWay,
            answers,
        } = &mut question.kind
        {
            answers.retain(|a| {
                (a.word != Word::ByHand || !(set || pan.pan.fat.is_set_at_40c()))
                    && (a.word != Word::CutOut || may_set)
                    && (a.word != Word::Pumped || pumps)
            });
        }
    }
    gate
}
