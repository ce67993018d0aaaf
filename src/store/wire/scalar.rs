//! Words and whole numbers as stored: each is checked once, where it enters, and has exactly one spelling.

use std::borrow::Cow;

use chrono::{DateTime, NaiveDate, SecondsFormat};
use uuid::Uuid;

use super::stored::{self, Stored, odd};
use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::{job, oil, run, setup};
use crate::domain::fat::Fat;
use crate::domain::ids::{Dev, EntryId, InstrumentId, JobId, KitchenId, MachineId, PanId, PersonId, RunId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::{Day, Millis};
use crate::domain::units::{AcidValue, Minutes, Share, Temp, Unit, Volume};
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
    /// The value a word stands for, if any. May be lenient: [`Text`] insists on the word [`AsText::write`] gives.
    fn read(word: &str) -> Option<Self>;
    /// What its words look like.
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling;
}

/// A domain value stored as a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Text<T>(pub T);

impl<T: AsText> Stored for Text<T> {
    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let word = stored::word(json)?;
        match T::read(&word).filter(|value| value.write() == word) {
            Some(value) => Ok(Self(value)),
            None => Err(odd(&Json::Word(word), T::WHAT)),
        }
    }

    fn put(&self, out: &mut Out) {
        out.word(&self.0.write());
    }
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
}

/// A domain value stored as a whole number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Whole<T>(pub T);

impl<T: AsWhole> Stored for Whole<T> {
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
    "a fat" Fat,
    "an item of evidence" Item,
    "an answer" Word,
    "a step" StepId,
    "a hold" Hold,
    "a unit" Unit,
    "a load" oil::Load,
    "a sign" oil::SignKind,
    "a job" job::JobKind,
    "an event of a job" job::JobEvent,
    "unguided or not_done" job::Grade,
    "a place" run::Place,
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

fn uuid_word(bits: u128) -> String {
    Uuid::from_u128(bits).as_hyphenated().to_string()
}

fn read_uuid(word: &str) -> Option<u128> {
    Uuid::try_parse(word).ok().map(|id| id.as_u128())
}

impl AsText for Dev {
    const WHAT: &'static str = "16 hex digits";
    fn write(&self) -> Cow<'static, str> {
        Cow::Owned(format!("{:016x}", self.0))
    }
    fn read(word: &str) -> Option<Self> {
        u64::from_str_radix(word, 16).ok().map(Self)
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9a-f]{16}$")
    }
}

impl AsText for Millis {
    const WHAT: &'static str = "a UTC time with milliseconds, like 2026-01-31T17:05:00.000Z";
    fn write(&self) -> Cow<'static, str> {
        let time = DateTime::from_timestamp_millis(self.0);
        // A moment past the calendar has no word; the empty one reads back as nothing, and so is never stored.
        Cow::Owned(time.map_or_else(String::new, |t| t.to_rfc3339_opts(SecondsFormat::Millis, true)))
    }
    fn read(word: &str) -> Option<Self> {
        DateTime::parse_from_rfc3339(word)
            .ok()
            .map(|t| Self(t.timestamp_millis()))
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\\.[0-9]{3}Z$")
    }
}

impl AsText for Day {
    const WHAT: &'static str = "a date, like 2026-01-31";
    fn write(&self) -> Cow<'static, str> {
        Cow::Owned(self.date().to_string())
    }
    fn read(word: &str) -> Option<Self> {
        // chrono would also take a sign and more than four digits of year.
        if word.len() != 10 {
            return None;
        }
        word.parse::<NaiveDate>().ok().map(Self::from_date)
    }
    #[cfg(feature = "schema")]
    fn spelling() -> Spelling {
        Spelling::Pattern("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")
    }
}

macro_rules! wholes {
    ($($what:literal $name:ty, $raw:ty, $min:expr, $max:expr, $read:path, $write:path;)+) => {
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
        })+
    };
}

wholes! {
    "millilitres, 0 to 1000000" Volume, u32, 0, 1_000_000, Self::from_ml, Self::ml;
    "tenths of a degree Celsius, -500 to 4000" Temp, i16, -500, 4_000, Self::from_dc, Self::dc;
    "hundredths of a percent, 0 to 10000" Share, u16, 0, 10_000, Self::from_cpc, Self::cpc;
    "hundredths of mg KOH/g, 0 to 5000" AcidValue, u16, 0, 5_000, Self::from_cav, Self::cav;
    "minutes, 0 to 1440" Minutes, u16, 0, 1_440, Self::new, Self::get;
}
