//! What the screens of oil change, boil-out and old oil show now, worked out from the machine of the jobs about single
//! pans.

use super::Kitchen;
use super::day::due_in_s;
use crate::domain::evidence::Item;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobFact, JobKind};
use crate::domain::fat::Fat;
use crate::domain::guide::Scene;
use crate::domain::guide::asking::Asking;
use crate::domain::guide::gate::{Gate, QuestionKind};
use crate::domain::ids::{JobId, PanId};
use crate::domain::lifting::drum_g;
use crate::domain::pan_jobs::{PanJob, PanJobs, Refusal, Stage};
use crate::domain::procedure::StepId;
use crate::domain::time::{Millis, Now};
use crate::domain::volume::Packs;
use crate::domain::wait::Standing;
use crate::store::Journal;

/// What a screen about one pan is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Care {
    /// Oil change or boil-out.
    Job(JobKind),
    /// Old oil on its way out of the kitchen.
    Waste,
}

/// Another way than the next thing, asked for by a touch. Nothing of it is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Turn {
    /// The next thing.
    #[default]
    None,
    /// Another way out for the oil.
    How,
    /// A look at the boil before it is due.
    Look,
    /// The water once more on low heat.
    Heat,
    /// Another fat.
    Fat,
    /// The pan is left as it stands.
    Leave,
}

/// What the screen is for now.
#[derive(Clone, Debug, PartialEq)]
pub enum CareNow {
    /// Nothing of it is open.
    Closed,
    /// The oil leaves by a filter run, which is open or is to be begun.
    Pump {
        /// It is open.
        running: bool,
    },
    /// Something is asked.
    Ask(Gate),
    /// Which fat goes in.
    Fat,
    /// On low heat, and no look is due yet.
    Boil,
    /// Nothing is left to do but to end.
    Over,
    /// It cannot go on.
    Shut(Refusal),
}

/// What the screen is for now.
#[must_use]
pub fn now_at(jobs: &PanJobs, scene: &Scene, (pan, care): (PanId, Care), turn: Turn, now: &Now) -> CareNow {
    let kind = match care {
        Care::Job(kind) => kind,
        Care::Waste => {
            let gate = waste_of(jobs, pan).and_then(|job| jobs.waste_gate(job));
            return gate.map_or(CareNow::Closed, CareNow::Ask);
        }
    };
    let Some((job, pan_now)) = jobs.job(pan).filter(|job| job.what == kind).zip(scene.pan(pan)) else {
        return CareNow::Closed;
    };
    if turn == Turn::Leave
        && let Ok(Some(gate)) = jobs.leave_gate(scene, pan, now)
    {
        return CareNow::Ask(gate);
    }
    let gates = match jobs.asks(scene, pan, now) {
        Ok(gates) => gates,
        Err(Refusal::PanInRun) => return CareNow::Pump { running: true },
        Err(why) => return CareNow::Shut(why),
    };
    let stage = jobs.stage(job, pan_now, now);
    let heat_again = |gate: &Gate| turn == Turn::Heat && gate.id() == StepId::BoilHeat;
    let gate = gates.iter().find(|gate| heat_again(gate)).or(gates.first()).cloned();
    match gate {
        None if stage == Stage::Fresh => CareNow::Fat,
        None => CareNow::Over,
        Some(gate) => match gate.id() {
            StepId::ChangeHow if stage == Stage::Pump && turn != Turn::How => CareNow::Pump { running: false },
            StepId::ChangeOver | StepId::FreshIn | StepId::PackIn if turn == Turn::Fat => CareNow::Fat,
            StepId::BoilLook if turn != Turn::Look && !look_is_due(job, now) => CareNow::Boil,
            _ => CareNow::Ask(gate),
        },
    }
}

/// The first old oil of a pan, by the job it came of.
#[must_use]
pub fn waste_of(jobs: &PanJobs, pan: PanId) -> Option<JobId> {
    let waste = jobs.state().waste.iter().find(|waste| waste.pan == pan);
    waste.map(|waste| waste.job)
}

/// The open jobs about single pans, what boils first.
#[must_use]
pub fn open_jobs(jobs: &PanJobs) -> Vec<(JobKind, PanId)> {
    let of = |kind| {
        let jobs = jobs.state().jobs.iter().filter(move |(_, job)| job.what == kind);
        jobs.map(move |(pan, _)| (kind, *pan))
    };
    of(JobKind::BoilOut).chain(of(JobKind::OilChange)).collect()
}

fn look_is_due(job: &PanJob, now: &Now) -> bool {
    let standing = job.next_look(now);
    standing.is_some_and(|standing| !matches!(standing, Standing::Running { .. }))
}

/// The pans whose boil is to be looked at now.
#[must_use]
pub fn looks_due(jobs: &PanJobs, now: &Now) -> Vec<PanId> {
    let jobs = jobs.state().jobs.iter();
    jobs.filter(|(_, job)| look_is_due(job, now))
        .map(|(pan, _)| *pan)
        .collect()
}

/// Seconds since low heat was first seen under the water, and until the next look, none or less when that is due.
#[must_use]
pub fn boil_s(job: &PanJob, now: &Now) -> Option<(i64, i64)> {
    let gone = now.wall.since(job.boiling_since?).max(0) / 1000;
    Some((gone, due_in_s(job.next_look(now)?)))
}

/// What the heaviest container of these packs weighs where a gate asks who carries it, in grams; `None` where no pack
/// was ever counted in.
#[must_use]
pub fn load_g(step: StepId, fat: Option<Fat>, packs: Packs) -> Option<u32> {
    let fat = fat?;
    match step {
        StepId::PackIn => packs.block_g,
        StepId::FreshIn => {
            let full = packs.drum.into_iter().chain(packs.bag);
            full.map(|holds| drum_g(holds, fat)).max()
        }
        _ => None,
    }
}

/// Whether the question on screen is who or what carries it.
#[must_use]
pub fn asks_carry(asking: &Asking) -> bool {
    let question = asking.current(None).map(|question| question.kind);
    matches!(question, Some(QuestionKind::Look { item: Item::Carry, .. }))
}

/// Old oil that waits to be put by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WasteNow {
    /// The pan it came out of.
    pub pan: PanId,
    /// What that pan is called.
    pub name: String,
    /// The machine it cools in; `None` once it stands in its container.
    pub machine: Option<String>,
    /// Since when, and how far the zone was ahead of UTC then.
    pub since: Option<(Millis, i16)>,
}

/// All old oil that waits to be put by.
pub fn waste<J: Journal>(kitchen: &Kitchen<J>) -> Vec<WasteNow> {
    let ledger = kitchen.ledger();
    let standing = kitchen.pan_jobs().state().waste.iter();
    standing
        .map(|waste| {
            let of_it = |fact: &JobFact| fact.job == waste.job && leaves_pan(fact);
            let seen = ledger
                .lines()
                .rev()
                .map(|line| line.written())
                .find(|entry| match &entry.fact {
                    Fact::Job(fact) => of_it(fact),
                    _ => false,
                });
            let machine = waste.machine.and_then(|id| ledger.book.machines.get(&id));
            WasteNow {
                pan: waste.pan,
                name: super::day::pan_name(kitchen, waste.pan),
                machine: machine.map(|machine| machine.name.clone()),
                since: seen.map(|entry| (entry.at, entry.off_min)),
            }
        })
        .collect()
}

/// Whether a step is the one at which oil was last seen to change its place on the way out.
fn leaves_pan(fact: &JobFact) -> bool {
    matches!(
        fact.step,
        Some(StepId::InMachine | StepId::EmptyByHand | StepId::CutOut | StepId::LetOut)
    )
}
