//! The run machine, explored: every path of every small kitchen, judged by somebody who does not know the guide.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

mod asking;
mod auditor;
mod clean;
mod draw;
mod key;
mod mutate;
mod node;
mod orders;
mod parked;
mod resume;
mod search;
mod steps;
mod who;
mod world;

use panward::domain::facts::run::Form;
use panward::domain::facts::setup::OutBy;
use panward::domain::fat::Fat;
use panward::domain::procedure::{Hold, StepId, Tables};

use search::explore;
use world::{ALL, NONE, World};

/// Explores worlds of which each must keep every line, and says how many states each has.
fn all_keep_every_line(worlds: &[World]) {
    let mut total = 0;
    for world in worlds {
        let found = explore(world, Tables::REAL);
        println!("{:>7} states {:>9} moves  {}", found.states, found.moves, world.name);
        total += found.states;
        assert_eq!(
            found.violation,
            None,
            "{}",
            found.violation.as_deref().unwrap_or_default()
        );
        assert_eq!(
            found.drew, world.draws,
            "{}: whether oil ever leaves the pan",
            world.name
        );
        // Where no draw may begin, oil can still be found outside its pan by a look, and be brought back.
        assert!(found.finished || !world.draws, "{}: no run can be finished", world.name);
        assert_eq!(found.stuck, None, "{}: oil out and no safe end", world.name);
        assert_eq!(
            found.no_way_back, None,
            "{}: oil out and no way back by work",
            world.name
        );
    }
    println!("{total:>7} states in {} worlds", worlds.len());
}

// Two halves, for two cores.
#[test]
fn no_path_of_a_working_kitchen_crosses_a_line() {
    let all = world::working();
    all_keep_every_line(all.get(..9).unwrap());
}

#[test]
fn no_path_of_the_other_working_kitchens_crosses_a_line() {
    let all = world::working();
    all_keep_every_line(all.get(9..).unwrap());
}

#[test]
fn no_path_with_set_fat_in_the_machine_or_a_hand_kit_beside_crosses_a_line() {
    all_keep_every_line(&world::after_solid());
}

#[test]
fn no_path_of_a_kitchen_that_must_refuse_lets_oil_out() {
    all_keep_every_line(&world::refusing());
}

/// For each hold the world in which its loss must show.
fn shows(hold: Hold) -> World {
    match hold {
        Hold::Person => world::starter_alone(),
        Hold::Room => world::small_tank(),
        Hold::Match => world::claim_met(),
        Hold::WarmUp => world::world(OutBy::Nozzle, Fat::Dripping, Form::Short, NONE),
        Hold::Container => world::world(OutBy::Hand, Fat::Rapeseed, Form::Short, NONE),
        Hold::ClearDry => world::world(OutBy::Drain, Fat::Rapeseed, Form::Short, ALL),
        _ => world::world(OutBy::Nozzle, Fat::Rapeseed, Form::Short, NONE),
    }
}

#[test]
fn each_hold_cut_out_is_missed() {
    for hold in [
        Hold::Person,
        Hold::Kit,
        Hold::Floor,
        Hold::Dry,
        Hold::Room,
        Hold::Match,
        Hold::Temperature,
        Hold::HeatOff,
        Hold::Connected,
        Hold::LookAgain,
        Hold::Level,
        Hold::WarmUp,
        Hold::ClearDry,
        Hold::Container,
    ] {
        let found = explore(&shows(hold), mutate::without(hold));
        let violation = found
            .violation
            .unwrap_or_else(|| panic!("without {} nothing was missed", hold.key()));
        println!(
            "without {}: {}",
            hold.key(),
            violation.lines().next().unwrap_or_default()
        );
    }
}

/// Each hold that keeps set fat out of pump and hands, cut out where it stands.
#[test]
fn each_hold_over_solid_fat_cut_out_is_missed() {
    let dripping = || world::world(OutBy::Nozzle, Fat::Dripping, Form::Short, NONE);
    let held = world::after_solid().swap_remove(0);
    let cuts = [
        (held, Hold::WarmUp, StepId::Connect, "it is not warm"),
        (world::set_in_line(), Hold::WarmUp, StepId::WarmUp, "not seen melted"),
        (
            dripping(),
            Hold::WarmUp,
            StepId::GiveBack,
            "fat that stood in the machine",
        ),
        (
            dripping(),
            Hold::LookAgain,
            StepId::Leave,
            "left to set, heat not seen off",
        ),
    ];
    for (world, hold, step, line) in cuts {
        let found = explore(&world, mutate::without_at(hold, &[step]));
        let violation = found
            .violation
            .unwrap_or_else(|| panic!("without {} at {} nothing was missed", hold.key(), step.key()));
        let first = violation.lines().next().unwrap_or_default().to_owned();
        assert!(
            first.contains(line),
            "without {} at {}: {first}",
            hold.key(),
            step.key()
        );
        println!("without {} at {}: {first}", hold.key(), step.key());
    }
}
