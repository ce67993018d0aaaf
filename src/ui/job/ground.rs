//! The ground a job's screens stand on: the step's name for who follows from outside, and the touch that wakes sound.

use super::watch;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Node, Reach, el, follow, live};

/// The screen of a job. `step` names what is shown, `draw` draws it.
#[must_use]
pub fn job_ground(
    bench: Bench,
    testid: &'static str,
    step: impl Fn() -> String + 'static,
    draw: impl Fn() -> Node + 'static,
) -> Element {
    let touched = watch::on_touch(bench);
    let ground = Reach::new();
    follow(move || {
        let step = step();
        if let Some(ground) = ground.get() {
            // A name of our own on an element of our own is never refused.
            let _ = ground.set_attribute("data-step", &step);
        }
    });
    el("div")
        .class("job")
        .testid(testid)
        .reach(ground)
        .on("pointerdown", move |_| touched())
        .child(live(draw))
}
