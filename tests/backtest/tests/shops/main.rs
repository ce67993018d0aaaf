//! The estimator beside two baselines and a brute-force grid, over five hundred fills of seeded shops.
#![allow(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    missing_docs
)]

mod grid;
mod sim;

use backtest::foretell::Player;
use backtest::report::foretell;
use backtest::row::Row;
use backtest::score::{Errors, mean, median};
use grid::Reference;
use sim::{LIMIT, World};

const SHOPS: u64 = 25;
const FILLS: usize = 20;

/// What one world made of 500 fills.
#[derive(Debug, Default)]
struct Made {
    errors: Vec<Errors>,
    of_grid: Vec<f64>,
    discard: Vec<f64>,
    discard_of_grid: Vec<f64>,
    never: usize,
    never_of_grid: usize,
    never_in_truth: usize,
}

fn played(world: World, with_grid: bool) -> Made {
    let mut made = Made::default();
    let mut all = Vec::new();
    for seed in 0..SHOPS {
        let shop = sim::shop(seed, FILLS, world);
        let rows: Vec<Row> = shop.fills.iter().flat_map(|f| f.rows.clone()).collect();
        all.extend(foretell(&rows));
        if !with_grid {
            continue;
        }
        let mut player = Player::default();
        for fill in &shop.fills {
            let mut reference = Reference::new(&shop, fill, world);
            let half = fill.life().map(|life| life as f64 / 2.0);
            let ask_at = half.and_then(|half| fill.rows.iter().rposition(|r| r.day <= half));
            let last_reading = fill.rows.iter().rposition(|r| r.tpc.is_some());
            let mut read = 0;
            for (at, row) in fill.rows.iter().enumerate() {
                player.take(row);
                let foretold = reference.take(row);
                if let (Some(foretold), Some(truth)) = (foretold, row.tpc) {
                    if read >= 2 {
                        made.of_grid.push((foretold - truth).abs());
                    }
                    read += 1;
                }
                if let (Some(life), true) = (fill.life(), ask_at == Some(at)) {
                    let left = player.days_left(&fill.name, LIMIT, None).unwrap().median;
                    let change = |left: Option<f64>| (row.day + left.unwrap_or(61.0) - life as f64).abs();
                    made.discard.push(change(left.map(f64::from)));
                    made.discard_of_grid.push(change(reference.days_left().map(|n| n as f64)));
                }
                if fill.life().is_none() && last_reading == Some(at) {
                    made.never_in_truth += 1;
                    let left = player.days_left(&fill.name, LIMIT, None).unwrap().median;
                    made.never += usize::from(left.is_none());
                    made.never_of_grid += usize::from(reference.days_left().is_none());
                }
            }
        }
    }
    made.errors.push(Errors::of(&all));
    made
}

fn told(name: &str, made: &Made) {
    let e = made.errors[0];
    println!(
        "{name}: mae {:.3} last {:.3} line {:.3} gain {:.1} % cover {:.1} n {} | grid {:.3} ratio {:.3} | change median {:.1}/{:.1} mean {:.2}/{:.2} | never {}/{} of {}",
        e.ours,
        e.last,
        e.line,
        e.gain(),
        e.coverage,
        e.n,
        mean(&made.of_grid),
        e.ours / mean(&made.of_grid),
        median(&made.discard),
        median(&made.discard_of_grid),
        mean(&made.discard),
        mean(&made.discard_of_grid),
        made.never,
        made.never_of_grid,
        made.never_in_truth,
    );
}

#[test]
fn worlds() {
    for spread in [3.0, 1.5] {
        told(&format!("plain {spread}"), &played(World::plain(spread), true));
        let plain = World::plain(spread);
        let others = [
            ("curved up", World { curve: 0.6, ..plain }),
            ("curved down", World { curve: -0.5, ..plain }),
            ("drifting", World { drift: 0.3, ..plain }),
            ("rounded", World { rounded: true, missing: 0.25, ..plain }),
            ("unlogged", World { unlogged: 0.3, ..plain }),
        ];
        for (name, world) in others {
            told(&format!("{name} {spread}"), &played(world, false));
        }
    }
}
