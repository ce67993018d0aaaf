//! What is believed, as the rest of oil life asks for it.

use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::oil_life::answer::Because;
use crate::domain::oil_life::constants::Constants;
use crate::domain::oil_life::cov::Cov;
use crate::domain::oil_life::grid::Node;
use crate::domain::oil_life::history::{FillHistory, What};
use crate::domain::oil_life::noise::Straying;
use crate::domain::oil_life::normal::{Component, Mixture};
use crate::domain::oil_life::quantity::Quantity;
use crate::domain::oil_life::shop::Shop;

use super::{Belief, CONSTANTS, LEVEL};

impl Belief {
    /// The rates' weights with what signs hint at.
    pub(in crate::domain::oil_life) fn weights_by_signs(&self) -> Vec<f64> {
        let weights = self.nodes.iter().zip(&self.hints).map(|(n, hint)| n.weight * hint);
        let total: f64 = weights.clone().sum();
        weights.map(|weight| weight / total).collect()
    }

    /// How far each instrument this fill was read with is trusted, in the order they were first used.
    pub(in crate::domain::oil_life) fn instruments(&self, history: &FillHistory, shop: &Shop) -> Vec<Because> {
        let mut seen: Vec<Option<InstrumentId>> = Vec::new();
        let mut all = Vec::new();
        for event in history.events() {
            if let What::Read {
                value,
                instrument,
                spread,
            } = event.what
                && self.quantity.measured(value).is_some()
                && !seen.contains(&instrument)
            {
                seen.push(instrument);
                all.push(Because::Instrument {
                    instrument,
                    spread: self.noise_of(instrument, spread, shop)[0],
                    off: self.off(instrument),
                });
            }
        }
        all
    }

    /// How likely the readings were at each rate (its logarithm), but for a constant factor.
    pub(in crate::domain::oil_life) fn likely_rates(&self) -> Vec<(f64, f64)> {
        let nodes = self.nodes.iter().zip(&self.before);
        nodes
            .map(|(n, before)| (libm::log(n.rate), n.weight / before))
            .collect()
    }

    /// The shop's constants as this fill's readings leave them: mean and covariance of the mixture.
    pub(in crate::domain::oil_life) fn constants(&self) -> Constants {
        let count = self.names.len();
        let mean: Vec<f64> = (0..count).map(|a| self.mean(|n| n.mean[CONSTANTS + a])).collect();
        let mut cov = Cov::exact(count);
        for a in 0..count {
            for b in 0..=a {
                let apart = |n: &Node| (n.mean[CONSTANTS + a] - mean[a]) * (n.mean[CONSTANTS + b] - mean[b]);
                cov.set(a, b, self.cov.get(CONSTANTS + a, CONSTANTS + b) + self.mean(apart));
            }
        }
        Constants::learnt(self.names.clone(), mean, cov)
    }

    /// Posterior mean of this fill's fresh value, % m/m.
    pub(in crate::domain::oil_life) const fn fresh_mean(&self) -> f64 {
        self.fresh_percent
    }

    /// Given the rate, on the scale: covariance of level, fresh value and drift of the rate.
    pub(in crate::domain::oil_life) const fn cov(&self) -> &Cov {
        &self.cov
    }

    /// The quantile `p` of the level now, % m/m, never under nothing.
    pub(in crate::domain::oil_life) fn quantile(&self, p: f64) -> f64 {
        let now = self.forecast_level();
        self.scale().percent(now.quantile(p)).max(0.0)
    }

    fn forecast_level(&self) -> Mixture {
        let components = self.nodes.iter().map(|n| Component {
            weight: n.weight,
            mean: n.level(),
        });
        Mixture {
            components: components.collect(),
            sd: self.cov.get(LEVEL, LEVEL).sqrt(),
        }
    }

    /// The median of the rate, an hour at 175 °C, between the two rates of the grid it falls between.
    pub(in crate::domain::oil_life) fn rate_median(&self) -> f64 {
        let (mut below, mut last) = (0.0, None::<(f64, f64)>);
        for node in &self.nodes {
            let up_to = below + 0.5 * node.weight;
            if up_to >= 0.5 {
                return last.map_or(node.rate_now(), |(rate, before)| {
                    rate + (node.rate_now() - rate) * (0.5 - before) / (up_to - before)
                });
            }
            below += node.weight;
            last = Some((node.rate_now(), up_to));
        }
        self.mean(Node::rate_now)
    }

    pub(in crate::domain::oil_life) fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    pub(in crate::domain::oil_life) const fn quantity(&self) -> Quantity {
        self.quantity
    }

    /// How far it may stray from steady growth.
    pub(in crate::domain::oil_life) const fn straying(&self) -> Straying {
        self.straying
    }

    pub(in crate::domain::oil_life) const fn readings(&self) -> u16 {
        self.readings
    }

    pub(in crate::domain::oil_life) const fn folded_around(&self) -> u16 {
        self.folded_around
    }

    /// Readings that contradicted what was believed before them, oldest first.
    pub(in crate::domain::oil_life) fn contradicting(&self) -> &[EntryId] {
        &self.contradicting
    }
}
