//! Between pans: what the last one's filtering did, which pan is next and how, or putting away.

use super::{Floor, heater};
use crate::domain::facts::run::{Form, Left, Plan};
use crate::domain::facts::setup::Pan;
use crate::domain::guide::Command;
use crate::domain::ids::{PanId, RunId};
use crate::domain::ledger::Ledger;
use crate::domain::procedure::Block;
use crate::domain::time::Day;
use crate::kitchen::filter::{self, PanChoice};
use crate::kitchen::{Order, Refused};
use crate::nodes;
use crate::ui::bench::Trouble;
use crate::ui::job::fresh_id;
use crate::ui::job::page::JobPage;
use crate::ui::node::{Element, Held, Node, Tell, el, live};
use crate::ui::parts::{Rank, button, check_row};
use crate::words::run::{form_name, pan_title};
use crate::words::screens::job::{JobSay, Today, pan_line, say};
use crate::words::{oil, steps};

/// What is ticked for the next pan.
#[derive(Clone, Copy)]
struct Next {
    plan: Held<Plan>,
    long: Held<bool>,
}

/// The page.
pub fn choose(floor: Floor) -> Node {
    let bench = floor.bench;
    let lang = bench.lang;
    let (choices, usual, none_done, days) = bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let guide = kitchen.guide();
        let job = guide.job();
        (
            filter::choices(guide, &scene, now),
            job.map(|job| filter::usual_plan(job, &scene)).unwrap_or_default(),
            job.is_none_or(|job| job.done.is_empty()),
            today(kitchen.ledger(), kitchen.today(now)),
        )
    });
    let next = Next {
        plan: Held::new(usual),
        long: Held::new(false),
    };
    let waiting = choices.iter().any(|c| c.comes_back && c.refused.is_none());
    let any_short = choices.iter().any(|c| c.short);
    let list = live(move || {
        let pans = choices.iter().map(|choice| {
            pan(
                floor,
                choice,
                days.iter().find(|(pan, _)| *pan == choice.pan).map(|(_, day)| *day),
                next,
            )
        });
        el("div").class("job-list").children(pans)
    });
    let bring = waiting.then(|| {
        let bring = move || floor.put_off.update(|p| p.bringing_back = true);
        button(Rank::Second, say(JobSay::BringLater, lang), "bring-later", bring)
    });
    let over = if none_done {
        button(Rank::Second, say(JobSay::EndJob, lang), "end-job", move || {
            floor.send(Command::End)
        })
    } else {
        button(Rank::Second, say(JobSay::PutAway, lang), "put-away", move || {
            floor.put_off.update(|p| p.bringing_back = true);
            floor.send(Command::PutAway);
        })
    };
    let holds = nodes![
        finished(floor),
        heater::standing(floor),
        ticks(floor, next, any_short),
        list
    ];
    let page = JobPage::new("choose", say(JobSay::Choose, lang), nodes![bring, over], holds);
    let page = JobPage {
        name: steps::block_name(Block::PumpOut, lang).into(),
        on_stop: Some(floor.on_stop()),
        ..page
    };
    page.draw(bench).into()
}

/// What goes with the next pan.
fn ticks(floor: Floor, next: Next, any_short: bool) -> Node {
    let lang = floor.bench.lang;
    let Next { plan, long } = next;
    let tick = move |words, testid: &'static str, part: fn(&mut Plan) -> &mut bool| {
        let mut now = plan.get();
        let ticked = *part(&mut now);
        let change = Tell::new(move |on| plan.update(|plan| *part(plan) = on));
        check_row(say(words, lang), ticked, testid, change)
    };
    live(move || {
        let every_item = any_short.then(|| {
            let change = Tell::new(move |on| long.set(on));
            check_row(say(JobSay::LongForm, lang), long.get(), "with-long", change)
        });
        el("fieldset")
            .class("job-ticks")
            .child(el("legend").text(say(JobSay::NextRun, lang)))
            .child(tick(JobSay::WithRinse, "with-rinse", |plan| &mut plan.rinse))
            .child(tick(JobSay::WithWipe, "with-wipe", |plan| &mut plan.wipe))
            .child(tick(JobSay::WithSamples, "with-samples", |plan| &mut plan.samples))
            .child(every_item)
    })
}

/// The pans that are due today, and those filtered already.
fn today(ledger: &Ledger, day: Day) -> Vec<(PanId, Today)> {
    let due = ledger.due(day).into_iter().map(|pan| (pan, Today::Due));
    let filtered = |pan: &&Pan| ledger.last_filtered(pan.pan).is_some_and(|done| done.day == day);
    let done = ledger.book.pans_in_use().into_iter().filter(filtered);
    due.chain(done.map(|pan| (pan.pan, Today::Filtered))).collect()
}

fn pan(floor: Floor, choice: &PanChoice, today: Option<Today>, next: Next) -> Element {
    let lang = floor.bench.lang;
    let PanChoice {
        pan,
        ref name,
        fat,
        done,
        comes_back,
        bare,
        ref refused,
        short,
    } = *choice;
    let long = next.long.get();
    let form = if short && !long { Form::Short } else { Form::Long };
    let command = move || Command::Begin {
        run: RunId(fresh_id()),
        pan,
        form,
        plan: next.plan.get_untracked(),
    };
    let why = refused.clone();
    let press = move || match &why {
        None => floor.send(command()),
        Some(why) => floor.bench.trouble.set(Some(Trouble {
            why: Refused::Guide(why.clone()),
            order: Order::Guide(command()),
        })),
    };
    let closed = refused.is_some();
    // Its oil would cool while the machine warms.
    let wait = heater::waits(floor).filter(|_| fat.is_set_at_40c() && !closed);
    let says = match &wait {
        Some(wait) => wait.as_str(),
        None if closed => "",
        None => form_name(form, lang),
    };
    let words = el("span")
        .class("pan-pick-words")
        .child(el("span").text(pan_line(fat, today, done, comes_back, bare, lang)))
        .child(el("span").class("soft").text(says.to_owned()));
    el("button")
        .attr("type", "button")
        .class("pan-pick")
        .class_if("due", today == Some(Today::Due))
        .class_if("closed", closed)
        .testid(format!("begin-{name}"))
        .on_press(press)
        .child(el("b").text(pan_title(name, lang)))
        .child(words)
}

/// What the run just finished did, and why the score stands where it stood.
fn finished(floor: Floor) -> Option<Element> {
    let lang = floor.bench.lang;
    let pan: PanId = floor.finished.get()?;
    let (name, row, left) = floor.bench.look(|kitchen, now| {
        let ledger = kitchen.ledger();
        let left = kitchen
            .guide()
            .job()
            .and_then(|job| job.done.iter().rev().find(|(done, _)| *done == pan))
            .map(|(_, left)| *left);
        let name = ledger.book.pan(pan).map(|pan| pan.name.clone()).unwrap_or_default();
        (name, ledger.filter_streak(pan, kitchen.today(now)), left)
    });
    matches!(left?, Left::Off | Left::Relit | Left::Set).then(|| {
        let pan = el("b").text(pan_title(&name, lang)).text(": ");
        el("details")
            .class("job-done")
            .testid("run-done")
            .child(el("summary").child(pan).text(oil::filtering_did(row, lang)))
            .child(el("p").class("soft").text(oil::filtering_why(lang)))
    })
}
