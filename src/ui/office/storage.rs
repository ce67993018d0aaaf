//! How safe the log is on this phone: whether the phone promised to keep it, and how much room there is.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::browser::storage_health::{self, Room};
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Card};
use crate::words::office::{self, Line, line};
use crate::words::screens::{Screen as Words, screen as words};

/// The state of storage.
#[component]
pub fn StorageCard() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let room = RwSignal::new(None::<Room>);
    spawn_local(async move { room.set(storage_health::room().await) });
    let kept = move || {
        words(
            match bench.kept.get() {
                Some(true) => Words::Kept,
                Some(false) => Words::MayBeCleared,
                None => Words::KeptUnknown,
            },
            lang,
        )
    };
    let room = move || match room.get() {
        Some(room) => office::room(room.used, room.allowed, lang),
        None => line(Line::RoomUnknown, lang).to_owned(),
    };
    let ask = move || {
        (bench.kept.get() != Some(true)).then(|| {
            view! { <Button label=line(Line::AskAgain, lang) on_press=move |()| bench.ask_to_keep() testid="ask-to-keep"/> }
        })
    };
    view! {
        <Card testid="storage">
            <h2>{line(Line::Storage, lang)}</h2>
            <p data-testid="kept">{kept}</p>
            <p class="soft" data-testid="room">{room}</p>
            {ask}
        </Card>
    }
}
