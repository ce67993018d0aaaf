//! A filter job walked from begin to end by somebody who answers all as it must be, with a trouble anywhere in it.

use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Form, Heat, Left, Place, Pump, RunEvent, RunFact};
use panward::domain::facts::setup::OutBy;
use panward::domain::facts::trouble::{TroubleFact, TroubleKind};
use panward::domain::fat::Fat;
use panward::domain::guide::state::Phase;
use panward::domain::guide::{Command, Guide, Refusal, Warm};
use panward::domain::procedure::{Hold, StepId, Tables, Verdict};
use panward::domain::time::{Millis, Now};
use panward::domain::trouble::Standing;
use proptest::prelude::*;
use proptest::sample::select;

use super::world::{ALL, JOB, MACHINE, NONE, PAN, World, run_id, stamp, start, world};
use super::{begins, stops};

pub struct Walk {
    pub world: World,
    pub guide: Guide,
    pub now: Now,
    seq: u32,
    /// What stands, and when it began, in orders.
    stands: Option<TroubleKind>,
    place: Place,
    drew: bool,
    /// How the run ended.
    left: Option<Left>,
}

impl Walk {
    pub fn new(world: World) -> Self {
        let mut walk = Self {
            world,
            guide: Guide::new(Tables::REAL),
            now: start(),
            seq: 0,
            stands: None,
            place: Place::InPan,
            drew: false,
            left: None,
        };
        walk.order(&Command::Open(JOB)).unwrap();
        walk
    }

    fn pass(&mut self, ms: i64) {
        self.now.wall = Millis(self.now.wall.0 + ms);
        self.now.mono += ms;
    }

    pub fn order(&mut self, command: &Command) -> Result<(), Refusal> {
        self.pass(1_000);
        for draft in self.guide.decide(&self.world.scene, command, &self.now)? {
            self.seq += 1;
            let entry = stamp(draft, self.seq, &self.now);
            if let Fact::Run(fact) = &entry.fact {
                self.judge(fact);
            }
            self.guide.apply(&entry, &self.world.scene, Some(&self.now));
        }
        Ok(())
    }

    /// What is accepted while a trouble stands, judged by the entries alone.
    fn judge(&mut self, fact: &RunFact) {
        let (draw, heat) = self.stands.map_or((false, false), stops);
        if fact.event == RunEvent::Began && fact.place == Place::InPan {
            assert!(!draw, "a pan begun under {:?}", self.stands);
        }
        let leaves = self.place == Place::InPan && fact.place != Place::InPan && fact.event == RunEvent::Pump;
        assert!(
            !(draw && (leaves || fact.pump == Pump::Drawing)),
            "oil let out under {:?}",
            self.stands
        );
        assert!(
            !(heat && matches!(fact.heat, Heat::On | Heat::Low)),
            "heat on under {:?}",
            self.stands
        );
        self.drew |= leaves;
        self.place = fact.place;
        self.left = fact.left.or(self.left);
    }

    pub fn trouble(&mut self, fact: TroubleFact) {
        self.seq += 1;
        self.stands = Some(fact.what);
        self.world.scene.troubles.push(Standing {
            what: fact.what,
            pan: fact.pan,
            machine: fact.machine,
            since: self.now.wall,
            looked: false,
        });
        let draft = panward::domain::entry::Draft::now(None, Fact::Trouble(Box::new(fact)));
        let entry = stamp(draft, self.seq, &self.now);
        self.guide.apply(&entry, &self.world.scene, Some(&self.now));
    }

    fn run(&self) -> Option<&panward::domain::guide::Run> {
        self.guide.job()?.run.as_ref()
    }

    /// The gate that stands, answered as it must be.
    pub fn answer(&mut self, left: Word) -> Option<Result<(), Refusal>> {
        let gate = self.guide.gate(&self.now)?;
        let by_hand = self.world.scene.machines[0].machine.out_by == OutBy::Hand;
        let mut seen = Evidence::new();
        for (_, item, answers) in gate.looks() {
            let word = match item {
                Item::Left => left,
                Item::Place => match self.place {
                    Place::InPan => Word::InPan,
                    Place::Split => Word::Split,
                    Place::InMachine => Word::InMachine,
                    Place::InContainer => Word::InContainer,
                    Place::Gone => Word::Gone,
                },
                _ => answers.iter().find(|a| a.verdict == Verdict::Good)?.word,
            };
            seen.put(item, Seen::Is(word));
        }
        seen.put(Item::OilTemp, Seen::Number(if by_hand { 350 } else { 1_500 }));
        let step = gate.id();
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
                evidence: seen,
                read: Some(self.now),
            },
        };
        Some(self.order(&command))
    }

    /// One thing more, as a person would: answer, else begin the pan, else leave it be. Whether anything moved.
    fn goes_on(&mut self) -> bool {
        if self.run().is_some_and(|run| run.phase == Phase::Stopped) {
            return self.order(&Command::GiveUp).is_ok() || self.order(&Command::MadeSafe).is_ok();
        }
        let answered = self.answer(Word::Relit).or_else(|| {
            let World { form, plan, .. } = self.world;
            let (run, pan) = (run_id(0), PAN);
            (self.left.is_none()).then(|| self.order(&Command::Begin { run, pan, form, plan }))
        });
        match answered {
            Some(Ok(())) => true,
            Some(Err(Refusal::Trouble { .. })) if self.place == Place::InPan && self.run().is_some() => {
                // Heat is stopped: the pan is left off. Oil is stopped: the pan is given up.
                matches!(self.answer(Word::Off), Some(Ok(()))) || self.order(&Command::Stop).is_ok()
            }
            Some(Err(_)) | None => false,
        }
    }

    /// Ready, with the machine warm.
    pub fn ready(&mut self) {
        while self.guide.gate(&self.now).is_some() {
            self.answer(Word::Off).unwrap().unwrap();
        }
        self.order(&Command::Heater(true)).unwrap();
        self.pass(10 * Millis::MINUTE);
    }
}

/// A kitchen; by hand only fat that stays liquid cold.
fn of(out_by: OutBy, fat: Fat, all: bool) -> World {
    let fat = if out_by == OutBy::Hand { Fat::Rapeseed } else { fat };
    world(out_by, fat, Form::Long, if all { ALL } else { NONE })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]
    #[test]
    fn nothing_it_forbids_is_done_and_oil_still_comes_home(
        out_by in select(OutBy::ALL),
        fat in select(&[Fat::Rapeseed, Fat::Dripping][..]),
        all in any::<bool>(),
        what in select(TroubleKind::ALL),
        at in 0..70_u32,
    ) {
        let mut walk = Walk::new(of(out_by, fat, all));
        walk.ready();
        let mut steps = 0;
        loop {
            if steps == at {
                walk.trouble(begins(what, PAN, MACHINE));
            }
            if !walk.goes_on() || steps > 200 {
                break;
            }
            steps += 1;
        }
        prop_assert!(steps <= 200, "it never ended");
        // Whatever stands: no oil is left out, and no run open that could not be gone on with.
        prop_assert_eq!(walk.place, Place::InPan);
        if walk.drew {
            prop_assert!(walk.run().is_none(), "the run could not be ended: {:?}", walk.run().map(|r| r.at));
        }
    }
}

#[test]
fn without_a_trouble_the_walk_filters_the_pan() {
    for out_by in OutBy::ALL {
        let mut walk = Walk::new(world(*out_by, Fat::Rapeseed, Form::Long, ALL));
        walk.ready();
        while walk.goes_on() {}
        assert!(walk.drew && walk.left == Some(Left::Relit), "{out_by:?}");
    }
}

#[test]
fn a_power_cut_leaves_pump_and_heat_unknown_and_the_machine_cold() {
    let mut walk = Walk::new(world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE));
    walk.ready();
    while walk.run().is_none_or(|run| run.pump != Pump::Drawing) {
        assert!(walk.goes_on());
    }
    walk.trouble(begins(TroubleKind::PowerCut, PAN, MACHINE));
    let job = walk.guide.job().unwrap();
    let run = job.run.as_ref().unwrap();
    assert_eq!(
        (run.pump, run.heat, run.phase),
        (Pump::Unknown, Heat::Unknown, Phase::LookAgain)
    );
    assert_eq!(job.warm, Warm::Cold, "the line must be warmed again");
    assert!(!run.is_clean());
    assert_eq!(walk.guide.gate(&walk.now).unwrap().id(), StepId::LookAgain);
}

#[test]
fn a_spill_breaks_the_floor_and_a_machine_down_what_was_proved_of_it() {
    for (what, gone, stays) in [
        (TroubleKind::Spill, Hold::Floor, Hold::Kit),
        (TroubleKind::MachineDown, Hold::Match, Hold::Floor),
        (TroubleKind::CounterOpens, Hold::Floor, Hold::Dry),
        (TroubleKind::Shut, Hold::Dry, Hold::Person),
    ] {
        let mut walk = Walk::new(world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE));
        walk.ready();
        walk.trouble(begins(what, PAN, MACHINE));
        let job = walk.guide.job().unwrap();
        assert!(!job.stands(gone, &walk.now), "{what:?}");
        assert!(job.stands(stays, &walk.now), "{what:?}");
    }
}

#[test]
fn a_machine_that_is_down_is_not_taken_unless_oil_must_come_home() {
    let mut walk = Walk::new(world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE));
    walk.trouble(begins(TroubleKind::MachineDown, PAN, MACHINE));
    let named = Command::Machine {
        machine: MACHINE,
        used_since: Word::No,
    };
    let what = TroubleKind::MachineDown;
    assert_eq!(walk.order(&named), Err(Refusal::Trouble { what }));
    walk.world.scene.pans[0].place = Place::InMachine;
    assert_eq!(walk.order(&named), Ok(()));
}

#[test]
fn who_goes_on_says_that_somebody_else_is_in_the_building_where_the_kitchen_asks_for_it() {
    let said = |second_person: bool, alone: bool| {
        let mut world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
        world.scene.second_person = second_person;
        let mut walk = Walk::new(world);
        if alone {
            walk.trouble(begins(TroubleKind::Alone, PAN, MACHINE));
        }
        let who = Command::Who {
            person: walk.world.who.0,
            supervisor: None,
        };
        let drafts = walk.guide.decide(&walk.world.scene, &who, &walk.now).unwrap();
        let Fact::Job(job) = &drafts[0].fact else {
            panic!("not of the job")
        };
        job.evidence.is(Item::Second, Word::Seen)
    };
    assert!(said(true, false));
    assert!(!said(false, false), "not asked, not said");
    assert!(!said(true, true), "alone is not with somebody");
}
