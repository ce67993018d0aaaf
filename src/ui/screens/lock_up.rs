//! Lock-up: scraps proven cold or named for a look outdoors, floor, pans off and lidded.

use crate::domain::day_jobs::Command;
use crate::domain::evidence::Evidence;
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::ids::{JobId, PersonId};
use crate::domain::procedure::{Block, Step as TableStep, StepId};
use crate::domain::time::Millis;
use crate::kitchen::day::{self, LockNow, Scraps};
use crate::kitchen::{Order, Refused, alarm};
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::job::ask::{AskParts, ask};
use crate::ui::job::begin::{begin_day, paused_day};
use crate::ui::job::desk::{Answered, AskDesk};
use crate::ui::job::frame::{Around, Lines, Step};
use crate::ui::job::ground::Ground;
use crate::ui::job::hold::hold_page;
use crate::ui::job::page::JobPage;
use crate::ui::job::people::everybody;
use crate::ui::job::why::{why_button, wrong_button};
use crate::ui::job::{draft, fresh_id};
use crate::ui::node::{Act, Element, Held, Node, Tell, el, live};
use crate::ui::parts::{BigClock, Rank, answer_button, button};
use crate::ui::screen::{self, Screen};
use crate::words::run::{clock_answers, clock_question, job_name, until};
use crate::words::screens::day::{DaySay, heap_limit, heap_warm, in_minutes, probe_in, say};
use crate::words::screens::job::{self, JobSay};
use crate::words::{run, steps};

/// Minutes from now offered for the next look; the first that fits is the soonest one.
const LOOKS_MIN: [i64; 4] = [30, 60, 120, 720];

/// What the parts of this screen share.
#[derive(Clone, Copy)]
struct Yard {
    bench: Bench,
    now: Held<LockNow>,
    scraps: Held<Scraps>,
    /// What was seen of scraps outdoors, while a name and a time are still to be given.
    outdoors: Held<Option<Evidence>>,
    looker: Held<Option<PersonId>>,
    ask: AskDesk,
    paused: Held<bool>,
    why: Held<Option<&'static TableStep>>,
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

    fn on_stop(self) -> Act {
        Act::new(move || self.paused.set(true))
    }
}

/// Lock-up.
#[must_use]
pub fn lock_up(bench: Bench) -> Element {
    let yard = Yard {
        bench,
        now: Held::new(LockNow::Closed),
        scraps: Held::new(Scraps::Probed),
        outdoors: Held::new(None),
        looker: Held::new(None),
        ask: AskDesk::new(bench),
        paused: Held::new(false),
        why: Held::new(None),
    };
    yard.ask
        .when_answered(Tell::new(move |answered| yard.answered(answered)));
    yard.look(true);
    let step = move || {
        if yard.outdoors.with(Option::is_some) {
            return "looker".to_owned();
        }
        let step = yard.now.with(|now| match now {
            LockNow::Closed => "closed",
            LockNow::AskTime => "time",
            LockNow::Wait => "wait",
            LockNow::Ask(gate, _) => gate.id().key(),
        });
        step.to_owned()
    };
    let ground = Ground {
        bench,
        testid: "screen-lock-up",
        why: yard.why,
        sounding: |kitchen, now| alarm::of_day(kitchen.day_jobs().state(), now),
        look: Box::new(move || yard.look(false)),
        step: Box::new(step),
        shown: Box::new(move || draw(yard)),
    };
    ground.draw()
}

fn draw(yard: Yard) -> Node {
    let bench = yard.bench;
    if yard.paused.get() {
        return paused_day(bench, Act::new(move || yard.paused.set(false))).into();
    }
    let refused = bench.trouble.get().filter(|t| matches!(t.why, Refused::Day(_)));
    if let Some(trouble) = refused {
        let on_read = Act::new(move || {
            bench.trouble.set(None);
            yard.look(true);
        });
        return hold_page(bench, &trouble, on_read, Some(yard.on_stop()));
    }
    if let Some(evidence) = yard.outdoors.get() {
        return looker(yard, &evidence).into();
    }
    match yard.now.get() {
        LockNow::Closed => {
            let open = Tell::new(move |who: PersonId| {
                yard.send(Command::Open {
                    job: JobId(fresh_id()),
                    what: JobKind::LockUp,
                    who,
                    supervisor: None,
                });
            });
            begin_day(bench, JobKind::LockUp, open).into()
        }
        LockNow::AskTime => ask_time(yard).into(),
        LockNow::Wait => wait(yard).into(),
        LockNow::Ask(gate, pan) => {
            let name = pan.map(|pan| bench.look(|kitchen, _| day::pan_name(kitchen, pan)));
            asked(yard, gate.id(), name)
        }
    }
}

fn asked(yard: Yard, step: StepId, pan: Option<String>) -> Node {
    let lang = yard.bench.lang;
    let Some(asking) = yard.ask.asking() else {
        return Node::Nothing;
    };
    let mut around = Around::bare(pan);
    if matches!(step, StepId::Scraps | StepId::ScrapsAgain) {
        let warm = yard
            .bench
            .look(|kitchen, _| kitchen.day_jobs().state().lock.as_ref().and_then(|lock| lock.warm));
        // What did not count says the limit itself: on a small screen there is no room for both.
        match warm {
            Some(dc) => around.note = Some(heap_warm(dc, lang)),
            None => around.window = Some(heap_limit(lang)),
        }
    }
    let with_pan = around.pan.is_some();
    let parts = AskParts {
        around,
        progress: steps::block_name(Block::LockUp, lang).to_owned(),
        aside: nodes![
            why_button(yard.why, &asking, None, lang),
            standing(yard),
            other_ways(yard, step),
            with_pan.then(|| wrong_button(lang)),
        ],
        picks: None,
        on_stop: yard.on_stop(),
    };
    ask(yard.ask, &asking, parts)
}

/// The other things to do with scraps than probing the heap.
fn other_ways(yard: Yard, step: StepId) -> Node {
    if !matches!(step, StepId::Scraps | StepId::ScrapsAgain | StepId::ScrapsOut) {
        return Node::Nothing;
    }
    let lang = yard.bench.lang;
    let way =
        |label, scraps, testid: &'static str| button(Rank::Plain, say(label, lang), testid, move || yard.go_by(scraps));
    if yard.scraps.get() != Scraps::Probed {
        return way(DaySay::ProbeThem, Scraps::Probed, "probe-scraps").into();
    }
    let (none, out) = yard.bench.look(|kitchen, _| {
        let day = kitchen.day_jobs();
        (day.no_scraps_gate().is_some(), day.scraps_out_gate().is_some())
    });
    nodes![
        none.then(|| way(DaySay::NoScraps, Scraps::None, "no-scraps")),
        out.then(|| way(DaySay::StillWarm, Scraps::Outdoors, "scraps-warm")),
    ]
}

/// Seconds to the second probe, each second.
fn second_probe(yard: Yard) -> Option<i64> {
    yard.bench
        .read_each_second(|kitchen, now| day::second_probe_s(kitchen.day_jobs(), now))
}

/// The wait for the second probe, beside other steps.
fn standing(yard: Yard) -> Node {
    let lang = yard.bench.lang;
    live(move || {
        let left = el("p").class("job-left num").testid("second-probe");
        second_probe(yard).map(|s| left.text(probe_in(s, lang)))
    })
}

/// Nothing is left but the wait.
fn wait(yard: Yard) -> Element {
    let lang = yard.bench.lang;
    let due = yard.bench.look(|kitchen, now| {
        let lock = kitchen.day_jobs().state().lock.as_ref();
        let due = lock.and_then(|lock| lock.wait).map(|wait| wait.due());
        due.map_or_else(String::new, |due| until(due, now.off_min, lang))
    });
    let clock = live(move || {
        let left = second_probe(yard).unwrap_or(0);
        let clock = BigClock {
            seconds: left,
            gone: left,
            over: false,
            bar: None,
            usual: say(DaySay::SecondProbe, lang).into(),
            until: due.clone().into(),
            label: say(DaySay::SecondProbe, lang).into(),
            testid: "clock",
        };
        clock.draw()
    });
    let lines = Lines {
        progress: steps::step_title(StepId::ScrapsAgain, lang).to_owned(),
        say: say(DaySay::WaitThenProbe, lang).to_owned(),
        hazard: None,
        sub: Some(run::say(run::Say::ClosedIsSilent, lang).to_owned()),
    };
    let step = Step {
        middle: clock,
        aside: Some(other_ways(yard, StepId::ScrapsAgain)),
        ..Step::new(Around::bare(None), lines, yard.on_stop(), Node::Nothing)
    };
    step.draw(yard.bench, "wait".to_owned())
}

fn ask_time(yard: Yard) -> Element {
    let lang = yard.bench.lang;
    let lines = Lines {
        progress: steps::step_title(StepId::ScrapsAgain, lang).to_owned(),
        say: yard.bench.look(|_, now| clock_question(now.wall, now.off_min, lang)),
        hazard: None,
        sub: Some(run::say(run::Say::ResumeText, lang).to_owned()),
    };
    let [yes, no] = clock_answers(lang);
    let right = move |right| move || yard.send(Command::TimeIs(right));
    let answers = nodes![
        answer_button(yes, false, "answer-clock-yes", right(true)),
        answer_button(no, false, "answer-clock-no", right(false)),
    ];
    Step::new(Around::bare(None), lines, yard.on_stop(), answers).draw(yard.bench, "time".to_owned())
}

/// Who looks at warm scraps next, and when.
fn looker(yard: Yard, evidence: &Evidence) -> Element {
    let bench = yard.bench;
    let lang = bench.lang;
    let evidence = evidence.clone();
    let holds = live(move || {
        let looker = yard.looker.get();
        let times = LOOKS_MIN.into_iter().map(|minutes| {
            let evidence = evidence.clone();
            let send = move || {
                let wall = bench.look(|_, now| now.wall);
                if let Some(looker) = looker {
                    yard.send(Command::ScrapsOut {
                        evidence: evidence.clone(),
                        looker,
                        next_look: wall.plus(minutes * Millis::MINUTE),
                    });
                }
            };
            let look = button(
                Rank::Second,
                in_minutes(minutes, lang),
                format!("look-in-{minutes}"),
                send,
            );
            look.flag("disabled", looker.is_none())
        });
        nodes![
            everybody(bench, looker, Tell::new(move |who| yard.looker.set(Some(who)))),
            el("h2").text(say(DaySay::WhenLooks, lang)),
            el("div").class("job-list two").children(times),
        ]
    });
    let back = button(Rank::Plain, job::say(JobSay::Back, lang), "back", move || {
        yard.outdoors.set(None);
        yard.look(true);
    });
    let page = JobPage {
        name: job_name(JobKind::LockUp, lang).into(),
        on_stop: Some(yard.on_stop()),
        ..JobPage::new("looker", say(DaySay::WhoLooks, lang), back, holds)
    };
    page.draw(bench)
}
