//! What stands in the machines: oil that left its pan and is to come back, in parcels that remember whose it is.

use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, MachineId, PanId};
use crate::domain::print::Print;
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;
use crate::domain::units::Volume;

/// Oil of one pan that stands in a machine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parked {
    /// The machine.
    pub machine: MachineId,
    /// The pan it came out of.
    pub pan: PanId,
    /// The fill it is of, by the entry that began it.
    pub fill: EntryId,
    /// The fat.
    pub fat: Fat,
    /// How much; `None` where nobody can say, because some of it is still in the pan.
    pub volume: Option<Volume>,
    /// Since when.
    pub since: Millis,
}

/// A part of a tank: so much of one fill, as it was when it came in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Parcel {
    pub(super) pan: PanId,
    pub(super) fill: EntryId,
    pub(super) fat: Fat,
    pub(super) ml: u32,
    pub(super) since: Millis,
    /// The entry that took it out of its fill.
    pub(super) by: EntryId,
    /// The print of its fill then.
    pub(super) print: Print,
}

/// The tank of every machine.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Tanks(SortedMap<MachineId, Vec<Parcel>>);

impl Tanks {
    pub(super) fn parked(&self) -> impl Iterator<Item = Parked> {
        let all = self
            .0
            .iter()
            .flat_map(|(machine, tank)| tank.iter().map(move |p| (*machine, p)));
        all.map(|(machine, parcel)| Parked {
            machine,
            pan: parcel.pan,
            fill: parcel.fill,
            fat: parcel.fat,
            volume: Volume::from_ml(parcel.ml),
            since: parcel.since,
        })
    }

    pub(super) fn put(&mut self, machine: MachineId, parcel: Parcel) {
        self.0.or_default(machine).push(parcel);
    }

    /// Takes so much out of a tank: of oils that met in it, of each its part.
    pub(super) fn take(&mut self, machine: MachineId, out_ml: u32) -> Vec<Parcel> {
        let tank = self.0.or_default(machine);
        let taken = part_of(tank, out_ml);
        for (left, out) in tank.iter_mut().zip(&taken) {
            left.ml -= out.ml;
        }
        tank.retain(|parcel| parcel.ml > 0);
        taken
    }

    /// Takes all there is of a fill out of every tank.
    pub(super) fn drop_fill(&mut self, fill: EntryId) {
        self.0.values_mut().for_each(|tank| tank.retain(|p| p.fill != fill));
    }

    pub(super) fn holds(&self, fill: EntryId) -> bool {
        self.0.values().flatten().any(|parcel| parcel.fill == fill)
    }
}

/// So much of some parcels, of each its part to the millilitre; all of them where there is no more.
pub(super) fn part_of(parcels: &[Parcel], ml: u32) -> Vec<Parcel> {
    let all: u64 = parcels.iter().map(|p| u64::from(p.ml)).sum();
    let wanted = u64::from(ml).min(all);
    let (mut before, mut given) = (0, 0);
    let part = |parcel: &Parcel| {
        before += u64::from(parcel.ml);
        // Counted from the beginning, so that the parts add up to the whole whatever each was rounded to.
        let upto = before * wanted / all.max(1);
        let ml = u32::try_from(upto - given).unwrap_or(parcel.ml).min(parcel.ml);
        given = upto;
        Parcel { ml, ..*parcel }
    };
    parcels.iter().map(part).collect()
}
