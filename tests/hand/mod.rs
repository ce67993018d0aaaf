//! A person at the phone who goes through a filter job gate by gate, and what that costs and leaves behind.

use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::RunEvent;
use panward::domain::guide::asking::{Asking, Touched};
use panward::domain::guide::gate::QuestionKind;
use panward::domain::guide::{Command, Guide, Refusal, Scene};
use panward::domain::ids::PanId;
use panward::domain::procedure::{StepId, Tables, Verdict};
use panward::domain::time::{Millis, Now};

use crate::world::{JOB, MACHINE, PAN, World, run_id, stamp, start};

/// A person at the phone who does everything right, one touch a second.
pub struct Hand<'a> {
    pub world: &'a World,
    pub guide: Guide,
    pub now: Now,
    pub seq: u32,
    pub touches: u32,
    /// Where the oil is said to be when everything is looked at again.
    pub place: Word,
    pub seen: Vec<(StepId, Evidence)>,
    /// Everything written, in order.
    pub log: Vec<Entry>,
    /// What hose and line are said to be when they are to be run empty.
    pub line: Word,
}

impl<'a> Hand<'a> {
    pub fn new(world: &'a World) -> Self {
        let mut hand = Self {
            world,
            guide: Guide::new(Tables::REAL),
            now: start(),
            seq: 0,
            touches: 0,
            place: Word::InPan,
            seen: Vec::new(),
            log: Vec::new(),
            line: Word::RunEmpty,
        };
        hand.order(&Command::Open(JOB));
        hand
    }

    pub fn pass(&mut self, ms: i64) {
        self.now.wall = Millis(self.now.wall.0 + ms);
        self.now.mono += ms;
    }

    pub fn touch(&mut self) {
        self.touches += 1;
        self.pass(1_000);
    }

    pub fn order(&mut self, command: &Command) {
        let drafts = self
            .guide
            .decide(&self.world.scene, command, &self.now)
            .unwrap_or_else(|refusal| {
                panic!("{command:?} refused: {refusal:?}");
            });
        for draft in drafts {
            self.seq += 1;
            let entry = stamp(draft, self.seq, &self.now);
            match &entry.fact {
                Fact::Job(fact) => self.seen.extend(fact.step.map(|step| (step, fact.evidence.clone()))),
                Fact::Run(fact) if fact.event != RunEvent::Began => self.seen.push((fact.step, fact.evidence.clone())),
                _ => {}
            }
            self.guide.apply(&entry, &self.world.scene, Some(&self.now));
            self.log.push(entry);
        }
    }

    /// Goes through the gate that stands now.
    pub fn gate(&mut self, left: Word) {
        let gate = self.guide.gate(&self.now).expect("a gate stands");
        let step = gate.id();
        let run = self.guide.job().and_then(|j| j.run.clone());
        let run = run.as_ref();
        let mut asking = Asking::new(gate, &self.now);
        let last = loop {
            let question = asking.current(run).expect("a question");
            self.touch();
            let now = self.now;
            let touched = match &question.kind {
                QuestionKind::Look { item, answers } => {
                    let word = match item {
                        Item::Left => left,
                        Item::Place => self.place,
                        Item::Line if step == StepId::AwayLine => self.line,
                        _ => answers.iter().find(|a| a.verdict == Verdict::Good).unwrap().word,
                    };
                    asking.look(*item, word, run, &now)
                }
                QuestionKind::Together(_) => asking.all_so(run, &now),
                QuestionKind::Probe { item } => {
                    self.touch();
                    asking.number(*item, 1_500, run, &self.now)
                }
                QuestionKind::Person => asking.named(Item::SignOff, Word::Signed, run, &now),
                QuestionKind::Machine => asking.named(Item::Machine, Word::Ready, run, &now),
            };
            match touched {
                Touched::Kept => {}
                other => break other,
            }
        };
        if last == Touched::AllAnswered {
            self.touch();
            assert!(asking.goes_on(run, &self.now), "Go on is awake at {}", step.key());
        } else {
            assert_eq!(last, Touched::GoesOn, "at {}", step.key());
        }
        let command = match step {
            StepId::Who => Command::Who {
                person: self.world.who.0,
                supervisor: self.world.who.1,
            },
            StepId::Machine => Command::Machine {
                machine: MACHINE,
                used_since: Word::No,
            },
            _ => Command::Answer {
                step,
                evidence: asking.seen().clone(),
                read: asking.read(),
            },
        };
        self.order(&command);
    }

    /// Ready, the machine's heater and the test sound included. Returns its touches.
    pub fn ready(&mut self) -> u32 {
        let before = self.touches;
        while self.guide.gate(&self.now).is_some() {
            self.gate(Word::Off);
        }
        if self.world.scene.pans[0].pan.fat.is_solid() {
            self.touch();
            self.order(&Command::Heater(true));
        }
        self.touches - before
    }

    pub fn begin(&mut self) {
        self.touch();
        let command = self.begins(PAN);
        self.order(&command);
    }

    /// The order that begins a pan.
    pub fn begins(&self, pan: PanId) -> Command {
        let World { form, plan, .. } = *self.world;
        Command::Begin {
            run: run_id(self.seq),
            pan,
            form,
            plan,
        }
    }

    /// Everything the pan in hand still asks.
    pub fn to_the_end(&mut self, left: Word) {
        while self.guide.job().is_some_and(|j| j.run.is_some()) {
            self.gate(left);
        }
    }

    /// Goes on until this step is asked.
    pub fn to(&mut self, step: StepId) {
        while self.step() != Some(step) {
            self.gate(Word::Off);
        }
    }

    /// What is asked now.
    pub fn step(&self) -> Option<StepId> {
        self.guide.gate(&self.now).map(|gate| gate.id())
    }

    /// Why an order is refused.
    pub fn refusal(&self, scene: &Scene, command: &Command) -> Option<Refusal> {
        self.guide.decide(scene, command, &self.now).err()
    }

    pub fn pan(&mut self, left: Word) -> u32 {
        let before = self.touches;
        self.begin();
        self.to_the_end(left);
        self.touches - before
    }

    pub fn put_away(&mut self) -> u32 {
        let before = self.touches;
        self.touch();
        self.order(&Command::PutAway);
        while self.guide.job().is_some() {
            self.gate(Word::Off);
        }
        self.touches - before
    }

    pub fn has(&self, item: Item, word: Word) -> bool {
        self.seen.iter().any(|(_, seen)| seen.is(item, word))
    }
}
