//! A quick entry about a pan, in at most four touches and a number.

use leptos::prelude::*;

use crate::domain::ids::PanId;

/// A quick entry about a pan, in at most four touches and a number.
#[component]
pub fn Add(
    /// The pan.
    pan: PanId,
) -> impl IntoView {
    let _ = pan;
    view! { <h1>"Log"</h1> }
}
