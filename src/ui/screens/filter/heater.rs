//! The machine's warm-up for solid fat: switching the heater on, the countdown beside other steps, the clock question.

use leptos::prelude::*;

use super::Floor;
use crate::domain::facts::setup::OutBy;
use crate::domain::guide::{Command, Run};
use crate::domain::procedure::{Block, Hazard, StepId};
use crate::kitchen::filter::{WarmNow, warm_now};
use crate::ui::job::frame::{Around, Lines, Step};
use crate::ui::parts::{AnswerButton, Button, Countdown, Rank};
use crate::words::run::clock_answers;
use crate::words::screens::job::{JobSay, say};
use crate::words::{hazards, run, steps};

fn bare(run: Option<&Run>) -> Around {
    Around {
        pan: run.map(|run| run.pan.pan.name.clone()),
        out_by: OutBy::Nozzle,
        picture: None,
        note: None,
        level: None,
        window: None,
    }
}

/// The step at which the heater goes on.
pub fn heater(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let lines = Lines {
        progress: steps::block_name(Block::Ready, lang).to_owned(),
        say: steps::step_line(StepId::WarmUp, lang).to_owned(),
        hazard: Some(hazards::hazard_line(Hazard::SetInLine, lang).to_owned()),
        sub: Some(steps::step_detail(StepId::WarmUp, lang).to_owned()),
    };
    let on = Callback::new(move |()| floor.send(Command::Heater(true)));
    let later = Callback::new(move |()| floor.put_off.update(|p| p.heater = true));
    view! {
        <Step around=bare(None) lines on_stop=floor.on_stop()>
            <AnswerButton label=say(JobSay::HeaterIsOn, lang) on_press=on testid="heater-on" />
            <AnswerButton label=say(JobSay::NotNow, lang) on_press=later testid="heater-later" />
        </Step>
    }
    .into_any()
}

/// The clocks disagree: the time the guide takes it to be, and whether that is right.
pub fn ask_time(floor: Floor, run: Option<&Run>) -> AnyView {
    let lang = floor.bench.lang;
    let lines = move || {
        let now = floor.bench.look(|_, now| *now);
        run::clock_question(now.wall, now.off_min, lang)
    };
    let lines = Lines {
        progress: steps::step_title(StepId::WarmUp, lang).to_owned(),
        say: lines(),
        hazard: None,
        sub: Some(run::say(run::Say::ResumeText, lang).to_owned()),
    };
    let [yes, no] = clock_answers(lang);
    let right = move |right| Callback::new(move |()| floor.send(Command::TimeIs(right)));
    view! {
        <Step around=bare(run) lines on_stop=floor.on_stop()>
            <AnswerButton label=yes on_press=right(true) testid="answer-clock-yes" />
            <AnswerButton label=no on_press=right(false) testid="answer-clock-no" />
        </Step>
    }
    .into_any()
}

/// The countdown that stands beside other steps while the machine warms, and the heater's own button.
pub fn standing(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let warm = move || {
        floor
            .bench
            .read_each_second(|kitchen, now| kitchen.guide().job().map_or(WarmNow::Cold, |job| warm_now(job, now)))
    };
    let kind = Memo::new(move |_| std::mem::discriminant(&warm()));
    let seconds = Signal::derive(move || match warm() {
        WarmNow::Running { left_s } | WarmNow::Holding { left_s } => left_s,
        WarmNow::Cold | WarmNow::Ready | WarmNow::AskTime => 0,
    });
    view! {
        {move || {
            kind.track();
            let heater = |on: bool| {
                let (words, testid) = if on {
                    (JobSay::HeaterIsOn, "heater-on")
                } else {
                    (JobSay::HeaterIsOff, "heater-off")
                };
                let on_press = Callback::new(move |()| floor.send(Command::Heater(on)));
                view! { <Button label=say(words, lang) rank=Rank::Plain on_press testid /> }
            };
            match untrack(warm) {
                WarmNow::Cold | WarmNow::AskTime => ().into_any(),
                WarmNow::Running { .. } => {
                    view! {
                        <div class="job-warm">
                            <Countdown seconds words=say(JobSay::Warming, lang) testid="warm-up" />
                            {heater(false)}
                        </div>
                    }
                        .into_any()
                }
                WarmNow::Ready => {
                    view! {
                        <div class="job-warm">
                            <p data-testid="warm-up-over">{say(JobSay::MachineWarm, lang)}</p>
                            {heater(false)}
                        </div>
                    }
                        .into_any()
                }
                WarmNow::Holding { .. } => {
                    view! {
                        <div class="job-warm">
                            <Countdown seconds words=say(JobSay::StillWarm, lang) testid="warm-holds" />
                        </div>
                    }
                        .into_any()
                }
            }
        }}
    }
    .into_any()
}
