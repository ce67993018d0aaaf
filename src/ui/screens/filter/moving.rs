//! While oil moves: a clock that only counts up, STOP, and the answer given after the hand has switched off.

use leptos::prelude::*;

use super::{Floor, asked, pump_is_off};
use crate::domain::facts::run::Pump;
use crate::domain::guide::Run;
use crate::domain::guide::gate::Gate;
use crate::domain::procedure::Timer;
use crate::kitchen::alarm::{RinseLimit, alarm_after_s, rinse_limit};
use crate::kitchen::filter::moving_s;
use crate::ui::job::frame::{Lines, Step};
use crate::ui::old_parts::{AnswerButton, Bar, BigClock};
use crate::words::run::{Say, expected, pump_name, say};
use crate::words::screens::job;
use crate::words::{answers, steps};

/// What the clock is held against.
struct Against {
    /// The bar.
    bar: Bar,
    /// In words.
    words: String,
    /// From when it is over, in seconds.
    over_s: i64,
    /// What is said then.
    over: Say,
}

fn against(gate: &Gate, run: &Run, lang: crate::words::Lang) -> Option<Against> {
    let limit = |most: u16, words, over| Against {
        bar: Bar {
            full: u32::from(most) * 3 / 2,
            usual: Some((u32::from(most) * 2 / 3, u32::from(most))),
        },
        words,
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
pub fn moving(floor: Floor, gate: &Gate, run: Option<&Run>) -> AnyView {
    let lang = floor.bench.lang;
    let (Some(run), Some(asking)) = (run, floor.ask.asking()) else {
        return ().into_any();
    };
    let Some(Against {
        bar,
        words,
        over_s,
        over,
    }) = against(gate, run, lang)
    else {
        return asked::asked(floor, Some(run));
    };
    let around = asked::around(floor, &asking, Some(run));
    let out_by = around.out_by;
    let seconds = Memo::new(move |_| {
        floor.bench.read_each_second(|kitchen, now| {
            let run = kitchen.guide().job().and_then(|job| job.run.as_ref());
            run.map_or(0, |run| moving_s(run, now))
        })
    });
    let is_over = Signal::derive(move || seconds.get() >= over_s);
    let said = move || say(if is_over.get() { over } else { Say::PumpRuns }, lang);
    let lines = Lines {
        progress: pump_name(run.pump, lang).to_owned(),
        say: steps::step_line_for(gate.id(), out_by, lang).to_owned(),
        hazard: None,
        sub: None,
    };
    let middle = view! {
        <BigClock seconds over=is_over bar=bar usual=words label=pump_name(run.pump, lang) />
        <p class="sub job-moving" class:over=is_over role="status" data-testid="moving-says">
            {said}
        </p>
    }
    .into_any();
    let label = answers::moving_ends(out_by, run.pump == Pump::Returning, lang);
    let on_press = Callback::new(move |()| pump_is_off(floor));
    view! {
        <Step around lines middle=Some(middle) on_stop=floor.on_stop()>
            <AnswerButton label strong=true whole=true on_press testid="answer-pump-off" />
        </Step>
    }
    .into_any()
}
