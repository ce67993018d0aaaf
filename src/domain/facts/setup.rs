//! The kitchen as its owner describes it. Each fact carries the whole thing; the last one in order holds.

use crate::domain::claim::{ClaimKind, Exposure, Exposures};
use crate::domain::facts::rhythm::Rhythm;
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, KitchenId, MachineId, PanId, PersonId};
use crate::domain::keyed::keyed;
use crate::domain::time::Day;
use crate::domain::units::{AcidValue, Dose, Minutes, Share, Temp, Volume};

keyed! {
    /// What a limit in force rests on.
    pub enum LimitBasis {
        /// A statute of the kitchen's country.
        Law = "law",
        /// A recommendation or guideline.
        Recommendation = "recommendation",
        /// The owner's own choice.
        Own = "own",
    }
}

/// The limit on acidity, in the one unit the owner uses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AcidLimit {
    /// Free fatty acids, % m/m as oleic.
    Ffa(Share),
    /// Acid value, mg KOH/g.
    AcidValue(AcidValue),
}

/// A span of the day that may cross midnight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// Minute of the day it begins.
    pub from_min: Minutes,
    /// Minute of the day it ends.
    pub to_min: Minutes,
}

impl Span {
    /// Whether a minute of the day lies in it, its first counted and its last not. One that ends as it begins is empty.
    #[must_use]
    pub const fn has(self, minute: u16) -> bool {
        let (from, to) = (self.from_min.get() % 1_440, self.to_min.get() % 1_440);
        if from <= to {
            from <= minute && minute < to
        } else {
            from <= minute || minute < to
        }
    }
}

/// The kitchen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kitchen {
    /// Its id.
    pub kitchen: KitchenId,
    /// What it is called.
    pub name: String,
    /// ISO 3166-1 alpha-2 code, upper case.
    pub country: String,
    /// IANA zone name.
    pub zone: String,
    /// Minute of the day at which a trading day begins (180–660).
    pub day_start_min: u16,
    /// Monday to Sunday.
    pub trading_days: [bool; 7],
    /// Minutes a pan usually stands at frying temperature on a trading day.
    pub fry_min: Minutes,
    /// Minute of the day at which service ends.
    pub closing_min: Option<Minutes>,
    /// Between these only safety sounds.
    pub quiet: Option<Span>,
    /// The number the fire and burn cards show.
    pub emergency_number: String,
    /// The limit on polar compounds in force.
    pub polar_limit: Option<Share>,
    /// The limit on acidity in force.
    pub acid_limit: Option<AcidLimit>,
    /// What the limits rest on.
    pub limit_basis: LimitBasis,
    /// Languages on screen, first preferred.
    pub languages: Vec<String>,
    /// Whether a second person must be in the building before pumps.
    pub second_person: bool,
}

keyed! {
    /// How oil may leave a pan.
    pub enum Route {
        /// Pumped hot through an enclosed machine.
        Hot = "hot",
        /// By hand, at or under 40 °C.
        Cold = "cold",
    }
}

/// Somebody who works here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Person {
    /// Their id.
    pub person: PersonId,
    /// What they are called on screen.
    pub initials: String,
    /// Eighteen or over.
    pub adult: bool,
    /// Routes they are signed off for.
    pub routes: Vec<Route>,
    /// Whether they may stand beside a starter.
    pub may_supervise: bool,
    /// Who signed them off; in a one-person kitchen the owner vouches for themselves.
    pub by: Option<PersonId>,
    /// The last day the sign-off holds.
    pub until: Option<Day>,
}

keyed! {
    /// What heats a pan.
    pub enum HeatKind {
        /// Gas.
        Gas = "gas",
        /// Electricity.
        Electric = "electric",
    }
}

keyed! {
    /// A thing that shows whether the heat is off. The owner names two of different kinds for each pan.
    pub enum OffSign {
        /// The control knob stands at off.
        Knob = "knob",
        /// The burner flame is out.
        Flame = "flame",
        /// The heating light is out.
        Light = "light",
        /// The thermostat stands at zero.
        Thermostat = "thermostat",
        /// The isolator is off.
        Isolator = "isolator",
        /// The gas tap is shut.
        GasTap = "gas_tap",
        /// The plug is out.
        Plug = "plug",
    }
}

/// A promise a pan makes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Claim {
    /// What is promised.
    pub what: ClaimKind,
    /// The first day.
    pub from: Day,
    /// What it rests on, in words.
    pub basis: String,
    /// The last day.
    pub until: Option<Day>,
}

/// A frying pan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pan {
    /// Its id.
    pub pan: PanId,
    /// What it is called: "1", "2", "fish".
    pub name: String,
    /// What it holds when full, as oil at 20 °C.
    pub full: Volume,
    /// The least it may be heated with, as oil at 20 °C.
    pub min: Volume,
    /// What the minimum mark is on this pan, in the owner's words.
    pub mark: String,
    /// What heats it.
    pub heat: HeatKind,
    /// The two things that show its heat is off.
    pub off_signs: [OffSign; 2],
    /// The fat it is kept with.
    pub fat: Fat,
    /// What it promises.
    pub claims: Vec<Claim>,
    /// What is fried in it.
    pub food: Exposures,
    /// When it is filtered; absent: every day it is used.
    pub rhythm: Option<Rhythm>,
    /// Days the owner usually gets from its oil.
    pub usual_days: Option<u16>,
    /// What tells the owner it is done.
    pub end_sign: Option<String>,
    /// Whether it is in use.
    pub in_use: bool,
}

impl Pan {
    /// Everything oil of this pan brings with it: its food and its fat.
    #[must_use]
    pub fn exposures(&self) -> Exposures {
        self.food.and(self.fat.exposures())
    }

    /// The claims that stand on `day`.
    pub fn claims_on(&self, day: Day) -> impl Iterator<Item = &Claim> {
        self.claims
            .iter()
            .filter(move |c| c.from <= day && c.until.is_none_or(|u| day <= u))
    }
}

keyed! {
    /// How oil leaves a pan into a machine.
    pub enum OutBy {
        /// Lifted by a nozzle from above.
        Nozzle = "nozzle",
        /// Drained through the pan's valve to a portable machine.
        Drain = "drain",
        /// Drained to a machine built into the range.
        BuiltIn = "built_in",
        /// By hand: strainer and lidded metal container, cold route only.
        Hand = "hand",
    }
}

keyed! {
    /// How the filter is used up.
    pub enum FilterKind {
        /// Oil passes once; a rinse is kept short.
        Single = "single",
        /// Oil goes round; the rinse has a least time.
        Recirculating = "recirculating",
    }
}

/// What a machine had met when it was set up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// Known.
    Known(Exposures),
    /// Not known: it meets every claim.
    Unknown,
}

impl Held {
    /// As a set, the unknown standing for everything.
    #[must_use]
    pub fn exposures(self) -> Exposures {
        match self {
            Self::Known(set) => set,
            Self::Unknown => Exposures::of(&[Exposure::Unknown]),
        }
    }
}

/// A filter machine or hand kit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Machine {
    /// Its id.
    pub machine: MachineId,
    /// What it is called here.
    pub name: String,
    /// How oil leaves the pan.
    pub out_by: OutBy,
    /// What its tank (or the hand kit's container) holds when full.
    pub tank: Volume,
    /// The share of the tank kept free.
    pub free: Share,
    /// Heater power in watts; 0 for none.
    pub heater_w: u32,
    /// Whether its manual takes solid fat without a heater.
    pub takes_solid: bool,
    /// How its filter is used up.
    pub filter: FilterKind,
    /// The lowest oil temperature its manual gives.
    pub low: Temp,
    /// The highest oil temperature its manual gives; never above 200 °C.
    pub high: Temp,
    /// The temperature it filters best at.
    pub target: Temp,
    /// The longest rinse, in seconds (single-pass).
    pub rinse_max_s: Option<u16>,
    /// The shortest rinse, in seconds (recirculating).
    pub rinse_min_s: Option<u16>,
    /// Its filters in the order they go in, in the owner's words.
    pub filters: Vec<String>,
    /// How much of a powder that takes things out of the oil (an adsorbent) goes in each time, where one is used.
    pub powder: Option<Dose>,
    /// The owner's words for its switches and parts, by slot.
    pub words: Vec<(String, String)>,
    /// What it had met since its last strip-clean when it was set up.
    pub held: Held,
}

keyed! {
    /// What an instrument measures.
    pub enum Measures {
        /// Polar compounds, % m/m.
        Polar = "polar",
        /// Free fatty acids, % m/m as oleic.
        Ffa = "ffa",
        /// Acid value, mg KOH/g.
        Acid = "acid",
        /// Temperature.
        Temp = "temp",
    }
}

/// An instrument that gives readings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Instrument {
    /// Its id.
    pub instrument: InstrumentId,
    /// What it is called here.
    pub name: String,
    /// What it measures.
    pub measures: Measures,
    /// Its spread (one standard deviation), if the owner knows it.
    pub spread: Option<Share>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_span_may_cross_midnight_and_one_that_ends_as_it_begins_is_empty() {
        let has = |from, to, minute| {
            let [from_min, to_min] = [from, to].map(|min| Minutes::new(min).unwrap_or_default());
            Span { from_min, to_min }.has(minute)
        };
        for (from, to, minute, expected) in [
            (60, 120, 59, false),
            (60, 120, 60, true),
            (60, 120, 119, true),
            (60, 120, 120, false),
            (1_320, 420, 1_319, false),
            (1_320, 420, 1_320, true),
            (1_320, 420, 0, true),
            (1_320, 420, 419, true),
            (1_320, 420, 420, false),
            (1_320, 1_440, 1_439, true),
            (1_320, 1_440, 0, false),
            (1_440, 60, 0, true),
            (300, 300, 300, false),
        ] {
            assert_eq!(has(from, to, minute), expected, "{from} to {to} at {minute}");
        }
    }
}
