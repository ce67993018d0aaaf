//! Light-up, a pan at a time.

use leptos::prelude::*;

/// Light-up, a pan at a time.
#[component]
pub fn LightUp() -> impl IntoView {
    view! { <h1>"Light-up"</h1> }
}
