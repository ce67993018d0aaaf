//! Oil change and boil-out explored before an independent judge, alone and with every other job of the kitchen.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod auditor;
mod node;
mod orders;
mod search;
mod stories;
mod world;

use std::collections::HashSet;

use panward::domain::facts::job::JobKind;
use panward::domain::ids::PanId;
use panward::domain::procedure::{Hold, PanTables};

use node::Node;
use search::{Found, Reach, explore, walk};
use stories::Story;
use world::{PAN, SOLID, without};

/// From the first order on to the fresh oil, with one thing going wrong.
const WHOLE: Reach = Reach {
    depth: 19,
    troubles: 1,
    waits: 0,
};
/// The same with time passing once on the way.
const SLOW: Reach = Reach {
    depth: 17,
    troubles: 0,
    waits: 1,
};

fn clean(name: &str, found: Found) -> Found {
    println!("{name}: {} states, {} refusals", found.states, found.refused);
    assert_eq!(found.violations.first(), None, "{name}");
    found
}

fn emptied(pan: PanId, tables: PanTables) -> Node {
    Story::of(tables).emptied(pan).node
}

#[test]
fn oil_leaves_cold_and_comes_back_only_to_a_dry_pan() {
    for (name, pan) in [("rapeseed", PAN), ("dripping", SOLID)] {
        for reach in [WHOLE, SLOW] {
            let found = clean(name, explore(Node::new(PanTables::REAL), pan, reach, false));
            assert!(found.fills > 0 && found.put_by > 0 && found.left > 0);
        }
    }
}

#[test]
fn water_is_heated_only_above_the_mark_with_somebody_there() {
    for reach in [WHOLE, SLOW] {
        let found = clean("boil-out", explore(emptied(PAN, PanTables::REAL), PAN, reach, false));
        assert!(found.boiled > 0 && found.left > 0);
    }
}

#[test]
fn oil_pumped_out_waits_shut_in_the_machine_until_it_is_cold() {
    let from = Story::of(PanTables::REAL).pumped(PAN).node;
    let found = clean("pumped", explore(from, PAN, WHOLE, false));
    assert!(found.fills > 0 && found.put_by > 0);
}

#[test]
fn no_walk_through_all_jobs_together_crosses_a_line() {
    let (mut found, mut seen) = (Found::default(), HashSet::new());
    for seed in 0..40 {
        walk(seed, 400, PanTables::REAL, &mut found, &mut seen);
    }
    found.states = seen.len();
    let found = clean("together", found);
    println!(
        "{} fills, {} boils, {} jobs left, {} put by",
        found.fills, found.boiled, found.left, found.put_by
    );
    assert!(found.fills > 0 && found.left > 0 && found.put_by > 0);
}

/// A state in which the loss of a hold must show soon.
fn shows(hold: Hold) -> (Node, PanId) {
    let tables = without(hold);
    match hold {
        Hold::Water | Hold::Chemical => (Story::of(tables).emptied(PAN).node, PAN),
        Hold::ClearDry | Hold::Connected | Hold::Match => (Story::of(tables).emptied(PAN).node, PAN),
        Hold::Melt => (Story::of(tables).emptied(SOLID).node, SOLID),
        Hold::LookAgain => (Story::of(tables).pumped(PAN).node, PAN),
        _ => (Node::new(tables), PAN),
    }
}

#[test]
fn each_hold_taken_out_is_found_out() {
    for hold in [
        Hold::Person,
        Hold::Kit,
        Hold::Floor,
        Hold::Match,
        Hold::Temperature,
        Hold::HeatOff,
        Hold::Connected,
        Hold::LookAgain,
        Hold::Level,
        Hold::Melt,
        Hold::ClearDry,
        Hold::Container,
        Hold::Lift,
        Hold::Water,
        Hold::Chemical,
    ] {
        let (from, pan) = shows(hold);
        let found = explore(from, pan, WHOLE, true);
        let missed = found.violations.first();
        let missed = missed.unwrap_or_else(|| panic!("without {} nothing was missed", hold.key()));
        println!("without {}: {} ({} states)", hold.key(), missed, found.states);
    }
}

#[test]
fn each_step_is_taken_up_again_where_it_stood() {
    for (what, pan) in [
        (JobKind::OilChange, PAN),
        (JobKind::OilChange, SOLID),
        (JobKind::BoilOut, PAN),
    ] {
        stories::resumes(what, pan);
    }
}
