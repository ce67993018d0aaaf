//! How noisy readings and services are in this shop: the spread of each instrument, and how far oil wanders from its
//! steady growth.
//!
//! Both are learnt on small grids by how well each value would have foretold the readings. They move only between
//! fills: within a fill they are numbers, so that a reading can only narrow what is believed of its oil.

use crate::domain::ids::InstrumentId;

use super::quantity::Quantity;

/// Spreads an instrument may have (one standard deviation, points), and how likely each is before any reading: about
/// 3, within 1–5 (dielectric probes in hot oil, from the correlations of Al-Kahtani 1991 and Osawa et al. 2012).
pub(super) const SPREADS: [f64; 9] = [0.7, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.2, 5.0];
const SPREAD_WEIGHTS: [f64; 9] = [0.02, 0.06, 0.12, 0.15, 0.17, 0.18, 0.14, 0.10, 0.06];
/// Parts of [`Quantity::wander_per_hour`] that services may wander by, equally likely at first.
pub(super) const WANDERS: [f64; 3] = [0.1, 0.5, 2.0];

/// How likely one reading was for each spread, in logarithms.
pub(super) type BySpread = [f64; SPREADS.len()];

/// What is believed of both.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Noise {
    tools: Vec<(Option<InstrumentId>, BySpread)>,
    wanders: [f64; WANDERS.len()],
}

impl Noise {
    /// Before any reading.
    pub(super) const fn unknown() -> Self {
        Self {
            tools: Vec::new(),
            wanders: [1.0 / 3.0; WANDERS.len()],
        }
    }

    /// The spread to take an instrument's readings with: the root of its mean square.
    pub(super) fn spread(&self, tool: Option<InstrumentId>) -> f64 {
        let weights = self.weights(tool);
        let squares = SPREADS.iter().zip(weights).map(|(s, w)| w * s * s);
        squares.sum::<f64>().sqrt()
    }

    /// Variance an hour of frying adds to the level, points squared.
    pub(super) fn wander_per_hour(&self) -> f64 {
        let part: f64 = WANDERS.iter().zip(self.wanders).map(|(w, weight)| w * weight).sum();
        part * Quantity::Polar.wander_per_hour()
    }

    fn weights(&self, tool: Option<InstrumentId>) -> BySpread {
        let known = self.tools.iter().find(|(id, _)| *id == tool);
        known.map_or(SPREAD_WEIGHTS, |(_, weights)| *weights)
    }

    /// Learns from the readings of one fill, told for each of [`WANDERS`] in turn: each reading's instrument and how
    /// likely it was. Gives the place of the likeliest wander.
    pub(super) fn learn(&mut self, told: &[Vec<(Option<InstrumentId>, BySpread)>; WANDERS.len()]) -> usize {
        let mut tools: Vec<Option<InstrumentId>> = Vec::new();
        for (tool, _) in &told[0] {
            if !tools.contains(tool) {
                tools.push(*tool);
            }
        }
        for tool in tools {
            let joint = told.each_ref().map(|readings| {
                let mut sums = self.weights(tool).map(libm::log);
                for (_, logs) in readings.iter().filter(|(id, _)| *id == tool) {
                    for (sum, log) in sums.iter_mut().zip(logs) {
                        *sum += log;
                    }
                }
                sums
            });
            let most = joint.iter().flatten().copied().fold(f64::NEG_INFINITY, f64::max);
            let joint = joint.map(|row| row.map(|log| libm::exp(log - most)));
            let mut spreads = [0.0; SPREADS.len()];
            for (row, wander) in joint.iter().zip(self.wanders) {
                for (sum, p) in spreads.iter_mut().zip(row) {
                    *sum += wander * p;
                }
            }
            for (wander, row) in self.wanders.iter_mut().zip(&joint) {
                *wander *= row.iter().sum::<f64>();
            }
            normalise(&mut spreads);
            normalise(&mut self.wanders);
            match self.tools.iter_mut().find(|(id, _)| *id == tool) {
                Some((_, weights)) => *weights = spreads,
                None => self.tools.push((tool, spreads)),
            }
        }
        let likeliest = (0..WANDERS.len()).max_by(|a, b| self.wanders[*a].total_cmp(&self.wanders[*b]));
        likeliest.unwrap_or_default()
    }
}

/// Makes probabilities sum to 1, none so small that later readings could not bring it back.
fn normalise(weights: &mut [f64]) {
    const LEAST: f64 = 1e-6;
    let total: f64 = weights.iter().sum();
    for weight in weights {
        *weight = (*weight / total).max(LEAST);
    }
}
