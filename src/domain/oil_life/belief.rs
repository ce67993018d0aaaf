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

mod answers;
mod readings;

use crate::domain::facts::oil::Measured;
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::units::Share;

use super::constants::{Constant, Constants, between_deliveries};
use super::cov::Cov;
use super::grid::{Node, grid};
use super::history::{Event, FillHistory, Start, What, share_of};
use super::kinetics::{heat_factor, mixed};
use super::noise::{BySpread, SPREADS, Straying};
use super::normal::above;
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
    /// Whether its colour still tells anything: not once a powder took colour out.
    colour_tells: bool,
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
        Self::fold_through(quantity, history, habit, shop, &mut |_, _| {})
    }

    /// The same, showing what is believed after each number of events, from none on.
    pub(super) fn fold_through(
        quantity: Quantity,
        history: &FillHistory,
        habit: &Habit,
        shop: &Shop,
        show: &mut dyn FnMut(usize, &Self),
    ) -> Self {
        let straying = match quantity {
            Quantity::Polar => shop.noise().straying(),
            Quantity::Ffa => quantity.straying(),
        };
        let mut belief = Self::begin(quantity, history, habit, shop, straying);
        show(0, &belief);
        for (before, event) in history.events().iter().enumerate() {
            belief.apply(history, habit, shop, event);
            show(before + 1, &belief);
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
            colour_tells: true,
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
            What::Topped { fat, added, after } | What::PartChanged { fat, added, after } => {
                match share_of(added, after) {
                    Some(share) if fat == history.fat() => self.mix_fresh(share),
                    Some(share) => {
                        let other = self.quantity.fresh(fat);
                        self.mix_other(share, other.mean, other.sd);
                    }
                    None => self.folded_around = self.folded_around.saturating_add(1),
                }
            }
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
            What::Sign(sign) => {
                if self.colour_tells || !sign.is_colour() {
                    self.hint();
                }
            }
            What::Filtered => {}
            What::Adsorbed { dose } => self.adsorb(dose),
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

    /// A powder took something out ([`Quantity::adsorbed`]), never more than stood over fresh oil: what fresh oil holds
    /// it may take as well, but nobody should be told so. One rule for every rate keeps their levels in order, and the
    /// less there was to take, the less is in doubt.
    fn adsorb(&mut self, dose: Share) {
        self.colour_tells = false;
        if dose.cpc() == 0 {
            return;
        }
        let (down, variance) = self.quantity.adsorbed(dose);
        let fresh = self.scale().place(self.fresh_percent);
        let before = self.mean(Node::level);
        for node in &mut self.nodes {
            let level = node.level();
            node.mean[LEVEL] = (level - down).max(level.min(fresh));
        }
        let part = (before - self.mean(Node::level)) / down;
        self.cov.blur(LEVEL, variance * part * part);
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

    /// A service whose hours nobody logged: the usual ones, with their spread, or a third of them where the log's own
    /// spread is narrower (our own choice): nobody knows that it was a usual one.
    fn guess_hours(&mut self, usual: UsualFry, factor: f64) {
        const LEAST_SPREAD: f64 = 1.0 / 3.0;
        self.grow(usual.mean_h, factor);
        let by_hours = self.mean(Node::rate_now) * factor * usual.sd_h.max(LEAST_SPREAD * usual.mean_h);
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

    fn mean(&self, of: impl Fn(&Node) -> f64) -> f64 {
        self.nodes.iter().map(|n| n.weight * of(n)).sum()
    }

    const fn scale(&self) -> Scale {
        self.quantity.scale()
    }
}

#[cfg(all(test, not(target_arch = "wasm32")))]
mod brute_force;
#[cfg(all(test, not(target_arch = "wasm32")))]
mod kalman;
