//! Today: each pan with its oil, what is due, and the job to start or take up again.

use leptos::prelude::*;

/// Today: each pan with its oil, what is due, and the job to start or take up again.
#[component]
pub fn Today() -> impl IntoView {
    view! { <h1>"Today"</h1> }
}
