//! Fold: the allergen sheet as it was last gone through, and what has happened since that makes it stand open again.

use crate::domain::entry::Entry;
use crate::domain::facts::Fact;
use crate::domain::facts::setup::Pan;
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, PanId, PersonId};
use crate::domain::sorted::SortedMap;
use crate::domain::time::Millis;

/// The sheet as somebody went through it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Checked {
    /// Who.
    pub who: Option<PersonId>,
    /// When.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// What it said.
    pub sheet: String,
}

/// What is known of the sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Allergens {
    pub(super) checked: Option<Checked>,
    /// The first entry since that asks for another look, whatever the sheet says after it.
    pub(super) opened: Option<EntryId>,
    /// The fat last put in each pan.
    fats: SortedMap<PanId, Fat>,
}

impl Allergens {
    /// Takes in one entry, with whether it lost a claim; entries come in oil order.
    pub(super) fn apply(&mut self, entry: &Entry, lost: bool) {
        let opens = match &entry.fact {
            Fact::AllergensChecked(checked) => {
                self.opened = None;
                self.checked = Some(Checked {
                    who: entry.who,
                    at: entry.at,
                    off_min: entry.off_min,
                    sheet: checked.sheet.clone(),
                });
                false
            }
            Fact::Fill(fill) => self.other_fat(fill.pan, fill.fat),
            // A top-up of another fat makes what is in the pan another one, and the next fill of its own changes it back.
            Fact::TopUp(topup) => self.other_fat(topup.pan, topup.fat),
            Fact::Move(_) => true,
            Fact::Kitchen(_)
            | Fact::Person(_)
            | Fact::Pan(_)
            | Fact::Machine(_)
            | Fact::Instrument(_)
            | Fact::PartChange(_)
            | Fact::OilChange(_)
            | Fact::PanJob(_)
            | Fact::Closed(_)
            | Fact::Service(_)
            | Fact::Reading(_)
            | Fact::Sign(_)
            | Fact::Note(_)
            | Fact::ClaimLost(_)
            | Fact::ClaimRestored(_)
            | Fact::Correct(_)
            | Fact::Job(_)
            | Fact::Run(_)
            | Fact::RunNoted(_)
            | Fact::MachineCleaned(_)
            | Fact::Practised(_)
            | Fact::Trouble(_)
            | Fact::Newer(_) => false,
        };
        if opens || lost {
            self.opened.get_or_insert(entry.id);
        }
    }

    fn other_fat(&mut self, pan: PanId, fat: Fat) -> bool {
        let before = self.fats.insert(pan, fat);
        before.is_some_and(|before| before != fat)
    }

    /// The fats that went into a pan: what was put in last, else what it is kept with.
    pub(super) fn fat(&self, pan: &Pan) -> Fat {
        self.fats.get(&pan.pan).copied().unwrap_or(pan.fat)
    }
}
