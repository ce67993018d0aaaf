//! The app itself: its version and updates, cautions, how the numbers come about.

use crate::browser::update;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Node, el, live};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screens::today::new_version;
use crate::words::office::{self, Line, line};
use crate::words::screens::{Screen as Words, cautions, screen as words};

/// Version, cautions, and how the numbers come about.
#[must_use]
pub fn about_the_app(bench: Bench) -> Node {
    let lang = bench.lang;
    let look = live(move || {
        let label = line(Line::LookForUpdate, lang);
        let none = bench.update.with(Option::is_none);
        none.then(|| button(Rank::Second, label, "look-for-update", update::look))
    });
    let version = el("p")
        .testid("version")
        .text(words(Words::AppName, lang))
        .text(" ")
        .text(env!("CARGO_PKG_VERSION"));
    let version = card("version-card")
        .child(el("h2").text(line(Line::Version, lang)))
        .child(version)
        .child(new_version(bench))
        .child(look);
    let mind = cautions(lang).iter().map(|text| el("li").text(*text));
    let mind = card("cautions")
        .child(el("h2").text(words(Words::Cautions, lang)))
        .child(el("ul").class("lines").children(mind));
    let numbers = card("numbers")
        .child(el("h2").text(line(Line::Numbers, lang)))
        .children(office::numbers(lang).iter().map(|text| el("p").text(*text)));
    nodes![version, mind, numbers]
}
