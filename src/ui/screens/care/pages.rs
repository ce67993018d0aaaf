//! The pages beside the steps: who begins, the way to the filter job, which fat, STOP and the ways out.

use super::{Bay, Over};
use crate::domain::evidence::Evidence;
use crate::domain::facts::job::JobKind;
use crate::domain::fat::Fat;
use crate::domain::ids::PersonId;
use crate::domain::pan_jobs::{Command, Refusal, Stage};
use crate::domain::procedure::{Block, StepId};
use crate::kitchen::care::{Care, Turn};
use crate::kitchen::{Order, Refused};
use crate::nodes;
use crate::ui::bench::Trouble;
use crate::ui::job::draft;
use crate::ui::job::hold::hold_page;
use crate::ui::job::page::{JobPage, to_today};
use crate::ui::node::{Act, Node, Tell, el};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::oil::fat_name;
use crate::words::pan_refusals::pan_refusal;
use crate::words::run::{self, Say, pan_title};
use crate::words::screens::care::{self as words, CareSay};
use crate::words::screens::job::{self, JobSay};
use crate::words::steps::{block_complete, step_line};
use crate::words::today::open;

/// Nothing of it is open: who begins.
pub fn begin(bay: Bay) -> Node {
    let Care::Job(kind) = bay.care else {
        let lang = bay.bench.lang;
        let page = JobPage::new(
            "closed",
            words::say(CareSay::NoWaste, lang),
            to_today(lang),
            Node::Nothing,
        );
        return page.draw(bay.bench).into();
    };
    if let Some(other) = bay.job().map(|job| job.what) {
        // One job at a time on a pan.
        let lang = bay.bench.lang;
        let on = button(Rank::First, words::button(other, true, lang), "other-job", move || {
            screen::go(screen::of_job(other, Some(bay.pan)));
        });
        let page = JobPage::new("closed", open(other, lang), nodes![on, to_today(lang)], Node::Nothing);
        return page.draw(bay.bench).into();
    }
    let open = Tell::new(move |(who, beside)| bay.open(kind, who, beside));
    bay.who.draw(None, open).into()
}

/// Somebody else goes on.
pub fn who(bay: Bay) -> Node {
    let named = Tell::new(move |(who, supervisor): (PersonId, Option<PersonId>)| {
        bay.send(Command::Who {
            pan: bay.pan,
            who,
            supervisor,
        });
    });
    bay.who.draw(None, named).into()
}

/// A refusal was read: what was asked is asked again. A number that was refused for what it says is typed anew.
pub fn read(bay: Bay) {
    let trouble = bay.bench.trouble.get_untracked();
    bay.bench.trouble.set(None);
    let Some(Trouble { why, order }) = trouble else { return };
    if let Order::Pan(Command::Answer { evidence, .. } | Command::Waste { evidence, .. }) = &order {
        draft::forget(bay.ask.scope(), evidence);
    }
    // What was counted stays on its page.
    if !matches!(why, Refused::Pan(Refusal::TooMuch { .. } | Refusal::AmountNeeded)) {
        bay.look(true);
    }
}

/// The oil leaves by a filter run.
pub fn pump(bay: Bay, running: bool) -> Node {
    let lang = bay.bench.lang;
    let ways = nodes![
        button(Rank::First, words::say(CareSay::ToFilter, lang), "to-filter", || {
            screen::go(Screen::Filter);
        }),
        (!running).then(|| {
            let other = move || bay.turn(Turn::How);
            button(Rank::Second, words::say(CareSay::OtherWay, lang), "other-way", other)
        }),
    ];
    let text = el("p").class("job-text").text(words::say(CareSay::PumpText, lang));
    page(bay, "pump", words::say(CareSay::PumpTitle, lang), ways, text.into())
}

/// Which fat goes in: the pan's own first.
pub fn fats(bay: Bay) -> Node {
    let lang = bay.bench.lang;
    let kept = bay
        .bench
        .look(|kitchen, _| kitchen.ledger().book.pan(bay.pan).map(|pan| pan.fat));
    let choose = move |fat: Fat| move || bay.send(Command::Fresh { pan: bay.pan, fat });
    let own = kept.map(|fat| button(Rank::First, words::as_before(fat, lang), "fat-own", choose(fat)));
    let others = Fat::ALL.iter().copied().filter(|fat| Some(*fat) != kept);
    let others = others.map(|fat| {
        let testid = format!("fat-{}", fat.key());
        button(Rank::Second, fat_name(fat, lang), testid, choose(fat))
    });
    let others = el("details")
        .class("more")
        .child(
            el("summary")
                .testid("other-fats")
                .text(words::say(CareSay::OtherFats, lang)),
        )
        .child(el("p").class("job-text").text(words::say(CareSay::OtherFatText, lang)))
        .child(el("div").class("job-list two").children(others));
    let title = step_line(StepId::FreshFat, lang);
    page(bay, "fat", title, own.into(), others.into())
}

/// Oil was put in without the guide: nothing is left to ask.
pub fn over(bay: Bay) -> Node {
    let lang = bay.bench.lang;
    let end = button(Rank::First, words::say(CareSay::End, lang), "end", move || {
        end_here(bay)
    });
    let text = el("p").class("job-text").text(words::say(CareSay::OverText, lang));
    page(bay, "over", words::say(CareSay::Over, lang), end.into(), text.into())
}

fn end_here(bay: Bay) {
    bay.send(Command::End {
        pan: bay.pan,
        evidence: Evidence::new(),
    });
}

/// The job came to its own end: what stands now, and what comes next.
pub fn done(bay: Bay) -> Node {
    let lang = bay.bench.lang;
    let (block, next, to) = match bay.care {
        Care::Job(JobKind::BoilOut) => (Block::BoilOut, JobKind::OilChange, Screen::OilChange(bay.pan)),
        Care::Job(_) | Care::Waste => (Block::OilChange, JobKind::LightUp, Screen::LightUp),
    };
    let ways = nodes![
        button(Rank::Second, words::button(next, false, lang), "next-job", move || {
            screen::go(to)
        }),
        button(Rank::First, job::say(JobSay::ToToday, lang), "to-today", || {
            screen::go(Screen::Today);
        }),
    ];
    let page = JobPage {
        name: pan_title(&bay.pan_name(), lang).into(),
        ..JobPage::new("done", block_complete(block, lang), ways, Node::Nothing)
    };
    page.draw(bay.bench).into()
}

/// It cannot go on, with the reason.
pub fn shut(bay: Bay, why: Refusal) -> Node {
    let trouble = Trouble {
        why: Refused::Pan(why),
        order: Order::Pan(Command::HeatOff { pan: bay.pan }),
    };
    hold_page(bay.bench, &trouble, Act::new(|| screen::go(Screen::Today)), None)
}

/// STOP with no heat in hand: what makes this pan safe, and the ways out.
pub fn paused(bay: Bay) -> Node {
    let bench = bay.bench;
    let lang = bench.lang;
    let (contents, midway, leave) = bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let jobs = kitchen.pan_jobs();
        let stage = jobs.job(bay.pan).zip(scene.pan(bay.pan));
        let stage = stage.map(|(job, pan)| jobs.stage(job, pan, now));
        (
            kitchen.ledger().contents(bay.pan),
            bay.care == Care::Waste || matches!(stage, Some(Stage::Taking | Stage::Level)),
            jobs.leave_gate(&scene, bay.pan, now),
        )
    });
    let open = bay.care != Care::Waste && bay.job().is_some();
    let closed = leave.as_ref().err().filter(|_| open).map(|why| {
        let why = pan_refusal(why, lang);
        el("p").class("soft").testid("leave-closed").text(why.wrong)
    });
    let leaves = leave.ok().filter(|_| open).map(|gate| {
        let asks = gate.is_some();
        let end = move || if asks { bay.turn(Turn::Leave) } else { end_here(bay) };
        button(Rank::Second, words::say(CareSay::Leave, lang), "leave-pan", end)
    });
    let somebody = open.then(|| {
        let name = move || bay.over.set(Some(Over::Who));
        button(
            Rank::Second,
            words::say(CareSay::SomebodyElse, lang),
            "somebody-else",
            name,
        )
    });
    let ways = nodes![
        button(Rank::First, job::say(JobSay::Back, lang), "back", move || bay
            .look(true)),
        button(Rank::Second, job::say(JobSay::LeaveOpen, lang), "leave-open", || {
            screen::go(Screen::Today);
        }),
        somebody,
        leaves,
        closed,
    ];
    let lines = words::make_safe(contents, midway, lang).iter();
    let lines = lines.map(|line| el("li").text(*line));
    let holds = el("ol").class("make-safe").children(lines);
    let page = JobPage {
        pan: None,
        name: pan_title(&bay.pan_name(), lang).into(),
        ..JobPage::new("paused", run::say(Say::MakeSafe, lang), ways, holds)
    };
    page.draw(bench).into()
}

/// A page that means this pan.
pub fn page(bay: Bay, testid: &'static str, title: &'static str, ways: Node, holds: Node) -> Node {
    let page = JobPage {
        name: pan_title(&bay.pan_name(), bay.bench.lang).into(),
        on_stop: Some(bay.on_stop()),
        ..JobPage::new(testid, title, ways, holds)
    };
    page.draw(bay.bench).into()
}
