//! The ground every job's screens stand on: lit while it is shown, ringing for what is due, looking anew each second,
//! naming its step for who follows from outside.

use leptos::prelude::untrack;

use super::watch;
use super::why::why_sheet;
use crate::domain::procedure::Step;
use crate::domain::time::Now;
use crate::kitchen::alarm::Cause;
use crate::ui::bench::{Bench, LiveKitchen};
use crate::ui::node::{Element, Held, Node, Reach, el, follow, live};

/// A job's screen.
pub struct Ground {
    /// The bench.
    pub bench: Bench,
    /// Its test id.
    pub testid: &'static str,
    /// The step whose why is open, if one is.
    pub why: Held<Option<&'static Step>>,
    /// What rings now.
    pub sounding: fn(&LiveKitchen, &Now) -> Option<Cause>,
    /// Works out anew what is shown: once a second, and when what it follows changes.
    pub look: Box<dyn Fn()>,
    /// What is shown by its name, followed.
    pub step: Box<dyn Fn() -> String>,
    /// Draws what is shown, followed.
    pub shown: Box<dyn Fn() -> Node>,
}

impl Ground {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            bench,
            testid,
            why,
            sounding,
            look,
            step,
            shown,
        } = self;
        watch::keep_lit(bench);
        watch::ring(bench, sounding);
        follow(move || {
            bench.read_each_second(|_, _| ());
            untrack(&look);
        });
        let ground = Reach::new();
        follow(move || {
            let step = step();
            if let Some(ground) = ground.get() {
                // A name of our own on an element of our own is never refused.
                let _ = ground.set_attribute("data-step", &step);
            }
        });
        let touched = watch::on_touch(bench);
        el("div")
            .class("job")
            .testid(testid)
            .reach(ground)
            .on("pointerdown", move |_| touched())
            .child(live(shown))
            .child(why_sheet(why, bench.lang))
    }
}
