//! The line that offers to take the last thing back, for ten seconds.

use std::time::Duration;

use leptos::leptos_dom::helpers::set_timeout_with_handle;
use leptos::prelude::on_cleanup;

use crate::ui::node::{Act, Element, Reach, Text, el, follow};

/// How long the offer stands.
const STANDS: Duration = Duration::from_secs(10);

/// An offer to take something back. After ten seconds it calls `on_over`; the log can still be corrected by an entry.
pub struct Undo {
    /// What was done.
    pub text: Text,
    /// What the button says.
    pub label: Text,
    /// Takes it back.
    pub on_undo: Act,
    /// How long ago it was done: the offer is shorter by that on the screen that follows.
    pub age: Duration,
    /// Called when the offer is over.
    pub on_over: Act,
}

impl Undo {
    /// Draws it. Test ids `undo` and `undo-button`.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            text,
            label,
            on_undo,
            age,
            on_over,
        } = self;
        // Without a timer the offer simply stays, which harms nobody.
        if let Ok(timer) = set_timeout_with_handle(move || on_over.run(), STANDS.saturating_sub(age)) {
            on_cleanup(move || timer.clear());
        }
        let time = Reach::new();
        follow(move || {
            if let Some(time) = time.get() {
                // The bar begins where the offer stands; a browser that will not have it draws a whole bar.
                let _ = time
                    .style()
                    .set_property("animation-delay", &format!("-{}ms", age.as_millis()));
            }
        });
        let button = el("button")
            .attr("type", "button")
            .testid("undo-button")
            .on_press(on_undo)
            .text(label);
        el("div")
            .class("undo")
            .attr("role", "status")
            .testid("undo")
            .child(el("p").text(text))
            .child(button)
            .child(el("span").class("undo-time").attr("aria-hidden", "true").reach(time))
    }
}
