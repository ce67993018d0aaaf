//! The log with its corrections applied: what was written, and what of it stands.

use std::mem::discriminant;

use crate::domain::entry::Entry;
use crate::domain::facts::job::JobEvent;
use crate::domain::facts::{Correct, Correction, Fact};
use crate::domain::ids::{Dev, EntryId};
use crate::domain::places::Places;
use crate::domain::print::Print;
use crate::domain::sorted::{SortedMap, SortedSet, in_order, sort_places};
use crate::domain::time::Millis;

/// Where an entry stands in oil order.
type OilOrder = (Millis, Millis, Dev, u32);

/// What became of an entry that a correction speaks of.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Fate {
    stands: Stands,
    corrections: Vec<EntryId>,
}

#[derive(Clone, Debug, PartialEq, Eq)]
enum Stands {
    /// Nothing was changed: only remarked upon.
    AsWritten,
    /// It happened, but otherwise.
    Amended(Box<Entry>),
    /// It did not happen.
    Void,
}

impl Fate {
    fn take(&mut self, written: &Entry, by: EntryId, how: &Correction) {
        self.corrections.push(by);
        if is_evidence(&written.fact) {
            return;
        }
        match how {
            Correction::Void => self.stands = Stands::Void,
            Correction::Amend { at, off_min, fact } => {
                // A voided entry that is amended later stands again, with what earlier corrections said.
                let mut entry = match &self.stands {
                    Stands::Amended(entry) => (**entry).clone(),
                    Stands::AsWritten | Stands::Void => written.clone(),
                };
                entry.at = at.unwrap_or(entry.at);
                entry.off_min = off_min.unwrap_or(entry.off_min);
                if let Some(fact) = fact.as_deref()
                    && discriminant(fact) == discriminant(&entry.fact)
                {
                    entry.fact = fact.clone();
                }
                self.stands = Stands::Amended(Box::new(entry));
            }
        }
    }
}

/// One entry, as it was written and as it stands after every correction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Line<'a> {
    written: &'a Entry,
    fate: Option<&'a Fate>,
}

impl<'a> Line<'a> {
    /// The entry as it was written.
    #[must_use]
    pub const fn written(self) -> &'a Entry {
        self.written
    }

    /// The entry as it stands; `None` once it is void.
    #[must_use]
    pub fn standing(self) -> Option<&'a Entry> {
        match self.fate.map(|fate| &fate.stands) {
            None | Some(Stands::AsWritten) => Some(self.written),
            Some(Stands::Amended(entry)) => Some(entry),
            Some(Stands::Void) => None,
        }
    }

    /// The entry as it is shown: as it stands, and once it is void, as it was written.
    #[must_use]
    pub fn shown(self) -> &'a Entry {
        self.standing().unwrap_or(self.written)
    }

    /// Whether it was taken back.
    #[must_use]
    pub fn is_void(self) -> bool {
        self.fate.is_some_and(|fate| fate.stands == Stands::Void)
    }

    /// Whether it stands, but not as written.
    #[must_use]
    pub fn is_amended(self) -> bool {
        self.fate.is_some_and(|fate| matches!(fate.stands, Stands::Amended(_)))
    }

    /// Every correction that speaks of it, in order of cause. On evidence they are remarks and change nothing.
    #[must_use]
    pub fn corrections(self) -> &'a [EntryId] {
        self.fate.map_or(&[], |fate| &fate.corrections)
    }

    /// The print of what it says: of its id, which stands for what was written, and of whatever corrected it.
    pub(super) fn print(self) -> Print {
        let ids = self.corrections().iter();
        ids.fold(print_of(self.written), |print, id| print.with_id(id.0))
    }
}

/// The print of an entry nobody has corrected.
pub(super) const fn print_of(entry: &Entry) -> Print {
    Print::NONE.with_id(entry.id.0)
}

/// Whether a fact is evidence, which is remarked upon but never corrected: a look that was taken was taken.
/// A job that was only noted proves nothing and can be put right like any other entry.
#[must_use]
pub fn is_evidence(fact: &Fact) -> bool {
    match fact {
        Fact::Run(_) | Fact::Trouble(_) => true,
        Fact::Job(job) => job.event != JobEvent::Noted,
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Fill(_)
        | Fact::TopUp(_)
        | Fact::PartChange(_)
        | Fact::Move(_)
        | Fact::OilChange(_)
        | Fact::Service(_)
        | Fact::PanJob(_)
        | Fact::Closed(_)
        | Fact::Reading(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::RunNoted(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_)
        | Fact::Practised(_)
        | Fact::Newer(_) => false,
    }
}

/// The correction an entry carries, if it is one.
pub(super) const fn correction(entry: &Entry) -> Option<&Correct> {
    if let Fact::Correct(correct) = &entry.fact {
        Some(correct)
    } else {
        None
    }
}

/// Every entry with what became of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Lines {
    /// In order of cause.
    written: Vec<Entry>,
    places: Places,
    /// By place; the few that were corrected.
    fates: SortedMap<usize, Fate>,
    /// The places in oil order, of void entries by when they were said to have happened.
    by_oil: Vec<usize>,
    /// Entries that a correction speaks of before they are here.
    awaited: SortedSet<EntryId>,
}

impl Lines {
    /// Puts a log in order of cause, each entry once, and applies its corrections.
    pub(super) fn of(mut entries: Vec<Entry>) -> Self {
        in_order(&mut entries, |e| (e.cause(), e.id));
        let mut places = Places::with_room(entries.len());
        let mut kept = 0;
        entries.retain(|entry| {
            let new = places.add(entry.id.0, kept);
            kept += usize::from(new);
            new
        });
        let mut lines = Self {
            written: entries,
            places,
            ..Self::default()
        };
        lines.correct();
        let mut by_oil: Vec<usize> = (0..lines.len()).collect();
        sort_places(&mut by_oil, &|a, b| lines.order(a) <= lines.order(b));
        lines.by_oil = by_oil;
        lines
    }

    /// Takes in an entry that goes last in order of cause and is corrected by none that is here.
    pub(super) fn push(&mut self, entry: Entry) {
        let (place, order) = (self.written.len(), Some(entry.oil_order()));
        self.places.add(entry.id.0, place);
        self.written.push(entry);
        // Whatever happens now goes last here, too; what is dated back and void entries make it look a little further.
        let later = self.by_oil.iter().rev().take_while(|p| self.order(**p) > order).count();
        self.by_oil.insert(place - later, place);
    }

    /// The entries as they were written, and one more.
    pub(super) fn into_written_with(self, entry: Entry) -> Vec<Entry> {
        let mut written = self.written;
        written.push(entry);
        written
    }

    fn order(&self, place: usize) -> Option<OilOrder> {
        self.at(place).map(|line| line.shown().oil_order())
    }

    pub(super) const fn len(&self) -> usize {
        self.written.len()
    }

    pub(super) fn has(&self, id: EntryId) -> bool {
        self.places.get(id.0).is_some()
    }

    pub(super) fn awaits(&self, id: EntryId) -> bool {
        self.awaited.contains(&id)
    }

    pub(super) fn find(&self, id: EntryId) -> Option<Line<'_>> {
        self.at(self.places.get(id.0)?)
    }

    /// The line at a place in order of cause.
    #[inline(never)]
    pub(super) fn at(&self, place: usize) -> Option<Line<'_>> {
        let written = self.written.get(place)?;
        Some(Line {
            written,
            fate: self.fates.get(&place),
        })
    }

    /// In order of cause.
    pub(super) fn all(&self) -> impl DoubleEndedIterator<Item = Line<'_>> {
        (0..self.len()).filter_map(|place| self.at(place))
    }

    /// In oil order.
    pub(super) fn by_oil(&self) -> impl DoubleEndedIterator<Item = Line<'_>> {
        self.by_oil.iter().filter_map(|place| self.at(*place))
    }

    /// Applies every correction, in order of cause, so that the last one wins.
    fn correct(&mut self) {
        let orders: Vec<(usize, EntryId, Correct)> = (0..)
            .zip(&self.written)
            .filter_map(|(i, entry)| correction(entry).map(|c| (i, entry.id, c.clone())))
            .collect();
        let is_order: SortedSet<EntryId> = orders.iter().map(|(_, id, _)| *id).collect();

        // A correction can itself be taken back, by a later one; so the latest is heard first.
        for (i, id, order) in orders.iter().rev() {
            let of = self.places.get(order.of.0);
            if self.is_void(*i) || order.how != Correction::Void || !is_order.contains(&order.of) {
                continue;
            }
            if let Some(target) = of.filter(|of| of < i) {
                self.take(target, *id, &order.how);
            }
        }
        for (i, id, order) in &orders {
            match self.places.get(order.of.0) {
                None => drop(self.awaited.add(order.of)),
                Some(target) if !self.is_void(*i) && !is_order.contains(&order.of) => {
                    self.take(target, *id, &order.how);
                }
                Some(_) => {}
            }
        }
    }

    fn is_void(&self, place: usize) -> bool {
        self.at(place).is_some_and(Line::is_void)
    }

    fn take(&mut self, place: usize, by: EntryId, how: &Correction) {
        let Some(written) = self.written.get(place) else {
            return;
        };
        let untouched = || Fate {
            stands: Stands::AsWritten,
            corrections: Vec::new(),
        };
        self.fates.or_insert_with(place, untouched).take(written, by, how);
    }
}
