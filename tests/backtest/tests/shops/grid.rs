//! The brute-force reference: every rate and every fresh value on a fine grid, given the true instrument error, the
//! true priors and the true size of all noise. Written apart from the estimator on purpose.

use crate::sim::{BETWEEN_SERVICES, HOURS_SD, LIMIT, MOST_SERVICES, TrueFill, TrueShop, World};
use backtest::row::Row;
use panward::domain::oil_life::speed_up;
use panward::domain::units::Temp;

const RATES: usize = 61;
const FRESH: usize = 21;

#[derive(Clone, Copy)]
struct Guess {
    rate: f64,
    fresh: f64,
    level: f64,
    variance: f64,
    weight: f64,
}

/// What the reference makes of one fill.
pub struct Reference<'a> {
    shop: &'a TrueShop,
    fill: &'a TrueFill,
    world: World,
    guesses: Vec<Guess>,
}

fn at_most(x: f64) -> f64 {
    0.5 * erfc(-x / std::f64::consts::SQRT_2)
}

/// erfc by Abramowitz & Stegun 7.1.26 (error under 1.5e-7).
fn erfc(x: f64) -> f64 {
    let t = 1.0 / (1.0 + 0.327_591_1 * x.abs());
    let poly =
        t * (0.254_829_592 + t * (-0.284_496_736 + t * (1.421_413_741 + t * (-1.453_152_027 + t * 1.061_405_429))));
    let tail = poly * (-x * x).exp();
    if x >= 0.0 { tail } else { 2.0 - tail }
}

impl<'a> Reference<'a> {
    pub fn new(shop: &'a TrueShop, fill: &'a TrueFill, world: World) -> Self {
        let (_, fresh_mean, fresh_sd) = *shop.fresh.iter().find(|(fat, _, _)| *fat == fill.fat).unwrap();
        let mut guesses = Vec::new();
        for i in 0..RATES {
            let z = 4.0 * (2.0 * i as f64 / (RATES - 1) as f64 - 1.0);
            for j in 0..FRESH {
                let y = 3.5 * (2.0 * j as f64 / (FRESH - 1) as f64 - 1.0);
                let fresh = fresh_mean + fresh_sd * y;
                guesses.push(Guess {
                    rate: (shop.rate.0 + shop.rate.1 * z).exp(),
                    fresh,
                    level: fresh,
                    variance: 0.0,
                    weight: (-0.5 * (z * z + y * y)).exp(),
                });
            }
        }
        Self {
            shop,
            fill,
            world,
            guesses,
        }
    }

    /// Fries, foretells the reading and takes it in, tops up; gives the forecast where there is a reading.
    pub fn take(&mut self, row: &Row) -> Option<f64> {
        if row.day > 0.0 {
            let hours = row.fry_hours.unwrap_or(self.shop.hours);
            let unsure = if row.fry_hours.is_none() { HOURS_SD } else { 0.0 };
            let heat = speed_up(
                32_000.0,
                Temp::celsius(175),
                Temp::celsius(row.frying_c.unwrap_or(175.0) as i16),
            );
            for guess in &mut self.guesses {
                let wear = guess.rate * hours * heat;
                guess.level += wear;
                guess.variance += (wear * BETWEEN_SERVICES).powi(2) + (guess.rate * heat * unsure).powi(2);
            }
        }
        let foretold = row.tpc.map(|seen| {
            let foretold = self.median(self.world.spread.powi(2)) + self.shop.bias;
            self.read(seen - self.shop.bias);
            foretold
        });
        let share = row.topup_l.unwrap_or(0.0) / row.volume_l;
        for guess in &mut self.guesses {
            guess.level += share * (guess.fresh - guess.level);
            guess.variance *= (1.0 - share).powi(2);
        }
        foretold
    }

    fn read(&mut self, seen: f64) {
        let noise = self.world.spread.powi(2);
        for guess in &mut self.guesses {
            let of_reading = guess.variance + noise;
            let off = seen - guess.level;
            guess.weight *= (-0.5 * off * off / of_reading).exp() / of_reading.sqrt();
            let gain = guess.variance / of_reading;
            guess.level += gain * off;
            guess.variance *= 1.0 - gain;
        }
        let most = self.guesses.iter().map(|g| g.weight).fold(0.0, f64::max);
        self.guesses.retain(|g| g.weight > 1e-7 * most);
        let total: f64 = self.guesses.iter().map(|g| g.weight).sum();
        for guess in &mut self.guesses {
            guess.weight /= total;
        }
    }

    fn median(&self, noise: f64) -> f64 {
        let total: f64 = self.guesses.iter().map(|g| g.weight).sum();
        let (mut low, mut high) = (-20.0, 150.0);
        while high - low > 1e-3 {
            let mid = f64::midpoint(low, high);
            let under: f64 = self
                .guesses
                .iter()
                .map(|g| g.weight * at_most((mid - g.level) / (g.variance + noise).sqrt()))
                .sum();
            if under < 0.5 * total { low = mid } else { high = mid }
        }
        low
    }

    /// Services from now that finish before one ends over the limit, at the usual hours and top-up; `None` past 60.
    pub fn days_left(&self) -> Option<usize> {
        let total: f64 = self.guesses.iter().map(|g| g.weight).sum();
        let mut over = vec![0.0; MOST_SERVICES + 1];
        let heat = speed_up(32_000.0, Temp::celsius(175), Temp::celsius(177));
        for guess in &self.guesses {
            let (mut level, mut variance, mut worst) = (guess.level, guess.variance, 0.0_f64);
            for sum in &mut over {
                let wear = guess.rate * self.shop.hours * heat;
                level += wear;
                variance += (wear * BETWEEN_SERVICES).powi(2) + (guess.rate * heat * HOURS_SD).powi(2);
                worst = worst.max(1.0 - at_most((LIMIT - level) / variance.sqrt()));
                *sum += guess.weight * worst;
                let share = self.fill.usual_top_up;
                level += share * (guess.fresh - level);
                variance *= (1.0 - share).powi(2);
            }
        }
        over.iter().position(|o| *o >= 0.5 * total)
    }
}
