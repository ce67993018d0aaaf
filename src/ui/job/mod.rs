//! What the screens of all jobs share: a gate asked one question a screen, holds that say no, the page around lists,
//! sound and a lit screen while a job is shown, typed figures kept until they are accepted.

pub mod ask;
pub mod begin;
pub mod desk;
pub mod draft;
pub mod frame;
pub mod ground;
pub mod hold;
pub mod notes;
pub mod page;
pub mod people;
pub mod signs;
pub mod watch;
pub mod why;

use crate::browser::clock;

/// A new id, from chance.
#[must_use]
pub fn fresh_id() -> u128 {
    uuid::Builder::from_random_bytes(clock::random_bytes())
        .into_uuid()
        .as_u128()
}
