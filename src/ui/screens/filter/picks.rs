//! People and machines to name: one button each.

use super::Floor;
use crate::domain::evidence::{Item, Word};
use crate::domain::guide::scene::MachineNow;
use crate::domain::guide::{Command, Refusal};
use crate::domain::ids::{MachineId, PersonId};
use crate::kitchen::filter::{Fit, fit};
use crate::kitchen::{Order, Refused};
use crate::nodes;
use crate::ui::bench::Trouble;
use crate::ui::node::{Node, el, several};
use crate::ui::parts::answer_button;
use crate::words::screens::job::{JobSay, machine_holding, say};
use crate::words::wrong_days;

/// Everybody who works here; after a starter, everybody who may stand beside.
pub fn people(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let named = floor.person.get();
    let starter = named.filter(|person| matches!(standing(floor, *person, None), Fit::BesideSupervisor(_)));
    let people: Vec<(PersonId, String)> = match starter {
        Some(starter) => beside(floor, starter),
        None => floor.bench.look(|kitchen, now| {
            let people = kitchen.scene(now).people;
            people.into_iter().map(|(p, _)| (p.person, p.initials)).collect()
        }),
    };
    let chosen = if starter.is_some() {
        floor.supervisor.get()
    } else {
        named
    };
    let buttons = several(people.into_iter().map(|(id, initials)| {
        let testid = format!("person-{initials}");
        answer_button(initials, chosen == Some(id), testid, move || match starter {
            Some(starter) => name_supervisor(floor, starter, id),
            None => name_person(floor, id),
        })
    }));
    let head = starter.map(|_| el("h2").class("picks-head").text(say(JobSay::WhoBeside, lang)));
    nodes![head, buttons]
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
        Fit::BesideSupervisor(why) if beside(floor, person).is_empty() => refused(floor, person, why),
        Fit::BesideSupervisor(_) => floor.person.set(Some(person)),
        Fit::No(why) => refused(floor, person, why),
    }
}

/// Why this person cannot stand at the pans, said at once.
fn refused(floor: Floor, person: PersonId, why: Refusal) {
    let command = Command::Who {
        person,
        supervisor: None,
    };
    floor.bench.trouble.set(Some(Trouble {
        why: Refused::Guide(why),
        order: Order::Guide(command),
    }));
}

/// Everybody who may stand beside a starter.
fn beside(floor: Floor, starter: PersonId) -> Vec<(PersonId, String)> {
    floor.bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let people = scene.people.iter().map(|(person, _)| person);
        people
            .filter(|p| matches!(fit(kitchen.guide(), &scene, starter, Some(p.person), now), Fit::Yes(_)))
            .map(|p| (p.person, p.initials.clone()))
            .collect()
    })
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
pub fn machines(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let (down, machines): (bool, Vec<(MachineId, String)>) = floor.bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let book = &kitchen.ledger().book;
        let named = |m: &MachineNow| {
            let pans = m.holds.iter().filter_map(|parked| book.pan(parked.pan));
            let pans: Vec<&str> = pans.map(|pan| pan.name.as_str()).collect();
            (m.machine.machine, machine_holding(&m.machine.name, &pans, lang))
        };
        let up = scene.machines.iter().filter(|m| !scene.is_down(m.machine.machine));
        let up: Vec<_> = up.map(named).collect();
        (up.len() < scene.machines.len(), up)
    });
    let down = down.then(|| {
        let words = wrong_days::say(wrong_days::Say::NotTonight, lang);
        el("p").class("sub whole").testid("machine-down").text(words)
    });
    let chosen = floor.machine.get();
    let buttons = (1..).zip(machines).map(|(n, (id, name))| {
        let press = move || {
            floor.machine.set(Some(id));
            floor
                .ask
                .touch(|asking, run, now| asking.named(Item::Machine, Word::Ready, run, now));
        };
        answer_button(name, chosen == Some(id), format!("machine-{n}"), press)
    });
    nodes![down, several(buttons)]
}
