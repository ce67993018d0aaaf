//! A gate of the filter job on screen, with what stands around it.

use super::{Floor, Over, heater, picks};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::{Place, Pump};
use crate::domain::facts::setup::OutBy;
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::guide::Run;
use crate::domain::guide::asking::Asking;
use crate::domain::guide::gate::QuestionKind;
use crate::domain::guide::state::Phase;
use crate::domain::procedure::{StepId, Timer};
use crate::kitchen::alarm::Urgency;
use crate::kitchen::filter;
use crate::nodes;
use crate::ui::cards::use_cards;
use crate::ui::job::ask::{AskParts, ask, asks_second};
use crate::ui::job::frame::{Around, Picture};
use crate::ui::job::watch;
use crate::ui::job::why::why_button;
use crate::ui::node::Node;
use crate::ui::parts::{Rank, button};
use crate::words::own_words::own_words;
use crate::words::run::{Say, place_in_block, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::steps::block_name;
use crate::words::wrong_days;

/// The gate's screen.
pub fn asked(floor: Floor, run: Option<&Run>) -> Node {
    let Some(asking) = floor.ask.asking() else {
        return Node::Nothing;
    };
    let picks = match asking.current(run).map(|q| q.kind) {
        Some(QuestionKind::Person) => Some(picks::people(floor)),
        Some(QuestionKind::Machine) => Some(picks::machines(floor)),
        _ => None,
    };
    let parts = AskParts {
        around: around(floor, &asking, run),
        progress: progress(floor, &asking, run),
        aside: aside(floor, &asking, run),
        picks,
        on_stop: floor.on_stop(),
    };
    ask(floor.ask, &asking, parts)
}

/// What stands around a step of this job.
pub fn around(floor: Floor, asking: &Asking, run: Option<&Run>) -> Around {
    let lang = floor.bench.lang;
    let out_by = floor.bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        kitchen.guide().job().map(|job| filter::out_by(job, &scene))
    });
    let picture = run.map(|run| Picture {
        place: run.place,
        pump: run.pump,
        shade: floor
            .bench
            .look(|kitchen, now| filter::shade(kitchen, run.pan.pan.pan, now)),
        alone: None,
    });
    let window = run.map(|run| job::window(run.limits.low, run.limits.high, run.limits.target, lang));
    let level = run
        .and_then(filter::above_mark_percent)
        .map(|percent| job::above_mark(percent, lang));
    let own = asking.current(run).and_then(|question| {
        if let (StepId::Match, Some(run)) = (question.step, run) {
            let kept = &run.pan;
            return Some(job::label_says(&kept.pan.name, kept.pan.fat, &kept.claims, lang));
        }
        let item = match question.kind {
            QuestionKind::Look { item, .. } => Some(item),
            _ => None,
        };
        floor.bench.look(|kitchen, now| {
            let scene = kitchen.scene(now);
            let machine = filter::machine(kitchen.guide().job()?, &scene)?;
            own_words(question.step, item, machine, lang)
        })
    });
    Around {
        pan: run.map(|run| run.pan.pan.name.clone()),
        out_by: out_by.unwrap_or(OutBy::Nozzle),
        picture,
        note: note(floor, asking, run),
        level,
        window,
        own,
    }
}

/// Why everything is looked at again, where it is; how short a draw was, where what is left is looked at.
fn note(floor: Floor, asking: &Asking, run: Option<&Run>) -> Option<String> {
    let lang = floor.bench.lang;
    if let (StepId::Remainder, Some(run)) = (asking.gate().id(), run) {
        let draw = floor
            .bench
            .look(|kitchen, _| filter::place_in_block(kitchen.guide(), StepId::Draw));
        let Some(Timer::Expect { from_s, .. }) = draw.and_then(|(draw, ..)| draw.timer) else {
            return None;
        };
        return filter::short_draw_s(run).map(|seconds| job::short_draw(seconds, from_s, lang));
    }
    let run = run.filter(|_| asking.gate().id() == StepId::LookAgain)?;
    let said = if run.phase == Phase::Asking {
        Say::AreYouThere
    } else if run.pump == Pump::Unknown {
        Say::ResumeText
    } else {
        return None;
    };
    Some(say(said, lang).to_owned())
}

fn progress(floor: Floor, asking: &Asking, run: Option<&Run>) -> String {
    let lang = floor.bench.lang;
    let Some(question) = asking.current(run) else {
        return String::new();
    };
    let place = floor
        .bench
        .look(|kitchen, _| filter::place_in_block(kitchen.guide(), question.step));
    place.map_or_else(String::new, |(step, n, of)| {
        place_in_block(block_name(step.block, lang), n, of, lang)
    })
}

/// The quiet ways aside: why, the warm-up while it runs, what can be wrong.
fn aside(floor: Floor, asking: &Asking, run: Option<&Run>) -> Node {
    let lang = floor.bench.lang;
    let question = asking.current(run);
    let why = why_button(floor.why, asking, run, lang);
    let quiet =
        |words, testid: &'static str, does: Box<dyn Fn() + Send + Sync>| button(Rank::Plain, words, testid, does);
    let alone = question
        .as_ref()
        .is_some_and(|q| q.kind == QuestionKind::Person && asks_second(floor.bench))
        .then(|| {
            button(
                Rank::Plain,
                wrong_days::name(TroubleKind::Alone, lang),
                "alone",
                use_cards().wrong(Some(TroubleKind::Alone)),
            )
        });
    let wrong = run.is_some().then(|| {
        let open = move || floor.over.set(Some(Over::Faults));
        quiet(say(Say::SomethingWrong, lang), "something-wrong", Box::new(open))
    });
    let leave = run
        .filter(|run| run.place != Place::InPan && asking.gate().id() == StepId::LookAgain)
        .map(|_| {
            let leave = move || floor.put_off.update(|p| p.leaving_out = true);
            quiet(job::say(JobSay::LeaveOut, lang), "leave-out", Box::new(leave))
        });
    let leaving = floor.put_off.with(|p| p.leaving_out);
    let sets = floor
        .bench
        .look(|kitchen, _| kitchen.guide().leave_set_gate().is_some());
    let to_set = (sets && !leaving).then(|| {
        let leave = move || floor.put_off.update(|p| p.leaving_out = true);
        quiet(job::say(JobSay::LeaveSet, lang), "leave-set", Box::new(leave))
    });
    let back = leaving.then(|| {
        let back = move || floor.put_off.update(|p| p.leaving_out = false);
        quiet(job::say(JobSay::Back, lang), "back", Box::new(back))
    });
    let sound = question
        .is_some_and(|q| matches!(q.kind, QuestionKind::Look { item: Item::Heard, .. }))
        .then(|| {
            let play = move || watch::play(floor.bench, Urgency::Safety);
            quiet(job::say(JobSay::PlayAgain, lang), "play-sound", Box::new(play))
        });
    let off = asking.seen().is(Item::Heater, Word::Off);
    let warming = (!off).then(|| heater::standing(floor));
    nodes![why, alone, sound, warming, leave, to_set, back, wrong]
}
