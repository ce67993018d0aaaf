//! How this phone stands, small at the bottom: sound, the lit screen, the log's safety, the last export, a new version.

use leptos::task::spawn_local;

use crate::browser::page;
use crate::browser::sound::SoundState;
use crate::browser::update::{self, Update};
use crate::browser::wake::WakeState;
use crate::domain::time::{Day, Millis};
use crate::nodes;
use crate::store::World;
use crate::ui::bench::Bench;
use crate::ui::node::{Held, Node, el, follow, live, worked_out};
use crate::ui::parts::{Rank, Tone, button, notice};
use crate::ui::prefs;
use crate::words::run::{Say, say};
use crate::words::screens::{self, Screen as Title, screen as title};
use crate::words::today::{Line, line};

/// The lines, and the notice of a new version.
pub fn this_phone(bench: Bench) -> Node {
    let lang = bench.lang;
    let today = worked_out(move || bench.read_each_second(|kitchen, now| (kitchen.today(now), now.off_min)));
    let lines = live(move || {
        let sound = match bench.sound_state.get() {
            SoundState::On => line(Line::SoundOn, lang),
            SoundState::OffUntilTouch => say(Say::SoundOff, lang),
            SoundState::Unsupported => line(Line::NoSound, lang),
        };
        let wake = match bench.wake_state.get() {
            WakeState::Off | WakeState::Held => line(Line::WakeReady, lang),
            WakeState::Refused | WakeState::Unsupported => say(Say::ScreenMaySleep, lang),
        };
        let list = el("ul")
            .child(el("li").testid("sound-line").text(sound))
            .child(el("li").testid("wake-line").text(wake));
        if bench.world != World::Real {
            return list;
        }
        let kept = match bench.kept.get() {
            None => title(Title::KeptUnknown, lang),
            Some(true) => title(Title::Kept, lang),
            Some(false) => title(Title::MayBeCleared, lang),
        };
        let (today, off_min) = today.get();
        let ago = |at: Millis| u32::try_from(today.since(Day::of(at, off_min, 0)).max(0)).unwrap_or(0);
        let exported = screens::last_export(prefs::exported().map(ago), lang);
        list.child(el("li").testid("kept-line").text(kept))
            .child(el("li").testid("export-line").text(exported))
    });
    let phone = el("section")
        .class("phone")
        .testid("this-phone")
        .child(el("h2").text(line(Line::ThisPhone, lang)))
        .child(lines);
    nodes![new_version(bench), phone]
}

/// A new version waits until no job is open, and is taken only on a touch.
pub fn new_version(bench: Bench) -> Node {
    let lang = bench.lang;
    let touched = Held::new(false);
    // Taken here, on this touch: go over to it at once. Taken in another window: this one waits for its own touch.
    follow(move || {
        if bench.update.get() == Some(Update::Taken) && touched.get_untracked() {
            page::reload();
        }
    });
    let take = move || {
        touched.set(true);
        spawn_local(async move {
            if !update::take().await {
                page::reload();
            }
        });
    };
    live(move || {
        let state = bench.update.get()?;
        let job_open = bench.read(|kitchen, _| kitchen.job_open());
        let text = if job_open {
            Title::UpdateWaiting
        } else {
            Title::UpdateReady
        };
        let press = match state {
            Update::Waiting => button(Rank::Second, line(Line::TakeUpdate, lang), "take-update", take),
            Update::Taken => button(Rank::Second, line(Line::StartUpdate, lang), "take-update", page::reload),
        };
        let notice = notice(Tone::Quiet, line(Line::UpdateTitle, lang), title(text, lang), "update");
        Some(notice.child(press.flag("disabled", job_open)))
    })
}
