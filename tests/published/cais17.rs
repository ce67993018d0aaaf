//! The points of HSE Catering Information Sheet 17 that the oil change and the boil-out rest on.

use panward::domain::evidence::{Item, Word};
use panward::domain::guide::BY_HAND_MAX;
use panward::domain::limits;
use panward::domain::procedure::{Hold, How, PanTables, Step, StepId, Verdict};
use panward::words::{Lang, steps};

fn good(step: &Step, item: Item) -> Vec<Word> {
    let ask = step.asks.iter().find(|ask| ask.item == item).expect("asked");
    let How::Look(answers) = ask.how else {
        panic!("not a look")
    };
    let good = answers.iter().filter(|a| a.verdict == Verdict::Good);
    good.map(|a| a.word).collect()
}

/// Point 1: by hand only at or under 40 °C.
#[test]
fn by_hand_at_forty_at_most() {
    assert_eq!((BY_HAND_MAX.dc(), limits::MANUAL_MAX), (400, BY_HAND_MAX));
    let tables = PanTables::REAL;
    for step in [tables.temp, tables.container, tables.let_out] {
        assert!(step.holds.contains(&Hold::Temperature), "{:?}", step.id);
    }
}

/// Point 18, as a caterer's handbook restates it: a dry metal container with a lid, or the oil's own empty one; never an
/// open, wet or plastic one.
#[test]
fn a_dry_lidded_metal_container_or_its_own() {
    for step in [PanTables::REAL.container, PanTables::REAL.let_out] {
        assert_eq!(good(step, Item::Container), [Word::MetalDry, Word::OwnTin]);
    }
}

/// Point 19, second-hand: two people, lid on, at most two thirds full.
#[test]
fn at_most_two_thirds_full() {
    for step in [StepId::EmptyByHand, StepId::LetOut] {
        assert!(
            steps::step_detail(step, Lang::En).contains("t most two thirds full"),
            "{step:?}"
        );
    }
    assert!(good(PanTables::REAL.container, Item::Carry).contains(&Word::TwoPeople));
}

/// Points 15 and 16: on a drip tray, shut, never to a drain.
#[test]
fn waste_stands_on_a_tray_away_from_drains() {
    assert_eq!(good(PanTables::REAL.waste, Item::Stored), [Word::DripTray]);
    assert_eq!(good(PanTables::REAL.waste, Item::Lid), [Word::InPlace]);
}

/// Points 11 and 14: protective kit and trained people, for the oil and for the chemical.
#[test]
fn kit_and_trained_people() {
    let tables = PanTables::REAL;
    assert!(tables.who.holds.contains(&Hold::Person));
    for step in [tables.kit, tables.chemical_kit] {
        assert!(
            [Item::Gloves, Item::Face, Item::Apron]
                .iter()
                .all(|item| good(step, *item) == [Word::Worn])
        );
    }
}

/// Point 20, from memory: a boil-out is never left, and the pan dry before oil goes in.
#[test]
fn a_boil_out_is_watched_and_the_pan_dry() {
    let tables = PanTables::REAL;
    assert_eq!(good(tables.boil_heat, Item::Attended), [Word::Here]);
    assert_eq!(good(tables.boil_look, Item::Attended), [Word::Here]);
    assert_eq!(good(tables.exit, Item::PanInside), [Word::Dry]);
}
