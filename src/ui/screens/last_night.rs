//! "Last night: which pans?" in two touches.

use leptos::prelude::*;

/// "Last night: which pans?" in two touches.
#[component]
pub fn LastNight() -> impl IntoView {
    view! { <h1>"Last night"</h1> }
}
