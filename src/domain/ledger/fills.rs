//! Fold: the fills of every pan, in oil order. Entries name pans; the fill they belong to is found here, by time.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::Fill;
use crate::domain::ids::{EntryId, MachineId, PanId};
use crate::domain::print::Print;
use crate::domain::time::Millis;
use crate::domain::units::Volume;

use super::book::Book;
use super::fill::{FillEnd, Filtered, Happened, OilEvent, PanFill};
use super::runs::Runs;
use super::tanks::Tanks;
use crate::domain::sorted::SortedMap;

/// An entry as it stands, and the print of it.
#[derive(Clone, Copy)]
pub(super) struct Said<'a> {
    pub(super) entry: &'a Entry,
    pub(super) print: Print,
}

/// Where a run has a pan's oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Out {
    /// The machine it stands in, if it is one.
    pub(super) machine: Option<MachineId>,
    /// Since when.
    pub(super) since: Millis,
    /// Some of it is still in the pan, and nobody can say how much.
    pub(super) split: bool,
    /// The run began with oil out of the pan, to bring it back.
    pub(super) brings: bool,
    /// That oil was not this pan's own.
    pub(super) strange: bool,
}

/// The oil of one pan through time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct PanOil {
    pub(super) fills: Vec<PanFill>,
    /// When fills and oil changes happened, whether or not they met a fill.
    pub(super) marks: Vec<(Millis, EntryId)>,
    /// Nothing went in since all of it went out.
    pub(super) emptied: bool,
    /// Where a run has its oil, while that is not all in the pan.
    pub(super) out: Option<Out>,
    /// Entries at a time when the log knows of no oil in the pan.
    pub(super) loose: Vec<EntryId>,
}

impl PanOil {
    pub(super) fn open(&mut self) -> Option<&mut PanFill> {
        self.fills.last_mut().filter(|f| f.is_in_pan())
    }
}

/// The fills of every pan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Fills {
    pub(super) pans: SortedMap<PanId, PanOil>,
    pub(super) tanks: Tanks,
    /// The print of every fill that ended, in the order they did.
    pub(super) ended: Print,
}

impl Fills {
    pub(super) fn pan(&self, pan: PanId) -> Option<&PanOil> {
        self.pans.get(&pan)
    }

    pub(super) fn open(&self, pan: PanId) -> Option<&PanFill> {
        self.pans.get(&pan)?.fills.last().filter(|f| f.is_in_pan())
    }

    /// Takes in one entry; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, print: Print, book: &Book, runs: &Runs) {
        let said = Said { entry, print };
        match &entry.fact {
            Fact::Fill(fill) => self.fill(said, fill, book),
            Fact::OilChange(change) => self.changed(said, change.pan),
            Fact::TopUp(f) => self.put(said, f.pan, book, f.amount.volume.ml(), 0, Happened::TopUp(f.clone())),
            Fact::PartChange(f) => {
                let what = Happened::PartChange(f.clone());
                self.put(said, f.pan, book, f.fresh.volume.ml(), f.out.volume.ml(), what);
            }
            Fact::Move(moved) => self.moved(said, moved, book),
            Fact::Service(f) => self.put(said, f.pan, book, 0, 0, Happened::Service(f.clone())),
            Fact::Reading(f) => self.put(said, f.pan, book, 0, 0, Happened::Reading(f.clone())),
            Fact::Sign(f) => {
                if let Some(pan) = f.pan {
                    self.put(said, pan, book, 0, 0, Happened::Sign(f.clone()));
                }
            }
            Fact::Note(f) => {
                if let Some(pan) = f.pan {
                    self.put(said, pan, book, 0, 0, Happened::Noted(f.text.clone()));
                }
            }
            Fact::Run(f) => {
                self.ran(said, f, book);
                if runs.filtered_by(f) {
                    self.put(said, f.pan, book, 0, 0, Happened::Filtered(Filtered::Guided(f.run)));
                }
            }
            Fact::MachineCleaned(f) => self.cleaned(said, f.machine),
            Fact::RunNoted(f) => {
                if let Some(how) = Filtered::noted(f.how) {
                    self.put(said, f.pan, book, 0, 0, Happened::Filtered(how));
                }
            }
            Fact::Kitchen(_)
            | Fact::Person(_)
            | Fact::Pan(_)
            | Fact::Machine(_)
            | Fact::Instrument(_)
            | Fact::PanJob(_)
            | Fact::Closed(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::Job(_)
            | Fact::AllergensChecked(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => {}
        }
    }

    /// All oil out of a pan: what is in it or, where that is parked, what stands in a machine.
    fn changed(&mut self, said: Said<'_>, pan: PanId) {
        let oil = self.pans.or_default(pan);
        oil.marks.push((said.entry.at, said.entry.id));
        (oil.emptied, oil.out) = (true, None);
        let mut fills = oil.fills.iter().rev();
        match fills.find(|f| f.ended.is_none()).map(|f| (f.began, f.is_in_pan())) {
            Some((fill, in_pan)) => {
                if !in_pan {
                    self.tanks.drop_fill(fill);
                }
                self.end(said, pan, fill);
            }
            None => oil.loose.push(said.entry.id),
        }
    }

    /// Ends a fill.
    pub(super) fn end(&mut self, said: Said<'_>, pan: PanId, fill: EntryId) {
        let mut fills = self.pans.or_default(pan).fills.iter_mut().rev();
        if let Some(fill) = fills.find(|f| f.began == fill && f.ended.is_none()) {
            fill.ended = Some(FillEnd {
                by: said.entry.id,
                at: said.entry.at,
            });
            fill.print = fill.print.and(said.print);
            self.ended = self.ended.and(fill.print);
        }
    }

    pub(super) fn fill(&mut self, said: Said<'_>, fill: &Fill, book: &Book) {
        let entry = said.entry;
        // What a run left in a machine is not gone because something else went into the pan.
        self.unload(said, fill.pan, book);
        if let Some(began) = self.open(fill.pan).map(|f| f.began) {
            self.end(said, fill.pan, began);
        }
        let oil = self.pans.or_default(fill.pan);
        oil.marks.push((entry.at, entry.id));
        (oil.emptied, oil.out) = (false, None);
        let day = book.day_of(entry.at, entry.off_min);
        oil.fills.push(PanFill {
            pan: fill.pan,
            began: entry.id,
            at: entry.at,
            day,
            fat: fill.fat,
            filled_with: fill.fat,
            age: fill.age,
            first: fill.amount.volume,
            volume: fill.amount.volume,
            fry_min: 0,
            events: Vec::new(),
            cold: Vec::new(),
            ended: None,
            print: said.print.with_day(day),
        });
    }

    /// Books an event, with what it brought and took in millilitres, to the fill that is open at its moment.
    pub(super) fn put(&mut self, said: Said<'_>, pan: PanId, book: &Book, in_ml: u32, out_ml: u32, what: Happened) {
        let Said { entry, print } = said;
        let full = book.pan(pan).map(|p| p.full.ml());
        let oil = self.pans.or_default(pan);
        let Some(fill) = oil.open() else {
            oil.loose.push(entry.id);
            return;
        };
        if in_ml != 0 || out_ml != 0 {
            let held = fill.volume.ml();
            let after = held.saturating_sub(out_ml).saturating_add(in_ml);
            let most = full.map_or(Volume::MAX.ml(), |full| full.max(held.saturating_sub(out_ml)));
            fill.volume = Volume::from_ml(after.min(most)).unwrap_or(Volume::MAX);
        }
        if let Happened::Service(service) = &what {
            fill.fry_min = fill.fry_min.saturating_add(u32::from(service.fry.get()));
        }
        let day = book.day_of(entry.at, entry.off_min);
        fill.print = fill.print.and(print).with_day(day).with(fill.volume.ml().into());
        fill.events.push(OilEvent {
            id: entry.id,
            at: entry.at,
            day,
            volume: fill.volume,
            what,
        });
    }
}
