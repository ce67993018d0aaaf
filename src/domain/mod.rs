//! The kitchen as it is: oil, pans, holds and the log. Pure: no clock, no storage, no page, no randomness.
//!
//! Time and ids are handed in. Nothing here may name a web crate or a layer above; `tests/tidy.rs` sees to it.
#![deny(clippy::wildcard_enum_match_arm)]

pub mod allergen_sheet;
pub mod claim;
pub mod country;
pub mod day_jobs;
pub mod entry;
pub mod evidence;
pub mod facts;
pub mod fat;
pub mod guide;
pub mod heat;
pub mod ids;
pub(crate) mod keyed;
pub mod ledger;
pub mod lifting;
pub mod limits;
pub mod measure;
pub mod memo;
pub mod oil_life;
pub mod pan_jobs;
pub(crate) mod places;
pub mod print;
pub mod procedure;
pub mod quick;
pub mod setting_up;
pub mod sorted;
pub mod time;
pub mod trouble;
pub mod units;
pub mod volume;
pub mod wait;
