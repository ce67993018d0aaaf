//! The estimator beside a brute-force grid given the same priors, on simulated fills.
//!
//! Its instrument is known to be right, its spread known, no fill has taught it anything. What is left between the two
//! is what the estimator leaves out so as to be fast and to keep its laws: 33 rates for a continuum of them, one
//! covariance for all rates, fresh oil that thins every rate's level towards one value, and surprising readings that
//! count for less.

use super::*;
use crate::domain::facts::oil::Load;
use crate::domain::ids::Dev;
use crate::domain::time::Millis;
use crate::domain::units::{Minutes, Share, Volume};

const FAT: Fat = Fat::Rapeseed;
const TOOL: Option<InstrumentId> = Some(InstrumentId(1));
const PAN_ML: u32 = 24_000;
const FILLS: u64 = 40;
const SERVICES: u32 = 24;

/// A fill's fresh value and rate, one of many, and its level given both: normal, with the drift of its rate.
struct Guess {
    weight: f64,
    rate: f64,
    fresh: f64,
    level: f64,
    drift: f64,
    level_var: f64,
    drift_var: f64,
    both: f64,
}

/// Every rate with every fresh value.
struct Grid {
    guesses: Vec<Guess>,
    straying: Straying,
}

impl Grid {
    fn of(shop: &Shop) -> Self {
        const RATES: u8 = 121;
        const FRESH_VALUES: u8 = 25;
        let across = |n: u8, of: u8| 2.0 * f64::from(n) / f64::from(of - 1) - 1.0;
        let rate = shop.rate(Quantity::Polar, FAT);
        let fresh = Quantity::Polar.fresh(FAT);
        let mut guesses = Vec::new();
        for n in 0..RATES {
            let log_rate = libm::log(rate.median) + 4.5 * rate.log_sd * across(n, RATES);
            for m in 0..FRESH_VALUES {
                let z = 4.0 * across(m, FRESH_VALUES);
                let fresh = fresh.mean + fresh.sd * z;
                guesses.push(Guess {
                    weight: shop.density(Quantity::Polar, FAT, log_rate) * libm::exp(-0.5 * z * z),
                    rate: libm::exp(log_rate),
                    fresh,
                    level: fresh,
                    drift: 0.0,
                    level_var: 0.0,
                    drift_var: 0.0,
                    both: 0.0,
                });
            }
        }
        let straying = shop.noise().straying();
        Self { guesses, straying }
    }

    /// Takes one event; says whether it was a reading.
    fn apply(&mut self, what: &What) -> bool {
        match *what {
            What::Fried { fry, .. } => self.fry(fry.hours()),
            What::Topped { added, after, .. } | What::PartChanged { added, after, .. } => {
                self.top_up(f64::from(added.ml()) / f64::from(after.ml()));
            }
            What::Read {
                value: Measured::Polar(seen),
                spread: Some(spread),
                ..
            } => {
                self.read(seen.percent(), spread.percent());
                return true;
            }
            What::Read { .. }
            | What::Unlogged { .. }
            | What::MovedIn { .. }
            | What::Sign(_)
            | What::Filtered
            | What::Adsorbed { .. } => {}
        }
        false
    }

    fn fry(&mut self, hours: f64) {
        for g in &mut self.guesses {
            let by = g.rate * hours;
            g.level += by * (1.0 + g.drift);
            g.level_var += by * (2.0 * g.both + by * g.drift_var) + self.straying.level_per_hour * by * g.rate;
            g.both += by * g.drift_var;
            g.drift_var += self.straying.rate_per_hour * hours;
        }
    }

    fn top_up(&mut self, share: f64) {
        for g in &mut self.guesses {
            g.level += share * (g.fresh - g.level);
            g.level_var *= (1.0 - share) * (1.0 - share);
            g.both *= 1.0 - share;
        }
    }

    fn read(&mut self, seen: f64, spread: f64) {
        for g in &mut self.guesses {
            let variance = g.level_var + spread * spread;
            let off = seen - g.level;
            g.weight *= libm::exp(-0.5 * off * off / variance) / variance.sqrt();
            let (level_gain, drift_gain) = (g.level_var / variance, g.both / variance);
            g.level += level_gain * off;
            g.drift += drift_gain * off;
            g.drift_var -= drift_gain * g.both;
            g.both -= level_gain * g.both;
            g.level_var -= level_gain * g.level_var;
        }
        let most = self.guesses.iter().map(|g| g.weight).fold(0.0, f64::max);
        self.guesses.retain(|g| g.weight > 1e-7 * most);
    }

    fn quantile(&self, p: f64) -> f64 {
        let total: f64 = self.guesses.iter().map(|g| g.weight).sum();
        let (mut low, mut high) = (-20.0, 150.0);
        while high - low > 1e-4 {
            let middle = f64::midpoint(low, high);
            let under = |g: &Guess| g.weight * above((g.level - middle) / g.level_var.sqrt().max(1e-6));
            let share = self.guesses.iter().map(under).sum::<f64>() / total;
            if share < p { low = middle } else { high = middle }
        }
        low
    }
}

/// Chance enough for a simulation, the same on every machine: the SplitMix64 generator (Steele, Lea & Flood 2014).
struct Chance(u64);

impl Chance {
    fn part(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        #[expect(clippy::cast_precision_loss, reason = "53 bits fit")]
        let part = (z >> 11) as f64 / (1_u64 << 53) as f64;
        part
    }

    /// Normal as far as twelve uniform ones make it.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.part()).sum::<f64>() - 6.0
    }

    fn between(&mut self, low: u32, high: u32) -> u32 {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the two")]
        let steps = (self.part() * f64::from(high - low + 1)) as u32;
        low + steps
    }
}

/// A fill of this seed, drawn from the estimator's own priors and read every second or third service.
fn simulated(seed: u64, spread: f64) -> Vec<What> {
    let chance = &mut Chance(seed);
    let (shop, fresh) = (Shop::new(), Quantity::Polar.fresh(FAT));
    let (prior, strays) = (shop.rate(Quantity::Polar, FAT), shop.noise().straying());
    let rate = prior.median * libm::exp(prior.log_sd * chance.normal());
    let fresh = (fresh.mean + fresh.sd * chance.normal()).max(0.5);
    let (mut level, mut drift) = (fresh, 0.0);
    let tops_up = chance.part() > 0.2;
    let mut next_reading = chance.between(2, 3);
    let mut events = Vec::new();
    for service in 1..=SERVICES {
        let minutes = chance.between(240, 540);
        let hours = f64::from(minutes) / 60.0;
        let by = rate * hours;
        level += by * (1.0 + drift) + (strays.level_per_hour * by * rate).sqrt() * chance.normal();
        drift += (strays.rate_per_hour * hours).sqrt() * chance.normal();
        let fry = u16::try_from(minutes).ok().and_then(Minutes::new);
        events.extend(fry.map(|fry| What::Fried {
            fry,
            temp: None,
            load: Load::Normal,
        }));
        if service == next_reading {
            next_reading += chance.between(2, 3);
            events.extend(percent(level + spread * chance.normal()).map(|seen| What::Read {
                value: Measured::Polar(seen),
                instrument: TOOL,
                spread: percent(spread),
            }));
        }
        let ml = if tops_up { chance.between(0, 2_640) } else { 0 };
        level += f64::from(ml) / f64::from(PAN_ML) * (fresh - level);
        let volumes = Volume::from_ml(ml).zip(Volume::from_ml(PAN_ML));
        events.extend(volumes.map(|(added, after)| What::Topped { fat: FAT, added, after }));
        if level > 40.0 {
            break;
        }
    }
    events
}

fn percent(points: f64) -> Option<Share> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "0–100 % in hundredths"
    )]
    let cpc = (points.clamp(0.0, 100.0) * 100.0).round() as u16;
    Share::from_cpc(cpc)
}

/// The 10, 50 and 90 % quantiles of the level after a reading.
type Answer = [f64; 3];

/// Takes both through the same events; after each reading, what the estimator answers and what the grid does.
fn beside(events: &[What]) -> Vec<(Answer, Answer)> {
    let shop = Shop::new();
    let habit = Habit::of(UsualFry { mean_h: 6.0, sd_h: 1.0 });
    let history = FillHistory::new(FAT, Start::Fresh, Vec::new());
    let mut ours = Belief::begin(Quantity::Polar, &history, &habit, &shop, shop.noise().straying());
    // The instrument is known to be right.
    if let Some(error) = ours.place_of(TOOL) {
        ours.cov.set(error, error, 0.0);
    }
    let mut grid = Grid::of(&shop);
    let mut answers = Vec::new();
    for (n, what) in (0_u32..).zip(events) {
        let moment = Millis(i64::from(n));
        let event = Event {
            order: (moment, moment, Dev(1), n),
            entry: EntryId(u128::from(n)),
            what: *what,
        };
        ours.apply(&history, &habit, &shop, &event);
        if grid.apply(what) {
            answers.push((
                [0.1, 0.5, 0.9].map(|p| ours.quantile(p)),
                [0.1, 0.5, 0.9].map(|p| grid.quantile(p)),
            ));
        }
    }
    answers
}

/// How far apart two answers are over many readings, points.
#[derive(Debug)]
struct Apart {
    mean: f64,
    /// Nineteen in twenty are at most this far apart.
    mostly: f64,
    most: f64,
}

fn apart(answers: &[(Answer, Answer)], quantile: usize) -> Apart {
    let mut all: Vec<f64> = answers
        .iter()
        .map(|(ours, grid)| (ours[quantile] - grid[quantile]).abs())
        .collect();
    all.sort_by(f64::total_cmp);
    Apart {
        mean: mean(&all),
        mostly: all[all.len() * 95 / 100],
        most: all[all.len() - 1],
    }
}

fn mean(of: &[f64]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "some hundred readings")]
    let n = of.len() as f64;
    of.iter().sum::<f64>() / n
}

/// Median and both ends of the 80 % interval lie within a fortieth of the interval's width of the grid's on average,
/// nineteen in twenty within an eighth, and none is half of it off.
#[test]
fn the_level_and_its_interval_are_the_grids() {
    for spread in [3.0, 1.5] {
        let answers: Vec<_> = (0..FILLS).flat_map(|seed| beside(&simulated(seed, spread))).collect();
        let widths: Vec<f64> = answers.iter().map(|(_, grid)| grid[2] - grid[0]).collect();
        let width = mean(&widths);
        println!(
            "spread {spread}: {} readings, interval {width:.2} points wide",
            answers.len()
        );
        for (quantile, name) in ["10 %", "median", "90 %"].iter().enumerate() {
            let apart = apart(&answers, quantile);
            println!("  {name}: {apart:.3?}");
            assert!(apart.mean <= width / 40.0, "{name}: {apart:?}");
            assert!(apart.mostly <= width / 8.0, "{name}: {apart:?}");
            assert!(apart.most <= width / 2.0, "{name}: {apart:?}");
        }
    }
}
