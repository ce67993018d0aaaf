//! Today as it was shown last, while the log is read: it looks like Today, Fire and Burn work, and whatever else is
//! pressed waits until the log is there, and is pressed then.

use web_sys::wasm_bindgen::JsCast;
use web_sys::{Element as Found, Event};

use super::the_day;
use crate::browser::page;
use crate::kitchen::glance::{self, Glance, Taken};
use crate::kitchen::today::Today as Shown;
use crate::nodes;
use crate::store::{Journal, World};
use crate::ui::bench::Bench;
use crate::ui::cards::CardDesk;
use crate::ui::frame::{Around, eyebrow};
use crate::ui::node::{Act, Element, Held, Node, Tell, el};
use crate::ui::prefs;
use crate::ui::screen::Screen;
use crate::ui::screens::first::band;
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::{Lang, dates};

/// Today at a glance. What is pressed, by its test id, is put in `pressed`.
#[must_use]
pub fn at_a_glance(glance: Glance, world: World, desk: CardDesk, pressed: Held<Option<String>>) -> Element {
    let lang = Lang::En;
    let day = glance.today.day;
    let press = move |id: &str| pressed.set(Some(id.to_owned()));
    let wait = move |event: &Event| {
        event.prevent_default();
        let target = event.target().and_then(|target| target.dyn_into::<Found>().ok());
        let named = target.and_then(|target| target.closest("[data-testid]").ok().flatten());
        if let Some(id) = named.and_then(|named| named.get_attribute("data-testid")) {
            press(&id);
        }
    };
    let demo = (world == World::Demo).then(|| band(lang, Act::new(move || press("leave-demo"))));
    let today = the_day(Held::new(glance.today), lang, || (), |_, _| ()).on("click", wait);
    let around = Around {
        emergency: desk.three_buttons(lang),
        // None is kept while a pan stands empty.
        empty: Node::Nothing,
        on_tab: Tell::new(move |key| press(&format!("tab-{key}"))),
    };
    let date = eyebrow(move || dates::day(day, lang));
    let heading = title(Title::Today, lang).into();
    el("div")
        .testid("screen-today")
        .child(around.draw(Screen::Today, heading, date, nodes![demo, today], lang))
}

/// Keeps what Today shows now for the next start, or that nothing of it may be kept.
pub fn keep(bench: Bench, shown: &Shown) {
    prefs::set_glance(bench.look(|kitchen, now| {
        let taken = Taken {
            build: page::build(),
            dev: kitchen.journal_handle().dev(),
            entries: kitchen.entries_held(),
        };
        glance::taken(kitchen, shown, &taken, now)
    }));
}
