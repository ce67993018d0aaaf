//! Names to choose from, one button each.

use crate::domain::ids::PersonId;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Tell, el};
use crate::ui::parts::answer_button;

/// Everybody who works here; `chosen` is drawn as pressed.
#[must_use]
pub fn everybody(bench: Bench, chosen: Option<PersonId>, on_press: Tell<PersonId>) -> Element {
    let people = bench.look(|kitchen, _| {
        let people = kitchen.ledger().book.people.values();
        people.map(|p| (p.person, p.initials.clone())).collect()
    });
    named(people, chosen, on_press)
}

/// These people; `chosen` is drawn as pressed.
#[must_use]
pub fn named(people: Vec<(PersonId, String)>, chosen: Option<PersonId>, on_press: Tell<PersonId>) -> Element {
    el("div")
        .class("picks")
        .children(people.into_iter().map(|(id, initials)| {
            let testid = format!("person-{initials}");
            let on_press = on_press.clone();
            answer_button(initials, chosen == Some(id), testid, move || on_press.run(id))
        }))
}
