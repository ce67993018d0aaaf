//! A line of the log in words: what happened, in one sentence without its time and its person.

use crate::domain::claim::ClaimKind;
use crate::domain::facts::job::{Grade, JobFact};
use crate::domain::facts::oil::{Age, Measured, Service, Vessel};
use crate::domain::facts::run::RunFact;
use crate::domain::facts::trouble::TroubleFact;
use crate::domain::facts::{Correct, Correction, Fact};
use crate::domain::ids::{MachineId, PanId, PersonId};
use crate::domain::ledger::Book;

use super::facts::{fact_name, job_event_name, run_event_name};
use super::local::theirs;
use super::oil::fat_name;
use super::run::{grade_name, job_name, left_name, pan_name, route_name};
use super::setup::{claim_name, load_name, sign_name};
use super::{Lang, answers, dates, faults, format, holds, rhythm, steps, wrong_days};

/// What happened: "Top-up, pan 2: half a block (6.9 L) of dripping".
#[must_use]
pub fn line(fact: &Fact, book: &Book, lang: Lang) -> String {
    let named = about(fact, book, lang);
    match detail(fact, book, lang) {
        detail if detail.is_empty() => named,
        detail => format!("{named}: {detail}"),
    }
}

/// The kind and the pan: "Top-up, pan 2".
#[must_use]
pub fn about(fact: &Fact, book: &Book, lang: Lang) -> String {
    let name = match fact {
        Fact::Job(f) => job_name(f.what, lang),
        Fact::Trouble(f) => wrong_days::name(f.what, lang),
        _ => fact_name(fact, lang),
    };
    match crate::domain::ledger::pans(fact) {
        [Some(pan), _] => format!("{name}, {}", pan_of(book, pan, lang)),
        [None, _] => name.to_owned(),
    }
}

/// What was said of it, without kind and pan; empty where nothing was.
#[must_use]
pub fn detail(fact: &Fact, book: &Book, lang: Lang) -> String {
    let Lang::En = lang;
    let amount = |a| format::amount(a, lang);
    match fact {
        Fact::Kitchen(f) => f.name.clone(),
        Fact::Person(f) => f.initials.clone(),
        Fact::Pan(_) => String::new(),
        Fact::Machine(f) => f.name.clone(),
        Fact::Instrument(f) => f.name.clone(),
        Fact::Fill(f) => {
            let age = match f.age {
                Age::Fresh => "fresh".to_owned(),
                Age::Since(day) => format!("fresh on {}", dates::date(day, lang)),
                Age::Unknown => "age not known".to_owned(),
            };
            format!(
                "{} of {}, {age}",
                amount(f.amount),
                format::first_low(fat_name(f.fat, lang))
            )
        }
        Fact::TopUp(f) => format!("{} of {}", amount(f.amount), format::first_low(fat_name(f.fat, lang))),
        Fact::PartChange(f) => format!("{} out, {} fresh in", amount(f.out), amount(f.fresh)),
        Fact::Move(f) => match (f.from, f.to) {
            (Vessel::Machine(machine), _) => format!("{} out of {}", amount(f.arrived), machine_of(book, machine)),
            (_, Vessel::Machine(machine)) => format!("{} into {}, parked", amount(f.out), machine_of(book, machine)),
            (_, Vessel::Pan(pan)) => format!("{} into {}", amount(f.arrived), pan_of(book, pan, lang)),
        },
        Fact::OilChange(f) => format!("{} out, because: {}", amount(f.amount), theirs(&f.reason)),
        Fact::Service(f) => service(f, lang),
        Fact::PanJob(f) if f.of == f.pan => "its own again".to_owned(),
        Fact::PanJob(f) => rhythm::job_of(&pan_of(book, f.of, lang), f.food, lang),
        Fact::Closed(f) => rhythm::days_and_why(f, lang),
        Fact::Reading(f) => {
            let with = f.instrument.and_then(|id| book.instrument(id));
            with.map_or_else(
                || reading(f.value, lang),
                |tool| format!("{}, by {}", reading(f.value, lang), tool.name),
            )
        }
        Fact::Sign(f) => joined(sign_name(f.sign, lang), f.text.as_deref().map(theirs).as_deref()),
        Fact::Note(f) => theirs(&f.text).into_owned(),
        Fact::ClaimLost(f) => promise(f.what, &f.why, f.basis.as_deref(), lang),
        Fact::ClaimRestored(f) => promise(f.what, &f.why, f.basis.as_deref(), lang),
        Fact::Correct(f) => correction(f, book, lang),
        Fact::Job(f) => job(f, lang),
        Fact::Run(f) => run(f, lang),
        Fact::RunNoted(f) => {
            let with = f.machine.map(|id| machine_of(book, id));
            let how = grade_name(Some(f.how), lang);
            [
                Some(how.to_owned()),
                f.why.as_deref().map(|why| theirs(why).into_owned()),
                with,
            ]
            .into_iter()
            .flatten()
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join(", ")
        }
        Fact::MachineCleaned(f) => format!(
            "{}, {}, by {}",
            machine_of(book, f.machine),
            theirs(&f.how),
            who(book, f.by)
        ),
        Fact::AllergensChecked(f) => f
            .why
            .as_deref()
            .map_or_else(String::new, |why| theirs(why).into_owned()),
        Fact::Practised(f) => format!("{}, {}", who(book, f.person), f.result),
        Fact::Trouble(f) => trouble(f, book, lang),
        Fact::Newer(f) => format!("{}{}{}", f.kind, format::NBSP, f.v),
    }
}

/// A measured value with its unit: "18.5 %".
#[must_use]
pub fn measured(value: Measured) -> String {
    match value {
        Measured::Polar(share) | Measured::Ffa(share) => format::percent(share),
        Measured::Acid(value) => format::acid_value(value),
        Measured::Temp(temp) | Measured::Smoke(temp) => format::temp(temp),
    }
}

/// A correction: why, and what it says.
#[must_use]
pub fn correction(correct: &Correct, book: &Book, lang: Lang) -> String {
    let Lang::En = lang;
    let said = match &correct.how {
        Correction::Void => "it did not happen".to_owned(),
        Correction::Amend { fact: Some(fact), .. } => format!("now {}", detail(fact, book, lang)),
        Correction::Amend { fact: None, .. } => "another time".to_owned(),
    };
    format!("{said}, because: {}", theirs(&correct.why))
}

/// Who did it, by initials.
#[must_use]
pub fn who(book: &Book, id: PersonId) -> String {
    book.person(id)
        .map_or_else(|| "?".to_owned(), |person| person.initials.clone())
}

/// The steps, answers and marks of one entry of a run or job, a line each, for who unfolds it.
#[must_use]
pub fn evidence(fact: &Fact, lang: Lang) -> Vec<String> {
    let Lang::En = lang;
    match fact {
        Fact::Run(f) => answers::all_seen(&f.evidence, lang),
        Fact::Job(f) => answers::all_seen(&f.evidence, lang),
        Fact::Trouble(f) => answers::all_seen(&f.evidence, lang),
        _ => Vec::new(),
    }
}

/// How long oil moved until an entry that says it has stopped: ", after 74 s".
#[must_use]
pub fn ran(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!(", after {}", format::length(seconds, lang))
}

/// A step of a run or job: "Draw: pump".
#[must_use]
pub fn step(fact: &Fact, lang: Lang) -> String {
    match fact {
        Fact::Run(f) => format!("{}: {}", steps::step_title(f.step, lang), run(f, lang)),
        Fact::Job(f) => f.step.map_or_else(
            || job(f, lang),
            |step| format!("{}: {}", steps::step_title(step, lang), job(f, lang)),
        ),
        _ => String::new(),
    }
}

/// How a run was left, or that it is open, in the words of the log.
#[must_use]
pub fn run_ended(left: Option<crate::domain::facts::run::Left>, lang: Lang) -> &'static str {
    let Lang::En = lang;
    left.map_or("still open", |left| left_name(left, lang))
}

/// A filter job that is over and filtered no pan, in the words of the log.
#[must_use]
pub const fn nothing_filtered(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "ended, nothing filtered"
}

/// How a run was done: "Hot, by closed machine".
#[must_use]
pub fn run_route(fact: &RunFact, lang: Lang) -> &'static str {
    route_name(fact.route, lang)
}

fn run(f: &RunFact, lang: Lang) -> String {
    let event = run_event_name(f.event, lang);
    let fault = f.fault.map(|fault| faults::fault_name(fault, lang));
    let left = f.left.map(|left| left_name(left, lang));
    joined(event, fault.or(left))
}

fn job(f: &JobFact, lang: Lang) -> String {
    let event = match f.how {
        Some(how @ (Grade::Unguided | Grade::NotDone)) => grade_name(Some(how), lang),
        None => job_event_name(f.event, lang),
    };
    let hold = f.hold.map(|hold| holds::hold_name(hold, lang));
    joined(event, hold.or(f.why.as_deref().map(theirs).as_deref()))
}

/// What was said of a trouble, with the machine and whoever mended it.
fn trouble(f: &TroubleFact, book: &Book, lang: Lang) -> String {
    let machine = f.machine.map(|id| machine_of(book, id));
    let said = joined(wrong_days::event(f.event, lang), machine.as_deref());
    joined(&said, f.text.as_deref().map(theirs).as_deref())
}

fn service(f: &Service, lang: Lang) -> String {
    let Lang::En = lang;
    if f.fry.get() == 0 {
        return "not used".to_owned();
    }
    format!(
        "{}, {}",
        format::hours(f.fry, lang),
        format::first_low(load_name(f.load, lang))
    )
}

fn reading(value: Measured, lang: Lang) -> String {
    let Lang::En = lang;
    let what = match value {
        Measured::Polar(_) => "polar compounds",
        Measured::Ffa(_) => "free fatty acids",
        Measured::Acid(_) => "acid value",
        Measured::Temp(_) => "oil at",
        Measured::Smoke(_) => "smokes from",
    };
    format!("{what} {}", measured(value))
}

/// A claim lost or restored, why, and on what basis.
fn promise(what: ClaimKind, why: &str, basis: Option<&str>, lang: Lang) -> String {
    let Lang::En = lang;
    let name = claim_name(what, lang);
    if why.is_empty() {
        return format!("{name}, why not said yet");
    }
    let basis = basis.filter(|basis| *basis != why).map(theirs);
    joined(&format!("{name}, because: {}", theirs(why)), basis.as_deref())
}

fn joined(first: &str, more: Option<&str>) -> String {
    match more.map(str::trim).filter(|more| !more.is_empty()) {
        Some(more) => format!("{first}, {more}"),
        None => first.to_owned(),
    }
}

fn pan_of(book: &Book, pan: PanId, lang: Lang) -> String {
    pan_name(book.pan(pan).map_or("?", |p| p.name.as_str()), lang)
}

fn machine_of(book: &Book, machine: MachineId) -> String {
    book.machine(machine).map_or_else(|| "?".to_owned(), |m| m.name.clone())
}
