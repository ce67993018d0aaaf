//! Words and whole numbers as stored: each is checked once, where it enters, and has exactly one spelling.

use std::borrow::Cow;

use chrono::{Datelike, NaiveDate};

use super::stored::{self, Stored, odd};
use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::{job, oil, run, setup, trouble};
use crate::domain::fat::Fat;
use crate::domain::ids::{Dev, EntryId, InstrumentId, JobId, KitchenId, MachineId, PanId, PersonId, RunId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::{Day, Millis, figures};
use crate::domain::units::{AcidValue, Dose, Minutes, Share, Temp, Unit, Volume};
use crate::store::World;
use crate::store::json::{Json, Out};

/// What a stored word may look like; only the schema asks.
#[cfg(feature = "schema")]
#[derive(Clone, Copy, Debug)]
pub enum Spelling {
    /// One of these.
    Keys(&'static [&'static str]),
    /// Anything that matches this regular expression.
    Pattern(&'static str),
}

/// A domain value that is stored as a word.
pub trait AsText: Sized {
    /// What it is, for messages.
    const WHAT: &'static str;
    /// Its stored word.
    fn write(&self) -> Cow<'static, str>;
    /// The value a word stands for, if any: only the word [`AsText::write`] gives is read.
    fn read(word: &str) -> Option<Self>;
    /// Any value.
    fn blank() -> Self;
    /// What its words look like.
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling;
}

/// A domain value stored as a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Text<T>(pub T);

impl<T: AsText> Stored for Text<T> {
    fn blank() -> Self {
        Self(T::blank())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let word = stored::word(json)?;
        T::read(&word).map(Self).ok_or_else(|| no_such_word(word, T::WHAT))
    }

    fn put(&self, out: &mut Out) {
        out.word(&self.0.write());
    }
}

#[inline(never)]
fn no_such_word(word: Cow<'_, str>, what: &str) -> String {
    odd(&Json::Word(word), what)
}

/// A domain value that is stored as a whole number.
pub trait AsWhole: Sized {
    /// What it is, for messages.
    const WHAT: &'static str;
    /// The least number.
    const MIN: i64;
    /// The greatest number.
    const MAX: i64;
    /// Its number.
    fn write(&self) -> i64;
    /// The value a number stands for; `None` out of range.
    fn read(number: i64) -> Option<Self>;
    /// Any value.
    fn blank() -> Self;
}

/// A domain value stored as a whole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Whole<T>(pub T);

impl<T: AsWhole> Stored for Whole<T> {
    fn blank() -> Self {
        Self(T::blank())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        // The range the schema states is the range that is read.
        let number = stored::whole(&json, T::MIN, T::MAX, T::WHAT)?;
        T::read(number).map(Self).ok_or_else(|| odd(&json, T::WHAT))
    }

    fn put(&self, out: &mut Out) {
        out.whole(self.0.write());
    }
}

macro_rules! keys {
    ($($what:literal $name:ty),+ $(,)?) => {
        $(impl AsText for $name {
            const WHAT: &'static str = $what;
            fn write(&self) -> Cow<'static, str> {
                Cow::Borrowed(self.key())
            }
            fn read(word: &str) -> Option<Self> {
                Self::from_key(word)
            }
            fn blank() -> Self {
                Self::ALL[0]
            }
            #[cfg(feature = "schema")]
            fn spelling() -> Spelling {
                const KEYS: [&str; <$name>::ALL.len()] = {
                    let mut keys = [""; <$name>::ALL.len()];
                    let mut i = 0;
                    while i < keys.len() {
                        keys[i] = <$name>::ALL[i].key();
                        i += 1;
                    }
                    keys
                };
                Spelling::Keys(&KEYS)
            }
        })+
    };
}

keys! {
    "a claim" ClaimKind,
    "an exposure" Exposure,
    "what was seen" super::claim::Seen,
    "a fat" Fat,
    "an item of evidence" Item,
    "an answer" Word,
    "a step" StepId,
    "a hold" Hold,
    "a unit" Unit,
    "a load" oil::Load,
    "machine or pan" oil::Parking,
    "a sign" oil::SignKind,
    "a job" job::JobKind,
    "an event of a job" job::JobEvent,
    "unguided or not_done" job::Grade,
    "a place" run::Place,
    "a trouble" trouble::TroubleKind,
    "an event of a trouble" trouble::TroubleEvent,
    "a pan's contents" run::Contents,
    "a state of the pump" run::Pump,
    "a state of the heat" run::Heat,
    "long or short" run::Form,
    "an event of a run" run::RunEvent,
    "how a run was left" run::Left,
    "a fault" run::Fault,
    "a route" setup::Route,
    "what a limit rests on" setup::LimitBasis,
    "a way to heat" setup::HeatKind,
    "a sign of heat off" setup::OffSign,
    "a way out of the pan" setup::OutBy,
    "a kind of filter" setup::FilterKind,
    "what an instrument measures" setup::Measures,
    "a world" World,
}

#[cfg(feature = "schema")]
const UUID: Spelling = Spelling::Pattern("^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$");

macro_rules! ids {
    ($($name:ident),+ $(,)?) => {
        $(impl AsText for $name {
            const WHAT: &'static str = "a UUID";
            fn write(&self) -> Cow<'static, str> {
                Cow::Owned(uuid_word(self.0))
            }
            fn read(word: &str) -> Option<Self> {
                read_uuid(word).map(Self)
            }
            fn blank() -> Self {
                Self(0)
            }
            #[cfg(feature = "schema")]
            fn spelling() -> Spelling {
                UUID
            }
        })+
    };
}

ids!(
    EntryId,
    KitchenId,
    PersonId,
    PanId,
    MachineId,
    InstrumentId,
    JobId,
    RunId
);

/// A UUID in its one spelling (RFC 9562, section 4): lower-case hex in groups of 8, 4, 4, 4 and 12.
fn uuid_word(bits: u128) -> String {
    const HEX: &[u8; 16] = b"0123456789abcdef";
    let mut word = String::with_capacity(36);
    for n in 0..32_u32 {
        if matches!(n, 8 | 12 | 16 | 20) {
            word.push('-');
        }
        let figure = (bits >> (124 - 4 * n)) & 0xf;
        word.push(char::from(HEX[figure as usize]));
    }
    word
}

fn read_uuid(word: &str) -> Option<u128> {
    let mut bits = 0;
    for (at, byte) in word.bytes().enumerate() {
        let value = match byte {
            b'-' if matches!(at, 8 | 13 | 18 | 23) => continue,
            b'0'..=b'9' => byte - b'0',
            b'a'..=b'f' => byte - b'a' + 10,
            _ => return None,
        };
        bits = bits << 4 | u128::from(value);
    }
    (word.len() == 36).then_some(bits)
}

impl AsText for Dev {
    const WHAT: &'static str = "16 hex digits";
    fn write(&self) -> Cow<'static, str> {
        Cow::Owned(format!("{:016x}", self.0))
    }
    fn read(word: &str) -> Option<Self> {
        let dev = u64::from_str_radix(word, 16).ok().map(Self);
        dev.filter(|dev| dev.write() == word)
    }
    fn blank() -> Self {
        Self(0)
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9a-f]{16}$")
    }
}

const DAY_MS: i64 = 86_400_000;
/// 1970-01-01, counted in days from the first day of year 1.
const EPOCH_CE: i32 = 719_163;

fn push_figures(word: &mut String, value: i64, figures: u32) {
    for place in (0..figures).rev() {
        let figure = value / 10_i64.pow(place) % 10;
        word.push(char::from(b'0' + figure as u8));
    }
}

/// A day of the calendar as ISO 8601 writes it, years 0 to 9999.
fn date_word(date: NaiveDate) -> String {
    let mut word = String::with_capacity(24);
    push_figures(&mut word, date.year().into(), 4);
    for part in [date.month(), date.day()] {
        word.push('-');
        push_figures(&mut word, part.into(), 2);
    }
    word
}

impl AsText for Millis {
    const WHAT: &'static str = "a UTC time with milliseconds, like 2026-01-31T17:05:00.000Z";
    fn write(&self) -> Cow<'static, str> {
        let (days, rest) = (self.0.div_euclid(DAY_MS), self.0.rem_euclid(DAY_MS));
        let date = i32::try_from(days)
            .ok()
            .and_then(|days| NaiveDate::from_num_days_from_ce_opt(days.checked_add(EPOCH_CE)?));
        let date = date.filter(|date| (0..=9999).contains(&date.year()));
        // A moment past the calendar has no word; the empty one reads back as nothing, and so is never stored.
        let Some(date) = date else {
            return Cow::Borrowed("");
        };
        let mut word = date_word(date);
        for (between, figures, value) in [
            ('T', 2, rest / 3_600_000),
            (':', 2, rest / 60_000 % 60),
            (':', 2, rest / 1_000 % 60),
            ('.', 3, rest % 1_000),
        ] {
            word.push(between);
            push_figures(&mut word, value, figures);
        }
        word.push('Z');
        Cow::Owned(word)
    }
    fn read(word: &str) -> Option<Self> {
        let (date, time) = word.strip_suffix('Z')?.split_at_checked(10)?;
        let days = i64::from(Day::spelt(date)?.date().num_days_from_ce() - EPOCH_CE);
        let part = |at: usize, before: char| time[at..].starts_with(before);
        let fits = time.len() == 13 && time.is_ascii();
        if !fits || !part(0, 'T') || !part(3, ':') || !part(6, ':') || !part(9, '.') {
            return None;
        }
        let (hours, minutes, seconds) = (
            figures(time, 1..3, 23)?,
            figures(time, 4..6, 59)?,
            figures(time, 7..9, 59)?,
        );
        let millis = figures(time, 10..13, 999)?;
        Some(Self(
            days * DAY_MS + hours * 3_600_000 + minutes * 60_000 + seconds * 1_000 + millis,
        ))
    }
    fn blank() -> Self {
        Self(0)
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\\.[0-9]{3}Z$")
    }
}

impl AsText for Day {
    const WHAT: &'static str = "a date, like 2026-01-31";
    fn write(&self) -> Cow<'static, str> {
        Cow::Owned(date_word(self.date()))
    }
    fn read(word: &str) -> Option<Self> {
        Self::spelt(word)
    }
    fn blank() -> Self {
        Self::from_date(NaiveDate::default())
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")
    }
}

macro_rules! wholes {
    ($($what:literal $name:ty, $raw:ty, $min:expr, $max:expr, $read:path, $write:path, $blank:expr;)+) => {
        $(impl AsWhole for $name {
            const WHAT: &'static str = $what;
            const MIN: i64 = $min;
            const MAX: i64 = $max;
            fn write(&self) -> i64 {
                i64::from($write(*self))
            }
            fn read(number: i64) -> Option<Self> {
                <$raw>::try_from(number).ok().and_then($read)
            }
            fn blank() -> Self {
                $blank
            }
        })+
    };
}

wholes! {
    "millilitres, 0 to 1000000" Volume, u32, 0, 1_000_000, Self::from_ml, Self::ml, Self::default();
    "tenths of a degree Celsius, -500 to 4000" Temp, i16, -500, 4_000, Self::from_dc, Self::dc, Self::MAX;
    "hundredths of a percent, 0 to 10000" Share, u16, 0, 10_000, Self::from_cpc, Self::cpc, Self::MAX;
    "hundredths of mg KOH/g, 0 to 5000" AcidValue, u16, 0, 5_000, Self::from_cav, Self::cav, Self::default();
    "grams a litre, 1 to 100" Dose, u16, 1, 100, Self::from_g_per_l, Self::g_per_l, Self::MIN;
    "minutes, 0 to 1440" Minutes, u16, 0, 1_440, Self::new, Self::get, Self::default();
}

#[cfg(all(test, not(target_arch = "wasm32")))]
mod tests {
    //! Own spellings of times, days and UUIDs, held against chrono and uuid as their oracles.
    use chrono::{DateTime, SecondsFormat};
    use proptest::prelude::*;
    use uuid::Uuid;

    use super::*;

    proptest! {
        #[test]
        fn a_time_is_written_and_read_as_chrono_does(ms in -62_167_219_200_000_i64..253_402_300_800_000) {
            let expected = DateTime::from_timestamp_millis(ms).map(|t| t.to_rfc3339_opts(SecondsFormat::Millis, true));
            prop_assert_eq!(Some(Millis(ms).write().into_owned()), expected);
            prop_assert_eq!(Millis::read(&Millis(ms).write()), Some(Millis(ms)));
        }

        #[test]
        fn what_is_read_as_a_time_is_what_chrono_reads(word in "[0-9]{4}-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-6][0-9]:[0-6][0-9]\\.[0-9]{3}Z") {
            // A leap second is a time to chrono, and none to a log whose days have 86 400 seconds.
            prop_assume!(!word.contains(":60."));
            let expected = DateTime::parse_from_rfc3339(&word).ok().map(|t| Millis(t.timestamp_millis()));
            prop_assert_eq!(Millis::read(&word), expected);
            let day = &word[..10];
            prop_assert_eq!(Day::read(day), day.parse().ok().map(Day::from_date));
        }

        #[test]
        fn a_uuid_is_written_and_read_as_the_library_does(bits in any::<u128>(), broken in "[0-9a-fA-F-]{34,37}") {
            let word = Uuid::from_u128(bits).as_hyphenated().to_string();
            prop_assert_eq!(uuid_word(bits), word.clone());
            prop_assert_eq!(read_uuid(&word), Some(bits));
            if let Some(bits) = read_uuid(&broken) {
                prop_assert_eq!(uuid_word(bits), broken);
            }
        }
    }

    #[test]
    fn no_time_past_the_calendar_has_a_word() {
        for ms in [i64::MIN, -62_167_219_200_001, 253_402_300_800_000, i64::MAX] {
            assert_eq!(Millis(ms).write(), "");
        }
    }

    #[test]
    fn nothing_but_the_one_spelling_is_read() {
        for word in [
            "2026-05-28T17:05:00Z",
            "2026-05-28t17:05:00.000z",
            "2026-05-28T17:05:00.000+00:00",
            "2026-05-28",
            "é026-05-28T17:05:00.000Z",
            "",
        ] {
            assert_eq!(Millis::read(word), None, "{word}");
        }
        for word in ["2026-5-28", "+2026-05-2", "2026-02-30", "20260528--", ""] {
            assert_eq!(Day::read(word), None, "{word}");
        }
    }
}
