//! The estimator: what one fill's history makes us believe of one quantity, now.
//!
//! The growth rate lives on a grid; given the rate, level and fresh value are normal on the quantity's scale and one
//! reading is one linear update, so the whole belief is a mixture of normals with a common spread. Three choices keep the laws of
//! `tests/oil_life_laws.rs` true by construction rather than by luck:
//!
//! - Each batch of fresh oil is its own draw, so a faster rate always means a higher level: hours can only spread
//!   the mixture (the means move apart in order, and a common normal error preserves that).
//! - An instrument's constant error is not estimated but carried along, and a reading weighs exactly as much as
//!   makes the level best known: a second reading with the same instrument teaches the rate, not the level twice.
//! - Nothing here knows a limit, so a limit cannot change what is believed.

use crate::domain::ids::InstrumentId;
use crate::domain::units::Share;

use super::history::{Event, FillHistory, Start, What, share_of};
use super::kinetics::{heat_factor, mixed};
use super::normal::{Component, mixture_quantile};
use super::outlook::Outlook;
use super::quantity::{Quantity, RatePrior, Scale};

/// Rates on the grid, evenly spaced in their logarithm.
const NODES: u8 = 33;
/// How far the grid reaches to either side, in standard deviations of the prior.
const REACH_SDS: f64 = 4.0;
/// Unlogged services counted at most: beyond it the belief has long settled.
const MOST_UNLOGGED: u16 = 400;

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

/// What is believed of one quantity of one fill.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Belief {
    quantity: Quantity,
    nodes: Vec<Node>,
    /// Variance of the level given the rate, instrument errors apart.
    level_var: f64,
    /// Variance of the fresh value given the rate.
    fresh_var: f64,
    /// Their covariance.
    level_fresh_cov: f64,
    /// Posterior mean of the fresh value, % m/m, kept because every top-up asks for it and only a reading moves it.
    fresh_percent: f64,
    /// How much of each instrument's constant error the level has taken in, 0–1.
    biases: Vec<(Option<InstrumentId>, f64)>,
    /// Readings used.
    readings: u16,
    /// Entries that could not be: more fresh oil than the pan held after it.
    folded_around: u16,
}

impl Belief {
    /// Folds a fill's whole history.
    pub(super) fn fold(quantity: Quantity, history: &FillHistory, outlook: &Outlook) -> Self {
        let mut belief = Self::begin(quantity, history, outlook);
        for event in history.events() {
            belief.apply(history, event);
        }
        belief
    }

    fn begin(quantity: Quantity, history: &FillHistory, outlook: &Outlook) -> Self {
        let fresh = quantity.fresh(history.fat());
        let (mean, fresh_var) = quantity.scale().normal(fresh.mean, fresh.sd);
        let mut belief = Self {
            quantity,
            nodes: grid(rate_prior(quantity, history, outlook), mean),
            level_var: fresh_var,
            fresh_var,
            level_fresh_cov: fresh_var,
            fresh_percent: fresh.mean,
            biases: Vec::new(),
            readings: 0,
            folded_around: 0,
        };
        match history.start() {
            Start::Fresh => {}
            Start::Worked { services } => {
                for _ in 0..services.min(MOST_UNLOGGED) {
                    belief.guess_service(outlook);
                }
            }
            Start::Unknown => {
                let (percent, sd) = quantity.of_unknown_age();
                let (mean, var) = quantity.scale().normal(percent, sd);
                for node in &mut belief.nodes {
                    node.level = mean;
                }
                belief.level_var = var;
                belief.level_fresh_cov = 0.0;
            }
        }
        belief
    }

    /// A service nobody logged: usual hours, with their spread, and the usual top-up.
    fn guess_service(&mut self, outlook: &Outlook) {
        let factor = heat_factor(outlook.temp);
        self.grow(outlook.fry.mean_h, factor);
        let by_hours = self.mean(|n| n.rate) * factor * outlook.fry.sd_h;
        self.level_var += by_hours * by_hours;
        self.mix_fresh(outlook.top_up);
    }

    fn apply(&mut self, history: &FillHistory, event: &Event) {
        match event.what {
            What::Fried { fry, temp, load: _ } => self.grow(fry.hours(), temp.map_or(1.0, heat_factor)),
            What::Topped { fat, added, after } => match share_of(added, after) {
                Some(share) if fat == history.fat() => self.mix_fresh(share),
                Some(share) => {
                    let other = self.quantity.fresh(fat);
                    self.mix(share, other.mean, other.sd);
                }
                None => self.folded_around = self.folded_around.saturating_add(1),
            },
            What::MovedIn { oil, added, after } => match share_of(added, after) {
                Some(share) => {
                    let (mean, sd) = self.quantity.incoming(oil);
                    self.mix(share, mean, sd);
                }
                None => self.folded_around = self.folded_around.saturating_add(1),
            },
            What::Read {
                value,
                instrument,
                spread,
            } => {
                if let Some(percent) = self.quantity.measured(value) {
                    self.read(percent, instrument, spread);
                }
            }
            What::Sign(_) | What::Filtered => {}
        }
    }

    /// Hours at frying temperature.
    fn grow(&mut self, hours: f64, factor: f64) {
        for node in &mut self.nodes {
            node.level += node.rate * hours * factor;
        }
        self.level_var += self.quantity.wander_per_hour() * hours;
    }

    /// Another batch of this fill's own fresh oil stirred in.
    fn mix_fresh(&mut self, share: f64) {
        self.mix(share, self.fresh_mean(), self.fresh_sd());
    }

    /// Other oil stirred in: `share` of what is then in the pan holds `percent` ± `sd` points.
    fn mix(&mut self, share: f64, percent: f64, sd: f64) {
        let scale = self.scale();
        let before = scale.percent(self.mean(|n| n.level));
        let step_after = scale.points_per_step(mixed(before, share, percent));
        for node in &mut self.nodes {
            node.level = scale.place(mixed(scale.percent(node.level), share, percent));
        }
        // Where the scale is curved, one spread for all rates keeps them in order; it is taken at their mean.
        let kept = (1.0 - share) * scale.points_per_step(before) / step_after;
        let added = share * sd / step_after;
        self.level_var = kept * kept * self.level_var + added * added;
        self.level_fresh_cov *= kept;
        for (_, taken) in &mut self.biases {
            *taken *= kept;
        }
    }

    /// A measured value.
    fn read(&mut self, percent: f64, instrument: Option<InstrumentId>, spread: Option<Share>) {
        let seen = self.scale().place(percent);
        let sd = self.quantity.reading_sd(percent, spread.map(Share::percent));
        let bias_var = self.quantity.bias_sd() * self.quantity.bias_sd();
        let slot = self.slot_of(instrument);
        let taken = self.biases[slot].1;
        // The level's own error apart from this instrument's, and the variance of what the reading should show.
        let other = self.level_var + bias_var * (self.taken_squared() - taken * taken);
        let missing = 1.0 - taken;
        let expected = other + sd * sd + bias_var * missing * missing;
        let gain = ((other - bias_var * taken * missing) / expected).clamp(0.0, 1.0);
        let fresh_gain = self.level_fresh_cov / expected;

        self.weigh(seen, expected);
        for node in &mut self.nodes {
            let surprise = seen - node.level;
            node.level += gain * surprise;
            node.fresh += fresh_gain * surprise;
        }
        let kept = 1.0 - gain;
        self.level_var = kept * kept * self.level_var + gain * gain * sd * sd;
        self.fresh_var = (self.fresh_var - fresh_gain * self.level_fresh_cov).max(0.0);
        self.level_fresh_cov *= kept;
        self.fresh_percent = self.mean(|n| self.scale().mean_percent(n.fresh, self.fresh_var));
        for (at, (_, bias)) in self.biases.iter_mut().enumerate() {
            *bias = *bias * kept + if at == slot { gain } else { 0.0 };
        }
        self.readings = self.readings.saturating_add(1);
    }

    /// Bayes' rule over the rates: each is as likely as it made the reading.
    fn weigh(&mut self, seen: f64, variance: f64) {
        let misfit = |node: &Node| (seen - node.level) * (seen - node.level) / (2.0 * variance);
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

    fn slot_of(&mut self, instrument: Option<InstrumentId>) -> usize {
        self.biases
            .iter()
            .position(|(id, _)| *id == instrument)
            .unwrap_or_else(|| {
                self.biases.push((instrument, 0.0));
                self.biases.len() - 1
            })
    }

    fn taken_squared(&self) -> f64 {
        self.biases.iter().map(|(_, taken)| taken * taken).sum()
    }

    fn mean(&self, of: impl Fn(&Node) -> f64) -> f64 {
        self.nodes.iter().map(|n| n.weight * of(n)).sum()
    }

    const fn scale(&self) -> Scale {
        self.quantity.scale()
    }

    /// Posterior mean of this fill's fresh value, % m/m.
    pub(super) const fn fresh_mean(&self) -> f64 {
        self.fresh_percent
    }

    /// Standard deviation of a batch of its fresh oil, points.
    pub(super) fn fresh_sd(&self) -> f64 {
        self.scale().points_per_step(self.fresh_percent) * self.fresh_var.sqrt()
    }

    /// Variance of the level on the scale, given the rate, instrument errors included.
    pub(super) fn level_var(&self) -> f64 {
        self.level_var + self.quantity.bias_sd() * self.quantity.bias_sd() * self.taken_squared()
    }

    /// The quantile `p` of the level now, % m/m, never under nothing.
    pub(super) fn quantile(&self, p: f64) -> f64 {
        let place = mixture_quantile(&self.components(), self.level_var().sqrt(), p);
        self.scale().percent(place).max(0.0)
    }

    /// The median of the rate, an hour at 175 °C, between the two rates of the grid it falls between.
    pub(super) fn rate_median(&self) -> f64 {
        let (mut below, mut last) = (0.0, None::<(f64, f64)>);
        for node in &self.nodes {
            let up_to = below + 0.5 * node.weight;
            if up_to >= 0.5 {
                return last.map_or(node.rate, |(rate, before)| {
                    rate + (node.rate - rate) * (0.5 - before) / (up_to - before)
                });
            }
            below += node.weight;
            last = Some((node.rate, up_to));
        }
        self.mean(|n| n.rate)
    }

    fn components(&self) -> Vec<Component> {
        self.nodes
            .iter()
            .map(|n| Component {
                weight: n.weight,
                mean: n.level,
            })
            .collect()
    }

    pub(super) fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    pub(super) const fn quantity(&self) -> Quantity {
        self.quantity
    }

    pub(super) const fn readings(&self) -> u16 {
        self.readings
    }

    pub(super) const fn folded_around(&self) -> u16 {
        self.folded_around
    }
}

/// The rate before any reading: the published spread, and for polar compounds what the owner usually gets.
///
/// "Usual days" is read as the days after which polar compounds stand near 25 %, the commonest limit, whatever limit
/// is in force: an owner who changes by eye knows no number, and the estimate must not hang on the limit. That level
/// (20–30) and the days (give or take a fifth) make for its spread.
fn rate_prior(quantity: Quantity, history: &FillHistory, outlook: &Outlook) -> RatePrior {
    const USUAL_LEVEL: f64 = 25.0;
    const USUAL_LOG_SD: f64 = 0.35;
    let published = quantity.rate();
    let (Quantity::Polar, Some(days)) = (quantity, outlook.usual_days) else {
        return published;
    };
    let kept = 1.0 - outlook.top_up;
    let (mut services, mut left) = (0.0, 1.0);
    for _ in 0..days {
        services += left;
        left *= kept;
    }
    let exposure = services * outlook.fry.mean_h * heat_factor(outlook.temp);
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

fn grid(prior: RatePrior, fresh: f64) -> Vec<Node> {
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
