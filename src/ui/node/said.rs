//! How words come onto the screen: in those of the kitchen's country, and numbers typed in its measures.

use std::cell::RefCell;

use super::Text;
use crate::domain::measure::Measure;
use crate::words::local::Local;

thread_local! {
    static LOCAL: RefCell<Local> = RefCell::new(Local::default());
}

/// From now on everything is drawn in these words and measures. What is drawn already stays until it is drawn again.
pub fn speak(local: Local) {
    LOCAL.set(local);
}

/// Words as they are said here.
pub(super) fn said(words: Text) -> Text {
    LOCAL.with_borrow(|local| local.said(words))
}

/// The measure a number with this unit is typed in here, where it is another.
pub fn typed_in(unit: &str) -> Option<Measure> {
    LOCAL.with_borrow(|local| local.typed_in(unit))
}

/// Whether an attribute is read out or shown.
pub(super) fn is_spoken(attribute: &str) -> bool {
    matches!(attribute, "aria-label" | "title" | "placeholder" | "alt")
}
