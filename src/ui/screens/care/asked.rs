//! A gate of these jobs on screen, with what stands around it.

use super::{Bay, boil};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::job::JobKind;
use crate::domain::facts::run::{Place, Pump};
use crate::domain::facts::setup::OutBy;
use crate::domain::guide::BY_HAND_MAX;
use crate::domain::guide::asking::Asking;
use crate::domain::guide::gate::QuestionKind;
use crate::domain::lifting::{Zone, help_from_kg};
use crate::domain::procedure::{Block, StepId};
use crate::domain::units::Temp;
use crate::kitchen::care::{self, Care, Turn};
use crate::kitchen::filter;
use crate::nodes;
use crate::ui::job::ask::{AskParts, ask};
use crate::ui::job::frame::{Around, Picture};
use crate::ui::job::why::why_button;
use crate::ui::node::{Element, Node, el, live};
use crate::ui::parts::{Rank, button};
use crate::words::Lang;
use crate::words::run::{Say, say};
use crate::words::screens::care::{self as words, CareSay};
use crate::words::screens::job;
use crate::words::steps::block_name;

/// The gate's screen.
pub fn asked(bay: Bay) -> Node {
    let Some(asking) = bay.ask.asking() else {
        return Node::Nothing;
    };
    let lang = bay.bench.lang;
    let block = match bay.care {
        Care::Job(JobKind::BoilOut) => Block::BoilOut,
        Care::Job(_) | Care::Waste => Block::OilChange,
    };
    let parts = AskParts {
        around: around(bay, &asking),
        progress: block_name(block, lang).to_owned(),
        aside: nodes![
            why_button(bay.why, &asking, None, lang),
            boil_clock(bay, &asking),
            turn(bay, asking.gate().id()),
        ],
        picks: None,
        on_stop: bay.on_stop(),
    };
    ask(bay.ask, &asking, parts)
}

/// The pan by itself, with what is in it.
pub fn picture(bay: Bay) -> Picture {
    bay.bench.look(|kitchen, now| {
        let ledger = kitchen.ledger();
        let place = ledger.in_pan(bay.pan).map_or(Place::InPan, |left| left.place);
        Picture {
            place,
            pump: Pump::Off,
            shade: filter::shade(kitchen, bay.pan, now),
            alone: Some(ledger.contents(bay.pan)),
        }
    })
}

fn around(bay: Bay, asking: &Asking) -> Around {
    let lang = bay.bench.lang;
    let step = asking.gate().id();
    let probes = asking
        .current(None)
        .is_some_and(|question| matches!(question.kind, QuestionKind::Probe { .. }));
    // Whoever reads a probe or chooses a way needs the words more than the drawing; old oil is in no pan.
    let drawn = !probes && !matches!(step, StepId::ChangeHow | StepId::LetOut | StepId::Waste);
    let note = if step == StepId::LookAgain && asking.gate().questions.len() > 2 {
        Some(say(Say::ResumeText, lang).to_owned())
    } else if care::asks_carry(asking) {
        let from_kg = help_from_kg(Zone::Floor, Zone::Elbow);
        Some(words::lifting(bay.load_g(step), from_kg, lang))
    } else {
        None
    };
    Around {
        pan: Some(bay.pan_name()),
        out_by: OutBy::Hand,
        picture: drawn.then(|| picture(bay)),
        note,
        level: (step == StepId::FreshLevel).then(|| words::say(CareSay::FreshLevel, lang).to_owned()),
        window: Some(job::window(Temp::MIN, BY_HAND_MAX, BY_HAND_MAX, lang)),
        own: closed_ways(asking, lang),
    }
}

/// The ways out that this oil cannot go, each with its reason.
fn closed_ways(asking: &Asking, lang: Lang) -> Option<String> {
    let question = asking.current(None)?;
    let QuestionKind::Look {
        item: Item::OutWay,
        answers,
    } = question.kind
    else {
        return None;
    };
    let ways = [Word::Pumped, Word::ByHand, Word::CutOut].into_iter();
    let closed = ways.filter(|way| !answers.iter().any(|answer| answer.word == *way));
    let closed: Vec<&str> = closed.map(|way| words::way_closed(way, lang)).collect();
    (!closed.is_empty()).then(|| closed.join(" "))
}

/// How long the heat has been on, beside a look at the boil.
fn boil_clock(bay: Bay, asking: &Asking) -> Option<Node> {
    (asking.gate().id() == StepId::BoilLook).then(|| {
        live(move || {
            let clock = el("p").class("job-left num").testid("boil-clock");
            boil::seconds(bay).map(|(gone, look)| clock.text(words::heat_on_for(gone, look, bay.bench.lang)))
        })
    })
}

/// The other way on from a step, where there is one.
fn turn(bay: Bay, step: StepId) -> Option<Element> {
    let (say, testid, to) = match (step, bay.turn.get()) {
        (StepId::BoilCool, _) => (CareSay::HeatAgain, "heat-again", Turn::Heat),
        (StepId::BoilHeat, Turn::Heat) => (CareSay::NotHeat, "leave-off", Turn::None),
        (StepId::ChangeOver | StepId::FreshIn | StepId::PackIn, _) => (CareSay::OtherFat, "other-fat", Turn::Fat),
        _ => return None,
    };
    Some(button(
        Rank::Plain,
        words::say(say, bay.bench.lang),
        testid,
        move || bay.turn(to),
    ))
}
