//! A choice of one among a few, as a row of buttons. Nothing is chosen beforehand unless the caller says so.

use leptos::prelude::*;

/// One among a few. Each option's test id is `testid-key`.
#[component]
pub fn Choice(
    /// What is asked.
    #[prop(into)]
    legend: String,
    /// The options: key and words.
    options: Vec<(String, String)>,
    /// The key chosen, if any.
    #[prop(into)]
    chosen: Signal<Option<String>>,
    /// Called with the key pressed.
    #[prop(into)]
    on_choose: Callback<String>,
    /// The error in words, if any.
    #[prop(optional, into)]
    error: Signal<Option<String>>,
    /// Its test id, the stem of its options'.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    let buttons = options
        .into_iter()
        .map(|(key, words)| {
            let option_testid = format!("{testid}-{key}");
            let pressed_key = key.clone();
            let pressed = move || {
                if chosen.get().as_deref() == Some(pressed_key.as_str()) {
                    "true"
                } else {
                    "false"
                }
            };
            view! {
                <button
                    type="button"
                    aria-pressed=pressed
                    data-testid=option_testid
                    on:click=move |_| on_choose.run(key.clone())
                >
                    {words}
                </button>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choice field" data-testid=testid>
            <legend>{legend}</legend>
            <div class="choice-row">{buttons}</div>
            {move || error.get().map(|words| view! { <p class="field-error" role="alert">{words}</p> })}
        </fieldset>
    }
}
