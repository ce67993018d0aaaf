//! The line that offers to take the last thing back, for ten seconds.

use std::time::Duration;

use leptos::{leptos_dom::helpers::set_timeout_with_handle, prelude::*};

/// How long the offer stands.
const STANDS: Duration = Duration::from_secs(10);

/// An offer to take something back. After ten seconds it calls `on_over`; the log can still be corrected by an entry.
#[component]
pub fn Undo(
    /// What was done.
    #[prop(into)]
    text: String,
    /// What the button says.
    #[prop(into)]
    label: String,
    /// Takes it back.
    #[prop(into)]
    on_undo: Callback<()>,
    /// How long ago it was done: the offer is shorter by that on the screen that follows.
    #[prop(optional)]
    age: Duration,
    /// Called when the offer is over.
    #[prop(into)]
    on_over: Callback<()>,
    /// Its test id; the button's is `testid-button`.
    #[prop(default = "undo".into(), into)]
    testid: String,
) -> impl IntoView {
    // Without a timer the offer simply stays, which harms nobody.
    if let Ok(timer) = set_timeout_with_handle(move || on_over.run(()), STANDS.saturating_sub(age)) {
        on_cleanup(move || timer.clear());
    }
    view! {
        <div class="undo" role="status" data-testid=testid.clone()>
            <p>{text}</p>
            <button type="button" data-testid=format!("{testid}-button") on:click=move |_| on_undo.run(())>
                {label}
            </button>
            <span
                class="undo-time"
                aria-hidden="true"
                style:animation-delay=format!("-{}ms", age.as_millis())
            ></span>
        </div>
    }
}
