//! People and machines to name: one button each.

use leptos::prelude::*;

use super::Floor;
use crate::domain::evidence::{Item, Word};
use crate::domain::ids::{MachineId, PersonId};
use crate::kitchen::filter::{Fit, fit};
use crate::kitchen::{Order, Refused};
use crate::ui::bench::Trouble;
use crate::ui::old_parts::AnswerButton;
use crate::words::screens::job::{JobSay, say};

/// Everybody who works here; after a starter, everybody who may stand beside.
pub fn people(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let named = floor.person.get();
    let beside = named.filter(|person| standing(floor, *person, None) == Fit::BesideSupervisor);
    let people: Vec<(PersonId, String)> = floor.bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let people = scene.people.iter().map(|(person, _)| person);
        people
            .filter(|p| {
                beside.is_none_or(|starter| {
                    matches!(fit(kitchen.guide(), &scene, starter, Some(p.person), now), Fit::Yes(_))
                })
            })
            .map(|p| (p.person, p.initials.clone()))
            .collect()
    });
    let chosen = if beside.is_some() {
        floor.supervisor.get()
    } else {
        named
    };
    let buttons = people
        .into_iter()
        .map(|(id, initials)| {
            let on_press = Callback::new(move |()| match beside {
                Some(starter) => name_supervisor(floor, starter, id),
                None => name_person(floor, id),
            });
            let testid = format!("person-{initials}");
            view! { <AnswerButton label=initials chosen={chosen == Some(id)} on_press testid /> }
        })
        .collect_view();
    let head = beside.map(|_| view! { <h2 class="picks-head">{say(JobSay::WhoBeside, lang)}</h2> });
    view! { {head} {buttons} }.into_any()
}

fn standing(floor: Floor, person: PersonId, supervisor: Option<PersonId>) -> Fit {
    floor
        .bench
        .look(|kitchen, now| fit(kitchen.guide(), &kitchen.scene(now), person, supervisor, now))
}

fn name_person(floor: Floor, person: PersonId) {
    match standing(floor, person, None) {
        Fit::Yes(word) => {
            floor.person.set(Some(person));
            sign_off(floor, word);
        }
        Fit::BesideSupervisor => floor.person.set(Some(person)),
        Fit::No(why) => {
            let command = crate::domain::guide::Command::Who {
                person,
                supervisor: None,
            };
            floor.bench.trouble.set(Some(Trouble {
                why: Refused::Guide(why),
                order: Order::Guide(command),
            }));
        }
    }
}

fn name_supervisor(floor: Floor, starter: PersonId, supervisor: PersonId) {
    if let Fit::Yes(word) = standing(floor, starter, Some(supervisor)) {
        floor.supervisor.set(Some(supervisor));
        sign_off(floor, word);
    }
}

fn sign_off(floor: Floor, word: Word) {
    floor
        .ask
        .touch(|asking, run, now| asking.named(Item::SignOff, word, run, now));
}

/// The machines and hand kits.
pub fn machines(floor: Floor) -> AnyView {
    let machines: Vec<(MachineId, String)> = floor.bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let machines = scene.machines.iter().map(|m| &m.machine);
        machines.map(|m| (m.machine, m.name.clone())).collect()
    });
    let chosen = floor.machine.get();
    machines
        .into_iter()
        .enumerate()
        .map(|(n, (id, name))| {
            let on_press = Callback::new(move |()| {
                floor.machine.set(Some(id));
                floor
                    .ask
                    .touch(|asking, run, now| asking.named(Item::Machine, Word::Ready, run, now));
            });
            let testid = format!("machine-{}", n + 1);
            view! { <AnswerButton label=name chosen={chosen == Some(id)} on_press testid /> }
        })
        .collect_view()
        .into_any()
}
