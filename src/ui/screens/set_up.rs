//! Set-up of the kitchen, its people, pans and machines.

use leptos::prelude::*;

/// Set-up of the kitchen, its people, pans and machines.
#[component]
pub fn SetUp() -> impl IntoView {
    view! { <h1>"Set up"</h1> }
}
