//! The lines of the log screen: newest first, what was taken back or put right shown beside what was written.

use std::cmp::Reverse;

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::ids::{EntryId, PanId, PersonId};
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

/// The lines about `pan`, or all of them, newest first by when they happened.
///
/// A correction is shown on the line it corrects and has a line of its own only while that is not here.
#[must_use]
pub fn history(ledger: &Ledger, pan: Option<PanId>) -> Vec<HistoryLine<'_>> {
    let mut lines: Vec<(&Entry, HistoryLine<'_>)> = ledger
        .lines()
        .iter()
        .filter(|line| correction(line.written()).is_none_or(|c| ledger.line(c.of).is_none()))
        .map(|line| {
            let entry = line.standing().unwrap_or_else(|| line.written());
            (entry, shown(line, entry))
        })
        .filter(|(_, line)| pan.is_none_or(|pan| concerns(line, pan)))
        .collect();
    in_order(&mut lines, |(entry, _)| Reverse(entry.oil_order()));
    lines.into_iter().map(|(_, line)| line).collect()
}

fn shown<'a>(line: &'a Line, entry: &'a Entry) -> HistoryLine<'a> {
    HistoryLine {
        id: entry.id,
        at: entry.at,
        off_min: entry.off_min,
        late: entry.is_late(),
        who: entry.who,
        fact: &entry.fact,
        was: line.is_amended().then_some(line.written()),
        void: line.is_void(),
        corrections: line.corrections(),
    }
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
        Fact::Move(f) => [Some(f.from), Some(f.to)],
        Fact::OilChange(f) => [Some(f.pan), None],
        Fact::Service(f) => [Some(f.pan), None],
        Fact::Reading(f) => [Some(f.pan), None],
        Fact::Sign(f) => [f.pan, None],
        Fact::Note(f) => [f.pan, None],
        Fact::ClaimLost(f) | Fact::ClaimRestored(f) => [Some(f.pan), None],
        Fact::Job(f) => [f.pan, None],
        Fact::Run(f) => [Some(f.pan), None],
        Fact::RunNoted(f) => [Some(f.pan), None],
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Correct(_)
        | Fact::MachineCleaned(_)
        | Fact::Practised(_)
        | Fact::Newer(_) => [None, None],
    }
}
