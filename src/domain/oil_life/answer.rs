//! The answer a screen shows for one fill: score, days left, word, and what each rests on.

use crate::domain::facts::oil::SignKind;
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::units::Temp;

use super::fresh::Grounds;
use super::kinetics::Settling;
use super::quantity::Quantity;

/// A level believed: median and the 80 % interval around it, % m/m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// 10 % quantile.
    pub low: f64,
    /// Median.
    pub median: f64,
    /// 90 % quantile.
    pub high: f64,
}

/// The oil-life score: 100 fresh, 0 at the limit. The interval is the same with the 90 % and 10 % quantiles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Score {
    /// Lower end of the 80 % interval.
    pub low: u8,
    /// The score.
    pub now: u8,
    /// Upper end of the 80 % interval.
    pub high: u8,
    /// The quantity that has used up most of its room.
    pub limited_by: Quantity,
}

/// Services finished before the first that ends over a limit; `None` stands for more than 60.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DaysLeft {
    /// 10 % quantile.
    pub low: Option<u8>,
    /// Median: the change is planned by it. `None` reads "not at this top-up".
    pub median: Option<u8>,
    /// 90 % quantile.
    pub high: Option<u8>,
}

impl Word {
    /// Every word, worst first.
    pub const ALL: [Self; 5] = [
        Self::ChangeNow,
        Self::PlanTheChange,
        Self::KeepAnEye,
        Self::Fresh,
        Self::Good,
    ];
}

impl DaysLeft {
    /// The width of the interval in days, more than 60 counted as 61.
    #[must_use]
    pub fn width(self) -> u8 {
        let over = super::MOST_DAYS + 1;
        self.high.unwrap_or(over) - self.low.unwrap_or(over)
    }
}

/// The level oil settles at, and of which quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SettlesAt {
    /// The quantity.
    pub quantity: Quantity,
    /// Just before and just after the usual top-up, % m/m.
    pub level: Settling,
}

/// The word for a fill, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Word {
    /// A change sign was seen, a limit is reached, or the next service as likely as not ends over it.
    ChangeNow,
    /// At worst two days are left.
    PlanTheChange,
    /// At worst five days are left.
    KeepAnEye,
    /// A score of 85 or more.
    Fresh,
    /// None of these.
    Good,
}

/// What the numbers rest on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// At least one reading in this fill.
    Readings,
    /// None: "from usual days and priors", to be said beside it.
    UsualDaysAndPriors,
}

/// "Your usual 9 days, today is day 4", shown while the log knows no better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Usual {
    /// Days the owner usually gets.
    pub days: u16,
    /// Which day of the fill today is, from 1.
    pub today: u16,
}

/// What an entry did to the answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Hours that wore the oil.
    Wear,
    /// Fresh oil that thinned it.
    Dilution,
    /// Oil from another pan.
    MovedIn,
    /// A reading of a quantity.
    Reading(Quantity),
    /// A sign that means change.
    ChangeSign,
    /// A filter run with a powder, which took something out.
    Powder,
    /// A sign that gives no number: dark, gum, carbon, greasy food (one-sided evidence only, Takeoka et al. 1997).
    OtherSign,
}

/// One thing an answer rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Because {
    /// An entry of the log.
    Entry {
        /// The entry.
        entry: EntryId,
        /// What it did.
        role: Role,
    },
    /// What fresh oil of this fat holds.
    FreshValue {
        /// The fat.
        fat: Fat,
        /// The quantity.
        quantity: Quantity,
        /// What the value rests on.
        grounds: Grounds,
    },
    /// The published spread of growth rates.
    PublishedRate(Quantity),
    /// How fast polar compounds build up in this fill.
    Rate {
        /// Points an hour at 175 °C, median.
        per_hour: f64,
        /// How much faster that is at the usual frying temperature (Arrhenius, [`super::ACTIVATION_ENERGY`]).
        heat: f64,
        /// That temperature.
        temp: Temp,
    },
    /// What this kitchen's finished fills taught.
    Taught {
        /// How many there were.
        fills: u16,
        /// Points an hour at 175 °C to expect of a fill of this fat, median.
        per_hour: f64,
    },
    /// How far the readings of an instrument are trusted.
    Instrument {
        /// The instrument, where the readings name one.
        instrument: Option<InstrumentId>,
        /// The spread of its readings, one standard deviation, points.
        spread: f64,
        /// How far it is believed to show too much (or, under 0, too little), points.
        off: f64,
    },
    /// What the filter powder used in this fill does.
    Powder {
        /// Polar compounds it takes out at most in a run, points.
        at_most: f64,
        /// Whether acidity, which it lowers by far more, has a limit.
        acidity: bool,
    },
    /// The days the owner usually gets.
    UsualDays(u16),
    /// What is taken to be ahead: usual services and their top-ups.
    Ahead {
        /// Hours hot a service.
        fry_h: f64,
        /// The share of the pan (0–1) that is fresh oil after it.
        top_up: f64,
    },
    /// The limit on a quantity, % m/m.
    Limit(Quantity, f64),
    /// The log met this oil already worn, its hours guessed from usual services.
    UnloggedServices(u16),
    /// Services since whose hours nobody logged, taken for usual ones.
    GuessedHours(u16),
    /// No top-up was ever logged for this pan: [`super::TopUps::GUESSED`] is taken.
    GuessedTopUps,
    /// The log met this oil at an age nobody knows.
    UnknownAge,
}

/// A figure on a pan's page, as it unfolds into what it rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// How much of a quantity there is now.
    Level,
    /// Days left, and with them the chance of being over after the next service.
    DaysLeft,
    /// The score.
    Score,
}

impl Because {
    /// The figures that rest on it directly. Days left and score rest on the level too, and so on all of its reasons.
    #[must_use]
    pub const fn behind(self) -> &'static [Figure] {
        match self {
            Self::Entry { role, .. } => match role {
                // It overrules the days.
                Role::ChangeSign => &[Figure::DaysLeft],
                Role::Wear | Role::Dilution | Role::MovedIn | Role::Reading(_) | Role::Powder | Role::OtherSign => {
                    &[Figure::Level]
                }
            },
            Self::Instrument { .. }
            | Self::Powder { .. }
            | Self::UnloggedServices(_)
            | Self::GuessedHours(_)
            | Self::UnknownAge => &[Figure::Level],
            Self::FreshValue { .. } => &[Figure::Level, Figure::Score],
            Self::Rate { .. } | Self::PublishedRate(_) | Self::Taught { .. } | Self::UsualDays(_) => {
                &[Figure::Level, Figure::DaysLeft]
            }
            Self::Ahead { .. } | Self::GuessedTopUps => &[Figure::DaysLeft],
            Self::Limit(..) => &[Figure::DaysLeft, Figure::Score],
        }
    }
}

/// Something that is not known and would make the answer better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lacking {
    /// A limit: without one there is no score.
    Limit,
    /// The hours of a service that nobody logged.
    Hours,
    /// A reading in this fill.
    Reading,
    /// How worn the oil was when the log met it: a reading now, or fresh oil at the next change.
    FreshValue,
}

impl Lacking {
    /// Everything that may be lacking.
    pub const ALL: [Self; 4] = [Self::Limit, Self::Hours, Self::Reading, Self::FreshValue];
}

/// What Panward says of one fill.
#[derive(Clone, Debug, PartialEq)]
pub struct OilLife {
    /// The score; `None` while no limit is in force ("choose a limit").
    pub score: Option<Score>,
    /// The chance (0–1) that the next service ends over a limit; `None` without a limit.
    pub chance_over: Option<f64>,
    /// Days left; `None` without a limit.
    pub days_left: Option<DaysLeft>,
    /// The word; without a limit only a change sign gives one.
    pub word: Option<Word>,
    /// Where the oil settles at its usual top-up, when that is what holds it under the limit or what will not.
    pub settles_at: Option<SettlesAt>,
    /// What the numbers rest on.
    pub basis: Basis,
    /// Polar compounds now.
    pub polar: Estimate,
    /// Free fatty acids now, % as oleic; only where acidity has a limit.
    pub ffa: Option<Estimate>,
    /// The owner's usual days, while nothing narrower is known.
    pub usual: Option<Usual>,
    /// The sign that means change, with its entry.
    pub change_sign: Option<(EntryId, SignKind)>,
    /// Entries and sources behind all this, oldest entry first.
    pub because: Vec<Because>,
    /// Readings that contradict what was believed before them by more than chance: kept, counted for less, to be asked
    /// about.
    pub contradicting: Vec<EntryId>,
    /// What would make the answer better if it were logged, most useful first.
    pub lacking: Vec<Lacking>,
    /// Entries that could not be true (more fresh oil than the pan held after it) and were folded around.
    pub folded_around: u16,
}
