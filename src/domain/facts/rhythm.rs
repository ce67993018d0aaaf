//! When a pan is filtered: after so many days or sessions of use, or on its own nights of the week.

use std::num::NonZeroU16;

/// How often a pan is filtered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rhythm {
    /// After so many days it was used.
    Days(NonZeroU16),
    /// After so many sessions worked with it, in the middle of a day too.
    Sessions(NonZeroU16),
    /// On these days of the week; one that was missed stands until it is made good.
    Weekdays(Weekdays),
}

impl Rhythm {
    /// Every day it is used: what holds until the owner says otherwise.
    pub const DAILY: Self = Self::Days(NonZeroU16::MIN);
}

/// Days of the week, at least one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Weekdays([bool; 7]);

impl Weekdays {
    /// These, Monday to Sunday; `None` for none of them.
    #[must_use]
    pub fn of(days: [bool; 7]) -> Option<Self> {
        days.contains(&true).then_some(Self(days))
    }

    /// Monday to Sunday.
    #[must_use]
    pub const fn days(self) -> [bool; 7] {
        self.0
    }

    /// Whether a weekday is among them, Monday 0 to Sunday 6.
    #[must_use]
    pub fn has(self, weekday: usize) -> bool {
        self.0.get(weekday) == Some(&true)
    }
}
