//! Clocks: the big one of a run, read across the kitchen, and a small countdown. They paint the seconds they are given;
//! nobody counts here.

use crate::ui::node::{Element, Text, Words, el, svg};

/// Seconds as `m:ss`. The sign is dropped: a clock past its end says so by its look and its words.
#[must_use]
pub fn minutes_seconds(seconds: i64) -> String {
    let whole = seconds.unsigned_abs();
    let (minutes, rest) = (whole / 60, whole % 60);
    let pad = if rest < 10 { "0" } else { "" };
    format!("{minutes}:{pad}{rest}")
}

/// The bar under a clock, in seconds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bar {
    /// Where the bar ends. At least 1 is taken.
    pub full: u32,
    /// What is usual, from and to: drawn on the rail.
    pub usual: Option<(u32, u32)>,
}

/// How far along a bar of `full` seconds, in thousandths, 0 to 1000.
fn along(seconds: i64, full: u32) -> i64 {
    (seconds.saturating_mul(1000) / i64::from(full.max(1))).clamp(0, 1000)
}

/// The running clock: at least 150 px for minutes of one figure, 114 px for two.
pub struct BigClock {
    /// What is shown: seconds gone when it counts up, seconds left when it counts down.
    pub seconds: i64,
    /// Seconds gone, for the bar.
    pub gone: i64,
    /// Whether the end has passed: the figures then carry a plus.
    pub over: bool,
    /// The bar beneath.
    pub bar: Option<Bar>,
    /// Words at the left beneath, such as "usual 1:00 to 1:30".
    pub usual: Text,
    /// Words at the right beneath, such as "until 21:47".
    pub until: Text,
    /// What the clock is, for who cannot see it.
    pub label: Text,
    /// Its test id.
    pub testid: &'static str,
}

impl BigClock {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let figures = minutes_seconds(self.seconds);
        let length = figures.len() + usize::from(self.over);
        let face = el("div")
            .class("clock-figures")
            .class_if("long", length == 5)
            .class_if("very-long", length > 5)
            .attr("role", "timer")
            .attr("aria-label", self.label)
            .attr("aria-describedby", format!("{}-words", self.testid))
            .text(figures);
        let words = el("p")
            .class("clock-words")
            .attr("id", format!("{}-words", self.testid))
            .child(el("span").text(self.usual))
            .child(el("span").text(self.until));
        el("div")
            .class("clock")
            .class_if("over", self.over)
            .testid(self.testid)
            .child(face)
            .child(self.bar.map(|bar| bar.draw(self.gone)))
            .child(words)
    }
}

impl Bar {
    fn draw(self, gone: i64) -> Element {
        let stretch = |class: &'static str, from: i64, to: i64| {
            let at = svg("rect").class(class).attr("height", "16");
            at.attr("x", from.to_string()).attr("width", (to - from).to_string())
        };
        let usual = self
            .usual
            .map(|(from, to)| stretch("usual", along(from.into(), self.full), along(to.into(), self.full)));
        svg("svg")
            .class("clock-bar")
            .attr("viewBox", "0 0 1000 16")
            .attr("preserveAspectRatio", "none")
            .attr("aria-hidden", "true")
            .child(stretch("rail", 0, 1000))
            .child(usual)
            .child(stretch("gone", 0, along(gone, self.full)))
    }
}

/// A small countdown with its words, for a wait that runs beside other work.
pub fn countdown(seconds: i64, words: impl Words, testid: impl Words) -> Element {
    el("p")
        .class("countdown")
        .testid(testid)
        .child(el("b").text(minutes_seconds(seconds)))
        .child(el("span").text(words))
}
