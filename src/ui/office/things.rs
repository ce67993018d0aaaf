//! What is set up, as lists to change: pans, people, machines, instruments, the limits; who stands at this phone.

use crate::domain::facts::MachineCleaned;
use crate::domain::facts::setup::Person;
use crate::domain::ids::{MachineId, PersonId};
use crate::domain::ledger::Ledger;
use crate::domain::quick::{self, Quick, Said};
use crate::domain::setting_up::{Around, Subject, limit_said};
use crate::kitchen::Order;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Held, Node, Tell, el, live, several};
use crate::ui::parts::{Choice, Field, FieldKind, Rank, button, card};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::new_id;
use crate::words::log::{Office, office};
use crate::words::office::{Line, line};
use crate::words::{Lang, format, forms, kept_for, oil, run, setup};

/// One line of a list.
struct Row {
    id: u128,
    name: String,
    about: String,
}

fn rows(subject: Subject, ledger: &Ledger, off_min: i16, lang: Lang) -> Vec<Row> {
    let book = &ledger.book;
    match subject {
        Subject::Kitchen => Vec::new(),
        Subject::Person => book.people.values().map(|p| person_row(p, lang)).collect(),
        Subject::Pan => {
            let unused = book.pans.values().filter(|p| !p.in_use);
            let all = book.pans_in_use().into_iter().chain(unused);
            let about = |fat, full, in_use: bool| {
                let out = if in_use {
                    String::new()
                } else {
                    format!(", {}", line(Line::OutOfUse, lang))
                };
                format!("{}, {}{out}", oil::fat_name(fat, lang), format::litres(full))
            };
            all.map(|p| Row {
                id: p.pan.0,
                name: run::pan_title(&p.name, lang),
                about: about(p.fat, p.full, p.in_use),
            })
            .collect()
        }
        Subject::Machine => book
            .machines
            .values()
            .map(|m| Row {
                id: m.machine.0,
                name: m.name.clone(),
                about: format!(
                    "{}, {}. {}",
                    setup::out_by_name(m.out_by, lang),
                    format::temp_range(m.low, m.high),
                    kept_for::machine_met(ledger, m.machine, off_min, lang)
                ),
            })
            .collect(),
        Subject::Instrument => book
            .instruments
            .values()
            .map(|i| Row {
                id: i.instrument.0,
                name: i.name.clone(),
                about: setup::measures_name(i.measures, lang).to_owned(),
            })
            .collect(),
    }
}

fn person_row(person: &Person, lang: Lang) -> Row {
    let mut about: Vec<String> = person
        .routes
        .iter()
        .map(|r| forms::route_name(*r, lang).to_owned())
        .collect();
    if about.is_empty() {
        about.push(line(Line::Starter, lang).to_owned());
    }
    if person.by == Some(person.person) {
        about.push(line(Line::Vouches, lang).to_owned());
    }
    Row {
        id: person.person.0,
        name: person.initials.clone(),
        about: about.join(", "),
    }
}

/// The lists, each with a button to add one more. Rows carry the test id `row-<subject>`, buttons `add-<subject>`.
#[must_use]
pub fn things(bench: Bench) -> Node {
    let subjects = [Subject::Pan, Subject::Person, Subject::Machine, Subject::Instrument];
    several(subjects.map(|subject| list(subject, bench)))
}

fn list(subject: Subject, bench: Bench) -> Element {
    let lang = bench.lang;
    let all = live(move || {
        let all = bench.read(|kitchen, now| rows(subject, kitchen.ledger(), now.off_min, lang));
        if all.is_empty() {
            return el("p").class("soft").text(line(Line::NoneYet, lang)).into();
        }
        several(all.into_iter().map(|row| {
            let to = Screen::Edit(subject, row.id);
            el("button")
                .attr("type", "button")
                .class("thing")
                .testid(format!("row-{}", subject.key()))
                .on_press(move || screen::go(to))
                .child(el("b").text(row.name))
                .child(el("span").text(row.about))
        }))
    });
    let strip = (subject == Subject::Machine).then(|| strip_clean(bench));
    let add = button(
        Rank::Second,
        forms::add(subject, lang),
        format!("add-{}", subject.key()),
        move || screen::go(Screen::Edit(subject, new_id())),
    );
    card(format!("list-{}", subject.key()))
        .child(el("h2").text(forms::subject(subject, lang)))
        .child(all)
        .child(strip)
        .child(add)
}

/// A strip-clean being told.
#[derive(Default)]
struct Cleaning {
    open: bool,
    /// The machine's id as text.
    machine: Option<String>,
    /// Who did it, as text; else who stands at this phone.
    by: Option<String>,
    how: String,
}

/// "Strip-cleaned": which machine, and how. Only then is what it has met forgotten.
fn strip_clean(bench: Bench) -> Node {
    let told = Held::new(Cleaning::default());
    live(move || {
        let machines: Vec<_> = bench.read(|kitchen, _| {
            let all = kitchen.ledger().book.machines.values();
            all.map(|m| (hex(m.machine.0), m.name.clone())).collect()
        });
        if machines.is_empty() {
            return Node::Nothing;
        }
        let label = office(Office::StripClean, bench.lang);
        let toggle = button(Rank::Second, label, "strip-clean", move || {
            told.update(|told| told.open = !told.open);
        });
        let form = told.with(|now| now.open.then(|| strip_form(bench, told, now, machines)));
        nodes![toggle, form]
    })
}

fn strip_form(bench: Bench, told: Held<Cleaning>, now: &Cleaning, machines: Vec<(String, String)>) -> Node {
    let lang = bench.lang;
    let which = Choice {
        legend: office(Office::StripClean, lang).into(),
        options: machines,
        chosen: now.machine.clone(),
        on_choose: Tell::new(move |key| told.update(|told| told.machine = Some(key))),
        error: None,
        testid: "strip-machine".into(),
    };
    let by = Choice {
        legend: office(Office::Who, lang).into(),
        options: people(bench),
        chosen: cleaner(bench, now).map(|by| hex(by.0)),
        on_choose: Tell::new(move |key| told.update(|told| told.by = Some(key))),
        error: None,
        testid: "strip-by".into(),
    };
    let how = Field {
        label: line(Line::CleanedHow, lang).into(),
        value: now.how.clone(),
        on_typed: Tell::new(move |typed| told.update(|told| told.how = typed)),
        kind: FieldKind::Text,
        unit: None,
        hint: None,
        error: None,
        testid: "strip-how".into(),
    };
    let ready = now.machine.is_some() && !now.how.trim().is_empty();
    let save = button(Rank::First, line(Line::Cleaned, lang), "strip-save", move || {
        save_cleaned(bench, told);
    });
    nodes![
        el("p").text(office(Office::StripCleanText, lang)),
        which.draw(),
        by.draw(),
        how.draw(),
        save.flag("disabled", !ready),
    ]
}

/// Everybody who works here, by id as text.
fn people(bench: Bench) -> Vec<(String, String)> {
    bench.read(|kitchen, _| {
        let people = kitchen.ledger().book.people.values();
        people.map(|p| (hex(p.person.0), p.initials.clone())).collect()
    })
}

fn cleaner(bench: Bench, told: &Cleaning) -> Option<PersonId> {
    let named = told.by.as_deref().and_then(from_hex).map(PersonId);
    named.or_else(|| bench.me())
}

fn save_cleaned(bench: Bench, told: Held<Cleaning>) {
    let drafts = told.with_untracked(|told| {
        let machine = told.machine.as_deref().and_then(from_hex).map(MachineId)?;
        let by = cleaner(bench, told)?;
        let said = Said {
            what: Quick::MachineCleaned(MachineCleaned {
                machine,
                how: told.how.trim().to_owned(),
                by,
            }),
            who: Some(by),
            at: None,
            sure: false,
        };
        bench
            .look(|kitchen, now| quick::drafts(kitchen.ledger(), said, *now))
            .ok()
    });
    // A machine and words were asked for before the button was awake.
    let Some(drafts) = drafts else { return };
    bench.send_then(Order::Write(drafts), move |_| told.set(Cleaning::default()));
}

/// Who stands at this phone.
#[must_use]
pub fn at_this_phone(bench: Bench) -> Element {
    let chosen = Held::new(bench.me());
    let choice = live(move || {
        let choice = Choice {
            legend: line(Line::AtThisPhone, bench.lang).into(),
            options: people(bench),
            chosen: chosen.get().map(|me| hex(me.0)),
            on_choose: Tell::new(move |key: String| {
                if let Some(me) = from_hex(&key).map(PersonId) {
                    prefs::set_me(me);
                    chosen.set(Some(me));
                }
            }),
            error: None,
            testid: "me".into(),
        };
        choice.draw()
    });
    card("at-this-phone").child(choice)
}

/// An id as the key of an option.
fn hex(id: u128) -> String {
    format!("{id:032x}")
}

fn from_hex(key: &str) -> Option<u128> {
    u128::from_str_radix(key, 16).ok()
}

/// The limits in force, what they rest on, and the kitchen they belong to.
#[must_use]
pub fn limits(bench: Bench) -> Node {
    let lang = bench.lang;
    live(move || {
        bench.read(|kitchen, now| {
            let book = &kitchen.ledger().book;
            let around = Around {
                book,
                today: kitchen.today(now),
            };
            let set_up = book.kitchen.as_ref()?;
            let id = set_up.kitchen.0;
            let said = limit_said(&Subject::Kitchen.filled(id, around)?);
            let change = button(
                Rank::Second,
                forms::add(Subject::Kitchen, lang),
                "edit-kitchen",
                move || screen::go(Screen::Edit(Subject::Kitchen, id)),
            );
            let label = el("b").text(line(Line::Limits, lang)).text(": ");
            let limits = forms::limits(set_up.polar_limit, set_up.acid_limit, lang);
            let card = card("kitchen")
                .child(el("h2").text(set_up.name.clone()))
                .child(el("p").testid("limits").child(label).text(limits))
                .child(
                    el("p")
                        .class("soft")
                        .testid("limits-basis")
                        .text(forms::limit_text(said, lang)),
                )
                .child(change);
            Some(card)
        })
    })
}
