//! One fill's oil life: readings so far, the line through them, the band it may take, the limit, the day to change.

use super::pan_drawing::Shade;
use crate::ui::node::{Element, Node, Words, several, svg};

/// A reading: `day` since the fill began, percent of polar compounds, and the range its instrument leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Days since the fill began.
    pub day: f64,
    /// Percent by mass.
    pub percent: f64,
    /// Lowest and highest percent it may stand for.
    pub range: (f64, f64),
}

/// Where the line goes on one day, and how far it may stray.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Days since the fill began.
    pub day: f64,
    /// The middle, in percent.
    pub middle: f64,
    /// The lower edge, in percent.
    pub low: f64,
    /// The upper edge, in percent.
    pub high: f64,
}

/// The words of the drawing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ForecastWords {
    /// What it shows, in a few words.
    pub title: String,
    /// What it shows, in full: everything the drawing says.
    pub desc: String,
    /// On the limit: "limit 25 %".
    pub limit: String,
    /// Under the first day.
    pub start: String,
    /// Under today.
    pub today: String,
    /// Under the day the oil is expected to need changing.
    pub change: String,
    /// The same where that day lies past the last one drawn.
    pub change_past: String,
}

/// The drawing's field: left, right, top, bottom, in its own units.
const LEFT: f64 = 44.0;
const RIGHT: f64 = 384.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 214.0;

/// Days and percents onto whole units of the field, which keeps the printing of fractions out of the app.
#[derive(Clone, Copy)]
struct Scale {
    days: f64,
    floor: f64,
    ceiling: f64,
}

impl Scale {
    fn x(self, day: f64) -> i32 {
        (LEFT + (RIGHT - LEFT) * (day / self.days).clamp(0.0, 1.0)).round() as i32
    }

    fn y(self, percent: f64) -> i32 {
        let share = ((percent - self.floor) / (self.ceiling - self.floor)).clamp(0.0, 1.0);
        (BOTTOM - (BOTTOM - TOP) * share).round() as i32
    }

    fn line(self, points: impl Iterator<Item = (f64, f64)>) -> String {
        let mut path = String::new();
        for (day, percent) in points {
            path.push(if path.is_empty() { 'M' } else { 'L' });
            path.push_str(&format!("{} {}", self.x(day), self.y(percent)));
        }
        path
    }
}

/// A fill's polar compounds over its days. The line so far wears the colours oil has as it ages, a dot stands for each
/// day to come; number and word stand in the text beside it.
pub struct Forecast {
    /// What was measured, oldest first.
    pub readings: Vec<Reading>,
    /// The line and its band, from the fill's first day to the last foreseen, in order. Fewer than two: no line.
    pub line: Vec<Band>,
    /// While something is tried: days and percents from today on as it is, untried. Empty otherwise.
    pub as_it_is: Vec<(f64, f64)>,
    /// Today, in days since the fill began.
    pub today: f64,
    /// The limit in percent.
    pub limit: f64,
    /// The day the oil is expected to need changing, if it is foreseen. Past the last day drawn it has no mark, only
    /// words.
    pub change: Option<f64>,
    /// The words.
    pub words: ForecastWords,
    /// Its test id, unique on the page: its title is tied to it.
    pub testid: &'static str,
}

impl Forecast {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let scale = self.scale();
        let limit_y = scale.y(self.limit);
        let today_x = scale.x(self.today);
        let past = scale.line(self.past().iter().map(|band| (band.day, band.middle)));
        let was = scale.line(self.as_it_is.iter().copied());
        let worn = self.past().windows(2).filter_map(|pair| {
            let d = scale.line(pair.iter().map(|band| (band.day, band.middle)));
            let band = pair.last()?;
            Some(path("path", d).class(self.shade(band.middle)))
        });
        let to_come = self.line[self.past().len()..]
            .iter()
            .map(|band| dot("to-come", scale.x(band.day), scale.y(band.middle), "4").class(self.shade(band.middle)));
        let highs = self.line.iter().map(|band| (band.day, band.high));
        let lows = self.line.iter().rev().map(|band| (band.day, band.low));
        let band = scale.line(highs.chain(lows));
        let points = self.readings.iter().map(|reading| {
            let x = scale.x(reading.day);
            let (low, high) = (scale.y(reading.range.0), scale.y(reading.range.1));
            let bar = path("spread", format!("M{x} {low}V{high}m-6 0h12M{x} {low}m-6 0h12"));
            several([bar, dot("reading", x, scale.y(reading.percent), "5")])
        });
        let start = (today_x > 190).then(|| label(4, 236, self.words.start.clone()));
        let testid = self.testid;
        let title = svg("title")
            .attr("id", format!("{testid}-title"))
            .text(self.words.title.clone());
        let desc = svg("desc")
            .attr("id", format!("{testid}-desc"))
            .text(self.words.desc.clone());
        svg("svg")
            .class("forecast")
            .attr("viewBox", "0 0 400 272")
            .attr("role", "img")
            .attr("aria-labelledby", format!("{testid}-title {testid}-desc"))
            .testid(testid)
            .child(title)
            .child(desc)
            .child(path("axis", "M44 214H384"))
            .child(path("band", format!("{band}Z")))
            .child(path("today", format!("M{today_x} 30V214")))
            .child(path("limit", format!("M44 {limit_y}H384")))
            .child(label(44, limit_y - 8, self.words.limit.clone()))
            .child(path("was", was))
            .child(path("path-rim", past))
            .children(worn)
            .children(to_come)
            .children(points)
            .child(self.change.map(|day| {
                if day > scale.days {
                    change_words(RIGHT as i32, self.words.change_past.clone()).into()
                } else {
                    change_mark(scale.x(day), limit_y, self.words.change.clone())
                }
            }))
            .child(label(today_x.clamp(30, 360), 236, self.words.today.clone()).attr("text-anchor", "middle"))
            .child(start)
    }

    fn scale(&self) -> Scale {
        let days = self.line.iter().map(|band| band.day);
        let last = days
            .chain(self.readings.iter().map(|reading| reading.day))
            .chain(self.as_it_is.iter().map(|(day, _)| *day))
            .fold(self.today, f64::max);
        let highest = self.line.iter().map(|band| band.high).fold(self.limit, f64::max);
        Scale {
            days: last.max(1.0),
            floor: 0.0,
            ceiling: (self.limit * 1.15).max(highest.min(self.limit * 1.5)),
        }
    }

    /// The line up to today.
    fn past(&self) -> &[Band] {
        let so_far = self.line.partition_point(|band| band.day <= self.today);
        &self.line[..so_far]
    }

    fn shade(&self, percent: f64) -> &'static str {
        Shade::new((percent / self.limit.max(1.0) * 5.0).ceil().clamp(1.0, 5.0) as u8).class()
    }
}

fn path(class: &'static str, d: impl Words) -> Element {
    svg("path").class(class).attr("d", d)
}

fn dot(class: &'static str, x: i32, y: i32, r: &'static str) -> Element {
    let at = svg("circle").class(class).attr("cx", x.to_string());
    at.attr("cy", y.to_string()).attr("r", r)
}

fn label(x: i32, y: i32, words: String) -> Element {
    svg("text")
        .attr("x", x.to_string())
        .attr("y", y.to_string())
        .text(words)
}

/// The day to change has a line of its own under the other days, so that no two words meet, large text included.
fn change_words(x: i32, words: String) -> Element {
    // Whole on the drawing, at its edges and in large text too.
    let anchor = match x {
        ..130 => "start",
        130..270 => "middle",
        270.. => "end",
    };
    label(x, 264, words).class("strong").attr("text-anchor", anchor)
}

fn change_mark(x: i32, limit_y: i32, words: String) -> Node {
    several([
        path("stem", format!("M{x} {limit_y}V246")),
        path("change", format!("M{x} {limit_y}m-9 0l9 -11l9 11l-9 11z")),
        change_words(x, words),
    ])
}
