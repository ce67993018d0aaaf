//! Light-up: each pan looked at, its level read, then heat; set fat through its melt.

use crate::domain::day_jobs::{Command, Stage};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::procedure::{Block, Step};
use crate::kitchen::day::{self, LightNow, LightRow};
use crate::kitchen::{Order, Refused, alarm};
use crate::nodes;
use crate::ui::bench::{Bench, Trouble};
use crate::ui::job::ask::{AskParts, ask};
use crate::ui::job::begin::{AtTheHeat, another_person, paused_day};
use crate::ui::job::desk::{Answered, AskDesk};
use crate::ui::job::frame::Around;
use crate::ui::job::fresh_id;
use crate::ui::job::ground::Ground;
use crate::ui::job::hold::hold_page;
use crate::ui::job::page::JobPage;
use crate::ui::job::why::{why_button, wrong_button};
use crate::ui::node::{Act, Element, Held, Node, Tell, el, live};
use crate::ui::parts::{Rank, button};
use crate::ui::screen::{self, Screen};
use crate::words::Lang;
use crate::words::oil::fat_name;
use crate::words::run::{job_name, pan_title};
use crate::words::screens::day::{DaySay, next_look, say, stage_line};
use crate::words::steps::block_name;
use crate::words::today::{Line, line};

/// What the parts of this screen share.
#[derive(Clone, Copy)]
struct Range {
    bench: Bench,
    now: Held<LightNow>,
    in_hand: Held<Option<PanId>>,
    ask: AskDesk,
    paused: Held<bool>,
    who: AtTheHeat,
    /// Whether somebody else is being named to go on.
    renaming: Held<bool>,
    why: Held<Option<&'static Step>>,
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
        self.renaming.set(false);
        self.who.forget();
        self.now.set(seen);
    }

    fn on_rename(self) -> Act {
        Act::new(move || {
            self.who.forget();
            self.paused.set(false);
            self.renaming.set(true);
        })
    }

    fn open(self, who: PersonId, supervisor: Option<PersonId>) {
        let what = JobKind::LightUp;
        self.send(if self.renaming.get_untracked() {
            Command::Who { what, who, supervisor }
        } else {
            Command::Open {
                job: JobId(fresh_id()),
                what,
                who,
                supervisor,
            }
        });
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

    fn on_stop(self) -> Act {
        Act::new(move || self.stop())
    }
}

/// Light-up.
#[must_use]
pub fn light_up(bench: Bench) -> Element {
    let range = Range {
        bench,
        now: Held::new(LightNow::Closed),
        in_hand: Held::new(None),
        ask: AskDesk::new(bench),
        paused: Held::new(false),
        who: AtTheHeat::new(bench, JobKind::LightUp, None),
        renaming: Held::new(false),
        why: Held::new(None),
    };
    range
        .ask
        .when_answered(Tell::new(move |answered| range.answered(answered)));
    range.look(true);
    let step = move || {
        if range.renaming.get() {
            return "another-person".to_owned();
        }
        let step = range.now.with(|now| match now {
            LightNow::Closed => "closed",
            LightNow::Pans => "pans",
            LightNow::Shut(..) => "shut",
            LightNow::Found(_, gate) | LightNow::Pan(_, gate) => gate.id().key(),
        });
        step.to_owned()
    };
    let ground = Ground {
        bench,
        testid: "screen-light-up",
        why: range.why,
        sounding: |kitchen, now| alarm::of_day(kitchen.day_jobs().state(), now),
        look: Box::new(move || range.look(false)),
        step: Box::new(step),
        shown: Box::new(move || draw(range)),
    };
    ground.draw()
}

fn draw(range: Range) -> Node {
    let bench = range.bench;
    if range.paused.get() {
        return paused_day(bench, Act::new(move || range.paused.set(false)), range.on_rename()).into();
    }
    let refused = bench.trouble.get().filter(|t| matches!(t.why, Refused::Day(_)));
    if let Some(trouble) = refused {
        let on_read = Act::new(move || {
            bench.trouble.set(None);
            range.look(true);
        });
        return hold_page(bench, &trouble, on_read, Some(range.on_stop()));
    }
    if range.renaming.get() {
        return begin(range).into();
    }
    match range.now.get() {
        LightNow::Closed => begin(range).into(),
        LightNow::Pans => pans(range).into(),
        LightNow::Found(..) => asked(range, None),
        LightNow::Pan(pan, _) => asked(range, Some(pan)),
        LightNow::Shut(_, why) => {
            let on_read = Act::new(move || range.take(None));
            let trouble = Trouble {
                why: Refused::Day(why),
                order: Order::Day(Command::EndLight),
            };
            hold_page(bench, &trouble, on_read, Some(range.on_stop()))
        }
    }
}

/// Hold 1: who lights, and beside whom.
fn begin(range: Range) -> Element {
    let back = range.renaming.get().then(|| Act::new(move || range.look(true)));
    let open = Tell::new(move |(who, beside)| range.open(who, beside));
    range.who.draw(back, open)
}

fn asked(range: Range, pan: Option<PanId>) -> Node {
    let bench = range.bench;
    let lang = bench.lang;
    let Some(asking) = range.ask.asking() else {
        return Node::Nothing;
    };
    let others = pan.map(|_| {
        let others = move || range.take(None);
        button(Rank::Plain, say(DaySay::OtherPans, lang), "other-pans", others)
    });
    let parts = AskParts {
        around: Around::bare(pan.map(|pan| bench.look(|kitchen, _| day::pan_name(kitchen, pan)))),
        progress: late_look(range, pan).unwrap_or_else(|| block_name(Block::LightUp, lang).to_owned()),
        aside: nodes![
            why_button(range.why, &asking, None, lang),
            others,
            pan.map(|_| wrong_button(lang))
        ],
        picks: None,
        on_stop: range.on_stop(),
    };
    ask(range.ask, &asking, parts)
}

/// How late the look at this pan's melt is, where it is.
fn late_look(range: Range, pan: Option<PanId>) -> Option<String> {
    let seconds = range.bench.look(|kitchen, now| {
        let rows = day::light_rows(kitchen.day_jobs(), &kitchen.scene(now), now);
        rows.into_iter()
            .find(|row| Some(row.pan) == pan)
            .and_then(|row| row.look_s)
    });
    seconds.filter(|s| *s < 0).map(|s| next_look(s, range.bench.lang))
}

fn pans(range: Range) -> Element {
    let bench = range.bench;
    let lang = bench.lang;
    let list = live(move || {
        let rows = bench.read_each_second(|kitchen, now| {
            let rows = day::light_rows(kitchen.day_jobs(), &kitchen.scene(now), now).into_iter();
            rows.map(|row| (kitchen.ledger().is_low(row.pan), row))
                .collect::<Vec<_>>()
        });
        let rows = rows.into_iter().map(|(low, row)| pan_row(range, row, low, lang));
        el("div").class("job-list").children(rows)
    });
    let end = button(Rank::Second, say(DaySay::EndLight, lang), "end-light", move || {
        range.send(Command::EndLight);
    });
    // A wrong name is put right at once while no pan was looked at; later by STOP.
    let only_who = bench.look(|kitchen, _| {
        let light = kitchen.day_jobs().state().light.as_ref();
        light.is_some_and(|light| light.pans.is_empty())
    });
    let other = only_who.then(|| another_person(lang, Rank::Plain, range.on_rename()));
    let page = JobPage {
        name: job_name(JobKind::LightUp, lang).into(),
        on_stop: Some(range.on_stop()),
        ..JobPage::new("pans", say(DaySay::WhichPan, lang), nodes![end, other], list)
    };
    page.draw(bench)
}

fn pan_row(range: Range, row: LightRow, low: bool, lang: Lang) -> Element {
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
        _ if low => line(Line::PanIsLow, lang).to_owned(),
        (false, Some(s)) => format!("{}, {}", stage_line(stage, lang), next_look(s, lang)),
        (false, None) => stage_line(stage, lang).to_owned(),
    };
    el("button")
        .attr("type", "button")
        .class("pan-pick")
        .class_if("due", !empty && stage == Stage::Look)
        .class_if("closed", empty)
        .flag("disabled", stage == Stage::Lit)
        .testid(format!("light-{name}"))
        .on_press(move || range.take(Some(pan)))
        .child(el("b").text(pan_title(&name, lang)))
        .child(el("span").text(fat_name(fat, lang)))
        .child(el("span").class("soft num").text(state))
}
