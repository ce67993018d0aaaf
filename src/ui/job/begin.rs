//! Who does a light-up or a lock-up: the first named opens it, another goes on with it; and STOP with nothing in hand.

use super::page::{JobPage, to_today};
use super::people::{everybody, named};
use crate::domain::facts::job::JobKind;
use crate::domain::ids::PersonId;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::node::{Act, Element, Tell, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::run::job_name;
use crate::words::screens::day::{self, DaySay};
use crate::words::screens::job::{self, JobSay};

/// The page that opens one of the day's two jobs, or with a way `back` names who goes on with it: a press on a name goes
/// on, so none is drawn as pressed already.
#[must_use]
pub fn begin_day(bench: Bench, what: JobKind, back: Option<Act>, on_named: Tell<PersonId>) -> Element {
    let asked = day::say(DaySay::WhoDoesIt, bench.lang);
    begin_by(bench, what, asked, back, everybody(bench, None, on_named))
}

/// The same once a starter is named, with those who may stand beside.
#[must_use]
pub fn begin_beside(
    bench: Bench,
    what: JobKind,
    fit: Vec<(PersonId, String)>,
    back: Option<Act>,
    on_named: Tell<PersonId>,
) -> Element {
    let asked = job::say(JobSay::WhoBeside, bench.lang);
    begin_by(bench, what, asked, back, named(fit, None, on_named))
}

fn begin_by(bench: Bench, what: JobKind, asked: &'static str, back: Option<Act>, names: Element) -> Element {
    let lang = bench.lang;
    let way = match back {
        Some(back) => button(Rank::Plain, job::say(JobSay::Back, lang), "back", back),
        None => to_today(lang),
    };
    let holds = nodes![
        el("p").class("job-text").text(day::begin_text(what, lang)),
        el("h2").text(asked),
        names,
        el("p").class("soft").text(job::say(JobSay::WrongName, lang)),
    ];
    JobPage::new("begin", job_name(what, lang), way, holds).draw(bench)
}

/// The quiet way to name somebody else.
#[must_use]
pub fn another_person(lang: Lang, rank: Rank, other: Act) -> Element {
    button(rank, job::say(JobSay::AnotherPerson, lang), "another-person", other)
}

/// STOP while no heat is in hand: nothing is to be made safe, and there are ways out.
#[must_use]
pub fn paused_day(bench: Bench, back: Act, other: Act) -> Element {
    let lang = bench.lang;
    let ways = nodes![
        button(Rank::First, job::say(JobSay::Back, lang), "back", back),
        another_person(lang, Rank::Second, other),
        button(Rank::Second, job::say(JobSay::LeaveOpen, lang), "leave-open", || {
            screen::go(Screen::Today)
        }),
    ];
    let holds = el("p").class("job-text").text(day::say(DaySay::PausedText, lang));
    JobPage::new("paused", job::say(JobSay::Paused, lang), ways, holds).draw(bench)
}
