//! A page of a job that is a list, not a step: pans to choose, make-safe lines, faults, a hold that says no.

use super::notes::notes;
use crate::ui::bench::Bench;
use crate::ui::cards::use_cards;
use crate::ui::frame::empties;
use crate::ui::node::{Act, Element, Node, Text, Words, el};
use crate::ui::parts::{Rank, button, stop_bar};
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::run::{Say, say};
use crate::words::screens::job::{self, JobSay};

/// A page on the night ground: Fire and Burn at the top, what it holds, its ways on at the bottom, STOP while a pan
/// is in hand.
pub struct JobPage {
    /// The pan's number, where one pan is meant.
    pub pan: Option<String>,
    /// A small line at the top.
    pub name: Text,
    /// What the page says first.
    pub title: Text,
    /// Stops the run; without one no STOP is shown.
    pub on_stop: Option<Act>,
    /// The page's test id.
    pub testid: &'static str,
    /// The buttons at the bottom.
    pub ways: Node,
    /// What it holds.
    pub holds: Node,
}

impl JobPage {
    /// A page that means no one pan and has nothing to stop.
    #[must_use]
    pub fn new(testid: &'static str, title: impl Words, ways: impl Into<Node>, holds: impl Into<Node>) -> Self {
        Self {
            pan: None,
            name: "".into(),
            title: title.text(),
            on_stop: None,
            testid,
            ways: ways.into(),
            holds: holds.into(),
        }
    }

    /// Draws it.
    #[must_use]
    pub fn draw(self, bench: Bench) -> Element {
        let lang = bench.lang;
        let row = el("div")
            .class("run-top-row")
            .child(el("p").class("run-name run-where").text(self.name))
            .child(use_cards().three_buttons(lang));
        let number = self
            .pan
            .map(|pan| el("p").class("pan-number").testid("pan-number").text(pan));
        let top = el("header")
            .class("run-top")
            .child(number)
            .child(el("div").class("run-top-side").child(row));
        let main = el("main")
            .class("run-main")
            .child(el("h1").class("job-title").testid("say").text(self.title))
            .child(notes(bench))
            .child(self.holds)
            .child(el("div").class("job-ways run-push").child(self.ways));
        let stop = self
            .on_stop
            .map(|on_stop| stop_bar(say(Say::Stop, lang), say(Say::StopMakeSafe, lang), on_stop));
        let page = el("div")
            .class("run job-page")
            .testid(self.testid)
            .child(empties(bench))
            .child(top)
            .child(main)
            .child(stop);
        // Another page is new all through: no press begun on the one before lands on it.
        el("div").class("night run-ground").key(self.testid).child(page)
    }
}

/// The quiet way back to Today.
pub fn to_today(lang: Lang) -> Element {
    button(Rank::Plain, job::say(JobSay::ToToday, lang), "to-today", || {
        screen::go(Screen::Today)
    })
}
