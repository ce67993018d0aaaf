//! A clean run whose page dies at every gate: the look again comes first, and then the run goes on where it stood.

use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::run::{Form, Place};
use panward::domain::facts::setup::OutBy;
use panward::domain::fat::Fat;
use panward::domain::guide::asking::{Asking, Touched};
use panward::domain::guide::gate::QuestionKind;
use panward::domain::guide::{Command, Refusal, Run};
use panward::domain::procedure::{StepId, Tables};
use panward::domain::time::{Millis, Now};

use crate::node::Node;
use crate::orders::answers;
use crate::world::{ALL, PAN, World, run_id, world};

pub fn kitchen() -> World {
    world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, ALL)
}

impl Node {
    pub fn run_now(&self) -> &Run {
        self.guide.job().and_then(|job| job.run.as_ref()).unwrap()
    }

    pub fn step(&self) -> StepId {
        self.guide.gate(&self.now).unwrap().id()
    }

    fn order(&mut self, command: &Command) {
        let drafts = self.decide(command).unwrap().unwrap();
        self.write(drafts, Some(&self.now.clone())).unwrap();
    }

    pub fn answer(&mut self, evidence: Evidence) {
        let (step, read) = (self.step(), Some(self.now));
        self.order(&Command::Answer { step, evidence, read });
    }

    /// The good answers of the gate.
    pub fn good(&self) -> Evidence {
        let mut evidence = answers(&self.guide.gate(&self.now).unwrap()).swap_remove(0);
        evidence.put(Item::OilTemp, Seen::Number(1_500));
        evidence
    }

    /// Goes on as it must be until this step is asked.
    pub fn to(&mut self, world: &World, step: StepId) {
        for _ in 0..40 {
            match self.guide.gate(&self.now).map(|gate| gate.id()) {
                Some(now) if now == step => return,
                Some(StepId::Who) => self.order(&Command::Who {
                    person: world.who.0,
                    supervisor: world.who.1,
                }),
                Some(StepId::Machine) => self.order(&Command::Machine {
                    machine: crate::world::MACHINE,
                    used_since: Word::No,
                }),
                Some(_) => self.answer(self.good()),
                None => self.order(&Command::Begin {
                    run: run_id(0),
                    pan: PAN,
                    form: world.form,
                    plan: world.plan,
                }),
            }
        }
        panic!("{} is never asked", step.key())
    }

    /// Looks again and says where the oil is, twice.
    pub fn looks(&mut self, place: Word) {
        assert_eq!(self.step(), StepId::LookAgain);
        let seen = self.good().with(Item::Place, place).with(Item::PlaceAgain, place);
        self.answer(seen);
    }
}

pub fn at(step: StepId) -> Node {
    let world = kitchen();
    let mut node = Node::first(&world, Tables::REAL);
    node.order(&Command::Open(crate::world::JOB));
    node.to(&world, step);
    node
}

/// Every step of the nozzle machine, where its oil is seen after a kill, and where the run goes on then.
const RESUMED: &[(StepId, Word, StepId)] = &[
    (StepId::HeatOff, Word::InPan, StepId::HeatOff),
    (StepId::Scrape, Word::InPan, StepId::Scrape),
    (StepId::Skim, Word::InPan, StepId::Skim),
    (StepId::SampleOut, Word::InPan, StepId::SampleOut),
    (StepId::OilTemp, Word::InPan, StepId::OilTemp),
    // A reading of before the kill counts no longer; then the same step.
    (StepId::Connect, Word::InPan, StepId::OilTemp),
    // The pump is off: what is left in the pan says whether the draw goes on.
    (StepId::Draw, Word::Split, StepId::Remainder),
    (StepId::Draw, Word::InMachine, StepId::Remainder),
    (StepId::Remainder, Word::InMachine, StepId::Remainder),
    (StepId::Wipe, Word::InMachine, StepId::Wipe),
    (StepId::Rinse, Word::InMachine, StepId::Rinse),
    // Oil on its way round or back has one safe way.
    (StepId::Rinsing, Word::Split, StepId::GiveBack),
    (StepId::Rinsing, Word::InMachine, StepId::GiveBack),
    (StepId::Compare, Word::InMachine, StepId::Compare),
    (StepId::GiveBack, Word::InMachine, StepId::GiveBack),
    (StepId::Returning, Word::Split, StepId::GiveBack),
    (StepId::Returning, Word::InPan, StepId::Tank),
    (StepId::Tank, Word::InPan, StepId::Tank),
    (StepId::Level, Word::InPan, StepId::Level),
    // No level of before the kill opens a hold.
    (StepId::Leave, Word::InPan, StepId::Level),
];

#[test]
fn a_killed_run_looks_again_and_goes_on_where_it_stood() {
    // Match and the second sample are asked in one with the step after them.
    let in_one = [StepId::Match, StepId::SampleBack];
    for step in Tables::REAL.nozzle.iter().filter(|step| !in_one.contains(&step.id)) {
        assert!(RESUMED.iter().any(|(id, ..)| *id == step.id), "{}", step.id.key());
    }
    for (killed, place, goes_on) in RESUMED {
        let mut node = at(*killed).reload();
        node.looks(*place);
        assert_eq!(node.step(), *goes_on, "killed at {}, oil {}", killed.key(), place.key());
        if *goes_on != StepId::GiveBack && *goes_on != StepId::Tank {
            node.to(&kitchen(), *if *killed == StepId::Draw { goes_on } else { killed });
        }
    }
}

#[test]
fn a_draw_that_was_cut_short_goes_on_through_every_hold_of_its_own() {
    let mut node = at(StepId::Draw).reload();
    node.looks(Word::Split);
    node.answer(Evidence::new().with(Item::Remainder, Word::Oil));
    // A reading older than the kill counts for nothing, and too cool a one shuts the way on: STOP is the other.
    assert_eq!(node.step(), StepId::OilTemp);
    let mut cool = node.good();
    cool.put(Item::OilTemp, Seen::Number(990));
    let refused = node.guide.decide(
        &node.scene,
        &Command::Answer {
            step: StepId::OilTemp,
            evidence: cool,
            read: Some(node.now),
        },
        &node.now,
    );
    assert!(matches!(refused, Err(Refusal::TooCool { .. })), "{refused:?}");
    let mut stopped = node.clone();
    node.answer(node.good());
    assert_eq!(node.step(), StepId::Connect);
    node.answer(node.good());
    assert_eq!(node.step(), StepId::Draw);

    stopped.order(&Command::Stop);
    stopped.order(&Command::MadeSafe);
    stopped.looks(Word::Split);
    assert_eq!(stopped.step(), StepId::GiveBack);
}

#[test]
fn a_stopped_run_begins_its_pan_anew_or_gives_the_oil_back_also_after_a_kill() {
    for (step, place, goes_on) in [
        (StepId::Connect, Word::InPan, StepId::HeatOff),
        (StepId::Draw, Word::Split, StepId::GiveBack),
        (StepId::Leave, Word::InPan, StepId::Tank),
    ] {
        let mut node = at(step);
        node.order(&Command::Stop);
        node = node.reload();
        node.order(&Command::MadeSafe);
        node = node.reload();
        node.looks(place);
        assert_eq!(node.step(), goes_on, "stopped at {}", step.key());
    }
}

#[test]
fn the_place_the_log_knows_stands_first_and_another_is_believed_only_when_seen_twice() {
    let mut node = at(StepId::GiveBack).reload();
    assert_eq!(node.run_now().place, Place::InMachine);
    let gate = node.guide.gate(&node.now).unwrap();
    let run = Some(node.run_now().clone());
    let mut asking = Asking::new(gate.clone(), &node.now);
    let mut now = node.now;
    let mut touch = |asking: &mut Asking, word: Option<Word>| {
        now = Now {
            wall: Millis(now.wall.0 + 1_000),
            mono: now.mono + 1_000,
            ..now
        };
        let Some(QuestionKind::Look { item, answers }) = asking.current(run.as_ref()).map(|q| q.kind) else {
            panic!("a look is asked");
        };
        let first = answers[0].word;
        (
            item,
            first,
            asking.look(item, word.unwrap_or(first), run.as_ref(), &now),
        )
    };
    while asking.current(run.as_ref()).unwrap().kind != gate.questions[3].kind {
        touch(&mut asking, None);
    }
    let (item, first, touched) = touch(&mut asking, Some(Word::InPan));
    assert_eq!((item, first, touched), (Item::Place, Word::InMachine, Touched::Kept));
    // Two looks that differ: neither is kept.
    // No answer stands where it stood.
    let (item, first, touched) = touch(&mut asking, Some(Word::InMachine));
    assert_eq!((item, first, touched), (Item::PlaceAgain, Word::InPan, Touched::Kept));
    assert_eq!(asking.seen().word(Item::Place), None);
    assert_eq!(asking.seen().word(Item::PlaceAgain), None);
    // As the log has it, once is enough.
    let mut same = asking.clone();
    let (item, _, touched) = touch(&mut same, None);
    assert_eq!((item, touched), (Item::Place, Touched::AllAnswered));
    touch(&mut asking, Some(Word::InPan));
    let (item, _, touched) = touch(&mut asking, Some(Word::InPan));
    assert_eq!((item, touched), (Item::PlaceAgain, Touched::AllAnswered));

    let once: Evidence = asking
        .seen()
        .iter()
        .filter(|(i, _)| *i != Item::PlaceAgain)
        .cloned()
        .collect();
    for evidence in [once.clone(), once.with(Item::PlaceAgain, Word::Split)] {
        let step = StepId::LookAgain;
        let command = Command::Answer {
            step,
            evidence,
            read: None,
        };
        assert_eq!(node.decide(&command), Ok(None), "believed on one look");
    }
    node.answer(asking.seen().clone());
    assert_eq!(node.run_now().place, Place::InPan);
}
