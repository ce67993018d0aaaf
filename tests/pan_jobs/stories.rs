//! Whole jobs told step by step, and what each leaves behind.

use panward::domain::day_jobs;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::JobKind;
use panward::domain::facts::run::{Contents, Place};
use panward::domain::fat::Fat;
use panward::domain::guide;
use panward::domain::guide::gate::{Gate, QuestionKind};
use panward::domain::ids::PanId;
use panward::domain::pan_jobs::{Command, Refusal, Stage};
use panward::domain::procedure::{PanTables, StepId};
use panward::domain::time::Millis;

use crate::node::{Node, Order};
use crate::orders::{of_guide, of_log};
use crate::world::{ANN, PAN, SOLID, STARTER, job_id, later, litres};

/// A kitchen in the middle of its work.
pub struct Story {
    pub node: Node,
}

/// Everything as it must be, at 30 °C.
fn best(gate: &Gate) -> Evidence {
    let looks = gate.looks();
    let first = looks
        .iter()
        .filter_map(|(_, item, offered)| Some((*item, Seen::Is(offered.first()?.word))));
    let mut all: Evidence = first.collect();
    for question in &gate.questions {
        if let QuestionKind::Probe { item } = question.kind {
            all.put(item, Seen::Number(300));
        }
    }
    all
}

impl Story {
    pub fn of(tables: PanTables) -> Self {
        Self {
            node: Node::new(tables),
        }
    }

    fn order(&mut self, order: Order) -> &mut Self {
        let after = self.node.after(&order).unwrap_or_else(|| panic!("refused: {order:?}"));
        self.node = after.unwrap();
        self.node.now = later(self.node.now, 1_000);
        self
    }

    fn pan(&mut self, command: Command) -> &mut Self {
        self.order(Order::Pan(command))
    }

    fn open(&mut self, what: JobKind, pan: PanId) -> &mut Self {
        let job = job_id(self.node.opened);
        self.pan(Command::Open {
            job,
            what,
            pan,
            who: ANN,
            supervisor: None,
        })
    }

    fn asked(&self, pan: PanId) -> Vec<Gate> {
        self.node.pans.asks(&self.node.scene, pan, &self.node.now).unwrap()
    }

    /// Answers what is asked first as it must be, but for what `but` says.
    fn go(&mut self, pan: PanId, but: &[(Item, Word)]) -> StepId {
        let gate = self.asked(pan).swap_remove(0);
        let evidence = but.iter().fold(best(&gate), |e, (item, word)| match e.word(*item) {
            Some(_) => e.with(*item, *word),
            None => e,
        });
        let step = gate.id();
        let (read, load_g) = (Some(self.node.now), None);
        let now_empty = matches!(step, StepId::EmptyByHand | StepId::CutOut | StepId::InMachine);
        let waste = self.node.pans.job(pan).map(|j| j.job).filter(|_| step == StepId::Waste);
        self.pan(if now_empty {
            Command::Out {
                pan,
                step,
                evidence,
                amount: litres(18),
                reason: "dark".into(),
                container: Some("drum 1".into()),
            }
        } else if step == StepId::FreshLevel {
            Command::Filled {
                pan,
                evidence: evidence.with(Item::Tag, Word::None),
                amount: litres(18),
                batch: None,
            }
        } else if let Some(job) = waste {
            Command::Waste {
                job,
                who: ANN,
                step,
                evidence,
                read,
                load_g,
            }
        } else {
            Command::Answer {
                pan,
                step,
                evidence,
                read,
                load_g,
            }
        });
        step
    }

    /// Goes on until the job stands at a stage.
    fn to(&mut self, pan: PanId, stage: Stage, but: &[(Item, Word)]) -> &mut Self {
        for _ in 0..30 {
            if self.stage(pan) == Some(stage) && self.ready(pan) {
                return self;
            }
            self.go(pan, but);
        }
        panic!("never at {stage:?}, but at {:?}", self.stage(pan));
    }

    fn stage(&self, pan: PanId) -> Option<Stage> {
        let job = self.node.pans.job(pan)?;
        Some(self.node.pans.stage(job, self.node.scene.pan(pan)?, &self.node.now))
    }

    /// Whether what is asked is the stage's own, and neither kit, floor nor waste.
    fn ready(&self, pan: PanId) -> bool {
        let asks = self.asked(pan);
        let first = asks.first().map(Gate::id);
        !matches!(
            first,
            Some(StepId::Kit | StepId::Floor | StepId::Waste | StepId::LookAgain)
        )
    }

    /// The pan's oil taken out by hand or cut out, the job left.
    pub fn emptied(mut self, pan: PanId) -> Self {
        let way = if pan == SOLID { Word::CutOut } else { Word::ByHand };
        self.open(JobKind::OilChange, pan)
            .to(pan, Stage::Clean, &[(Item::OutWay, way)]);
        self.leave(pan);
        self
    }

    fn leave(&mut self, pan: PanId) -> &mut Self {
        let gate = self
            .node
            .pans
            .leave_gate(&self.node.scene, pan, &self.node.now)
            .unwrap();
        let evidence = gate.map_or_else(Evidence::new, |gate| best(&gate));
        self.pan(Command::End { pan, evidence })
    }

    /// A filter run that pumps the oil out and leaves it in the machine, with the oil change waiting for it.
    pub fn pumped(mut self, pan: PanId) -> Self {
        self.open(JobKind::OilChange, pan).to(pan, Stage::Pump, &[]);
        for _ in 0..60 {
            if self.stage(pan) == Some(Stage::InMachine) {
                return self;
            }
            let out = self.node.scene.pan(pan).is_some_and(|p| p.place == Place::InMachine);
            let mut orders = of_guide(&self.node);
            orders.retain(|command| match command {
                guide::Command::LeaveOut(evidence) => out && !evidence.is_empty(),
                guide::Command::Begin { pan: begun, .. } => *begun == pan,
                guide::Command::Who { .. } => self.node.guide.job().is_some_and(|j| j.who.is_none()),
                guide::Command::Machine { .. } => self.node.guide.job().is_some_and(|j| j.machine.is_none()),
                guide::Command::Open(_) => true,
                guide::Command::Answer { .. } => !out,
                _ => false,
            });
            let order = orders
                .into_iter()
                .map(Order::Guide)
                .find(|order| self.node.after(order).is_some());
            self.order(order.unwrap());
        }
        panic!("never pumped out");
    }

    fn contents(&self, pan: PanId) -> Contents {
        self.node.ledger.contents(pan)
    }

    fn refused(&self, command: &Command) -> Refusal {
        self.node
            .pans
            .decide(&self.node.scene, command, &self.node.now)
            .unwrap_err()
    }
}

/// Kills the page at every stage of a whole job: after the look again it stands where it stood, and comes to its end.
pub fn resumes(what: JobKind, pan: PanId) {
    let mut story = Story::of(PanTables::REAL);
    let mut way = [(Item::OutWay, Word::ByHand)];
    if pan == SOLID {
        way = [(Item::OutWay, Word::CutOut)];
    }
    if what == JobKind::BoilOut {
        story = story.emptied(pan);
    }
    story.open(what, pan);
    for _ in 0..60 {
        let Some(before) = story.stage(pan) else {
            let dry = if what == JobKind::BoilOut {
                Contents::EmptyDry
            } else if pan == SOLID {
                Contents::SetFat
            } else {
                Contents::Oil
            };
            assert_eq!(story.contents(pan), dry);
            return;
        };
        let mut node = story.node.killed();
        node.troubles = 0;
        let mut again = Story { node };
        let job = again.node.pans.job(pan).unwrap();
        if again.node.pans.is_interrupted(job, &again.node.now) {
            let holds = match story.contents(pan) {
                Contents::Oil | Contents::SetFat => Word::Oil,
                Contents::CleaningWater => Word::Water,
                Contents::EmptyWet | Contents::EmptyDry => Word::Empty,
            };
            assert_eq!(again.go(pan, &[(Item::PanHolds, holds)]), StepId::LookAgain);
        }
        let after = again.stage(pan).unwrap();
        // A reading counts in its own page life only, and heat that was looked at is off.
        let then = match before {
            Stage::Container => Stage::Temp,
            Stage::Drain | Stage::Boiling | Stage::MakeSafe => Stage::Off,
            other => other,
        };
        assert_eq!(after, then, "{what:?}");
        if before == Stage::Fresh {
            let fat = if pan == SOLID { Fat::Dripping } else { Fat::Rapeseed };
            story.pan(Command::Fresh { pan, fat });
        } else if before == Stage::Boiling {
            story.pan(Command::HeatOff { pan });
        } else {
            story.go(pan, &way);
        }
        if before == Stage::Heat {
            assert_eq!(story.stage(pan), Some(Stage::Boiling));
        }
    }
    panic!("never at the end of {what:?}");
}

#[test]
fn a_whole_oil_change_by_hand_writes_the_oil_out_and_the_oil_in() {
    let mut story = Story::of(PanTables::REAL);
    story
        .open(JobKind::OilChange, PAN)
        .to(PAN, Stage::Taking, &[(Item::OutWay, Word::ByHand)]);
    assert_eq!(story.node.ledger.in_pan(PAN).unwrap().place, Place::InContainer);
    assert_eq!(story.node.ledger.empties(), [PAN]);
    assert_eq!(
        story.refused(&Command::End {
            pan: PAN,
            evidence: Evidence::new()
        }),
        Refusal::Midway
    );
    story.to(PAN, Stage::Fresh, &[(Item::OutWay, Word::ByHand)]);
    assert_eq!(
        (story.contents(PAN), story.node.ledger.empties()),
        (Contents::EmptyDry, vec![PAN])
    );
    assert!(story.node.ledger.fill(PAN).is_none());
    story.pan(Command::Fresh {
        pan: PAN,
        fat: Fat::Rapeseed,
    });
    story.to(PAN, Stage::Level, &[]).go(PAN, &[]);
    assert!(story.node.pans.job(PAN).is_none());
    assert_eq!(
        (story.contents(PAN), story.node.ledger.empties()),
        (Contents::Oil, Vec::new())
    );
    let last: Vec<_> = story
        .node
        .log
        .iter()
        .filter_map(|e| match &e.fact {
            Fact::OilChange(change) => Some((change.temp.map(|t| t.dc()), change.container.clone())),
            _ => None,
        })
        .collect();
    assert_eq!(last, [(Some(300), Some("drum 1".to_owned()))]);
    assert_eq!(story.node.ledger.fill(PAN).unwrap().first, litres(18).volume);
}

#[test]
fn no_answer_leads_hot_oil_into_anything_by_hand() {
    let mut story = Story::of(PanTables::REAL);
    story
        .open(JobKind::OilChange, PAN)
        .to(PAN, Stage::Temp, &[(Item::OutWay, Word::ByHand)]);
    let mut evidence = Evidence::new();
    evidence.put(Item::OilTemp, Seen::Number(401));
    let answer = |evidence, read| Command::Answer {
        pan: PAN,
        step: StepId::OilTemp,
        evidence,
        read,
        load_g: None,
    };
    let now = story.node.now;
    assert!(matches!(
        story.refused(&answer(evidence.clone(), Some(now))),
        Refusal::Guide(guide::Refusal::TooHot { .. })
    ));
    evidence.put(Item::OilTemp, Seen::Number(400));
    let too_old = Refusal::Guide(guide::Refusal::ReadingTooOld);
    assert_eq!(story.refused(&answer(evidence.clone(), None)), too_old);
    story.pan(answer(evidence, Some(now)));
    story.node.now = later(story.node.now, 5 * Millis::MINUTE);
    assert_eq!(story.stage(PAN), Some(Stage::Temp));
}

#[test]
fn a_fat_that_is_set_at_forty_is_cut_out_or_pumped_and_an_oil_is_never_cut() {
    let words = |pan| {
        let mut story = Story::of(PanTables::REAL);
        story.open(JobKind::OilChange, pan).to(pan, Stage::How, &[]);
        let looks = story.asked(pan)[0].looks();
        looks[0].2.iter().map(|a| a.word).collect::<Vec<_>>()
    };
    assert_eq!(words(SOLID), [Word::Pumped, Word::CutOut]);
    assert_eq!(words(PAN), [Word::Pumped, Word::ByHand]);
}

#[test]
fn oil_pumped_out_stays_tagged_in_the_machine_while_the_pan_is_filled() {
    let mut story = Story::of(PanTables::REAL).pumped(PAN);
    story.to(PAN, Stage::Fresh, &[]);
    story.pan(Command::Fresh {
        pan: PAN,
        fat: Fat::Rapeseed,
    });
    story.to(PAN, Stage::Level, &[]).go(PAN, &[]);
    let waste = story.node.pans.state().waste[0];
    assert!(waste.machine.is_some() && story.node.pans.job(PAN).is_none());
    let gate = story.node.pans.waste_gate(waste.job).unwrap();
    let mut evidence = best(&gate);
    evidence.put(Item::OilTemp, Seen::Number(401));
    let answer = |step, evidence, read| Command::Waste {
        job: waste.job,
        who: ANN,
        step,
        evidence,
        read: Some(read),
        load_g: None,
    };
    let now = story.node.now;
    assert!(matches!(
        story.refused(&answer(StepId::LetOut, evidence, now)),
        Refusal::Guide(guide::Refusal::TooHot { .. })
    ));
    story.pan(answer(StepId::LetOut, best(&gate), now));
    let gate = story.node.pans.waste_gate(waste.job).unwrap();
    let now = story.node.now;
    story.pan(answer(StepId::Waste, best(&gate), now));
    assert!(story.node.pans.state().waste.is_empty());
}

#[test]
fn a_claim_refuses_a_fat_that_meets_it_and_another_fat_asks_for_the_sheet() {
    let mut story = Story::of(PanTables::REAL).emptied(PAN);
    story.open(JobKind::OilChange, PAN).to(PAN, Stage::Fresh, &[]);
    assert!(matches!(
        story.refused(&Command::Fresh {
            pan: PAN,
            fat: Fat::Lard
        }),
        Refusal::ClaimMet { .. }
    ));
    story.pan(Command::Fresh {
        pan: PAN,
        fat: Fat::Palm,
    });
    assert_eq!(story.stage(PAN), Some(Stage::ChangeOver));
    story.to(PAN, Stage::Level, &[]).go(PAN, &[]);
    assert_eq!(story.contents(PAN), Contents::SetFat);
    assert_eq!(story.node.ledger.book.pan(PAN).unwrap().fat, Fat::Palm);
}

#[test]
fn a_boil_out_says_water_and_is_never_left_hot() {
    let mut story = Story::of(PanTables::REAL).emptied(PAN);
    story.open(JobKind::BoilOut, PAN).to(PAN, Stage::Boiling, &[]);
    assert_eq!(
        (story.contents(PAN), story.node.ledger.empties()),
        (Contents::CleaningWater, vec![PAN])
    );
    let end = Command::End {
        pan: PAN,
        evidence: Evidence::new(),
    };
    assert_eq!(story.refused(&end), Refusal::HeatFirst);
    // The light-up says why, the log takes no oil, and no filter run begins.
    story.order(Order::Day(day_jobs::Command::Open {
        job: job_id(50),
        what: JobKind::LightUp,
        who: ANN,
        supervisor: None,
    }));
    let light = story.node.day.light_gate(&story.node.scene, PAN, &story.node.now);
    assert_eq!(light, Err(day_jobs::Refusal::WaterInPan));
    for said in of_log(&story.node).into_iter().filter(|s| s.sure) {
        let pan_is = matches!(&said.what, panward::domain::quick::Quick::Fill(f) if f.pan == PAN);
        assert!(!pan_is || story.node.after(&Order::Said(Box::new(said))).is_none());
    }
    // Foam: heat off before another word.
    story.go(PAN, &[(Item::Foam, Word::Rising)]);
    assert_eq!(story.stage(PAN), Some(Stage::MakeSafe));
    story.go(PAN, &[]);
    assert_eq!(story.stage(PAN), Some(Stage::Off));
    story.leave(PAN);
    assert_eq!(story.contents(PAN), Contents::CleaningWater);
    // Taken up again where the water stands.
    story.open(JobKind::BoilOut, PAN);
    assert_eq!(story.go(PAN, &[(Item::PanHolds, Word::Water)]), StepId::LookAgain);
    assert_eq!(story.stage(PAN), Some(Stage::Off));
}

#[test]
fn five_silent_minutes_past_a_look_make_the_heat_unknown() {
    let mut story = Story::of(PanTables::REAL).emptied(PAN);
    story.open(JobKind::BoilOut, PAN).to(PAN, Stage::Boiling, &[]);
    let looked = later(story.node.now, -1_000);
    story.node.now = later(looked, 10 * Millis::MINUTE - 1);
    assert_eq!(story.stage(PAN), Some(Stage::Boiling));
    story.node.now = later(looked, 10 * Millis::MINUTE);
    assert_eq!(story.stage(PAN), Some(Stage::MakeSafe));
    assert_eq!(story.go(PAN, &[(Item::PanHolds, Word::Water)]), StepId::LookAgain);
    assert_eq!(story.stage(PAN), Some(Stage::Off));
}

#[test]
fn a_starter_alone_and_a_heavy_container_alone_are_refused() {
    let story = Story::of(PanTables::REAL);
    let open = Command::Open {
        job: job_id(0),
        what: JobKind::OilChange,
        pan: PAN,
        who: STARTER,
        supervisor: None,
    };
    assert!(matches!(
        story.refused(&open),
        Refusal::Guide(guide::Refusal::NotSignedOff { .. })
    ));
    let mut story = Story::of(PanTables::REAL);
    story
        .open(JobKind::OilChange, PAN)
        .to(PAN, Stage::Container, &[(Item::OutWay, Word::ByHand)]);
    let gate = story.asked(PAN).swap_remove(0);
    let alone = |load_g| Command::Answer {
        pan: PAN,
        step: StepId::Container,
        evidence: best(&gate).with(Item::Carry, Word::Alone),
        read: None,
        load_g,
    };
    for load in [None, Some(7_001)] {
        assert_eq!(story.refused(&alone(load)), Refusal::NeedsHelp { from_kg: 7 });
    }
    story.pan(alone(Some(7_000)));
}
