//! How fast this shop's oil wears: what its fills have in common, and how far they differ.
//!
//! The logarithm of a fill's rate is normal about the shop's own mean. Mean and spread are learnt together on a grid
//! from the fills that were read: each says how likely every rate is to be its own. The more there are, the more the
//! next fill's prior is theirs and the less it is the published one.

use crate::domain::fat::Fat;

use super::quantity::{Quantity, RatePrior};

const MEANS: u8 = 25;
/// How far the means reach to either side of the published one, in their own standard deviations.
const REACH_SDS: f64 = 3.5;
/// Spread of the shops' means about the published one, and of the fills about their shop's: together they are the
/// published spread of rates. How it falls between the two is our own choice.
const BETWEEN_SHOPS: f64 = 0.40;
const SPREADS: [f64; 5] = [0.1, 0.2, 0.3, 0.45, 0.6];
const SPREAD_WEIGHTS: [f64; 5] = [0.2, 0.25, 0.25, 0.2, 0.1];

/// How much faster (logarithm) polar matter builds up in a fat than in the usual blend of evidence: palm kinds slower
/// (Chen et al. 2013; Abdulkarim et al. 2007, 0.37–0.54 points an hour against 0.69–0.86 for canola), halved since
/// most shops change more than their fat.
const fn by_fat(fat: Fat) -> f64 {
    match fat {
        Fat::Palm | Fat::PalmOlein => -0.25,
        Fat::Rapeseed
        | Fat::HighOleicRapeseed
        | Fat::Sunflower
        | Fat::Soya
        | Fat::Cottonseed
        | Fat::Maize
        | Fat::Groundnut
        | Fat::Dripping
        | Fat::Lard
        | Fat::Blend => 0.0,
    }
}

/// What is believed of the shop's rates of polar compounds.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Rates {
    /// Probability of each mean, each spread.
    weights: Vec<[f64; SPREADS.len()]>,
    /// Fills learnt from.
    fills: u16,
}

fn mean_at(i: usize) -> f64 {
    let steps = f64::from(MEANS - 1);
    #[expect(clippy::cast_precision_loss, reason = "a few dozen")]
    let z = (2.0 * i as f64 / steps - 1.0) * REACH_SDS;
    libm::log(Quantity::Polar.rate().median) + BETWEEN_SHOPS * z
}

/// The normal density but for 1/√(2π).
fn bell(x: f64, mean: f64, sd: f64) -> f64 {
    let z = (x - mean) / sd;
    libm::exp(-0.5 * z * z) / sd
}

impl Rates {
    /// Before any fill.
    pub(super) fn published() -> Self {
        let centre = libm::log(Quantity::Polar.rate().median);
        let weights = (0..usize::from(MEANS))
            .map(|i| SPREAD_WEIGHTS.map(|w| w * bell(mean_at(i), centre, BETWEEN_SHOPS)))
            .collect();
        let mut rates = Self { weights, fills: 0 };
        rates.normalise();
        rates
    }

    fn normalise(&mut self) {
        let total: f64 = self.weights.iter().flatten().sum();
        for weight in self.weights.iter_mut().flatten() {
            *weight /= total;
        }
    }

    /// Each mean and spread, with its probability.
    fn each(&self) -> impl Iterator<Item = (f64, f64, f64)> {
        let rows = self.weights.iter().enumerate();
        rows.flat_map(|(i, row)| {
            SPREADS
                .iter()
                .zip(row)
                .map(move |(sd, weight)| (mean_at(i), *sd, *weight))
        })
    }

    /// Median and spread of the next fill's rate.
    pub(super) fn next(&self, fat: Fat) -> RatePrior {
        let mean: f64 = self.each().map(|(mean, _, weight)| weight * mean).sum();
        let variance: f64 = self
            .each()
            .map(|(m, sd, weight)| weight * (sd * sd + (m - mean) * (m - mean)))
            .sum();
        RatePrior {
            median: libm::exp(mean + by_fat(fat)),
            log_sd: variance.sqrt(),
        }
    }

    /// Density of the logarithm of the next fill's rate, but for a constant factor.
    pub(super) fn density(&self, fat: Fat, log_rate: f64) -> f64 {
        let x = log_rate - by_fat(fat);
        self.each()
            .filter(|(_, _, weight)| *weight > 1e-9)
            .map(|(mean, sd, weight)| weight * bell(x, mean, sd))
            .sum()
    }

    /// Fills learnt from.
    pub(super) const fn fills(&self) -> u16 {
        self.fills
    }

    /// Learns from a fill: how likely its readings are at each of its rates (logarithms, evenly spaced).
    pub(super) fn learn(&mut self, fat: Fat, likely: &[(f64, f64)]) {
        for (i, row) in self.weights.iter_mut().enumerate() {
            for (sd, weight) in SPREADS.iter().zip(row) {
                let as_likely: f64 = likely
                    .iter()
                    .map(|(log_rate, likelihood)| likelihood * bell(log_rate - by_fat(fat), mean_at(i), *sd))
                    .sum();
                *weight *= as_likely;
            }
        }
        self.normalise();
        self.fills = self.fills.saturating_add(1);
    }
}
