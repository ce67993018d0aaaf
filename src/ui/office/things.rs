//! What is set up, as lists to change: pans, people, machines, instruments, the limits; who stands at this phone.

use leptos::prelude::*;

use crate::domain::entry::Draft;
use crate::domain::facts::setup::Person;
use crate::domain::facts::{Fact, MachineCleaned};
use crate::domain::ids::{MachineId, PersonId};
use crate::domain::ledger::Book;
use crate::domain::setting_up::{Around, Subject, limit_said};
use crate::kitchen::Order;
use crate::ui::bench::use_bench;
use crate::ui::old_parts::{Button, Card, Choice, Field, Rank};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};
use crate::ui::set_up::new_id;
use crate::words::log::{Office, office};
use crate::words::office::{Line, line};
use crate::words::{Lang, format, forms, oil, run, setup};

/// One line of a list.
#[derive(Clone, PartialEq, Eq)]
struct Row {
    id: u128,
    name: String,
    about: String,
}

fn rows(subject: Subject, book: &Book, lang: Lang) -> Vec<Row> {
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
                    "{}, {}",
                    setup::out_by_name(m.out_by, lang),
                    format::temp_range(m.low, m.high)
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
#[component]
pub fn Things() -> impl IntoView {
    let subjects = [Subject::Pan, Subject::Person, Subject::Machine, Subject::Instrument];
    subjects.map(|subject| view! { <List subject/> })
}

#[component]
fn List(
    /// Of what.
    subject: Subject,
) -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let all = Memo::new(move |_| bench.read(|kitchen, _| rows(subject, &kitchen.ledger().book, lang)));
    let none = move || {
        all.with(Vec::is_empty)
            .then(|| view! { <p class="soft">{line(Line::NoneYet, lang)}</p> })
    };
    let drawn = move || {
        all.get()
            .into_iter()
            .map(|row| {
                let to = Screen::Edit(subject, row.id);
                view! {
                    <button type="button" class="thing" data-testid=format!("row-{}", subject.key()) on:click=move |_| screen::go(to)>
                        <b>{row.name}</b>
                        <span>{row.about}</span>
                    </button>
                }
            })
            .collect_view()
    };
    view! {
        <Card testid=format!("list-{}", subject.key())>
            <h2>{forms::subject(subject, lang)}</h2>
            {none}
            {drawn}
            {(subject == Subject::Machine).then(|| view! { <StripClean/> })}
            <Button label=forms::add(subject, lang) on_press=move |()| screen::go(Screen::Edit(subject, new_id())) testid=format!("add-{}", subject.key())/>
        </Card>
    }
}

/// "Strip-cleaned": which machine, and how. Only then is what it has met forgotten.
#[component]
fn StripClean() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let open = RwSignal::new(false);
    let machine = RwSignal::new(None::<String>);
    let how = RwSignal::new(String::new());
    let machines = move || {
        bench.read(|kitchen, _| {
            let book = &kitchen.ledger().book;
            let all = book.machines.values();
            all.map(|m| (format!("{:032x}", m.machine.0), m.name.clone()))
                .collect::<Vec<_>>()
        })
    };
    let ready = move || machine.with(Option::is_some) && how.with(|how| !how.trim().is_empty());
    let save = move |()| {
        let chosen = machine
            .get_untracked()
            .and_then(|hex| u128::from_str_radix(&hex, 16).ok());
        let (Some(id), Some(by)) = (chosen, bench.me()) else {
            return;
        };
        let cleaned = MachineCleaned {
            machine: MachineId(id),
            how: how.get_untracked().trim().to_owned(),
            by,
        };
        bench.send_then(
            Order::Write(vec![Draft::now(Some(by), Fact::MachineCleaned(cleaned))]),
            move |_| {
                how.set(String::new());
                machine.set(None);
                open.set(false);
            },
        );
    };
    let any = move || bench.read(|kitchen, _| !kitchen.ledger().book.machines.is_empty());
    move || {
        any().then(|| {
            view! {
                <Button label=office(Office::StripClean, lang) on_press=move |()| open.update(|on| *on = !*on) testid="strip-clean"/>
                {move || open.get().then(|| view! {
                    <p>{office(Office::StripCleanText, lang)}</p>
                    <Choice legend=office(Office::StripClean, lang) options=machines() chosen=machine on_choose=move |key| machine.set(Some(key)) testid="strip-machine"/>
                    <Field label=line(Line::CleanedHow, lang) value=how on_input=move |typed| how.set(typed) testid="strip-how"/>
                    <Button label=line(Line::Cleaned, lang) rank=Rank::First asleep=Signal::derive(move || !ready()) on_press=save testid="strip-save"/>
                })}
            }
        })
    }
}

/// Who stands at this phone.
#[component]
pub fn AtThisPhone() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let chosen = RwSignal::new(bench.me().map(|me| format!("{:032x}", me.0)));
    let people = move || {
        bench.read(|kitchen, _| {
            let people = kitchen.ledger().book.people.values();
            people
                .map(|p| (format!("{:032x}", p.person.0), p.initials.clone()))
                .collect::<Vec<_>>()
        })
    };
    let choose = move |key: String| {
        if let Ok(id) = u128::from_str_radix(&key, 16) {
            prefs::set_me(PersonId(id));
            chosen.set(Some(key));
        }
    };
    view! {
        <Card testid="at-this-phone">
            {move || view! {
                <Choice legend=line(Line::AtThisPhone, lang) options=people() chosen on_choose=choose testid="me"/>
            }}
        </Card>
    }
}

/// The limits in force, what they rest on, and the kitchen they belong to.
#[component]
pub fn Limits() -> impl IntoView {
    let bench = use_bench();
    let lang = bench.lang;
    let shown = move || {
        bench.read(|kitchen, now| {
            let book = &kitchen.ledger().book;
            let around = Around {
                book,
                today: kitchen.today(now),
            };
            let set_up = book.kitchen.as_ref()?;
            let form = Subject::Kitchen.filled(set_up.kitchen.0, around)?;
            let said = limit_said(&form);
            Some((
                set_up.name.clone(),
                forms::limits(set_up.polar_limit, set_up.acid_limit, lang),
                forms::limit_text(said, lang),
                set_up.kitchen.0,
            ))
        })
    };
    move || {
        shown().map(|(name, limits, text, id)| {
            view! {
                <Card testid="kitchen">
                    <h2>{name}</h2>
                    <p data-testid="limits"><b>{line(Line::Limits, lang)}": "</b>{limits}</p>
                    <p class="soft" data-testid="limits-basis">{text}</p>
                    <Button label=forms::add(Subject::Kitchen, lang) on_press=move |()| screen::go(Screen::Edit(Subject::Kitchen, id)) testid="edit-kitchen"/>
                </Card>
            }
        })
    }
}
