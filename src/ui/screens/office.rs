//! The owner's page: what is set up, export and import, the state of storage, the app itself.

use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::frame;
use crate::ui::node::{Element, Node, el, live, worked_out};
use crate::ui::office::{
    about_the_app, at_this_phone, closed_days, export_card, import_button, limits, storage_card, things,
};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::words::kept_for::{Line as Kept, line as kept};
use crate::words::log::{Office as Words, office as words};
use crate::words::office::{Line, line};
use crate::words::screens::{Screen as Titles, screen as titles};

/// The owner's page.
#[must_use]
pub fn office(bench: Bench) -> Element {
    let lang = bench.lang;
    let set_up = worked_out(move || bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some()));
    let kitchen = live(move || {
        if set_up.get() {
            return nodes![
                at_this_phone(bench),
                limits(bench),
                button(Rank::Second, kept(Kept::Sheet, lang), "to-allergens", || screen::go(
                    Screen::Allergens
                )),
                closed_days(bench),
                things(bench),
                export_card(bench),
            ];
        }
        let start = button(Rank::First, titles(Titles::StartSetUp, lang), "to-set-up", || {
            screen::go(Screen::SetUp);
        });
        card("not-set-up")
            .child(start)
            .child(el("p").text(words(Words::ImportText, lang)))
            .child(import_button(words(Words::Import, lang)))
            .into()
    });
    let holds = nodes![kitchen, storage_card(bench), about_the_app(bench)];
    let title = line(Line::Title, lang);
    el("div")
        .key("office")
        .testid("screen-office")
        .child(frame(Screen::Office, title, Node::Nothing, holds))
}
