//! What if: the forecast drawn again with what is tried, beside the forecast as it is. Nothing tried is written.

use std::rc::Rc;

use super::ahead::{ahead, table};
use super::shown::Shown;
use crate::domain::ids::PanId;
use crate::domain::oil_life::{Knob, OilLife, Trial};
use crate::domain::time::Day;
use crate::kitchen::forecast::Forecast;
use crate::kitchen::what_if::{self, TooHot, Tried};
use crate::ui::bench::Bench;
use crate::ui::node::{Element, Held, Node, Tell, el, live, worked_out};
use crate::ui::parts::{Rank, Stepper, button};
use crate::words::today as said;
use crate::words::what_if::{Say, change_about, knob_at, knob_name, say, turn};
use crate::words::{Lang, oil};

/// What is being tried on a pan, if anything, and what it comes to. Lives as long as the screen.
#[derive(Clone, Copy)]
pub struct Trying {
    trial: Held<Option<Trial>>,
    tried: Held<Option<Tried>>,
}

impl Trying {
    /// Nothing yet.
    pub fn begin(bench: Bench, pan: PanId, day: Held<Day>) -> Self {
        let trial: Held<Option<Trial>> = Held::new(None);
        let tried = worked_out(move || {
            let what = trial.get().filter(|trial| !trial.is_as_it_is())?.what_if();
            let day = day.get();
            bench.read(|kitchen, _| what_if::tried(kitchen.ledger(), pan, day, &what))
        });
        Self { trial, tried }
    }
}

/// The drawing, what is tried on it, and the same as a table.
pub fn section(shown: &Shown, trying: Trying, lang: Lang) -> Element {
    let (line, life) = (Rc::clone(&shown.forecast), Rc::clone(&shown.life));
    let drawing = live(move || {
        let (line, life) = (*line).as_ref().zip((*life).as_ref())?;
        Some(trying.tried.with(|tried| match tried {
            Some(tried) => ahead(&tried.line, &tried.life, Some(line), lang),
            None => ahead(line, life, None, lang),
        }))
    });
    let line = Rc::clone(&shown.forecast);
    let table = live(move || {
        let line = (*line).as_ref()?;
        Some(
            trying
                .tried
                .with(|tried| table(tried.as_ref().map_or(line, |tried| &tried.line), lang)),
        )
    });
    let (life, line) = (Rc::clone(&shown.life), Rc::clone(&shown.forecast));
    let (today, chips_law, heat_logged) = (shown.today, shown.chips_law, shown.heat_logged);
    let controls = shown.trial.map(|usual| {
        let controls = live(move || {
            let as_it_is = (*life).as_ref().zip((*line).as_ref())?;
            let now = trying.trial.get().unwrap_or(usual);
            let too_hot = what_if::too_hot_for_chips(usual, now, heat_logged).filter(|_| chips_law);
            let caution = too_hot.map(|too_hot| match too_hot {
                TooHot::Usual => Say::ChipsLawUsual,
                TooHot::Tried => Say::ChipsLaw,
            });
            Some(controls(trying, now, caution, as_it_is, today, lang))
        });
        let summary = el("summary").testid("what-if-open").text(say(Say::WhatIf, lang));
        el("details")
            .class("what-if")
            .testid("what-if")
            .child(summary)
            .child(controls)
    });
    el("section")
        .testid("ahead")
        .child(drawing)
        .child(controls)
        .child(el("p").class("small soft").text(oil::forecast_caveat(lang)))
        .child(table)
}

fn controls(
    trying: Trying,
    now: Trial,
    caution: Option<Say>,
    (as_it_is, line): (&OilLife, &Forecast),
    today: Day,
    lang: Lang,
) -> Element {
    let knobs = Knob::ALL.map(|knob| {
        let stepper = Stepper {
            label: knob_name(knob, lang).into(),
            value: knob_at(knob, now.at(knob), lang),
            names: [false, true].map(|up| turn(knob, up, lang)),
            turns: [false, true].map(|up| now.turns(knob, up)),
            on_turn: Tell::new(move |up| trying.trial.set(Some(now.turned(knob, up)))),
            testid: testid(knob),
        };
        stepper.draw()
    });
    let tried = trying.tried.with(|tried| {
        tried
            .as_ref()
            .map(|tried| brief(Say::Tried, "tried", &tried.life, &tried.line, today, lang))
    });
    let law = caution.map(|words| el("p").testid("chips-law").text(say(words, lang)));
    let is_tried = tried.is_some();
    let back = button(Rank::Second, say(Say::AsItIs, lang), "as-it-is", move || {
        trying.trial.set(None);
    });
    let trials = el("div")
        .class("trials")
        .attr("role", "status")
        .child(brief(Say::Now, "now", as_it_is, line, today, lang))
        .child(tried);
    el("div")
        .class("what-if-in")
        .child(trials)
        .children(knobs)
        .child(law)
        .child(back.flag("disabled", !is_tried))
        .child(el("p").class("soft").text(say(Say::OnlyTried, lang)))
}

/// A life in a line: "Now 3–5 days · change about 29 November · Keep an eye · score 46". The day goes by the median, so
/// two lines compare where their ranges are open.
fn brief(of: Say, testid: &'static str, life: &OilLife, line: &Forecast, today: Day, lang: Lang) -> Element {
    let days = life.days_left.map(|days| {
        let (number, unit) = said::days_hero(days, lang);
        el("b").text(format!("{number} {unit}"))
    });
    let word = life.word.map(|word| said::word(word, lang).to_owned());
    let score = life.score.map(|score| oil::score(score.now, lang));
    let change = life.days_left.map(|_| change_about(line.change, today, lang));
    let rest = [change, word, score]
        .into_iter()
        .flatten()
        .map(|words| format!(" · {words}"));
    el("p")
        .testid(testid)
        .child(el("span").text(say(of, lang)))
        .text(" ")
        .child(days)
        .children(rest.map(Node::from))
}

const fn testid(knob: Knob) -> &'static str {
    match knob {
        Knob::Temp => "try-temp",
        Knob::Hours => "try-hours",
        Knob::TopUp => "try-top-up",
        Knob::PartChange => "try-part",
    }
}
