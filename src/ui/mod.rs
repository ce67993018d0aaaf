//! The screens: they read, draw and send orders; every decision is made further in.

pub mod bench;
pub mod boot;
pub mod cards;
pub mod frame;
pub mod job;
pub mod just_logged;
mod local;
pub mod node;
pub mod office;
pub mod parts;
pub mod prefs;
pub mod screen;
pub mod screens;
pub mod set_up;
pub mod trouble;
pub mod wrong;

use leptos::prelude::{provide_context, untrack};

use crate::browser::page;
use crate::domain::facts::job::JobKind;
use crate::kitchen::alarm;
use crate::kitchen::care::Care;
use crate::nodes;
use bench::Bench;
use boot::Boot;
use job::watch;
use node::{Element, Held, Node, follow, live};
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
    let pressed = Held::new(None);
    let shown = live(move || match boot.get() {
        // What a screen reads while it is made is followed by the screen's own parts, never by what chose the screen.
        Boot::Opening => Node::Nothing,
        Boot::Choose => untrack(|| screens::first::first(None)).into(),
        Boot::Failed(fault) => boot::failed(&fault, desk).into(),
        Boot::Glance(glance, world) => {
            follow(page::set_ready);
            untrack(|| screens::today::at_a_glance(glance, world, desk, pressed)).into()
        }
        Boot::Open(bench) => {
            provide_context(bench);
            press_what_waited(pressed);
            untrack(|| opened(bench))
        }
    });
    nodes![shown, cards::both(desk)]
}

/// Presses what was pressed before the log was there, now that its screen stands.
fn press_what_waited(pressed: Held<Option<String>>) {
    if let Some(id) = pressed.get_untracked() {
        pressed.set(None);
        page::after_paint(move || page::press(&id));
    }
}

/// The screen shown, and the word to the page that it is there.
fn opened(bench: Bench) -> Node {
    let screen = screen::follow();
    bench::keep_time(bench);
    watch::ring(bench, |kitchen, now| alarm::of_care(kitchen.pan_jobs(), now));
    let mut before = screen.get_untracked();
    follow(move || {
        let at = screen.get();
        if std::mem::replace(&mut before, at) != at {
            page::to_top();
        }
        page::set_unready();
        page::set_ready();
    });
    let shown = live(move || {
        let screen = screen.get();
        // Another screen is new all through: no focus, scroll or half-done press of the one before stays on it.
        untrack(|| draw(bench, screen)).key(screen.address())
    });
    nodes![
        trouble::second_window(bench),
        shown,
        trouble::trouble_sheet(bench, screen),
        wrong::sheet(bench, cards::use_cards()),
    ]
}

fn draw(bench: Bench, screen: Screen) -> Element {
    match screen {
        Screen::First => screens::first::first(Some(bench)),
        Screen::Today => screens::today::today(bench),
        Screen::Pan(pan) => screens::pan::pan(bench, pan),
        Screen::Log(entry) => screens::log::log_screen(bench, entry),
        Screen::Add(pan) => screens::add::add_screen(bench, pan),
        Screen::KeptFor(pan) => screens::kept_for::kept_for(bench, pan),
        Screen::Allergens => screens::allergens::allergens(bench),
        Screen::Filter => screens::filter::filter(bench),
        Screen::LightUp => screens::light_up::light_up(bench),
        Screen::LockUp => screens::lock_up::lock_up(bench),
        Screen::OilChange(pan) => screens::care::care_screen(bench, pan, Care::Job(JobKind::OilChange)),
        Screen::BoilOut(pan) => screens::care::care_screen(bench, pan, Care::Job(JobKind::BoilOut)),
        Screen::Waste(pan) => screens::care::care_screen(bench, pan, Care::Waste),
        Screen::LastNight => screens::last_night::last_night(bench),
        Screen::Office => screens::office::office(bench),
        Screen::SetUp => screens::set_up::set_up(bench),
        Screen::Edit(subject, id) => screens::edit::edit(bench, subject, id),
    }
}
