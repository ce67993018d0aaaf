//! Small preferences of this phone: which world it shows, who stands at it, when it last exported. Losing
//! them loses nothing of the log.

use crate::browser::shelf::Shelf;
use crate::domain::ids::PersonId;
use crate::domain::time::Millis;
use crate::domain::units::{Unit, Volume};
use crate::domain::volume::Packs;
use crate::store::World;
use crate::store::wire::stored::Stored;

const WORLD: &str = "panward.world";
const ME: &str = "panward.me";
const BLOCK_G: &str = "panward.block_g";
const DRUM_ML: &str = "panward.drum_ml";
const BAG_ML: &str = "panward.bag_ml";
const DRAFT: &str = "panward.draft";

fn kept<T: Stored>(key: &str) -> Option<T> {
    Shelf::Phone.kept(key)
}

fn keep<T: Stored>(key: &str, what: &T) {
    Shelf::Phone.keep(key, what);
}

/// The world this phone shows; none before the first choice, or where the browser keeps nothing.
#[must_use]
pub fn world() -> Option<World> {
    kept::<String>(WORLD).and_then(|key| World::from_key(&key))
}

/// Keeps the choice.
pub fn set_world(world: Option<World>) {
    match world {
        Some(world) => keep(WORLD, &world.key().to_owned()),
        None => Shelf::Phone.forget(WORLD),
    }
}

/// Who stands at this phone.
#[must_use]
pub fn me() -> Option<PersonId> {
    let text = kept::<String>(ME)?;
    u128::from_str_radix(&text, 16).ok().map(PersonId)
}

/// Keeps who stands at this phone.
pub fn set_me(person: PersonId) {
    keep(ME, &format!("{:032x}", person.0));
}

/// What is said of the demo's packs stays with the demo.
fn of_world(key: &str) -> String {
    match world() {
        Some(world @ (World::Demo | World::Practice)) => format!("{key}.{}", world.key()),
        Some(World::Real) | None => key.to_owned(),
    }
}

/// What the packs of this kitchen hold, as far as somebody has said at this phone.
#[must_use]
pub fn packs() -> Packs {
    Packs {
        block_g: kept(&of_world(BLOCK_G)),
        drum: kept(&of_world(DRUM_ML)).and_then(Volume::from_ml),
        bag: kept(&of_world(BAG_ML)).and_then(Volume::from_ml),
    }
}

/// Keeps what a block weighs, in grams.
pub fn set_block_g(grams: u32) {
    keep(&of_world(BLOCK_G), &grams);
}

/// Keeps what a drum or a bag holds; nothing else is counted in packs of a volume.
pub fn set_holds(unit: Unit, volume: Volume) {
    match unit {
        Unit::Drum => keep(&of_world(DRUM_ML), &volume.ml()),
        Unit::Bag => keep(&of_world(BAG_ML), &volume.ml()),
        Unit::Litres | Unit::Kilograms | Unit::Block => {}
    }
}

/// What was being typed when the page went away, as pairs of text; nothing when it was saved.
#[must_use]
pub fn draft() -> Vec<(String, String)> {
    let kept: Vec<[String; 2]> = kept(DRAFT).unwrap_or_default();
    kept.into_iter().map(|[name, value]| (name, value)).collect()
}

/// Keeps what is being typed.
pub fn set_draft(pairs: &[(String, String)]) {
    if pairs.is_empty() {
        Shelf::Phone.forget(DRAFT);
    } else {
        let pairs: Vec<[String; 2]> = pairs.iter().cloned().map(|(name, value)| [name, value]).collect();
        keep(DRAFT, &pairs);
    }
}

const GLANCE: &str = "panward.glance";

/// What Today showed last (see [`crate::kitchen::glance`]).
#[must_use]
pub fn glance() -> Option<String> {
    kept(GLANCE)
}

/// Keeps what Today shows, or that nothing of it may be kept.
pub fn set_glance(text: Option<String>) {
    match text {
        Some(text) => keep(GLANCE, &text),
        None => Shelf::Phone.forget(GLANCE),
    }
}

const EXPORTED: &str = "panward.exported";
const BURN: &str = "panward.burn";
const BURN_CLOSED: &str = "panward.burn_closed";

fn moment(key: &str) -> Option<Millis> {
    kept(key).map(Millis)
}

/// When the log was last exported from this phone.
#[must_use]
pub fn exported() -> Option<Millis> {
    moment(EXPORTED)
}

/// Keeps when the log was exported.
pub fn set_exported(at: Millis) {
    keep(EXPORTED, &at.0);
}

/// When the clock of the burn card was started.
#[must_use]
pub fn burn_started() -> Option<Millis> {
    moment(BURN)
}

/// Keeps when the clock of the burn card was started, so that a reload does not lose it.
pub fn set_burn_started(at: Millis) {
    keep(BURN, &at.0);
}

/// When the burn card was closed, while it is.
#[must_use]
pub fn burn_closed() -> Option<Millis> {
    moment(BURN_CLOSED)
}

/// Keeps when the burn card was closed, or that it is open.
pub fn set_burn_closed(at: Option<Millis>) {
    match at {
        Some(at) => keep(BURN_CLOSED, &at.0),
        None => Shelf::Phone.forget(BURN_CLOSED),
    }
}
