//! The grid of growth rates a belief lives on, and how likely each is before any reading.

use super::history::FillHistory;
use super::kinetics::heat_factor;
use super::outlook::Habit;
use super::quantity::{Quantity, RatePrior};

/// Rates on the grid, evenly spaced in their logarithm.
const NODES: u8 = 33;
/// How far the grid reaches to either side, in standard deviations of the prior.
const REACH_SDS: f64 = 4.0;

/// One rate the grid holds, and what follows if it is the true one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Node {
    /// Rate an hour at 175 °C.
    pub rate: f64,
    /// Probability; all of them sum to 1.
    pub weight: f64,
    /// Mean level, on the scale.
    pub level: f64,
    /// Mean of this fill's fresh value, on the scale.
    pub fresh: f64,
}

/// The rate before any reading: the published spread, and for polar compounds what the owner usually gets.
///
/// "Usual days" is read as the days after which polar compounds stand near 25 %, the commonest limit, whatever limit
/// is in force: an owner who changes by eye knows no number, and the estimate must not hang on the limit. That level
/// (20–30) and the days (give or take a fifth) make for its spread.
pub(super) fn rate_prior(quantity: Quantity, history: &FillHistory, habit: &Habit) -> RatePrior {
    const USUAL_LEVEL: f64 = 25.0;
    const USUAL_LOG_SD: f64 = 0.35;
    let published = quantity.rate();
    let (Quantity::Polar, Some(days)) = (quantity, habit.days) else {
        return published;
    };
    let kept = 1.0 - habit.top_up;
    let (mut services, mut left) = (0.0, 1.0);
    for _ in 0..days {
        services += left;
        left *= kept;
    }
    let exposure = services * habit.fry.mean_h * heat_factor(habit.temp);
    if exposure <= 0.0 {
        return published;
    }
    let usual = (USUAL_LEVEL - quantity.fresh(history.fat()).mean) / exposure;
    let (for_published, for_usual) = (
        1.0 / (published.log_sd * published.log_sd),
        1.0 / (USUAL_LOG_SD * USUAL_LOG_SD),
    );
    let log =
        (for_published * libm::log(published.median) + for_usual * libm::log(usual)) / (for_published + for_usual);
    RatePrior {
        median: libm::exp(log),
        log_sd: (1.0 / (for_published + for_usual)).sqrt(),
    }
}

/// The grid before any reading, level and fresh value at `fresh` on the scale.
pub(super) fn grid(prior: RatePrior, fresh: f64) -> Vec<Node> {
    let step = 2.0 * REACH_SDS / f64::from(NODES - 1);
    let mut nodes: Vec<Node> = (0..NODES)
        .map(|i| {
            let z = f64::from(i) * step - REACH_SDS;
            Node {
                rate: prior.median * libm::exp(prior.log_sd * z),
                weight: libm::exp(-0.5 * z * z),
                level: fresh,
                fresh,
            }
        })
        .collect();
    let total: f64 = nodes.iter().map(|n| n.weight).sum();
    for node in &mut nodes {
        node.weight /= total;
    }
    nodes
}
