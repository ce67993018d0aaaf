//! Why something was not done: a reason in one touch, or in one's own words.

use crate::nodes;
use crate::ui::node::{Element, Held, Tell, el, live};
use crate::ui::parts::{Field, Rank, button};
use crate::words::Lang;
use crate::words::run::{self, Say, say};
use crate::words::today::{Line, line};

/// The reasons, each a button, and a line for any other. `on_reason` is called with the reason.
#[must_use]
pub fn why_not(lang: Lang, on_reason: Tell<String>) -> Element {
    let own = Held::new(String::new());
    let because = on_reason.clone();
    let given = (1..).zip(run::not_done_reasons(lang)).map(|(n, reason)| {
        let because = because.clone();
        button(Rank::Second, *reason, format!("reason-{n}"), move || {
            because.run((*reason).to_owned())
        })
    });
    let other = live(move || {
        let field = Field::of(line(Line::OwnReason, lang), own, "reason-own");
        let on_reason = on_reason.clone();
        let accept = button(Rank::Second, say(Say::Accept, lang), "reason-accept", move || {
            on_reason.run(own.get_untracked().trim().to_owned());
        });
        let empty = own.with(|text| text.trim().is_empty());
        nodes![field.draw(), accept.flag("disabled", empty)]
    });
    el("div")
        .class("reasons")
        .testid("reasons")
        .children(given)
        .child(other)
}
