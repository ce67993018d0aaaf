//! A quick entry while it is being typed: prefilled with what is most likely, kept as text until it is read.
//!
//! A form survives a reload as pairs of text, so every field can be read and set by its slot.

use crate::domain::claim::ClaimKind;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Load, Measured, SignKind};
use crate::domain::facts::setup::Measures;
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, PanId};
use crate::domain::keyed::keyed;
use crate::domain::ledger::Ledger;
use crate::domain::time::Day;
use crate::domain::units::{Amount, Unit, Volume};

use super::kind::Kind;
use super::moving::{Other, others};
use crate::domain::sorted::in_order;

keyed! {
    /// A field of a form.
    pub enum Slot {
        /// The one number.
        Number = "number",
        /// What it is counted in.
        Unit = "unit",
        /// Which fat.
        Fat = "fat",
        /// What is read, and with what.
        Gauge = "gauge",
        /// How busy.
        Load = "load",
        /// What was noticed.
        Sign = "sign",
        /// Into what, or out of what.
        To = "to",
        /// Which claim.
        Claim = "claim",
        /// What follows an oil change.
        After = "after",
        /// How old the oil is.
        Age = "age",
        /// The day it was fresh on.
        FreshOn = "fresh_on",
        /// Why, or the words themselves.
        Words = "words",
        /// The batch on the container.
        Batch = "batch",
        /// The day it happened; empty for now.
        Date = "date",
        /// The time it happened.
        Time = "time",
    }
}

keyed! {
    /// What a reading says.
    pub enum Gauged {
        /// Polar compounds, %.
        Polar = "polar",
        /// Free fatty acids, %.
        Ffa = "ffa",
        /// Acid value, mg/g.
        Acid = "acid",
        /// Temperature of the oil.
        Temp = "temp",
        /// Temperature at which it began to smoke.
        Smoke = "smoke",
    }
}

impl Gauged {
    /// What an instrument for it measures.
    #[must_use]
    pub const fn measures(self) -> Measures {
        match self {
            Self::Polar => Measures::Polar,
            Self::Ffa => Measures::Ffa,
            Self::Acid => Measures::Acid,
            Self::Temp | Self::Smoke => Measures::Temp,
        }
    }
}

/// What is read, and with which instrument.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gauge {
    /// What is read.
    pub what: Gauged,
    /// With what, where it is set up.
    pub with: Option<InstrumentId>,
}

impl Gauge {
    /// Its key in a form.
    #[must_use]
    pub fn key(self) -> String {
        match self.with {
            Some(id) => format!("{}-{:032x}", self.what.key(), id.0),
            None => self.what.key().to_owned(),
        }
    }

    fn from_key(key: &str) -> Option<Self> {
        let (what, with) = key.split_once('-').map_or((key, None), |(what, id)| (what, Some(id)));
        let with = with.and_then(|id| u128::from_str_radix(id, 16).ok()).map(InstrumentId);
        Gauged::from_key(what).map(|what| Self { what, with })
    }

    /// Everything that can be read here: each instrument that is set up, then what is read without one.
    #[must_use]
    pub fn offered(ledger: &Ledger) -> Vec<Self> {
        let mut tools: Vec<_> = ledger.book.instruments.values().collect();
        in_order(&mut tools, |tool| (tool.measures, &tool.name));
        let with = |what: Gauged| {
            let own = tools.iter().filter(move |tool| tool.measures == what.measures());
            let own: Vec<Self> = own
                .map(|tool| Self {
                    what,
                    with: Some(tool.instrument),
                })
                .collect();
            if own.is_empty() {
                vec![Self { what, with: None }]
            } else {
                own
            }
        };
        Gauged::ALL.iter().flat_map(|what| with(*what)).collect()
    }
}

keyed! {
    /// What follows an oil change.
    pub enum After {
        /// Fresh oil, in the same go.
        Fresh = "fresh",
        /// Nothing: the pan stands empty.
        Empty = "empty",
    }
}

keyed! {
    /// How old oil is that goes into a pan.
    pub enum AgeSaid {
        /// Fresh from its container.
        Fresh = "fresh",
        /// Fresh on an earlier day.
        Since = "since",
        /// Nobody knows.
        Unknown = "unknown",
    }
}

/// A quick entry while it is being typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Form {
    /// The pan.
    pub pan: PanId,
    /// What kind of entry.
    pub kind: Kind,
    /// The one number, as typed.
    pub number: String,
    /// What it is counted in.
    pub unit: Unit,
    /// The fat that goes in.
    pub fat: Fat,
    /// What is read.
    pub gauge: Option<Gauge>,
    /// How busy.
    pub load: Load,
    /// What was noticed.
    pub sign: Option<SignKind>,
    /// Into what, or out of what.
    pub to: Option<Other>,
    /// Which claim.
    pub claim: Option<ClaimKind>,
    /// What follows an oil change.
    pub after: Option<After>,
    /// How old the oil is.
    pub age: AgeSaid,
    /// The day it was fresh on, as typed.
    pub fresh_on: String,
    /// Why, or the words themselves.
    pub words: String,
    /// The batch on the container.
    pub batch: String,
    /// The day it happened, as typed; empty for now.
    pub date: String,
    /// The time it happened, as typed.
    pub time: String,
}

impl Form {
    /// The form of a kind, prefilled with what is most likely.
    #[must_use]
    pub fn open(ledger: &Ledger, pan: PanId, kind: Kind, day: Day) -> Self {
        let kept = ledger.book.pan(pan);
        let fat = kept.map_or(Fat::Blend, |p| p.fat);
        let whole = kept.map_or(Volume::NONE, |p| p.full);
        let unit = match kind {
            Kind::Fill | Kind::OilChange => Unit::Litres,
            Kind::TopUp
            | Kind::Service
            | Kind::Reading
            | Kind::Sign
            | Kind::PartChange
            | Kind::Move
            | Kind::Note
            | Kind::ClaimLost => last_unit(ledger, pan).unwrap_or(usual_unit(fat)),
        };
        let number = match kind {
            Kind::Fill | Kind::OilChange => plain(whole.ml(), 3),
            Kind::Service => ledger
                .book
                .kitchen
                .as_ref()
                .map_or_else(String::new, |k| plain(u32::from(k.fry_min.get()) * 100 / 60, 2)),
            Kind::TopUp | Kind::Reading | Kind::Sign | Kind::PartChange | Kind::Move | Kind::Note | Kind::ClaimLost => {
                String::new()
            }
        };
        let claims = ledger.claims_standing(pan, day);
        Self {
            pan,
            kind,
            number,
            unit,
            fat,
            gauge: last_gauge(ledger).or_else(|| Gauge::offered(ledger).first().copied()),
            load: Load::Normal,
            sign: None,
            to: usual_other(&others(ledger, pan)),
            claim: only(&claims).map(|claim| claim.what),
            after: None,
            age: AgeSaid::Fresh,
            fresh_on: String::new(),
            words: String::new(),
            batch: String::new(),
            date: String::new(),
            time: String::new(),
        }
    }

    /// Whether the kind asks for a number, as it stands.
    #[must_use]
    pub fn asks_number(&self) -> bool {
        match self.kind {
            Kind::TopUp | Kind::Service | Kind::Reading | Kind::PartChange | Kind::Fill | Kind::Move => true,
            Kind::OilChange => self.after == Some(After::Fresh),
            Kind::Sign | Kind::Note | Kind::ClaimLost => false,
        }
    }

    /// What stands in a field.
    #[must_use]
    pub fn get(&self, slot: Slot) -> String {
        let keyed = |key: Option<&'static str>| key.unwrap_or_default().to_owned();
        match slot {
            Slot::Number => self.number.clone(),
            Slot::Unit => self.unit.key().to_owned(),
            Slot::Fat => self.fat.key().to_owned(),
            Slot::Gauge => self.gauge.map(Gauge::key).unwrap_or_default(),
            Slot::Load => self.load.key().to_owned(),
            Slot::Sign => keyed(self.sign.map(SignKind::key)),
            Slot::To => self.to.map(Other::key).unwrap_or_default(),
            Slot::Claim => keyed(self.claim.map(ClaimKind::key)),
            Slot::After => keyed(self.after.map(After::key)),
            Slot::Age => self.age.key().to_owned(),
            Slot::FreshOn => self.fresh_on.clone(),
            Slot::Words => self.words.clone(),
            Slot::Batch => self.batch.clone(),
            Slot::Date => self.date.clone(),
            Slot::Time => self.time.clone(),
        }
    }

    /// Puts something in a field; a key nobody knows leaves it as it was.
    pub fn set(&mut self, slot: Slot, text: &str) {
        match slot {
            Slot::Number => text.clone_into(&mut self.number),
            Slot::Unit => self.unit = Unit::from_key(text).unwrap_or(self.unit),
            Slot::Fat => self.fat = Fat::from_key(text).unwrap_or(self.fat),
            Slot::Gauge => self.gauge = Gauge::from_key(text).or(self.gauge),
            Slot::Load => self.load = Load::from_key(text).unwrap_or(self.load),
            Slot::Sign => self.sign = SignKind::from_key(text).or(self.sign),
            Slot::To => self.to = Other::from_key(text).or(self.to),
            Slot::Claim => self.claim = ClaimKind::from_key(text).or(self.claim),
            Slot::After => self.after = After::from_key(text).or(self.after),
            Slot::Age => self.age = AgeSaid::from_key(text).unwrap_or(self.age),
            Slot::FreshOn => text.clone_into(&mut self.fresh_on),
            Slot::Words => text.clone_into(&mut self.words),
            Slot::Batch => text.clone_into(&mut self.batch),
            Slot::Date => text.clone_into(&mut self.date),
            Slot::Time => text.clone_into(&mut self.time),
        }
    }

    /// Everything typed, as text by slot key.
    #[must_use]
    pub fn pairs(&self) -> Vec<(String, String)> {
        let pair = |slot: &Slot| (slot.key().to_owned(), self.get(*slot));
        Slot::ALL.iter().map(pair).collect()
    }

    /// Puts back what [`Form::pairs`] gave.
    pub fn put_back(&mut self, pairs: &[(String, String)]) {
        for (key, text) in pairs {
            if let Some(slot) = Slot::from_key(key) {
                self.set(slot, text);
            }
        }
    }
}

/// A number of 10^-`places` as text, without trailing zeros: `12.5`.
pub(super) fn plain(parts: u32, places: u32) -> String {
    let scale = 10_u32.pow(places);
    let rest = format!("{:0width$}", parts % scale, width = places as usize);
    match rest.trim_end_matches('0') {
        "" => (parts / scale).to_string(),
        rest => format!("{}.{rest}", parts / scale),
    }
}

/// A block of fat is counted in blocks; oil in litres until somebody counts otherwise.
const fn usual_unit(fat: Fat) -> Unit {
    if fat.is_solid() { Unit::Block } else { Unit::Litres }
}

/// What an amount for this pan was last counted in.
fn last_unit(ledger: &Ledger, pan: PanId) -> Option<Unit> {
    let standing = ledger.lines().rev().filter_map(|line| line.standing());
    let mut amounts = standing.filter_map(|entry| amount_in(&entry.fact, pan));
    amounts.next().map(|amount| amount.typed.unit)
}

fn amount_in(fact: &Fact, pan: PanId) -> Option<Amount> {
    if let Fact::TopUp(f) = fact {
        (f.pan == pan).then_some(f.amount)
    } else if let Fact::PartChange(f) = fact {
        (f.pan == pan).then_some(f.fresh)
    } else {
        None
    }
}

/// What was last read in this kitchen.
fn last_gauge(ledger: &Ledger) -> Option<Gauge> {
    let standing = ledger.lines().rev().filter_map(|line| line.standing());
    let mut readings = standing.filter_map(|entry| {
        if let Fact::Reading(reading) = &entry.fact {
            Some(reading)
        } else {
            None
        }
    });
    readings.next().map(|reading| Gauge {
        what: match reading.value {
            Measured::Polar(_) => Gauged::Polar,
            Measured::Ffa(_) => Gauged::Ffa,
            Measured::Acid(_) => Gauged::Acid,
            Measured::Temp(_) => Gauged::Temp,
            Measured::Smoke(_) => Gauged::Smoke,
        },
        with: reading.instrument,
    })
}

/// The only other pan, or else the only place there is.
fn usual_other(others: &[Other]) -> Option<Other> {
    let pans: Vec<Other> = others.iter().copied().filter(|other| other.pan().is_some()).collect();
    only(if pans.is_empty() { others } else { &pans })
}

fn only<T: Clone>(list: &[T]) -> Option<T> {
    match list {
        [only] => Some(only.clone()),
        _ => None,
    }
}
