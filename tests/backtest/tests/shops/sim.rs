//! A seeded shop: oil that wears as the published ranges say, written down as a kitchen would, with what it truly was.
//!
//! Rates: log-normal about 0.6 points an hour, 90 % within 0.25–1.4 (`fresh.rs`, `quantity.rs` name the papers), a
//! shop's fills nearer to each other than shops are. Everything no source gives (hours, habits, how much a service
//! differs from the next) is invented here.

use backtest::row::Row;
use panward::domain::fat::Fat;
use panward::domain::oil_life::{Quantity, fresh_polar, speed_up};
use panward::domain::units::Temp;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::SeedableRng;
use rand_distr::{Distribution, Normal, Uniform};

/// Spread of the shops' mean rates (logarithm), and of the fills about their shop's.
const BETWEEN_SHOPS: f64 = 0.42;
const BETWEEN_FILLS: f64 = 0.3;
/// How far one service's wear lies from what its hours give.
pub const BETWEEN_SERVICES: f64 = 0.15;
/// Spread of a service's hours about the shop's mean.
pub const HOURS_SD: f64 = 0.8;
/// Services a fill is followed for.
pub const MOST_SERVICES: usize = 60;
/// The limit the shops are judged by, % m/m.
pub const LIMIT: f64 = 25.0;
const VOLUME_L: f64 = 24.0;
const MOST_TOP_UP: f64 = 0.11;
const READINGS_AFTER: usize = 3;

/// How a world differs from what the estimator takes it for.
#[derive(Clone, Copy, Debug)]
pub struct World {
    /// Hours of a service, least and most, between shops.
    pub hours: (f64, f64),
    /// The instrument's spread, points.
    pub spread: f64,
    /// Wear grows (or falls, under 0) by this part between fresh oil and the limit.
    pub curve: f64,
    /// How far the instrument's error moves between readings, points.
    pub drift: f64,
    /// Hours are written down as whole ones.
    pub rounded: bool,
    /// Part of services whose hours nobody wrote down.
    pub missing: f64,
    /// Part of top-ups nobody wrote down, their column saying none.
    pub unlogged: f64,
}

impl World {
    /// The world the estimator is made for.
    pub const fn plain(spread: f64) -> Self {
        Self {
            hours: (4.0, 9.0),
            spread,
            curve: 0.0,
            drift: 0.0,
            rounded: false,
            missing: 0.05,
            unlogged: 0.0,
        }
    }
}

/// A fill as it truly was.
#[derive(Clone, Debug)]
pub struct TrueFill {
    pub name: String,
    pub rows: Vec<Row>,
    pub fat: Fat,
    /// Polar compounds at the end of frying of each service.
    pub levels: Vec<f64>,
    /// Mean share of fresh oil a night.
    pub usual_top_up: f64,
}

impl TrueFill {
    /// Services finished before the first that ended over the limit; `None` where none did.
    pub fn life(&self) -> Option<usize> {
        self.levels.iter().position(|p| *p > LIMIT)
    }
}

/// A shop as it truly was.
#[derive(Clone, Debug)]
pub struct TrueShop {
    pub fills: Vec<TrueFill>,
    /// The instrument's error at each fill's beginning.
    pub bias: f64,
    /// Mean of the logarithm of its fills' rates, and their spread.
    pub rate: (f64, f64),
    /// What its fresh oil holds, by fat: mean and spread between deliveries.
    pub fresh: Vec<(Fat, f64, f64)>,
    pub hours: f64,
}

const FATS: [Fat; 3] = [Fat::Rapeseed, Fat::Sunflower, Fat::Dripping];

struct Chance(ChaCha8Rng);

impl Chance {
    fn normal(&mut self, mean: f64, sd: f64) -> f64 {
        Normal::new(mean, sd).unwrap().sample(&mut self.0)
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        Uniform::new_inclusive(low, high).unwrap().sample(&mut self.0)
    }

    fn in_part(&mut self, part: f64) -> bool {
        self.between(0.0, 1.0) < part
    }
}

/// A shop and its fills, one after the other.
pub fn shop(seed: u64, fills: usize, world: World) -> TrueShop {
    let mut chance = Chance(ChaCha8Rng::seed_from_u64(seed));
    let prior = Quantity::Polar.rate();
    let mean_rate = chance.normal(prior.median.ln(), BETWEEN_SHOPS);
    let fresh = FATS.map(|fat| {
        let value = fresh_polar(fat);
        let half = value.sd * 0.5_f64.sqrt();
        (fat, chance.normal(value.mean, half), half)
    });
    let mut shop = TrueShop {
        fills: Vec::new(),
        bias: chance.normal(0.0, Quantity::Polar.bias_sd()),
        rate: (mean_rate, BETWEEN_FILLS),
        fresh: fresh.to_vec(),
        hours: chance.between(world.hours.0, world.hours.1),
    };
    let mut fat = 0;
    let mut bias = shop.bias;
    for n in 0..fills {
        if chance.in_part(0.15) {
            fat = (fat + 1) % FATS.len();
        }
        let fill = fill(&mut chance, &shop, &format!("{seed}-{n}"), fat, &mut bias, world);
        shop.fills.push(fill);
    }
    shop
}

fn fill(chance: &mut Chance, shop: &TrueShop, name: &str, fat: usize, bias: &mut f64, world: World) -> TrueFill {
    let (fat, fresh_mean, fresh_sd) = shop.fresh[fat];
    let rate = chance.normal(shop.rate.0, shop.rate.1).exp();
    let fresh = chance.normal(fresh_mean, fresh_sd).max(0.5);
    let tops_up = !chance.in_part(0.2);
    let mut level = fresh;
    let mut fill = TrueFill {
        name: name.to_owned(),
        rows: Vec::new(),
        fat,
        levels: Vec::new(),
        usual_top_up: if tops_up { MOST_TOP_UP / 2.0 } else { 0.0 },
    };
    let mut row = |day: usize, hours, temp, top_up, tpc| {
        fill.rows.push(Row {
            line: 0,
            fill: name.to_owned(),
            fat,
            volume_l: VOLUME_L,
            day: day as f64,
            fry_hours: hours,
            frying_c: temp,
            topup_l: top_up,
            tpc,
            instrument: "a".to_owned(),
        });
    };
    let read = |chance: &mut Chance, level: f64, bias: &mut f64| {
        *bias += chance.normal(0.0, 1.0) * world.drift;
        let shown = chance.normal(level + *bias, world.spread).clamp(0.5, 99.0);
        Some((shown * 10.0).round() / 10.0)
    };
    let at_first = chance.in_part(0.5).then(|| read(chance, level, bias)).flatten();
    row(0, Some(0.0), None, Some(0.0), at_first);
    let mut next_reading = if chance.in_part(0.5) { 2 } else { 3 };
    let mut readings_over = 0;
    for day in 1..=MOST_SERVICES {
        let hours = chance.normal(shop.hours, HOURS_SD).clamp(1.0, 14.0);
        let degrees = chance.between(172.0, 182.0).round();
        let heat = speed_up(32_000.0, Temp::celsius(175), Temp::celsius(degrees as i16));
        let bent = 1.0 + world.curve * (level - fresh) / (LIMIT - fresh);
        level += rate * hours * heat * bent.max(0.2) * chance.normal(1.0, BETWEEN_SERVICES).max(0.1);
        fill.levels.push(level);
        let tpc = (day == next_reading).then(|| {
            next_reading += if chance.in_part(0.5) { 2 } else { 3 };
            readings_over += usize::from(level > LIMIT);
            read(chance, level, bias)
        });
        let share = if tops_up { chance.between(0.0, MOST_TOP_UP) } else { 0.0 };
        level += share * (fresh - level);
        let hours = if world.rounded {
            hours.round()
        } else {
            (hours * 4.0).round() / 4.0
        };
        let hours = (!chance.in_part(world.missing)).then_some(hours);
        let top_up = if chance.in_part(world.unlogged) {
            0.0
        } else {
            (share * VOLUME_L * 10.0).round() / 10.0
        };
        row(day, hours, Some(degrees), Some(top_up), tpc.flatten());
        if readings_over > READINGS_AFTER {
            break;
        }
    }
    fill
}
