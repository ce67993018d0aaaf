//! The screens: they read, draw and send orders; every decision is made further in.

pub mod bench;
pub mod boot;
pub mod cards;
pub mod frame;
pub mod job;
pub mod just_logged;
pub mod node;
pub mod office;
pub mod old_frame;
pub mod old_parts;
pub mod parts;
pub mod prefs;
pub mod screen;
pub mod screens;
pub mod set_up;
pub mod trouble;

use leptos::prelude::*;

use crate::browser::page;
use crate::nodes;
use bench::Bench;
use boot::Boot;
use node::{Node, follow, foreign, live};
use screen::Screen;

/// Puts the app in the page, in place of what the page shows by itself.
pub fn mount() {
    let Some(place) = page::app_element() else { return };
    node::mount(&place, app).forget();
    page::set_running();
}

/// The whole app: opens the log, then shows the screen its address names.
fn app() -> Node {
    let desk = cards::provide();
    let boot = boot::begin(desk);
    let shown = live(move || match boot.get() {
        Boot::Opening => Node::Nothing,
        Boot::Choose => screens::first::first(),
        Boot::Failed(fault) => boot::failed(&fault, desk).into(),
        Boot::Open(bench) => {
            provide_context(bench);
            opened(bench)
        }
    });
    nodes![shown, cards::both(desk)]
}

/// The screen shown, and the word to the page that it is there.
fn opened(bench: Bench) -> Node {
    let screen = screen::follow();
    bench::keep_time(bench);
    follow(move || {
        screen.track();
        page::set_unready();
        page::set_ready();
    });
    let shown = live(move || match screen.get() {
        Screen::First => screens::first::first(),
        Screen::Today => screens::today::today(bench).into(),
        Screen::Pan(pan) => screens::pan::pan(bench, pan).into(),
        Screen::Log => screens::log::log_screen(bench).into(),
        Screen::Add(pan) => screens::add::add_screen(bench, pan).into(),
        Screen::Filter => screens::filter::filter(bench).into(),
        Screen::LightUp => screens::light_up::light_up(bench).into(),
        Screen::LockUp => screens::lock_up::lock_up(bench).into(),
        Screen::LastNight => screens::last_night::last_night(bench).into(),
        Screen::Office => foreign(view! { <screens::office::Office/> }),
        Screen::SetUp => foreign(view! { <screens::set_up::SetUp/> }),
        Screen::Edit(subject, id) => foreign(view! { <screens::edit::Edit subject id/> }),
    });
    nodes![shown, trouble::trouble_sheet(bench, screen)]
}
