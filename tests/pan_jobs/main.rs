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

use panward::domain::facts::Fact;
use panward::domain::facts::job::JobKind;
use panward::domain::facts::run::Heat;
use panward::domain::ids::PanId;
use panward::domain::procedure::{Hold, PanTables};

use node::{Node, Order};
use orders::{of_day, of_pan};
use search::{Found, Reach, explore, explore_all, first_where, walk};
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

/// Where two jobs meet on one pan or in one machine: everything anybody could order from there, of any pan and job.
#[test]
fn no_path_from_where_jobs_meet_crosses_a_line() {
    let heated = |node: &Node, on: Heat| {
        let last = node.log.last().map(|entry| &entry.fact);
        matches!(last, Some(Fact::Job(fact)) if fact.heat == Some(on))
    };
    let of_day = |node: &Node| of_day(node).into_iter().map(Order::Day).collect::<Vec<_>>();
    let boiling = |node: &Node| of_pan(node, PAN).into_iter().map(Order::Pan).collect::<Vec<_>>();
    let fresh = || Node::new(PanTables::REAL);
    let meetings = [
        ("all closed", fresh()),
        ("an empty pan", emptied(PAN, PanTables::REAL)),
        ("an empty pan of dripping", emptied(SOLID, PanTables::REAL)),
        ("old oil in the machine", Story::of(PanTables::REAL).pumped(PAN).node),
        (
            "water on low heat",
            first_where(emptied(PAN, PanTables::REAL), boiling, |node| heated(node, Heat::Low)),
        ),
        (
            "fat on low heat",
            first_where(fresh(), of_day, |node| heated(node, Heat::Low)),
        ),
        ("a pan lit", first_where(fresh(), of_day, |node| heated(node, Heat::On))),
    ];
    for (name, from) in meetings {
        clean(name, explore_all(from, 5));
    }
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
