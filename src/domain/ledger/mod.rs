//! The ledger: everything the log of entries comes to, folded from it and from nothing else.
//!
//! Two orders. Set-up, runs, jobs and corrections follow the order in which they were written (cause); what changes
//! the oil follows the order in which it happened (oil). The same entries give the same ledger, bit for bit, in
//! whatever order they arrive.

mod book;
mod claims;
mod dating;
mod days;
mod empties;
mod exposures;
mod fill;
mod fills;
mod history;
mod lines;
mod lows;
mod queries;
mod runs;
mod sheet;

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::ids::{Dev, EntryId};
use crate::domain::sorted::{SortedMap, SortedSet, in_order};
use crate::domain::time::Millis;

pub use book::Book;
pub use claims::meets;
pub use dating::{DateRefusal, check_at, check_redate};
pub use empties::OilLeft;
pub use exposures::Met;
pub use fill::{FillEnd, Filtered, Happened, OilEvent, PanFill};
pub use history::{HistoryLine, history, pans};
pub use lines::{Line, is_evidence};
pub use runs::{JobState, Look, RunState};
pub use sheet::{FilterDone, NotDone, PanDay, Word};

/// The state of a kitchen, as its log tells it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ledger {
    /// Set-up.
    pub book: Book,
    lines: Vec<Line>,
    index: SortedMap<EntryId, usize>,
    /// Entries that a correction speaks of before they are here.
    awaited: SortedSet<EntryId>,
    last_oil: Option<(Millis, Millis, Dev, u32)>,
    runs: runs::Runs,
    fills: fills::Fills,
    meetings: exposures::Meetings,
    claims: claims::Claims,
    empties: empties::Empties,
    lows: lows::Lows,
    days: days::Days,
}

impl Ledger {
    /// Folds a log, in whatever order its entries come. An entry handed in twice counts once.
    #[must_use]
    pub fn replay(entries: &[Entry]) -> Self {
        Self::fold(entries.to_vec())
    }

    /// Takes in one more entry. Cheap for what happens now; an entry out of order, a correction and a new set-up of
    /// kitchen or pan fold the whole log again.
    pub fn push(&mut self, entry: Entry) {
        if self.index.contains_key(&entry.id) {
            return;
        }
        if self.goes_last(&entry) {
            self.apply_cause(&entry);
            self.apply_oil(&entry);
            self.index.insert(entry.id, self.lines.len());
            self.lines.push(Line::new(entry));
        } else {
            let lines = std::mem::take(&mut self.lines);
            let mut entries: Vec<Entry> = lines.into_iter().map(Line::into_written).collect();
            entries.push(entry);
            *self = Self::fold(entries);
        }
    }

    fn goes_last(&self, entry: &Entry) -> bool {
        let recasts = match entry.fact {
            Fact::Kitchen(_) | Fact::Pan(_) | Fact::Correct(_) => true,
            Fact::Person(_)
            | Fact::Machine(_)
            | Fact::Instrument(_)
            | Fact::Fill(_)
            | Fact::TopUp(_)
            | Fact::PartChange(_)
            | Fact::Move(_)
            | Fact::OilChange(_)
            | Fact::Service(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Job(_)
            | Fact::Run(_)
            | Fact::RunNoted(_)
            | Fact::MachineCleaned(_)
            | Fact::Practised(_)
            | Fact::Newer(_) => false,
        };
        let last = self
            .lines
            .last()
            .is_none_or(|line| line.written().cause() < entry.cause());
        let last_oil = self.last_oil.is_none_or(|last| last < entry.oil_order());
        !recasts && last && last_oil && !self.awaited.contains(&entry.id)
    }

    fn fold(mut entries: Vec<Entry>) -> Self {
        in_order(&mut entries, |e| (e.cause(), e.id));
        let mut seen = SortedSet::new();
        entries.retain(|e| seen.add(e.id));

        let lines = lines::corrected(entries);
        let mut ledger = Self::default();
        ledger.index = lines.iter().enumerate().map(|(i, l)| (l.written().id, i)).collect();
        ledger.awaited = lines
            .iter()
            .filter_map(|l| lines::correction(l.written()).map(|c| c.of))
            .filter(|of| !ledger.index.contains_key(of))
            .collect();
        let mut standing: Vec<&Entry> = lines.iter().filter_map(Line::standing).collect();
        for entry in &standing {
            ledger.apply_cause(entry);
        }
        in_order(&mut standing, |e| e.oil_order());
        for entry in &standing {
            ledger.apply_oil(entry);
        }
        ledger.lines = lines;
        ledger
    }

    fn apply_cause(&mut self, entry: &Entry) {
        self.book.apply(entry);
        self.runs.apply(entry);
        self.empties.apply(entry);
        self.lows.apply(entry);
    }

    fn apply_oil(&mut self, entry: &Entry) {
        self.last_oil = Some(entry.oil_order());
        self.fills.apply(entry, &self.book, &self.runs);
        self.meetings.apply(entry);
        self.claims.apply(entry, &self.book);
        self.days.apply(entry, &self.book, &self.runs);
    }
}
