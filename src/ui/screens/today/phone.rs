//! How this phone stands, small at the bottom: sound, the lit screen, the log's safety, the last export, a new version.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::browser::page;
use crate::browser::sound::SoundState;
use crate::browser::update::{self, Update};
use crate::browser::wake::WakeState;
use crate::domain::time::{Day, Millis};
use crate::store::World;
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Notice};
use crate::ui::prefs;
use crate::words::run::{Say, say};
use crate::words::screens::{self, Screen as Title, screen as title};
use crate::words::today::{Line, line};

/// The lines, and the notice of a new version.
#[component]
pub fn ThisPhone() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let sound = move || match bench.sound_state.get() {
        SoundState::On => line(Line::SoundOn, lang),
        SoundState::OffUntilTouch => say(Say::SoundOff, lang),
        SoundState::Unsupported => line(Line::NoSound, lang),
    };
    let wake = move || match bench.wake_state.get() {
        WakeState::Off | WakeState::Held => line(Line::WakeReady, lang),
        WakeState::Refused | WakeState::Unsupported => say(Say::ScreenMaySleep, lang),
    };
    let kept = move || match bench.kept.get() {
        None => title(Title::KeptUnknown, lang),
        Some(true) => title(Title::Kept, lang),
        Some(false) => title(Title::MayBeCleared, lang),
    };
    let today = Memo::new(move |_| bench.read_each_second(|kitchen, now| (kitchen.today(now), now.off_min)));
    let exported = move || {
        let (today, off_min) = today.get();
        let ago = |at: Millis| u32::try_from(today.since(Day::of(at, off_min, 0)).max(0)).unwrap_or(0);
        screens::last_export(prefs::exported().map(ago), lang)
    };
    let real = bench.world == World::Real;
    view! {
        <NewVersion/>
        <section class="phone" data-testid="this-phone">
            <h2>{line(Line::ThisPhone, lang)}</h2>
            <ul>
                <li data-testid="sound-line">{sound}</li>
                <li data-testid="wake-line">{wake}</li>
                {real.then(|| view! {
                    <li data-testid="kept-line">{kept}</li>
                    <li data-testid="export-line">{exported}</li>
                })}
            </ul>
        </section>
    }
}

/// A new version waits until no job is open, and is taken only on a touch.
#[component]
pub fn NewVersion() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let job_open = Memo::new(move |_| bench.read(|kitchen, _| kitchen.job_open()));
    let touched = RwSignal::new(false);
    // Taken here, on this touch: go over to it at once. Taken in another window: this one waits for its own touch.
    Effect::new(move || {
        if bench.update.get() == Some(Update::Taken) && touched.get_untracked() {
            page::reload();
        }
    });
    let take = move |()| {
        touched.set(true);
        spawn_local(async move {
            if !update::take().await {
                page::reload();
            }
        });
    };
    move || {
        bench.update.get().map(|state| {
            let text = if job_open.get() {
                Title::UpdateWaiting
            } else {
                Title::UpdateReady
            };
            let (label, press) = match state {
                Update::Waiting => (Line::TakeUpdate, Callback::new(take)),
                Update::Taken => (Line::StartUpdate, Callback::new(|()| page::reload())),
            };
            view! {
                <Notice title=line(Line::UpdateTitle, lang) text=title(text, lang) testid="update">
                    <Button label=line(label, lang).to_owned() asleep=job_open on_press=press testid="take-update"/>
                </Notice>
            }
        })
    }
}
