//! What the filter job's screen shows now, worked out from the guide and the kitchen as it stands.

use super::{Kitchen, life, oil};
use crate::domain::entry::Entry;
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::run::{Form, Left, Place, Plan, Pump, RunEvent};
use crate::domain::facts::setup::{Machine, OutBy, Route};
use crate::domain::fat::Fat;
use crate::domain::guide::gate::Gate;
use crate::domain::guide::scene::MachineNow;
use crate::domain::guide::state::Phase;
use crate::domain::guide::{Command, FilterJob, Guide, Refusal, Run, SHORT_DRAW_MS, Scene, Warm};
use crate::domain::ids::{PanId, PersonId, RunId};
use crate::domain::oil_life::oil_shade;
use crate::domain::procedure::{Hold, Step, StepId};
use crate::domain::time::Now;
use crate::domain::units::{Share, Temp, Volume};
use crate::domain::volume::above_mark_needed;
use crate::domain::wait::Standing;
use crate::store::Journal;

/// What the screen is for now.
#[derive(Clone, Debug, PartialEq)]
pub enum Stage {
    /// No filter job is open.
    Closed,
    /// The clocks disagree about the warm-up: somebody says what time it is.
    AskTime,
    /// Solid fat, and the machine's heater has not been on.
    Heater,
    /// Something is asked.
    Ask(Gate),
    /// Oil moves by pump or drain; only its end is asked.
    Moving(Gate),
    /// Stopped: make safe first.
    Stopped,
    /// Ready stands: which pan is next.
    Choose,
}

/// What somebody at the screen put off for now. Nothing of it is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PutOff {
    /// The machine's heater.
    pub heater: bool,
    /// Bringing back oil that stands out of its pan.
    pub bringing_back: bool,
    /// The run in hand is being left: with its oil out, or to set.
    pub leaving_out: bool,
}

/// What the screen is for now.
#[must_use]
pub fn stage(guide: &Guide, scene: &Scene, put_off: PutOff, now: &Now) -> Stage {
    let Some(job) = guide.job() else {
        return Stage::Closed;
    };
    if job.run.as_ref().is_some_and(|run| run.phase == Phase::Stopped) {
        return Stage::Stopped;
    }
    if put_off.leaving_out
        && let Some(gate) = guide.leave_set_gate().or_else(|| guide.leave_out_gate())
    {
        return Stage::Ask(gate);
    }
    let quiet = job
        .run
        .as_ref()
        .is_none_or(|run| run.pump == Pump::Off && guide.phase(job, run, now) == Phase::Asking);
    if quiet && warm_now(job, now) == WarmNow::AskTime {
        return Stage::AskTime;
    }
    if job.run.is_none() {
        if !put_off.heater && wants_heater(job, scene, now) {
            return Stage::Heater;
        }
        // Oil that stands outside its pan comes before the rest of Ready and before putting away.
        if !put_off.bringing_back
            && choices(guide, scene, now)
                .iter()
                .any(|c| c.comes_back && c.refused.is_none())
        {
            return Stage::Choose;
        }
    }
    match guide.gate(now) {
        None => Stage::Choose,
        Some(gate) if gate.timer().is_some() => Stage::Moving(gate),
        Some(gate) => Stage::Ask(gate),
    }
}

/// The machine in use.
#[must_use]
pub fn machine<'a>(job: &FilterJob, scene: &'a Scene) -> Option<&'a Machine> {
    scene.machine(job.machine?).map(|m| &m.machine)
}

/// How oil leaves the pan in hand; before a machine is chosen, by nozzle.
#[must_use]
pub fn out_by(job: &FilterJob, scene: &Scene) -> OutBy {
    job.run
        .as_ref()
        .map(|run| run.machine.0.out_by)
        .or_else(|| machine(job, scene).map(|m| m.out_by))
        .unwrap_or(OutBy::Nozzle)
}

fn wants_heater(job: &FilterJob, scene: &Scene, now: &Now) -> bool {
    job.warm == Warm::Cold
        && job.away == 0
        && job.stands(Hold::Match, now)
        && machine(job, scene).is_some_and(|m| m.heater.is_there())
        && (scene.pans.iter().any(|p| p.pan.fat.is_solid())
            || holds_solid(job, scene)
            || job
                .machine
                .and_then(|id| scene.machine(id))
                .is_some_and(MachineNow::held_solid))
}

/// Whether fat that sets is parked in the machine: it is melted before it is brought back.
fn holds_solid(job: &FilterJob, scene: &Scene) -> bool {
    let machine = job.machine.and_then(|id| scene.machine(id));
    machine.is_some_and(|m| m.holds.iter().any(|parked| parked.fat.is_solid()))
}

/// Where the machine's warm-up stands, in whole seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WarmNow {
    /// The heater has not been on.
    Cold,
    /// Warming.
    Running {
        /// Seconds left, rounded up.
        left_s: i64,
    },
    /// Warm, heater on.
    Ready,
    /// Warm, heater off.
    Holding {
        /// Seconds until it counts as cold again, rounded up.
        left_s: i64,
    },
    /// Somebody must say what time it is.
    AskTime,
}

/// Where the warm-up stands.
#[must_use]
pub fn warm_now(job: &FilterJob, now: &Now) -> WarmNow {
    let whole = |ms: i64| (ms + 999) / 1000;
    match job.warm {
        Warm::Cold => WarmNow::Cold,
        Warm::On(wait) => match wait.standing(now) {
            Standing::Running { left_ms } => WarmNow::Running { left_s: whole(left_ms) },
            Standing::Over { .. } => WarmNow::Ready,
            Standing::AskTime => WarmNow::AskTime,
        },
        Warm::Off(wait) => match wait.standing(now) {
            Standing::Running { left_ms } => WarmNow::Holding { left_s: whole(left_ms) },
            Standing::Over { .. } | Standing::AskTime => WarmNow::Cold,
        },
    }
}

/// Seconds oil has been moving, by the clocks where they agree, else by whichever says longer.
#[must_use]
pub fn moving_s(run: &Run, now: &Now) -> i64 {
    run.moving_since.map_or(0, |since| {
        since.elapsed_ms(now).unwrap_or_else(|| since.longest_ms(now)) / 1000
    })
}

/// How long the pump ran in all, in seconds, where that is too short to have emptied a pan: a word beside the look at
/// what is left, no hold.
#[must_use]
pub fn short_draw_s(run: &Run) -> Option<i64> {
    run.drew_ms.filter(|ms| *ms < SHORT_DRAW_MS).map(|ms| ms / 1000)
}

/// How long oil moved, in seconds, between two entries of which the first says that it began and the next that it has
/// stopped.
#[must_use]
pub fn ran_s(began: &Entry, ended: &Entry) -> Option<i64> {
    let (Fact::Run(start), Fact::Run(stop)) = (&began.fact, &ended.fact) else {
        return None;
    };
    let moved = start.event == RunEvent::Pump && stop.event == RunEvent::Pump && start.run == stop.run;
    let moving = matches!(start.pump, Pump::Drawing | Pump::Rinsing | Pump::Returning);
    (moved && moving && stop.pump == Pump::Off).then(|| ended.rec.since(began.rec) / 1000)
}

/// A pan that can be begun, or why not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanChoice {
    /// The pan.
    pub pan: PanId,
    /// What it is called.
    pub name: String,
    /// The fat it is kept with.
    pub fat: Fat,
    /// How it was left in this job.
    pub done: Option<Left>,
    /// Its oil stands outside it.
    pub comes_back: bool,
    /// It has no oil of its own: what is parked in the machine can be brought into it.
    pub bare: bool,
    /// Why it cannot be begun now.
    pub refused: Option<Refusal>,
    /// Whether the short form is open to it.
    pub short: bool,
}

/// The pans in use as this job finds them, by name.
#[must_use]
pub fn choices(guide: &Guide, scene: &Scene, now: &Now) -> Vec<PanChoice> {
    let Some(job) = guide.job() else {
        return Vec::new();
    };
    let asked = |pan, form| {
        let command = Command::Begin {
            run: RunId(0),
            pan,
            form,
            plan: Plan::default(),
        };
        guide.decide(scene, &command, now).err()
    };
    let machine = job.machine.and_then(|id| scene.machine(id));
    let parked = machine.is_some_and(|m| !m.holds.is_empty());
    let bare = scene.bare.iter().filter(|_| parked);
    scene
        .pans
        .iter()
        .chain(bare)
        .map(|p| PanChoice {
            pan: p.pan.pan,
            name: p.pan.name.clone(),
            fat: p.pan.fat,
            done: job
                .done
                .iter()
                .rev()
                .find(|(pan, _)| *pan == p.pan.pan)
                .map(|(_, left)| *left),
            comes_back: p.place != Place::InPan,
            bare: scene.bare(p.pan.pan).is_some(),
            refused: asked(p.pan.pan, Form::Long),
            short: asked(p.pan.pan, Form::Short).is_none(),
        })
        .collect()
}

/// The optional parts offered at first: a rinse where the machine's own limits are known.
#[must_use]
pub fn usual_plan(job: &FilterJob, scene: &Scene) -> Plan {
    Plan {
        rinse: machine(job, scene).is_some_and(|m| m.rinse_max_s.is_some() || m.rinse_min_s.is_some()),
        ..Plan::default()
    }
}

/// Whether somebody may stand at the pans.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Yes, in this standing.
    Yes(Word),
    /// Only beside a supervisor; why not alone.
    BesideSupervisor(Refusal),
    /// No.
    No(Refusal),
}

/// Whether somebody may stand at the pans, with whoever is named to stand beside.
#[must_use]
pub fn fit(guide: &Guide, scene: &Scene, person: PersonId, supervisor: Option<PersonId>, now: &Now) -> Fit {
    match guide.decide(scene, &Command::Who { person, supervisor }, now) {
        Ok(drafts) => Fit::Yes(
            drafts
                .iter()
                .find_map(|draft| match &draft.fact {
                    Fact::Job(fact) => fact.evidence.word(Item::SignOff),
                    _ => None,
                })
                .unwrap_or(Word::Signed),
        ),
        Err(why @ Refusal::NotSignedOff { .. }) if supervisor.is_none() => Fit::BesideSupervisor(why),
        Err(why) => Fit::No(why),
    }
}

/// Where a step stands in its stretch of the work: which one, from 1, and of how many.
#[must_use]
pub fn place_in_block(guide: &Guide, step: StepId) -> Option<(&'static Step, usize, usize)> {
    let tables = guide.tables();
    let run = guide.job().and_then(|job| job.run.as_ref());
    let of_run = run.map(|run| guide.run_steps(run)).unwrap_or_default();
    let everywhere = [tables.ready, tables.away, tables.again, tables.again_hand];
    let mut lists = everywhere.iter().map(|steps| steps.iter().collect()).chain([of_run]);
    let steps: Vec<&'static Step> = lists.find(|list: &Vec<&Step>| list.iter().any(|s| s.id == step))?;
    let found = *steps.iter().find(|s| s.id == step)?;
    let set = guide.job().is_some_and(|job| job.set_in_line);
    let asked = |s: &&&Step| s.block == found.block && (set || s.id != StepId::WarmUp);
    let block: Vec<_> = steps.iter().filter(asked).collect();
    let at = block.iter().position(|s| s.id == step)?;
    Some((found, at + 1, block.len()))
}

/// Why a reading will be refused whatever else is answered, if it will: it lies outside the window.
#[must_use]
pub fn outside_window(run: &Run, dc: i32) -> Option<Refusal> {
    let read = Temp::from_dc(i16::try_from(dc).ok()?)?;
    let (low, high) = (run.limits.low, run.limits.high);
    if run.route == Route::Hot && read < low {
        Some(Refusal::TooCool { read, low })
    } else if read > high {
        Some(Refusal::TooHot { read, high })
    } else {
        None
    }
}

/// How far above the mark the oil must stand while it is as hot as it was read, in percent of the way from the mark to
/// full, rounded up to the next five; `None` where nothing must, or the way is unknown. By volume: in a pan with
/// straight walls also by height.
#[must_use]
pub fn above_mark_percent(run: &Run) -> Option<u32> {
    let temp: Temp = run.reading.map_or(run.limits.high, |read| read.temp);
    let pan = &run.pan.pan;
    percent_of_way(above_mark_needed(pan.min, temp)?, pan.min, pan.full)
}

fn percent_of_way(needed_ml: u32, min: Volume, full: Volume) -> Option<u32> {
    let way = full.ml().checked_sub(min.ml()).filter(|ml| *ml > 0)?;
    (needed_ml > 0).then(|| (needed_ml * 100).div_ceil(way).next_multiple_of(5).min(100))
}

/// How dark a pan's oil is drawn, 1–5; fresh where nothing is known of it.
pub fn shade<J: Journal>(kitchen: &Kitchen<J>, pan: PanId, now: &Now) -> u8 {
    let ledger = kitchen.ledger();
    let limit = life::limits(ledger.book.kitchen.as_ref())
        .polar
        .map_or(25.0, Share::percent);
    let life = oil::life(ledger, pan, kitchen.today(now));
    life.as_ref()
        .as_ref()
        .map_or(1, |life| oil_shade(life.polar.median, limit))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_way_above_the_mark_is_told_in_fives_and_never_short() {
        let of = |needed, min, full| percent_of_way(needed, Volume::from_ml(min)?, Volume::from_ml(full)?);
        assert_eq!(of(2_400, 20_000, 28_000), Some(30));
        assert_eq!(of(2_401, 20_000, 28_000), Some(35));
        assert_eq!(of(9_000, 20_000, 28_000), Some(100));
        assert_eq!(of(0, 20_000, 28_000), None);
        assert_eq!(of(2_400, 20_000, 20_000), None);
    }
}
