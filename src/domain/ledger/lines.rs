//! The log with its corrections applied: what was written, and what of it stands.

use std::mem::discriminant;

use crate::domain::entry::Entry;
use crate::domain::facts::job::JobEvent;
use crate::domain::facts::{Correct, Correction, Fact};
use crate::domain::ids::EntryId;
use crate::domain::sorted::{SortedMap, SortedSet};

/// What became of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Stands {
    /// Nobody changed it.
    AsWritten,
    /// It happened, but otherwise.
    Amended(Box<Entry>),
    /// It did not happen.
    Void,
}

/// One entry, as it was written and as it stands after every correction.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    written: Entry,
    stands: Stands,
    corrections: Vec<EntryId>,
}

impl Line {
    /// An entry nobody has corrected yet.
    pub(super) const fn new(written: Entry) -> Self {
        Self {
            written,
            stands: Stands::AsWritten,
            corrections: Vec::new(),
        }
    }

    pub(super) fn into_written(self) -> Entry {
        self.written
    }

    /// The entry as it was written.
    #[must_use]
    pub const fn written(&self) -> &Entry {
        &self.written
    }

    /// The entry as it stands; `None` once it is void.
    #[must_use]
    pub fn standing(&self) -> Option<&Entry> {
        match &self.stands {
            Stands::AsWritten => Some(&self.written),
            Stands::Amended(entry) => Some(entry),
            Stands::Void => None,
        }
    }

    /// Whether it was taken back.
    #[must_use]
    pub const fn is_void(&self) -> bool {
        matches!(self.stands, Stands::Void)
    }

    /// Whether it stands, but not as written.
    #[must_use]
    pub const fn is_amended(&self) -> bool {
        matches!(self.stands, Stands::Amended(_))
    }

    /// Every correction that speaks of it, in order of cause. On evidence they are remarks and change nothing.
    #[must_use]
    pub fn corrections(&self) -> &[EntryId] {
        &self.corrections
    }

    fn take(&mut self, by: EntryId, how: &Correction) {
        self.corrections.push(by);
        if is_evidence(&self.written.fact) {
            return;
        }
        match how {
            Correction::Void => self.stands = Stands::Void,
            Correction::Amend { at, off_min, fact } => {
                // A voided entry that is amended later stands again, with what earlier corrections said.
                let mut entry = match &self.stands {
                    Stands::Amended(entry) => (**entry).clone(),
                    Stands::AsWritten | Stands::Void => self.written.clone(),
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

/// Whether a fact is evidence, which is remarked upon but never corrected: a look that was taken was taken.
/// A job that was only noted proves nothing and can be put right like any other entry.
#[must_use]
pub fn is_evidence(fact: &Fact) -> bool {
    match fact {
        Fact::Run(_) => true,
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
        | Fact::Reading(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::RunNoted(_)
        | Fact::MachineCleaned(_)
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

/// Applies every correction; entries and lines are both in order of cause, so that the last one wins.
pub(super) fn corrected(entries: Vec<Entry>) -> Vec<Line> {
    let mut lines: Vec<Line> = entries.into_iter().map(Line::new).collect();
    let place: SortedMap<EntryId, usize> = lines.iter().enumerate().map(|(i, l)| (l.written.id, i)).collect();
    let orders: Vec<(usize, EntryId, Correct)> = lines
        .iter()
        .enumerate()
        .filter_map(|(i, l)| correction(&l.written).map(|c| (i, l.written.id, c.clone())))
        .collect();
    let is_order: SortedSet<EntryId> = orders.iter().map(|(_, id, _)| *id).collect();

    // A correction can itself be taken back, by a later one; so the latest is heard first.
    for (i, id, order) in orders.iter().rev() {
        let taken_back = lines.get(*i).is_some_and(Line::is_void);
        if taken_back || order.how != Correction::Void || !is_order.contains(&order.of) {
            continue;
        }
        if let Some(target) = place.get(&order.of).filter(|t| *t < i).and_then(|t| lines.get_mut(*t)) {
            target.take(*id, &order.how);
        }
    }
    for (i, id, order) in &orders {
        if lines.get(*i).is_some_and(Line::is_void) || is_order.contains(&order.of) {
            continue;
        }
        if let Some(target) = place.get(&order.of).and_then(|t| lines.get_mut(*t)) {
            target.take(*id, &order.how);
        }
    }
    lines
}
