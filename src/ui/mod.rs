//! The screens: they read, draw and send orders; every decision is made further in.

pub mod parts;

use crate::browser::page;
use leptos::prelude::*;

/// Puts the app in the page, in place of what the page shows by itself.
pub fn mount() {
    let Some(place) = page::app_element() else { return };
    mount_to(place, App).forget();
    page::set_running();
}

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    Effect::new(|_| page::set_ready());
    view! {
        <main data-testid="screen-today">
            <h1>"Today"</h1>
        </main>
    }
}
