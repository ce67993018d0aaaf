//! The small standing notes of a job: sound still off, a screen that may go dark.

use leptos::prelude::*;

use crate::browser::sound::SoundState;
use crate::browser::wake::WakeState;
use crate::ui::bench::Bench;
use crate::words::run::{Say, say};

/// The notes that hold now; nothing is drawn when there is none.
#[must_use]
pub fn notes(bench: Bench) -> AnyView {
    let lang = bench.lang;
    view! {
        {move || {
            let silent = bench.sound_state.get() != SoundState::On;
            let dark = matches!(bench.wake_state.get(), WakeState::Refused | WakeState::Unsupported);
            let lines = [
                silent.then(|| ("note-sound", say(Say::SoundOff, lang))),
                dark.then(|| ("note-wake", say(Say::ScreenMaySleep, lang))),
            ];
            lines
                .into_iter()
                .flatten()
                .map(|(testid, words)| view! { <p class="job-note" role="status" data-testid=testid>{words}</p> })
                .collect_view()
        }}
    }
    .into_any()
}
