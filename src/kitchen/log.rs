//! What the log screen shows, worked out: lines newest first by trading day, each run and job folded into one.

use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::facts::run::Left;
use crate::domain::ids::{EntryId, JobId, PanId, PersonId, RunId};
use crate::domain::ledger::{HistoryLine, Ledger, RunState, history, job_up_to, run_up_to};
use crate::domain::time::{Day, Millis};

/// A trading day of the log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LogDay<'a> {
    /// The day.
    pub day: Day,
    /// What happened, newest first.
    pub items: Vec<LogItem<'a>>,
}

/// A line, or a run or job with all of its lines.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LogItem<'a> {
    /// One line.
    Line(HistoryLine<'a>),
    /// A run or job.
    Fold(Fold<'a>),
}

/// What a fold holds the lines of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FoldOf {
    /// A pan's run.
    Run(RunId),
    /// What belongs to a job and to no run.
    Job(JobId),
}

/// A run or job, folded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fold<'a> {
    /// Which.
    pub of: FoldOf,
    /// Which job it is, where it is one.
    pub job: Option<JobKind>,
    /// The pan of a run.
    pub pan: Option<PanId>,
    /// When its last line happened.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// Who began it.
    pub who: Option<PersonId>,
    /// How a run ended; none while it is open, and of jobs.
    pub left: Option<Left>,
    /// Whether it is over.
    pub over: bool,
    /// Whether it is a filter job that is over and filtered no pan.
    pub nothing_filtered: bool,
    /// Its lines, in the order they happened.
    pub lines: Vec<HistoryLine<'a>>,
}

impl LogItem<'_> {
    /// Something that names this item for as long as it is shown: its only or its first entry.
    #[must_use]
    pub fn key(&self) -> EntryId {
        match self {
            Self::Line(line) => line.id,
            Self::Fold(fold) => fold.lines.first().map_or(EntryId(0), |line| line.id),
        }
    }

    fn holds(&self, entry: EntryId) -> bool {
        match self {
            Self::Line(line) => line.id == entry,
            Self::Fold(fold) => fold.lines.iter().any(|line| line.id == entry),
        }
    }
}

/// The newest `most` items about `pan`, or about all, and whether there are more.
#[must_use]
pub fn days(ledger: &Ledger, pan: Option<PanId>, most: usize) -> (Vec<LogDay<'_>>, bool) {
    let mut items = items(ledger, pan);
    let mut days: Vec<LogDay<'_>> = Vec::new();
    for item in items.by_ref().take(most) {
        let (at, off_min) = match &item {
            LogItem::Line(line) => (line.at, line.off_min),
            LogItem::Fold(fold) => (fold.at, fold.off_min),
        };
        let day = ledger.book.day_of(at, off_min);
        match days.last_mut().filter(|last| last.day == day) {
            Some(last) => last.items.push(item),
            None => days.push(LogDay { day, items: vec![item] }),
        }
    }
    (days, items.next().is_some())
}

/// How many items about all pans come before the one that holds `entry`, and what names that one.
#[must_use]
pub fn place(ledger: &Ledger, entry: EntryId) -> Option<(usize, EntryId)> {
    let mut items = items(ledger, None).enumerate();
    items.find_map(|(before, item)| item.holds(entry).then(|| (before, item.key())))
}

/// The items, newest first, worked out as they are taken: a page takes few of many.
fn items<'a>(ledger: &'a Ledger, pan: Option<PanId>) -> Box<dyn Iterator<Item = LogItem<'a>> + 'a> {
    Box::new(history(ledger, pan).filter_map(move |line| match fold_of(line.fact) {
        Some(of) => folded(ledger, of, pan, &line).map(LogItem::Fold),
        None => Some(LogItem::Line(line)),
    }))
}

/// The fold that stands where `line` does: where its newest line is.
fn folded<'a>(ledger: &'a Ledger, of: FoldOf, pan: Option<PanId>, line: &HistoryLine<'a>) -> Option<Fold<'a>> {
    let lines = match of {
        FoldOf::Run(id) => run_up_to(ledger, id, pan, line.id)?,
        FoldOf::Job(id) => job_up_to(ledger, id, pan, line.id)?,
    };
    let mut nothing_filtered = false;
    let (job, pan, who, left, over) = match of {
        FoldOf::Run(id) => {
            let run = ledger.run(id);
            let left = run.and_then(|r| r.ended).map(|(left, _)| left);
            (None, run.map(|r| r.pan), run.and_then(|r| r.by), left, left.is_some())
        }
        FoldOf::Job(id) => {
            let job = ledger.job(id);
            let over = job.is_some_and(|j| j.ended.is_some());
            let filters = job.is_some_and(|j| j.what == JobKind::Filter);
            nothing_filtered = over && filters && !ledger.runs_of(id).any(RunState::filtered);
            (job.map(|j| j.what), None, job.and_then(|j| j.by), None, over)
        }
    };
    Some(Fold {
        of,
        job,
        pan,
        at: line.at,
        off_min: line.off_min,
        who,
        left,
        over,
        nothing_filtered,
        lines,
    })
}

/// A job that was only noted is a line like any other.
fn fold_of(fact: &Fact) -> Option<FoldOf> {
    match fact {
        Fact::Run(run) => Some(FoldOf::Run(run.run)),
        Fact::Job(job) if job.event != JobEvent::Noted => Some(FoldOf::Job(job.job)),
        _ => None,
    }
}
