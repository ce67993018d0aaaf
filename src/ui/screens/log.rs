//! The log: everything that happened, newest first by trading day; nothing in it is ever changed, only put right.

mod detail;
mod rows;

use leptos::prelude::*;

use crate::domain::ids::{EntryId, PanId};
use crate::ui::bench::{Bench, use_bench};
use crate::ui::old_frame::Frame;
use crate::ui::old_parts::{Button, Choice, Notice, Tone};
use crate::ui::screen::Screen;
use crate::words::log::{Office, office};
use crate::words::run;
use crate::words::screens::log::{self, log};

use detail::Detail;
use rows::{DayRows, Row};

/// How many lines are shown at first, and with each "more".
const PAGE: usize = 60;
const ALL: &str = "all";

/// The log: everything that happened, newest first.
#[component]
pub fn Log() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let pan = RwSignal::new(None::<PanId>);
    let most = RwSignal::new(PAGE);
    let open = RwSignal::new(None::<EntryId>);
    let list = Memo::new(move |_| bench.read(|kitchen, now| rows::of(kitchen, now, pan.get(), most.get(), lang)));
    let days = move || {
        let (days, _) = list.get();
        if days.is_empty() {
            let words = match pan.get() {
                None => office(Office::LogEmpty, lang),
                Some(_) => log(log::Log::NothingHere, lang),
            };
            return view! { <p data-testid="log-empty">{words}</p> }.into_any();
        }
        let days = days.into_iter().map(|day| view! { <DayList day open/> });
        days.collect_view().into_any()
    };
    let more = move || {
        list.with(|(_, more)| *more).then(|| {
            view! {
                <Button
                    label=log(log::Log::More, lang)
                    on_press=move |()| most.update(|n| *n += PAGE)
                    testid="log-more"
                />
            }
        })
    };
    view! {
        <div data-testid="screen-log">
            <Frame title=Signal::stored(office(Office::Log, lang).to_owned()) screen=Screen::Log>
                <Filter bench pan/>
                <Unreadable bench/>
                {days}
                {more}
            </Frame>
        </div>
    }
}

/// All pans, or one.
#[component]
fn Filter(bench: Bench, pan: RwSignal<Option<PanId>>) -> impl IntoView {
    let lang = bench.lang;
    let mut options = vec![(ALL.to_owned(), log(log::Log::AllPans, lang).to_owned())];
    options.extend(bench.look(|kitchen, _| {
        let pans = kitchen.ledger().book.pans_in_use().into_iter();
        pans.map(|p| (format!("{:032x}", p.pan.0), run::pan_title(&p.name, lang)))
            .collect::<Vec<_>>()
    }));
    let chosen = Signal::derive(move || {
        Some(
            pan.get()
                .map_or_else(|| ALL.to_owned(), |pan| format!("{:032x}", pan.0)),
        )
    });
    let choose = move |key: String| pan.set(u128::from_str_radix(&key, 16).ok().map(PanId));
    view! { <Choice legend=log(log::Log::Filter, lang) options chosen on_choose=choose testid="log-filter"/> }
}

/// Lines nobody can read: counted and shown, never dropped.
#[component]
fn Unreadable(bench: Bench) -> impl IntoView {
    let lang = bench.lang;
    let lines = bench.look(|kitchen, _| {
        let lines = kitchen.unreadable().iter();
        lines
            .map(|line| log::unreadable(line.seq, &line.why.to_string(), lang))
            .collect::<Vec<_>>()
    });
    (!lines.is_empty()).then(|| {
        let items = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
        view! {
            <Notice
                tone=Tone::Wrong
                title=log(log::Log::Unreadable, lang)
                text=log(log::Log::UnreadableText, lang)
                testid="log-unreadable"
            >
                <ul>{items}</ul>
            </Notice>
        }
    })
}

/// A trading day.
#[component]
fn DayList(day: DayRows, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let items = day.rows.into_iter().map(|row| view! { <Item row open/> });
    view! {
        <section class="log-day" data-testid="log-day">
            <h2>{day.title}</h2>
            <ul>{items.collect_view()}</ul>
        </section>
    }
}

/// A line; touched, it unfolds.
#[component]
fn Item(row: Row, open: RwSignal<Option<EntryId>>) -> impl IntoView {
    let key = row.key;
    let is_open = Memo::new(move |_| open.get() == Some(key));
    let marks = (!row.marks.is_empty()).then(|| view! { <span class="marks">{row.marks.join(" · ")}</span> });
    let what = row.unfolds.clone();
    view! {
        <li>
            <button
                type="button"
                class="log-line"
                class:void=row.void
                aria-expanded=move || is_open.get().to_string()
                data-testid="log-item"
                on:click=move |_| open.set((!is_open.get_untracked()).then_some(key))
            >
                <time>{row.time}</time>
                <span>
                    <b>{row.about}</b>
                    {row.detail}
                </span>
                <span class="by">{row.who}</span>
                {marks}
            </button>
            {move || is_open.get().then(|| view! { <Detail what=what.clone() open/> })}
        </li>
    }
}
