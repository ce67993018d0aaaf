//! The filter job: Ready, each pan, putting away, one step at a time.

use leptos::prelude::*;

/// The filter job: Ready, each pan, putting away, one step at a time.
#[component]
pub fn Filter() -> impl IntoView {
    view! { <h1>"Filter"</h1> }
}
