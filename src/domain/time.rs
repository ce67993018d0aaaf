//! Moments, trading days and the two clocks, as values handed in. Nothing here reads a clock.

use std::ops::Range;

use chrono::{DateTime, Datelike, NaiveDate, NaiveTime, Weekday};

/// A moment: milliseconds since 1970-01-01T00:00:00Z.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Millis(pub i64);

impl Millis {
    /// One second.
    pub const SECOND: i64 = 1_000;
    /// One minute.
    pub const MINUTE: i64 = 60_000;
    /// One hour.
    pub const HOUR: i64 = 3_600_000;

    /// This moment moved by some milliseconds.
    #[must_use]
    pub const fn plus(self, ms: i64) -> Self {
        Self(self.0.saturating_add(ms))
    }

    /// Milliseconds from `earlier` to this moment; negative when `earlier` lies later.
    #[must_use]
    pub const fn since(self, earlier: Self) -> i64 {
        self.0.saturating_sub(earlier.0)
    }
}

/// Which page life a monotonic reading belongs to; a reload or a kill starts another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PageLife(pub u64);

/// Both clocks at one instant.
///
/// `wall` may be moved by a person or a network; `mono` never runs back but may stand still while the
/// phone sleeps, and means nothing in another page life.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Now {
    /// The wall clock.
    pub wall: Millis,
    /// Milliseconds of the page's own monotonic clock.
    pub mono: i64,
    /// The page life `mono` counts in.
    pub life: PageLife,
    /// Minutes the kitchen's zone is ahead of UTC at `wall`.
    pub off_min: i16,
}

impl Now {
    /// The minute of the day on the kitchen's own clock.
    #[must_use]
    pub fn minute_of_day(&self) -> u16 {
        let local = self.wall.plus(i64::from(self.off_min) * Millis::MINUTE);
        // The rest of a division by 1440.
        (local.0.div_euclid(Millis::MINUTE).rem_euclid(1_440)) as u16
    }
}

/// A trading day, named by its local date; it rolls over at the hour the owner set, not at midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(NaiveDate);

impl Day {
    /// The trading day a moment belongs to.
    ///
    /// `off_min` is the zone's offset at that moment in minutes, `start_min` the minute of the day it rolls over.
    #[must_use]
    pub fn of(at: Millis, off_min: i16, start_min: u16) -> Self {
        let local = at.plus((i64::from(off_min) - i64::from(start_min)) * Millis::MINUTE);
        let date = DateTime::from_timestamp_millis(local.0).map_or(NaiveDate::MIN, |t| t.date_naive());
        Self(date)
    }

    /// The day a date stands for as ISO 8601 writes it, years 0 to 9999: "2026-01-31". `None` for any other spelling
    /// and for a day the calendar does not have.
    #[must_use]
    pub fn spelt(word: &str) -> Option<Self> {
        let bytes = word.as_bytes();
        if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' {
            return None;
        }
        let [year, month, day] = [(0..4, 9999), (5..7, 12), (8..10, 31)].map(|(at, most)| figures(word, at, most));
        let date = NaiveDate::from_ymd_opt(
            i32::try_from(year?).ok()?,
            u32::try_from(month?).ok()?,
            u32::try_from(day?).ok()?,
        );
        date.map(Self)
    }

    /// The day with this date.
    #[must_use]
    pub const fn from_date(date: NaiveDate) -> Self {
        Self(date)
    }

    /// Its date.
    #[must_use]
    pub const fn date(self) -> NaiveDate {
        self.0
    }

    /// Monday 0 … Sunday 6.
    #[must_use]
    pub fn weekday_index(self) -> usize {
        match self.0.weekday() {
            Weekday::Mon => 0,
            Weekday::Tue => 1,
            Weekday::Wed => 2,
            Weekday::Thu => 3,
            Weekday::Fri => 4,
            Weekday::Sat => 5,
            Weekday::Sun => 6,
        }
    }

    /// The day `n` days later (earlier when negative).
    #[must_use]
    pub fn plus(self, n: i64) -> Self {
        Self(self.0.checked_add_signed(chrono::TimeDelta::days(n)).unwrap_or(self.0))
    }

    /// Days from `earlier` to this one.
    #[must_use]
    pub fn since(self, earlier: Self) -> i64 {
        self.0.signed_duration_since(earlier.0).num_days()
    }

    /// The moment this trading day begins, under one zone offset.
    #[must_use]
    pub fn begins(self, off_min: i16, start_min: u16) -> Millis {
        let midnight = self.0.and_time(NaiveTime::MIN).and_utc().timestamp_millis();
        Millis(midnight).plus((i64::from(start_min) - i64::from(off_min)) * Millis::MINUTE)
    }
}

/// The number these places of a word spell, in figures alone; `None` for anything else and over `most`.
#[must_use]
pub fn figures(word: &str, at: Range<usize>, most: i64) -> Option<i64> {
    let figures = word
        .get(at)
        .filter(|text| text.bytes().all(|byte| byte.is_ascii_digit()))?;
    figures.parse().ok().filter(|number| *number <= most)
}
