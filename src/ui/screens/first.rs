//! Before anything is set up: look round with a demo kitchen, or set up one's own.

use leptos::prelude::*;

/// Before anything is set up: look round with a demo kitchen, or set up one's own.
#[component]
pub fn First() -> impl IntoView {
    view! { <h1>"Panward"</h1> }
}
