//! A quick entry about a pan, in at most four touches and a number.

pub(super) mod desk;
pub(super) mod fields;

use crate::domain::ids::PanId;
use crate::domain::quick::{Kind, Slot};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Node, el, live, worked_out};
use crate::ui::parts::{Rank, Tone, button, notice};
use crate::ui::screen::{self, Screen};
use crate::words::log::{Office, office, quick_caution, quick_name, quick_question};
use crate::words::run;
use crate::words::screens::add::{self, add};
use crate::words::screens::care::{self, CareSay};

use desk::{Asked, Desk, Send};
use fields::{afters, ages, claims, fats, gauges, loads, number_pad, others, pack, reasons, signs, units, when, words};

/// A quick entry about a pan, in at most four touches and a number.
#[must_use]
pub fn add_screen(bench: Bench, pan: PanId) -> Element {
    let lang = bench.lang;
    let desk = Desk::open(bench, pan);
    let name = bench.look(|kitchen, _| kitchen.ledger().book.pan(pan).map(|p| p.name.clone()));
    let known = name.is_some();
    let name = name.unwrap_or_default();
    let eyebrow_name = run::pan_title(&name, lang);
    let kind = worked_out(move || desk.with(|form| form.kind));
    let title = live(move || add::title(kind.get(), &name, lang));
    let eyebrow = eyebrow(move || kind.get().map(|_| eyebrow_name.clone()).unwrap_or_default());
    let holds = live(move || match kind.get() {
        _ if !known => el("p").text(add(add::Add::NoPan, lang)).into(),
        None => kinds(desk),
        Some(kind) => typing(desk, kind).into(),
    });
    el("div")
        .testid("screen-add")
        .child(frame(Screen::Add(pan), title, eyebrow, holds))
}

/// The kinds, as large buttons.
fn kinds(desk: Desk) -> Node {
    let lang = desk.lang();
    let buttons = live(move || {
        let kinds = desk.kinds().into_iter().map(|kind| {
            let testid = format!("add-kind-{}", kind.key());
            button(Rank::Second, quick_name(kind, lang), testid, move || desk.begin(kind))
        });
        el("div").class("kinds").children(kinds)
    });
    nodes![el("p").text(add(add::Add::What, lang)), buttons]
}

/// The form of a kind.
fn typing(desk: Desk, kind: Kind) -> Element {
    let lang = desk.lang();
    let asked: Node = match kind {
        Kind::TopUp | Kind::PartChange => units(desk),
        Kind::Fill => nodes![ages(desk), units(desk)],
        Kind::Service => loads(desk),
        Kind::Reading => gauges(desk),
        Kind::Sign => signs(desk),
        Kind::Move => nodes![others(desk), units(desk)],
        Kind::OilChange => {
            let counted = live(move || desk.asks_number().then(|| units(desk)));
            let pan = desk.pan;
            let guide = button(
                Rank::Second,
                care::say(CareSay::WithGuide, lang),
                "add-with-guide",
                move || {
                    screen::go(Screen::OilChange(pan));
                },
            );
            nodes![guide, reasons(desk, kind), afters(desk), counted]
        }
        Kind::Note => words(desk, add::Add::Note),
        Kind::ClaimLost => nodes![claims(desk), reasons(desk, kind)],
    };
    let more = match kind {
        Kind::TopUp | Kind::Fill | Kind::OilChange => fats(desk),
        Kind::Sign => words(desk, add::Add::OwnWordsOptional),
        Kind::Service | Kind::Reading | Kind::PartChange | Kind::Move | Kind::Note | Kind::ClaimLost => Node::Nothing,
    };
    let more = el("details")
        .class("more")
        .child(el("summary").testid("add-more").text(add(add::Add::More, lang)))
        .child(el("div").class("more-in").child(more).child(when(desk)));
    let other = button(
        Rank::Plain,
        add(add::Add::OtherKind, lang),
        "add-other-kind",
        move || desk.leave(),
    );
    el("div")
        .class("typing")
        .key(kind.key())
        .testid(format!("add-form-{}", kind.key()))
        .child(el("h2").text(quick_question(kind, lang)))
        .child(quick_caution(kind, lang).map(|words| el("p").class("caution").text(words)))
        .child(asked)
        .child(answer(desk, kind))
        .child(more)
        .child(other)
}

/// The number and the saving; in their place a question, when something is unusual.
fn answer(desk: Desk, kind: Kind) -> Node {
    let lang = desk.lang();
    let refused = live(move || {
        let refused = el("p").class("field-error").attr("role", "alert").testid("add-refused");
        desk.refused.get().map(|words| refused.text(words))
    });
    let asks_number = worked_out(move || desk.asks_number());
    let save = live(move || {
        if let Some(asked) = desk.doubt.get() {
            return doubt(desk, asked).into();
        }
        if asks_number.get() {
            return nodes![pack(desk), number_pad(desk)];
        }
        let save = move || desk.send(Send::AsTyped);
        button(Rank::First, office(Office::Save, lang), "add-save", save).into()
    });
    let not_used = (kind == Kind::Service).then(|| {
        let not_used = move || desk.send(Send::NotUsed);
        button(Rank::Second, office(Office::NotUsed, lang), "add-not-used", not_used)
    });
    nodes![refused, save, not_used]
}

fn doubt(desk: Desk, asked: Asked) -> Element {
    let [yes, no] = asked.answers;
    let ranked = |rank_of_yes, rank_of_no| {
        let yes = button(rank_of_yes, yes, "add-doubt-yes", move || desk.stand_by());
        let no = button(rank_of_no, no, "add-doubt-no", move || desk.doubt.set(None));
        (yes, no)
    };
    // What is offered first is what is likelier right.
    let in_order = if asked.likely_wrong {
        let (yes, no) = ranked(Rank::Second, Rank::First);
        [no, yes]
    } else {
        let (yes, no) = ranked(Rank::First, Rank::Second);
        [yes, no]
    };
    notice(Tone::Quiet, asked.words, "", "add-doubt").children(in_order)
}

/// Fields are named by what they set.
fn testid(slot: Slot) -> String {
    format!("add-{}", slot.key().replace('_', "-"))
}
