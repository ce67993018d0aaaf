//! Fold: oil on its way between pans and machines. A fill that is parked lives on in the machine, and follows its oil.

use crate::domain::facts::oil::{Age, Fill, Move, Vessel};
use crate::domain::facts::run::{Place, RunEvent, RunFact};
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, MachineId, PanId};
use crate::domain::print::Print;
use crate::domain::units::{Amount, Typed, Unit, Volume};

use super::book::Book;
use super::fill::{Happened, OilEvent};
use super::fills::{Fills, Out, Said};
use super::tanks::{Parcel, Parked, part_of};

impl Fills {
    /// Oil moved. No more leaves than was there, and no more arrives than left.
    pub(super) fn moved(&mut self, said: Said<'_>, moved: &Move, book: &Book) {
        let out = moved.out.volume.ml();
        let arrived = moved.arrived.volume.ml();
        let taken = match moved.from {
            Vessel::Pan(pan) => self.out_of_pan(said, pan, moved.to, out, book),
            Vessel::Machine(machine) => {
                self.gather(said, machine, None, book);
                Some(self.tanks.take(machine, out))
            }
        };
        let Some(taken) = taken else {
            // The log knows of no oil there, and somebody moved some all the same.
            if let (Vessel::Pan(from), Vessel::Pan(to)) = (moved.from, moved.to) {
                self.strange_in(said, from, to, moved.arrived, book);
            }
            return;
        };
        for parcel in part_of(&taken, arrived) {
            match moved.to {
                Vessel::Pan(pan) => self.pour_in(said, pan, parcel, moved.from.machine(), book),
                Vessel::Machine(machine) if parcel.ml > 0 => self.tanks.put(machine, parcel),
                Vessel::Machine(_) => {}
            }
        }
        self.settle(said, &taken);
    }

    /// What a step of a run says of where oil is.
    pub(super) fn ran(&mut self, said: Said<'_>, run: &RunFact, book: &Book) {
        let oil = self.pans.or_default(run.pan);
        let (machine, split) = match run.place {
            Place::InPan => return self.home(said, run, book),
            Place::Split => (run.machine, true),
            Place::InMachine => (run.machine, false),
            Place::InContainer | Place::Gone => (None, false),
        };
        let brings = run.event == RunEvent::Began;
        let since = said.entry.at;
        let before = oil.out.unwrap_or(Out {
            machine,
            since,
            split,
            brings,
            strange: brings,
        });
        oil.out = Some(Out {
            machine,
            split,
            brings: before.brings || brings,
            ..before
        });
    }

    /// A run has the pan's oil back in it. One that was begun to bring oil back has emptied the machine.
    fn home(&mut self, said: Said<'_>, run: &RunFact, book: &Book) {
        let oil = self.pans.or_default(run.pan);
        let Some(out) = oil.out.take() else { return };
        let day = |at| book.day_of(at, said.entry.off_min);
        if let Some(fill) = oil.open()
            && day(out.since) != day(said.entry.at)
        {
            fill.cold.push((out.since, Some(said.entry.at)));
            fill.print = fill.print.and(said.print).with(out.since.0.cast_unsigned());
        }
        if let Some(machine) = out.machine.filter(|_| out.brings) {
            if out.strange {
                self.gather(said, machine, Some(run.pan), book);
            }
            let all = self.tanks.take(machine, u32::MAX);
            for parcel in &all {
                self.pour_in(said, run.pan, *parcel, Some(machine), book);
            }
            self.settle(said, &all);
        }
    }

    /// What was in a machine that was taken apart is gone.
    pub(super) fn cleaned(&mut self, said: Said<'_>, machine: MachineId) {
        let all = self.tanks.take(machine, u32::MAX);
        self.settle(said, &all);
    }

    /// Oil that runs left in a machine becomes part of its tank: from now on it goes where the tank's goes.
    fn gather(&mut self, said: Said<'_>, machine: MachineId, but: Option<PanId>, book: &Book) {
        let out = |(pan, oil): (&PanId, &super::fills::PanOil)| {
            let there = oil.out.is_some_and(|out| out.machine == Some(machine));
            (there && Some(*pan) != but).then_some(*pan)
        };
        let pans: Vec<PanId> = self.pans.iter().filter_map(out).collect();
        for pan in pans {
            self.unload(said, pan, book);
        }
    }

    /// The same of one pan.
    pub(super) fn unload(&mut self, said: Said<'_>, pan: PanId, book: &Book) {
        let oil = self.pans.or_default(pan);
        let Some((out, machine)) = oil.out.and_then(|out| Some((out, out.machine?))) else {
            return;
        };
        let Some(all) = oil.open().map(|fill| fill.volume.ml()) else {
            return;
        };
        let parcels = self.out_of_pan(said, pan, Vessel::Machine(machine), all, book);
        for parcel in parcels.into_iter().flatten() {
            let since = out.since;
            self.tanks.put(machine, Parcel { since, ..parcel });
        }
        let oil = self.pans.or_default(pan);
        oil.out = None;
        if let Some(fill) = oil.fills.last_mut()
            && let Some(cold) = fill.cold.last_mut()
        {
            cold.0 = out.since;
            fill.print = fill.print.with(out.since.0.cast_unsigned());
        }
    }

    /// What stands in the machines, by runs or parked.
    pub(super) fn parked(&self) -> Vec<Parked> {
        let left = self.pans.iter().filter_map(|(pan, oil)| {
            let out = oil.out?;
            let fill = self.open(*pan)?;
            Some(Parked {
                machine: out.machine?,
                pan: *pan,
                fill: fill.began,
                fat: fill.fat,
                volume: Some(fill.volume).filter(|_| !out.split),
                since: out.since,
            })
        });
        self.tanks.parked().chain(left).collect()
    }

    /// Takes oil out of a pan; `None` where the log knows of none in it.
    fn out_of_pan(&mut self, said: Said<'_>, pan: PanId, to: Vessel, out: u32, book: &Book) -> Option<Vec<Parcel>> {
        let entry = said.entry;
        let Some(fill) = self.open(pan) else {
            self.pans.or_default(pan).loose.push(entry.id);
            return None;
        };
        let held = fill.volume.ml();
        let parcel = Parcel {
            pan,
            fill: fill.began,
            fat: fill.fat,
            ml: held.min(out),
            since: entry.at,
            by: entry.id,
            print: fill.print,
        };
        let volume = Volume::from_ml(parcel.ml).unwrap_or(Volume::MAX);
        self.put(said, pan, book, 0, parcel.ml, Happened::MovedOut { to, out: volume });
        let oil = self.pans.or_default(pan);
        if parcel.ml > 0 && parcel.ml == held {
            oil.emptied = true;
            if let Some(fill) = oil.open() {
                fill.cold.push((entry.at, None));
            }
        }
        Some(vec![parcel])
    }

    /// Puts a parcel into a pan. A fill that finds nothing but its own oil goes on as it was.
    fn pour_in(&mut self, said: Said<'_>, pan: PanId, parcel: Parcel, from: Option<MachineId>, book: &Book) {
        let Some(arrived) = Volume::from_ml(parcel.ml).filter(|volume| *volume != Volume::NONE) else {
            return;
        };
        // What arrives is what its old fill had become, how much of it and taken out by what, so it is all in the print.
        let print = said.print.and(parcel.print).with_id(parcel.by.0);
        let print = print.with(parcel.ml.into());
        let said = Said { print, ..said };
        let at = said.entry.at;
        let today = book.day_of(at, said.entry.off_min);
        let oil = self.pans.or_default(pan);
        let own = oil
            .fills
            .last_mut()
            .filter(|f| f.began == parcel.fill && f.ended.is_none());
        let untouched = |e: &OilEvent| e.id == parcel.by && e.day == today;
        if let (Some(fill), Some(from)) = (own, from)
            && (!fill.is_in_pan() || fill.events.last().is_some_and(untouched))
        {
            oil.emptied = false;
            if let Some((_, until @ None)) = fill.cold.last_mut() {
                *until = Some(at);
            }
            self.put(said, pan, book, parcel.ml, 0, Happened::Returned { from, arrived });
            return;
        }
        self.begin(said, pan, parcel.fat, arrived, book);
        if let Some(fill) = self.pans.or_default(pan).open()
            && fill.fat != parcel.fat
        {
            fill.fat = Fat::Blend;
        }
        let what = Happened::MovedIn {
            from: parcel.pan,
            from_fill: Some(parcel.fill),
            left: parcel.by,
            arrived,
        };
        self.put(said, pan, book, parcel.ml, 0, what);
    }

    /// Oil of which the log knows nothing.
    fn strange_in(&mut self, said: Said<'_>, from: PanId, pan: PanId, arrived: Amount, book: &Book) {
        self.begin(said, pan, Fat::Blend, arrived.volume, book);
        let what = Happened::MovedIn {
            from,
            from_fill: None,
            left: said.entry.id,
            arrived: arrived.volume,
        };
        let print = said.print.and(Print::NONE);
        self.put(Said { print, ..said }, pan, book, arrived.volume.ml(), 0, what);
    }

    /// Used oil in an empty pan begins a fill there, of an age only its old pan could tell.
    fn begin(&mut self, said: Said<'_>, pan: PanId, fat: Fat, volume: Volume, book: &Book) {
        if self.open(pan).is_some() {
            return;
        }
        let typed = Typed {
            thousandths: volume.ml(),
            unit: Unit::Litres,
        };
        let fill = Fill {
            pan,
            fat,
            amount: Amount { volume, typed },
            batch: None,
            age: Age::Unknown,
        };
        self.fill(said, &fill, book);
        if let Some(fill) = self.pans.or_default(pan).open() {
            fill.volume = Volume::NONE;
        }
    }

    /// Ends the fills of which nothing is left anywhere under their own name.
    fn settle(&mut self, said: Said<'_>, moved: &[Parcel]) {
        for parcel in moved {
            let fills = self.pans.get(&parcel.pan).map_or(&[][..], |oil| &oil.fills);
            let empty = |fill: EntryId| fills.iter().any(|f| f.began == fill && f.volume == Volume::NONE);
            if empty(parcel.fill) && !self.tanks.holds(parcel.fill) {
                self.end(said, parcel.pan, parcel.fill);
            }
        }
    }
}
