//! What a reading shows, and what it teaches.

use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::oil_life::answer::Estimate;
use crate::domain::oil_life::constants::Constant;
use crate::domain::oil_life::grid::Node;
use crate::domain::oil_life::noise::{BySpread, SPREADS};
use crate::domain::oil_life::normal::{Component, Mixture};
use crate::domain::oil_life::quantity::Quantity;
use crate::domain::oil_life::shop::Shop;
use crate::domain::units::Share;

use super::{Belief, CONSTANTS, FRESH, LEVEL};

/// A reading this unlikely (two-sided) contradicts what was believed by more than chance.
const CONTRADICTS: f64 = 0.005;
/// Standard deviations of a forecast, the rate's part in it too, beyond which a reading's error counts as larger than
/// its instrument's: it is kept, with as much less weight as it is further off than this.
const FAR_SDS: f64 = 3.0;

impl Belief {
    pub(super) fn reading_sd(
        &self,
        percent: f64,
        tool: Option<InstrumentId>,
        spread: Option<Share>,
        shop: &Shop,
    ) -> f64 {
        let known = spread.map(Share::percent).or(match self.quantity {
            Quantity::Polar => Some(shop.noise().spread(tool)),
            Quantity::Ffa => None,
        });
        self.quantity.reading_sd(percent, known)
    }

    /// A measured value.
    pub(super) fn read(&mut self, entry: EntryId, percent: f64, tool: Option<InstrumentId>, sd: f64) {
        let seen = self.scale().place(percent);
        let place = self.place_of(tool);
        let with = self.with_reading(place);
        let known = shown(&with, place) + sd * sd;
        let forecast = self.forecast_of(place, known);
        if forecast.tails(seen) < CONTRADICTS {
            self.contradicting.push(entry);
        }
        let mean = self.mean(|n| shown(&n.mean, place));
        let by_rate = self.mean(|n| (shown(&n.mean, place) - mean) * (shown(&n.mean, place) - mean));
        let off = (seen - forecast.median()) / (known + by_rate).sqrt();
        let variance = known * (off.abs() / FAR_SDS).max(1.0).powi(2);

        self.weigh(seen, place, variance);
        for node in &mut self.nodes {
            let surprise = seen - shown(&node.mean, place);
            for (mean, gain) in node.mean.iter_mut().zip(&with) {
                *mean += gain / variance * surprise;
            }
        }
        self.cov.narrow(&with, variance);
        let fresh_var = self.cov.get(FRESH, FRESH);
        self.fresh_percent = self.mean(|n| self.scale().mean_percent(n.mean[FRESH], fresh_var));
        self.readings = self.readings.saturating_add(1);
    }

    /// Bayes' rule over the rates: each is as likely as it made the reading.
    fn weigh(&mut self, seen: f64, place: Option<usize>, variance: f64) {
        let misfit = |node: &Node| {
            let off = seen - shown(&node.mean, place);
            off * off / (2.0 * variance)
        };
        let least = self.nodes.iter().map(misfit).fold(f64::INFINITY, f64::min);
        let mut total = 0.0;
        for node in &mut self.nodes {
            node.weight *= libm::exp(least - misfit(node));
            total += node.weight;
        }
        for node in &mut self.nodes {
            node.weight /= total;
        }
    }

    /// Where an instrument's constant error stands, put there with its prior if it is new. Acidity by titration is
    /// taken to have none.
    pub(super) fn place_of(&mut self, tool: Option<InstrumentId>) -> Option<usize> {
        match self.quantity {
            Quantity::Ffa => None,
            Quantity::Polar => {
                let name = Constant::Bias(tool);
                let known = self.names.iter().position(|n| *n == name);
                let at = known.unwrap_or_else(|| {
                    self.names.push(name);
                    self.cov.push(self.quantity.bias_sd() * self.quantity.bias_sd());
                    for node in &mut self.nodes {
                        node.mean.push(0.0);
                    }
                    self.names.len() - 1
                });
                Some(CONSTANTS + at)
            }
        }
    }

    /// Covariance of each quantity believed with what a reading would show.
    fn with_reading(&self, place: Option<usize>) -> Vec<f64> {
        let of = |i| self.cov.get(i, LEVEL) + place.map_or(0.0, |at| self.cov.get(i, at));
        (0..self.cov.len()).map(of).collect()
    }

    /// What a reading would show, `variance` being all of it given the rate.
    fn forecast_of(&self, place: Option<usize>, variance: f64) -> Mixture {
        let components = self.nodes.iter().map(|n| Component {
            weight: n.weight,
            mean: shown(&n.mean, place),
        });
        Mixture {
            components: components.collect(),
            sd: variance.sqrt(),
        }
    }

    /// What the next reading will show, % m/m, at 10, 50 and 90 %.
    pub(in crate::domain::oil_life) fn reading_ahead(
        &self,
        tool: Option<InstrumentId>,
        spread: Option<Share>,
        shop: &Shop,
    ) -> Estimate {
        let level = self.scale().percent(self.mean(Node::level));
        let forecast = self.next_reading(level, tool, spread, shop);
        let at = |p| self.scale().percent(forecast.quantile(p)).max(0.0);
        Estimate {
            low: at(0.1),
            median: at(0.5),
            high: at(0.9),
        }
    }

    /// Whether a next reading of `percent` would contradict what is believed by more than chance.
    pub(in crate::domain::oil_life) fn contradicts(
        &self,
        tool: Option<InstrumentId>,
        spread: Option<Share>,
        shop: &Shop,
        percent: f64,
    ) -> bool {
        let forecast = self.next_reading(percent, tool, spread, shop);
        forecast.tails(self.scale().place(percent)) < CONTRADICTS
    }

    /// What the next reading would show, on the scale, its noise taken at a level of `percent`.
    fn next_reading(&self, percent: f64, tool: Option<InstrumentId>, spread: Option<Share>, shop: &Shop) -> Mixture {
        let mut belief = self.clone();
        let place = belief.place_of(tool);
        let with = belief.with_reading(place);
        let sd = belief.reading_sd(percent, tool, spread, shop);
        belief.forecast_of(place, shown(&with, place) + sd * sd)
    }

    /// The spread an instrument's next reading has, and how far off it may constantly be, points.
    pub(in crate::domain::oil_life) fn noise_of(
        &self,
        tool: Option<InstrumentId>,
        spread: Option<Share>,
        shop: &Shop,
    ) -> [f64; 2] {
        let name = Constant::Bias(tool);
        let at = self.names.iter().position(|n| *n == name);
        let bias = at.map_or(self.quantity.bias_sd(), |at| {
            self.cov.get(CONSTANTS + at, CONSTANTS + at).sqrt()
        });
        let level = self.scale().percent(self.mean(Node::level));
        [self.reading_sd(level, tool, spread, shop), bias]
    }

    /// How far an instrument is believed to be off, points; 0 where none of its readings was seen.
    pub(in crate::domain::oil_life) fn off(&self, tool: Option<InstrumentId>) -> f64 {
        let name = Constant::Bias(tool);
        let at = self.names.iter().position(|n| *n == name);
        at.map_or(0.0, |at| self.mean(|n| n.mean[CONSTANTS + at]))
    }

    /// How likely a reading is for each spread its instrument might have, in logarithms, but for a constant.
    pub(super) fn by_spread(&self, percent: f64, place: Option<usize>) -> BySpread {
        let known = shown(&self.with_reading(place), place);
        SPREADS.map(|spread| {
            let variance = known + spread * spread;
            let likely = |n: &Node| {
                let off = percent - shown(&n.mean, place);
                libm::exp(-off * off / (2.0 * variance))
            };
            // Nothing is impossible: one reading from another pan must not settle what the instrument is like.
            libm::log(self.mean(likely) / variance.sqrt() + 1e-3)
        })
    }
}

/// What a reading shows of means or covariances: the level's, and with it its instrument's error.
fn shown(of: &[f64], place: Option<usize>) -> f64 {
    of[LEVEL] + place.map_or(0.0, |at| of[at])
}
