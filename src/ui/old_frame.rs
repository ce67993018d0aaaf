//! The frame of every screen that is not a job's: title, Fire and Burn, standing warnings, tabs.

use leptos::prelude::*;

use super::bench::{Bench, use_bench};
use super::cards::use_cards;
use super::old_parts::{Shell, Tab};
use super::screen::{self, Screen};
use crate::words::{cards, run};

/// The standing "PAN n EMPTY" lines.
pub fn empties(bench: Bench) -> Signal<Vec<String>> {
    Signal::derive(move || {
        bench.read(|kitchen, _| {
            let ledger = kitchen.ledger();
            let name = |id| ledger.book.pan(id).map_or("?", |pan| pan.name.as_str());
            ledger
                .empties()
                .into_iter()
                .map(|id| run::pan_empty(name(id), bench.lang))
                .collect()
        })
    })
}

/// The frame.
#[component]
pub fn Frame(
    /// The screen's title.
    #[prop(into)]
    title: Signal<String>,
    /// A small line above it.
    #[prop(optional, into)]
    eyebrow: Signal<String>,
    /// The screen, for the tabs.
    screen: Screen,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    let bench = use_bench();
    let desk = use_cards();
    let lang = bench.lang;
    let [today, log, office] = run::tabs(lang);
    let tab = move |key, label: &str| Tab {
        key,
        words: label.to_owned(),
    };
    let current = match screen {
        Screen::Log | Screen::Add(_) => "log",
        Screen::Office | Screen::SetUp | Screen::Edit(..) => "office",
        _ => "today",
    };
    view! {
        <Shell
            title
            eyebrow
            emergency=(cards::fire_button(lang).to_owned(), cards::burn_button(lang).to_owned())
            on_fire=Callback::new(move |()| desk.fire().run())
            on_burn=Callback::new(move |()| desk.burn().run())
            empty=empties(bench)
            tabs=vec![tab("today", today), tab("log", log), tab("office", office)]
            tabs_label=run::tabs_label(lang)
            current=Signal::stored(current)
            on_tab=Callback::new(|key: &'static str| screen::go(Screen::at(key)))
        >
            {children()}
        </Shell>
    }
}
