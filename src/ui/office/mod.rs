//! The parts of the owner's page.

mod about;
mod files;
mod storage;
mod things;

pub use about::AboutTheApp;
pub use files::{ExportCard, ImportButton};
pub use storage::StorageCard;
pub use things::{AtThisPhone, Limits, Things};
