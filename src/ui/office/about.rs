//! The app itself: its version and updates, leaving the demo, cautions, how the numbers come about.

use leptos::prelude::*;
use leptos::task::spawn_local;

use crate::browser::idb::IdbJournal;
use crate::browser::page;
use crate::browser::update::{self, Update};
use crate::store::World;
use crate::ui::bench::use_bench;
use crate::ui::boot::Reboot;
use crate::ui::parts::{Button, Card, Notice, Tone};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::words::office::{self, Line, line};
use crate::words::screens::{Screen as Words, cautions, screen as words};

/// Version, cautions, and how the numbers come about.
#[component]
pub fn AboutTheApp() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let job_open = move || bench.read(|kitchen, _| kitchen.job_open());
    let update = move || match (bench.update.get(), job_open()) {
        (Some(_), true) => view! { <p data-testid="update-waits">{line(Line::UpdateLater, lang)}</p> }.into_any(),
        (Some(Update::Waiting), false) => {
            let take = move |()| {
                spawn_local(async {
                    update::take().await;
                });
            };
            view! { <Button label=line(Line::TakeUpdate, lang) on_press=take testid="take-update"/> }.into_any()
        }
        (Some(Update::Taken), false) => view! {
            <Button label=line(Line::StartUpdate, lang) on_press=|()| page::reload() testid="start-update"/>
        }
        .into_any(),
        (None, _) => view! {
            <Button label=line(Line::LookForUpdate, lang) on_press=|()| update::look() testid="look-for-update"/>
        }
        .into_any(),
    };
    let paragraphs = |all: &'static [&'static str]| all.iter().map(|text| view! { <p>{*text}</p> }).collect_view();
    let listed = |all: &'static [&'static str]| all.iter().map(|text| view! { <li>{*text}</li> }).collect_view();
    view! {
        <Card testid="version-card">
            <h2>{line(Line::Version, lang)}</h2>
            <p data-testid="version">{words(Words::AppName, lang)}" "{env!("CARGO_PKG_VERSION")}</p>
            {update}
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

/// Leaving the demo: its log is deleted, the kitchen's own is another one. Shown in the demo only.
#[component]
pub fn LeaveDemo() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let reboot = expect_context::<Reboot>();
    let failed = RwSignal::new(false);
    let leave = move |()| {
        spawn_local(async move {
            if IdbJournal::delete(World::Demo.database()).await.is_err() {
                failed.set(true);
                return;
            }
            prefs::set_world(None);
            screen::go(Screen::First);
            reboot.now();
        });
    };
    (bench.world == World::Demo).then(|| {
        view! {
            <Card testid="demo-card">
                <h2>{words(Words::DemoLine, lang)}</h2>
                <p>{line(Line::LeaveDemoText, lang)}</p>
                <Button label=words(Words::LeaveDemo, lang) on_press=leave testid="leave-demo"/>
                {move || failed.get().then(|| view! {
                    <Notice tone=Tone::Wrong title=words(Words::LeaveDemo, lang) text=line(Line::LeaveFailed, lang) testid="leave-failed"/>
                })}
            </Card>
        }
    })
}
