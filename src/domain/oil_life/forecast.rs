//! The services ahead: how likely the oil is over its limit by the end of each.

use super::belief::{Belief, DRIFT, FRESH, LEVEL};
use super::cov::Cov;
use super::grid::Node;
use super::kinetics::{Settling, heat_factor, mixed};
use super::noise::Straying;
use super::normal::above;
use super::outlook::Outlook;
use super::quantity::Scale;

/// Days left are counted up to here; beyond it the answer is "not at this top-up".
pub const MOST_DAYS: u8 = 60;

/// For each service n = 1 … 61 from now, the probability that a quantity has been over its limit at the end of
/// frying in one of the services up to n.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct OverBy(Vec<f64>);

impl OverBy {
    /// Nothing can be over without a limit.
    pub(super) fn never() -> Self {
        Self(vec![0.0; usize::from(MOST_DAYS) + 1])
    }

    /// Runs the usual service forward for every rate on the grid. Given its rate a level only moves towards where it
    /// settles, so the greatest chance met so far is the chance of having been over.
    pub(super) fn ahead(belief: &Belief, outlook: &Outlook, limit: f64) -> Self {
        let service = Service::usual(belief, outlook);
        let limit = service.scale.place(limit);
        let mut over = Self::never();
        for (node, weight) in belief.nodes().iter().zip(belief.weights_by_signs()) {
            let (mut level, mut cov) = (node.level(), service.cov.clone());
            let mut worst: f64 = 0.0;
            for sum in &mut over.0 {
                if worst < 1.0 {
                    level = service.fried(node, level, &mut cov);
                    worst = worst.max(above((limit - level) / cov.get(LEVEL, LEVEL).sqrt()));
                    level = service.topped_up(level, &mut cov);
                }
                *sum += weight * worst;
            }
        }
        over
    }

    /// Both quantities together: over as soon as either is.
    pub(super) fn either(&self, other: &Self) -> Self {
        let both = self.0.iter().zip(&other.0);
        Self(both.map(|(a, b)| 1.0 - (1.0 - a) * (1.0 - b)).collect())
    }

    /// The chance at the end of the next service.
    pub(super) fn next(&self) -> f64 {
        self.0.first().copied().unwrap_or(0.0)
    }

    /// The mean of the services finished before the first that ends over, more than 60 counted as 61.
    pub(super) fn mean_days(&self) -> f64 {
        self.0.iter().map(|over| 1.0 - over).sum()
    }

    /// The chance of not being over in any of the 61: what [`Self::mean_days`] cuts short.
    pub(super) fn outlasts(&self) -> f64 {
        1.0 - self.0.last().copied().unwrap_or(1.0)
    }

    /// The quantile `p` of the services finished before the first that ends over; `None` above [`MOST_DAYS`].
    pub(super) fn days(&self, p: f64) -> Option<u8> {
        let first = self.0.iter().position(|over| *over >= p)?;
        u8::try_from(first).ok()
    }
}

/// The usual service of a fill, worked out once.
pub(super) struct Service {
    scale: Scale,
    hours: f64,
    hours_sd: f64,
    factor: f64,
    straying: Straying,
    cov: Cov,
    share: f64,
    fresh: f64,
}

impl Service {
    pub(super) fn usual(belief: &Belief, outlook: &Outlook) -> Self {
        let quantity = belief.quantity();
        Self {
            scale: quantity.scale(),
            hours: outlook.fry.mean_h,
            hours_sd: outlook.fry.sd_h,
            factor: heat_factor(outlook.temp),
            straying: belief.straying(),
            cov: belief.cov().first(DRIFT + 1),
            share: outlook.top_up,
            fresh: belief.fresh_mean(),
        }
    }

    /// The share of what was in the pan that is left after the usual top-up.
    pub(super) const fn kept(&self) -> f64 {
        1.0 - self.share
    }

    /// The level at the end of frying, at one rate.
    pub(super) fn fried(&self, node: &Node, level: f64, cov: &mut Cov) -> f64 {
        let rate = node.rate_now() * self.factor;
        let by_hours = rate * self.hours_sd;
        cov.mix(LEVEL, 1.0, DRIFT, rate * self.hours);
        cov.blur(
            LEVEL,
            self.straying.level_per_hour * rate * rate * self.hours + by_hours * by_hours,
        );
        cov.blur(DRIFT, self.straying.rate_per_hour * self.hours);
        level + rate * self.hours
    }

    /// The level after the usual top-up.
    pub(super) fn topped_up(&self, level: f64, cov: &mut Cov) -> f64 {
        let before = self.scale.percent(level);
        let after = mixed(before, self.share, self.fresh);
        let step_after = self.scale.points_per_step(after);
        let kept = (1.0 - self.share) * self.scale.points_per_step(before) / step_after;
        let taken = self.share * self.scale.points_per_step(self.fresh) / step_after;
        cov.mix(LEVEL, kept, FRESH, taken);
        self.scale.place(after)
    }
}

/// Where the level settles at the usual frying and top-up, at the rate's median; `None` where it does not.
pub(super) fn settling(belief: &Belief, outlook: &Outlook) -> Option<Settling> {
    let growth = belief.rate_median() * heat_factor(outlook.temp) * outlook.fry.mean_h;
    match belief.quantity().scale() {
        Scale::Points => Settling::linear(belief.fresh_mean(), growth, outlook.top_up),
        Scale::Log => Settling::compounding(belief.fresh_mean(), libm::exp(growth), outlook.top_up),
    }
}
