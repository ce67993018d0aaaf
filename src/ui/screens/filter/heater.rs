//! The machine's warm-up for solid fat: switching the heater on, the countdown beside other steps, the clock question.

use leptos::prelude::*;

use super::{Floor, Over};
use crate::domain::guide::{Command, Run, Warm};
use crate::domain::procedure::{Block, Hazard, Hold, StepId};
use crate::kitchen::filter::{WarmNow, warm_now};
use crate::ui::job::frame::{Around, Lines, Step};
use crate::ui::job::page::JobPage;
use crate::ui::old_parts::{AnswerButton, Button, Countdown, Rank};
use crate::words::run::clock_answers;
use crate::words::screens::job::{JobSay, say, warm_for, warm_in};
use crate::words::{Lang, hazards, holds, run, steps};

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
        <Step around=Around::bare(None) lines on_stop=floor.on_stop()>
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
        <Step around=Around::bare(run.map(|run| run.pan.pan.name.clone())) lines on_stop=floor.on_stop()>
            <AnswerButton label=yes on_press=right(true) testid="answer-clock-yes" />
            <AnswerButton label=no on_press=right(false) testid="answer-clock-no" />
        </Step>
    }
    .into_any()
}

/// Where the warm-up stands, each second.
fn warm(floor: Floor) -> WarmNow {
    floor
        .bench
        .read_each_second(|kitchen, now| kitchen.guide().job().map_or(WarmNow::Cold, |job| warm_now(job, now)))
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
pub fn standing(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let runs = Memo::new(move |_| !matches!(warm(floor), WarmNow::Cold | WarmNow::AskTime));
    let label = Signal::derive(move || words(warm(floor), lang));
    let open = Callback::new(move |()| floor.over.set(Some(Over::Heater)));
    view! {
        {move || {
            runs.get().then(|| view! { <Button label rank=Rank::Plain on_press=open testid="warm-up" /> })
        }}
    }
    .into_any()
}

/// The heater's page: how long, and that it is off now.
pub fn page(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let seconds = Signal::derive(move || match warm(floor) {
        WarmNow::Running { left_s } | WarmNow::Holding { left_s } => left_s,
        WarmNow::Cold | WarmNow::Ready | WarmNow::AskTime => 0,
    });
    let on = floor
        .bench
        .look(|kitchen, _| kitchen.guide().job().is_some_and(|job| matches!(job.warm, Warm::On(_))));
    let switch = Callback::new(move |()| {
        floor.over.set(None);
        floor.send(Command::Heater(!on));
    });
    let back = Callback::new(move |()| floor.over.set(None));
    let (label, testid) = if on {
        (JobSay::HeaterIsOff, "heater-off")
    } else {
        (JobSay::HeaterIsOn, "heater-on")
    };
    let ways = view! {
        <Button label=say(JobSay::Back, lang) rank=Rank::First on_press=back testid="back" />
        <Button label=say(label, lang) on_press=switch testid />
    }
    .into_any();
    let holds = if on { JobSay::Warming } else { JobSay::StillWarm };
    let in_hand = floor.stage.with_untracked(|(_, run)| run.is_some());
    view! {
        <JobPage
            title=steps::step_title(StepId::WarmUp, lang)
            testid="heater"
            on_stop=in_hand.then(|| floor.on_stop())
            ways
        >
            <Countdown seconds words=say(holds, lang) testid="warm-left" />
            <p class="job-text">{move || words(warm(floor), lang)}</p>
            <p class="job-text">{holds_line(lang)}</p>
        </JobPage>
    }
    .into_any()
}

/// What the warm-up is held to.
const fn holds_line(lang: Lang) -> &'static str {
    holds::hold_opens(Hold::WarmUp, lang)
}
