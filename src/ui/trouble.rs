//! What could not be written, in words over every screen: it hides neither Fire, Burn nor STOP.

use leptos::prelude::*;

use super::bench::use_bench;
use super::parts::{Button, Rank};
use super::screen::Screen;
use crate::browser::clock;
use crate::kitchen::Refused;
use crate::store::StoreFault;
use crate::words::Lang;
use crate::words::trouble::{self, Told, Way, way};

/// What can be done about a trouble.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Ways {
    /// The clock is right, or is set first.
    Clock,
    /// Send it again, or leave it.
    Again,
    /// Only leave it: the same would fail the same way.
    Leave,
}

fn told(why: &Refused, lang: Lang) -> (Told, Ways) {
    match why {
        Refused::Clock(doubt) => (trouble::clock(*doubt, clock::offset, lang), Ways::Clock),
        Refused::Stamp(why) => (trouble::stamp(why, clock::offset, lang), Ways::Leave),
        Refused::BadEntry(why) => (trouble::bad_entry(why, lang), Ways::Leave),
        Refused::Store(why) => {
            let ways = match why {
                StoreFault::Full | StoreFault::Closed | StoreFault::Failed { .. } => Ways::Again,
                StoreFault::Blocked | StoreFault::Taken | StoreFault::Damaged { .. } => Ways::Leave,
            };
            (trouble::store(why, lang), ways)
        }
        Refused::Guide(_) | Refused::Day(_) => (trouble::guide(lang), Ways::Leave),
    }
}

/// The trouble, until somebody has read it. The guide's own refusals are worded by the job's screen.
#[component]
pub fn TroubleSheet(
    /// The screen beneath.
    #[prop(into)]
    screen: Signal<Screen>,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let leave = Callback::new(move |()| bench.trouble.set(None));
    move || {
        let trouble = bench.trouble.get()?;
        let on_job = screen.get().is_job();
        if on_job && matches!(trouble.why, Refused::Guide(_) | Refused::Day(_)) {
            return None;
        }
        let (Told { title, text }, ways) = told(&trouble.why, lang);
        let [right, wrong] = trouble::clock_answers(lang);
        let buttons = match ways {
            Ways::Clock => view! {
                <Button label=right rank=Rank::First on_press=move |()| bench.send_again(true) testid="trouble-confirm"/>
                <Button label=wrong on_press=leave testid="trouble-leave"/>
            }
            .into_any(),
            Ways::Again => view! {
                <Button label=way(Way::Again, lang) rank=Rank::First on_press=move |()| bench.send_again(false) testid="trouble-again"/>
                <Button label=way(Way::Leave, lang) on_press=leave testid="trouble-leave"/>
            }
            .into_any(),
            Ways::Leave => view! { <Button label=way(Way::Leave, lang) on_press=leave testid="trouble-leave"/> }.into_any(),
        };
        Some(view! {
            <section class="trouble" class:on-job=on_job role="alert" data-testid="trouble">
                <h2>{title}</h2>
                <p>{text}</p>
                {buttons}
            </section>
        })
    }
}
