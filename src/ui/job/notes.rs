//! The small standing notes of a job: sound still off, a screen that may go dark.

use crate::browser::sound::SoundState;
use crate::browser::wake::WakeState;
use crate::ui::bench::Bench;
use crate::ui::node::{Node, el, live, several};
use crate::words::run::{Say, say};

/// The notes that hold now; nothing is drawn when there is none.
#[must_use]
pub fn notes(bench: Bench) -> Node {
    let lang = bench.lang;
    live(move || {
        let silent = bench.sound_state.get() != SoundState::On;
        let dark = matches!(bench.wake_state.get(), WakeState::Refused | WakeState::Unsupported);
        let note = |testid: &'static str, words| {
            let words = say(words, lang);
            el("p")
                .class("job-note")
                .attr("role", "status")
                .testid(testid)
                .text(words)
        };
        several([
            silent.then(|| note("note-sound", Say::SoundOff)),
            dark.then(|| note("note-wake", Say::ScreenMaySleep)),
        ])
    })
}
