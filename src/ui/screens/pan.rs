//! One pan and its oil: days left, the line it took and will take, and why we say so.

use leptos::prelude::*;

use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Measured, SignKind};
use crate::domain::ids::{EntryId, PanId};
use crate::domain::ledger::{Filtered, Happened, Ledger, PanFill};
use crate::domain::oil_life::{Because, Grounds, OilLife, Quantity, Role};
use crate::domain::time::Day;
use crate::kitchen::forecast::{self, Forecast};
use crate::kitchen::{life, today};
use crate::ui::bench::use_bench;
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{self, Button, ForecastDrawing, ForecastWords, Notice, PanDrawing, Rank, Shade, Tone};
use crate::ui::screen::{self, Screen};
use crate::ui::screens::today::row::hero;
use crate::words::today::{Line, line};
use crate::words::{Lang, dates, facts, format, oil, pan as said_of, run, setup};

/// Filterings listed.
const RUNS_SHOWN: usize = 5;

/// Everything the page shows of a pan.
#[derive(Clone, PartialEq)]
struct Shown {
    pan: today::PanToday,
    forecast: Option<Forecast>,
    limit: Option<f64>,
    /// What the numbers rest on: the words, and the entry where it is one.
    numbers: Vec<(String, Option<EntryId>)>,
    entries: Vec<(String, Option<EntryId>)>,
    runs: Vec<String>,
    fresh_on: Option<Day>,
}

fn look(ledger: &Ledger, pan: PanId, day: Day, lang: Lang) -> Option<Shown> {
    let shown = today::of_pan(ledger, pan, day)?;
    let because = shown.life.as_ref().map(|l| l.because.as_slice()).unwrap_or_default();
    let said: Vec<_> = because
        .iter()
        .filter_map(|b| Some((*b, told(ledger, *b, lang)?)))
        .collect();
    let (entries, numbers): (Vec<_>, Vec<_>) = said.into_iter().rev().partition(|(b, _)| {
        matches!(
            b,
            Because::Entry {
                role: Role::Wear | Role::Dilution,
                ..
            }
        )
    });
    let linked = |(because, text): (Because, String)| match because {
        Because::Entry { entry, .. } => (text, Some(entry)),
        Because::FreshValue { .. }
        | Because::PublishedRate(_)
        | Because::UsualDays(_)
        | Because::UnloggedServices(_)
        | Because::UnknownAge => (text, None),
    };
    let filtered = ledger.fill(pan).into_iter().flat_map(|fill| fill.events.iter().rev());
    let filtered = filtered.filter_map(|event| match event.what {
        Happened::Filtered(how) => Some(said_of::filtered_on(
            event.day,
            matches!(how, Filtered::Guided(_)),
            lang,
        )),
        _ => None,
    });
    Some(Shown {
        forecast: forecast::of(ledger, pan, day),
        limit: life::limits(ledger.book.kitchen.as_ref()).polar.map(|l| l.percent()),
        numbers: numbers.into_iter().map(linked).collect(),
        entries: entries.into_iter().map(linked).collect(),
        runs: filtered.take(RUNS_SHOWN).collect(),
        fresh_on: ledger.fill(pan).and_then(PanFill::fresh_on),
        pan: shown,
    })
}

/// One reason in words.
fn told(ledger: &Ledger, because: Because, lang: Lang) -> Option<String> {
    Some(match because {
        Because::Entry { entry, role } => {
            let written = ledger.line(entry)?.standing()?;
            let day = ledger.book.day_of(written.at, written.off_min);
            let did = said(&written.fact, lang).unwrap_or_else(|| said_of::role(role, lang).to_owned());
            said_of::because_entry(day, facts::fact_name(&written.fact, lang), &did, lang)
        }
        Because::FreshValue { fat, quantity, grounds } => match grounds {
            Grounds::Published(source) => said_of::fresh_value(oil::fat_name(fat, lang), quantity, source, lang),
            Grounds::Assumed => oil::fresh_value_assumed(lang).to_owned(),
        },
        Because::PublishedRate(quantity) => said_of::published_rate(quantity, lang),
        Because::UsualDays(days) => said_of::your_usual(days, lang),
        Because::UnloggedServices(services) => said_of::unlogged(services, lang),
        Because::UnknownAge => said_of::unknown_age(lang).to_owned(),
    })
}

/// What an entry counted or measured.
fn said(fact: &Fact, lang: Lang) -> Option<String> {
    match fact {
        Fact::Service(service) => Some(format::hours(service.fry, lang)),
        Fact::TopUp(top_up) => Some(format::amount(top_up.amount, lang)),
        Fact::PartChange(change) => Some(format::amount(change.fresh, lang)),
        Fact::Reading(reading) => match reading.value {
            Measured::Polar(share) | Measured::Ffa(share) => Some(format::percent(share)),
            Measured::Acid(value) => Some(format::acid_value(value)),
            Measured::Temp(temp) | Measured::Smoke(temp) => Some(format::temp(temp)),
        },
        Fact::Sign(sign) => Some(setup::sign_name(sign.sign, lang).to_owned()),
        _ => None,
    }
}

/// One pan and its oil.
#[component]
pub fn PanPage(
    /// The pan.
    pan: PanId,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let day = Memo::new(move |_| bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let shown = Memo::new(move |_| {
        let day = day.get();
        bench.read(|kitchen, _| look(kitchen.ledger(), pan, day, lang))
    });
    let heading = Signal::derive(move || {
        shown.with(|s| {
            s.as_ref()
                .map_or_else(String::new, |s| run::pan_title(&s.pan.name, lang))
        })
    });
    let eyebrow = Signal::derive(move || {
        shown.with(|s| {
            s.as_ref().map_or_else(String::new, |s| {
                said_of::pan_eyebrow(oil::fat_name(s.pan.fat, lang), s.fresh_on, lang)
            })
        })
    });
    view! {
        <div data-testid="screen-pan">
            <Frame title=heading eyebrow screen=Screen::Pan(pan)>
                {move || match shown.get() {
                    None => view! { <p>{line(Line::NoSuchPan, lang)}</p> }.into_any(),
                    Some(shown) => view! { <Page shown/> }.into_any(),
                }}
            </Frame>
        </div>
    }
}

/// The page of a pan there is.
#[component]
fn Page(
    /// What is shown.
    shown: Shown,
) -> impl IntoView {
    let lang = use_bench().lang;
    let pan = shown.pan.pan;
    let claims: Vec<&str> = shown
        .pan
        .claims
        .iter()
        .map(|c| setup::claim_name(c.what, lang))
        .collect();
    let log = view! {
        <Button
            rank=Rank::First
            label=line(Line::LogSomething, lang).to_owned()
            on_press=move |()| screen::go(Screen::Add(pan))
            testid="log-something"
        />
    };
    let claims = (!claims.is_empty()).then(|| view! { <p class="claims">{claims.join(" · ")}</p> });
    match shown.pan.life.clone() {
        None => view! {
            {claims}
            <Notice tone=Tone::Danger title=line(Line::PanIsEmpty, lang) text=line(Line::PanIsEmptyText, lang) testid="pan-is-empty"/>
            {log}
        }
        .into_any(),
        Some(life) => view! {
            <div class="two">
                <div class="pan-now">
                    {claims}
                    <Answer life=life.clone() pan=shown.pan.clone()/>
                    {log}
                </div>
                <div class="pan-why">
                    {shown.forecast.clone().map(|forecast| view! { <Ahead forecast life=life.clone()/> })}
                    <Why life limit=shown.limit numbers=shown.numbers entries=shown.entries/>
                    <Runs runs=shown.runs streak=shown.pan.streak/>
                </div>
            </div>
        }
        .into_any(),
    }
}

/// Days left, the word, the score.
#[component]
fn Answer(
    /// The oil life.
    life: OilLife,
    /// The pan.
    pan: today::PanToday,
) -> impl IntoView {
    let lang = use_bench().lang;
    let hero = hero(&life, lang);
    let after = match &hero.under {
        Some(under) => under.clone(),
        None => format!("{} {}", hero.unit, oil::days_left_label(lang)),
    };
    let score = life.score.map(|s| oil::score_between(s.now, s.low, s.high, lang));
    let sign = life
        .change_sign
        .map(|(_, sign): (_, SignKind)| oil::change_because(setup::sign_name(sign, lang), lang));
    view! {
        <div class="pan-hero" data-testid="pan-hero">
            <PanDrawing shade=Shade::new(pan.shade.unwrap_or(1)) level=pan.level number=String::new()/>
            <p class="hero-days">
                <span class="days-line">{hero.before}" "<span class="days-big">{hero.number}</span></span>
                " "
                <span>{after}</span>
            </p>
            <p class="hero-word">{hero.word}</p>
            {sign.map(|sign| view! { <p class="hero-sign">{sign}</p> })}
            {hero.likely.map(|likely| view! { <p>{likely}</p> })}
            {score.map(|score| view! { <p class="soft">{score}</p> })}
            <p class="soft small">{oil::score_why(lang)}</p>
        </div>
    }
}

/// The drawing, and the same as a table.
#[component]
fn Ahead(
    /// The line.
    forecast: Forecast,
    /// The oil life.
    life: OilLife,
) -> impl IntoView {
    let lang = use_bench().lang;
    let first = forecast.first;
    #[expect(clippy::cast_precision_loss, reason = "days of one fill")]
    let since = move |day: Day| day.since(first) as f64;
    let now = said_of::level(
        Quantity::Polar,
        life.polar.median,
        life.polar.low,
        life.polar.high,
        lang,
    );
    let readings: Vec<old_parts::Reading> = forecast
        .readings
        .iter()
        .map(|r| old_parts::Reading {
            day: since(r.day),
            percent: r.percent,
            range: ((r.percent - r.sd).max(0.0), r.percent + r.sd),
        })
        .collect();
    let points = forecast.past.iter().chain(&forecast.ahead);
    let band = points.clone().map(|p| old_parts::Band {
        day: since(p.day),
        middle: p.polar.median,
        low: p.polar.low,
        high: p.polar.high,
    });
    let today = forecast.past.last().map_or(first, |p| p.day);
    let limit = forecast.limit;
    let change = forecast.change;
    let words = ForecastWords {
        title: line(Line::DrawingTitle, lang).to_owned(),
        desc: said_of::drawing(
            &now,
            limit.map(said_of::percent).as_deref(),
            change.map(|day| dates::day(day, lang)).as_deref(),
            u32::try_from(readings.len()).unwrap_or(u32::MAX),
            lang,
        ),
        limit: limit.map_or_else(String::new, |limit| said_of::limit_mark(limit, lang)),
        start: dates::short(first, lang),
        today: line(Line::Now, lang).to_owned(),
        change: change.map_or_else(String::new, |day| said_of::change_mark(day, lang)),
    };
    let rows = points
        .map(|point| {
            let read = forecast.readings.iter().find(|r| r.day == point.day);
            view! {
                <tr>
                    <th scope="row">{dates::short(point.day, lang)}</th>
                    <td>{said_of::interval(point.polar.median, point.polar.low, point.polar.high)}</td>
                    <td>{read.map(|r| said_of::percent(r.percent))}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <section data-testid="ahead">
            <ForecastDrawing
                readings
                line=band.collect()
                today=since(today)
                limit=limit.unwrap_or(life.polar.high * 1.2)
                change=change.map(since)
                words
                testid="forecast"
            />
            <p class="small soft">{oil::forecast_caveat(lang)}</p>
            <details data-testid="forecast-table">
                <summary data-testid="forecast-table-open">{line(Line::Table, lang)}</summary>
                <table class="num">
                    <thead>
                        <tr>
                            <th scope="col">{line(Line::ColumnDay, lang)}</th>
                            <th scope="col">{line(Line::ColumnEstimate, lang)}</th>
                            <th scope="col">{line(Line::ColumnReading, lang)}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
            </details>
        </section>
    }
}

/// Why: the level, what limits, where it settles, and everything the numbers rest on.
#[component]
fn Why(
    /// The oil life.
    life: OilLife,
    /// The limit on polar compounds.
    limit: Option<f64>,
    /// What the numbers rest on, hours and top-ups left out.
    numbers: Vec<(String, Option<EntryId>)>,
    /// Hours and top-ups.
    entries: Vec<(String, Option<EntryId>)>,
) -> impl IntoView {
    let lang = use_bench().lang;
    let by = life.score.map(|s| said_of::limited_by(s.limited_by, lang));
    let settles = life.settles_at.map(|settles| {
        let limit = limit.filter(|_| settles.quantity == Quantity::Polar);
        said_of::settles(settles.level.before_top_up, limit, lang)
    });
    let chance = life.chance_over.map(|chance| {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a chance from 0 to 1"
        )]
        let percent = (chance * 100.0).round() as u8;
        oil::chance_over(percent, lang)
    });
    let level = said_of::level(
        Quantity::Polar,
        life.polar.median,
        life.polar.low,
        life.polar.high,
        lang,
    );
    view! {
        <section data-testid="why">
            <h2>{line(Line::Why, lang)}</h2>
            <p>{level}</p>
            {by.map(|text| view! { <p>{text}</p> })}
            {settles.map(|text| view! { <p data-testid="settles">{text}</p> })}
            {chance.map(|text| view! { <p>{text}"."</p> })}
            <ul class="because">{because_lines(numbers)}</ul>
            {(!entries.is_empty()).then(|| view! {
                <details>
                    <summary data-testid="entries-open">{line(Line::AllEntries, lang)}</summary>
                    <ul class="because">{because_lines(entries)}</ul>
                </details>
            })}
        </section>
    }
}

fn because_lines(lines: Vec<(String, Option<EntryId>)>) -> impl IntoView {
    let item = |(text, entry): (String, Option<EntryId>)| match entry {
        Some(EntryId(id)) => {
            let href = format!("#{}/{id:032x}", Screen::Log.address());
            view! { <li><a href=href data-testid="because-entry">{text}</a></li> }.into_any()
        }
        None => view! { <li>{text}</li> }.into_any(),
    };
    lines.into_iter().map(item).collect_view()
}

/// The last filterings, and what filtering did.
#[component]
fn Runs(
    /// The filterings, newest first.
    runs: Vec<String>,
    /// Days in a row.
    streak: u32,
) -> impl IntoView {
    let lang = use_bench().lang;
    let none = runs.is_empty();
    view! {
        <section data-testid="last-runs">
            <h2>{line(Line::LastRuns, lang)}</h2>
            {if none {
                view! { <p>{line(Line::NoRuns, lang)}</p> }.into_any()
            } else {
                view! {
                    <ul>{runs.into_iter().map(|text| view! { <li>{text}</li> }).collect_view()}</ul>
                    <p>{said_of::row_of_days(streak, lang)}</p>
                }.into_any()
            }}
            <p class="soft">{oil::filtering_why(lang)}</p>
        </section>
    }
}
