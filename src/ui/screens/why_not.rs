//! Why something was not done: a reason in one touch, or in one's own words.

use leptos::prelude::*;

use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Field};
use crate::words::run::{self, Say, say};
use crate::words::today::{Line, line};

/// The reasons, each a button, and a line for any other.
#[component]
pub fn WhyNot(
    /// Called with the reason.
    #[prop(into)]
    on_reason: Callback<String>,
) -> impl IntoView {
    let lang = use_bench().lang;
    let own = RwSignal::new(String::new());
    let given = (1..).zip(run::not_done_reasons(lang)).map(|(n, reason)| {
        let said = (*reason).to_owned();
        view! {
            <Button label=said.clone() on_press=move |()| on_reason.run(said.clone()) testid=format!("reason-{n}")/>
        }
    });
    let accept = move |()| on_reason.run(own.get_untracked().trim().to_owned());
    view! {
        <div class="reasons" data-testid="reasons">
            {given.collect_view()}
            <Field label=line(Line::OwnReason, lang) value=own on_input=move |text| own.set(text) testid="reason-own"/>
            <Button
                label=say(Say::Accept, lang).to_owned()
                asleep=Signal::derive(move || own.with(|text| text.trim().is_empty()))
                on_press=accept
                testid="reason-accept"
            />
        </div>
    }
}
