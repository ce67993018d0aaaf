//! The forms of set-up on screen: one table of fields, drawn by what each is answered with.

pub mod drafts;
mod field;
mod form;

pub use form::Form;

use crate::browser::clock;

/// A new id for something that is set up.
#[must_use]
pub fn new_id() -> u128 {
    u128::from_le_bytes(clock::random_bytes())
}
