//! While a job is on screen: the screen stays lit, any touch switches sound on, alarms ring.

use leptos::prelude::on_cleanup;

use crate::browser::sound::Pattern;
use crate::domain::time::Now;
use crate::kitchen::alarm::{Bell, Cause, Urgency};
use crate::ui::bench::{Bench, LiveKitchen};
use crate::ui::node::follow;

/// Keeps the screen lit until this screen is left.
pub fn keep_lit(bench: Bench) {
    bench.with_wake(|wake| wake.want());
    on_cleanup(move || bench.with_wake(|wake| wake.let_go()));
}

/// Any touch switches sound on, and asks once more for a lit screen where the phone wanted a touch for it.
pub fn on_touch(bench: Bench) -> impl Fn() + Copy {
    move || {
        bench.with_sound(|sound| sound.unlock());
        bench.with_wake(|wake| wake.want());
    }
}

/// Rings every second for what `sounding` names. Its visual twin stands on the screen that caused it.
pub fn ring(bench: Bench, sounding: fn(&LiveKitchen, &Now) -> Option<Cause>) {
    let mut bell = Bell::default();
    follow(move || {
        let rung = bench.read_each_second(|kitchen, now| {
            let quiet = kitchen.ledger().book.kitchen.as_ref().and_then(|k| k.quiet);
            bell.ring(sounding(kitchen, now), quiet, now)
        });
        if let Some(urgency) = rung {
            play(bench, urgency);
        }
    });
}

/// Plays what an urgency sounds like.
pub fn play(bench: Bench, urgency: Urgency) {
    let pattern = match urgency {
        Urgency::Safety => Pattern::Safety,
        Urgency::Medium => Pattern::Medium,
        Urgency::Chime => Pattern::Chime,
    };
    bench.with_sound(|sound| {
        sound.play(pattern);
    });
}
