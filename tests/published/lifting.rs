//! What one person lifts, as HSE's guideline figure has it, and what a drum and a block come to.

use panward::domain::fat::Fat;
use panward::domain::lifting::{DRUM_EMPTY_G, Zone, drum_g, help_from_kg, needs_help};
use panward::domain::units::Volume;

/// HSE, *Manual handling at work*, INDG143, and L23: the lifting and lowering figure, close and at arm's length (from
/// memory).
#[test]
fn hse_guideline_figures() {
    let published = [
        (Zone::AboveShoulder, (10, 5), (7, 3)),
        (Zone::Shoulder, (20, 10), (13, 7)),
        (Zone::Elbow, (25, 15), (16, 10)),
        (Zone::Knuckle, (20, 10), (13, 7)),
        (Zone::Floor, (10, 5), (7, 3)),
    ];
    for (zone, men, women) in published {
        assert_eq!(
            (zone.guideline().men_kg, zone.guideline().women_kg),
            (men, women),
            "{zone:?}"
        );
    }
    assert_eq!(published.len(), Zone::ALL.len());
}

/// The same: hands that pass two zones go by the smaller figure.
#[test]
fn a_lift_through_several_zones_goes_by_the_smallest() {
    assert_eq!(help_from_kg(Zone::Elbow, Zone::Elbow), 16);
    assert_eq!(help_from_kg(Zone::Elbow, Zone::Shoulder), 13);
    assert_eq!(help_from_kg(Zone::Floor, Zone::Elbow), 7);
    assert_eq!(help_from_kg(Zone::Elbow, Zone::Floor), 7);
    assert_eq!(help_from_kg(Zone::AboveShoulder, Zone::Knuckle), 7);
}

/// A full drum of 20 litres weighs 19 to 19.5 kg (0.92 kg/L and the can), a block of cold fat 12.5 kg (common practice,
/// no source): both need help from the floor.
#[test]
fn a_drum_and_a_block_need_help() {
    let drum = drum_g(Volume::from_ml(20_000).unwrap(), Fat::Rapeseed);
    assert!((19_000..=19_500).contains(&drum), "{drum}");
    assert!(needs_help(drum) && needs_help(12_500));
    assert!(!needs_help(7_000) && needs_help(7_001));
    assert_eq!(drum_g(Volume::NONE, Fat::Dripping), DRUM_EMPTY_G);
}
