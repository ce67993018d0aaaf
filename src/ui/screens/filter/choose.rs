//! Between pans: what the last one's filtering did, which pan is next and how, or putting away.

use leptos::prelude::*;

use super::{Floor, heater};
use crate::domain::facts::run::{Form, Left, Plan};
use crate::domain::guide::Command;
use crate::domain::ids::{PanId, RunId};
use crate::domain::procedure::Block;
use crate::kitchen::filter::{self, PanChoice};
use crate::kitchen::{Order, Refused};
use crate::ui::bench::Trouble;
use crate::ui::job::fresh_id;
use crate::ui::job::page::JobPage;
use crate::ui::old_parts::{Button, CheckRow};
use crate::words::run::{form_name, pan_title};
use crate::words::screens::job::{JobSay, pan_line, say};
use crate::words::{oil, steps};

/// The page.
pub fn choose(floor: Floor) -> AnyView {
    let bench = floor.bench;
    let lang = bench.lang;
    let (choices, usual, none_done, due) = bench.look(|kitchen, now| {
        let scene = kitchen.scene(now);
        let guide = kitchen.guide();
        let job = guide.job();
        (
            filter::choices(guide, &scene, now),
            job.map(|job| filter::usual_plan(job, &scene)).unwrap_or_default(),
            job.is_none_or(|job| job.done.is_empty()),
            kitchen.ledger().due(kitchen.today(now)),
        )
    });
    let plan = RwSignal::new(usual);
    let long = RwSignal::new(false);
    let waiting = choices.iter().any(|c| c.comes_back && c.refused.is_none());
    let any_short = choices.iter().any(|c| c.short);
    let pans = choices
        .into_iter()
        .map(|choice| {
            let due = due.contains(&choice.pan);
            pan(floor, choice, due, plan, long)
        })
        .collect_view();
    let tick = move |words, get: fn(&Plan) -> bool, set: fn(&mut Plan, bool), testid: &'static str| {
        let checked = Signal::derive(move || plan.with(get));
        let on_change = Callback::new(move |on| plan.update(|plan| set(plan, on)));
        view! { <CheckRow label=say(words, lang) checked on_change testid /> }
    };
    let every_item = any_short.then(|| {
        let on_change = Callback::new(move |on| long.set(on));
        view! { <CheckRow label=say(JobSay::LongForm, lang) checked=long on_change testid="with-long" /> }
    });
    let finished = finished(floor);
    let ways = view! {
        {waiting
            .then(|| {
                let on_press = Callback::new(move |()| floor.put_off.update(|p| p.bringing_back = true));
                view! { <Button label=say(JobSay::BringLater, lang) on_press testid="bring-later" /> }
            })}
        {if none_done {
            let on_press = Callback::new(move |()| floor.send(Command::End));
            view! { <Button label=say(JobSay::EndJob, lang) on_press testid="end-job" /> }.into_any()
        } else {
            let on_press = Callback::new(move |()| {
                floor.put_off.update(|p| p.bringing_back = true);
                floor.send(Command::PutAway);
            });
            view! { <Button label=say(JobSay::PutAway, lang) on_press testid="put-away" /> }.into_any()
        }}
    };
    view! {
        <JobPage
            name=steps::block_name(Block::PumpOut, lang)
            title=say(JobSay::Choose, lang)
            testid="choose"
            ways=ways.into_any()
        >
            {finished}
            {heater::standing(floor)}
            <fieldset class="job-ticks">
                <legend>{say(JobSay::NextRun, lang)}</legend>
                {tick(JobSay::WithRinse, |p| p.rinse, |p, on| p.rinse = on, "with-rinse")}
                {tick(JobSay::WithWipe, |p| p.wipe, |p, on| p.wipe = on, "with-wipe")}
                {tick(JobSay::WithSamples, |p| p.samples, |p, on| p.samples = on, "with-samples")}
                {every_item}
            </fieldset>
            <div class="job-list">{pans}</div>
        </JobPage>
    }
    .into_any()
}

fn pan(floor: Floor, choice: PanChoice, due: bool, plan: RwSignal<Plan>, long: RwSignal<bool>) -> AnyView {
    let lang = floor.bench.lang;
    let PanChoice {
        pan,
        name,
        fat,
        done,
        comes_back,
        refused,
        short,
    } = choice;
    let form = move || if short && !long.get() { Form::Short } else { Form::Long };
    let command = move || Command::Begin {
        run: RunId(fresh_id()),
        pan,
        form: untrack(form),
        plan: plan.get_untracked(),
    };
    let closed = refused.is_some();
    let press = move |_| match refused.clone() {
        None => floor.send(command()),
        Some(why) => floor.bench.trouble.set(Some(Trouble {
            why: Refused::Guide(why),
            order: Order::Guide(command()),
        })),
    };
    view! {
        <button
            type="button"
            class="pan-pick"
            class:due=due
            class:closed=closed
            data-testid=format!("begin-{name}")
            on:click=press
        >
            <b>{pan_title(&name, lang)}</b>
            <span class="pan-pick-words">
                <span>{pan_line(fat, done, comes_back, lang)}</span>
                <span class="soft">{move || if closed { "" } else { form_name(form(), lang) }}</span>
            </span>
        </button>
    }
    .into_any()
}

/// What the run just finished did, and why the score stands where it stood.
fn finished(floor: Floor) -> Option<AnyView> {
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
        view! {
            <details class="job-done" data-testid="run-done">
                <summary>
                    <b>{pan_title(&name, lang)} ": "</b>
                    {oil::filtering_did(row, lang)}
                </summary>
                <p class="soft">{oil::filtering_why(lang)}</p>
            </details>
        }
        .into_any()
    })
}
