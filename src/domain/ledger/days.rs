//! Fold: day sheets. For each trading day and pan: used, filtered, not done and why, or still without a word.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::rhythm::Rhythm;
use crate::domain::facts::run::{Heat, Left};
use crate::domain::facts::setup::Pan;
use crate::domain::ids::PanId;
use crate::domain::time::Day;

use super::book::Book;
use super::fill::Filtered;
use super::runs::Runs;
use super::sheet::{FilterDone, NotDone, PanDay, PutOff, Word};
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
                sheet.at_work = false;
                sheet.worked += u32::from(service.fry.get() > 0);
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
            | Fact::PanJob(_)
            | Fact::Closed(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::MachineCleaned(_)
            | Fact::AllergensChecked(_)
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
        let sheet = self.sheet_mut(pan, day);
        (sheet.worked, sheet.at_work) = (0, false);
        sheet.filtered.push(FilterDone {
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
                    at: entry.at,
                    why: why.cloned(),
                });
            }
        }
    }

    fn job(&mut self, entry: &Entry, day: Day, job: &JobFact) {
        if let (JobKind::LightUp, Some(pan), Some(Heat::On | Heat::Low)) = (job.what, job.pan, job.heat) {
            let sheet = self.sheet_mut(pan, day);
            (sheet.lit, sheet.at_work) = (true, true);
        }
        if let (JobKind::Filter, JobEvent::Noted, Some(how)) = (job.what, job.event, job.how) {
            match (job.pan, how) {
                (Some(pan), how) => self.noted(entry, pan, day, how, job.why.as_ref()),
                (None, Grade::NotDone) => {
                    let (id, at, why) = (entry.id, entry.at, job.why.clone());
                    self.not_done.insert(day, NotDone { id, at, why });
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
        let done = sheet.and_then(|s| s.filtered.last());
        let due = sheet.is_some_and(|s| self.is_due(pan, day, s));
        if let Some(done) = done.filter(|_| !due) {
            return Word::Filtered(done.how);
        }
        // What was said before it was filtered says nothing of the sessions after it.
        let after = |said: &&NotDone| done.is_none_or(|done| done.at <= said.at);
        if self.not_done(pan.pan, day).filter(after).is_some() {
            return Word::NotDone;
        }
        match sheet {
            Some(_) if due => Word::Due,
            Some(s) if s.used() => Word::NotYetDue,
            Some(s) if s.fry_min.is_some() => Word::NotUsed,
            Some(_) | None => Word::Silent,
        }
    }

    /// Whether as much use as the pan's rhythm allows has gone by since it was filtered, some of it on this day.
    fn is_due(&self, pan: &Pan, day: Day, sheet: &PanDay) -> bool {
        let sheets = || {
            let days = self.pans.get(&pan.pan);
            days.into_iter().flat_map(|days| days.up_to(&day).rev())
        };
        let unfiltered = sheets().take_while(|(_, s)| s.filtered.is_empty());
        let mut used = unfiltered.filter(|(_, s)| s.used());
        match pan.rhythm.unwrap_or(Rhythm::DAILY) {
            Rhythm::Days(every) => {
                let every = usize::from(every.get());
                sheet.used() && used.take(every).count() == every
            }
            Rhythm::Sessions(every) => {
                let (mut sessions, every) = (0, u32::from(every.get()));
                for (_, sheet) in sheets() {
                    sessions += sheet.sessions();
                    if sessions >= every || !sheet.filtered.is_empty() {
                        break;
                    }
                }
                sheet.sessions() > 0 && sessions >= every
            }
            Rhythm::Weekdays(nights) => {
                // One of its nights has come since it was used; a week holds all of them.
                let come = |used: Day| (0..=day.since(used).min(6)).any(|n| nights.has(used.plus(n).weekday_index()));
                sheet.used() && used.any(|(used, _)| come(*used))
            }
        }
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

    /// That the pan's filtering was put off to `day` from the trading day before it, and for how long.
    pub(super) fn put_off(&self, book: &Book, pan: &Pan, day: Day) -> Option<PutOff> {
        let first = self.first.get(&pan.pan)?;
        let mut put_off: Option<PutOff> = None;
        for n in 1..=day.since(*first).max(0) {
            let night = day.plus(-n);
            match self.word(pan, night) {
                Word::NotDone => match &mut put_off {
                    Some(before) => before.nights += 1,
                    None => {
                        let why = self.not_done(pan.pan, night).and_then(|said| said.why.clone());
                        put_off = Some(PutOff { night, why, nights: 1 });
                    }
                },
                Word::NotUsed | Word::NotYetDue => {}
                Word::Silent if !book.is_trading_day(night) => {}
                Word::Filtered(_) | Word::Due | Word::Silent => break,
            }
        }
        put_off
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
        | Fact::PanJob(_)
        | Fact::Closed(_)
        | Fact::Reading(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => false,
    }
}
