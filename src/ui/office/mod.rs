//! The parts of the owner's page.

mod about;
mod closed;
mod files;
mod storage;
mod things;

pub use about::about_the_app;
pub use closed::closed_days;
pub use files::{export_card, import_button};
pub use storage::storage_card;
pub use things::{at_this_phone, limits, things};
