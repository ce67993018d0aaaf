//! Names to choose from, one button each.

use leptos::prelude::*;

use crate::domain::ids::PersonId;
use crate::ui::bench::Bench;
use crate::ui::old_parts::AnswerButton;

/// Everybody who works here; `chosen` is drawn as pressed.
#[must_use]
pub fn everybody(bench: Bench, chosen: Option<PersonId>, on_press: Callback<PersonId>) -> AnyView {
    let people: Vec<(PersonId, String)> = bench.look(|kitchen, _| {
        let people = kitchen.ledger().book.people.values();
        people.map(|p| (p.person, p.initials.clone())).collect()
    });
    let buttons = people
        .into_iter()
        .map(|(id, initials)| {
            let press = Callback::new(move |()| on_press.run(id));
            let testid = format!("person-{initials}");
            view! { <AnswerButton label=initials chosen={chosen == Some(id)} on_press=press testid /> }
        })
        .collect_view();
    view! { <div class="picks">{buttons}</div> }.into_any()
}
