//! Oil between pans and machines: where it can go, what stands against it, what is asked about it once.

use crate::domain::claim::Exposures;
use crate::domain::facts::oil::{Move, Vessel};
use crate::domain::facts::setup::{Claim, OutBy, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::{MachineId, PanId};
use crate::domain::ledger::{DateRefusal, Happened, Ledger, PanFill, Parked, meets};
use crate::domain::time::{Day, Millis};
use crate::domain::units::Volume;
use crate::domain::volume::{DoesNotFit, fits};

use super::refusal::{Doubt, QuickRefusal};

/// Where oil goes from a pan, or what it comes into it from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Other {
    /// Into another pan, or into a machine.
    Into(Vessel),
    /// Out of a machine.
    OutOf(MachineId),
}

impl Other {
    /// The pan, if it is one.
    #[must_use]
    pub const fn pan(self) -> Option<PanId> {
        match self {
            Self::Into(vessel) => vessel.pan(),
            Self::OutOf(_) => None,
        }
    }

    /// Its key in a form.
    #[must_use]
    pub fn key(self) -> String {
        match self {
            Self::Into(Vessel::Pan(pan)) => format!("{:032x}", pan.0),
            Self::Into(Vessel::Machine(machine)) => format!("into-{:032x}", machine.0),
            Self::OutOf(machine) => format!("out-{:032x}", machine.0),
        }
    }

    pub(super) fn from_key(key: &str) -> Option<Self> {
        let id = |text| u128::from_str_radix(text, 16).ok();
        match key.split_once('-') {
            None => id(key).map(|id| Self::Into(Vessel::Pan(PanId(id)))),
            Some(("into", text)) => id(text).map(|id| Self::Into(Vessel::Machine(MachineId(id)))),
            Some(("out", text)) => id(text).map(|id| Self::OutOf(MachineId(id))),
            Some(_) => None,
        }
    }
}

/// Where oil of `pan` can go, and out of what oil can come into it: the other pans, then the machines with a tank.
#[must_use]
pub fn others(ledger: &Ledger, pan: PanId) -> Vec<Other> {
    let book = &ledger.book;
    let filled = ledger.fill(pan).is_some() && ledger.oil_left(pan).is_none();
    let pans = book.pans_in_use().into_iter().map(|p| p.pan);
    let pans = pans.filter(|other| filled && *other != pan);
    let tanks = || book.machines.values().filter(|m| has_tank(m.out_by)).map(|m| m.machine);
    let into = pans
        .map(Vessel::Pan)
        .chain(tanks().filter(|_| filled).map(Vessel::Machine));
    let out = tanks().filter(|machine| !ledger.tank(*machine).is_empty());
    into.map(Other::Into).chain(out.map(Other::OutOf)).collect()
}

/// Whether oil can stand in it: a hand kit's containers are carried away.
const fn has_tank(out_by: OutBy) -> bool {
    match out_by {
        OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn => true,
        OutBy::Hand => false,
    }
}

/// Whether the oil a pan was last filled with is parked: all of it stands in a machine, and no run has it in hand.
pub(super) fn is_parked(ledger: &Ledger, pan: PanId) -> bool {
    let at_hand = ledger.open_runs().any(|run| run.pan == pan);
    let known = |parked: &Parked| parked.pan == pan && parked.volume.is_some();
    let last = ledger.fills(pan).last().filter(|fill| fill.ended.is_none());
    let out = last.is_some_and(|fill| !fill.is_in_pan()) || ledger.out_since(pan).is_some();
    !at_hand && out && ledger.parked().iter().any(known)
}

/// All there is of a pan's oil: in it or, where that is parked, in the machine.
pub(super) fn all_of(ledger: &Ledger, pan: PanId) -> Volume {
    let last = ledger.fills(pan).last().filter(|fill| fill.ended.is_none());
    let parked = ledger.parked().into_iter().filter(|parked| {
        let its = last.is_some_and(|fill| fill.began == parked.fill && !fill.is_in_pan());
        parked.pan == pan && its
    });
    let in_pan = ledger.fill(pan).map_or(0, |fill| fill.volume.ml());
    let ml = in_pan + parked.filter_map(|p| p.volume).map(Volume::ml).sum::<u32>();
    Volume::from_ml(ml).unwrap_or(Volume::MAX)
}

/// Whether a move can be true.
pub(super) fn possible(ledger: &Ledger, moved: &Move, day: Day) -> Result<(), QuickRefusal> {
    for machine in [moved.from, moved.to].into_iter().filter_map(Vessel::machine) {
        let has_tank = ledger.book.machine(machine).is_some_and(|m| has_tank(m.out_by));
        if !has_tank {
            return Err(QuickRefusal::NoTank { machine });
        }
        let mut runs = ledger.open_runs();
        if let Some(run) = runs.find(|run| run.machine == Some(machine)) {
            let pan = run.pan;
            return Err(QuickRefusal::MachineInRun { machine, pan });
        }
        // How much of it the machine has nobody knows before the guide has looked.
        if let Some(parked) = ledger.tank(machine).iter().find(|p| p.volume.is_none()) {
            return Err(QuickRefusal::OilOut { pan: parked.pan });
        }
    }
    let has = match moved.from {
        Vessel::Pan(pan) => {
            super::holds(ledger, pan).and_then(|()| super::at_home(ledger, pan))?;
            ledger.fill(pan).map_or(0, |fill| fill.volume.ml())
        }
        Vessel::Machine(machine) => {
            let tank = ledger.tank(machine);
            if tank.is_empty() {
                return Err(QuickRefusal::NoOilIn { machine });
            }
            total(&tank)
        }
    };
    if moved.out.volume.ml() > has {
        let has = Volume::from_ml(has).unwrap_or(Volume::MAX);
        return Err(QuickRefusal::MoreThanThere { from: moved.from, has });
    }
    match (moved.from, moved.to) {
        (Vessel::Machine(_), Vessel::Machine(_)) => Err(QuickRefusal::NoHose),
        (Vessel::Pan(from), Vessel::Machine(machine)) => into_tank(ledger, moved, from, machine, day),
        (_, Vessel::Pan(to)) => into_pan(ledger, moved, to, day),
    }
}

/// Two oils meet in one tank only where they are of one fat, their pans make the same claims, and it holds both hot.
fn into_tank(ledger: &Ledger, moved: &Move, from: PanId, machine: MachineId, day: Day) -> Result<(), QuickRefusal> {
    let tank = ledger.tank(machine);
    let fat = ledger.fill(from).map(|fill| fill.fat);
    if let Some(other) = tank.iter().find(|p| Some(p.fat) != fat || p.fat == Fat::Blend) {
        return Err(QuickRefusal::OtherFatIn {
            machine,
            fat: other.fat,
        });
    }
    let claims = |pan| -> Vec<_> {
        ledger
            .claims_standing(pan, day)
            .iter()
            .map(|claim| claim.what)
            .collect()
    };
    let own = claims(from);
    if let Some(other) = tank.iter().find(|p| claims(p.pan) != own) {
        let pan = other.pan;
        return Err(QuickRefusal::OtherClaimsIn { machine, pan });
    }
    let Some(set_up) = ledger.book.machine(machine) else {
        return Err(QuickRefusal::NoSuchMachine { machine });
    };
    let all = total(&tank).saturating_add(moved.arrived.volume.ml());
    let all = Volume::from_ml(all).unwrap_or(Volume::MAX);
    fits(set_up.tank, set_up.free, all, set_up.high).map_err(|why| {
        let (needs_ml, has_ml) = match why {
            DoesNotFit::TooSmall { needs_ml, has_ml } => (needs_ml, has_ml),
            DoesNotFit::WindowTooHot => (all.ml(), 0),
        };
        QuickRefusal::TankTooSmall {
            machine,
            needs_ml,
            has_ml,
        }
    })
}

/// Oil goes onto a pan only where no claim that stands there meets what it, or the machine it stood in, has met; and
/// where there is room. Both volumes are booked at 20 °C and grow alike, so that what fits cold fits hot.
fn into_pan(ledger: &Ledger, moved: &Move, to: PanId, day: Day) -> Result<(), QuickRefusal> {
    if moved.from == moved.to {
        return Err(QuickRefusal::SamePan { pan: to });
    }
    let filled = ledger.fill(to);
    let open = ledger.open_runs().any(|run| run.pan == to);
    // Its own oil may be brought back without the guide, once no run has it in hand.
    let its_own = moved
        .from
        .machine()
        .is_some_and(|m| ledger.tank(m).iter().any(|p| p.pan == to));
    if open || filled.is_some() && !its_own {
        super::at_home(ledger, to)?;
    }
    if let Some((claim, exposure)) = broken(ledger, to, brings(ledger, moved.from), day) {
        return Err(QuickRefusal::MoveMeets {
            pan: to,
            claim: claim.what,
            exposure,
            from: moved.from,
        });
    }
    let Some(pan) = ledger.book.pan(to) else { return Ok(()) };
    let room = pan.full.ml().saturating_sub(surely_in_pan(ledger, pan, day));
    if moved.arrived.volume.ml() > room {
        let room = Volume::from_ml(room).unwrap_or(Volume::NONE);
        return Err(QuickRefusal::NoRoom { pan: to, room });
    }
    Ok(())
}

/// What is booked in a pan itself; nothing while a run has it out.
fn in_pan(ledger: &Ledger, pan: PanId) -> u32 {
    let home = ledger.fill(pan).filter(|_| ledger.oil_left(pan).is_none());
    home.map_or(0, |fill| fill.volume.ml())
}

/// What is surely in a pan: what is booked, where nobody can have fried in it since; otherwise no more than its mark,
/// since what left with the food is not logged.
fn surely_in_pan(ledger: &Ledger, pan: &Pan, day: Day) -> u32 {
    let booked = in_pan(ledger, pan.pan);
    let fried = |fill: &PanFill| {
        let services = fill
            .events
            .iter()
            .any(|e| matches!(e.what, Happened::Service(_)) && e.day == day);
        let last = fill.events.iter().rev().find(|e| e.what.is_in_or_out());
        services || last.map_or(fill.day, |e| e.day) < day
    };
    if ledger.fill(pan.pan).is_none_or(fried) {
        booked.min(pan.min.ml())
    } else {
        booked
    }
}

fn total(tank: &[Parked]) -> u32 {
    tank.iter().filter_map(|parked| parked.volume).map(Volume::ml).sum()
}

/// What oil out of a vessel has met.
fn brings(ledger: &Ledger, from: Vessel) -> Exposures {
    match from {
        Vessel::Pan(pan) => ledger.pan_exposures(pan),
        Vessel::Machine(machine) => ledger.machine_exposures(machine),
    }
}

fn broken(ledger: &Ledger, pan: PanId, set: Exposures, day: Day) -> Option<(Claim, crate::domain::claim::Exposure)> {
    let standing = ledger.claims_standing(pan, day).into_iter();
    standing
        .map(|claim| (meets(&claim, set), claim))
        .find_map(|(met, claim)| Some((claim, met?)))
}

/// What of a move is asked about once.
pub(super) fn doubt(ledger: &Ledger, moved: &Move, day: Day) -> Option<Doubt> {
    let fats: Vec<Fat> = match moved.from {
        Vessel::Pan(pan) => ledger.fill(pan).map(|fill| fill.fat).into_iter().collect(),
        Vessel::Machine(machine) => ledger.tank(machine).iter().map(|p| p.fat).collect(),
    };
    match moved.to {
        Vessel::Machine(machine) => {
            let spoilt = broken(ledger, moved.from.pan()?, ledger.machine_exposures(machine), day);
            spoilt.map(|(claim, exposure)| Doubt::CannotGoBack {
                claim: claim.what,
                exposure,
            })
        }
        Vessel::Pan(to) => {
            let pan = ledger.book.pan(to)?;
            let held = ledger.fill(to).filter(|_| in_pan(ledger, to) > 0).map(|fill| fill.fat);
            let other = |fat: Fat| fats.iter().any(|f| *f != fat);
            if let Some(held) = held.filter(|held| other(*held)) {
                return Some(Doubt::Mixes { held });
            }
            if held.is_none() && other(pan.fat) {
                return Some(Doubt::OtherFat { kept: pan.fat });
            }
            let sets = fats.iter().find(|fat| fat.is_solid() && moved.from.machine().is_some());
            sets.map(|fat| Doubt::Melted { fat: *fat })
        }
    }
}

/// Oil comes out of a machine no earlier than the last of it went in.
pub(super) fn dated(ledger: &Ledger, moved: &Move, at: Millis) -> Result<(), DateRefusal> {
    let Some(machine) = moved.from.machine() else {
        return Ok(());
    };
    match ledger.tank(machine).iter().map(|p| p.since).max() {
        Some(earliest) if at < earliest => Err(DateRefusal::BeforeParked { machine, earliest }),
        Some(_) | None => Ok(()),
    }
}
