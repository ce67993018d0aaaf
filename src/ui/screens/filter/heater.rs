//! The machine's warm-up for solid fat: switching the heater on, the countdown beside other steps, the clock question.

use super::{Floor, Over};
use leptos::prelude::untrack;

use crate::domain::guide::{Command, Refusal, Run, Warm};
use crate::domain::procedure::{Block, Hazard, Hold, StepId};
use crate::kitchen::Refused;
use crate::kitchen::filter::{WarmNow, warm_now};
use crate::nodes;
use crate::ui::bench::Trouble;
use crate::ui::job::frame::{Around, Lines, Step};
use crate::ui::job::page::JobPage;
use crate::ui::node::{Node, el, follow, live, worked_out};
use crate::ui::parts::{Rank, answer_button, button, countdown};
use crate::words::run::clock_answers;
use crate::words::screens::job::{JobSay, say, waits_for_machine, warm_for, warm_in};
use crate::words::{Lang, hazards, holds, run, steps};

/// The step at which the heater goes on.
pub fn heater(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let set = floor
        .bench
        .look(|kitchen, _| kitchen.guide().job().is_some_and(|job| job.set_in_line));
    let set = if set { say(JobSay::SetInLine, lang) } else { "" };
    let detail = steps::step_detail(StepId::WarmUp, lang);
    let lines = Lines {
        progress: steps::block_name(Block::Ready, lang).to_owned(),
        say: say(JobSay::SwitchHeaterOn, lang).to_owned(),
        hazard: Some(hazards::hazard_line(Hazard::SetInLine, lang).to_owned()),
        sub: Some(format!("{set} {detail}").trim_start().to_owned()),
    };
    let on = move || floor.send(Command::Heater(true));
    let later = move || floor.put_off.update(|p| p.heater = true);
    let answers = nodes![
        answer_button(say(JobSay::HeaterIsOn, lang), false, "heater-on", on),
        answer_button(say(JobSay::NotNow, lang), false, "heater-later", later),
    ];
    let step = Step::new(Around::bare(None), lines, floor.on_stop(), answers);
    step.draw(floor.bench, StepId::WarmUp.key().to_owned()).into()
}

/// The clocks disagree: the time the guide takes it to be, and whether that is right.
pub fn ask_time(floor: Floor, run: Option<&Run>) -> Node {
    let lang = floor.bench.lang;
    let now = floor.bench.look(|_, now| *now);
    let lines = Lines {
        progress: steps::step_title(StepId::WarmUp, lang).to_owned(),
        say: run::clock_question(now.wall, now.off_min, lang),
        hazard: None,
        sub: Some(run::say(run::Say::ResumeText, lang).to_owned()),
    };
    let [yes, no] = clock_answers(lang);
    let right = move |right| move || floor.send(Command::TimeIs(right));
    let answers = nodes![
        answer_button(yes, false, "answer-clock-yes", right(true)),
        answer_button(no, false, "answer-clock-no", right(false)),
    ];
    let around = Around::bare(run.map(|run| run.pan.pan.name.clone()));
    let step = Step::new(around, lines, floor.on_stop(), answers);
    step.draw(floor.bench, "time".to_owned()).into()
}

/// Where the warm-up stands, each second.
fn warm(floor: Floor) -> WarmNow {
    floor
        .bench
        .read_each_second(|kitchen, now| kitchen.guide().job().map_or(WarmNow::Cold, |job| warm_now(job, now)))
}

/// Whether the machine was refused because it is still warming.
const fn is_warming(trouble: &Trouble) -> bool {
    matches!(trouble.why, Refused::Guide(Refusal::WarmingUp { .. }))
}

/// That a pan of solid fat had better wait, while the machine warms.
pub fn waits(floor: Floor) -> Option<String> {
    let lang = floor.bench.lang;
    match warm(floor) {
        WarmNow::Running { left_s } => Some(waits_for_machine(left_s, lang)),
        _ => None,
    }
}

/// A refusal with the time that is left now, where it is about time.
pub fn as_it_stands(floor: Floor, mut trouble: Trouble) -> Trouble {
    if is_warming(&trouble)
        && let WarmNow::Running { left_s } = warm(floor)
    {
        trouble.why = Refused::Guide(Refusal::WarmingUp { left_ms: left_s * 1000 });
    }
    trouble
}

/// A machine that has warmed meanwhile refuses nothing more: the refusal goes by itself.
pub fn watch_refusal(floor: Floor) {
    follow(move || {
        let refused = floor
            .bench
            .trouble
            .with(|trouble| trouble.as_ref().is_some_and(is_warming));
        if refused && warm(floor) == WarmNow::Ready {
            untrack(|| floor.trouble_read());
        }
    });
}

fn words(warm: WarmNow, lang: Lang) -> String {
    match warm {
        WarmNow::Cold | WarmNow::AskTime => String::new(),
        WarmNow::Running { left_s } => warm_in(left_s, lang),
        WarmNow::Ready => say(JobSay::MachineWarm, lang).to_owned(),
        WarmNow::Holding { left_s } => warm_for(left_s, lang),
    }
}

/// The countdown that stands beside other steps while the machine warms; it leads to the heater's own page.
pub fn standing(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let runs = worked_out(move || !matches!(warm(floor), WarmNow::Cold | WarmNow::AskTime));
    live(move || {
        runs.get().then(|| {
            live(move || {
                let open = move || floor.over.set(Some(Over::Heater));
                button(Rank::Plain, words(warm(floor), lang), "warm-up", open)
            })
        })
    })
}

/// The heater's page: how long, and that it is off now.
pub fn page(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let on = floor
        .bench
        .look(|kitchen, _| kitchen.guide().job().is_some_and(|job| matches!(job.warm, Warm::On(_))));
    let switch = move || {
        floor.over.set(None);
        floor.send(Command::Heater(!on));
    };
    let (label, testid) = if on {
        (JobSay::HeaterIsOff, "heater-off")
    } else {
        (JobSay::HeaterIsOn, "heater-on")
    };
    let ways = nodes![
        button(Rank::First, say(JobSay::Back, lang), "back", move || floor
            .over
            .set(None)),
        button(Rank::Second, say(label, lang), testid, switch),
    ];
    let waits_for = if on { JobSay::Warming } else { JobSay::StillWarm };
    let left = live(move || {
        let warm = warm(floor);
        let seconds = match warm {
            WarmNow::Running { left_s } | WarmNow::Holding { left_s } => left_s,
            WarmNow::Cold | WarmNow::Ready | WarmNow::AskTime => 0,
        };
        nodes![
            countdown(seconds, say(waits_for, lang), "warm-left"),
            el("p").class("job-text").text(words(warm, lang)),
        ]
    });
    let held_to = el("p").class("job-text").text(holds::hold_opens(Hold::WarmUp, lang));
    let in_hand = floor.stage.with_untracked(|(_, run)| run.is_some());
    let page = JobPage::new(
        "heater",
        steps::step_title(StepId::WarmUp, lang),
        ways,
        nodes![left, held_to],
    );
    let page = JobPage {
        on_stop: in_hand.then(|| floor.on_stop()),
        ..page
    };
    page.draw(floor.bench).into()
}
