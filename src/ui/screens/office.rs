//! The owner's page: set-up, export and import, the state of storage.

use leptos::prelude::*;

/// The owner's page: set-up, export and import, the state of storage.
#[component]
pub fn Office() -> impl IntoView {
    view! { <h1>"Office"</h1> }
}
