//! The two quantities a limit can be put on, and what is believed of their growth before any reading.

use crate::domain::facts::oil::Measured;
use crate::domain::fat::Fat;
use crate::domain::units::Share;

use super::fresh::{self, FreshValue};
use super::history::Incoming;
use super::kinetics::{adsorbed_at_most, ffa_percent};
use super::noise::Straying;

/// A quantity that wears oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Polar compounds, % m/m.
    Polar,
    /// Free fatty acids, % m/m as oleic.
    Ffa,
}

/// The scale on which a quantity grows by the same step every hour.
///
/// Polar compounds grow by the same points (zero order: Mba et al. 2016, Houhoula et al. 2002, Chen et al. 2013), free
/// fatty acids by the same factor (first order, as accumulation: Mba et al. 2016), which is a steady step of their
/// logarithm. Everything else about the two is alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Scale {
    /// Points.
    Points,
    /// The natural logarithm of points.
    Log,
}

impl Scale {
    /// % m/m to a place on the scale. Nothing lies under 0.01 %, the least the log can hold.
    #[must_use]
    pub fn place(self, percent: f64) -> f64 {
        const LEAST: f64 = 0.01;
        match self {
            Self::Points => percent,
            Self::Log => libm::log(percent.max(LEAST)),
        }
    }

    /// A place on the scale as % m/m.
    #[must_use]
    pub fn percent(self, place: f64) -> f64 {
        match self {
            Self::Points => place,
            Self::Log => libm::exp(place),
        }
    }

    /// Points per step of the scale where the level is `percent`.
    #[must_use]
    pub const fn points_per_step(self, percent: f64) -> f64 {
        match self {
            Self::Points => 1.0,
            Self::Log => percent,
        }
    }

    /// A mean and standard deviation in points as mean and variance on the scale (log-normal on the logarithm).
    #[must_use]
    pub fn normal(self, mean: f64, sd: f64) -> (f64, f64) {
        match self {
            Self::Points => (mean, sd * sd),
            Self::Log => {
                let var = libm::log1p((sd / mean) * (sd / mean));
                (libm::log(mean) - 0.5 * var, var)
            }
        }
    }

    /// The mean in points of a normal on the scale.
    #[must_use]
    pub fn mean_percent(self, mean: f64, var: f64) -> f64 {
        match self {
            Self::Points => mean,
            Self::Log => libm::exp(mean + 0.5 * var),
        }
    }
}

/// Polar matter a filter powder takes up at most, mg a gram: synthetic magnesium silicate, the most of six kinds tried
/// (Yates & Caldwell, JAOCS 70 (1993) 507–511).
pub const POWDER_HOLDS: f64 = 200.0;

/// The growth rate at 175 °C before any reading: log-normal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatePrior {
    /// Median, in steps of the quantity's [`Scale`] an hour.
    pub median: f64,
    /// Standard deviation of its natural logarithm.
    pub log_sd: f64,
}

impl Quantity {
    /// The scale it grows steadily on.
    #[must_use]
    pub const fn scale(self) -> Scale {
        match self {
            Self::Polar => Scale::Points,
            Self::Ffa => Scale::Log,
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

    /// How far it strays from steady growth where no shop teaches it: food, load and hours nobody logged. Our own
    /// choice, about a third of a usual day's growth.
    #[must_use]
    pub(super) const fn straying(self) -> Straying {
        let level_per_hour = match self {
            Self::Polar => 0.3,
            Self::Ffa => 0.7,
        };
        Straying {
            level_per_hour,
            rate_per_hour: 0.0,
        }
    }

    /// Standard deviation on its scale of one reading of `percent`, with the spread its owner knows it has (points)
    /// or else the usual one. Polar: 3 points for a dielectric probe in hot oil (from the correlations of Al-Kahtani
    /// 1991 and Osawa et al. 2012), never under a tenth of that. FFA: a fifth of the value, our own choice, never
    /// under a fiftieth nor over the value itself.
    #[must_use]
    pub fn reading_sd(self, percent: f64, spread: Option<f64>) -> f64 {
        match self {
            Self::Polar => spread.unwrap_or(3.0).max(0.3),
            Self::Ffa => spread.map_or(0.2, |s| s / percent.max(0.01)).clamp(0.02, 1.0),
        }
    }

    /// Constant error an instrument may carry through all its readings (one standard deviation on the scale). Our own
    /// choice; a titration of acidity is taken to have none.
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

    /// How far one run with `dose` of powder brings it down, on its scale: mean and variance, where nothing is taken
    /// from fresh oil.
    ///
    /// Polar: anything from nothing to what the best of six kinds can hold, [`POWDER_HOLDS`]. FFA: anything from
    /// nothing to nine tenths, whatever the dose: Lin et al. 1998 give 84.5 % for one kind and 91–94 % for a blend, at
    /// doses not seen. Both spread evenly, which is our own choice.
    #[must_use]
    pub(super) fn adsorbed(self, dose: Share) -> (f64, f64) {
        const LEFT_AT_LEAST: f64 = 0.1;
        match self {
            Self::Polar => {
                let most = adsorbed_at_most(dose, POWDER_HOLDS);
                (most / 2.0, most * most / 12.0)
            }
            Self::Ffa => {
                // Of −ln u with u spread evenly from what is left at least to all of it.
                let (log, gone) = (libm::log(LEFT_AT_LEAST), 1.0 - LEFT_AT_LEAST);
                (
                    1.0 + LEFT_AT_LEAST * log / gone,
                    1.0 - LEFT_AT_LEAST * log * log / (gone * gone),
                )
            }
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
