//! The log: everything that happened, newest first.

use leptos::prelude::*;

/// The log: everything that happened, newest first.
#[component]
pub fn Log() -> impl IntoView {
    view! { <h1>"Log"</h1> }
}
