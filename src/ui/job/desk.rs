//! Where the answers of the gate on screen are kept until Go on.
//!
//! Touches go to [`Asking`], which knows what counts; [`super::ask`] draws what it makes of them.

use crate::domain::evidence::Evidence;
use crate::domain::guide::Run;
use crate::domain::guide::asking::{Asking, SETTLE_MS, Touched};
use crate::domain::guide::gate::Gate;
use crate::domain::procedure::StepId;
use crate::domain::time::Now;
use crate::ui::bench::Bench;
use crate::ui::node::{Held, Tell};

/// Everything a gate was answered with.
#[derive(Clone, Debug)]
pub struct Answered {
    /// The gate.
    pub step: StepId,
    /// What was seen.
    pub evidence: Evidence,
    /// When a temperature among it was read.
    pub read: Option<Now>,
}

/// Where the answers of the gate on screen are kept until Go on.
#[derive(Clone, Copy)]
pub struct AskDesk {
    pub(super) bench: Bench,
    asking: Held<Option<Asking>>,
    pub(super) run: Held<Option<Run>>,
    /// What figures belong to where there is no run.
    job: Held<u128>,
    on_done: Held<Option<Tell<Answered>>>,
    /// Told each number taken, in tenths: what can only be refused is refused at once.
    pub(super) on_number: Held<Option<Tell<i32>>>,
}

impl AskDesk {
    /// A desk with nothing on it.
    #[must_use]
    pub fn new(bench: Bench) -> Self {
        Self {
            bench,
            asking: Held::new(None),
            run: Held::new(None),
            job: Held::new(0),
            on_done: Held::new(None),
            on_number: Held::new(None),
        }
    }

    /// Calls `on_done` when a gate is answered and gone on from.
    pub fn when_answered(self, on_done: Tell<Answered>) {
        self.on_done.set(Some(on_done));
    }

    /// Tells `on_number` each number taken, in tenths of a degree, while its gate still asks for more.
    pub fn watch_numbers(self, on_number: Tell<i32>) {
        self.on_number.set(Some(on_number));
    }

    /// Puts a gate on the desk, unanswered, or clears it.
    pub fn put(self, gate: Option<Gate>, run: Option<Run>) {
        let now = self.bench.look(|_, now| *now);
        self.run.set(run);
        self.asking.set(gate.map(|gate| Asking::new(gate, &now)));
    }

    /// Answers what is no question here, as soon as the gate is on the desk.
    pub fn put_settled(self, act: impl FnOnce(&mut Asking, &Now) -> Touched) {
        let now = self.bench.look(|_, now| *now);
        let before = Now {
            mono: now.mono - SETTLE_MS,
            ..now
        };
        self.asking.update(|asking| {
            if let Some(asking) = asking {
                *asking = Asking::new(asking.gate().clone(), &before);
                act(asking, &now);
            }
        });
    }

    /// The gate as it is answered so far.
    #[must_use]
    pub fn asking(self) -> Option<Asking> {
        self.asking.get()
    }

    /// The gate as it is answered so far, read once.
    #[must_use]
    pub fn asking_untracked(self) -> Option<Asking> {
        self.asking.get_untracked()
    }

    /// From now on figures belong to this job, where there is no run.
    pub fn belongs_to(self, job: u128) {
        self.job.set(job);
    }

    /// What the figures typed here belong to: the run, else the job, else the day's own.
    #[must_use]
    pub fn scope(self) -> u128 {
        let job = self.job.get_untracked();
        self.run.with_untracked(|run| run.as_ref().map_or(job, |run| run.run.0))
    }

    /// Takes a touch.
    pub fn touch(self, act: impl FnOnce(&mut Asking, Option<&Run>, &Now) -> Touched) {
        let now = self.bench.look(|_, now| *now);
        let run = self.run.get_untracked();
        let mut asking = self.asking.get_untracked();
        let touched = asking
            .as_mut()
            .map_or(Touched::Ignored, |asking| act(asking, run.as_ref(), &now));
        if touched != Touched::Ignored {
            self.asking.set(asking);
        }
        if touched == Touched::GoesOn {
            self.done();
        }
    }

    /// Go on: taken when all is answered and the screen has stood long enough.
    pub fn go_on(self) {
        let now = self.bench.look(|_, now| *now);
        let run = self.run.get_untracked();
        let awake = self
            .asking
            .with_untracked(|asking| asking.as_ref().is_some_and(|a| a.goes_on(run.as_ref(), &now)));
        if awake {
            self.done();
        }
    }

    fn done(self) {
        let answered = self.asking.with_untracked(|asking| {
            asking.as_ref().map(|asking| Answered {
                step: asking.gate().id(),
                evidence: asking.seen().clone(),
                read: asking.read(),
            })
        });
        if let (Some(answered), Some(on_done)) = (answered, self.on_done.get_untracked()) {
            on_done.run(answered);
        }
    }
}
