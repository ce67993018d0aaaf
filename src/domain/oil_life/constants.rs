//! What stays the same from fill to fill: how far each instrument is off, and what this shop's fresh oil holds.
//!
//! A reading of fresh oil shows the sum of the two and can tell them apart only by what was known of each before, so
//! they are kept with their covariance: a shop that has filled twenty times knows their sum well and each of them not
//! much better than at first, and the estimate stays as unsure as that.

use crate::domain::fat::Fat;
use crate::domain::ids::InstrumentId;

use super::cov::Cov;
use super::fresh;
use super::quantity::Quantity;

/// Share of the variance of a fat's fresh value that lies between shops (their supplier, their brand), the rest lying
/// between one shop's deliveries. Our own choice: no source tells the two apart.
const BETWEEN_SHOPS: f64 = 0.5;
/// Variance an instrument's constant error gains from one fill to the next, points squared: sensors age. Our own
/// choice, about a point in two years of weekly fills.
const DRIFT: f64 = 0.01;

/// One thing that stays the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Constant {
    /// Mean of the polar compounds this shop's fresh oil of a fat holds, % m/m.
    Fresh(Fat),
    /// The constant error of an instrument for polar compounds, points; all nameless ones are one.
    Bias(Option<InstrumentId>),
}

impl Constant {
    /// Mean and variance before any reading.
    fn prior(self) -> (f64, f64) {
        match self {
            Self::Fresh(fat) => {
                let value = fresh::polar(fat);
                (value.mean, BETWEEN_SHOPS * value.sd * value.sd)
            }
            Self::Bias(_) => (0.0, Quantity::Polar.bias_sd() * Quantity::Polar.bias_sd()),
        }
    }
}

/// Variance of one delivery's fresh value about its shop's mean, points squared.
pub(super) fn between_deliveries(fat: Fat) -> f64 {
    let sd = fresh::polar(fat).sd;
    (1.0 - BETWEEN_SHOPS) * sd * sd
}

/// All of them, jointly normal.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Constants {
    names: Vec<Constant>,
    mean: Vec<f64>,
    cov: Cov,
}

impl Constants {
    /// Before anything was learnt.
    pub(super) fn unknown() -> Self {
        Self::learnt(Vec::new(), Vec::new(), Cov::exact(0))
    }

    /// As a fill's readings left them.
    pub(super) const fn learnt(names: Vec<Constant>, mean: Vec<f64>, cov: Cov) -> Self {
        Self { names, mean, cov }
    }

    /// Where a constant stands, put there with its prior if it is new.
    pub(super) fn place(&mut self, name: Constant) -> usize {
        self.names.iter().position(|n| *n == name).unwrap_or_else(|| {
            let (mean, variance) = name.prior();
            self.names.push(name);
            self.mean.push(mean);
            self.cov.push(variance);
            self.names.len() - 1
        })
    }

    /// Time for instruments to age.
    pub(super) fn age(&mut self) {
        for (at, name) in self.names.iter().enumerate() {
            match name {
                Constant::Bias(_) => self.cov.blur(at, DRIFT),
                Constant::Fresh(_) => {}
            }
        }
    }

    pub(super) fn names(&self) -> &[Constant] {
        &self.names
    }

    pub(super) fn mean(&self) -> &[f64] {
        &self.mean
    }

    pub(super) const fn cov(&self) -> &Cov {
        &self.cov
    }
}
