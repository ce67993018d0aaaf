//! Small preferences of this phone: which world it shows, who stands at it, when it last exported. Losing
//! them loses nothing of the log.

use gloo_storage::{LocalStorage, Storage};

use crate::domain::ids::PersonId;
use crate::domain::time::Millis;
use crate::domain::units::Volume;
use crate::domain::volume::Packs;
use crate::store::World;

const WORLD: &str = "panward.world";
const ME: &str = "panward.me";
const BLOCK_G: &str = "panward.block_g";
const DRUM_ML: &str = "panward.drum_ml";
const DRAFT: &str = "panward.draft";

/// The world this phone shows; none before the first choice, or where the browser keeps nothing.
#[must_use]
pub fn world() -> Option<World> {
    LocalStorage::get::<String>(WORLD)
        .ok()
        .and_then(|key| World::from_key(&key))
}

/// Keeps the choice; where the browser keeps nothing it is asked again next time.
pub fn set_world(world: Option<World>) {
    match world {
        Some(world) => {
            let _ = LocalStorage::set(WORLD, world.key());
        }
        None => LocalStorage::delete(WORLD),
    }
}

/// Who stands at this phone.
#[must_use]
pub fn me() -> Option<PersonId> {
    let text = LocalStorage::get::<String>(ME).ok()?;
    u128::from_str_radix(&text, 16).ok().map(PersonId)
}

/// Keeps who stands at this phone.
pub fn set_me(person: PersonId) {
    let _ = LocalStorage::set(ME, format!("{:032x}", person.0));
}

/// What the packs of this kitchen hold, as far as somebody has said at this phone.
#[must_use]
pub fn packs() -> Packs {
    Packs {
        block_g: LocalStorage::get(BLOCK_G).ok(),
        drum: LocalStorage::get(DRUM_ML).ok().and_then(Volume::from_ml),
    }
}

/// Keeps what a block weighs, in grams.
pub fn set_block_g(grams: u32) {
    let _ = LocalStorage::set(BLOCK_G, grams);
}

/// Keeps what a drum holds.
pub fn set_drum(volume: Volume) {
    let _ = LocalStorage::set(DRUM_ML, volume.ml());
}

/// What was being typed when the page went away, as pairs of text; nothing when it was saved.
#[must_use]
pub fn draft() -> Vec<(String, String)> {
    LocalStorage::get(DRAFT).unwrap_or_default()
}

/// Keeps what is being typed.
pub fn set_draft(pairs: &[(String, String)]) {
    if pairs.is_empty() {
        LocalStorage::delete(DRAFT);
    } else {
        let _ = LocalStorage::set(DRAFT, pairs);
    }
}

const EXPORTED: &str = "panward.exported";
const BURN: &str = "panward.burn";

fn moment(key: &str) -> Option<Millis> {
    LocalStorage::get::<i64>(key).ok().map(Millis)
}

/// When the log was last exported from this phone.
#[must_use]
pub fn exported() -> Option<Millis> {
    moment(EXPORTED)
}

/// Keeps when the log was exported.
pub fn set_exported(at: Millis) {
    let _ = LocalStorage::set(EXPORTED, at.0);
}

/// When the clock of the burn card was started.
#[must_use]
pub fn burn_started() -> Option<Millis> {
    moment(BURN)
}

/// Keeps when the clock of the burn card was started, so that a reload does not lose it.
pub fn set_burn_started(at: Millis) {
    let _ = LocalStorage::set(BURN, at.0);
}
