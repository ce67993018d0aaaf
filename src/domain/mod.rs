//! The kitchen as it is: oil, pans, holds and the log. Pure: no clock, no storage, no page, no randomness.
//!
//! Time and ids are handed in. Nothing here may name a web crate or a layer above; `tests/tidy.rs` sees to it.
#![deny(clippy::wildcard_enum_match_arm)]

pub mod claim;
pub mod entry;
pub mod evidence;
pub mod facts;
pub mod fat;
pub mod guide;
pub mod ids;
mod keyed;
pub mod ledger;
pub mod procedure;
pub mod quick;
pub mod time;
pub mod units;
pub mod wait;
