//! What is now and what is next: the next job, each pan with its oil, what nobody answered, how this phone stands.

mod glance;
mod next;
mod not_done;
mod phone;
pub mod row;
mod waste;

pub use glance::at_a_glance;
pub use phone::new_version;
pub use waste::waste;

use crate::kitchen::today::{self, Today as Shown};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Held, Node, el, follow, live, worked_out};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, dates};

/// What is now and what is next.
#[must_use]
pub fn today(bench: Bench) -> Element {
    let lang = bench.lang;
    // The second that ticks on changes the day only at its rollover, and only then, or after an entry, is oil life
    // worked out again.
    let day = worked_out(move || bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let shown = worked_out(move || {
        let day = day.get();
        bench.read(|kitchen, _| today::of_kitchen(kitchen, day))
    });
    let set_up = worked_out(move || bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some()));
    follow(move || shown.with(|shown| glance::keep(bench, shown)));
    let date = eyebrow(move || dates::day(day.get(), lang));
    let holds = live(move || {
        if set_up.get() {
            let asking = Held::new(false);
            let day = the_day(shown, lang, move || asking.set(true));
            return nodes![waste(bench, None), day.child(not_done::not_done(bench, shown, asking))];
        }
        let start = button(Rank::First, title(Title::StartSetUp, lang), "start-set-up", || {
            screen::go(Screen::SetUp);
        });
        card("not-set-up")
            .class("night")
            .child(el("h2").text(line(Line::NotSetUp, lang)))
            .child(el("p").text(line(Line::NotSetUpText, lang)))
            .child(start)
            .into()
    });
    let holds = nodes![holds, phone::this_phone(bench)];
    el("div")
        .testid("screen-today")
        .child(frame(Screen::Today, title(Title::Today, lang), date, holds))
}

/// The day of a kitchen that is set up.
fn the_day(shown: Held<Shown>, lang: Lang, on_not_done: impl Fn() + Copy + Send + Sync + 'static) -> Element {
    let night = live(move || night(shown, lang));
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
        .child(next::next_job(lang, shown, on_not_done));
    el("div").class("today").child(now).child(pans)
}

/// "Last night: which pans?", while a day is unanswered.
fn night(shown: Held<Shown>, lang: Lang) -> Node {
    let (today, unanswered) = shown.with(|shown| (shown.day, shown.unanswered.clone()));
    let Some((day, names)) = unanswered else {
        return Node::Nothing;
    };
    let say = button(Rank::Second, line(Line::SayWhichPans, lang), "last-night", || {
        screen::go(Screen::LastNight);
    });
    card("night-question")
        .child(el("h2").text(words::night_question(day, today, lang)))
        .child(el("p").text(words::night_open(&names, lang)))
        .child(say)
        .into()
}
