//! How safe the log is on this phone: whether the phone promised to keep it, and how much room there is.

use leptos::task::spawn_local;

use crate::browser::storage_health::{self, Room};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Held, el, live};
use crate::ui::parts::{Rank, button, card};
use crate::words::office::{self, Line, line};
use crate::words::screens::{Screen as Words, screen as words};

/// The state of storage.
#[must_use]
pub fn storage_card(bench: Bench) -> Element {
    let lang = bench.lang;
    let room = Held::new(None::<Room>);
    spawn_local(async move { room.set(storage_health::room().await) });
    let state = live(move || {
        let promised = bench.kept.get();
        let kept = match promised {
            Some(true) => Words::Kept,
            Some(false) => Words::MayBeCleared,
            None => Words::KeptUnknown,
        };
        let room = match room.get() {
            Some(room) => office::room(room.used, room.allowed, lang),
            None => line(Line::RoomUnknown, lang).to_owned(),
        };
        let ask = (promised != Some(true)).then(|| {
            button(Rank::Second, line(Line::AskAgain, lang), "ask-to-keep", move || {
                bench.ask_to_keep();
            })
        });
        nodes![
            el("p").testid("kept").text(words(kept, lang)),
            el("p").class("soft").testid("room").text(room),
            ask,
        ]
    });
    card("storage")
        .child(el("h2").text(line(Line::Storage, lang)))
        .child(state)
}
