//! What each hold checks beyond its own answers, at the step that lists it.

use super::answers::is_off_sign;
use super::decide::route_of;
use super::gate::{Gate, off_target};
use super::refusal::Refusal;
use super::scene::{MachineNow, PanNow, Scene};
use super::state::{FilterJob, Run, Warm};
use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::run::Heat;
use crate::domain::facts::setup::{Claim, OutBy, Person, Route};
use crate::domain::fat::Fat;
use crate::domain::ids::{MachineId, PersonId};
use crate::domain::procedure::{Act, Hold, StepId};
use crate::domain::time::Now;
use crate::domain::units::{Temp, Volume};
use crate::domain::wait::Standing;

/// Highest oil temperature for emptying by hand: HSE Catering Information Sheet 17.
pub const BY_HAND_MAX: Temp = Temp::celsius(40);
/// No oil is worked with above this: council page on safe fryer use quoting HSE guidance.
pub const NEVER_ABOVE: Temp = Temp::celsius(200);

/// Checks one hold of a gate whose questions were all answered well.
pub(super) fn check(
    hold: Hold,
    gate: &Gate,
    seen: &Evidence,
    job: &FilterJob,
    run: &Run,
    scene: &Scene,
    now: &Now,
) -> Result<(), Refusal> {
    match hold {
        Hold::Person => {
            proved(job, hold, now)?;
            let who = job.who.ok_or(Refusal::ReadyFirst { hold })?;
            person(scene, who, job.supervisor, run.route).map(|_| ())
        }
        Hold::Kit | Hold::Floor | Hold::Dry => proved(job, hold, now),
        Hold::Room => {
            proved(job, hold, now)?;
            room(run)
        }
        Hold::Match => {
            proved(job, hold, now)?;
            claims_meet_nothing(job, run, scene)
        }
        Hold::Temperature => temperature(gate, seen, run, now),
        Hold::WarmUp => warm_up(gate, job, run, scene, now),
        Hold::Level => level(seen, run),
        // Asked here, or seen off earlier in this pan's run and not since lost sight of.
        Hold::HeatOff => {
            let asked = gate.looks().iter().any(|(_, item, _)| is_off_sign(*item));
            if asked || run.heat == Heat::OffSeen {
                Ok(())
            } else {
                Err(Refusal::LookAgainFirst)
            }
        }
        // These are their answers, and the answers were checked.
        Hold::Connected
        | Hold::LookAgain
        | Hold::Scraps
        | Hold::Melt
        | Hold::ClearDry
        | Hold::Container
        | Hold::Lift
        | Hold::Water
        | Hold::Chemical => Ok(()),
    }
}

fn proved(job: &FilterJob, hold: Hold, now: &Now) -> Result<(), Refusal> {
    if job.stands(hold, now) {
        Ok(())
    } else {
        Err(Refusal::ReadyFirst { hold })
    }
}

/// Hold 5: tank litres × (1 − free share) ≥ pan litres at 20 °C × growth at the top of the window.
fn room(run: &Run) -> Result<(), Refusal> {
    let machine = &run.machine.0;
    let has = u64::from(machine.tank.ml()) * u64::from(10_000 - machine.free.cpc()) / 10_000;
    let needs = (u64::from(run.pan.pan.full.ml()) * u64::from(growth_permille(run.limits.high))).div_ceil(1000);
    if has >= needs {
        Ok(())
    } else {
        let volume = |ml: u64| u32::try_from(ml).ok().and_then(Volume::from_ml).unwrap_or(Volume::MAX);
        Err(Refusal::TooSmall {
            needs: volume(needs),
            has: volume(has),
        })
    }
}

/// How much 1,000 parts of oil at 20 °C come to at the top of the window, rounded up: 1.11 to 150 °C, 1.14 to 180,
/// 1.16 to 200 (density fits after Esteban 2012 and Noureddini 1992, extrapolated above 140 °C).
#[must_use]
pub const fn growth_permille(high: Temp) -> u16 {
    match high.dc() {
        ..=1500 => 1110,
        1501..=1800 => 1140,
        _ => 1160,
    }
}

/// Whether oil that stands in the machine may be brought into a pan that is not, or not any more, its own: of the fat
/// the pan is kept with, all of it to its full mark, melted, and nothing a claim of the pan excludes.
pub(super) fn takes_parked(job: &FilterJob, pan: &PanNow, machine: &MachineNow, now: &Now) -> Result<(), Refusal> {
    let mut needs = 0_u32;
    for parked in &machine.holds {
        if parked.fat != pan.pan.fat {
            return Err(Refusal::OtherFat { fat: parked.fat });
        }
        // How much of it is in the machine its own run knows best.
        let volume = parked.volume.ok_or(Refusal::OilOut)?;
        needs = needs.saturating_add(volume.ml());
    }
    if machine.holds.is_empty() {
        return Err(Refusal::NothingParked);
    }
    if needs > pan.pan.full.ml() {
        return Err(Refusal::PanTooSmall {
            needs: Volume::from_ml(needs).unwrap_or(Volume::MAX),
            has: pan.pan.full,
        });
    }
    if pan.pan.fat.is_solid() && machine.machine.heater.is_there() {
        warm(job, now)?;
    }
    claims_meet(job, &pan.claims, machine)
}

/// Hold 6: no claim of the pan meets what the machine has met since its last strip-clean.
fn claims_meet_nothing(job: &FilterJob, run: &Run, scene: &Scene) -> Result<(), Refusal> {
    let machine = scene.machine(run.machine.0.machine).ok_or(Refusal::NoSuchMachine)?;
    claims_meet(job, &run.pan.claims, machine)
}

fn claims_meet(job: &FilterJob, claims: &[Claim], machine: &MachineNow) -> Result<(), Refusal> {
    let mut met = machine.met;
    if job.strange {
        met = met.with(Exposure::Unknown);
    }
    for claim in claims {
        let basis = claim.what == ClaimKind::Halal && !claim.basis.is_empty();
        if let Some(exposure) = met.iter().find(|e| claim.what.excludes(*e, basis)) {
            return Err(Refusal::ClaimMeets {
                claim: claim.what,
                exposure,
                machine: machine.machine.machine,
            });
        }
    }
    Ok(())
}

/// Hold 7: at the probe step the reading lies in the window; at the step that moves oil it is fresh as well.
fn temperature(gate: &Gate, seen: &Evidence, run: &Run, now: &Now) -> Result<(), Refusal> {
    if let Some(dc) = seen.number(Item::OilTemp) {
        let read = i16::try_from(dc)
            .ok()
            .and_then(Temp::from_dc)
            .ok_or(Refusal::Unanswered { item: Item::OilTemp })?;
        in_window(read, run)?;
        if off_target(run, dc) && seen.word(Item::OffTarget).is_none() {
            return Err(Refusal::ReasonNeeded);
        }
    } else if gate.steps.iter().any(|s| s.id == StepId::OilTemp) {
        return Err(Refusal::Unanswered { item: Item::OilTemp });
    } else {
        let reading = run.reading.ok_or(Refusal::ReadingTooOld)?;
        in_window(reading.temp, run)?;
        if !reading.counts(now) {
            return Err(Refusal::ReadingTooOld);
        }
    }
    Ok(())
}

fn in_window(read: Temp, run: &Run) -> Result<(), Refusal> {
    if run.route == Route::Hot && read < run.limits.low {
        Err(Refusal::TooCool {
            read,
            low: run.limits.low,
        })
    } else if read > run.limits.high {
        Err(Refusal::TooHot {
            read,
            high: run.limits.high,
        })
    } else {
        Ok(())
    }
}

/// For a fat that sets, in the pan or as what the machine held last: the warm-up over and unexpired, or a machine whose
/// manual takes solid fat cold. Oil on its way back waits for it only where it stood in the machine since another run,
/// and never for a heater the machine does not have.
fn warm_up(gate: &Gate, job: &FilterJob, run: &Run, scene: &Scene, now: &Now) -> Result<(), Refusal> {
    let back = gate.steps.iter().any(|s| s.act == Act::StartReturn);
    let asked = if back {
        run.came_out && run.pan.pan.fat.is_solid()
    } else {
        may_be_set(job, run, scene)
    };
    if !asked {
        Ok(())
    } else if run.machine.0.heater.is_there() {
        warm(job, now)
    } else if run.machine.0.takes_solid || back {
        Ok(())
    } else {
        Err(Refusal::NoSolidFat)
    }
}

/// Whether fat can have set in pump or hose. Where nobody knows what went through a heated machine, any fat of this
/// kitchen may have.
fn may_be_set(job: &FilterJob, run: &Run, scene: &Scene) -> bool {
    let machine = scene.machine(run.machine.0.machine);
    let held = job.held.or_else(|| machine.and_then(|m| m.last_fat));
    let strange = job.strange && run.machine.0.heater.is_there() && scene.pans.iter().any(|p| p.pan.fat.is_solid());
    run.pan.pan.fat.is_solid() || held.is_some_and(Fat::is_solid) || strange
}

/// The machine's warm-up over and unexpired.
pub(super) fn warm(job: &FilterJob, now: &Now) -> Result<(), Refusal> {
    match job.warm {
        Warm::Cold => Err(Refusal::WarmUpNotBegun),
        Warm::On(wait) => match wait.standing(now) {
            Standing::Over { .. } => Ok(()),
            Standing::Running { left_ms } => Err(Refusal::WarmingUp { left_ms }),
            Standing::AskTime => Err(Refusal::AskTime),
        },
        // Where nobody can say how long the heater has been off, it is too long.
        Warm::Off(left) if left.is_within(now) => Ok(()),
        Warm::Off(_) => Err(Refusal::WarmUpExpired),
    }
}

/// Hold 11: heat only above the mark, and by enough to be above it cold; a low pan is left tagged.
fn level(seen: &Evidence, run: &Run) -> Result<(), Refusal> {
    let level = seen
        .word(Item::Level)
        .or(run.level)
        .ok_or(Refusal::Unanswered { item: Item::Level })?;
    match seen.word(Item::Left) {
        Some(Word::Relit) if level != Word::Enough => Err(Refusal::LevelTooLow),
        Some(Word::Set) if !run.pan.pan.fat.is_solid() => Err(Refusal::DoesNotSet),
        Some(_) if level == Word::Below && !seen.is(Item::Tag, Word::Hung) => {
            Err(Refusal::Unanswered { item: Item::Tag })
        }
        Some(_) => Ok(()),
        None => Err(Refusal::Unanswered { item: Item::Left }),
    }
}

/// Hold 1: a signed-off adult, or a starter with a signed-off supervisor; never under 18 on the hot route. Alone in
/// the kitchen, an adult vouches for themselves.
///
/// # Errors
/// The [`Refusal`] that says who is missing, or why nobody helps.
pub(crate) fn person(
    scene: &Scene,
    who: PersonId,
    supervisor: Option<PersonId>,
    route: Route,
) -> Result<Word, Refusal> {
    let at_pans = scene.person(who).ok_or(Refusal::NoSuchPerson)?;
    if route == Route::Hot && !at_pans.adult {
        return Err(Refusal::UnderAge);
    }
    if signed_off(at_pans, route, scene) {
        let alone = at_pans.by == Some(who);
        return Ok(if alone { Word::Vouched } else { Word::Signed });
    }
    let beside = supervisor.ok_or(Refusal::NotSignedOff { route })?;
    let beside = scene.person(beside).ok_or(Refusal::SupervisorNotFit)?;
    let fit = beside.person != who && beside.adult && beside.may_supervise && signed_off(beside, route, scene);
    if fit {
        Ok(Word::Supervised)
    } else {
        Err(Refusal::SupervisorNotFit)
    }
}

/// The same before any pan is in hand: by the machine that was named, else by any route the machines here do, the hot one
/// first. Who can do none of them hears it now and not at the pan.
pub(super) fn person_here(
    scene: &Scene,
    machine: Option<MachineId>,
    who: PersonId,
    supervisor: Option<PersonId>,
) -> Result<Word, Refusal> {
    let done = |route| {
        let mut machines = scene.machines.iter().map(|m| &m.machine);
        match machine.and_then(|id| scene.machine(id)) {
            Some(named) => route_of(&named.machine) == route,
            None => scene.machines.is_empty() || machines.any(|m| route_of(m) == route),
        }
    };
    let mut refused = None;
    for route in [Route::Hot, Route::Cold].into_iter().filter(|route| done(*route)) {
        match person(scene, who, supervisor, route) {
            Ok(word) => return Ok(word),
            Err(why) => refused = refused.or(Some(why)),
        }
    }
    Err(refused.unwrap_or(Refusal::NoSuchPerson))
}

fn signed_off(person: &Person, route: Route, scene: &Scene) -> bool {
    let vouches_alone = person.by != Some(person.person) || scene.people.len() == 1 || person.may_supervise;
    person.routes.contains(&route) && person.until.is_none_or(|u| scene.day <= u) && vouches_alone
}

/// Which route a machine does.
pub(super) fn route_fits(scene: &Scene, machine: MachineId, route: Route) -> Result<OutBy, Refusal> {
    let out_by = scene.machine(machine).ok_or(Refusal::NoSuchMachine)?.machine.out_by;
    if (route == Route::Cold) == (out_by == OutBy::Hand) {
        Ok(out_by)
    } else {
        Err(Refusal::WrongMachine)
    }
}
