//! The screens: they read, draw and send orders; every decision is made further in.

pub mod bench;
pub mod boot;
pub mod cards;
pub mod frame;
pub mod job;
pub mod just_logged;
pub mod office;
pub mod parts;
pub mod prefs;
pub mod screen;
pub mod screens;
pub mod set_up;
pub mod trouble;

use crate::browser::page;
use leptos::prelude::*;

use boot::Boot;
use screen::Screen;

/// Puts the app in the page, in place of what the page shows by itself.
pub fn mount() {
    let Some(place) = page::app_element() else { return };
    mount_to(place, App).forget();
    page::set_running();
}

/// The whole app: opens the log, then shows the screen its address names.
#[component]
pub fn App() -> impl IntoView {
    cards::provide();
    let boot = boot::begin();
    view! {
        {move || match boot.get() {
            Boot::Opening => ().into_any(),
            Boot::Choose => view! { <screens::first::First/> }.into_any(),
            Boot::Failed(fault) => view! { <boot::Failed fault/> }.into_any(),
            Boot::Open(bench) => {
                provide_context(bench);
                view! { <Screens/> }.into_any()
            }
        }}
        <cards::Cards/>
    }
}

/// The screen shown, and the word to the page that it is there.
#[component]
fn Screens() -> impl IntoView {
    let screen = screen::follow();
    bench::keep_time(bench::use_bench());
    Effect::new(move |_| {
        screen.track();
        page::set_unready();
        page::set_ready();
    });
    let shown = move || match screen.get() {
        Screen::First => view! { <screens::first::First/> }.into_any(),
        Screen::Today => view! { <screens::today::Today/> }.into_any(),
        Screen::Pan(pan) => view! { <screens::pan::PanPage pan/> }.into_any(),
        Screen::Log => view! { <screens::log::Log/> }.into_any(),
        Screen::Add(pan) => view! { <screens::add::Add pan/> }.into_any(),
        Screen::Filter => view! { <screens::filter::Filter/> }.into_any(),
        Screen::LightUp => view! { <screens::light_up::LightUp/> }.into_any(),
        Screen::LockUp => view! { <screens::lock_up::LockUp/> }.into_any(),
        Screen::LastNight => view! { <screens::last_night::LastNight/> }.into_any(),
        Screen::Office => view! { <screens::office::Office/> }.into_any(),
        Screen::SetUp => view! { <screens::set_up::SetUp/> }.into_any(),
        Screen::Edit(subject, id) => view! { <screens::edit::Edit subject id/> }.into_any(),
    };
    view! {
        {shown}
        <trouble::TroubleSheet screen/>
    }
}
