//! One fill's oil life: readings so far, the line through them, the band it may take, the limit, the day to change.

use leptos::prelude::*;

use super::pan_drawing::Shade;

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
#[component]
pub fn ForecastDrawing(
    /// What was measured, oldest first.
    readings: Vec<Reading>,
    /// The line and its band, from the fill's first day to the last foreseen, in order. Fewer than two: no line.
    line: Vec<Band>,
    /// Today, in days since the fill began.
    today: f64,
    /// The limit in percent.
    limit: f64,
    /// The day the oil is expected to need changing, if it is foreseen.
    change: Option<f64>,
    /// The words.
    words: ForecastWords,
    /// Its test id, unique on the page: its title is tied to it.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    let last = line
        .iter()
        .map(|band| band.day)
        .chain(readings.iter().map(|reading| reading.day))
        .fold(today, f64::max);
    let highest = line.iter().map(|band| band.high).fold(limit, f64::max);
    let scale = Scale {
        days: last.max(1.0),
        floor: 0.0,
        ceiling: (limit * 1.15).max(highest.min(limit * 1.5)),
    };

    let limit_y = scale.y(limit);
    let today_x = scale.x(today);
    let change_x = change.map(|day| scale.x(day));
    let past = scale.line(
        line.iter()
            .filter(|band| band.day <= today)
            .map(|band| (band.day, band.middle)),
    );
    let shade = |percent: f64| Shade::new((percent / limit.max(1.0) * 5.0).ceil().clamp(1.0, 5.0) as u8).class();
    let worn = line
        .windows(2)
        .filter(|pair| pair.iter().all(|band| band.day <= today))
        .map(|pair| {
            let d = scale.line(pair.iter().map(|band| (band.day, band.middle)));
            let class = pair.last().map(|band| format!("path {}", shade(band.middle)));
            view! { <path class=class d=d /> }
        })
        .collect_view();
    let to_come = line
        .iter()
        .filter(|band| band.day > today)
        .map(|band| {
            let class = format!("to-come {}", shade(band.middle));
            view! { <circle class=class cx=scale.x(band.day) cy=scale.y(band.middle) r="4" /> }
        })
        .collect_view();
    let edges = line
        .iter()
        .map(|band| (band.day, band.high))
        .chain(line.iter().rev().map(|band| (band.day, band.low)));
    let band = scale.line(edges);

    let points = readings
        .into_iter()
        .map(|reading| {
            let x = scale.x(reading.day);
            let spread = scale.line([(reading.day, reading.range.0), (reading.day, reading.range.1)].into_iter());
            view! {
                <path class="spread" d=spread />
                <circle class="reading" cx=x cy=scale.y(reading.percent) r="7" />
            }
        })
        .collect_view();
    // The day to change has a line of its own under the other days, so that no two words meet, large text included.
    let change_mark = change_x.map(|x| {
        let words_x = x.clamp(50, 346);
        view! {
            <path class="stem" d=format!("M{x} {limit_y}V246") />
            <path class="change" d=format!("M{x} {limit_y}m-9 0l9 -11l9 11l-9 11z") />
            <text class="strong" x=words_x y="264" text-anchor="middle">
                {words.change}
            </text>
        }
    });
    let start_words = (today_x > 150).then(|| view! { <text x="4" y="236">{words.start}</text> });
    let (title_id, desc_id) = (format!("{testid}-title"), format!("{testid}-desc"));
    let labelled_by = format!("{title_id} {desc_id}");
    view! {
        <svg
            class="forecast"
            viewBox="0 0 400 272"
            role="img"
            aria-labelledby=labelled_by
            data-testid=testid
        >
            <title id=title_id>{words.title}</title>
            <desc id=desc_id>{words.desc}</desc>
            <path class="axis" d="M44 214H384" />
            <path class="band" d=format!("{band}Z") />
            <path class="today" d=format!("M{today_x} 30V214") />
            <path class="limit" d=format!("M44 {limit_y}H384") />
            <text x="44" y=limit_y - 8>{words.limit}</text>
            <path class="path-rim" d=past.clone() />
            {worn}
            {to_come}
            {points}
            {change_mark}
            <text x=today_x.clamp(30, 360) y="236" text-anchor="middle">{words.today}</text>
            {start_words}
        </svg>
    }
}
