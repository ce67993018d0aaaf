//! Light-up and lock-up explored before an independent judge, and the days that hang on them.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod auditor;
mod search;
mod stories;
mod world;

use panward::domain::facts::job::JobKind;
use panward::domain::facts::run::{Contents, Place};
use panward::domain::fat::Fat;
use panward::domain::procedure::{DayTables, Hold};

use search::{Found, Plan, explore};
use world::{scene, without};

const LIGHT_DEPTH: usize = 7;
const LOCK_DEPTH: usize = 7;

fn light(fat: Fat, place: Place, contents: Contents, tables: DayTables) -> Found {
    explore(&Plan {
        scene: scene(fat, place, contents),
        tables,
        open: vec![JobKind::LightUp],
        depth: LIGHT_DEPTH,
    })
}

fn lock(place: Place, open: &[JobKind], tables: DayTables) -> Found {
    explore(&Plan {
        scene: scene(Fat::Rapeseed, place, Contents::Oil),
        tables,
        open: open.to_vec(),
        depth: LOCK_DEPTH,
    })
}

fn clean(name: &str, found: Found) -> Found {
    println!("{name}: {} states, {} refusals", found.states, found.refused);
    assert_eq!(found.violations.first(), None, "{name}");
    found
}

#[test]
fn a_pan_of_oil_is_lit_only_above_its_mark() {
    let found = clean(
        "light rapeseed",
        light(Fat::Rapeseed, Place::InPan, Contents::Oil, DayTables::REAL),
    );
    assert!(found.lit > 0);
    assert_eq!(found.low, 0);
}

#[test]
fn set_fat_gets_full_heat_only_once_all_is_liquid() {
    for (fat, contents) in [(Fat::Dripping, Contents::SetFat), (Fat::PalmOlein, Contents::Oil)] {
        let found = clean(fat.key(), light(fat, Place::InPan, contents, DayTables::REAL));
        assert!(found.lit > 0 && found.low > 0);
    }
}

#[test]
fn fresh_blocks_are_seen_packed_before_any_heat() {
    let mut scene = scene(Fat::Dripping, Place::InPan, Contents::SetFat);
    scene.pans[0].blocks = true;
    let blocks = |tables| {
        explore(&Plan {
            scene: scene.clone(),
            tables,
            open: vec![JobKind::LightUp],
            depth: LIGHT_DEPTH,
        })
    };
    let found = clean("blocks", blocks(DayTables::REAL));
    assert!(found.lit > 0 && found.low > 0);
    let unasked = DayTables {
        melt_blocks: DayTables::REAL.melt_low,
        ..DayTables::REAL
    };
    let violations = blocks(unasked).violations;
    assert!(
        violations.iter().any(|v| v.contains("nobody saw packed")),
        "{violations:?}"
    );
}

#[test]
fn an_empty_pan_is_never_lit() {
    for (place, contents) in [
        (Place::InMachine, Contents::EmptyWet),
        (Place::Split, Contents::Oil),
        (Place::InPan, Contents::EmptyDry),
        (Place::InPan, Contents::CleaningWater),
    ] {
        let found = clean(place.key(), light(Fat::Dripping, place, contents, DayTables::REAL));
        assert_eq!((found.lit, found.low), (0, 0));
    }
}

#[test]
fn a_lock_up_never_ends_without_hold_twelve() {
    for place in [Place::InPan, Place::InMachine] {
        let found = clean(place.key(), lock(place, &[JobKind::LockUp], DayTables::REAL));
        assert!(found.ended > 0 && found.left_open > 0 && found.looked > 0);
    }
}

#[test]
fn each_hold_taken_out_is_found_out() {
    for (hold, what) in [
        (Hold::Person, "not fit for it"),
        (Hold::Level, "below the mark"),
        (Hold::Melt, "not seen all liquid"),
    ] {
        let found = light(Fat::Dripping, Place::InPan, Contents::SetFat, without(hold));
        assert!(found.violations.iter().any(|v| v.contains(what)), "{}", hold.key());
    }
    let found = lock(Place::InPan, &[JobKind::LockUp], without(Hold::Scraps));
    for what in ["ended without hold 12", "left open without hold 12"] {
        assert!(found.violations.iter().any(|v| v.contains(what)), "scraps: {what}");
    }
}
