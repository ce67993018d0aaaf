//! Setting up: what an owner types about the kitchen, a person, a pan, a machine or an instrument, and the checked
//! facts it comes to.
//!
//! A form is a table of [`Field`]s and the [`Answers`] given so far, all of them text as it was typed: so nothing is
//! lost by being wrong, a reload keeps it, and one check reads it all. A check gives facts, or every field that is
//! wrong with its reason.

mod answers;
mod instrument;
mod kitchen;
mod machine;
mod pan;
mod person;
mod read;

pub use answers::{Answers, Fault, Wrong};
pub use kitchen::{LimitSaid, country, limit_said};
pub use pan::{OffShows, off_shows};
pub use person::signers;

use super::facts::Fact;
use super::ids::{InstrumentId, KitchenId, MachineId, PanId, PersonId};
use super::keyed::keyed;
use super::ledger::Book;
use super::time::Day;

keyed! {
    /// What a form is about.
    pub enum Subject {
        /// The kitchen.
        Kitchen = "kitchen",
        /// A person.
        Person = "person",
        /// A pan.
        Pan = "pan",
        /// A filter machine or hand kit.
        Machine = "machine",
        /// An instrument.
        Instrument = "instrument",
    }
}

keyed! {
    /// A field of a form.
    pub enum Field {
        /// What the kitchen is called.
        KitchenName = "kitchen_name",
        /// Its country: a code of the list, or [`OTHER_COUNTRY`].
        Country = "country",
        /// ISO 3166-1 code of another country.
        CountryCode = "country_code",
        /// IANA zone.
        Zone = "zone",
        /// Time of day a trading day begins, 03:00–11:00.
        DayStart = "day_start",
        /// Days of the week, 0 (Monday) to 6.
        TradingDays = "trading_days",
        /// Hours a pan usually stands hot on a trading day.
        UsualHours = "usual_hours",
        /// Time service ends.
        Closing = "closing",
        /// Quiet from.
        QuietFrom = "quiet_from",
        /// Quiet to.
        QuietTo = "quiet_to",
        /// A second person before pumps.
        SecondPerson = "second_person",
        /// Number on the fire and burn cards.
        Emergency = "emergency",
        /// Limit on polar compounds, %.
        LimitPolar = "limit_polar",
        /// Limit on acidity, in the unit of [`Field::AcidUnit`].
        LimitAcid = "limit_acid",
        /// `ffa` (%) or `acid` (mg/g).
        AcidUnit = "acid_unit",
        /// Initials.
        Initials = "initials",
        /// Eighteen or over.
        Adult = "adult",
        /// Routes signed off for.
        Routes = "routes",
        /// May stand beside a starter.
        MaySupervise = "may_supervise",
        /// Who signed them off: an id in hex, or [`MYSELF`].
        SignedBy = "signed_by",
        /// The owner of a one-person kitchen vouches for themselves.
        Vouched = "vouched",
        /// The last day the sign-off holds.
        SignedUntil = "signed_until",
        /// What the pan is called.
        PanName = "pan_name",
        /// Litres when full.
        PanFull = "pan_full",
        /// Least litres it may be heated with.
        PanMin = "pan_min",
        /// What the minimum mark is.
        PanMark = "pan_mark",
        /// What heats it.
        PanHeat = "pan_heat",
        /// Two signs of off.
        OffSigns = "off_signs",
        /// Its fat.
        PanFat = "pan_fat",
        /// What it is kept for.
        Claims = "claims",
        /// What that rests on.
        ClaimBasis = "claim_basis",
        /// What is fried in it.
        Food = "food",
        /// What is in it now: `nothing`, `fresh`, `since`, `unknown`.
        InIt = "in_it",
        /// The day its oil was fresh.
        FreshOn = "fresh_on",
        /// Days usually got from its oil.
        UsualDays = "usual_days",
        /// What tells the owner it is done.
        EndSign = "end_sign",
        /// What it is filtered by: a [`RhythmBy`].
        RhythmBy = "rhythm_by",
        /// Filtered every so many days it is used.
        Rhythm = "rhythm",
        /// Filtered every so many sessions.
        RhythmSessions = "rhythm_sessions",
        /// Filtered on these days of the week, 0 (Monday) to 6.
        RhythmWeekdays = "rhythm_weekdays",
        /// Whether it is in use.
        InUse = "in_use",
        /// What the machine is called.
        MachineName = "machine_name",
        /// How oil leaves the pan.
        OutBy = "out_by",
        /// Litres of its tank.
        Tank = "tank",
        /// Share of the tank kept free, %.
        FreeShare = "free_share",
        /// Whether it has a heater.
        Heater = "heater",
        /// The heater's watts.
        HeaterWatts = "heater_watts",
        /// Whether its manual takes solid fat without one.
        TakesSolid = "takes_solid",
        /// How oil passes its filter.
        FilterKind = "filter_kind",
        /// Lowest oil temperature of its manual, °C.
        WindowLow = "window_low",
        /// Highest, °C.
        WindowHigh = "window_high",
        /// Best, °C.
        Target = "target",
        /// Longest rinse, s.
        RinseMax = "rinse_max",
        /// Shortest rinse, s.
        RinseMin = "rinse_min",
        /// Filters in order, with commas between.
        Filters = "filters",
        /// Powder that takes things out of the oil, grams a litre.
        Powder = "powder",
        /// What the switch says where the pump is off.
        SwitchOff = "switch_off",
        /// What it says where oil is drawn.
        SwitchDraw = "switch_draw",
        /// What it says where oil is returned.
        SwitchReturn = "switch_return",
        /// Whether it is known what it has met: `known`, `unknown`.
        HeldKnown = "held_known",
        /// What it has met.
        Held = "held",
        /// What the instrument is called.
        InstrumentName = "instrument_name",
        /// What it measures.
        Measures = "measures",
        /// Its spread, in its own unit.
        Spread = "spread",
    }
}

keyed! {
    /// What a pan is filtered by.
    pub enum RhythmBy {
        /// Days of use.
        Days = "days",
        /// Sessions.
        Sessions = "sessions",
        /// Nights of its own.
        Weekdays = "weekdays",
    }
}

/// The answer to [`Field::Country`] for a country that is not in the list.
pub const OTHER_COUNTRY: &str = "other";
/// The answer to [`Field::SignedBy`] of whoever vouches for themselves.
pub const MYSELF: &str = "myself";
/// A ticked box.
pub const YES: &str = "yes";
/// A box answered with no.
pub const NO: &str = "no";

/// What stands around a form: the kitchen so far, and the trading day it is filled in on.
#[derive(Clone, Copy, Debug)]
pub struct Around<'a> {
    /// The kitchen so far.
    pub book: &'a Book,
    /// The trading day.
    pub today: Day,
}

impl Subject {
    /// What a first set-up asks for next; `None` once there is one of each that a filter job needs.
    #[must_use]
    pub fn first_missing(book: &Book) -> Option<Self> {
        let missing = [
            (Self::Kitchen, book.kitchen.is_none()),
            (Self::Person, book.people.is_empty()),
            (Self::Pan, book.pans.is_empty()),
            (Self::Machine, book.machines.is_empty()),
        ];
        missing.into_iter().find(|(_, none)| *none).map(|(subject, _)| subject)
    }

    /// The form as it is first shown, for something new: every default there is.
    ///
    /// `zone` is what the phone says of itself, and may be empty.
    #[must_use]
    pub fn blank(self, around: Around, zone: &str) -> Answers {
        match self {
            Self::Kitchen => kitchen::blank(zone),
            Self::Person => person::blank(around.book),
            Self::Pan => pan::blank(around.book),
            Self::Machine => machine::blank(around.book),
            Self::Instrument => instrument::blank(),
        }
    }

    /// The form filled with what is set up already; `None` when there is no such thing.
    #[must_use]
    pub fn filled(self, id: u128, around: Around) -> Option<Answers> {
        let book = around.book;
        match self {
            Self::Kitchen => book.kitchen.as_ref().map(kitchen::of),
            Self::Person => book.person(PersonId(id)).map(person::of),
            Self::Pan => book.pan(PanId(id)).map(|pan| pan::of(pan, around.today)),
            Self::Machine => book.machine(MachineId(id)).map(machine::of),
            Self::Instrument => book.instrument(InstrumentId(id)).map(instrument::of),
        }
    }

    /// The fields shown for these answers, a few to a page. A field that the answers make needless is left out.
    #[must_use]
    pub fn pages(self, id: u128, answers: &Answers, around: Around) -> Vec<Vec<Field>> {
        match self {
            Self::Kitchen => kitchen::pages(answers),
            Self::Person => person::pages(PersonId(id), answers, around.book),
            Self::Pan => pan::pages(PanId(id), answers, around.book),
            Self::Machine => machine::pages(answers),
            Self::Instrument => instrument::pages(answers),
        }
    }

    /// The pages a first set-up asks: what nobody can guess, and what somebody must have looked at. Everything else has a
    /// default, which is shown and can be opened ([`Subject::rest_pages`]).
    #[must_use]
    pub fn first_pages(self, id: u128, answers: &Answers, around: Around) -> Vec<Vec<Field>> {
        let shown = self.pages(id, answers, around).concat();
        let first = match self {
            Self::Kitchen => kitchen::first(answers),
            Self::Pan => pan::FIRST.iter().map(|page| page.to_vec()).collect(),
            Self::Machine => machine::FIRST.iter().map(|page| page.to_vec()).collect(),
            Self::Person | Self::Instrument => return self.pages(id, answers, around),
        };
        let asked = |page: Vec<Field>| page.into_iter().filter(|field| shown.contains(field)).collect();
        first
            .into_iter()
            .map(asked)
            .filter(|page: &Vec<Field>| !page.is_empty())
            .collect()
    }

    /// The pages a first set-up leaves at their defaults.
    #[must_use]
    pub fn rest_pages(self, id: u128, answers: &Answers, around: Around) -> Vec<Vec<Field>> {
        let first = self.first_pages(id, answers, around).concat();
        let rest = |page: Vec<Field>| page.into_iter().filter(|field| !first.contains(field)).collect();
        let pages = self.pages(id, answers, around).into_iter().map(rest);
        pages.filter(|page: &Vec<Field>| !page.is_empty()).collect()
    }

    /// The facts the answers come to.
    ///
    /// # Errors
    /// Every field that is wrong, in the order of the form.
    pub fn check(self, id: u128, answers: &Answers, around: Around) -> Result<Vec<Fact>, Vec<Wrong>> {
        let mut wrongs = Vec::new();
        let shown: Vec<Field> = self.pages(id, answers, around).concat();
        let shown = answers.only(&shown);
        let facts = match self {
            Self::Kitchen => kitchen::check(KitchenId(id), &shown, around, &mut wrongs),
            Self::Person => person::check(PersonId(id), &shown, around, &mut wrongs),
            Self::Pan => pan::check(PanId(id), &shown, around, &mut wrongs),
            Self::Machine => machine::check(MachineId(id), &shown, around, &mut wrongs),
            Self::Instrument => instrument::check(InstrumentId(id), &shown, &mut wrongs),
        };
        match facts {
            Some(facts) if wrongs.is_empty() => Ok(facts),
            Some(_) | None => Err(wrongs),
        }
    }
}

impl Answers {
    /// These answers after `field` was given, with every default that follows from it.
    #[must_use]
    pub fn after(mut self, field: Field, value: &str) -> Self {
        if matches!(field, Field::Country | Field::CountryCode) {
            kitchen::change_country(&mut self, field, value);
        } else if field == Field::PanHeat {
            pan::change_heat(&mut self, value);
        } else {
            self.put(field, value);
        }
        self
    }
}
