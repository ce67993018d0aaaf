//! Why a step is there, on request: what it means, what opens its hold, the reason and where that comes from.

use leptos::prelude::*;

use crate::domain::guide::Run;
use crate::domain::guide::asking::Asking;
use crate::domain::procedure::Step;
use crate::ui::old_parts::{Button, Rank, Sheet};
use crate::words::run::{Say, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{Lang, holds, steps, whys};

/// The sheet. It is open while `step` holds one.
#[component]
pub fn WhySheet(
    /// The step asked about.
    step: RwSignal<Option<&'static Step>>,
    /// The language on screen.
    lang: Lang,
) -> impl IntoView {
    let words = move || {
        step.get().map(|step| {
            let why = whys::why(step.id, lang);
            let opens = step
                .holds
                .iter()
                .map(|hold| {
                    view! {
                        <dt>{holds::hold_title(*hold, lang)}</dt>
                        <dd>{holds::hold_opens(*hold, lang)}</dd>
                    }
                })
                .collect_view();
            view! {
                <p class="job-why">{steps::step_detail(step.id, lang)}</p>
                <p class="job-why">{why.reason}</p>
                <p class="soft">{job::say(JobSay::Source, lang)} ": " {why.source}</p>
                <dl class="job-hold">{opens}</dl>
            }
        })
    };
    view! {
        <Sheet
            open=Signal::derive(move || step.get().is_some())
            on_close=Callback::new(move |()| step.set(None))
            title=say(Say::Why, lang)
            close=job::say(JobSay::Close, lang)
            testid="why-sheet"
        >
            {words}
        </Sheet>
    }
}

/// The quiet button that opens the sheet for the question on screen.
#[must_use]
pub fn why_button(open: RwSignal<Option<&'static Step>>, asking: &Asking, run: Option<&Run>, lang: Lang) -> AnyView {
    let asked = asking.current(run).map(|q| q.step);
    let step = asking.gate().steps.iter().copied().find(|s| Some(s.id) == asked);
    let on_press = Callback::new(move |()| open.set(step));
    step.map(|_| view! { <Button label=say(Say::Why, lang) rank=Rank::Plain on_press testid="why" /> })
        .into_any()
}
