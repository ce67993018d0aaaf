//! When the next reading is worth most: on the evening it is likeliest to change what is done.
//!
//! Each evening the oil is changed or fried in once more. Whichever is less likely wrong is done, and is wrong with
//! some chance; a reading that evening lowers that chance by an amount that can be foretold from what it may show.

use super::belief::{Belief, DRIFT, LEVEL};
use super::cov::Cov;
use super::forecast::Service;
use super::normal::above;
use super::outlook::Outlook;
use super::quantity::Quantity;

/// When to measure next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NextReading {
    /// Services from now after which to measure; 0 is now.
    pub services: u8,
    /// By how much it lowers the chance of doing the wrong thing that evening, 0–0.5.
    pub worth: f64,
}

/// Evenings looked at: two weeks of trading.
const EVENINGS: u8 = 14;
/// Under this a reading would change nothing worth the trouble.
const LEAST_WORTH: f64 = 0.01;
/// The first evening that is worth this part of the best one is the one to measure on: what a reading says early can
/// still be acted on. Our own choice.
const EARLY_PART: f64 = 0.5;
/// Places of a reading that are tried, evenly spaced over where it may fall.
const PLACES: u8 = 41;
const REACH_SDS: f64 = 3.5;

/// One rate's part on one evening: how likely it is, what a reading would show, what the next service leaves.
struct Case {
    weight: f64,
    shown: f64,
    next: f64,
}

/// The evening to measure on under a limit on polar compounds, % m/m, read with an instrument of this spread and possible
/// constant error (both one standard deviation, points); `None` where no reading would change what is done.
pub(super) fn next_reading(belief: &Belief, outlook: &Outlook, limit: f64, noise: [f64; 2]) -> Option<NextReading> {
    debug_assert_eq!(belief.quantity(), Quantity::Polar);
    let service = Service::usual(belief, outlook);
    let noise = noise[0] * noise[0] + noise[1] * noise[1];
    let mut levels: Vec<f64> = belief.nodes().iter().map(super::grid::Node::level).collect();
    let mut cov = belief.cov().first(DRIFT + 1);
    let mut evenings = Vec::new();
    for services in 0..=EVENINGS {
        let worth = worth(belief, &service, &levels, &cov, limit, noise);
        evenings.push(NextReading { services, worth });
        let mut after = cov.clone();
        for (node, level) in belief.nodes().iter().zip(&mut levels) {
            let mut its = cov.clone();
            *level = service.topped_up(*level, &mut its);
            *level = service.fried(node, *level, &mut its);
            after = its;
        }
        cov = after;
    }
    let most = evenings.iter().map(|evening| evening.worth).fold(0.0, f64::max);
    let enough = (EARLY_PART * most).max(LEAST_WORTH);
    evenings.into_iter().find(|evening| evening.worth >= enough)
}

/// How much a reading on an evening, after frying and before the top-up, lowers the chance of being wrong.
fn worth(belief: &Belief, service: &Service, levels: &[f64], cov: &Cov, limit: f64, noise: f64) -> f64 {
    let mut ahead = cov.clone();
    let cases = belief.nodes().iter().zip(levels).map(|(node, level)| {
        let mut its = cov.clone();
        let topped = service.topped_up(*level, &mut its);
        let next = service.fried(node, topped, &mut its);
        ahead = its;
        Case {
            weight: node.weight,
            shown: *level,
            next,
        }
    });
    let cases: Vec<Case> = cases.collect();
    let of_reading = cov.get(LEVEL, LEVEL) + noise;
    let of_next = ahead.get(LEVEL, LEVEL);
    // What is left of tonight's level in tomorrow's is its share after the top-up.
    let kept = service.kept() * cov.get(LEVEL, LEVEL);
    let gain = kept / of_reading;
    let left = (of_next - gain * kept).max(1e-9).sqrt();
    let wrong = |over: f64| over.min(1.0 - over);
    let before: f64 = cases
        .iter()
        .map(|c| c.weight * above((limit - c.next) / of_next.sqrt()))
        .sum();
    let sd = of_reading.sqrt();
    let low = cases.iter().map(|c| c.shown).fold(f64::INFINITY, f64::min) - REACH_SDS * sd;
    let high = cases.iter().map(|c| c.shown).fold(f64::NEG_INFINITY, f64::max) + REACH_SDS * sd;
    let step = (high - low) / f64::from(PLACES - 1);
    let (mut all, mut after) = (0.0, 0.0);
    for place in 0..PLACES {
        let seen = low + f64::from(place) * step;
        let (mut likely, mut over) = (0.0, 0.0);
        for case in &cases {
            let off = seen - case.shown;
            let weight = case.weight * libm::exp(-0.5 * off * off / of_reading);
            likely += weight;
            over += weight * above((limit - case.next - gain * off) / left);
        }
        all += likely;
        if likely > 0.0 {
            after += likely * wrong(over / likely);
        }
    }
    wrong(before) - after / all
}
