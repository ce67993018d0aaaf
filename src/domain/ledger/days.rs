//! Fold: day sheets. For each trading day and pan: used, filtered, not done and why, or still without a word.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Heat, Left};
use crate::domain::facts::setup::Pan;
use crate::domain::ids::PanId;
use crate::domain::time::Day;

use super::book::Book;
use super::fill::Filtered;
use super::runs::Runs;
use super::sheet::{FilterDone, NotDone, PanDay, Word};
use crate::domain::sorted::SortedMap;

/// Every day of every pan.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Days {
    pans: SortedMap<PanId, SortedMap<Day, PanDay>>,
    /// A whole job noted as not done, for every pan nobody spoke of otherwise.
    not_done: SortedMap<Day, NotDone>,
    /// The day each pan was first set up.
    first: SortedMap<PanId, Day>,
    /// Every day before this one is judged: what comes in oil order says no more of it.
    judged: Option<Day>,
    /// The judged days on which some pan is open, oldest first.
    open: Vec<Day>,
}

impl Days {
    /// Takes in one entry; entries come in oil order, and the book is that of the whole log.
    pub(super) fn apply(&mut self, entry: &Entry, book: &Book, runs: &Runs) {
        if !says_something(&entry.fact, runs) {
            return;
        }
        let day = book.day_of(entry.at, entry.off_min);
        self.judge_up_to(book, day);
        match &entry.fact {
            Fact::Pan(pan) => {
                self.first.or_insert_with(pan.pan, || day);
            }
            Fact::Service(service) => {
                let sheet = self.sheet_mut(service.pan, day);
                sheet.fry_min = Some(sheet.fry_min.unwrap_or(0).saturating_add(u32::from(service.fry.get())));
            }
            Fact::Run(run) => {
                if run.left == Some(Left::Relit) {
                    self.sheet_mut(run.pan, day).lit = true;
                }
                if runs.filtered_by(run) {
                    self.filtered(entry, run.pan, day, Filtered::Guided(run.run));
                }
            }
            Fact::RunNoted(noted) => self.noted(entry, noted.pan, day, noted.how, noted.why.as_ref()),
            Fact::Job(job) => self.job(entry, day, job),
            Fact::Kitchen(_)
            | Fact::Person(_)
            | Fact::Machine(_)
            | Fact::Instrument(_)
            | Fact::Fill(_)
            | Fact::TopUp(_)
            | Fact::PartChange(_)
            | Fact::Move(_)
            | Fact::OilChange(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::MachineCleaned(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => {}
        }
    }

    /// Judges the days before `day`, of which nothing more is heard; a day that an offset of the zone leads back to is
    /// judged again later, and all after it.
    fn judge_up_to(&mut self, book: &Book, day: Day) {
        match self.judged {
            Some(judged) if day < judged => self.open.retain(|open| *open < day),
            judged => self.open.extend(self.open_between(book, judged.unwrap_or(day), day)),
        }
        self.judged = Some(day);
    }

    fn sheet_mut(&mut self, pan: PanId, day: Day) -> &mut PanDay {
        self.pans.or_default(pan).or_default(day)
    }

    fn filtered(&mut self, entry: &Entry, pan: PanId, day: Day, how: Filtered) {
        self.sheet_mut(pan, day).filtered.push(FilterDone {
            id: entry.id,
            at: entry.at,
            day,
            how,
        });
    }

    fn noted(&mut self, entry: &Entry, pan: PanId, day: Day, how: Grade, why: Option<&String>) {
        match how {
            Grade::Unguided => self.filtered(entry, pan, day, Filtered::Unguided),
            Grade::NotDone => {
                self.sheet_mut(pan, day).not_done = Some(NotDone {
                    id: entry.id,
                    why: why.cloned(),
                });
            }
        }
    }

    fn job(&mut self, entry: &Entry, day: Day, job: &JobFact) {
        if let (JobKind::LightUp, Some(pan), Some(Heat::On | Heat::Low)) = (job.what, job.pan, job.heat) {
            self.sheet_mut(pan, day).lit = true;
        }
        if let (JobKind::Filter, JobEvent::Noted, Some(how)) = (job.what, job.event, job.how) {
            match (job.pan, how) {
                (Some(pan), how) => self.noted(entry, pan, day, how, job.why.as_ref()),
                (None, Grade::NotDone) => {
                    let why = job.why.clone();
                    self.not_done.insert(day, NotDone { id: entry.id, why });
                }
                // Without the guide, but of which pans? That says nothing of any of them.
                (None, Grade::Unguided) => {}
            }
        }
    }

    /// The sheet of one pan on one day, if anything was logged for it.
    pub(super) fn sheet(&self, pan: PanId, day: Day) -> Option<&PanDay> {
        self.pans.get(&pan)?.get(&day)
    }

    /// Why a pan was not filtered on a day, by its own entry or the whole job's.
    pub(super) fn not_done(&self, pan: PanId, day: Day) -> Option<&NotDone> {
        let own = self.sheet(pan, day).and_then(|s| s.not_done.as_ref());
        own.or_else(|| self.not_done.get(&day))
    }

    /// What the log says of a pan's filtering on a day.
    pub(super) fn word(&self, pan: &Pan, day: Day) -> Word {
        let sheet = self.sheet(pan.pan, day);
        if let Some(done) = sheet.and_then(|s| s.filtered.last()) {
            return Word::Filtered(done.how);
        }
        if self.not_done(pan.pan, day).is_some() {
            return Word::NotDone;
        }
        match sheet {
            Some(s) if s.used() && self.is_due(pan, day) => Word::Due,
            Some(s) if s.used() => Word::NotYetDue,
            Some(s) if s.fry_min.is_some() => Word::NotUsed,
            Some(_) | None => Word::Silent,
        }
    }

    /// Whether as many days of use as the pan's rhythm allows have gone by, this one counted.
    fn is_due(&self, pan: &Pan, day: Day) -> bool {
        let rhythm = usize::from(pan.rhythm.unwrap_or(1).max(1));
        let sheets = self
            .pans
            .get(&pan.pan)
            .into_iter()
            .flat_map(|days| days.up_to(&day).rev());
        let unfiltered = sheets.take_while(|(_, s)| s.filtered.is_empty());
        unfiltered.filter(|(_, s)| s.used()).take(rhythm).count() == rhythm
    }

    /// Trading days before `today`, oldest first, on which some pan in use has no word, or was used and left.
    pub(super) fn unanswered(&self, book: &Book, today: Day) -> Vec<Day> {
        let Some(judged) = self.judged else {
            return Vec::new();
        };
        let mut days: Vec<Day> = self.open.iter().copied().filter(|day| *day < today).collect();
        days.extend(self.open_between(book, judged, today));
        days
    }

    /// The days from one up to, not including, another on which some pan in use is open.
    fn open_between(&self, book: &Book, from: Day, to: Day) -> Vec<Day> {
        let span = to.since(from).max(0);
        if span == 0 {
            return Vec::new();
        }
        let pans = book.pans_in_use();
        let open = |day: &Day| pans.iter().any(|pan| self.is_open(book, pan, *day));
        (0..span).map(|n| from.plus(n)).filter(open).collect()
    }

    /// Whether the morning still has to ask about this pan on that day.
    pub(super) fn is_open(&self, book: &Book, pan: &Pan, day: Day) -> bool {
        if self.first.get(&pan.pan).is_none_or(|first| day < *first) {
            return false;
        }
        match self.word(pan, day) {
            Word::Due => true,
            Word::Silent => book.is_trading_day(day),
            Word::Filtered(_) | Word::NotDone | Word::NotUsed | Word::NotYetDue => false,
        }
    }

    /// Days of use in a row, back from `today`, on which the pan was filtered whenever its rhythm asked for it.
    /// Today counts once it is filtered and breaks nothing before; a day without a word ends the row.
    pub(super) fn streak(&self, book: &Book, pan: &Pan, today: Day) -> u32 {
        let Some(first) = self.first.get(&pan.pan) else {
            return 0;
        };
        let mut streak = 0;
        for n in 0..=today.since(*first).max(-1) {
            let day = today.plus(-n);
            match self.word(pan, day) {
                Word::Filtered(_) => streak += 1,
                Word::NotUsed | Word::NotYetDue => {}
                Word::Due | Word::Silent if n == 0 => {}
                Word::Silent if !book.is_trading_day(day) => {}
                Word::NotDone | Word::Due | Word::Silent => break,
            }
        }
        streak
    }

    /// The last filtering of a pan.
    pub(super) fn last_filtered(&self, pan: PanId) -> Option<&FilterDone> {
        self.pans.get(&pan)?.values().rev().find_map(|s| s.filtered.last())
    }
}

/// Whether a day sheet takes note of a fact. Nine entries in ten are steps of a run, and none of theirs but the last
/// needs its day worked out.
fn says_something(fact: &Fact, runs: &Runs) -> bool {
    match fact {
        Fact::Pan(_) | Fact::Service(_) | Fact::RunNoted(_) => true,
        Fact::Run(run) => run.left == Some(Left::Relit) || runs.filtered_by(run),
        Fact::Job(job) => job.heat.is_some() || job.event == JobEvent::Noted,
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Fill(_)
        | Fact::TopUp(_)
        | Fact::PartChange(_)
        | Fact::Move(_)
        | Fact::OilChange(_)
        | Fact::Reading(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::MachineCleaned(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => false,
    }
}
