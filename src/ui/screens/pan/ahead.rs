//! The line this oil took and will take, drawn, and as a table.

use crate::domain::oil_life::{OilLife, Quantity};
use crate::domain::time::Day;
use crate::kitchen::forecast::Forecast;
use crate::ui::node::{Element, el};
use crate::ui::parts::{self, Band, ForecastWords, Reading};
use crate::words::today::{Line, line};
use crate::words::{Lang, dates, pan as said_of};

/// Standard deviations to either side within which eight of ten readings lie, as the band has it.
const EIGHT_IN_TEN_SDS: f64 = 1.281_552;

/// The drawing; while something is tried, with the line as it is beside it.
pub fn ahead(forecast: &Forecast, life: &OilLife, as_it_is: Option<&Forecast>, lang: Lang) -> Element {
    let first = forecast.first;
    #[expect(clippy::cast_precision_loss, reason = "days of one fill")]
    let since = |day: Day| day.since(first) as f64;
    let readings = forecast.readings.iter().map(|r| Reading {
        day: since(r.day),
        percent: r.percent,
        range: (
            (r.percent - EIGHT_IN_TEN_SDS * r.sd).max(0.0),
            r.percent + EIGHT_IN_TEN_SDS * r.sd,
        ),
    });
    let untried = |line: &Forecast| {
        let from_today = line.past.last().into_iter().chain(&line.ahead);
        from_today.map(|p| (since(p.day), p.polar.median)).collect()
    };
    let line_of_oil = forecast.past.iter().chain(&forecast.ahead).map(|p| Band {
        day: since(p.day),
        middle: p.polar.median,
        low: p.polar.low,
        high: p.polar.high,
    });
    let today = forecast.past.last().map_or(first, |p| p.day);
    let drawing = parts::Forecast {
        readings: readings.collect(),
        line: line_of_oil.collect(),
        today: since(today),
        as_it_is: as_it_is.map(untried).unwrap_or_default(),
        limit: forecast.limit.unwrap_or(life.polar.high * 1.2),
        change: forecast.change.map(since),
        words: words(forecast, life, lang),
        testid: "forecast",
    };
    drawing.draw()
}

fn words(forecast: &Forecast, life: &OilLife, lang: Lang) -> ForecastWords {
    let polar = &life.polar;
    let now = said_of::level(Quantity::Polar, polar.median, polar.low, polar.high, lang);
    let (limit, change) = (forecast.limit, forecast.change);
    ForecastWords {
        title: line(Line::DrawingTitle, lang).to_owned(),
        desc: said_of::drawing(
            &now,
            limit.map(said_of::percent).as_deref(),
            change.map(|day| dates::day(day, lang)).as_deref(),
            u32::try_from(forecast.readings.len()).unwrap_or(u32::MAX),
            lang,
        ),
        limit: limit.map_or_else(String::new, |limit| said_of::limit_mark(limit, lang)),
        start: dates::short(forecast.first, lang),
        today: line(Line::Now, lang).to_owned(),
        change: change.map_or_else(String::new, |day| said_of::change_mark(day, lang)),
        change_past: change.map_or_else(String::new, |day| said_of::change_past_mark(day, lang)),
    }
}

/// The drawing as a table.
pub fn table(forecast: &Forecast, lang: Lang) -> Element {
    let head = |column| el("th").attr("scope", "col").text(line(column, lang));
    let columns = [Line::ColumnDay, Line::ColumnEstimate, Line::ColumnReading].map(head);
    let rows = forecast.past.iter().chain(&forecast.ahead).map(|point| {
        let read = forecast.readings.iter().find(|r| r.day == point.day);
        let polar = &point.polar;
        el("tr")
            .child(el("th").attr("scope", "row").text(dates::short(point.day, lang)))
            .child(el("td").text(said_of::interval(polar.median, polar.low, polar.high)))
            .child(el("td").child(read.map(|r| said_of::percent(r.percent))))
    });
    let table = el("table")
        .class("num")
        .child(el("thead").child(el("tr").children(columns)))
        .child(el("tbody").children(rows));
    el("details")
        .testid("forecast-table")
        .child(
            el("summary")
                .testid("forecast-table-open")
                .text(line(Line::Table, lang)),
        )
        .child(table)
}
