//! The journal and what is kept in it: stored shapes and versions, the stamp of time and place, export and import.
//!
//! Entries are only ever added. Nothing here reads a clock, a random source or the page: all three are handed in.

pub mod export;
pub mod import;
pub mod journal;
pub mod json;
mod memory;
mod plain;
pub mod record;
#[cfg(feature = "schema")]
pub mod schema;
pub mod stamp;
pub(crate) mod wire;
mod world;

pub use journal::{Journal, Loaded, StoreFault, Unreadable};
pub use memory::MemoryJournal;
pub use plain::Odd;
pub use record::{BadEntry, Record};
pub use world::World;
