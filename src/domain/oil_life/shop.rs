//! What a shop's fills teach about its next one.
//!
//! A [`Shop`] is a fold over fills in the order they began. Each is judged with what the ones before it taught, and
//! leaves behind how fast oil wears here ([`Rates`]), how far each instrument is off and what fresh oil holds
//! ([`Constants`]), and how noisy readings and services are ([`Noise`]). A fill is never judged by a shop that has
//! learnt from it.

use crate::domain::fat::Fat;
use crate::domain::ids::InstrumentId;

use super::belief::Belief;
use super::constants::Constants;
use super::history::FillHistory;
use super::noise::{Noise, WAYS};
use super::outlook::Habit;
use super::quantity::{Quantity, RatePrior};
use super::rates::Rates;

/// What the fills so far taught.
#[derive(Clone, Debug, PartialEq)]
pub struct Shop {
    rates: Rates,
    constants: Constants,
    noise: Noise,
}

impl Default for Shop {
    fn default() -> Self {
        Self::new()
    }
}

impl Shop {
    /// Nothing yet: published figures alone.
    #[must_use]
    pub fn new() -> Self {
        Self {
            rates: Rates::published(),
            constants: Constants::unknown(),
            noise: Noise::unknown(),
        }
    }

    /// Learns from one more fill, finished or not; one without a reading of polar compounds teaches nothing.
    pub fn learn(&mut self, history: &FillHistory, habit: &Habit) {
        let folds = WAYS.map(|way| Belief::told(history, habit, self, way));
        if folds[0].1.is_empty() {
            return;
        }
        let beliefs = folds.each_ref().map(|(belief, _)| belief);
        let told = folds.each_ref().map(|(_, told)| told.clone());
        let likeliest = beliefs[self.noise.learn(&told)];
        self.rates.learn(history.fat(), &likeliest.likely_rates());
        self.constants = likeliest.constants();
        self.constants.age();
    }

    /// Fills that taught something.
    #[must_use]
    pub const fn fills(&self) -> u16 {
        self.rates.fills()
    }

    /// The growth rate to expect of a fill of `fat`.
    #[must_use]
    pub fn rate(&self, quantity: Quantity, fat: Fat) -> RatePrior {
        match quantity {
            Quantity::Polar => self.rates.next(fat),
            Quantity::Ffa => quantity.rate(),
        }
    }

    /// Density of the logarithm of that rate, but for a constant factor.
    pub(super) fn density(&self, quantity: Quantity, fat: Fat, log_rate: f64) -> f64 {
        match quantity {
            Quantity::Polar => self.rates.density(fat, log_rate),
            Quantity::Ffa => {
                let prior = quantity.rate();
                let z = (log_rate - libm::log(prior.median)) / prior.log_sd;
                libm::exp(-0.5 * z * z)
            }
        }
    }

    /// The spread (one standard deviation, points) an instrument's readings of polar compounds have here.
    #[must_use]
    pub fn spread(&self, instrument: Option<InstrumentId>) -> f64 {
        self.noise.spread(instrument)
    }

    pub(super) const fn rates(&self) -> &Rates {
        &self.rates
    }

    pub(super) const fn constants(&self) -> &Constants {
        &self.constants
    }

    pub(super) const fn noise(&self) -> &Noise {
        &self.noise
    }
}
