//! The grid of growth rates a belief lives on, and how likely each is before any reading.

use super::history::FillHistory;
use super::kinetics::heat_factor;
use super::outlook::Habit;
use super::quantity::{Quantity, RatePrior};
use super::shop::Shop;

/// Rates on the grid, evenly spaced in their logarithm.
const NODES: u8 = 33;
/// How far the grid reaches to either side, in standard deviations of the prior.
const REACH_SDS: f64 = 4.0;

/// One rate the grid holds, and what follows if it is the true one.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Node {
    /// Rate an hour at 175 °C.
    pub rate: f64,
    /// Probability; all of them sum to 1.
    pub weight: f64,
    /// Means, on the quantity's scale: of the level, of this fill's fresh value, of what the rate
    /// has gained or lost as a part of it, then of the shop's constants.
    pub mean: Vec<f64>,
}

impl Node {
    /// Mean level, on the scale.
    pub(super) fn level(&self) -> f64 {
        self.mean[super::belief::LEVEL]
    }

    /// The rate an hour at 175 °C by now: what it began with and what it has gained or lost, never nothing.
    pub(super) fn rate_now(&self) -> f64 {
        const LEAST_PART: f64 = 0.1;
        self.rate * (1.0 + self.mean[super::belief::DRIFT]).max(LEAST_PART)
    }
}

/// The rate the owner's usual days imply, as a prior of its own.
///
/// "Usual days" is read as the days after which polar compounds stand near 25 %, the commonest limit, whatever limit
/// is in force: an owner who changes by eye knows no number, and the estimate must not hang on the limit. That level
/// (20–30) and the days (give or take a fifth) make for its spread.
fn usual(quantity: Quantity, history: &FillHistory, habit: &Habit) -> Option<RatePrior> {
    const USUAL_LEVEL: f64 = 25.0;
    const USUAL_LOG_SD: f64 = 0.35;
    let (Quantity::Polar, Some(days)) = (quantity, habit.days) else {
        return None;
    };
    let kept = 1.0 - habit.top_up.a_service();
    let (mut services, mut left) = (0.0, 1.0);
    for _ in 0..days {
        services += left;
        left *= kept;
    }
    let exposure = services * habit.fry.mean_h * heat_factor(habit.temp);
    (exposure > 0.0).then(|| RatePrior {
        median: (USUAL_LEVEL - quantity.fresh(history.fat()).mean) / exposure,
        log_sd: USUAL_LOG_SD,
    })
}

/// The grid before any reading: what this shop's other fills taught, and what the owner usually gets, which counts
/// for less the more fills have taught. Every node's means are `mean`.
pub(super) fn grid(quantity: Quantity, history: &FillHistory, habit: &Habit, shop: &Shop, mean: &[f64]) -> Vec<Node> {
    let taught = shop.rate(quantity, history.fat());
    let fills = f64::from(shop.rates().fills());
    let usual = usual(quantity, history, habit).map(|u| (libm::log(u.median), u.log_sd * (1.0 + fills).sqrt()));
    let weight_of = |sd: f64| 1.0 / (sd * sd);
    let (own, theirs) = (weight_of(taught.log_sd), usual.map_or(0.0, |(_, sd)| weight_of(sd)));
    let towards = usual.map_or(0.0, |(log, _)| log);
    let centre = (own * libm::log(taught.median) + theirs * towards) / (own + theirs);
    let sd = (1.0 / (own + theirs)).sqrt();
    let likely = |log_rate: f64| {
        let by_habit = usual.map_or(1.0, |(log, sd)| {
            let z = (log_rate - log) / sd;
            libm::exp(-0.5 * z * z)
        });
        by_habit * shop.density(quantity, history.fat(), log_rate)
    };
    let step = 2.0 * REACH_SDS / f64::from(NODES - 1);
    let mut nodes: Vec<Node> = (0..NODES)
        .map(|i| {
            let log_rate = centre + sd * (f64::from(i) * step - REACH_SDS);
            Node {
                rate: libm::exp(log_rate),
                weight: likely(log_rate),
                mean: mean.to_vec(),
            }
        })
        .collect();
    let total: f64 = nodes.iter().map(|n| n.weight).sum();
    for node in &mut nodes {
        node.weight /= total;
    }
    nodes
}
