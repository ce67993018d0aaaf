//! The filter job: Ready, each pan, putting away, one step at a time.

mod asked;
mod begin;
mod choose;
mod heater;
mod moving;
mod picks;
mod stopped;

use leptos::prelude::untrack;

use crate::domain::evidence::{Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::run::Fault;
use crate::domain::guide::asking::Touched;
use crate::domain::guide::gate::QuestionKind;
use crate::domain::guide::{Command, Run};
use crate::domain::ids::{MachineId, PanId, PersonId};
use crate::domain::procedure::{Step, StepId};
use crate::kitchen::filter::{self, PutOff, Stage};
use crate::kitchen::{Order, Refused, alarm};
use crate::ui::bench::{Bench, Trouble};
use crate::ui::job::desk::{Answered, AskDesk};
use crate::ui::job::ground::Ground;
use crate::ui::job::hold::hold_page;
use crate::ui::job::{draft, watch};
use crate::ui::node::{Act, Element, Held, Node, Tell, follow};
use crate::ui::screen::{self, Screen};

/// A page over the stage, asked for by a touch. Nothing of it is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Over {
    /// STOP while no pan is in hand.
    Paused,
    /// The list of what can be wrong.
    Faults,
    /// The machine's heater.
    Heater,
}

/// What the parts of the filter screen share.
#[derive(Clone, Copy)]
struct Floor {
    bench: Bench,
    /// The stage, and the run it was worked out for.
    stage: Held<(Stage, Option<Run>)>,
    ask: AskDesk,
    over: Held<Option<Over>>,
    put_off: Held<PutOff>,
    why: Held<Option<&'static Step>>,
    /// Who was named at the pans, and who beside them, before Go on.
    person: Held<Option<PersonId>>,
    supervisor: Held<Option<PersonId>>,
    machine: Held<Option<MachineId>>,
    /// What went wrong last, for its first words; the log has the rest.
    fault: Held<Option<Fault>>,
    /// The pan finished last on this screen.
    finished: Held<Option<PanId>>,
}

impl Floor {
    /// Works the stage out again; the gate on screen stays as answered unless something moved.
    fn look(self, anew: bool) {
        let put_off = self.put_off.get_untracked();
        let seen = self.bench.look(|kitchen, now| {
            let run = kitchen.guide().job().and_then(|job| job.run.clone());
            (filter::stage(kitchen.guide(), &kitchen.scene(now), put_off, now), run)
        });
        if !anew && self.stage.with_untracked(|stage| *stage == seen) {
            return;
        }
        let was_open = self.stage.with_untracked(|(stage, _)| *stage != Stage::Closed);
        if was_open && seen.0 == Stage::Closed {
            screen::go(Screen::Today);
            return;
        }
        let gate = match &seen.0 {
            Stage::Ask(gate) | Stage::Moving(gate) => Some(gate.clone()),
            _ => None,
        };
        let step = gate.as_ref().map(|gate| gate.id());
        self.person.set(None);
        self.supervisor.set(None);
        self.machine.set(None);
        self.over.set(None);
        self.ask.put(gate, seen.1.clone());
        self.stage.set(seen);
        match step {
            Some(StepId::Machine) => self.only_machine(),
            Some(StepId::SoundCheck) => watch::play(self.bench, alarm::Urgency::Safety),
            _ => {}
        }
    }

    /// Where there is one machine, naming it is no question.
    fn only_machine(self) {
        let only = self
            .bench
            .look(|kitchen, now| match kitchen.scene(now).machines.as_slice() {
                [one] => Some(one.machine.machine),
                _ => None,
            })
            .filter(|one| !self.bench.look(|kitchen, now| kitchen.scene(now).is_down(*one)));
        if let Some(machine) = only {
            self.machine.set(Some(machine));
            self.ask
                .put_settled(|asking, now| asking.named(Item::Machine, Word::Ready, None, now));
        }
    }

    fn send(self, command: Command) {
        let floor = self;
        self.bench.send_then(Order::Guide(command), move |entries| {
            let finished = entries.iter().find_map(|e| match &e.fact {
                Fact::Run(run) if run.left.is_some() => Some(run.pan),
                _ => None,
            });
            if finished.is_some() {
                floor.finished.set(finished);
                floor.put_off.update(|p| {
                    p.leaving_out = false;
                    p.bringing_back = false;
                });
            }
            floor.look(false);
        });
    }

    /// A gate was answered and gone on from.
    fn answered(self, answered: Answered) {
        let Answered { step, evidence, read } = answered;
        let command = match step {
            StepId::Who => self.person.get_untracked().map(|person| Command::Who {
                person,
                supervisor: self.supervisor.get_untracked(),
            }),
            StepId::Machine => self.machine.get_untracked().map(|machine| Command::Machine {
                machine,
                used_since: evidence.word(Item::UsedSince).unwrap_or(Word::NotKnown),
            }),
            StepId::LeaveOut => Some(Command::LeaveOut(evidence.clone())),
            StepId::Leave if self.put_off.with_untracked(|p| p.leaving_out) => {
                Some(Command::LeaveSet(evidence.clone()))
            }
            _ => Some(Command::Answer {
                step,
                evidence: evidence.clone(),
                read,
            }),
        };
        if let Some(command) = command {
            self.send(command);
        }
    }

    /// A number was taken. One outside the window is refused before more is asked about it.
    fn number_taken(self, dc: i32) {
        let why = self
            .stage
            .with_untracked(|(_, run)| run.as_ref().and_then(|run| filter::outside_window(run, dc)));
        let asking = self.ask.asking_untracked();
        if let (Some(why), Some(asking)) = (why, asking) {
            let command = Command::Answer {
                step: asking.gate().id(),
                evidence: asking.seen().clone(),
                read: asking.read(),
            };
            self.bench.trouble.set(Some(Trouble {
                why: Refused::Guide(why),
                order: Order::Guide(command),
            }));
        }
    }

    /// STOP: never ignored, whatever is on the screen.
    fn stop(self) {
        // A refusal on screen has been read, and the lines of an old fault are not this one's.
        self.trouble_read();
        self.fault.set(None);
        if self.bench.look(|kitchen, _| kitchen.run_open()) {
            self.send(Command::Stop);
        } else {
            self.over.set(Some(Over::Paused));
        }
    }

    fn on_stop(self) -> Act {
        Act::new(move || self.stop())
    }

    /// A refusal was read: what was asked is asked again. A number that was refused for what it says is typed anew.
    fn trouble_read(self) {
        let trouble = self.bench.trouble.get_untracked();
        self.bench.trouble.set(None);
        if let Some(trouble) = trouble
            && matches!(trouble.why, Refused::Guide(_))
        {
            if let Order::Guide(Command::Answer { evidence, .. }) = &trouble.order {
                draft::forget(self.ask.scope(), evidence);
            }
            self.look(true);
        }
    }

    /// The step on screen, for who follows from outside.
    fn step_key(self) -> String {
        let refused = |why: &Option<Trouble>| {
            matches!(
                why,
                Some(Trouble {
                    why: Refused::Guide(_),
                    ..
                })
            )
        };
        if self.bench.trouble.with(refused) {
            return "refused".to_owned();
        }
        match self.over.get() {
            Some(Over::Paused) => return "paused".to_owned(),
            Some(Over::Faults) => return "faults".to_owned(),
            Some(Over::Heater) => return "heater".to_owned(),
            None => {}
        }
        self.stage.with(|(stage, _)| {
            match stage {
                Stage::Closed => "closed",
                Stage::AskTime => "time",
                Stage::Heater => StepId::WarmUp.key(),
                Stage::Ask(gate) | Stage::Moving(gate) => gate.id().key(),
                Stage::Stopped => "stopped",
                Stage::Choose => "choose",
            }
            .to_owned()
        })
    }
}

/// The filter job.
#[must_use]
pub fn filter(bench: Bench) -> Element {
    let floor = Floor {
        bench,
        stage: Held::new((Stage::Closed, None)),
        ask: AskDesk::new(bench),
        over: Held::new(None),
        put_off: Held::new(PutOff::default()),
        why: Held::new(None),
        person: Held::new(None),
        supervisor: Held::new(None),
        machine: Held::new(None),
        fault: Held::new(None),
        finished: Held::new(None),
    };
    floor
        .ask
        .when_answered(Tell::new(move |answered| floor.answered(answered)));
    floor.ask.watch_numbers(Tell::new(move |dc| floor.number_taken(dc)));
    floor.look(true);
    // What was put off leads elsewhere at once, not with the next second.
    follow(move || {
        floor.put_off.track();
        untrack(|| floor.look(false));
    });
    heater::watch_refusal(floor);
    let ground = Ground {
        bench,
        testid: "screen-filter",
        why: floor.why,
        sounding: |kitchen, now| alarm::of_filter(kitchen.guide(), now),
        look: Box::new(move || floor.look(false)),
        step: Box::new(move || floor.step_key()),
        shown: Box::new(move || draw(floor)),
    };
    ground.draw()
}

/// What is on the screen now.
fn draw(floor: Floor) -> Node {
    let refused = floor.bench.trouble.get();
    if let Some(trouble) = refused.filter(|trouble| matches!(trouble.why, Refused::Guide(_))) {
        let trouble = heater::as_it_stands(floor, trouble);
        let on_read = Act::new(move || floor.trouble_read());
        let on_stop = floor.stage.with(|(_, run)| run.is_some()).then(|| floor.on_stop());
        return hold_page(floor.bench, &trouble, on_read, on_stop);
    }
    match floor.over.get() {
        Some(Over::Paused) => return stopped::paused(floor),
        Some(Over::Faults) => return stopped::faults(floor),
        Some(Over::Heater) => return heater::page(floor),
        None => {}
    }
    let (stage, run) = floor.stage.get();
    match stage {
        Stage::Closed => begin::begin(floor),
        Stage::AskTime => heater::ask_time(floor, run.as_ref()),
        Stage::Heater => heater::heater(floor),
        Stage::Ask(_) => asked::asked(floor, run.as_ref()),
        Stage::Moving(gate) => moving::moving(floor, &gate, run.as_ref()),
        Stage::Stopped => stopped::stopped(floor, run.as_ref()),
        Stage::Choose => choose::choose(floor),
    }
}

/// Takes the one answer of a screen on which oil moves.
fn pump_is_off(floor: Floor) {
    floor.ask.touch(|asking, run, now| {
        let asked = asking.current(run).map(|q| q.kind);
        match asked {
            Some(QuestionKind::Look { item, .. }) => asking.look(item, Word::Off, run, now),
            _ => Touched::Ignored,
        }
    });
}
