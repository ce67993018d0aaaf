//! The answers of a form as they were typed, and what may be wrong with them.

use super::{Field, NO, YES};
use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::fat::Fat;
use crate::domain::sorted::SortedMap;
use crate::domain::units::{Share, Temp};

/// What was typed or chosen, by field. A set is kept as keys with commas between, in the order they were chosen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    typed: SortedMap<Field, String>,
}

impl Answers {
    /// Puts an answer in the place of the one before; an empty one takes it away.
    pub fn put(&mut self, field: Field, value: impl Into<String>) {
        let value = value.into();
        if value.is_empty() {
            self.typed.remove(&field);
        } else {
            self.typed.insert(field, value);
        }
    }

    /// The same, by value.
    #[must_use]
    pub fn with(mut self, field: Field, value: impl Into<String>) -> Self {
        self.put(field, value);
        self
    }

    /// What was typed, as it was typed; empty when nothing was.
    #[must_use]
    pub fn get(&self, field: Field) -> &str {
        self.typed.get(&field).map_or("", String::as_str)
    }

    /// Whether a box is ticked.
    #[must_use]
    pub fn yes(&self, field: Field) -> bool {
        self.get(field) == YES
    }

    /// Ticks a box, or answers it with no.
    pub fn tick(&mut self, field: Field, yes: bool) {
        self.put(field, if yes { YES } else { NO });
    }

    /// The keys of a set.
    pub fn set(&self, field: Field) -> impl Iterator<Item = &str> {
        self.get(field).split(',').filter(|key| !key.is_empty())
    }

    /// Whether a set holds `key`.
    #[must_use]
    pub fn has(&self, field: Field, key: &str) -> bool {
        self.set(field).any(|k| k == key)
    }

    /// The set after `key` was touched: taken in, or taken out. Of a set of two the older goes when a third comes.
    #[must_use]
    pub fn toggled(&self, field: Field, key: &str) -> String {
        let mut keys: Vec<&str> = self.set(field).filter(|k| *k != key).collect();
        if !self.has(field, key) {
            keys.push(key);
            if field == Field::OffSigns && keys.len() > 2 {
                keys.remove(0);
            }
        }
        keys.join(",")
    }

    /// The answers to these fields alone: what is not shown does not count.
    #[must_use]
    pub fn only(&self, shown: &[Field]) -> Self {
        let kept = self.typed.iter().filter(|(field, _)| shown.contains(field));
        Self {
            typed: kept.map(|(field, value)| (*field, value.clone())).collect(),
        }
    }

    /// Every answer with its field, for keeping a form that is not finished.
    pub fn iter(&self) -> impl Iterator<Item = (Field, &str)> {
        self.typed.iter().map(|(field, value)| (*field, value.as_str()))
    }
}

impl FromIterator<(Field, String)> for Answers {
    fn from_iter<T: IntoIterator<Item = (Field, String)>>(iter: T) -> Self {
        let mut answers = Self::default();
        for (field, value) in iter {
            answers.put(field, value);
        }
        answers
    }
}

/// A field that is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// Which.
    pub field: Field,
    /// Why.
    pub why: Fault,
}

/// Why a field is refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Nothing was typed or chosen.
    Missing,
    /// More letters than this.
    TooLong {
        /// The most.
        most: usize,
    },
    /// No number.
    NotANumber,
    /// No time of day.
    NotATime,
    /// No day of the calendar.
    NotADay,
    /// A number or minute of the day outside these, both in the field's own unit.
    OutOfRange {
        /// The least.
        least: u32,
        /// The most.
        most: u32,
    },
    /// A time outside these minutes of the day.
    OutOfHours {
        /// From.
        from: u16,
        /// To.
        to: u16,
    },
    /// Not the code of a country.
    NotACountry,
    /// Another thing here has this name already.
    NameTaken,
    /// The least is not under what the pan holds.
    MinNotUnderFull,
    /// Not two of them.
    NotTwo,
    /// Two signs that show the same kind of thing, so that one fault may hide behind both.
    SameKind,
    /// A pan with this heat has no such thing.
    NotOnThisHeat,
    /// A day that has not come.
    DayAhead,
    /// Longer ago than two years: then its age is not known.
    TooLongAgo,
    /// The food or the fat breaks what the pan is kept for.
    BreaksClaim {
        /// What it is kept for.
        claim: ClaimKind,
        /// What breaks it.
        met: Exposure,
    },
    /// Fresh oil of a fat used here lies at or over the limit already.
    UnderFresh {
        /// The fat.
        fat: Fat,
        /// What it holds fresh, in the limit's own quantity as % m/m.
        fresh: Share,
    },
    /// Under the temperature at which a fat used here can be pumped.
    NotLiquid {
        /// The fat.
        fat: Fat,
        /// It can be pumped from here.
        from: Temp,
    },
    /// The lowest is not under the highest.
    WindowTurned,
    /// Outside the window.
    OutsideWindow,
    /// Under eighteen: never on the hot route, never beside a starter.
    UnderAge,
    /// Nobody signed them off.
    NobodySigned,
    /// Only in a kitchen where nobody else can sign them off.
    NotAlone,
}
