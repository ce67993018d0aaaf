//! Fold: troubles nobody has said are over, in order of cause.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::trouble::TroubleEvent;
use crate::domain::trouble::Standing;

/// The troubles that stand, oldest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Troubles(Vec<Standing>);

impl Troubles {
    /// Takes in one entry; entries come in order of cause.
    pub(super) fn apply(&mut self, entry: &Entry) {
        let Fact::Trouble(fact) = &entry.fact else { return };
        let known = self.0.iter_mut().find(|standing| standing.is_of(fact));
        match (fact.event, known) {
            (TroubleEvent::Began, None) => self.0.push(Standing {
                what: fact.what,
                pan: fact.pan,
                machine: fact.machine,
                since: entry.at,
                looked: false,
            }),
            (TroubleEvent::Looked, Some(standing)) => standing.looked = true,
            (TroubleEvent::Over, Some(_)) => self.0.retain(|standing| !standing.is_of(fact)),
            (TroubleEvent::Began, Some(_)) | (TroubleEvent::Looked | TroubleEvent::Over, None) => {}
        }
    }

    pub(super) fn standing(&self) -> &[Standing] {
        &self.0
    }
}
