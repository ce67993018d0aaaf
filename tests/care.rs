//! What the screens of oil change, boil-out and old oil work out, gone through as a person does: what is asked, what
//! sounds, what Today puts first, what is to be lifted, and how many touches it takes.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::{Cast, DemoDraft, demo_drafts};
use panward::domain::evidence::{Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::JobKind;
use panward::domain::facts::oil::OilChange;
use panward::domain::facts::run::Heat;
use panward::domain::fat::Fat;
use panward::domain::guide::asking::{Asking, Touched};
use panward::domain::guide::gate::QuestionKind;
use panward::domain::ids::{Dev, JobId, PanId};
use panward::domain::pan_jobs::{Command, Stage};
use panward::domain::procedure::{StepId, Verdict};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::units::{Amount, Typed, Unit, Volume};
use panward::domain::volume::Packs;
use panward::kitchen::alarm::{self, Cause, Urgency};
use panward::kitchen::care::{self, Care, CareNow, Turn};
use panward::kitchen::today::{self, Next};
use panward::kitchen::{Kitchen, Order, Outside};
use panward::store::MemoryJournal;
use panward::words::Lang;
use panward::words::screens::care as words;

const START: i64 = 1_763_000_000_000;
const JOB: JobId = JobId(1);

fn ready<T>(answer: impl Future<Output = T>) -> T {
    match pin!(answer).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

fn outside() -> Outside {
    let mut n = 0_u8;
    Outside {
        off_min: Box::new(|_| 0),
        random: Box::new(move || {
            n = n.wrapping_add(1);
            [n; 10]
        }),
    }
}

/// Somebody at the phone who does everything right, but for what they were told.
struct Hand {
    kitchen: Kitchen<MemoryJournal>,
    journal: MemoryJournal,
    cast: Cast,
    pan: PanId,
    now: Now,
    touches: u32,
    told: Vec<(Item, Word)>,
}

impl Hand {
    /// At a pan of the demo's kitchen on its first day, by number.
    fn at(pan: usize) -> Self {
        let journal = MemoryJournal::new(Dev(7));
        let demo = demo_drafts(1, Day::of(Millis(START), 0, 300), |_| 0);
        let now = Now {
            wall: Millis(START),
            mono: 0,
            life: PageLife(1),
            off_min: 0,
        };
        let mut kitchen = ready(Kitchen::open(journal.clone(), outside(), &now)).unwrap();
        let first = demo.drafts.first().unwrap().at;
        let fill = |d: &DemoDraft| matches!(d.draft.fact, Fact::Fill(_)) && d.at.since(first) < 12 * Millis::HOUR;
        let set_up = demo
            .drafts
            .iter()
            .filter(|d| d.at.since(first) < Millis::HOUR || fill(d));
        let set_up = set_up.map(|d| d.draft.clone()).collect();
        ready(kitchen.send(Order::Write(set_up), &now)).unwrap();
        Self {
            pan: demo.cast.pans[pan],
            kitchen,
            journal,
            cast: demo.cast,
            now,
            touches: 0,
            told: Vec::new(),
        }
    }

    fn told(mut self, item: Item, word: Word) -> Self {
        self.told.push((item, word));
        self
    }

    fn pass(&mut self, ms: i64) {
        self.now.wall = self.now.wall.plus(ms);
        self.now.mono += ms;
    }

    fn send(&mut self, command: Command) {
        self.touches += 1;
        self.pass(1_000);
        ready(self.kitchen.send(Order::Pan(command), &self.now)).unwrap();
    }

    fn open(&mut self, what: JobKind) {
        self.send(Command::Open {
            job: JOB,
            what,
            pan: self.pan,
            who: self.cast.people[0],
            supervisor: None,
        });
    }

    /// The pan emptied without the guide.
    fn empty(&mut self) {
        let out = Fact::OilChange(OilChange {
            pan: self.pan,
            amount: litres(20),
            reason: "At its end".to_owned(),
            temp: None,
            container: None,
        });
        self.pass(1_000);
        let who = self.cast.people[0];
        let draft = panward::domain::entry::Draft::now(Some(who), out);
        ready(self.kitchen.send(Order::Write(vec![draft]), &self.now)).unwrap();
    }

    fn shown(&self, care: Care, turn: Turn) -> CareNow {
        let jobs = self.kitchen.pan_jobs();
        care::now_at(jobs, &self.kitchen.scene(&self.now), (self.pan, care), turn, &self.now)
    }

    fn job(&self, kind: JobKind) -> CareNow {
        self.shown(Care::Job(kind), Turn::None)
    }

    /// The step asked, where one is.
    fn step(&self, kind: JobKind) -> Option<StepId> {
        match self.job(kind) {
            CareNow::Ask(gate) => Some(gate.id()),
            _ => None,
        }
    }

    /// Answers the gate on screen, and sends what follows of it.
    fn answer(&mut self, kind: JobKind) {
        let CareNow::Ask(gate) = self.job(kind) else {
            panic!("nothing is asked: {:?}", self.job(kind));
        };
        let step = gate.id();
        let mut asking = Asking::new(gate, &self.now);
        loop {
            self.pass(1_000);
            self.touches += 1;
            let question = asking.current(None).unwrap();
            let now = self.now;
            let touched = match &question.kind {
                QuestionKind::Look { item, answers } => {
                    let told = self.told.iter().rev().find(|(asked, _)| asked == item);
                    let good = answers.iter().find(|a| a.verdict == Verdict::Good);
                    let word = told.map_or_else(|| good.unwrap().word, |(_, word)| *word);
                    asking.look(*item, word, None, &now)
                }
                QuestionKind::Together(_) => asking.all_so(None, &now),
                QuestionKind::Probe { item } => {
                    self.touches += 1;
                    asking.number(*item, 250, None, &now)
                }
                QuestionKind::Person | QuestionKind::Machine => panic!("{step:?} asks for a name"),
            };
            match touched {
                Touched::Kept => {}
                Touched::AllAnswered => {
                    self.pass(1_000);
                    break;
                }
                Touched::GoesOn => {
                    // Its last answer was its Go on.
                    self.touches -= 1;
                    break;
                }
                Touched::Ignored | Touched::NotYet => panic!("{step:?}: {touched:?} at {question:?}"),
            }
        }
        let (pan, evidence) = (self.pan, asking.seen().clone());
        let command = match step {
            StepId::CutOut | StepId::EmptyByHand if evidence.is(Item::ByHand, Word::InContainer) => {
                // The reason and the number with its accept.
                self.touches += 3;
                Command::Out {
                    pan,
                    step,
                    evidence,
                    amount: litres(20),
                    reason: "At its end".to_owned(),
                    container: None,
                }
            }
            StepId::FreshLevel => {
                self.touches += 2;
                Command::Filled {
                    pan,
                    evidence,
                    amount: litres(20),
                    batch: None,
                }
            }
            _ => Command::Answer {
                pan,
                step,
                evidence,
                read: asking.read(),
                load_g: None,
            },
        };
        self.send(command);
    }

    /// Goes on until nothing is asked, or a step is.
    fn until(&mut self, kind: JobKind, there: Option<StepId>) {
        for _ in 0..40 {
            if self.step(kind) == there {
                return;
            }
            self.answer(kind);
        }
        panic!("never at {there:?}, but at {:?}", self.job(kind));
    }

    fn sound(&self) -> Option<Cause> {
        alarm::of_care(self.kitchen.pan_jobs(), &self.now)
    }

    fn restarted(mut self) -> Self {
        self.now.mono = 0;
        self.now.life = PageLife(2);
        self.kitchen = ready(Kitchen::open(self.journal.clone(), outside(), &self.now)).unwrap();
        self
    }

    fn next(&self) -> (Next, Option<PanId>) {
        let today = today::of_kitchen(&self.kitchen, self.kitchen.today(&self.now), self.now.wall);
        let next = today.next();
        (next, next.job().and_then(|kind| today.pan_of(kind)))
    }
}

fn litres(n: u32) -> Amount {
    Amount {
        volume: Volume::from_ml(n * 1_000).unwrap(),
        typed: Typed {
            thousandths: n * 1_000,
            unit: Unit::Litres,
        },
    }
}

const CHANGE: JobKind = JobKind::OilChange;
const BOIL: JobKind = JobKind::BoilOut;

/// An empty pan with low heat under its water.
fn boiling() -> Hand {
    let mut hand = Hand::at(0);
    hand.empty();
    hand.open(BOIL);
    hand.until(BOIL, None);
    assert_eq!(hand.job(BOIL), CareNow::Boil);
    hand
}

#[test]
fn a_boil_waits_quietly_for_its_look_and_calls_when_it_is_due() {
    let mut hand = boiling();
    assert_eq!(hand.sound(), None);
    let early = hand.shown(Care::Job(BOIL), Turn::Look);
    assert!(matches!(early, CareNow::Ask(gate) if gate.id() == StepId::BoilLook));
    hand.pass(5 * Millis::MINUTE);
    assert_eq!(hand.step(BOIL), Some(StepId::BoilLook));
    assert_eq!(hand.sound(), Some(Cause::BoilDue));
    assert_eq!(Cause::BoilDue.urgency(), Urgency::Safety);
    assert!(Cause::BoilDue.is_safety(), "it sounds in quiet hours too");
    assert_eq!(care::looks_due(hand.kitchen.pan_jobs(), &hand.now), [hand.pan]);
    hand.answer(BOIL);
    assert_eq!((hand.job(BOIL), hand.sound()), (CareNow::Boil, None));
}

#[test]
fn the_clock_of_a_boil_counts_up_from_its_heat_and_down_to_the_look() {
    let mut hand = boiling();
    hand.pass(2 * Millis::MINUTE);
    let (gone, look) = care::boil_s(hand.kitchen.pan_jobs().job(hand.pan).unwrap(), &hand.now).unwrap();
    assert_eq!((gone, look), (120, 180));
    hand.pass(4 * Millis::MINUTE);
    hand.answer(BOIL);
    let (gone, _) = care::boil_s(hand.kitchen.pan_jobs().job(hand.pan).unwrap(), &hand.now).unwrap();
    assert!((360..400).contains(&gone), "a look does not begin it anew: {gone}");
}

#[test]
fn a_restart_over_a_boil_calls_until_heat_and_water_were_seen() {
    let mut hand = boiling().restarted().told(Item::PanHolds, Word::Water);
    assert_eq!(hand.sound(), Some(Cause::BoilDue), "nobody has seen that heat since");
    assert_eq!(hand.step(BOIL), Some(StepId::LookAgain));
    assert_eq!(hand.next(), (Next::Resume(BOIL), Some(hand.pan)));
    hand.answer(BOIL);
    assert_eq!(hand.step(BOIL), Some(StepId::BoilCool));
    assert_eq!(hand.sound(), None);
}

#[test]
fn heat_that_is_to_be_seen_off_calls_more_quietly() {
    let mut hand = boiling();
    let pan = hand.pan;
    hand.send(Command::HeatOff { pan });
    assert_eq!(hand.sound(), Some(Cause::LookDue));
    assert_eq!(Cause::LookDue.urgency(), Urgency::Medium);
    let job = hand.kitchen.pan_jobs().job(pan).unwrap();
    assert_eq!((job.stage, job.heat), (Stage::MakeSafe, Heat::Unknown));
    hand.answer(BOIL);
    assert_eq!((hand.step(BOIL), hand.sound()), (Some(StepId::BoilCool), None));
    let again = hand.shown(Care::Job(BOIL), Turn::Heat);
    assert!(matches!(again, CareNow::Ask(gate) if gate.id() == StepId::BoilHeat));
}

#[test]
fn oil_that_leaves_pumped_is_sent_to_the_filter_job_and_may_still_leave_another_way() {
    let mut hand = Hand::at(0).told(Item::OutWay, Word::Pumped);
    hand.open(CHANGE);
    hand.until(CHANGE, None);
    assert_eq!(hand.job(CHANGE), CareNow::Pump { running: false });
    let how = hand.shown(Care::Job(CHANGE), Turn::How);
    assert!(matches!(how, CareNow::Ask(gate) if gate.id() == StepId::ChangeHow));
}

#[test]
fn todays_next_job_is_what_boils_before_what_is_changed() {
    let mut hand = boiling();
    let boils = hand.pan;
    hand.pan = hand.cast.pans[1];
    hand.send(Command::Open {
        job: JobId(2),
        what: CHANGE,
        pan: hand.pan,
        who: hand.cast.people[0],
        supervisor: None,
    });
    assert_eq!(hand.next(), (Next::Resume(BOIL), Some(boils)));
    let open = care::open_jobs(hand.kitchen.pan_jobs());
    assert_eq!(open, [(BOIL, boils), (CHANGE, hand.pan)]);
}

#[test]
fn old_oil_is_named_by_pan_and_time_until_it_is_put_by() {
    let mut hand = Hand::at(0).told(Item::OutWay, Word::ByHand);
    hand.open(CHANGE);
    hand.until(CHANGE, Some(StepId::Waste));
    let waste = care::waste(&hand.kitchen);
    let since = hand.now.wall;
    assert_eq!(waste.len(), 1);
    assert_eq!((waste[0].pan, waste[0].since), (hand.pan, Some((since, 0))));
    assert!(matches!(hand.shown(Care::Waste, Turn::None), CareNow::Ask(gate) if gate.id() == StepId::Waste));
    hand.answer(CHANGE);
    assert!(care::waste(&hand.kitchen).is_empty());
    assert_eq!(hand.shown(Care::Waste, Turn::None), CareNow::Closed);
}

#[test]
fn a_full_drum_and_a_block_are_said_by_weight() {
    let packs = Packs {
        block_g: Some(12_500),
        drum: Volume::from_ml(20_000),
        bag: None,
    };
    let drum = care::load_g(StepId::FreshIn, Some(Fat::Rapeseed), packs);
    assert_eq!(
        words::lifting(drum, 7, Lang::En),
        "A full one weighs 19\u{a0}kg. Over 7\u{a0}kg: two people or a trolley."
    );
    assert_eq!(care::load_g(StepId::PackIn, Some(Fat::Dripping), packs), Some(12_500));
    assert_eq!(
        care::load_g(StepId::FreshIn, Some(Fat::Rapeseed), Packs::default()),
        None
    );
}

/// Counted in touches as everywhere: one answer, one Go on, a number and its accept.
#[test]
fn a_clean_job_takes_no_more_touches_than_it_did() {
    let mut hand = Hand::at(0).told(Item::OutWay, Word::ByHand);
    hand.open(CHANGE);
    hand.until(CHANGE, None);
    assert_eq!(hand.job(CHANGE), CareNow::Fat);
    let pan = hand.pan;
    hand.send(Command::Fresh {
        pan,
        fat: Fat::Rapeseed,
    });
    hand.until(CHANGE, None);
    assert_eq!(hand.job(CHANGE), CareNow::Closed);
    println!("oil change by hand: {} touches", hand.touches);
    assert!(hand.touches <= 46, "{}", hand.touches);

    let mut hand = boiling();
    let pan = hand.pan;
    hand.pass(5 * Millis::MINUTE);
    hand.answer(BOIL);
    hand.send(Command::HeatOff { pan });
    hand.until(BOIL, None);
    assert_eq!(hand.job(BOIL), CareNow::Closed);
    println!("boil-out with one look: {} touches", hand.touches);
    assert!(hand.touches <= 45, "{}", hand.touches);
}

#[test]
fn every_line_of_make_safe_begins_with_the_heat_and_claims_nothing() {
    use panward::domain::facts::run::Contents;
    for contents in Contents::ALL {
        for midway in [false, true] {
            let lines = words::make_safe(*contents, midway, Lang::En);
            assert!(
                lines[0].starts_with("Heat off") && lines[0].contains("see it off"),
                "{lines:?}"
            );
            for line in lines {
                assert!(line.ends_with('.') && !line.contains('!'), "{line}");
                assert!(line.split_whitespace().count() <= 12, "{line}");
            }
        }
        assert!(
            words::contents_name(*contents, true, Lang::En)
                .split_whitespace()
                .count()
                <= 4
        );
    }
}
