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

use crate::domain::claim::ClaimKind;
use crate::domain::ids::PanId;
use crate::domain::ledger::Ledger;
use crate::domain::time::Millis;
use crate::kitchen::today::{self, Today as Shown};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Held, Node, el, follow, live, several, worked_out};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::ui::screens::kept_for;
use crate::words::kept_for as kept;
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
    let over = worked_out(move || bench.read_each_second(|kitchen, now| evenings_over(kitchen.ledger(), now.wall)));
    let shown = worked_out(move || {
        let day = day.get();
        over.track();
        bench.read(|kitchen, now| today::of_kitchen(kitchen, day, now.wall))
    });
    let set_up = worked_out(move || bench.read(|kitchen, _| kitchen.ledger().book.kitchen.is_some()));
    follow(move || shown.with(|shown| glance::keep(bench, shown)));
    let date = eyebrow(move || dates::day(day.get(), lang));
    let holds = live(move || {
        if set_up.get() {
            let asking = Held::new(false);
            let lose = move |pan, what| kept_for::lose(bench, pan, what);
            let day = the_day(shown, lang, move || asking.set(true), lose);
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

/// How many claims begun for an evening have ended by now: Today is drawn again when one has.
fn evenings_over(ledger: &Ledger, now: Millis) -> usize {
    ledger.evening_ends().into_iter().filter(|end| *end < now).count()
}

/// The day of a kitchen that is set up. `on_lost` is called with a pan and the claim it has lost.
fn the_day(
    shown: Held<Shown>,
    lang: Lang,
    on_not_done: impl Fn() + Copy + Send + Sync + 'static,
    on_lost: impl Fn(PanId, ClaimKind) + Copy + Send + Sync + 'static,
) -> Element {
    let night = live(move || night(shown, lang));
    let pans = live(move || {
        shown.with(|shown| {
            let none = shown.pans.is_empty().then(|| el("p").text(line(Line::NoPans, lang)));
            let rows = shown.pans.iter().map(|pan| row::pan_row(pan, shown.day, lang, on_lost));
            el("div").class("pans").testid("pans").child(none).children(rows)
        })
    });
    let now = el("div")
        .class("today-now")
        .child(live(move || lost(shown, lang)))
        .child(night)
        .child(next::next_job(lang, shown, on_not_done))
        .child(live(move || sheet(shown, lang)));
    el("div").class("today").child(now).child(pans)
}

/// Every promise that is lost, until it is restored: nobody serves under it for not having looked at a row.
fn lost(shown: Held<Shown>, lang: Lang) -> Node {
    shown.with(|shown| {
        let all = shown
            .pans
            .iter()
            .flat_map(|pan| pan.lost.iter().map(move |lost| (pan, lost)));
        several(all.map(|(pan, lost)| {
            let (id, testid) = (pan.pan, format!("is-lost-{}-{}", pan.name, lost.what.key()));
            let told = button(Rank::Second, kept::pan_lost(&pan.name, lost, lang), testid, move || {
                screen::go(Screen::KeptFor(id));
            });
            told.class("is-lost")
        }))
    })
}

/// The allergen sheet, while it is to be gone through.
fn sheet(shown: Held<Shown>, lang: Lang) -> Option<Element> {
    let go = button(
        Rank::Second,
        kept::line(kept::Line::SheetGo, lang),
        "go-to-sheet",
        || {
            screen::go(Screen::Allergens);
        },
    );
    let open = shown.with(|shown| shown.sheet_open);
    open.then(|| {
        card("sheet-open")
            .child(el("h2").text(kept::line(kept::Line::SheetOpen, lang)))
            .child(go)
    })
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
