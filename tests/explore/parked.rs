//! Oil parked in a machine is brought into a pan that has none, and only where it belongs.

use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::facts::run::{Contents, Form, Place};
use panward::domain::facts::setup::OutBy;
use panward::domain::fat::Fat;
use panward::domain::guide::state::Phase;
use panward::domain::guide::{Command, Guide, Refusal};
use panward::domain::units::Volume;

use crate::clean::proved;
use crate::world::{MACHINE, NONE, PAN, World, parked, run_id, stamp, start, world};

/// A world whose one pan has no oil, and whose machine holds some.
fn bare(fat: Fat, ml: u32) -> World {
    let mut world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    world.scene.machines[0].holds = vec![parked(fat, ml)];
    world.scene.bare = std::mem::take(&mut world.scene.pans);
    for pan in &mut world.scene.bare {
        (pan.place, pan.contents) = (Place::InMachine, Contents::EmptyWet);
    }
    world
}

fn begin(world: &World) -> (Guide, Result<(), Refusal>) {
    let now = start();
    let mut guide = proved(world);
    let command = Command::Begin {
        run: run_id(0),
        pan: PAN,
        form: Form::Long,
        plan: NONE,
    };
    let begun = guide.decide(&world.scene, &command, &now).map(|drafts| {
        for draft in drafts {
            guide.apply(&stamp(draft, 90, &now), &world.scene, Some(&now));
        }
    });
    (guide, begun)
}

#[test]
fn parked_oil_comes_into_an_empty_pan_after_a_look_again() {
    let (guide, begun) = begin(&bare(Fat::Rapeseed, 18_000));
    assert_eq!(begun, Ok(()));
    let run = guide.job().unwrap().run.as_ref().unwrap();
    assert_eq!(
        (run.place, run.phase, run.came_out),
        (Place::InMachine, Phase::LookAgain, true)
    );
}

#[test]
fn parked_oil_comes_only_where_fat_room_and_promise_agree_and_melted() {
    let refused = |world: &World| begin(world).1.unwrap_err();
    assert_eq!(
        refused(&bare(Fat::Sunflower, 18_000)),
        Refusal::OtherFat { fat: Fat::Sunflower }
    );
    let mut small = bare(Fat::Rapeseed, 18_000);
    small.scene.bare[0].pan.full = Volume::from_ml(17_999).unwrap();
    assert!(matches!(refused(&small), Refusal::PanTooSmall { .. }));
    let mut empty = bare(Fat::Rapeseed, 18_000);
    empty.scene.machines[0].holds.clear();
    assert_eq!(refused(&empty), Refusal::NothingParked);
    let mut split = bare(Fat::Rapeseed, 18_000);
    split.scene.machines[0].holds[0].volume = None;
    assert_eq!(refused(&split), Refusal::OilOut);
    let mut set = bare(Fat::Dripping, 18_000);
    set.scene.bare[0].pan.fat = Fat::Dripping;
    assert_eq!(refused(&set), Refusal::WarmUpNotBegun, "melt before use");
    let mut promised = bare(Fat::Rapeseed, 18_000);
    promised.scene.bare[0].claims = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE)
        .gluten_free()
        .scene
        .pans[0]
        .claims
        .clone();
    assert_eq!(begin(&promised).1, Ok(()));
    promised.scene.machines[0].met = Exposures::of(&[Exposure::Gluten]);
    let (claim, exposure) = (ClaimKind::GlutenFree, Exposure::Gluten);
    assert_eq!(
        refused(&promised),
        Refusal::ClaimMeets {
            claim,
            exposure,
            machine: MACHINE
        }
    );
}

#[test]
fn a_tank_the_log_knows_to_hold_oil_takes_no_other() {
    let mut full = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    full.scene.machines[0].holds = vec![parked(Fat::Rapeseed, 1)];
    let refused = begin(&full).1.unwrap_err();
    assert!(matches!(refused, Refusal::MachineHolds { .. }), "{refused:?}");
}
