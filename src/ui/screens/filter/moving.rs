//! While oil moves: a clock that only counts up, STOP, and the answer given after the hand has switched off.

use super::{Floor, asked, pump_is_off};
use crate::domain::facts::run::Pump;
use crate::domain::guide::Run;
use crate::domain::guide::gate::Gate;
use crate::domain::procedure::Timer;
use crate::kitchen::alarm::{RinseLimit, alarm_after_s, rinse_limit};
use crate::kitchen::filter::moving_s;
use crate::nodes;
use crate::ui::job::frame::{Lines, Step};
use crate::ui::node::{Node, el, live};
use crate::ui::parts::{Bar, BigClock, answer_button};
use crate::words::run::{Say, expected, pump_name, say};
use crate::words::screens::job;
use crate::words::{Lang, answers, steps};

/// What the clock is held against.
struct Against {
    /// The bar.
    bar: Bar,
    /// In words.
    words: String,
    /// What it counts beyond once it is over, in seconds.
    limit_s: i64,
    /// From when it is over, in seconds.
    over_s: i64,
    /// What is said then.
    over: Say,
}

fn against(gate: &Gate, run: &Run, lang: Lang) -> Option<Against> {
    let limit = |most: u16, words, over| Against {
        bar: Bar {
            full: u32::from(most) * 3 / 2,
            usual: Some((u32::from(most) * 2 / 3, u32::from(most))),
        },
        words,
        limit_s: i64::from(most),
        over_s: i64::from(most),
        over,
    };
    Some(match gate.timer()? {
        Timer::Expect { from_s, to_s } => Against {
            bar: Bar {
                full: u32::from(to_s) * 3 / 2,
                usual: Some((u32::from(from_s), u32::from(to_s))),
            },
            words: expected(from_s, to_s, lang),
            limit_s: i64::from(to_s),
            over_s: alarm_after_s(to_s),
            over: Say::PumpLong,
        },
        Timer::Rinse => match rinse_limit(run) {
            RinseLimit::Most(most) => limit(most, job::rinse_most(most, lang), Say::RinseStopNow),
            RinseLimit::Least(least) => limit(least, job::rinse_least(least, lang), Say::RinseEnough),
        },
    })
}

/// The screen.
pub fn moving(floor: Floor, gate: &Gate, run: Option<&Run>) -> Node {
    let lang = floor.bench.lang;
    let (Some(run), Some(asking)) = (run, floor.ask.asking()) else {
        return Node::Nothing;
    };
    let Some(Against {
        bar,
        words,
        limit_s,
        over_s,
        over,
    }) = against(gate, run, lang)
    else {
        return asked::asked(floor, Some(run));
    };
    let around = asked::around(floor, &asking, Some(run));
    let out_by = around.out_by;
    let pump = run.pump;
    let clock = live(move || {
        let seconds = floor.bench.read_each_second(|kitchen, now| {
            let run = kitchen.guide().job().and_then(|job| job.run.as_ref());
            run.map_or(0, |run| moving_s(run, now))
        });
        let is_over = seconds >= over_s;
        // Past its limit it shows what is over, and beside it how long in all: a plus before the whole would mislead.
        let (shown, in_all) = if is_over {
            (seconds - limit_s, job::in_all(seconds, lang))
        } else {
            (seconds, String::new())
        };
        let clock = BigClock {
            seconds: shown,
            gone: seconds,
            over: is_over,
            bar: Some(bar),
            usual: words.clone().into(),
            until: in_all.into(),
            label: pump_name(pump, lang).into(),
            testid: "clock",
        };
        let says = el("p")
            .class("sub job-moving")
            .class_if("over", is_over)
            .attr("role", "status")
            .testid("moving-says")
            .text(say(if is_over { over } else { Say::PumpRuns }, lang));
        nodes![clock.draw(), says]
    });
    let lines = Lines {
        progress: pump_name(pump, lang).to_owned(),
        say: steps::step_line_for(gate.id(), out_by, lang).to_owned(),
        hazard: None,
        sub: None,
    };
    let label = answers::moving_ends(out_by, pump == Pump::Returning, lang);
    let off = answer_button(label, false, "answer-pump-off", move || pump_is_off(floor));
    // Beside the pan's number, where no quiet button stands now: under the step line it would cost the drawing its room.
    let own = around
        .own
        .clone()
        .map(|words| el("p").class("run-own").testid("own-words").text(words));
    let step = Step {
        middle: clock,
        aside: own.map(Into::into),
        ..Step::new(around, lines, floor.on_stop(), off.class("strong whole"))
    };
    step.draw(floor.bench, gate.id().key().to_owned()).into()
}
