//! How noisy readings and services are in this shop: the spread of each instrument, and how far oil ways from its
//! steady growth.
//!
//! Both are learnt on small grids by how well each value would have foretold the readings. They move only between
//! fills: within a fill they are numbers, so that a reading can only narrow what is believed of its oil.

use crate::domain::ids::InstrumentId;

/// Spreads an instrument may have (one standard deviation, points), and how likely each is before any reading: about
/// 3, within 1–5 (dielectric probes in hot oil, from the correlations of Al-Kahtani 1991 and Osawa et al. 2012).
pub(super) const SPREADS: [f64; 9] = [0.7, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.2, 5.0];
const SPREAD_WEIGHTS: [f64; 9] = [0.02, 0.06, 0.12, 0.15, 0.17, 0.18, 0.14, 0.10, 0.06];

/// How far oil may stray from steady growth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Straying {
    /// Variance an hour of frying adds to the level, in squares of an hour's growth: services differ from each other.
    pub level_per_hour: f64,
    /// Variance an hour of frying adds to the rate, in squares of the rate: growth may speed up or slow down over a
    /// fill (it does in Bastida & Sánchez-Muniz 2002, and does not in Mba et al. 2016 or Chen et al. 2013).
    pub rate_per_hour: f64,
}

/// Ways oil may stray. Our own choice of sizes: a service of six hours off by a fifteenth to
/// a third of its growth; a rate that has changed by a third, or by three quarters, after sixty hours.
pub(super) const WAYS: [Straying; 5] = [
    straying(0.03, 0.0),
    straying(0.15, 0.0),
    straying(0.6, 0.0),
    straying(0.15, 0.002),
    straying(0.15, 0.01),
];

/// How likely each way is at first: most published series grow steadily.
const WAY_WEIGHTS: [f64; 5] = [0.3, 0.35, 0.2, 0.1, 0.05];

const fn straying(level_per_hour: f64, rate_per_hour: f64) -> Straying {
    Straying {
        level_per_hour,
        rate_per_hour,
    }
}

/// How likely one reading was for each spread, in logarithms.
pub(super) type BySpread = [f64; SPREADS.len()];

/// What is believed of both.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Noise {
    tools: Vec<(Option<InstrumentId>, BySpread)>,
    ways: [f64; WAYS.len()],
}

impl Noise {
    /// Before any reading.
    pub(super) const fn unknown() -> Self {
        Self {
            tools: Vec::new(),
            ways: WAY_WEIGHTS,
        }
    }

    /// The spread to take an instrument's readings with: the root of its mean square.
    pub(super) fn spread(&self, tool: Option<InstrumentId>) -> f64 {
        let weights = self.weights(tool);
        let squares = SPREADS.iter().zip(weights).map(|(s, w)| w * s * s);
        squares.sum::<f64>().sqrt()
    }

    /// How far the next fill may stray: the mean of the ways.
    pub(super) fn straying(&self) -> Straying {
        let mean = |of: fn(&Straying) -> f64| WAYS.iter().zip(self.ways).map(|(way, weight)| weight * of(way)).sum();
        Straying {
            level_per_hour: mean(|way| way.level_per_hour),
            rate_per_hour: mean(|way| way.rate_per_hour),
        }
    }

    fn weights(&self, tool: Option<InstrumentId>) -> BySpread {
        let known = self.tools.iter().find(|(id, _)| *id == tool);
        known.map_or(SPREAD_WEIGHTS, |(_, weights)| *weights)
    }

    /// Learns from the readings of one fill, told for each of [`WAYS`] in turn: each reading's instrument and how
    /// likely it was. Gives the place of the likeliest.
    pub(super) fn learn(&mut self, told: &[Vec<(Option<InstrumentId>, BySpread)>; WAYS.len()]) -> usize {
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
            for (row, way) in joint.iter().zip(self.ways) {
                for (sum, p) in spreads.iter_mut().zip(row) {
                    *sum += way * p;
                }
            }
            for (way, row) in self.ways.iter_mut().zip(&joint) {
                *way *= row.iter().sum::<f64>();
            }
            normalise(&mut spreads);
            normalise(&mut self.ways);
            match self.tools.iter_mut().find(|(id, _)| *id == tool) {
                Some((_, weights)) => *weights = spreads,
                None => self.tools.push((tool, spreads)),
            }
        }
        let likeliest = (0..WAYS.len()).max_by(|a, b| self.ways[*a].total_cmp(&self.ways[*b]));
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
