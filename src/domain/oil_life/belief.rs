//! The estimator: what one fill's history makes us believe of one quantity, now.
//!
//! The growth rate lives on a grid; given the rate, the level, the fill's fresh value and the shop's constants (the
//! error of each instrument, what its fresh oil holds) are normal on the quantity's scale and one reading is one
//! linear update: for a known rate this is the Kalman filter, and the whole belief is a mixture of such filters with
//! one covariance. Three choices keep the laws of `tests/oil_life_laws.rs` true by construction rather than by luck:
//!
//! - Fresh oil thins every rate's level towards the same fresh value, the mean over the rates, so a faster rate always
//!   means a higher level: hours can only spread the mixture.
//! - Noise is a number within a fill; it is learnt between fills ([`super::noise`]).
//! - Nothing here knows a limit, nor what the fill itself taught of usual hours and top-ups, only the habit before it.

use crate::domain::facts::oil::Measured;
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::units::Share;

use super::answer::{Because, Estimate};
use super::constants::{Constant, Constants, between_deliveries};
use super::cov::Cov;
use super::grid::{Node, grid};
use super::history::{Event, FillHistory, Start, What, share_of};
use super::kinetics::{heat_factor, mixed};
use super::noise::{BySpread, SPREADS, Straying};
use super::normal::{Component, above, mixture_quantile};
use super::outlook::{Habit, UsualFry};
use super::quantity::{Quantity, Scale};
use super::shop::Shop;

/// Places of what is believed; the shop's constants follow.
pub(super) const LEVEL: usize = 0;
pub(super) const FRESH: usize = 1;
/// What the rate has gained or lost since the fill began, as a part of it.
pub(super) const DRIFT: usize = 2;
const CONSTANTS: usize = 3;

/// Unlogged services counted at most: beyond it the belief has long settled.
const MOST_UNLOGGED: u16 = 400;
/// A reading this unlikely (two-sided) contradicts what was believed by more than chance.
const CONTRADICTS: f64 = 0.005;
/// Standard deviations beyond which a reading's error counts as larger than its instrument's: it is kept, with as much
/// weight as leaves it this far off.
const FAR_SDS: f64 = 3.0;

/// What is believed of one quantity of one fill.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Belief {
    quantity: Quantity,
    fat: Fat,
    nodes: Vec<Node>,
    /// Each rate's weight before any reading.
    before: Vec<f64>,
    /// How much likelier the signs seen are at each rate.
    hints: Vec<f64>,
    cov: Cov,
    names: Vec<Constant>,
    straying: Straying,
    /// Posterior mean of the fresh value, % m/m, kept because every top-up asks for it and only a reading moves it.
    fresh_percent: f64,
    /// Readings used.
    readings: u16,
    /// Entries that could not be: more fresh oil than the pan held after it.
    folded_around: u16,
    /// Readings that contradict what was believed before them.
    contradicting: Vec<EntryId>,
}

/// One reading and how likely it was for each spread its instrument might have.
type Told = (Option<InstrumentId>, BySpread);

impl Belief {
    /// Folds a fill's whole history.
    pub(super) fn fold(quantity: Quantity, history: &FillHistory, habit: &Habit, shop: &Shop) -> Self {
        let straying = match quantity {
            Quantity::Polar => shop.noise().straying(),
            Quantity::Ffa => quantity.straying(),
        };
        let mut belief = Self::begin(quantity, history, habit, shop, straying);
        for event in history.events() {
            belief.apply(history, habit, shop, event);
        }
        belief
    }

    /// The same for polar compounds that stray one way, with how likely each reading by an instrument of unknown
    /// spread was.
    pub(super) fn told(history: &FillHistory, habit: &Habit, shop: &Shop, straying: Straying) -> (Self, Vec<Told>) {
        let mut belief = Self::begin(Quantity::Polar, history, habit, shop, straying);
        let mut told = Vec::new();
        for event in history.events() {
            if let What::Read {
                value: Measured::Polar(seen),
                instrument,
                spread,
            } = event.what
            {
                let place = belief.place_of(instrument);
                let by_spread = belief.by_spread(seen.percent(), place);
                // A spread its owner knows needs no learning; the reading still counts as one.
                told.push((
                    instrument,
                    if spread.is_some() {
                        [0.0; SPREADS.len()]
                    } else {
                        by_spread
                    },
                ));
            }
            belief.apply(history, habit, shop, event);
        }
        (belief, told)
    }

    fn begin(quantity: Quantity, history: &FillHistory, habit: &Habit, shop: &Shop, straying: Straying) -> Self {
        let fat = history.fat();
        let (constants, fresh) = match quantity {
            Quantity::Polar => {
                let mut constants = shop.constants().clone();
                let fresh = constants.place(Constant::Fresh(fat));
                (constants, Some(fresh))
            }
            Quantity::Ffa => (Constants::unknown(), None),
        };
        let mut cov = Cov::exact(CONSTANTS + constants.cov().len());
        for a in 0..constants.cov().len() {
            for b in 0..=a {
                cov.set(CONSTANTS + a, CONSTANTS + b, constants.cov().get(a, b));
            }
        }
        let prior = quantity.fresh(fat);
        let scale = quantity.scale();
        let (fresh_mean, delivery_var) = match fresh {
            Some(at) => {
                cov.mix(FRESH, 0.0, CONSTANTS + at, 1.0);
                (constants.mean()[at], between_deliveries(fat))
            }
            None => scale.normal(prior.mean, prior.sd),
        };
        cov.blur(FRESH, delivery_var);
        cov.mix(LEVEL, 0.0, FRESH, 1.0);
        let mut mean = vec![fresh_mean, fresh_mean, 0.0];
        mean.extend(constants.mean());
        let nodes = grid(quantity, history, habit, shop, &mean);
        let fresh_percent = match fresh {
            Some(_) => fresh_mean,
            None => prior.mean,
        };
        let mut belief = Self {
            quantity,
            fat,
            before: nodes.iter().map(|n| n.weight).collect(),
            hints: vec![1.0; nodes.len()],
            nodes,
            cov,
            names: constants.names().to_vec(),
            straying,
            fresh_percent,
            readings: 0,
            folded_around: 0,
            contradicting: Vec::new(),
        };
        match history.start() {
            Start::Fresh => {}
            Start::Worked { services } => {
                for _ in 0..services.min(MOST_UNLOGGED) {
                    belief.guess_hours(habit.fry, heat_factor(habit.temp));
                    belief.mix_fresh(habit.top_up.a_service());
                }
            }
            Start::Unknown => {
                let (percent, sd) = quantity.of_unknown_age();
                let (mean, var) = scale.normal(percent, sd);
                for node in &mut belief.nodes {
                    node.mean[LEVEL] = mean;
                }
                belief.cov.mix(LEVEL, 0.0, FRESH, 0.0);
                belief.cov.blur(LEVEL, var);
            }
        }
        belief
    }

    fn apply(&mut self, history: &FillHistory, habit: &Habit, shop: &Shop, event: &Event) {
        match event.what {
            What::Fried { fry, temp, load: _ } => self.grow(fry.hours(), temp.map_or(1.0, heat_factor)),
            What::Unlogged { temp } => self.guess_hours(habit.fry, heat_factor(temp.unwrap_or(habit.temp))),
            What::Topped { fat, added, after } => match share_of(added, after) {
                Some(share) if fat == history.fat() => self.mix_fresh(share),
                Some(share) => {
                    let other = self.quantity.fresh(fat);
                    self.mix_other(share, other.mean, other.sd);
                }
                None => self.folded_around = self.folded_around.saturating_add(1),
            },
            What::MovedIn { oil, added, after } => match share_of(added, after) {
                Some(share) => {
                    let (mean, sd) = self.quantity.incoming(oil);
                    self.mix_other(share, mean, sd);
                }
                None => self.folded_around = self.folded_around.saturating_add(1),
            },
            What::Read {
                value,
                instrument,
                spread,
            } => {
                if let Some(percent) = self.quantity.measured(value) {
                    let sd = self.reading_sd(percent, instrument, spread, shop);
                    self.read(event.entry, percent, instrument, sd);
                }
            }
            What::Sign(_) => self.hint(),
            What::Filtered => {}
        }
    }

    /// A sign was noticed: the more worn the oil, the likelier that is. It gives no number (Takeoka et al. 1997 on
    /// colour) and so moves no level; it raises the odds of the faster rates in what is ahead, at most twofold.
    ///
    /// About half of such signs are taken to say nothing, the rest to set in around 14 % polar compounds, where tasters
    /// turn food away (Moosavi & Farhoosh 2023), give or take five points; the two halves are our own choice.
    fn hint(&mut self) {
        const SET_IN: f64 = 14.0;
        const GIVE_OR_TAKE: f64 = 5.0;
        match self.quantity {
            Quantity::Ffa => {}
            Quantity::Polar => {
                let sd = (GIVE_OR_TAKE * GIVE_OR_TAKE + self.cov.get(LEVEL, LEVEL)).sqrt();
                for (hint, node) in self.hints.iter_mut().zip(&self.nodes) {
                    *hint *= 0.5 + 0.5 * above((SET_IN - node.level()) / sd);
                }
            }
        }
    }

    /// The rates' weights with what signs hint at.
    pub(super) fn weights_by_signs(&self) -> Vec<f64> {
        let weights = self.nodes.iter().zip(&self.hints).map(|(n, hint)| n.weight * hint);
        let total: f64 = weights.clone().sum();
        weights.map(|weight| weight / total).collect()
    }

    fn reading_sd(&self, percent: f64, tool: Option<InstrumentId>, spread: Option<Share>, shop: &Shop) -> f64 {
        let known = spread.map(Share::percent).or(match self.quantity {
            Quantity::Polar => Some(shop.noise().spread(tool)),
            Quantity::Ffa => None,
        });
        self.quantity.reading_sd(percent, known)
    }

    /// Hours at frying temperature.
    fn grow(&mut self, hours: f64, factor: f64) {
        let exposure = hours * factor;
        let rate = self.mean(Node::rate_now);
        for node in &mut self.nodes {
            node.mean[LEVEL] += node.rate_now() * exposure;
        }
        let by_rate = rate * exposure;
        self.cov.mix(LEVEL, 1.0, DRIFT, by_rate);
        self.cov
            .blur(LEVEL, self.straying.level_per_hour * by_rate * rate * factor);
        self.cov.blur(DRIFT, self.straying.rate_per_hour * hours);
    }

    /// A service whose hours nobody logged: the usual ones, with their spread.
    fn guess_hours(&mut self, usual: UsualFry, factor: f64) {
        self.grow(usual.mean_h, factor);
        let by_hours = self.mean(Node::rate_now) * factor * usual.sd_h;
        self.cov.blur(LEVEL, by_hours * by_hours);
    }

    /// More of this fill's own fresh oil stirred in.
    fn mix_fresh(&mut self, share: f64) {
        let (kept, taken) = self.thin(share, self.fresh_percent);
        self.cov.mix(LEVEL, kept, FRESH, taken);
    }

    /// Other oil stirred in: `share` of what is then in the pan holds `percent` ± `sd` points.
    fn mix_other(&mut self, share: f64, percent: f64, sd: f64) {
        let (kept, taken) = self.thin(share, percent);
        self.cov.mix(LEVEL, kept, FRESH, 0.0);
        let points = self.scale().points_per_step(percent);
        self.cov.blur(LEVEL, (taken * sd / points) * (taken * sd / points));
    }

    /// Moves every level towards `percent` by `share`; gives what a step of the level before, and a step of what came
    /// in, is worth in steps of the level after. Where the scale is curved, one spread for all rates keeps them in
    /// order; it is taken at their mean.
    fn thin(&mut self, share: f64, percent: f64) -> (f64, f64) {
        let scale = self.scale();
        let before = scale.percent(self.mean(Node::level));
        let step_after = scale.points_per_step(mixed(before, share, percent));
        for node in &mut self.nodes {
            node.mean[LEVEL] = scale.place(mixed(scale.percent(node.mean[LEVEL]), share, percent));
        }
        (
            (1.0 - share) * scale.points_per_step(before) / step_after,
            share * scale.points_per_step(percent) / step_after,
        )
    }

    /// A measured value.
    fn read(&mut self, entry: EntryId, percent: f64, tool: Option<InstrumentId>, sd: f64) {
        let seen = self.scale().place(percent);
        let place = self.place_of(tool);
        let with = self.with_reading(place);
        let known = shown(&with, place) + sd * sd;
        let forecast = self.forecast_of(place, known);
        if forecast.tails(seen) < CONTRADICTS {
            self.contradicting.push(entry);
        }
        let off = (seen - forecast.median()) / known.sqrt();
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
    fn place_of(&mut self, tool: Option<InstrumentId>) -> Option<usize> {
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
    pub(super) fn reading_ahead(&self, tool: Option<InstrumentId>, spread: Option<Share>, shop: &Shop) -> Estimate {
        let mut belief = self.clone();
        let place = belief.place_of(tool);
        let with = belief.with_reading(place);
        let level = belief.scale().percent(belief.mean(Node::level));
        let sd = belief.reading_sd(level, tool, spread, shop);
        let forecast = belief.forecast_of(place, shown(&with, place) + sd * sd);
        let at = |p| belief.scale().percent(forecast.quantile(p)).max(0.0);
        Estimate {
            low: at(0.1),
            median: at(0.5),
            high: at(0.9),
        }
    }

    /// How far each instrument this fill was read with is trusted, in the order they were first used.
    pub(super) fn instruments(&self, history: &FillHistory, shop: &Shop) -> Vec<Because> {
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

    /// The spread an instrument's next reading has, and how far off it may constantly be, points.
    pub(super) fn noise_of(&self, tool: Option<InstrumentId>, spread: Option<Share>, shop: &Shop) -> [f64; 2] {
        let name = Constant::Bias(tool);
        let at = self.names.iter().position(|n| *n == name);
        let bias = at.map_or(self.quantity.bias_sd(), |at| {
            self.cov.get(CONSTANTS + at, CONSTANTS + at).sqrt()
        });
        let level = self.scale().percent(self.mean(Node::level));
        [self.reading_sd(level, tool, spread, shop), bias]
    }

    /// How far an instrument is believed to be off, points; 0 where none of its readings was seen.
    pub(super) fn off(&self, tool: Option<InstrumentId>) -> f64 {
        let name = Constant::Bias(tool);
        let at = self.names.iter().position(|n| *n == name);
        at.map_or(0.0, |at| self.mean(|n| n.mean[CONSTANTS + at]))
    }

    /// How likely a reading is for each spread its instrument might have, in logarithms, but for a constant.
    fn by_spread(&self, percent: f64, place: Option<usize>) -> BySpread {
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

    /// How likely the readings were at each rate (its logarithm), but for a constant factor.
    pub(super) fn likely_rates(&self) -> Vec<(f64, f64)> {
        let nodes = self.nodes.iter().zip(&self.before);
        nodes
            .map(|(n, before)| (libm::log(n.rate), n.weight / before))
            .collect()
    }

    /// The shop's constants as this fill's readings leave them: mean and covariance of the mixture.
    pub(super) fn constants(&self) -> Constants {
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

    /// Given the rate, on the scale: covariance of level, fresh value and drift of the rate.
    pub(super) const fn cov(&self) -> &Cov {
        &self.cov
    }

    /// The quantile `p` of the level now, % m/m, never under nothing.
    pub(super) fn quantile(&self, p: f64) -> f64 {
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
    pub(super) fn rate_median(&self) -> f64 {
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

    pub(super) fn nodes(&self) -> &[Node] {
        &self.nodes
    }

    pub(super) const fn quantity(&self) -> Quantity {
        self.quantity
    }

    /// How far it may stray from steady growth.
    pub(super) const fn straying(&self) -> Straying {
        self.straying
    }

    pub(super) const fn readings(&self) -> u16 {
        self.readings
    }

    pub(super) const fn folded_around(&self) -> u16 {
        self.folded_around
    }

    /// Readings that contradicted what was believed before them, oldest first.
    pub(super) fn contradicting(&self) -> &[EntryId] {
        &self.contradicting
    }
}

/// What a reading shows of means or covariances: the level's, and with it its instrument's error.
fn shown(of: &[f64], place: Option<usize>) -> f64 {
    of[LEVEL] + place.map_or(0.0, |at| of[at])
}

/// Normals with one spread.
struct Mixture {
    components: Vec<Component>,
    sd: f64,
}

impl Mixture {
    fn quantile(&self, p: f64) -> f64 {
        mixture_quantile(&self.components, self.sd, p)
    }

    fn median(&self) -> f64 {
        self.quantile(0.5)
    }

    /// How likely it is to be at least as far out as `x`, to either side.
    fn tails(&self, x: f64) -> f64 {
        let over: f64 = self
            .components
            .iter()
            .map(|c| c.weight * above((x - c.mean) / self.sd))
            .sum();
        2.0 * over.min(1.0 - over)
    }
}
