//! First set-up, one thing after the other, each saved as it is finished: kitchen, oneself, a pan, a machine.

use crate::browser::page::to_top;
use crate::domain::setting_up::Subject;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::frame;
use crate::ui::node::{Act, Element, Held, Node, el, follow, live, worked_out};
use crate::ui::office::things;
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::{Form, drafts, new_id};
use crate::words::forms;
use crate::words::screens::{Screen as Words, screen as words};

/// First set-up. Where it stands is read from the log, so it goes on after any reload.
#[must_use]
pub fn set_up(bench: Bench) -> Element {
    let lang = bench.lang;
    let without_machine = Held::new(false);
    let missing = worked_out(move || {
        let missing = bench.read(|kitchen, _| Subject::first_missing(&kitchen.ledger().book));
        missing.filter(|subject| !(*subject == Subject::Machine && without_machine.get()))
    });
    // Each form begins at its top, and so does what comes after the last.
    let mut before = missing.get_untracked();
    follow(move || {
        let at = missing.get();
        if std::mem::replace(&mut before, at) != at {
            to_top();
        }
    });
    let shown = live(move || match missing.get() {
        Some(subject) => asked(subject, bench, without_machine),
        None => nodes![
            el("p").testid("set-up-ready").text(forms::ready(lang)),
            things(bench),
            button(Rank::First, words(Words::Finish, lang), "finish", || {
                screen::go(Screen::Today);
            }),
        ],
    });
    el("div").key("set-up").testid("screen-set-up").child(frame(
        Screen::SetUp,
        words(Words::SetUp, lang),
        Node::Nothing,
        shown,
    ))
}

/// The form of one thing, and the way past a machine that is not there.
fn asked(subject: Subject, bench: Bench, without_machine: Held<bool>) -> Node {
    let page = Held::new(0);
    let skip = live(move || {
        (subject == Subject::Machine && page.get() == 0).then(|| {
            let label = words(Words::NoMachine, bench.lang);
            nodes![
                button(Rank::Plain, label, "no-machine", move || without_machine.set(true)),
                el("p").class("hint").text(forms::no_machine_text(bench.lang)),
            ]
        })
    });
    let form = Form {
        subject,
        id: new_id(),
        draft: drafts::key(bench.world, subject, "new"),
        page: Some(page),
        on_saved: Act::new(|| ()),
    };
    nodes![form.draw(bench), skip]
}
