//! Lock-up: scraps proven cold or named for a look outdoors, floor, pans off and lidded.

use leptos::prelude::*;

use crate::domain::day_jobs::Command;
use crate::domain::evidence::Evidence;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::ids::{JobId, PersonId};
use crate::domain::procedure::{Block, Step as TableStep, StepId};
use crate::domain::time::Millis;
use crate::kitchen::day::{self, LockNow, Scraps};
use crate::kitchen::{Order, Refused, alarm};
use crate::ui::bench::{Bench, use_bench};
use crate::ui::old_job::ask::{AskParts, ask};
use crate::ui::old_job::begin::{begin_day, paused_day};
use crate::ui::old_job::desk::{Answered, AskDesk};
use crate::ui::old_job::frame::{Around, Lines, Step};
use crate::ui::old_job::hold::HoldPage;
use crate::ui::old_job::page::JobPage;
use crate::ui::old_job::people::everybody;
use crate::ui::old_job::why::{WhySheet, why_button};
use crate::ui::old_job::{draft, fresh_id, watch};
use crate::ui::old_parts::{AnswerButton, BigClock, Button, Rank};
use crate::ui::screen::{self, Screen};
use crate::words::run::{clock_answers, clock_question, job_name, until};
use crate::words::screens::day::{DaySay, in_minutes, probe_in, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{run, steps};

/// Minutes from now offered for the next look; the first that fits is the soonest one.
const LOOKS_MIN: [i64; 4] = [30, 60, 120, 720];

/// What the parts of this screen share.
#[derive(Clone, Copy)]
struct Yard {
    bench: Bench,
    now: RwSignal<LockNow>,
    scraps: RwSignal<Scraps>,
    /// What was seen of scraps outdoors, while a name and a time are still to be given.
    outdoors: RwSignal<Option<Evidence>>,
    looker: RwSignal<Option<PersonId>>,
    ask: AskDesk,
    paused: RwSignal<bool>,
    why: RwSignal<Option<&'static TableStep>>,
}

impl Yard {
    /// Works out what is shown; the gate on screen stays as answered unless something moved.
    fn look(self, anew: bool) {
        let scraps = self.scraps.get_untracked();
        let seen = self
            .bench
            .look(|kitchen, now| day::lock_now(kitchen.day_jobs(), &kitchen.scene(now), scraps, now));
        if !anew && self.now.with_untracked(|now| *now == seen) {
            return;
        }
        let gate = match &seen {
            LockNow::Ask(gate, _) => Some(gate.clone()),
            LockNow::Closed | LockNow::AskTime | LockNow::Wait => None,
        };
        self.ask.put(gate, None);
        self.paused.set(false);
        self.now.set(seen);
    }

    fn go_by(self, scraps: Scraps) {
        self.scraps.set(scraps);
        self.look(true);
    }

    fn send(self, command: Command) {
        let yard = self;
        self.bench.send_then(Order::Day(command), move |entries| {
            for entry in entries {
                if let Fact::Job(job) = &entry.fact {
                    draft::forget(0, &job.evidence);
                }
            }
            let over = entries.iter().any(
                |e| matches!(&e.fact, Fact::Job(job) if matches!(job.event, JobEvent::Ended | JobEvent::LeftOpen)),
            );
            if over && yard.bench.look(|kitchen, _| kitchen.day_jobs().state().lock.is_none()) {
                screen::go(Screen::Today);
            }
            yard.scraps.set(Scraps::Probed);
            yard.outdoors.set(None);
            yard.look(true);
        });
    }

    fn answered(self, answered: Answered) {
        let Answered { step, evidence, .. } = answered;
        let LockNow::Ask(_, pan) = self.now.get_untracked() else {
            return;
        };
        match (self.scraps.get_untracked(), step) {
            (Scraps::None, _) => self.send(Command::NoScraps(evidence)),
            (Scraps::Outdoors, _) => self.outdoors.set(Some(evidence)),
            (Scraps::Probed, _) => self.send(Command::Lock { step, pan, evidence }),
        }
    }

    fn on_stop(self) -> Callback<()> {
        Callback::new(move |()| self.paused.set(true))
    }
}

/// Lock-up.
#[component]
pub fn LockUp() -> impl IntoView {
    let bench = use_bench();
    watch::keep_lit(bench);
    watch::ring(bench, |kitchen, now| alarm::of_day(kitchen.day_jobs().state(), now));
    let answer = StoredValue::new(None::<Callback<Answered>>);
    let on_done = Callback::new(move |answered| {
        if let Some(answer) = answer.get_value() {
            answer.run(answered);
        }
    });
    let yard = Yard {
        bench,
        now: RwSignal::new(LockNow::Closed),
        scraps: RwSignal::new(Scraps::Probed),
        outdoors: RwSignal::new(None),
        looker: RwSignal::new(None),
        ask: AskDesk::new(bench, on_done),
        paused: RwSignal::new(false),
        why: RwSignal::new(None),
    };
    answer.set_value(Some(Callback::new(move |answered| yard.answered(answered))));
    yard.look(true);
    Effect::new(move |_| {
        bench.read_each_second(|_, _| ());
        untrack(|| yard.look(false));
    });
    let key = move || {
        if yard.outdoors.with(Option::is_some) {
            return "looker";
        }
        yard.now.with(|now| match now {
            LockNow::Closed => "closed",
            LockNow::AskTime => "time",
            LockNow::Wait => "wait",
            LockNow::Ask(gate, _) => gate.id().key(),
        })
    };
    let touched = watch::on_touch(bench);
    view! {
        <div class="job" data-testid="screen-lock-up" data-step=key on:pointerdown=move |_| touched()>
            {move || draw(yard)}
            <WhySheet step=yard.why lang=bench.lang />
        </div>
    }
}

fn draw(yard: Yard) -> AnyView {
    let bench = yard.bench;
    let refused = bench.trouble.get().filter(|t| matches!(t.why, Refused::Day(_)));
    if let Some(trouble) = refused {
        let on_read = Callback::new(move |()| {
            bench.trouble.set(None);
            yard.look(true);
        });
        return view! { <HoldPage trouble on_read on_stop=Some(yard.on_stop()) /> }.into_any();
    }
    if yard.paused.get() {
        return paused_day(bench, Callback::new(move |()| yard.paused.set(false)));
    }
    if let Some(evidence) = yard.outdoors.get() {
        return looker(yard, &evidence);
    }
    match yard.now.get() {
        LockNow::Closed => {
            let open = Callback::new(move |who: PersonId| {
                yard.send(Command::Open {
                    job: JobId(fresh_id()),
                    what: JobKind::LockUp,
                    who,
                });
            });
            begin_day(bench, JobKind::LockUp, open)
        }
        LockNow::AskTime => ask_time(yard),
        LockNow::Wait => wait(yard),
        LockNow::Ask(gate, pan) => {
            let name = pan.map(|pan| bench.look(|kitchen, _| day::pan_name(kitchen, pan)));
            asked(yard, gate.id(), name)
        }
    }
}

fn asked(yard: Yard, step: StepId, pan: Option<String>) -> AnyView {
    let lang = yard.bench.lang;
    let Some(asking) = yard.ask.asking() else {
        return ().into_any();
    };
    let aside =
        view! { {why_button(yard.why, &asking, None, lang)} {standing(yard)} {other_ways(yard, step)} }.into_any();
    let parts = AskParts {
        around: Around::bare(pan),
        progress: steps::block_name(Block::LockUp, lang).to_owned(),
        aside,
        picks: None,
        on_stop: yard.on_stop(),
    };
    ask(yard.ask, &asking, parts)
}

/// The other things to do with scraps than probing the heap.
fn other_ways(yard: Yard, step: StepId) -> AnyView {
    let lang = yard.bench.lang;
    let (none, out) = yard.bench.look(|kitchen, _| {
        let day = kitchen.day_jobs();
        (day.no_scraps_gate().is_some(), day.scraps_out_gate().is_some())
    });
    let way = |label, scraps, testid: &'static str| {
        let on_press = Callback::new(move |()| yard.go_by(scraps));
        view! { <Button label=say(label, lang) rank=Rank::Plain on_press testid /> }
    };
    let at_scraps = matches!(step, StepId::Scraps | StepId::ScrapsAgain | StepId::ScrapsOut);
    if !at_scraps {
        return ().into_any();
    }
    if yard.scraps.get() != Scraps::Probed {
        return way(DaySay::ProbeThem, Scraps::Probed, "probe-scraps").into_any();
    }
    view! {
        {none.then(|| way(DaySay::NoScraps, Scraps::None, "no-scraps"))}
        {out.then(|| way(DaySay::StillWarm, Scraps::Outdoors, "scraps-warm"))}
    }
    .into_any()
}

fn second_probe(yard: Yard) -> Signal<Option<i64>> {
    Signal::derive(move || {
        yard.bench
            .read_each_second(|kitchen, now| day::second_probe_s(kitchen.day_jobs(), now))
    })
}

/// The wait for the second probe, beside other steps.
fn standing(yard: Yard) -> AnyView {
    let lang = yard.bench.lang;
    let left = second_probe(yard);
    view! {
        {move || {
            left.get().map(|s| view! { <p class="job-left num" data-testid="second-probe">{probe_in(s, lang)}</p> })
        }}
    }
    .into_any()
}

/// Nothing is left but the wait.
fn wait(yard: Yard) -> AnyView {
    let lang = yard.bench.lang;
    let left = second_probe(yard);
    let seconds = Signal::derive(move || left.get().unwrap_or(0));
    let due = yard.bench.look(|kitchen, now| {
        let lock = kitchen.day_jobs().state().lock.as_ref();
        let due = lock.and_then(|lock| lock.wait).map(|wait| wait.due());
        due.map_or_else(String::new, |due| until(due, now.off_min, lang))
    });
    let aside = other_ways(yard, StepId::ScrapsAgain);
    let lines = Lines {
        progress: steps::step_title(StepId::ScrapsAgain, lang).to_owned(),
        say: steps::step_line(StepId::ScrapsAgain, lang).to_owned(),
        hazard: None,
        sub: Some(run::say(run::Say::ClosedIsSilent, lang).to_owned()),
    };
    let middle = view! {
        <BigClock seconds usual=say(DaySay::SecondProbe, lang).to_owned() until=due label=say(DaySay::SecondProbe, lang) />
    }
    .into_any();
    view! {
        <Step around=Around::bare(None) lines middle=Some(middle) aside=Some(aside) on_stop=yard.on_stop()>
            ""
        </Step>
    }
    .into_any()
}

fn ask_time(yard: Yard) -> AnyView {
    let lang = yard.bench.lang;
    let lines = Lines {
        progress: steps::step_title(StepId::ScrapsAgain, lang).to_owned(),
        say: yard.bench.look(|_, now| clock_question(now.wall, now.off_min, lang)),
        hazard: None,
        sub: Some(run::say(run::Say::ResumeText, lang).to_owned()),
    };
    let [yes, no] = clock_answers(lang);
    let right = move |right| Callback::new(move |()| yard.send(Command::TimeIs(right)));
    view! {
        <Step around=Around::bare(None) lines on_stop=yard.on_stop()>
            <AnswerButton label=yes on_press=right(true) testid="answer-clock-yes" />
            <AnswerButton label=no on_press=right(false) testid="answer-clock-no" />
        </Step>
    }
    .into_any()
}

/// Who looks at warm scraps next, and when.
fn looker(yard: Yard, evidence: &Evidence) -> AnyView {
    let bench = yard.bench;
    let lang = bench.lang;
    let name = Callback::new(move |who| yard.looker.set(Some(who)));
    let times = LOOKS_MIN
        .into_iter()
        .map(|minutes| {
            let evidence = evidence.clone();
            let on_press = Callback::new(move |()| {
                let wall = bench.look(|_, now| now.wall);
                if let Some(looker) = yard.looker.get_untracked() {
                    yard.send(Command::ScrapsOut {
                        evidence: evidence.clone(),
                        looker,
                        next_look: wall.plus(minutes * Millis::MINUTE),
                    });
                }
            });
            let asleep = Signal::derive(move || yard.looker.get().is_none());
            let testid = format!("look-in-{minutes}");
            view! { <Button label=in_minutes(minutes, lang) asleep on_press testid /> }
        })
        .collect_view();
    let back = Callback::new(move |()| {
        yard.outdoors.set(None);
        yard.look(true);
    });
    let ways = view! { <Button label=job::say(JobSay::Back, lang) rank=Rank::Plain on_press=back testid="back" /> };
    view! {
        <JobPage
            name=job_name(JobKind::LockUp, lang)
            title=say(DaySay::WhoLooks, lang)
            testid="looker"
            on_stop=Some(yard.on_stop())
            ways=ways.into_any()
        >
            {move || everybody(bench, yard.looker.get(), name)}
            <h2>{say(DaySay::WhenLooks, lang)}</h2>
            <div class="job-list two">{times}</div>
        </JobPage>
    }
    .into_any()
}
