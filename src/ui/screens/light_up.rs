//! Light-up: each pan looked at, its level read, then heat; set fat through its melt.

use leptos::prelude::*;

use crate::domain::day_jobs::{Command, Stage};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::procedure::{Block, Step};
use crate::kitchen::day::{self, LightNow, LightRow};
use crate::kitchen::{Order, Refused, alarm};
use crate::ui::bench::{Bench, Trouble, use_bench};
use crate::ui::old_job::ask::{AskParts, ask};
use crate::ui::old_job::begin::{begin_day, paused_day};
use crate::ui::old_job::desk::{Answered, AskDesk};
use crate::ui::old_job::frame::Around;
use crate::ui::old_job::hold::HoldPage;
use crate::ui::old_job::page::JobPage;
use crate::ui::old_job::why::{WhySheet, why_button};
use crate::ui::old_job::{fresh_id, watch};
use crate::ui::old_parts::{Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::oil::fat_name;
use crate::words::run::{job_name, pan_title};
use crate::words::screens::day::{DaySay, next_look, say, stage_line};
use crate::words::steps::block_name;

/// What the parts of this screen share.
#[derive(Clone, Copy)]
struct Range {
    bench: Bench,
    now: RwSignal<LightNow>,
    in_hand: RwSignal<Option<PanId>>,
    ask: AskDesk,
    paused: RwSignal<bool>,
    why: RwSignal<Option<&'static Step>>,
}

impl Range {
    /// Works out what is shown; the gate on screen stays as answered unless something moved.
    fn look(self, anew: bool) {
        let in_hand = self.in_hand.get_untracked();
        let seen = self
            .bench
            .look(|kitchen, now| day::light_now(kitchen.day_jobs(), &kitchen.scene(now), in_hand, now));
        if !anew && self.now.with_untracked(|now| *now == seen) {
            return;
        }
        let gate = match &seen {
            LightNow::Found(_, gate) | LightNow::Pan(_, gate) => Some(gate.clone()),
            LightNow::Closed | LightNow::Pans | LightNow::Shut(..) => None,
        };
        self.ask.put(gate, None);
        self.paused.set(false);
        self.now.set(seen);
    }

    fn take(self, pan: Option<PanId>) {
        self.in_hand.set(pan);
        self.look(true);
    }

    fn send(self, command: Command) {
        let range = self;
        self.bench.send_then(Order::Day(command), move |entries| {
            let ended = entries
                .iter()
                .any(|e| matches!(&e.fact, Fact::Job(job) if job.event == JobEvent::Ended));
            if ended
                && range
                    .bench
                    .look(|kitchen, _| kitchen.day_jobs().state().light.is_none())
            {
                screen::go(Screen::Today);
            }
            range.let_go_when_waiting();
            range.look(true);
        });
    }

    /// A pan that is lit, left low, or melting until its next look leaves the hands free for another.
    fn let_go_when_waiting(self) {
        let Some(pan) = self.in_hand.get_untracked() else {
            return;
        };
        let free = self.bench.look(|kitchen, now| {
            let rows = day::light_rows(kitchen.day_jobs(), &kitchen.scene(now), now);
            let row = rows.into_iter().find(|row| row.pan == pan);
            row.is_none_or(|row| match row.stage {
                Stage::Lit | Stage::LeftLow => true,
                Stage::Melting => row.look_s.is_some_and(|s| s > 0),
                Stage::Look | Stage::LowTag | Stage::MeltLow | Stage::MeltFull | Stage::On | Stage::MakeSafe => false,
            })
        });
        if free {
            self.in_hand.set(None);
        }
    }

    fn answered(self, answered: Answered) {
        let Answered { step, evidence, .. } = answered;
        match self.now.get_untracked() {
            LightNow::Found(lock_up, _) => {
                let light = self.bench.look(|kitchen, _| kitchen.day_jobs().state().light.clone());
                let who = light.and_then(|light| light.who).or_else(|| self.bench.me());
                if let Some(who) = who {
                    self.send(Command::Looked { lock_up, who, evidence });
                }
            }
            LightNow::Pan(pan, _) => self.send(Command::Light { pan, step, evidence }),
            LightNow::Closed | LightNow::Pans | LightNow::Shut(..) => {}
        }
    }

    /// STOP: heat off under the pan in hand; without one, a way out.
    fn stop(self) {
        match self.now.get_untracked() {
            LightNow::Pan(pan, _)
                if self.bench.look(|kitchen, _| {
                    let light = kitchen.day_jobs().state().light.as_ref();
                    light.is_some_and(|light| light.pans.contains_key(&pan))
                }) =>
            {
                self.send(Command::HeatOff { pan });
            }
            _ => self.paused.set(true),
        }
    }

    fn on_stop(self) -> Callback<()> {
        Callback::new(move |()| self.stop())
    }
}

/// Light-up.
#[component]
pub fn LightUp() -> impl IntoView {
    let bench = use_bench();
    watch::keep_lit(bench);
    watch::ring(bench, |kitchen, now| alarm::of_day(kitchen.day_jobs().state(), now));
    let answer = StoredValue::new(None::<Callback<Answered>>);
    let on_done = Callback::new(move |answered| {
        if let Some(answer) = answer.get_value() {
            answer.run(answered);
        }
    });
    let range = Range {
        bench,
        now: RwSignal::new(LightNow::Closed),
        in_hand: RwSignal::new(None),
        ask: AskDesk::new(bench, on_done),
        paused: RwSignal::new(false),
        why: RwSignal::new(None),
    };
    answer.set_value(Some(Callback::new(move |answered| range.answered(answered))));
    range.look(true);
    Effect::new(move |_| {
        bench.read_each_second(|_, _| ());
        untrack(|| range.look(false));
    });
    let key = move || {
        range.now.with(|now| match now {
            LightNow::Closed => "closed",
            LightNow::Pans => "pans",
            LightNow::Shut(..) => "shut",
            LightNow::Found(_, gate) | LightNow::Pan(_, gate) => gate.id().key(),
        })
    };
    let touched = watch::on_touch(bench);
    view! {
        <div class="job" data-testid="screen-light-up" data-step=key on:pointerdown=move |_| touched()>
            {move || draw(range)}
            <WhySheet step=range.why lang=bench.lang />
        </div>
    }
}

fn draw(range: Range) -> AnyView {
    let bench = range.bench;
    let refused = bench.trouble.get().filter(|t| matches!(t.why, Refused::Day(_)));
    if let Some(trouble) = refused {
        let on_read = Callback::new(move |()| {
            bench.trouble.set(None);
            range.look(true);
        });
        return view! { <HoldPage trouble on_read on_stop=Some(range.on_stop()) /> }.into_any();
    }
    if range.paused.get() {
        return paused_day(bench, Callback::new(move |()| range.paused.set(false)));
    }
    match range.now.get() {
        LightNow::Closed => {
            let open = Callback::new(move |who: PersonId| {
                range.send(Command::Open {
                    job: JobId(fresh_id()),
                    what: JobKind::LightUp,
                    who,
                });
            });
            begin_day(bench, JobKind::LightUp, open)
        }
        LightNow::Pans => pans(range),
        LightNow::Found(..) => asked(range, None),
        LightNow::Pan(pan, _) => asked(range, Some(pan)),
        LightNow::Shut(_, why) => {
            let on_read = Callback::new(move |()| range.take(None));
            let trouble = Trouble {
                why: Refused::Day(why),
                order: Order::Day(Command::EndLight),
            };
            view! { <HoldPage trouble on_read on_stop=Some(range.on_stop()) /> }.into_any()
        }
    }
}

fn asked(range: Range, pan: Option<PanId>) -> AnyView {
    let bench = range.bench;
    let lang = bench.lang;
    let Some(asking) = range.ask.asking() else {
        return ().into_any();
    };
    let name = pan.map(|pan| bench.look(|kitchen, _| day::pan_name(kitchen, pan)));
    let others = pan.map(|_| {
        let on_press = Callback::new(move |()| range.take(None));
        view! { <Button label=say(DaySay::OtherPans, lang) rank=Rank::Plain on_press testid="other-pans" /> }
    });
    let aside = view! { {why_button(range.why, &asking, None, lang)} {others} }.into_any();
    let parts = AskParts {
        around: Around::bare(name),
        progress: block_name(Block::LightUp, lang).to_owned(),
        aside,
        picks: None,
        on_stop: range.on_stop(),
    };
    ask(range.ask, &asking, parts)
}

fn pans(range: Range) -> AnyView {
    let bench = range.bench;
    let lang = bench.lang;
    let rows =
        move || bench.read_each_second(|kitchen, now| day::light_rows(kitchen.day_jobs(), &kitchen.scene(now), now));
    let list = move || {
        rows()
            .into_iter()
            .map(|row| {
                let LightRow {
                    pan,
                    name,
                    fat,
                    stage,
                    look_s,
                    empty,
                } = row;
                let state = match (empty, look_s) {
                    (true, _) => say(DaySay::DoNotLight, lang).to_owned(),
                    (false, Some(s)) => format!("{}, {}", stage_line(stage, lang), next_look(s, lang)),
                    (false, None) => stage_line(stage, lang).to_owned(),
                };
                view! {
                    <button
                        type="button"
                        class="pan-pick"
                        class:due=!empty && stage == Stage::Look
                        class:closed=empty
                        disabled=stage == Stage::Lit
                        data-testid=format!("light-{name}")
                        on:click=move |_| range.take(Some(pan))
                    >
                        <b>{pan_title(&name, lang)}</b>
                        <span>{fat_name(fat, lang)}</span>
                        <span class="soft num">{state}</span>
                    </button>
                }
            })
            .collect_view()
    };
    let end = Callback::new(move |()| range.send(Command::EndLight));
    let ways = view! { <Button label=say(DaySay::EndLight, lang) on_press=end testid="end-light" /> }.into_any();
    view! {
        <JobPage
            name=job_name(JobKind::LightUp, lang)
            title=say(DaySay::WhichPan, lang)
            testid="pans"
            on_stop=Some(range.on_stop())
            ways
        >
            <div class="job-list">{list}</div>
        </JobPage>
    }
    .into_any()
}
