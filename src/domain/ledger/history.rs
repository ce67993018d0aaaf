//! The lines of the log screen: newest first, what was taken back or put right shown beside what was written.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::ids::{EntryId, JobId, PanId, PersonId, RunId};
use crate::domain::time::Millis;

use super::Ledger;
use super::lines::{Line, correction};
use crate::domain::sorted::in_order;

/// One line of the history.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HistoryLine<'a> {
    /// The entry.
    pub id: EntryId,
    /// When it happened, as it stands.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// Whether it was written more than 12 hours after that.
    pub late: bool,
    /// Who did it.
    pub who: Option<PersonId>,
    /// What happened, as it stands; of a voided line, as it was written.
    pub fact: &'a Fact,
    /// What was written, when something else stands now.
    pub was: Option<&'a Entry>,
    /// Whether it was taken back.
    pub void: bool,
    /// The corrections that speak of it; remarks only, on evidence.
    pub corrections: &'a [EntryId],
}

/// The lines about `pan`, or all of them, newest first by when they happened. Worked out as they are taken: a page
/// takes few of many.
///
/// A correction is shown on the line it corrects and has a line of its own only while that is not here.
pub fn history(ledger: &Ledger, pan: Option<PanId>) -> impl Iterator<Item = HistoryLine<'_>> {
    let lines = ledger.lines.by_oil().rev();
    let lines = lines.filter(|line| correction(line.written()).is_none_or(|c| !ledger.lines.has(c.of)));
    lines.filter_map(move |line| shown(line, pan))
}

/// The lines of a run about `pan`, or all of them, in the order they happened, for the newest of them; `None` for
/// any other.
#[must_use]
pub fn run_up_to<'a>(
    ledger: &'a Ledger,
    run: RunId,
    pan: Option<PanId>,
    newest: EntryId,
) -> Option<Vec<HistoryLine<'a>>> {
    up_to(ledger, &ledger.run(run)?.lines, pan, newest)
}

/// The same of the lines of a job that belong to no run.
#[must_use]
pub fn job_up_to<'a>(
    ledger: &'a Ledger,
    job: JobId,
    pan: Option<PanId>,
    newest: EntryId,
) -> Option<Vec<HistoryLine<'a>>> {
    up_to(ledger, &ledger.job(job)?.lines, pan, newest)
}

fn up_to<'a>(
    ledger: &'a Ledger,
    places: &[usize],
    pan: Option<PanId>,
    newest: EntryId,
) -> Option<Vec<HistoryLine<'a>>> {
    let of = ledger.line(newest)?.shown().oil_order();
    let lines = places.iter().filter_map(|place| ledger.lines.at(*place));
    let lines = lines.filter(|line| shown(*line, pan).is_some());
    // Asked of every line of a fold, and for all but one the last already tells.
    if lines.clone().rev().any(|line| line.shown().oil_order() > of) {
        return None;
    }
    let mut lines: Vec<Line<'a>> = lines.collect();
    in_order(&mut lines, |line| line.shown().oil_order());
    Some(lines.into_iter().filter_map(|line| shown(line, pan)).collect())
}

/// A line as it is shown, if it is about `pan`.
fn shown(line: Line<'_>, pan: Option<PanId>) -> Option<HistoryLine<'_>> {
    let entry = line.shown();
    let line = HistoryLine {
        id: entry.id,
        at: entry.at,
        off_min: entry.off_min,
        late: entry.is_late(),
        who: entry.who,
        fact: &entry.fact,
        was: line.is_amended().then_some(line.written()),
        void: line.is_void(),
        corrections: line.corrections(),
    };
    Some(line).filter(|line| pan.is_none_or(|pan| concerns(line, pan)))
}

/// A line that was moved from one pan to another belongs to both.
fn concerns(line: &HistoryLine<'_>, pan: PanId) -> bool {
    let was = line.was.map(|entry| pans(&entry.fact));
    pans(line.fact).contains(&Some(pan)) || was.is_some_and(|pans| pans.contains(&Some(pan)))
}

/// The pans a fact speaks of.
#[must_use]
pub fn pans(fact: &Fact) -> [Option<PanId>; 2] {
    match fact {
        Fact::Pan(f) => [Some(f.pan), None],
        Fact::Fill(f) => [Some(f.pan), None],
        Fact::TopUp(f) => [Some(f.pan), None],
        Fact::PartChange(f) => [Some(f.pan), None],
        Fact::Move(f) => match f.from.pan() {
            Some(from) => [Some(from), f.to.pan()],
            None => [f.to.pan(), None],
        },
        Fact::OilChange(f) => [Some(f.pan), None],
        Fact::Service(f) => [Some(f.pan), None],
        Fact::PanJob(f) => [Some(f.pan), None],
        Fact::Reading(f) => [Some(f.pan), None],
        Fact::Sign(f) => [f.pan, None],
        Fact::Note(f) => [f.pan, None],
        Fact::ClaimLost(f) => [Some(f.pan), None],
        Fact::ClaimRestored(f) => [Some(f.pan), None],
        Fact::Job(f) => [f.pan, None],
        Fact::Run(f) => [Some(f.pan), None],
        Fact::RunNoted(f) => [Some(f.pan), None],
        Fact::Trouble(f) => [f.pan, None],
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Closed(_)
        | Fact::Correct(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_)
        | Fact::Practised(_)
        | Fact::Newer(_) => [None, None],
    }
}
