//! One pan and its oil: days left, the line it took and will take, and why we say so.

mod ahead;
mod helps;
mod job;
mod shown;
mod tried;
mod why;

use crate::domain::facts::job::JobKind;
use crate::domain::facts::oil::SignKind;
use crate::domain::ids::PanId;
use crate::domain::oil_life::OilLife;
use crate::domain::pan_jobs::Stage;
use crate::kitchen::today;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::frame::{eyebrow, frame};
use crate::ui::node::{Element, Node, el, live, worked_out};
use crate::ui::parts::{Rank, Shade, Tone, button, notice, pan_drawing};
use crate::ui::screen::{self, Screen};
use crate::ui::screens::today::row::{hero, parked_line};
use crate::ui::screens::today::waste;
use crate::words::screens::care::{self, CareSay};
use crate::words::today::{Line, line};
use crate::words::{Lang, kept_for, oil, pan as said_of, run, setup};
use helps::helps;
use job::Doing;
use shown::{Shown, look};
use tried::Trying;
use why::{contradicting, why};

/// One pan and its oil.
#[must_use]
pub fn pan(bench: Bench, pan: PanId) -> Element {
    let lang = bench.lang;
    let day = worked_out(move || bench.read_each_second(|kitchen, now| kitchen.today(now)));
    let shown = worked_out(move || {
        let day = day.get();
        bench.read(|kitchen, _| look(kitchen.ledger(), pan, day, lang))
    });
    let trying = Trying::begin(bench, pan, day);
    let doing = Doing::begin(bench, pan, day);
    let heading = live(move || shown.with(|s| s.as_ref().map(|s| run::pan_title(&s.pan.name, lang))));
    let eyebrow = eyebrow(move || {
        shown.with(|s| {
            s.as_ref().map_or_else(String::new, |s| {
                said_of::pan_eyebrow(oil::fat_name(s.pan.fat, lang), s.fresh_on, lang)
            })
        })
    });
    let holds = live(move || {
        shown.with(|shown| match shown {
            None => el("p").text(line(Line::NoSuchPan, lang)).into(),
            Some(shown) => page(bench, shown, trying, doing),
        })
    });
    el("div")
        .testid("screen-pan")
        .child(frame(Screen::Pan(pan), heading, eyebrow, holds))
}

/// The page of a pan there is.
fn page(bench: Bench, shown: &Shown, trying: Trying, doing: Doing) -> Node {
    let lang = bench.lang;
    let pan = shown.pan.pan;
    let claims = shown.pan.claims.iter().map(|claim| setup::claim_name(*claim, lang));
    let claims: Vec<&str> = claims.collect();
    let claims = (!claims.is_empty()).then(|| el("p").class("claims").text(claims.join(" · ")));
    let log = button(
        Rank::First,
        line(Line::LogSomething, lang),
        "log-something",
        move || {
            screen::go(Screen::Add(pan));
        },
    );
    let lines = shown.pan.parked.iter().map(|parked| parked_line(parked, lang));
    let lines: Vec<String> = lines.collect();
    let parked = (!lines.is_empty()).then(|| {
        let title = el("b").text(line(Line::OilParked, lang));
        el("p")
            .testid("pan-parked")
            .child(title)
            .text(": ")
            .text(lines.join(" "))
    });
    let jobs = care_jobs(bench, pan);
    let kept = button(
        Rank::Second,
        kept_for::line(kept_for::Line::ToHere, lang),
        "kept-for",
        move || {
            screen::go(Screen::KeptFor(pan));
        },
    );
    let log = nodes![log, kept];
    let Some(life) = &*shown.life else {
        let (title, text) = (line(Line::PanIsEmpty, lang), line(Line::PanIsEmptyText, lang));
        let empty = notice(Tone::Danger, title, text, "pan-is-empty");
        return nodes![claims, empty, parked, log, jobs];
    };
    let low = shown.pan.low.then(|| {
        let (title, text) = (line(Line::PanIsLow, lang), line(Line::PanIsLowText, lang));
        notice(Tone::Danger, title, text, "pan-is-low")
    });
    let now = el("div")
        .class("pan-now")
        .child(low)
        .child(parked)
        .child(claims)
        .child(answer(life, &shown.pan, lang))
        .child(contradicting(shown, lang))
        .child(log)
        .child(jobs)
        .child(doing.section(lang));
    let why = el("div")
        .class("pan-why")
        .child(tried::section(shown, trying, lang))
        .child(helps(shown, life, lang))
        .child(why(shown, life, lang))
        .child(runs(&shown.runs, shown.streak, lang));
    el("div").class("two").child(now).child(why).into()
}

/// Oil change and boil-out, to begin or to go on with, and old oil of this pan.
fn care_jobs(bench: Bench, pan: PanId) -> Node {
    let jobs = live(move || {
        let open = bench.read(|kitchen, _| kitchen.pan_jobs().job(pan).map(|job| (job.what, job.stage)));
        let again = open.is_some_and(|(_, stage)| stage == Stage::Pump);
        let again = again.then(|| el("p").class("soft").text(care::say(CareSay::TakeUpAgain, bench.lang)));
        let kinds = [JobKind::OilChange, JobKind::BoilOut].into_iter();
        let kinds = kinds.filter(|kind| open.is_none_or(|(open, _)| open == *kind));
        let buttons = kinds.map(|kind| {
            let label = care::button(kind, open.is_some(), bench.lang);
            button(Rank::Second, label, format!("pan-{}", kind.key()), move || {
                screen::go(screen::of_job(kind, Some(pan)));
            })
        });
        nodes![el("div").class("pan-jobs").children(buttons), again]
    });
    nodes![waste(bench, Some(pan)), jobs]
}

/// Days left, the word, the score.
fn answer(life: &OilLife, pan: &today::PanToday, lang: Lang) -> Element {
    let hero = hero(life.into(), lang);
    let score = life.score.map(|s| oil::score_between(s.now, s.low, s.high, lang));
    let sign = life
        .change_sign
        .map(|(_, sign): (_, SignKind)| oil::change_because(setup::sign_name(sign, lang), lang));
    let number = el("span").class("days-big").text(hero.number);
    let days = el("span").class("days-line").text(hero.before).text(" ").child(number);
    let days = el("p")
        .class("hero-days")
        .child(days)
        .text(" ")
        .child(el("span").text(hero.under));
    el("div")
        .class("pan-hero")
        .testid("pan-hero")
        .child(pan_drawing(Shade::new(pan.shade.unwrap_or(1)), pan.level, ""))
        .child(days)
        .child(el("p").class("hero-word").text(hero.word))
        .child(sign.map(|sign| el("p").class("hero-sign").text(sign)))
        .child(hero.likely.map(|likely| el("p").text(likely)))
        .child(score.map(|score| el("p").class("soft").text(score)))
        .child(el("p").class("soft small").text(oil::score_why(lang)))
}

/// The last filterings, newest first, and what filtering did.
fn runs(runs: &[String], streak: u32, lang: Lang) -> Element {
    let list = if runs.is_empty() {
        el("p").text(line(Line::NoRuns, lang)).into()
    } else {
        let lines = runs.iter().map(|text| el("li").text(text.clone()));
        nodes![
            el("ul").children(lines),
            el("p").text(said_of::row_of_days(streak, lang)),
        ]
    };
    el("section")
        .testid("last-runs")
        .child(el("h2").text(line(Line::LastRuns, lang)))
        .child(list)
        .child(el("p").class("soft").text(oil::filtering_why(lang)))
}
