//! Stopped: the make-safe lines for where the oil is right now, what is wrong, and the ways on.

use super::{Floor, Over};
use crate::domain::facts::run::Fault;
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::guide::{Command, Run};
use crate::kitchen::filter;
use crate::nodes;
use crate::ui::cards::use_cards;
use crate::ui::job::page::JobPage;
use crate::ui::node::{Element, Node, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::faults::{fault_first, fault_name, then};
use crate::words::make_safe::make_safe;
use crate::words::run::{Say, pan_title, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::wrong_days;

/// Make safe.
pub fn stopped(floor: Floor, run: Option<&Run>) -> Node {
    let lang = floor.bench.lang;
    let Some(run) = run else { return Node::Nothing };
    let pan = run.pan.pan.name.clone();
    let mut lines = make_safe(run.place, run.pump, run.heat, &pan, run.machine.0.out_by, lang);
    let fault = floor.fault.get();
    if let Some(fault) = fault {
        lines.insert(0, fault_first(fault, lang).to_owned());
    }
    lines.extend(
        then(fault, run.pan.pan.fat, run.place, lang)
            .into_iter()
            .map(str::to_owned),
    );
    let safe = move || {
        floor.fault.set(None);
        floor.send(Command::MadeSafe);
    };
    let wrong = move || floor.over.set(Some(Over::Faults));
    let ways = nodes![
        button(Rank::First, say(Say::SafeNow, lang), "safe-now", safe),
        button(Rank::Second, say(Say::SomethingWrong, lang), "something-wrong", wrong),
        give_up(floor, run),
    ];
    let lines = lines.into_iter().map(|line| el("li").text(line));
    let holds = el("ol").class("make-safe").children(lines);
    let page = JobPage {
        pan: short(&pan),
        name: pan_title(&pan, lang).into(),
        ..JobPage::new("make-safe", say(Say::MakeSafe, lang), ways, holds)
    };
    page.draw(floor.bench).into()
}

fn short(pan: &str) -> Option<String> {
    (pan.chars().count() <= 3).then(|| pan.to_owned())
}

fn give_up(floor: Floor, run: &Run) -> Option<Element> {
    let lang = floor.bench.lang;
    let give_up = move || {
        floor.fault.set(None);
        floor.send(Command::GiveUp);
    };
    (!run.drawn).then(|| button(Rank::Second, job::say(JobSay::GiveUp, lang), "give-up", give_up))
}

/// What is wrong, by name.
pub fn faults(floor: Floor) -> Node {
    let lang = floor.bench.lang;
    let run = floor.stage.with_untracked(|(_, run)| run.clone());
    let buttons = Fault::ALL.iter().map(|fault| {
        let testid = format!("fault-{}", fault.key());
        button(Rank::Second, fault_name(*fault, lang), testid, move || {
            floor.fault.set(Some(*fault));
            floor.over.set(None);
            floor.send(Command::Fault(*fault));
        })
    });
    // What the run has no fault of its own for; the rest is under Trouble.
    let cards = use_cards();
    let more = [
        TroubleKind::PowerCut,
        TroubleKind::MachineDown,
        TroubleKind::CounterOpens,
    ]
    .map(|what| {
        let testid = format!("wrong-{}", what.key());
        button(
            Rank::Second,
            wrong_days::name(what, lang),
            testid,
            cards.wrong(Some(what)),
        )
    });
    let list = el("div").class("job-list two").children(buttons).children(more);
    let list = list.child(run.as_ref().and_then(|run| give_up(floor, run)));
    let back = button(Rank::Plain, job::say(JobSay::Back, lang), "back", move || {
        floor.over.set(None)
    });
    let page = JobPage {
        name: run
            .map_or_else(String::new, |run| pan_title(&run.pan.pan.name, lang))
            .into(),
        on_stop: Some(floor.on_stop()),
        ..JobPage::new("faults", job::say(JobSay::WhatIsWrong, lang), back, list)
    };
    page.draw(floor.bench).into()
}

/// STOP while no pan is in hand: nothing moves, and there are ways out of the job.
pub fn paused(floor: Floor) -> Node {
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
    let way = |rank, words, testid: &'static str, does: Box<dyn Fn() + Send + Sync>| {
        button(rank, job::say(words, lang), testid, does)
    };
    let bring = move || {
        floor.over.set(None);
        floor.put_off.update(|p| p.bringing_back = false);
    };
    let ways = nodes![
        way(
            Rank::First,
            JobSay::Back,
            "back",
            Box::new(move || floor.over.set(None))
        ),
        waiting.then(|| way(Rank::Second, JobSay::Choose, "choose-pan", Box::new(bring))),
        (!none_done && !away).then(|| {
            let put_away = move || floor.send(Command::PutAway);
            way(Rank::Second, JobSay::PutAway, "put-away", Box::new(put_away))
        }),
        none_done.then(|| way(
            Rank::Second,
            JobSay::EndJob,
            "end-job",
            Box::new(move || floor.send(Command::End))
        )),
        way(
            Rank::Second,
            JobSay::LeaveOpen,
            "leave-open",
            Box::new(|| screen::go(Screen::Today))
        ),
    ];
    let text = el("p").class("job-text").text(job::say(JobSay::PausedText, lang));
    JobPage::new("paused", job::say(JobSay::Paused, lang), ways, text)
        .draw(floor.bench)
        .into()
}
