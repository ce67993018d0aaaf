//! The estimator beside two baselines and a brute-force grid, over a thousand fills of seeded shops.
#![allow(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    missing_docs
)]

mod grid;
mod leakage;
mod sim;

use backtest::foretell::Player;
use backtest::report::foretell;
use backtest::row::Row;
use backtest::score::{Errors, mean, median};
use grid::Reference;
use sim::{LIMIT, MOST_SERVICES, TrueFill, TrueShop, World};

/// Twenty shops of fifty fills, a year of one pan's oil or a quarter of four.
const SHOPS: u64 = 20;
const FILLS: usize = 50;

fn shops(world: World) -> impl Iterator<Item = TrueShop> {
    (0..SHOPS).map(move |seed| sim::shop(seed, FILLS, world))
}

fn rows(shop: &TrueShop) -> Vec<Row> {
    shop.fills.iter().flat_map(|f| f.rows.clone()).collect()
}

fn errors(world: World) -> Errors {
    let foretold: Vec<_> = shops(world).flat_map(|shop| foretell(&rows(&shop))).collect();
    Errors::of(&foretold)
}

/// What the estimator and the reference make of the same fills.
#[derive(Default)]
struct Beside {
    /// Absolute errors of the reference's forecasts, over the readings that are scored.
    reference: Vec<f64>,
    /// Days off at half of a fill's life: ours, the reference's.
    ours_off: Vec<f64>,
    reference_off: Vec<f64>,
    /// Fills not over within 60 services, and of them those called so at their last reading: by us, by the reference.
    never: usize,
    ours_never: usize,
    reference_never: usize,
}

fn beside(world: World) -> Beside {
    let mut all = Beside::default();
    for shop in shops(world) {
        let mut player = Player::default();
        for fill in &shop.fills {
            play(&mut all, &mut player, &shop, fill, world);
        }
    }
    all
}

fn play(all: &mut Beside, player: &mut Player, shop: &TrueShop, fill: &TrueFill, world: World) {
    let mut reference = Reference::new(shop, fill, world);
    let last_reading = fill.rows.iter().rposition(|r| r.tpc.is_some());
    let mut read = 0;
    for (at, row) in fill.rows.iter().enumerate() {
        player.take(row);
        let foretold = reference.take(row);
        if let (Some(foretold), Some(truth)) = (foretold, row.tpc) {
            if read >= 2 {
                all.reference.push((foretold - truth).abs());
            }
            read += 1;
        }
        let mut left = || player.days_left(&fill.name, LIMIT, None).unwrap().median;
        match fill.life() {
            Some(life) => {
                let half = life as f64 / 2.0;
                if fill.rows.iter().rposition(|r| r.day <= half) == Some(at) {
                    let off =
                        |left: Option<usize>| (row.day + left.unwrap_or(MOST_SERVICES + 1) as f64 - life as f64).abs();
                    all.ours_off.push(off(left().map(usize::from)));
                    all.reference_off.push(off(reference.days_left()));
                }
            }
            None => {
                if last_reading == Some(at) {
                    all.never += 1;
                    all.ours_never += usize::from(left().is_none());
                    all.reference_never += usize::from(reference.days_left().is_none());
                }
            }
        }
    }
}

fn holds_in_the_plain_world(spread: f64, least_gain: f64) {
    let world = World::plain(spread);
    let errors = errors(world);
    let beside = beside(world);
    let grid = mean(&beside.reference);
    println!(
        "spread {spread}: mae ours {:.3} last {:.3} line {:.3} grid {grid:.3}, gain {:.1} %, coverage {:.1} %, {} readings",
        errors.ours,
        errors.last,
        errors.line,
        errors.gain(),
        errors.coverage,
        errors.n
    );
    println!(
        "  change at half life: median {:.1} (grid {:.1}), mean {:.2} (grid {:.2}), {} fills",
        median(&beside.ours_off),
        median(&beside.reference_off),
        mean(&beside.ours_off),
        mean(&beside.reference_off),
        beside.ours_off.len(),
    );
    assert_eq!(errors.n, beside.reference.len(), "scored over the same readings");
    assert!(errors.gain() >= least_gain);
    assert!(errors.ours <= 1.15 * grid);
    assert!((76.0..=84.0).contains(&errors.coverage));
    assert!(median(&beside.ours_off) <= 2.0);
    assert!(mean(&beside.ours_off) <= 1.15 * mean(&beside.reference_off));
}

#[test]
fn a_fifth_better_than_paper_with_a_usual_instrument() {
    holds_in_the_plain_world(3.0, 20.0);
}

#[test]
fn three_tenths_better_with_a_good_instrument() {
    holds_in_the_plain_world(1.5, 30.0);
}

#[test]
fn oil_that_is_never_over_is_called_so_in_quiet_shops() {
    for spread in [3.0, 1.5] {
        let world = World {
            hours: (2.0, 4.0),
            ..World::plain(spread)
        };
        let beside = beside(world);
        let (ours, grid) = (beside.ours_never, beside.reference_never);
        println!("spread {spread}: never {ours} (grid {grid}) of {}", beside.never);
        assert!(grid > 20, "enough fills that never go over");
        assert!(ours as f64 >= 0.9 * grid as f64);
    }
}

#[test]
fn never_worse_than_paper_where_the_world_is_another() {
    for spread in [3.0, 1.5] {
        let plain = World::plain(spread);
        let worlds = [
            ("wear speeds up", World { curve: 0.6, ..plain }),
            ("wear slows down", World { curve: -0.5, ..plain }),
            ("the instrument drifts", World { drift: 0.3, ..plain }),
            (
                "hours rounded and missing",
                World {
                    rounded: true,
                    missing: 0.25,
                    ..plain
                },
            ),
            ("top-ups nobody wrote down", World { unlogged: 0.3, ..plain }),
        ];
        for (name, world) in worlds {
            let errors = errors(world);
            println!(
                "{name}, spread {spread}: mae ours {:.3} last {:.3} line {:.3}, gain {:.1} %, coverage {:.1} %",
                errors.ours,
                errors.last,
                errors.line,
                errors.gain(),
                errors.coverage
            );
            assert!(errors.coverage >= 70.0, "{name}");
            assert!(errors.gain() >= 0.0, "{name}");
        }
    }
}
