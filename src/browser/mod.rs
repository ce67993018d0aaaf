//! What the browser offers, thinly wrapped: nothing in here decides anything, and nothing in here draws.
//!
//! Every wrapper says what it found, so that a phone without the feature is told so in words.

pub mod clock;
pub mod files;
pub mod idb;
mod listen;
pub mod page;
pub mod shelf;
pub mod sound;
pub mod storage_health;
pub mod update;
pub mod wake;
pub mod window;
