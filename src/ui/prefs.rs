//! Small preferences of this phone: which world it shows and who stands at it. Losing them loses nothing of the log.

use gloo_storage::{LocalStorage, Storage};

use crate::domain::ids::PersonId;
use crate::domain::time::Millis;
use crate::store::World;

const WORLD: &str = "panward.world";
const ME: &str = "panward.me";
const LAST_EXPORT: &str = "panward.last_export";

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

/// When the last export of the real log was made on this phone.
#[must_use]
pub fn last_export() -> Option<Millis> {
    LocalStorage::get::<i64>(LAST_EXPORT).ok().map(Millis)
}

/// Keeps when an export was made.
pub fn set_last_export(at: Millis) {
    let _ = LocalStorage::set(LAST_EXPORT, at.0);
}
