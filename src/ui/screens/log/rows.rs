//! The lines of the log in words, made once for each change of the log.

use crate::domain::facts::Fact;
use crate::domain::facts::job::Grade;
use crate::domain::ids::{EntryId, PanId, PersonId};
use crate::domain::ledger::{Book, HistoryLine};
use crate::domain::time::{Millis, Now};
use crate::kitchen::log::{Fold, FoldOf, LogItem, days};
use crate::ui::bench::LiveKitchen;
use crate::words::log::{Office, office};
use crate::words::screens::log::{self, log};
use crate::words::{Lang, dates, format, log_lines, run};

/// A trading day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DayRows {
    /// Its name.
    pub title: String,
    /// Its lines, newest first.
    pub rows: Vec<Row>,
}

/// What a line unfolds into.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unfolds {
    /// What became of one entry.
    Entry(EntryId),
    /// The entries of a run or job.
    Entries {
        /// Them, in the order they happened.
        entries: Vec<EntryId>,
        /// The pan a note beside them is about.
        pan: Option<PanId>,
    },
}

/// A line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// What names it while it is shown.
    pub key: EntryId,
    /// The time it happened.
    pub time: String,
    /// Kind and pan.
    pub about: String,
    /// What was said.
    pub detail: String,
    /// Who.
    pub who: String,
    /// Late, put right, voided, guided or not.
    pub marks: Vec<String>,
    /// Whether it did not happen.
    pub void: bool,
    /// What it unfolds into.
    pub unfolds: Unfolds,
}

/// The newest `most` lines by day, and whether there are more.
pub fn of(kitchen: &LiveKitchen, now: &Now, pan: Option<PanId>, most: usize, lang: Lang) -> (Vec<DayRows>, bool) {
    let (book, today) = (&kitchen.ledger().book, kitchen.today(now));
    let (days, more) = days(kitchen.ledger(), pan, most);
    let rows = days.into_iter().map(|day| DayRows {
        title: dates::day_from(day.day, today, lang),
        rows: day.items.iter().map(|item| row(item, book, lang)).collect(),
    });
    (rows.collect(), more)
}

fn row(item: &LogItem<'_>, book: &Book, lang: Lang) -> Row {
    match item {
        LogItem::Line(line) => Row {
            key: item.key(),
            time: clock(line.at, line.off_min),
            about: log_lines::about(line.fact, book, lang),
            detail: spaced(log_lines::detail(line.fact, book, lang)),
            who: by(line.who, book),
            marks: marks(line, lang),
            void: line.void,
            unfolds: Unfolds::Entry(line.id),
        },
        LogItem::Fold(fold) => Row {
            key: item.key(),
            time: clock(fold.at, fold.off_min),
            about: title(fold, book, lang),
            detail: spaced(ending(fold, lang)),
            who: by(fold.who, book),
            marks: vec![
                log(log::Log::Guided, lang).to_owned(),
                log::entries(fold.lines.len(), lang),
            ],
            void: false,
            unfolds: Unfolds::Entries {
                entries: fold.lines.iter().map(|line| line.id).collect(),
                pan: fold.pan,
            },
        },
    }
}

fn title(fold: &Fold<'_>, book: &Book, lang: Lang) -> String {
    match (fold.of, fold.job, fold.lines.first()) {
        (FoldOf::Job(_), Some(job), _) => run::job_name(job, lang).to_owned(),
        (_, _, Some(line)) => log_lines::about(line.fact, book, lang),
        (_, _, None) => String::new(),
    }
}

fn ending(fold: &Fold<'_>, lang: Lang) -> String {
    match fold.of {
        FoldOf::Run(_) => log_lines::run_ended(fold.left, lang).to_owned(),
        FoldOf::Job(_) if fold.nothing_filtered => log_lines::nothing_filtered(lang).to_owned(),
        FoldOf::Job(_) if fold.over => String::new(),
        FoldOf::Job(_) => log_lines::run_ended(None, lang).to_owned(),
    }
}

fn marks(line: &HistoryLine<'_>, lang: Lang) -> Vec<String> {
    let grade = match line.fact {
        Fact::Job(job) => job.how,
        Fact::RunNoted(noted) => Some(noted.how),
        _ => None,
    };
    // A run not done says its reason in the line; the grade stands there already.
    let grade = grade
        .filter(|how| *how == Grade::Unguided)
        .map(|how| run::grade_name(Some(how), lang));
    let newer = matches!(line.fact, Fact::Newer(_)).then(|| office(Office::Newer, lang));
    [
        line.void.then(|| log(log::Log::Voided, lang)),
        (line.was.is_some() && !line.void).then(|| log(log::Log::PutRight, lang)),
        line.late.then(|| office(Office::Late, lang)),
        grade,
        newer,
    ]
    .into_iter()
    .flatten()
    .map(str::to_owned)
    .collect()
}

fn spaced(words: String) -> String {
    if words.is_empty() { words } else { format!(" {words}") }
}

fn clock(at: Millis, off_min: i16) -> String {
    format::time_of_day(at, off_min)
}

fn by(who: Option<PersonId>, book: &Book) -> String {
    who.map(|id| log_lines::who(book, id)).unwrap_or_default()
}
