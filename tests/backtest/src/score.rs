//! What forecasts are worth: beside two baselines, by how often the interval holds, and by the day they would have the
//! oil changed.

use std::collections::BTreeMap;

use crate::foretell::{Foretold, Player};
use crate::row::Row;

/// A method's mean absolute errors, all over the same readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Errors {
    /// The estimator.
    pub ours: f64,
    /// The reading before.
    pub last: f64,
    /// Least squares on fry-hours through the fill's earlier readings.
    pub line: f64,
    /// Share of readings inside their 80 % interval, percent.
    pub coverage: f64,
    /// Readings scored: those with at least two before them in their fill.
    pub n: usize,
}

impl Errors {
    /// Of these forecasts, in their order.
    #[must_use]
    pub fn of(foretold: &[Foretold]) -> Self {
        let mut before: BTreeMap<&str, Vec<(f64, f64)>> = BTreeMap::new();
        let (mut ours, mut last, mut line, mut inside, mut n) = (0.0, 0.0, 0.0, 0.0, 0_usize);
        for it in foretold {
            let earlier = before.entry(&it.fill).or_default();
            if let [.., _, (_, previous)] = earlier[..] {
                ours += (it.forecast.median - it.truth).abs();
                last += (previous - it.truth).abs();
                line += (least_squares(earlier, it.fry_hours) - it.truth).abs();
                inside += f64::from(it.forecast.low <= it.truth && it.truth <= it.forecast.high);
                n += 1;
            }
            earlier.push((it.fry_hours, it.truth));
        }
        #[expect(clippy::cast_precision_loss, reason = "a count of readings")]
        let count = n as f64;
        Self {
            ours: ours / count,
            last: last / count,
            line: line / count,
            coverage: 100.0 * inside / count,
            n,
        }
    }

    /// How much smaller our error is than the better baseline's, percent.
    #[must_use]
    pub fn gain(&self) -> f64 {
        100.0 * (1.0 - self.ours / self.last.min(self.line))
    }
}

/// The line through (hours, reading) pairs, at `hours`; their mean where all hours are the same.
fn least_squares(points: &[(f64, f64)], hours: f64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a count of readings")]
    let n = points.len() as f64;
    let mean_x = points.iter().map(|(x, _)| x).sum::<f64>() / n;
    let mean_y = points.iter().map(|(_, y)| y).sum::<f64>() / n;
    let spread: f64 = points.iter().map(|(x, _)| (x - mean_x) * (x - mean_x)).sum();
    if spread <= 0.0 {
        return mean_y;
    }
    let both: f64 = points.iter().map(|(x, y)| (x - mean_x) * (y - mean_y)).sum();
    mean_y + both / spread * (hours - mean_x)
}

/// How far off the change day was, foretold at half of the fill's life.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Discards {
    /// Days off, for each fill whose readings went over the limit.
    pub off: Vec<f64>,
    /// Fills whose readings never did.
    pub censored: usize,
}

impl Discards {
    /// Median of the days off.
    #[must_use]
    pub fn median(&self) -> f64 {
        median(&self.off)
    }

    /// Mean of the days off.
    #[must_use]
    pub fn mean(&self) -> f64 {
        mean(&self.off)
    }
}

/// The median; not a number of nothing.
#[must_use]
pub fn median(of: &[f64]) -> f64 {
    let mut sorted = of.to_vec();
    sorted.sort_by(f64::total_cmp);
    match sorted.len() {
        0 => f64::NAN,
        n if n % 2 == 1 => sorted[n / 2],
        n => f64::midpoint(sorted[n / 2 - 1], sorted[n / 2]),
    }
}

/// The mean; not a number of nothing.
#[must_use]
pub fn mean(of: &[f64]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a count of fills")]
    let n = of.len() as f64;
    of.iter().sum::<f64>() / n
}

/// Plays the rows again and asks each fill at half of its life when its readings will be over the limit.
#[must_use]
pub fn discards(rows: &[Row], limit: f64) -> Discards {
    let mut fills: Vec<&str> = Vec::new();
    for row in rows {
        if !fills.contains(&row.fill.as_str()) {
            fills.push(&row.fill);
        }
    }
    let mut discards = Discards::default();
    // Where to ask: the index of the row after which a fill is at half of its life, and the day its oil was over.
    let mut ask: BTreeMap<usize, f64> = BTreeMap::new();
    for fill in fills {
        let (places, its): (Vec<usize>, Vec<&Row>) = rows.iter().enumerate().filter(|(_, r)| r.fill == fill).unzip();
        match change_day(&its, limit) {
            None => discards.censored += 1,
            Some(day) => ask.extend(half_of(&its, day).map(|at| (places[at], day))),
        }
    }
    let mut player = Player::default();
    for (at, row) in rows.iter().enumerate() {
        player.take(row);
        if let Some(day) = ask.get(&at) {
            discards
                .off
                .push((foretold_change(&mut player, &rows[..=at], limit) - day).abs());
        }
    }
    discards
}

/// A fill's change day: the day of its first row whose next two readings, its own not counted, average over the limit;
/// `None` where there is none.
#[must_use]
pub fn change_day(fill: &[&Row], limit: f64) -> Option<f64> {
    fill.iter().enumerate().find_map(|(at, row)| {
        let mut next = fill[at + 1..].iter().filter_map(|r| r.tpc);
        let (first, second) = (next.next()?, next.next()?);
        (f64::midpoint(first, second) > limit).then_some(row.day)
    })
}

/// A fill's half life: the place of its last row at or before half of its change day.
#[must_use]
pub fn half_of(fill: &[&Row], change_day: f64) -> Option<usize> {
    fill.iter().rposition(|r| r.day <= change_day / 2.0)
}

/// The same day as foretold from the rows up to the last one of its fill: readings go on at the fill's own pace, and
/// the pair that averages over the limit is the first whose middle lies past the day the oil crosses it.
fn foretold_change(player: &mut Player, rows: &[Row], limit: f64) -> f64 {
    const NEVER: f64 = 61.0;
    /// Readings' gaps from a row to the middle of its next two readings, and a quarter more: scatter brings an average
    /// over the limit before the oil is. The quarter was found on simulated shops.
    const MIDDLE: f64 = 1.75;
    let Some(now) = rows.last() else { return 0.0 };
    let its: Vec<&Row> = rows.iter().filter(|r| r.fill == now.fill).collect();
    let read: Vec<&&Row> = its.iter().filter(|r| r.tpc.is_some()).collect();
    let instrument = read.last().map_or("", |r| r.instrument.as_str());
    let left = player
        .days_left(&now.fill, limit, Some(instrument))
        .and_then(|d| d.median);
    let crossing = now.day + left.map_or(NEVER, |n| f64::from(n) + 0.5);
    let pace = pace(&read);
    let mut last = read.last().map_or(now.day, |r| r.day);
    while last + MIDDLE * pace <= crossing {
        last += pace;
    }
    last.max(0.0).round()
}

/// Usual days between a fill's readings; 2.5 where it has none two.
fn pace(read: &[&&Row]) -> f64 {
    const USUAL: f64 = 2.5;
    match read {
        [first, .., last] => {
            #[expect(clippy::cast_precision_loss, reason = "a count of readings")]
            let gaps = (read.len() - 1) as f64;
            ((last.day - first.day) / gaps).max(1.0)
        }
        [] | [_] => USUAL,
    }
}
