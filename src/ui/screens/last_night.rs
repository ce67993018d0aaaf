//! "Last night: which pans?" One touch a pan, or one for all of them.

use crate::browser::clock;
use crate::domain::ids::PanId;
use crate::domain::time::Day;
use crate::kitchen::Order;
use crate::kitchen::nights::{self, Told};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Held, Node, Tell, el, live, several, worked_out};
use crate::ui::parts::{Rank, button, card};
use crate::ui::screen::{self, Screen};
use crate::ui::screens::why_not::why_not;
use crate::words::screens::{Screen as Title, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, dates, run};

/// Who is spoken of: one pan, or all that are open.
type About = (String, Vec<PanId>);

/// Writes what was told of some pans on a day.
pub fn tell(bench: Bench, day: Day, pans: &[PanId], told: &Told) {
    let off_min = clock::offset(day.begins(0, 12 * 60));
    let drafts = bench.look(|kitchen, now| {
        let at = nights::moment(kitchen.ledger(), day, off_min, now);
        let who = bench.me();
        let note = |pan: &PanId| nights::note(*pan, told.clone(), who, at);
        pans.iter().map(note).collect::<Vec<_>>()
    });
    bench.send(Order::Write(drafts));
}

/// "Last night: which pans?" The newest day without a word first, until none is left.
#[must_use]
pub fn last_night(bench: Bench) -> Element {
    let lang = bench.lang;
    let today = worked_out(move || bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let open = worked_out(move || {
        let today = today.get();
        bench.read(|kitchen, _| {
            let ledger = kitchen.ledger();
            let day = ledger.unanswered_nights(today).last().copied()?;
            let name = |id| ledger.book.pan(id).map_or_else(String::new, |p| p.name.clone());
            let pans: Vec<(PanId, String)> = ledger
                .unanswered_pans(day)
                .into_iter()
                .map(|id| (id, name(id)))
                .collect();
            Some((day, pans))
        })
    });
    let heading = live(move || match open.get() {
        Some((day, _)) => words::night_question(day, today.get(), lang),
        None => title(Title::LastNight, lang).to_owned(),
    });
    let date = eyebrow(move || open.get().map_or_else(String::new, |(day, _)| dates::day(day, lang)));
    let holds = live(move || match open.get() {
        None => nodes![
            el("p").text(line(Line::NightAnswered, lang)),
            button(Rank::First, line(Line::ToToday, lang), "to-today", || screen::go(
                Screen::Today
            )),
        ],
        Some((day, pans)) => {
            let asked = abouts(&pans, lang)
                .into_iter()
                .map(|(key, about)| asked(bench, day, about, &key));
            nodes![el("p").class("soft").text(line(Line::LateNote, lang)), several(asked)]
        }
    });
    el("div")
        .testid("screen-last-night")
        .child(frame(Screen::LastNight, heading, date, holds))
}

/// All pans together where there are several, then each.
fn abouts(pans: &[(PanId, String)], lang: Lang) -> Vec<(String, About)> {
    let all = (pans.len() > 1).then(|| {
        let ids = pans.iter().map(|(id, _)| *id).collect();
        ("all".to_owned(), (line(Line::AllPans, lang).to_owned(), ids))
    });
    let each = pans
        .iter()
        .map(|(id, name)| (name.clone(), (run::pan_title(name, lang), vec![*id])));
    all.into_iter().chain(each).collect()
}

/// One pan, or all of them, and what can be said. `key` is the stem of its test ids.
fn asked(bench: Bench, day: Day, (name, pans): About, key: &str) -> Element {
    let lang = bench.lang;
    let why = Held::new(false);
    let pans = Held::new(pans);
    let say = move |told: Told| pans.with_untracked(|pans| tell(bench, day, pans, &told));
    let way = |words, what: &str, does: Box<dyn Fn() + Send + Sync>| {
        button(Rank::Second, line(words, lang), format!("night-{key}-{what}"), does)
    };
    let reasons = live(move || -> Node {
        let because = Tell::new(move |reason| say(Told::NotDone(reason)));
        why.get().then(|| why_not(lang, because)).into()
    });
    let ways = el("div")
        .class("choice-row")
        .child(way(Line::Unguided, "unguided", Box::new(move || say(Told::Unguided))))
        .child(way(Line::NotUsed, "not-used", Box::new(move || say(Told::NotUsed))))
        .child(way(
            Line::NotDoneBecause,
            "not-done",
            Box::new(move || why.update(|open| *open = !*open)),
        ));
    card(format!("night-{key}"))
        .key(format!("{day:?} {key}"))
        .child(el("h2").text(name))
        .child(ways)
        .child(reasons)
}
