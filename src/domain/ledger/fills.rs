//! Fold: the fills of every pan, in oil order. Entries name pans; the fill they belong to is found here, by time.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Age, Fill, Move};
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, PanId};
use crate::domain::print::Print;
use crate::domain::time::Millis;
use crate::domain::units::Volume;

use super::book::Book;
use super::fill::{FillEnd, Filtered, Happened, OilEvent, PanFill};
use super::runs::Runs;
use crate::domain::sorted::SortedMap;

/// An entry as it stands, and the print of it.
#[derive(Clone, Copy)]
struct Said<'a> {
    entry: &'a Entry,
    print: Print,
}

/// The oil of one pan through time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct PanOil {
    pub(super) fills: Vec<PanFill>,
    /// When fills and oil changes happened, whether or not they met a fill.
    pub(super) marks: Vec<(Millis, EntryId)>,
    /// The last of fill and oil change was an oil change.
    pub(super) emptied: bool,
    /// Entries at a time when the log knows of no oil in the pan.
    pub(super) loose: Vec<EntryId>,
}

impl PanOil {
    fn open(&mut self) -> Option<&mut PanFill> {
        self.fills.last_mut().filter(|f| f.ended.is_none())
    }

    /// Ends the fill in the pan, and gives its print; `None` for an empty pan.
    fn end(&mut self, said: Said<'_>) -> Option<Print> {
        let fill = self.open()?;
        fill.ended = Some(FillEnd {
            by: said.entry.id,
            at: said.entry.at,
        });
        fill.print = fill.print.and(said.print);
        Some(fill.print)
    }
}

/// The fills of every pan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Fills {
    pans: SortedMap<PanId, PanOil>,
    /// The print of every fill that ended, in the order they did.
    pub(super) ended: Print,
}

impl Fills {
    pub(super) fn pan(&self, pan: PanId) -> Option<&PanOil> {
        self.pans.get(&pan)
    }

    pub(super) fn open(&self, pan: PanId) -> Option<&PanFill> {
        self.pans.get(&pan)?.fills.last().filter(|f| f.ended.is_none())
    }

    /// Takes in one entry; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, print: Print, book: &Book, runs: &Runs) {
        let said = Said { entry, print };
        match &entry.fact {
            Fact::Fill(fill) => self.fill(said, fill, book),
            Fact::OilChange(change) => {
                let oil = self.pans.or_default(change.pan);
                oil.marks.push((entry.at, entry.id));
                oil.emptied = true;
                match oil.end(said) {
                    Some(print) => self.ended = self.ended.and(print),
                    None => oil.loose.push(entry.id),
                }
            }
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
                if runs.filtered_by(f) {
                    self.put(said, f.pan, book, 0, 0, Happened::Filtered(Filtered::Guided(f.run)));
                }
            }
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
            | Fact::MachineCleaned(_)
            | Fact::AllergensChecked(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => {}
        }
    }

    fn fill(&mut self, said: Said<'_>, fill: &Fill, book: &Book) {
        let entry = said.entry;
        let oil = self.pans.or_default(fill.pan);
        oil.marks.push((entry.at, entry.id));
        if let Some(print) = oil.end(said) {
            self.ended = self.ended.and(print);
        }
        oil.emptied = false;
        let day = book.day_of(entry.at, entry.off_min);
        oil.fills.push(PanFill {
            pan: fill.pan,
            began: entry.id,
            at: entry.at,
            day,
            fat: fill.fat,
            age: fill.age,
            first: fill.amount.volume,
            volume: fill.amount.volume,
            fry_min: 0,
            events: Vec::new(),
            ended: None,
            print: said.print.with_day(day),
        });
    }

    fn moved(&mut self, said: Said<'_>, moved: &Move, book: &Book) {
        let source = self.open(moved.from).map(|f| (f.began, f.fat, f.print));
        let out = Happened::MovedOut {
            to: moved.to,
            out: moved.out,
        };
        self.put(said, moved.from, book, 0, moved.out.volume.ml(), out);
        if self.open(moved.to).is_none() {
            // Used oil carried into an empty pan begins a fill there, of an age only its old pan could tell.
            let fill = Fill {
                pan: moved.to,
                fat: source.map_or(Fat::Blend, |(_, fat, _)| fat),
                amount: moved.arrived,
                batch: None,
                age: Age::Unknown,
            };
            self.fill(said, &fill, book);
            if let Some(fill) = self.pans.or_default(moved.to).open() {
                fill.volume = Volume::NONE;
            }
        }
        let arrived = Happened::MovedIn {
            from: moved.from,
            from_fill: source.map(|(began, _, _)| began),
            arrived: moved.arrived,
        };
        // What arrives is what its old fill had become, so it is part of the print.
        let print = said.print.and(source.map_or(Print::NONE, |(_, _, print)| print));
        let said = Said { print, ..said };
        self.put(said, moved.to, book, moved.arrived.volume.ml(), 0, arrived);
    }

    /// Books an event, with what it brought and took in millilitres, to the fill that is open at its moment.
    fn put(&mut self, said: Said<'_>, pan: PanId, book: &Book, in_ml: u32, out_ml: u32, what: Happened) {
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
