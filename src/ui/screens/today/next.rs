//! The big card: the one next job, the other jobs small beneath.

use crate::domain::facts::job::JobKind;
use crate::domain::ids::PanId;
use crate::kitchen::today::{Next, Today as Shown};
use crate::nodes;
use crate::ui::node::{Element, Held, Node, el, live, several};
use crate::ui::parts::{Rank, Shade, button, card, pan_drawing};
use crate::ui::screen;
use crate::words::screens::{self, Screen as Title, care, screen as title};
use crate::words::today::{self as words, Line, line};
use crate::words::{Lang, rhythm, run, wrong_days};

/// What a pan is called.
fn name(shown: &Shown, pan: PanId) -> &str {
    let named = shown.pans.iter().find(|p| p.pan == pan);
    named.map_or("?", |p| p.name.as_str())
}

/// Heading and sentence of the next thing.
fn told(shown: &Shown, next: Next, lang: Lang) -> (String, String) {
    let due = if shown.machine_down {
        wrong_days::say(wrong_days::Say::NotTonight, lang).to_owned()
    } else {
        screens::pans_due(&shown.due_names(), lang)
    };
    match next {
        Next::Resume(kind) => {
            let of_pan = shown
                .pan_of(kind)
                .map(|pan| care::job_of_pan(kind, name(shown, pan), lang));
            let heading = of_pan.unwrap_or_else(|| words::open(kind, lang));
            (heading, line(Line::OpenText, lang).to_owned())
        }
        Next::Look => (
            run::job_name(JobKind::LightUp, lang).to_owned(),
            title(Title::LookOwed, lang).to_owned(),
        ),
        Next::Begin(JobKind::Filter) => (run::job_name(JobKind::Filter, lang).to_owned(), due),
        Next::Begin(kind @ JobKind::LightUp) => {
            let text = line(Line::LightUpText, lang).to_owned();
            (run::job_name(kind, lang).to_owned(), text)
        }
        Next::Begin(kind @ JobKind::LockUp) => {
            let text = line(Line::LockUpText, lang).to_owned();
            (run::job_name(kind, lang).to_owned(), text)
        }
        Next::Begin(kind @ (JobKind::OilChange | JobKind::BoilOut)) => {
            (run::job_name(kind, lang).to_owned(), String::new())
        }
        Next::Closed(opens) => (
            rhythm::closed_until(opens, lang),
            rhythm::say(rhythm::Say::ClosedToday, lang).to_owned(),
        ),
        Next::Nothing => (
            line(Line::AllDone, lang).to_owned(),
            line(Line::AllDoneText, lang).to_owned(),
        ),
    }
}

/// The big card. `on_not_done` opens the reasons for not doing it.
pub fn next_job(lang: Lang, shown: Held<Shown>, on_not_done: impl Fn() + Copy + Send + Sync + 'static) -> Element {
    let holds = live(move || {
        shown.with(|shown| {
            let next = shown.next();
            let (heading, text) = told(shown, next, lang);
            let begin = next.job().map(|job| {
                let label = match next {
                    Next::Resume(_) => words::resume(job, lang),
                    Next::Look | Next::Begin(_) | Next::Closed(_) | Next::Nothing => words::begin(job, lang),
                };
                let to = screen::of_job(job, shown.pan_of(job));
                button(Rank::First, label, "begin", move || screen::go(to))
            });
            let put_off = match next {
                Next::Begin(JobKind::Filter) => Some(rhythm::say(rhythm::Say::NotTonight, lang)),
                Next::Begin(_) => Some(line(Line::NotDoneBecause, lang)),
                Next::Resume(_) | Next::Look | Next::Closed(_) | Next::Nothing => None,
            };
            let not_done = put_off.map(|words| button(Rank::Plain, words, "not-done", on_not_done));
            let others = el("div")
                .class("next-others")
                .child(care_jobs(shown, next, lang))
                .child(others(shown, next, lang))
                .child(not_done);
            nodes![
                el("h2").text(heading),
                el("p").text(text),
                due_pans(shown, next),
                begin,
                others,
            ]
        })
    });
    card("next").class("night").child(holds)
}

/// The pans the next filter job is about, small, in the colour of their oil.
fn due_pans(shown: &Shown, next: Next) -> Option<Element> {
    let filter = next.job() == Some(JobKind::Filter);
    let mut due = shown.pans.iter().filter(|p| filter && p.due).peekable();
    due.peek()?;
    let pans = due.map(|pan| {
        let shade = Shade::new(pan.shade.unwrap_or(1));
        pan_drawing(shade, pan.level, super::row::number(&pan.name))
    });
    Some(el("div").class("due-pans").children(pans))
}

/// The jobs that are not the next one: to be begun all the same, gone on with, or done.
fn others(shown: &Shown, next: Next, lang: Lang) -> Node {
    let kinds = JobKind::DAILY.iter().copied().filter(|kind| next.job() != Some(*kind));
    several(kinds.map(|kind| {
        let label = if shown.open.iter().any(|(k, _)| *k == kind) {
            words::resume(kind, lang).to_owned()
        } else if kind == JobKind::Filter && shown.none_filtered {
            words::none_filtered(lang)
        } else if shown.done.contains(&kind) {
            words::recorded(kind, lang)
        } else {
            run::job_name(kind, lang).to_owned()
        };
        button(Rank::Second, label, format!("job-{}", kind.key()), move || {
            screen::go(screen::of_job(kind, None));
        })
    }))
}

/// The other open jobs about single pans.
fn care_jobs(shown: &Shown, next: Next, lang: Lang) -> Node {
    let first = next.job().and_then(|kind| Some((kind, shown.pan_of(kind)?)));
    let rest = shown.care.iter().copied().filter(|open| Some(*open) != first);
    several(rest.map(|(kind, pan)| {
        let name = name(shown, pan);
        let label = care::job_of_pan(kind, name, lang);
        let to = screen::of_job(kind, Some(pan));
        button(Rank::Second, label, format!("job-{}-{name}", kind.key()), move || {
            screen::go(to)
        })
    }))
}
