//! Days the kitchen does not trade although it usually would.

use crate::domain::time::Day;

/// Days in a row on which the kitchen is closed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Closed {
    from: Day,
    to: Day,
    /// Why.
    pub why: Option<String>,
}

/// Why days cannot be closed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotDays {
    /// The last lies before the first.
    Turned,
    /// More than a year: a slip of the finger, or a kitchen that is given up (project default).
    TooMany,
}

impl Closed {
    /// The most days in a row: a year (project default).
    pub const MOST: i64 = 366;

    /// Closed from one day to another, both counted.
    ///
    /// # Errors
    /// [`NotDays`].
    pub fn between(from: Day, to: Day, why: Option<String>) -> Result<Self, NotDays> {
        match to.since(from) {
            turned if turned < 0 => Err(NotDays::Turned),
            many if many >= Self::MOST => Err(NotDays::TooMany),
            _ => Ok(Self { from, to, why }),
        }
    }

    /// The first day.
    #[must_use]
    pub const fn from(&self) -> Day {
        self.from
    }

    /// The last day.
    #[must_use]
    pub const fn to(&self) -> Day {
        self.to
    }

    /// Whether a day is among them.
    #[must_use]
    pub fn has(&self, day: Day) -> bool {
        self.from <= day && day <= self.to
    }
}
