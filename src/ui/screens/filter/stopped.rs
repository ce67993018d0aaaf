//! Stopped: the make-safe lines for where the oil is right now, what is wrong, and the ways on.

use leptos::prelude::*;

use super::{Floor, Over};
use crate::domain::facts::run::Fault;
use crate::domain::guide::{Command, Run};
use crate::kitchen::filter;
use crate::ui::job::page::JobPage;
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::faults::{fault_first, fault_name, fault_then, set_fat_path};
use crate::words::make_safe::make_safe;
use crate::words::run::{Say, pan_title, say};
use crate::words::screens::job::{self, JobSay};

/// Make safe.
pub fn stopped(floor: Floor, run: Option<&Run>) -> AnyView {
    let lang = floor.bench.lang;
    let Some(run) = run else { return ().into_any() };
    let pan = run.pan.pan.name.clone();
    let mut lines = make_safe(run.place, run.pump, run.heat, &pan, run.machine.0.out_by, lang);
    if let Some(fault) = floor.fault.get() {
        lines.insert(0, fault_first(fault, lang).to_owned());
        lines.push(fault_then(fault, lang).to_owned());
        if fault == Fault::SlowDraw && run.pan.pan.fat.is_set_at_40c() {
            lines.extend(set_fat_path(lang).iter().map(|line| (*line).to_owned()));
        }
    }
    let safe = Callback::new(move |()| {
        floor.fault.set(None);
        floor.send(Command::MadeSafe);
    });
    let wrong = Callback::new(move |()| floor.over.set(Some(Over::Faults)));
    let ways = view! {
        <Button label=say(Say::SafeNow, lang) rank=Rank::First on_press=safe testid="safe-now" />
        <Button label=say(Say::SomethingWrong, lang) on_press=wrong testid="something-wrong" />
        {give_up(floor, run)}
    }
    .into_any();
    let lines = lines.into_iter().map(|line| view! { <li>{line}</li> }).collect_view();
    view! {
        <JobPage pan=short(&pan) name=pan_title(&pan, lang) title=say(Say::MakeSafe, lang) testid="make-safe" ways>
            <ol class="make-safe">{lines}</ol>
        </JobPage>
    }
    .into_any()
}

fn short(pan: &str) -> Option<String> {
    (pan.chars().count() <= 3).then(|| pan.to_owned())
}

fn give_up(floor: Floor, run: &Run) -> Option<AnyView> {
    let lang = floor.bench.lang;
    (!run.drawn).then(|| {
        let on_press = Callback::new(move |()| floor.send(Command::GiveUp));
        view! { <Button label=job::say(JobSay::GiveUp, lang) on_press testid="give-up" /> }.into_any()
    })
}

/// What is wrong, by name.
pub fn faults(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let run = floor.stage.with_untracked(|(_, run)| run.clone());
    let buttons = Fault::ALL
        .iter()
        .map(|fault| {
            let on_press = Callback::new(move |()| {
                floor.fault.set(Some(*fault));
                floor.over.set(None);
                floor.send(Command::Fault(*fault));
            });
            let testid = format!("fault-{}", fault.key());
            view! { <Button label=fault_name(*fault, lang) on_press testid /> }
        })
        .collect_view();
    let back = Callback::new(move |()| floor.over.set(None));
    let give_up = run.as_ref().and_then(|run| give_up(floor, run));
    let ways = view! { <Button label=job::say(JobSay::Back, lang) rank=Rank::Plain on_press=back testid="back" /> };
    let name = run.map_or_else(String::new, |run| pan_title(&run.pan.pan.name, lang));
    view! {
        <JobPage
            name
            title=job::say(JobSay::WhatIsWrong, lang)
            testid="faults"
            on_stop=Some(floor.on_stop())
            ways=ways.into_any()
        >
            <div class="job-list two">{buttons} {give_up}</div>
        </JobPage>
    }
    .into_any()
}

/// STOP while no pan is in hand: nothing moves, and there are ways out of the job.
pub fn paused(floor: Floor) -> AnyView {
    let lang = floor.bench.lang;
    let (none_done, away, waiting) = floor.bench.look(|kitchen, now| {
        let choices = filter::choices(kitchen.guide(), &kitchen.scene(now), now);
        let job = kitchen.guide().job();
        (
            job.is_some_and(|job| job.done.is_empty()),
            job.is_some_and(|job| job.away > 0),
            choices.iter().any(|c| c.comes_back && c.refused.is_none()),
        )
    });
    let back = Callback::new(move |()| floor.over.set(None));
    let bring = waiting.then(|| {
        let on_press = Callback::new(move |()| {
            floor.over.set(None);
            floor.put_off.update(|p| p.bringing_back = false);
        });
        view! { <Button label=job::say(JobSay::Choose, lang) on_press testid="choose-pan" /> }
    });
    let end = none_done.then(|| {
        let on_press = Callback::new(move |()| floor.send(Command::End));
        view! { <Button label=job::say(JobSay::EndJob, lang) on_press testid="end-job" /> }
    });
    let put_away = (!none_done && !away).then(|| {
        let on_press = Callback::new(move |()| floor.send(Command::PutAway));
        view! { <Button label=job::say(JobSay::PutAway, lang) on_press testid="put-away" /> }
    });
    let leave = Callback::new(|()| screen::go(Screen::Today));
    let ways = view! {
        <Button label=job::say(JobSay::Back, lang) rank=Rank::First on_press=back testid="back" />
        {bring}
        {put_away}
        {end}
        <Button label=job::say(JobSay::LeaveOpen, lang) on_press=leave testid="leave-open" />
    }
    .into_any();
    view! {
        <JobPage title=job::say(JobSay::Paused, lang) testid="paused" ways>
            <p class="job-text">{job::say(JobSay::PausedText, lang)}</p>
        </JobPage>
    }
    .into_any()
}
