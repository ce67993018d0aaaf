//! A figure being typed, kept in this tab's storage until it is written: no reload loses it.

use crate::browser::shelf::Shelf;
use crate::domain::evidence::{Evidence, Item, Seen};
use crate::ui::node::{Held, follow};

/// `scope` is what the figure belongs to, so that one pan's reading is never offered to another.
fn key(scope: u128, item: Item) -> String {
    format!("panward.draft.{scope:032x}.{}", item.key())
}

/// The text of a pad, as it was left.
pub fn open(scope: u128, item: Item) -> Held<String> {
    let text = Held::new(Shelf::Tab.kept(&key(scope, item)).unwrap_or_default());
    follow(move || {
        // Where the browser keeps nothing the pad still works; only a reload would lose the figure.
        text.with(|now| Shelf::Tab.keep(&key(scope, item), now));
    });
    text
}

/// The figures among this evidence are written, or refused for what they say.
pub fn forget(scope: u128, evidence: &Evidence) {
    for (item, seen) in evidence.iter() {
        if matches!(seen, Seen::Number(_)) {
            Shelf::Tab.forget(&key(scope, *item));
        }
    }
}
