//! Lock-up: scraps cold or outdoors, floor, pans off and lidded.

use leptos::prelude::*;

/// Lock-up: scraps cold or outdoors, floor, pans off and lidded.
#[component]
pub fn LockUp() -> impl IntoView {
    view! { <h1>"Lock-up"</h1> }
}
