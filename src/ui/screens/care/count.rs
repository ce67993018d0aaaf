//! How much oil came out or went in, in what it is counted in; and what one person is to lift.

use super::{Bay, pages};
use crate::domain::evidence::Item;
use crate::domain::pan_jobs::Command;
use crate::domain::procedure::StepId;
use crate::domain::quick::{Kind, Slot, parts};
use crate::nodes;
use crate::ui::job::desk::Answered;
use crate::ui::job::draft;
use crate::ui::node::{Node, Tell, el, live};
use crate::ui::parts::{FieldKind, Pad, PadWords, Rank, button};
use crate::ui::screens::add::desk::{Counted, Desk};
use crate::ui::screens::add::fields::{labelled, number_pad, pack, reasons, units};
use crate::words::log::{Office, office};
use crate::words::run::{Say, say};
use crate::words::screens::care::{self as words, CareSay};
use crate::words::screens::job::{self, JobSay};

/// How much, and out of the pan why.
pub fn counted(bay: Bay, answered: Answered) -> Node {
    let lang = bay.bench.lang;
    let Some(fat) = bay.fat() else { return Node::Nothing };
    let fresh = answered.step == StepId::FreshLevel;
    let (kind, title) = if fresh {
        (Kind::Fill, CareSay::HowMuchIn)
    } else {
        (Kind::OilChange, CareSay::HowMuchOut)
    };
    let on_counted = Tell::new(move |counted| send(bay, &answered, counted));
    let desk = Desk::of_job(bay.bench, bay.pan, (kind, fat), on_counted);
    let refused = live(move || {
        let refused = el("p").class("field-error").attr("role", "alert").testid("add-refused");
        desk.refused.get().map(|words| refused.text(words))
    });
    // The form has one line beside its number: the batch of what goes in, the container of what comes out.
    let beside = if fresh {
        office(Office::Batch, lang)
    } else {
        words::say(CareSay::Container, lang)
    };
    let holds = nodes![
        (!fresh).then(|| reasons(desk, kind)),
        labelled(desk, Slot::Batch, beside.into(), FieldKind::Text),
        units(desk),
        refused,
        pack(desk),
        number_pad(desk),
    ];
    page(
        bay,
        "count",
        words::say(title, lang),
        el("div").class("typing").child(holds).into(),
    )
}

fn send(bay: Bay, answered: &Answered, counted: Counted) {
    let Counted { amount, form } = counted;
    let pan = bay.pan;
    let beside = Some(form.batch.trim().to_owned()).filter(|words| !words.is_empty());
    let evidence = answered.evidence.clone();
    let command = if answered.step == StepId::FreshLevel {
        Command::Filled {
            pan,
            evidence,
            amount,
            batch: beside,
        }
    } else {
        Command::Out {
            pan,
            step: answered.step,
            evidence,
            amount,
            reason: form.words,
            container: beside,
        }
    };
    bay.send_counted(command);
}

/// What the heaviest weighs, where one person is to carry it.
pub fn load(bay: Bay, answered: Answered) -> Node {
    let lang = bay.bench.lang;
    let [back, clear, sign, point] = job::pad_keys(lang).map(str::to_owned);
    let on_accept = Tell::new(move |text: String| {
        let grams = parts(&text, 3);
        let Answered { step, evidence, read } = answered.clone();
        bay.say(step, evidence, read, grams);
    });
    let pad = Pad {
        value: draft::open(bay.ask.scope(), Item::Load),
        label: words::say(CareSay::HowHeavy, lang).into(),
        unit: "kg".into(),
        words: PadWords {
            accept: say(Say::Accept, lang).to_owned(),
            back,
            clear,
            sign,
            point,
        },
        fraction: true,
        below_zero: false,
        most: 3,
        prefilled: None,
        on_accept,
        testid: "pad-load".into(),
    };
    page(bay, "load", words::say(CareSay::HowHeavy, lang), pad.draw().into())
}

fn page(bay: Bay, testid: &'static str, title: &'static str, holds: Node) -> Node {
    let back = button(Rank::Plain, job::say(JobSay::Back, bay.bench.lang), "back", move || {
        bay.look(true);
    });
    pages::page(bay, testid, title, back.into(), holds)
}
