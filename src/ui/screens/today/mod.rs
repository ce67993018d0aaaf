//! What is now and what is next: the next job, each pan with its oil, what nobody answered, how this phone stands.

mod next;
mod not_done;
mod phone;
pub mod row;

pub use phone::new_version;

use crate::kitchen::today::{self, Today as Shown};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Held, Node, el, live, worked_out};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::words::dates;
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};

/// What is now and what is next.
#[must_use]
pub fn today(bench: Bench) -> Element {
    let lang = bench.lang;
    // The second that ticks on changes the day only at its rollover, and only then, or after an entry, is oil life
    // worked out again.
    let day = worked_out(move || bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let shown = worked_out(move || {
        let day = day.get();
        bench.read(|kitchen, _| today::of(kitchen.ledger(), day))
    });
    let set_up = worked_out(move || bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some()));
    let date = eyebrow(move || dates::day(day.get(), lang));
    let holds = live(move || {
        if set_up.get() {
            return the_day(bench, shown);
        }
        let start = button(Rank::First, title(Title::StartSetUp, lang), "start-set-up", || {
            screen::go(Screen::SetUp);
        });
        card("not-set-up")
            .class("night")
            .child(el("h2").text(line(Line::NotSetUp, lang)))
            .child(el("p").text(line(Line::NotSetUpText, lang)))
            .child(start)
    });
    let holds = nodes![holds, phone::this_phone(bench)];
    el("div")
        .testid("screen-today")
        .child(frame(Screen::Today, title(Title::Today, lang), date, holds))
}

/// The day of a kitchen that is set up.
fn the_day(bench: Bench, shown: Held<Shown>) -> Element {
    let lang = bench.lang;
    let asking = Held::new(false);
    let night = live(move || night(bench, shown));
    let pans = live(move || {
        shown.with(|shown| {
            let none = shown.pans.is_empty().then(|| el("p").text(line(Line::NoPans, lang)));
            let rows = shown.pans.iter().map(|pan| row::pan_row(pan, shown.day, lang));
            el("div").class("pans").testid("pans").child(none).children(rows)
        })
    });
    let now = el("div")
        .class("today-now")
        .child(night)
        .child(next::next_job(lang, shown, move || asking.set(true)));
    el("div")
        .class("today")
        .child(now)
        .child(pans)
        .child(not_done::not_done(bench, shown, asking))
}

/// "Last night: which pans?", while a day is unanswered.
fn night(bench: Bench, shown: Held<Shown>) -> Node {
    let lang = bench.lang;
    let (today, unanswered) = shown.with(|shown| (shown.day, shown.unanswered.first().copied()));
    let Some(day) = unanswered else {
        return Node::Nothing;
    };
    let names: Vec<String> = bench.read(|kitchen, _| {
        let ledger = kitchen.ledger();
        let name = |id| ledger.book.pan(id).map(|p| p.name.clone());
        ledger.unanswered_pans(day).into_iter().filter_map(name).collect()
    });
    let say = button(Rank::Second, line(Line::SayWhichPans, lang), "last-night", || {
        screen::go(Screen::LastNight);
    });
    card("night-question")
        .child(el("h2").text(words::night_question(day, today, lang)))
        .child(el("p").text(words::night_open(&names, lang)))
        .child(say)
        .into()
}
