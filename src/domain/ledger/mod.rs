//! The ledger: everything the log of entries comes to, folded from it and from nothing else.
//!
//! Two orders. Set-up, runs, jobs and corrections follow the order in which they were written (cause); what changes
//! the oil follows the order in which it happened (oil). The same entries give the same ledger, bit for bit, in
//! whatever order they arrive.

mod allergens;
mod blocks;
mod book;
mod claims;
mod contents;
mod dating;
mod days;
mod exposures;
mod fill;
mod fills;
mod history;
mod lines;
mod lows;
mod moves;
mod queries;
mod runs;
mod sheet;
mod tanks;
mod troubles;

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::ids::Dev;
use crate::domain::memo::Memo;
use crate::domain::print::Print;
use crate::domain::time::Millis;

pub use allergens::Checked;
pub use book::Book;
pub use claims::{Because, Evening, Lost, meets};
pub use contents::InPan;
pub use dating::{DateRefusal, check_at, check_redate};
pub use exposures::Met;
pub use fill::{FillEnd, Filtered, Happened, OilEvent, PanFill};
pub use history::{HistoryLine, history, job_up_to, pans, run_up_to};
pub use lines::{Line, is_evidence};
pub use runs::{JobState, Look, RunState};
pub use sheet::{FilterDone, NotDone, PanDay, PutOff, Word};
pub use tanks::Parked;

/// The state of a kitchen, as its log tells it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ledger {
    /// Set-up.
    pub book: Book,
    lines: lines::Lines,
    /// Entries of a kind or version this app does not know.
    newer: usize,
    last_oil: Option<(Millis, Millis, Dev, u32)>,
    runs: runs::Runs,
    fills: fills::Fills,
    meetings: exposures::Meetings,
    claims: claims::Claims,
    allergens: allergens::Allergens,
    contents: contents::PanContents,
    lows: lows::Lows,
    blocks: blocks::Blocks,
    troubles: troubles::Troubles,
    days: days::Days,
    /// What was worked out of it.
    pub kept: Memo,
}

impl Ledger {
    /// Folds a log, in whatever order its entries come. An entry handed in twice counts once.
    #[must_use]
    pub fn replay(entries: &[Entry]) -> Self {
        Self::of(entries.to_vec())
    }

    /// The same of a log that is not needed otherwise: ten years of entries are better not copied.
    #[must_use]
    pub fn of(entries: Vec<Entry>) -> Self {
        let lines = lines::Lines::of(entries);
        let mut ledger = Self::default();
        for (place, line) in (0..).zip(lines.all()) {
            if let Some(entry) = line.standing() {
                ledger.apply_cause(entry, line.print(), place);
            }
            ledger.newer += usize::from(matches!(line.written().fact, Fact::Newer(_)));
        }
        ledger.lines = lines;
        ledger.fold_oil();
        ledger
    }

    /// Takes in one more entry. Cheap for what happens now, however long the log. What is dated back folds the oil
    /// again; an entry written before others that are here, a correction, a new set-up of kitchen or pan, closed days and a word on
    /// a run that is over fold everything again.
    pub fn push(&mut self, entry: Entry) {
        if self.lines.has(entry.id) {
            return;
        }
        if !self.goes_last(&entry) {
            let folded = Self::of(std::mem::take(&mut self.lines).into_written_with(entry));
            let kept = std::mem::replace(self, folded).kept;
            self.kept = kept;
            return;
        }
        let print = lines::print_of(&entry);
        self.apply_cause(&entry, print, self.lines.len());
        self.newer += usize::from(matches!(entry.fact, Fact::Newer(_)));
        if self.last_oil.is_none_or(|last| last < entry.oil_order()) {
            self.apply_oil(&entry, print);
            self.lines.push(entry);
        } else {
            self.lines.push(entry);
            self.fold_oil();
        }
    }

    /// Whether an entry stands last in order of cause and changes nothing of what was folded before it.
    fn goes_last(&self, entry: &Entry) -> bool {
        let recasts = match entry.fact {
            Fact::Kitchen(_) | Fact::Pan(_) | Fact::Closed(_) | Fact::Correct(_) => true,
            // Whether an end was that of a filtering is read off the run as it stands after all that is said of it.
            Fact::Run(ref run) => self.run(run.run).is_some_and(|run| run.ended.is_some()),
            Fact::Person(_)
            | Fact::Machine(_)
            | Fact::Instrument(_)
            | Fact::Fill(_)
            | Fact::TopUp(_)
            | Fact::PartChange(_)
            | Fact::Move(_)
            | Fact::OilChange(_)
            | Fact::Service(_)
            | Fact::PanJob(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Job(_)
            | Fact::RunNoted(_)
            | Fact::MachineCleaned(_)
            | Fact::AllergensChecked(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => false,
        };
        let last = self.lines.all().next_back();
        let last = last.is_none_or(|line| line.written().cause() < entry.cause());
        !recasts && last && !self.lines.awaits(entry.id)
    }

    fn apply_cause(&mut self, entry: &Entry, print: Print, place: usize) {
        self.book.apply(entry, print);
        self.runs.apply(entry, place);
        self.contents.apply(entry);
        self.lows.apply(entry);
        self.blocks.apply(entry);
        self.troubles.apply(entry);
    }

    fn fold_oil(&mut self) {
        let lines = std::mem::take(&mut self.lines);
        (self.fills, self.meetings) = Default::default();
        (self.claims, self.days) = Default::default();
        self.allergens = Default::default();
        for line in lines.by_oil() {
            if let Some(entry) = line.standing() {
                self.apply_oil(entry, line.print());
            }
        }
        self.lines = lines;
    }

    fn apply_oil(&mut self, entry: &Entry, print: Print) {
        self.last_oil = Some(entry.oil_order());
        self.fills.apply(entry, print, &self.book, &self.runs);
        self.meetings.apply(entry, &self.book);
        let lost = self.claims.apply(entry, &self.book, &self.meetings);
        self.allergens.apply(entry, lost);
        self.days.apply(entry, &self.book, &self.runs);
    }
}
