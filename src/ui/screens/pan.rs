//! One pan and its oil: days left, the drawing, and why.

use leptos::prelude::*;

use crate::domain::ids::PanId;

/// One pan and its oil: days left, the drawing, and why.
#[component]
pub fn PanPage(
    /// The pan.
    pan: PanId,
) -> impl IntoView {
    let _ = pan;
    view! { <h1>"Pan"</h1> }
}
