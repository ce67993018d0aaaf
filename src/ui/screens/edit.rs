//! One thing of the set-up: the kitchen, a person, a pan, a machine or an instrument, new or to be changed.

use crate::domain::setting_up::{Around, Subject};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::frame;
use crate::ui::node::{Act, Element, Held, Node, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::{Form, drafts};
use crate::words::forms;
use crate::words::log::{Office, office};

/// One thing of the set-up: what it is, and its id.
#[must_use]
pub fn edit(bench: Bench, subject: Subject, id: u128) -> Element {
    let lang = bench.lang;
    let draft = drafts::key(bench.world, subject, &format!("{id:032x}"));
    let given_up = draft.clone();
    let leave = move || {
        drafts::forget(&given_up);
        screen::go(Screen::Office);
    };
    // What is new is asked a page at a time, as at first; what is there stands in one, to be found and changed.
    let is_new = bench.look(|kitchen, now| {
        let around = Around {
            book: &kitchen.ledger().book,
            today: kitchen.today(now),
        };
        subject.filled(id, around).is_none()
    });
    let form = Form {
        subject,
        id,
        draft,
        page: is_new.then(|| Held::new(0)),
        on_saved: Act::new(|| screen::go(Screen::Office)),
    };
    let holds = nodes![
        form.draw(bench),
        button(Rank::Plain, office(Office::Cancel, lang), "form-leave", leave),
    ];
    el("div").key("edit").testid("screen-edit").child(frame(
        Screen::Edit(subject, id),
        forms::subject(subject, lang),
        Node::Nothing,
        holds,
    ))
}
