//! Why a step is there, on request: what it means, what opens its hold, the reason and where that comes from.

use crate::domain::guide::Run;
use crate::domain::guide::asking::Asking;
use crate::domain::procedure::Step;
use crate::nodes;
use crate::ui::cards::use_cards;
use crate::ui::node::{Act, Element, Held, Node, el, live};
use crate::ui::parts::{Rank, Sheet, button};
use crate::words::run::{Say, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{Lang, helper, holds, steps, whys, wrong_days};

/// The sheet. It is open while `step` holds one.
#[must_use]
pub fn why_sheet(step: Held<Option<&'static Step>>, lang: Lang) -> Element {
    let sheet = Sheet {
        open: Box::new(move || step.get().is_some()),
        on_close: Act::new(move || step.set(None)),
        title: say(Say::Why, lang).into(),
        sign: None,
        close: job::say(JobSay::Close, lang).into(),
        testid: "why-sheet",
        holds: live(move || step.get().map(|step| words(step, lang))),
    };
    sheet.draw()
}

fn words(step: &Step, lang: Lang) -> Node {
    let why = whys::why(step.id, lang);
    let opens = step.holds.iter().map(|hold| {
        nodes![
            el("dt").text(holds::hold_title(*hold, lang)),
            el("dd").text(holds::hold_opens(*hold, lang)),
        ]
    });
    let source = el("p").class("soft").text(job::say(JobSay::Source, lang));
    nodes![
        el("p").class("job-why").text(steps::step_detail(step.id, lang)),
        el("p").class("job-why").text(why.reason),
        source.text(": ").text(why.source),
        el("dl").class("job-hold").children(opens),
    ]
}

/// The quiet buttons that open the sheet, and the helper's card, for the question on screen.
#[must_use]
pub fn why_button(open: Held<Option<&'static Step>>, asking: &Asking, run: Option<&Run>, lang: Lang) -> Node {
    let asked = asking.current(run).map(|q| q.step);
    let Some(step) = asking.gate().steps.iter().copied().find(|s| Some(s.id) == asked) else {
        return Node::Nothing;
    };
    let cards = use_cards();
    nodes![
        button(Rank::Plain, say(Say::Why, lang), "why", move || open.set(Some(step))),
        button(Rank::Plain, helper::title(lang), "helper", move || cards
            .helper
            .set(Some(step.id))),
    ]
}

/// The quiet button that opens the list of days that go wrong, where Fire and Burn leave no room for a third.
#[must_use]
pub fn wrong_button(lang: Lang) -> Element {
    button(
        Rank::Plain,
        wrong_days::say(wrong_days::Say::Open, lang),
        "wrong",
        use_cards().wrong(None),
    )
}
