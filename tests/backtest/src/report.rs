//! The report of a backtest: a line for each reading foretold, then four of sums.

use std::fmt::Write as _;

use crate::foretell::{Foretold, Player};
use crate::row::Row;
use crate::score::{Errors, discards};

/// Plays the rows and tells everything.
#[must_use]
pub fn report(rows: &[Row], limit: f64) -> String {
    let (possible, refused) = split(rows);
    let foretold = foretell(&possible);
    let mut told = String::new();
    for line in lines(&foretold) {
        let _ = writeln!(told, "{line}");
    }
    let errors = Errors::of(&foretold);
    let discards = discards(&possible, limit);
    let Errors {
        ours,
        last,
        line,
        coverage,
        n,
    } = errors;
    let _ = writeln!(told, "mae ours={ours:.3} last={last:.3} line={line:.3} n={n}");
    let _ = writeln!(told, "coverage80={coverage:.1} n={n}");
    let (median, mean, count) = (discards.median(), discards.mean(), discards.off.len());
    let censored = discards.censored;
    let _ = writeln!(
        told,
        "discard_half median={median:.1} mean={mean:.2} n={count} censored={censored}"
    );
    let _ = writeln!(told, "refused_rows={refused}");
    told
}

/// A line for each reading: fill, day, forecast, interval, truth.
#[must_use]
pub fn lines(foretold: &[Foretold]) -> Vec<String> {
    let line = |it: &Foretold| {
        let f = &it.forecast;
        format!(
            "fill={} day={} forecast={:.3} interval={:.3}..{:.3} truth={}",
            it.fill, it.day, f.median, f.low, f.high, it.truth
        )
    };
    foretold.iter().map(line).collect()
}

/// The rows that can have happened, and how many cannot.
#[must_use]
pub fn split(rows: &[Row]) -> (Vec<Row>, usize) {
    let possible: Vec<Row> = rows.iter().filter(|r| r.is_possible()).cloned().collect();
    let refused = rows.len() - possible.len();
    (possible, refused)
}

/// What was foretold of every reading.
#[must_use]
pub fn foretell(rows: &[Row]) -> Vec<Foretold> {
    let mut player = Player::default();
    rows.iter().filter_map(|row| player.take(row)).collect()
}
