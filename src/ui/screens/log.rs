//! The log: everything that happened, newest first by trading day; nothing in it is ever changed, only put right.

mod detail;
mod right;
mod rows;

use crate::domain::ids::{EntryId, PanId};
use crate::kitchen::log::place;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::frame;
use crate::ui::node::{Element, Held, Node, Reach, Tell, el, follow, live, several, worked_out};
use crate::ui::parts::{Choice, Rank, Tone, button, notice};
use crate::ui::screen::Screen;
use crate::words::log::{Office, office};
use crate::words::run;
use crate::words::screens::log::{self, log};

use detail::detail;
use rows::{DayRows, Row};

/// How many lines are shown at first, and with each "more".
const PAGE: usize = 60;
const ALL: &str = "all";

/// The line whose entry the address names: where to find it once it is in the page.
#[derive(Clone, Copy)]
struct Named {
    key: EntryId,
    line: Reach,
}

/// The log: everything that happened, newest first; with an entry, open at its line.
#[must_use]
pub fn log_screen(bench: Bench, entry: Option<EntryId>) -> Element {
    let lang = bench.lang;
    let pan = Held::new(None::<PanId>);
    let place = entry.and_then(|entry| bench.look(|kitchen, _| place(kitchen.ledger(), entry)));
    let most = Held::new(place.map_or(PAGE, |(before, _)| (before / PAGE + 1) * PAGE));
    let open = Held::new(place.map(|(_, key)| key));
    let named = place.map(|(_, key)| Named {
        key,
        line: Reach::new(),
    });
    let list = worked_out(move || bench.read(|kitchen, now| rows::of(kitchen, now, pan.get(), most.get(), lang)));
    let days = live(move || {
        list.with(|(days, more)| {
            let more = more.then(|| {
                button(Rank::Second, log(log::Log::More, lang), "log-more", move || {
                    most.update(|n| *n += PAGE);
                })
            });
            let empty = days.is_empty().then(|| {
                let words = match pan.get() {
                    None => office(Office::LogEmpty, lang),
                    Some(_) => log(log::Log::NothingHere, lang),
                };
                el("p").testid("log-empty").text(words)
            });
            let days = several(days.iter().map(|day| day_list(bench, day, open, named)));
            nodes![empty, days, more]
        })
    });
    // Once, when the screen is there: the reader and the keyboard begin at the line, not at the top of the log.
    follow(move || {
        if let Some(line) = named.and_then(|named| named.line.get()) {
            let _ = line.focus();
            line.scroll_into_view();
        }
    });
    let holds = nodes![filter(bench, pan), unreadable(bench), days];
    el("div").testid("screen-log").child(frame(
        Screen::Log(entry),
        office(Office::Log, lang),
        Node::Nothing,
        holds,
    ))
}

/// All pans, or one.
fn filter(bench: Bench, pan: Held<Option<PanId>>) -> Node {
    let lang = bench.lang;
    let key = |pan: PanId| format!("{:032x}", pan.0);
    let mut options = vec![(ALL.to_owned(), log(log::Log::AllPans, lang).to_owned())];
    bench.look(|kitchen, _| {
        let pans = kitchen.ledger().book.pans_in_use().into_iter();
        options.extend(pans.map(|p| (key(p.pan), run::pan_title(&p.name, lang))));
    });
    live(move || {
        let choice = Choice {
            legend: log(log::Log::Filter, lang).into(),
            options: options.clone(),
            chosen: Some(pan.get().map_or_else(|| ALL.to_owned(), key)),
            on_choose: Tell::new(move |key: String| pan.set(u128::from_str_radix(&key, 16).ok().map(PanId))),
            error: None,
            testid: "log-filter".into(),
        };
        choice.draw()
    })
}

/// Lines nobody can read: counted and shown, never dropped.
fn unreadable(bench: Bench) -> Option<Element> {
    let lang = bench.lang;
    let lines: Vec<String> = bench.look(|kitchen, _| {
        let lines = kitchen.unreadable().iter();
        lines
            .map(|line| log::unreadable(line.seq, &line.why.to_string(), lang))
            .collect()
    });
    (!lines.is_empty()).then(|| {
        let (title, text) = (log(log::Log::Unreadable, lang), log(log::Log::UnreadableText, lang));
        let lines = lines.into_iter().map(|line| el("li").text(line));
        notice(Tone::Wrong, title, text, "log-unreadable").child(el("ul").children(lines))
    })
}

/// A trading day.
fn day_list(bench: Bench, day: &DayRows, open: Held<Option<EntryId>>, named: Option<Named>) -> Element {
    let items = day.rows.iter().map(|row| item(bench, row.clone(), open, named));
    el("section")
        .class("log-day")
        .testid("log-day")
        .child(el("h2").text(day.title.clone()))
        .child(el("ul").children(items))
}

/// A line; touched, it unfolds.
fn item(bench: Bench, row: Row, open: Held<Option<EntryId>>, named: Option<Named>) -> Element {
    let key = row.key;
    let named = named.filter(|named| named.key == key);
    let is_open = worked_out(move || open.get() == Some(key));
    let line = live(move || {
        let is_open = is_open.get();
        let marks = (!row.marks.is_empty()).then(|| el("span").class("marks").text(row.marks.join(" · ")));
        let what = el("span")
            .child(el("b").text(row.about.clone()))
            .text(row.detail.clone());
        let line = el("button")
            .attr("type", "button")
            .class("log-line")
            .class_if("void", row.void)
            .attr("aria-expanded", if is_open { "true" } else { "false" })
            .testid("log-item")
            .on_press(move || open.set((!is_open).then_some(key)))
            .child(el("time").text(row.time.clone()))
            .child(what)
            .child(el("span").class("by").text(row.who.clone()))
            .child(marks);
        let line = match named {
            Some(named) => line.reach(named.line),
            None => line,
        };
        nodes![line, is_open.then(|| detail(bench, &row.unfolds, open))]
    });
    el("li").key(format!("{:032x}", key.0)).child(line)
}
