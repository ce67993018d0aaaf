//! The two quantities a limit can be put on, and what is believed of their growth before any reading.

use crate::domain::facts::oil::Measured;
use crate::domain::fat::Fat;

use super::fresh::{self, FreshValue};
use super::history::Incoming;
use super::kinetics::ffa_percent;

/// A quantity that wears oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Polar compounds, % m/m.
    Polar,
    /// Free fatty acids, % m/m as oleic.
    Ffa,
}

/// How a quantity grows with hours hot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Growth {
    /// By the same points every hour (Mba et al. 2016, Houhoula et al. 2002, Chen et al. 2013: zero order).
    Steady,
    /// By the same factor every hour (Mba et al. 2016: first order, as accumulation).
    Compounding,
}

/// The growth rate at 175 °C before any reading: log-normal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatePrior {
    /// Median, points (or natural-log units) an hour.
    pub median: f64,
    /// Standard deviation of its natural logarithm.
    pub log_sd: f64,
}

impl Quantity {
    /// How it grows.
    #[must_use]
    pub const fn growth(self) -> Growth {
        match self {
            Self::Polar => Growth::Steady,
            Self::Ffa => Growth::Compounding,
        }
    }

    /// What fresh oil holds.
    #[must_use]
    pub const fn fresh(self, fat: Fat) -> FreshValue {
        match self {
            Self::Polar => fresh::polar(fat),
            Self::Ffa => fresh::ffa(fat),
        }
    }

    /// Its growth before any reading.
    ///
    /// Polar: 90 % inside 0.25–1.4 points an hour, around what Santos et al. 2018 and Abdulkarim et al. 2007 imply.
    /// FFA: doubled in 40 fryings of palm (İnanç & Maskan), three to four times in 40 h of palm olein (Ahmad Tarmizi
    /// & Ismail 2008): about 0.03 an hour, 90 % inside a third to three times that, which is our own width.
    #[must_use]
    pub const fn rate(self) -> RatePrior {
        match self {
            Self::Polar => RatePrior {
                median: 0.6,
                log_sd: 0.52,
            },
            Self::Ffa => RatePrior {
                median: 0.03,
                log_sd: 0.67,
            },
        }
    }

    /// Variance an hour of frying adds beyond the rate's own: food, load and hours nobody logged. Our own choice,
    /// about a third of a usual day's growth.
    #[must_use]
    pub const fn wander_per_hour(self) -> f64 {
        match self {
            Self::Polar => 0.1,
            Self::Ffa => 1e-4,
        }
    }

    /// Spread of one reading where its owner knows none. Polar: 3 points for a dielectric probe in hot oil (from the
    /// correlations of Al-Kahtani 1991 and Osawa et al. 2012). FFA: our own choice.
    #[must_use]
    pub const fn reading_sd(self) -> f64 {
        match self {
            Self::Polar => 3.0,
            Self::Ffa => 0.1,
        }
    }

    /// Constant error an instrument may carry through all its readings (one standard deviation). Our own choice.
    #[must_use]
    pub const fn bias_sd(self) -> f64 {
        match self {
            Self::Polar => 2.0,
            Self::Ffa => 0.0,
        }
    }

    /// Oil nobody knows the age of: mean and standard deviation. Polar: oils in use average about 15 with a spread
    /// of 8 (surveys behind Osawa et al. 2012 and the Istanbul survey in TURSTEP). FFA: our own choice.
    #[must_use]
    pub const fn of_unknown_age(self) -> (f64, f64) {
        match self {
            Self::Polar => (15.0, 8.0),
            Self::Ffa => (0.6, 0.4),
        }
    }

    /// The value a measurement gives for this quantity, if it is about it.
    #[must_use]
    pub fn measured(self, value: Measured) -> Option<f64> {
        match (self, value) {
            (Self::Polar, Measured::Polar(share)) | (Self::Ffa, Measured::Ffa(share)) => Some(share.percent()),
            (Self::Ffa, Measured::Acid(acid)) => Some(ffa_percent(acid)),
            (Self::Polar, Measured::Ffa(_) | Measured::Acid(_) | Measured::Temp(_) | Measured::Smoke(_))
            | (Self::Ffa, Measured::Polar(_) | Measured::Temp(_) | Measured::Smoke(_)) => None,
        }
    }

    /// This quantity of oil that comes from another pan: mean and standard deviation.
    #[must_use]
    pub const fn incoming(self, oil: Incoming) -> (f64, f64) {
        match self {
            Self::Polar => oil.polar,
            Self::Ffa => oil.ffa,
        }
    }
}
