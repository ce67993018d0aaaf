//! Oil change, boil-out and old oil: one pan at a time, one step at a time.

mod asked;
mod boil;
mod count;
mod pages;

use crate::domain::entry::Entry;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobKind};
use crate::domain::fat::Fat;
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::pan_jobs::{Command, PanJob, Stage};
use crate::domain::procedure::{Hold, Step, StepId};
use crate::domain::time::Now;
use crate::kitchen::care::{self, Care, CareNow, Turn};
use crate::kitchen::{Order, Refused, day};
use crate::ui::bench::Bench;
use crate::ui::job::begin::AtTheHeat;
use crate::ui::job::desk::{Answered, AskDesk};
use crate::ui::job::ground::Ground;
use crate::ui::job::hold::hold_page;
use crate::ui::job::{draft, fresh_id};
use crate::ui::node::{Act, Element, Held, Node, Tell};
use crate::ui::prefs;
use crate::ui::screen::{self, Screen};

/// A page over what is asked. Nothing of it is written.
#[derive(Clone, Debug)]
enum Over {
    /// STOP while no heat is in hand.
    Paused,
    /// Somebody else goes on.
    Who,
    /// How much, after oil was seen out or in.
    Count(Answered),
    /// What one person is to lift.
    Load(Answered),
    /// The job came to its own end.
    Done,
}

/// What the parts of this screen share.
#[derive(Clone, Copy)]
struct Bay {
    bench: Bench,
    pan: PanId,
    care: Care,
    now: Held<CareNow>,
    turn: Held<Turn>,
    over: Held<Option<Over>>,
    ask: AskDesk,
    who: AtTheHeat,
    why: Held<Option<&'static Step>>,
}

impl Bay {
    /// Works out what is shown; the gate on screen stays as answered unless something moved.
    fn look(self, anew: bool) {
        let turn = self.turn.get_untracked();
        let at = (self.pan, self.care);
        let (seen, job) = self.bench.look(|kitchen, now| {
            let jobs = kitchen.pan_jobs();
            let job = jobs.job(self.pan).map(|job| job.job);
            let job = job.or_else(|| care::waste_of(jobs, self.pan));
            (care::now_at(jobs, &kitchen.scene(now), at, turn, now), job)
        });
        if !anew && self.now.with_untracked(|now| *now == seen) {
            return;
        }
        self.ask.belongs_to(job.map_or(0, |job| job.0));
        let gate = match &seen {
            CareNow::Ask(gate) => Some(gate.clone()),
            _ => None,
        };
        self.ask.put(gate, None);
        self.over.set(None);
        self.now.set(seen);
    }

    fn turn(self, turn: Turn) {
        self.turn.set(turn);
        self.look(true);
    }

    /// The open job, if it is this screen's.
    fn job(self) -> Option<PanJob> {
        self.bench.look(|kitchen, _| kitchen.pan_jobs().job(self.pan).cloned())
    }

    /// The fat that is in the pan, or going in.
    fn fat(self) -> Option<Fat> {
        let fresh = self.job().and_then(|job| job.fat);
        fresh.or_else(|| {
            self.bench.look(|kitchen, now| {
                let scene = kitchen.scene(now);
                scene.pan(self.pan).map(|pan| pan.pan.fat)
            })
        })
    }

    fn send(self, command: Command) {
        let bay = self;
        self.bench
            .send_then(Order::Pan(command), move |entries| bay.sent(entries));
    }

    /// The same with oil counted: what was typed is no longer needed once it is on disk.
    fn send_counted(self, command: Command) {
        let bay = self;
        self.bench.send_then(Order::Pan(command), move |entries| {
            prefs::set_draft(&[]);
            bay.sent(entries);
        });
    }

    fn sent(self, entries: &[Entry]) {
        let (mut next, mut done) = (None, false);
        for entry in entries {
            let Fact::Job(fact) = &entry.fact else { continue };
            draft::forget(fact.job.0, &fact.evidence);
            let ended = fact.event == JobEvent::Ended;
            // What is cleaned by a boil-out is its own job.
            if fact.evidence.is(Item::Cleaned, Word::BoilOut) {
                next = Some(Screen::BoilOut(self.pan));
            } else if matches!(fact.step, Some(StepId::FreshLevel | StepId::Exit)) {
                done = true;
            } else if ended && !done && next.is_none() {
                next = Some(Screen::Today);
            }
        }
        done = done && self.job().is_none();
        let put_by = self.care == Care::Waste
            && self
                .bench
                .look(|kitchen, _| care::waste_of(kitchen.pan_jobs(), self.pan).is_none());
        if let Some(next) = next.or(put_by.then_some(Screen::Today)) {
            screen::go(next);
        }
        self.turn.set(Turn::None);
        self.look(true);
        if done {
            self.over.set(Some(Over::Done));
        }
    }

    fn open(self, kind: JobKind, who: PersonId, supervisor: Option<PersonId>) {
        self.send(Command::Open {
            job: JobId(fresh_id()),
            what: kind,
            pan: self.pan,
            who,
            supervisor,
        });
    }

    /// A gate was answered and gone on from.
    fn answered(self, answered: Answered) {
        let Answered { step, evidence, read } = &answered;
        let counts = match step {
            StepId::EmptyByHand | StepId::CutOut => evidence.is(Item::ByHand, Word::InContainer),
            StepId::InMachine | StepId::FreshLevel => true,
            _ => false,
        };
        if counts {
            self.over.set(Some(Over::Count(answered)));
            return;
        }
        let load_g = self.load_g(*step);
        let lifts = self
            .ask
            .asking_untracked()
            .is_some_and(|asking| asking.gate().holds.contains(&Hold::Lift));
        if lifts && evidence.is(Item::Carry, Word::Alone) && load_g.is_none() {
            self.over.set(Some(Over::Load(answered)));
            return;
        }
        self.say(*step, evidence.clone(), *read, load_g);
    }

    fn load_g(self, step: StepId) -> Option<u32> {
        care::load_g(step, self.fat(), prefs::packs())
    }

    fn say(self, step: StepId, evidence: Evidence, read: Option<Now>, load_g: Option<u32>) {
        let pan = self.pan;
        let command = match (self.care, step) {
            (Care::Waste, _) => {
                let job = self.bench.look(|kitchen, _| care::waste_of(kitchen.pan_jobs(), pan));
                let who = self.job().and_then(|job| job.who).or_else(|| self.bench.me());
                job.zip(who).map(|(job, who)| Command::Waste {
                    job,
                    who,
                    step,
                    evidence,
                    read,
                    load_g,
                })
            }
            (Care::Job(_), StepId::LeavePan) => Some(Command::End { pan, evidence }),
            (Care::Job(_), _) => Some(Command::Answer {
                pan,
                step,
                evidence,
                read,
                load_g,
            }),
        };
        if let Some(command) = command {
            self.send(command);
        }
    }

    /// STOP: heat off where water is on it; else what makes this pan safe, and ways out.
    fn stop(self) {
        self.bench.trouble.set(None);
        if self.job().is_some_and(|job| job.stage == Stage::Boiling) {
            self.send(Command::HeatOff { pan: self.pan });
        } else {
            self.over.set(Some(Over::Paused));
        }
    }

    fn on_stop(self) -> Act {
        Act::new(move || self.stop())
    }

    fn pan_name(self) -> String {
        self.bench.look(|kitchen, _| day::pan_name(kitchen, self.pan))
    }

    /// What is shown by its name, for who follows from outside.
    fn step_key(self) -> &'static str {
        if self
            .bench
            .trouble
            .with(|t| t.as_ref().is_some_and(|t| matches!(t.why, Refused::Pan(_))))
        {
            return "refused";
        }
        match self.over.with(|over| over.as_ref().map(Over::key)) {
            Some(key) => key,
            None => self.now.with(|now| match now {
                CareNow::Closed => "closed",
                CareNow::Pump { .. } => "pump",
                CareNow::Ask(gate) => gate.id().key(),
                CareNow::Fat => StepId::FreshFat.key(),
                CareNow::Boil => "boil",
                CareNow::Over => "over",
                CareNow::Shut(_) => "shut",
            }),
        }
    }
}

impl Over {
    const fn key(&self) -> &'static str {
        match self {
            Self::Paused => "paused",
            Self::Who => "who",
            Self::Count(_) => "count",
            Self::Load(_) => "load",
            Self::Done => "done",
        }
    }
}

/// Oil change, boil-out or old oil of one pan.
#[must_use]
pub fn care_screen(bench: Bench, pan: PanId, care: Care) -> Element {
    let (kind, testid) = match care {
        Care::Job(JobKind::BoilOut) => (JobKind::BoilOut, "screen-boil-out"),
        Care::Job(_) => (JobKind::OilChange, "screen-oil-change"),
        Care::Waste => (JobKind::OilChange, "screen-waste"),
    };
    let bay = Bay {
        bench,
        pan,
        care,
        now: Held::new(CareNow::Closed),
        turn: Held::new(Turn::None),
        over: Held::new(None),
        ask: AskDesk::new(bench),
        who: AtTheHeat::new(bench, kind, Some(pan)),
        why: Held::new(None),
    };
    bay.ask.when_answered(Tell::new(move |answered| bay.answered(answered)));
    bay.look(true);
    let ground = Ground {
        bench,
        testid,
        why: bay.why,
        // A boil rings on every screen, this one too.
        sounding: |_, _| None,
        look: Box::new(move || bay.look(false)),
        step: Box::new(move || bay.step_key().to_owned()),
        shown: Box::new(move || draw(bay)),
    };
    ground.draw()
}

fn draw(bay: Bay) -> Node {
    let bench = bay.bench;
    let refused = bench.trouble.get().filter(|t| matches!(t.why, Refused::Pan(_)));
    if let Some(trouble) = refused {
        let on_read = Act::new(move || pages::read(bay));
        return hold_page(bench, &trouble, on_read, bay.job().map(|_| bay.on_stop()));
    }
    match bay.over.get() {
        Some(Over::Paused) => return pages::paused(bay),
        Some(Over::Who) => return pages::who(bay),
        Some(Over::Count(answered)) => return count::counted(bay, answered),
        Some(Over::Load(answered)) => return count::load(bay, answered),
        Some(Over::Done) => return pages::done(bay),
        None => {}
    }
    match bay.now.get() {
        CareNow::Closed => pages::begin(bay),
        CareNow::Pump { running } => pages::pump(bay, running),
        CareNow::Ask(_) => asked::asked(bay),
        CareNow::Fat => pages::fats(bay),
        CareNow::Boil => boil::wait(bay),
        CareNow::Over => pages::over(bay),
        CareNow::Shut(why) => pages::shut(bay, why),
    }
}
