//! A page of a job that is a list, not a step: pans to choose, make-safe lines, faults, a hold that says no.

use leptos::prelude::*;

use super::notes::notes;
use crate::ui::bench::use_bench;
use crate::ui::cards::use_cards;
use crate::ui::old_frame::empties;
use crate::ui::old_parts::{Emergency, EmptyBanners, StopBar};
use crate::words::cards;
use crate::words::run::{Say, say};

/// A page on the night ground: Fire and Burn at the top, what it holds, its ways on at the bottom, STOP while a pan
/// is in hand.
#[component]
pub fn JobPage(
    /// The pan's number, where one pan is meant.
    #[prop(optional_no_strip)]
    pan: Option<String>,
    /// A small line at the top.
    #[prop(optional, into)]
    name: String,
    /// What the page says first.
    #[prop(into)]
    title: String,
    /// Stops the run; without one no STOP is shown.
    #[prop(optional_no_strip)]
    on_stop: Option<Callback<()>>,
    /// The page's test id.
    #[prop(into)]
    testid: String,
    /// The buttons at the bottom.
    ways: AnyView,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    let bench = use_bench();
    let desk = use_cards();
    let lang = bench.lang;
    view! {
        <div class="night run-ground">
            <div class="run job-page" data-testid=testid>
                <EmptyBanners lines=empties(bench) />
                <header class="run-top">
                    {pan.map(|pan| view! { <p class="pan-number" data-testid="pan-number">{pan}</p> })}
                    <div class="run-top-side">
                        <div class="run-top-row">
                            <p class="run-name run-where">{name}</p>
                            <Emergency
                                fire=cards::fire_button(lang)
                                burn=cards::burn_button(lang)
                                on_fire=desk.fire()
                                on_burn=desk.burn()
                            />
                        </div>
                    </div>
                </header>
                <main class="run-main">
                    <h1 class="job-title" data-testid="say">
                        {title}
                    </h1>
                    {notes(bench)}
                    {children()}
                    <div class="job-ways run-push">{ways}</div>
                </main>
                {on_stop
                    .map(|on_stop| {
                        view! { <StopBar word=say(Say::Stop, lang) brings=say(Say::StopMakeSafe, lang) on_stop /> }
                    })}
            </div>
        </div>
    }
}
