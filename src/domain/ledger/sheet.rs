//! What a day sheet says of one pan on one trading day.

use crate::domain::ids::EntryId;
use crate::domain::time::{Day, Millis};

use super::fill::Filtered;

/// A filtering, and the entry that says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FilterDone {
    /// The entry.
    pub id: EntryId,
    /// When it was finished.
    pub at: Millis,
    /// The trading day it counts for.
    pub day: Day,
    /// With the guide or without.
    pub how: Filtered,
}

/// Somebody's word that a pan was not filtered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotDone {
    /// The entry.
    pub id: EntryId,
    /// When.
    pub at: Millis,
    /// Why.
    pub why: Option<String>,
}

/// One pan on one trading day.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PanDay {
    /// Minutes hot, over every service logged; `None` while none is.
    pub fry_min: Option<u32>,
    /// Whether its heat was put on with the guide.
    pub lit: bool,
    /// Every time it was filtered, in oil order.
    pub filtered: Vec<FilterDone>,
    /// The last word that it was not.
    pub not_done: Option<NotDone>,
    /// Sessions logged since it was last filtered on this day, or since the day began.
    pub(super) worked: u32,
    /// Whether it was lit since then, and no session logged after that.
    pub(super) at_work: bool,
}

impl PanDay {
    /// Whether it was used: fried in, filtered, or lit with nobody saying that nothing was fried.
    #[must_use]
    pub fn used(&self) -> bool {
        !self.filtered.is_empty() || self.fry_min.map_or(self.lit, |min| min > 0)
    }

    /// Sessions worked on this day that it was not filtered after; one it was lit for counts before it is logged.
    pub(super) const fn sessions(&self) -> u32 {
        self.worked.saturating_add(self.at_work as u32)
    }
}

/// What the log says of a pan's filtering on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// It was filtered.
    Filtered(Filtered),
    /// It was not, and somebody said so.
    NotDone,
    /// It was not used, so nothing was to be done.
    NotUsed,
    /// It was used, but its rhythm asks for no filtering yet.
    NotYetDue,
    /// It was used and is still to be filtered.
    Due,
    /// Nobody said anything.
    Silent,
}

/// That a pan's filtering was put off to another day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PutOff {
    /// The last night it was put off.
    pub night: Day,
    /// Why.
    pub why: Option<String>,
    /// How many nights in a row, that one counted.
    pub nights: u32,
}
