//! The app itself: its version and updates, cautions, how the numbers come about.

use leptos::prelude::*;

use crate::browser::update;
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Card};
use crate::words::office::{self, Line, line};
use crate::words::screens::{Screen as Words, cautions, screen as words};

/// Version, cautions, and how the numbers come about.
#[component]
pub fn AboutTheApp() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let look = move || {
        bench.update.get().is_none().then(|| {
            view! { <Button label=line(Line::LookForUpdate, lang) on_press=|()| update::look() testid="look-for-update"/> }
        })
    };
    let paragraphs = |all: &'static [&'static str]| all.iter().map(|text| view! { <p>{*text}</p> }).collect_view();
    let listed = |all: &'static [&'static str]| all.iter().map(|text| view! { <li>{*text}</li> }).collect_view();
    view! {
        <Card testid="version-card">
            <h2>{line(Line::Version, lang)}</h2>
            <p data-testid="version">{words(Words::AppName, lang)}" "{env!("CARGO_PKG_VERSION")}</p>
            {look}
        </Card>
        <Card testid="cautions">
            <h2>{words(Words::Cautions, lang)}</h2>
            <ul class="lines">{listed(cautions(lang))}</ul>
        </Card>
        <Card testid="numbers">
            <h2>{line(Line::Numbers, lang)}</h2>
            {paragraphs(office::numbers(lang))}
        </Card>
    }
}
