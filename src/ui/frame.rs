//! The frame of every screen that is not a job's: title, Fire and Burn, standing warnings, tabs.

use super::bench::{Bench, use_bench};
use super::cards::use_cards;
use super::just_logged::just_logged;
use super::node::{Element, Node, Tell, live, worked_out};
use super::parts::{Shell, Tab, empty_banners, wrong_banners};
use super::screen::{self, Screen};
use super::screens::first::demo_band;
use crate::domain::facts::run::Contents;
use crate::kitchen::{care, wrong};
use crate::nodes;
use crate::store::World;
use crate::words::screens::care::look_at_boil;
use crate::words::{Lang, run, wrong_days};

/// The standing "PAN n EMPTY" lines and what is wrong, brought up to date with every entry.
#[must_use]
pub fn empties(bench: Bench) -> Node {
    let boils = worked_out(move || bench.read_each_second(|kitchen, now| care::looks_due(kitchen.pan_jobs(), now)));
    live(move || {
        let due = boils.get();
        let (empty, wrong) = bench.read(|kitchen, _| {
            let ledger = kitchen.ledger();
            let name = |id| ledger.book.pan(id).map_or("?", |pan| pan.name.as_str());
            let line = |id| match ledger.contents(id) {
                Contents::CleaningWater if due.contains(&id) => look_at_boil(name(id), bench.lang),
                Contents::CleaningWater => run::pan_water(name(id), bench.lang),
                Contents::Oil | Contents::SetFat | Contents::EmptyWet | Contents::EmptyDry => {
                    run::pan_empty(name(id), bench.lang)
                }
            };
            let empty = ledger.empties().into_iter().map(line).collect();
            (empty, wrong::standing(ledger))
        });
        // One line, whatever stands: on the smallest phone each takes the room of an answer.
        let more = wrong.len().saturating_sub(1);
        let first = wrong.first();
        let wrong = first.map(|(what, about)| wrong_days::banner(*what, about, more, bench.lang));
        nodes![empty_banners(empty), wrong_banners(wrong.into_iter().collect())]
    })
}

/// The frame of `screen`, with its title, a small line above it where there is one, and what it holds.
#[must_use]
pub fn frame(screen: Screen, title: impl Into<Node>, eyebrow: impl Into<Node>, holds: impl Into<Node>) -> Node {
    framed(screen, title.into(), eyebrow.into(), holds.into())
}

fn framed(screen: Screen, title: Node, eyebrow: Node, holds: Node) -> Node {
    let bench = use_bench();
    let demo = (bench.world == World::Demo).then(|| demo_band(bench));
    let around = Around {
        emergency: use_cards().three_buttons(bench.lang),
        empty: empties(bench),
        on_tab: Tell::new(|key| screen::go(Screen::at(key))),
    };
    let shell = around.draw(screen, title, eyebrow, nodes![demo, holds], bench.lang);
    nodes![shell, just_logged(bench)]
}

/// What stands around every screen that is not a job's.
pub struct Around {
    /// Fire and Burn.
    pub emergency: Element,
    /// The standing "PAN n EMPTY" lines.
    pub empty: Node,
    /// Called with the key of a tab that is pressed.
    pub on_tab: Tell<&'static str>,
}

impl Around {
    /// Draws it around `holds`.
    #[must_use]
    pub fn draw(self, screen: Screen, title: Node, eyebrow: Node, holds: Node, lang: Lang) -> Element {
        let [today, log, office] = run::tabs(lang);
        let tab = |key, words| Tab { key, words };
        let current = match screen {
            Screen::Log(_) | Screen::Add(_) => "log",
            Screen::Allergens | Screen::Office | Screen::SetUp | Screen::Edit(..) => "office",
            _ => "today",
        };
        let shell = Shell {
            title,
            eyebrow,
            emergency: self.emergency,
            empty: self.empty,
            tabs: vec![tab("today", today), tab("log", log), tab("office", office)],
            tabs_label: run::tabs_label(lang),
            current,
            on_tab: self.on_tab,
            holds,
        };
        shell.draw()
    }
}

/// A small line above a title, where `words` has any.
#[must_use]
pub fn eyebrow(words: impl Fn() -> String + 'static) -> Node {
    live(move || {
        let words = Some(words()).filter(|words| !words.is_empty());
        words.map(|words| super::node::el("p").class("eyebrow").text(words))
    })
}
