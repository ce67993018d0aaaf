//! The kitchen: decide, append, apply. What is not on disk has not happened; what is, is taken up again.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::{Cast, DemoDraft, demo_drafts};
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::guide::state::Phase;
use panward::domain::guide::{Command, Refusal};
use panward::domain::ids::{Dev, JobId, RunId};
use panward::domain::procedure::{Hold, StepId};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::kitchen::{Kitchen, Order, Outside, Refused};
use panward::store::stamp::ClockDoubt;
use panward::store::{MemoryJournal, StoreFault};

const START: i64 = 1_763_000_000_000;

/// A memory journal never waits, so one look at its answer is enough.
fn ready<T>(answer: impl Future<Output = T>) -> T {
    match pin!(answer).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

fn at(seconds: i64, life: u64) -> Now {
    let wall = Millis(START + seconds * 1000);
    Now {
        wall,
        mono: seconds * 1000,
        life: PageLife(life),
        off_min: 0,
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

struct Bench {
    journal: MemoryJournal,
    kitchen: Kitchen<MemoryJournal>,
    cast: Cast,
}

/// A kitchen that is set up (as the demo's is) and has no oil moved yet.
fn bench() -> Bench {
    let journal = MemoryJournal::new(Dev(7));
    let demo = demo_drafts(1, Day::of(Millis(START), 0, 300), |_| 0);
    let mut kitchen = ready(Kitchen::open(journal.clone(), outside(), &at(0, 1))).unwrap();
    let first = demo.drafts.first().unwrap().at;
    let is_first_fill = |d: &DemoDraft| matches!(d.draft.fact, Fact::Fill(_)) && d.at.since(first) < 12 * Millis::HOUR;
    let set_up = demo
        .drafts
        .iter()
        .filter(|d| d.at.since(first) < Millis::HOUR || is_first_fill(d));
    let set_up = set_up.map(|d| d.draft.clone()).collect();
    ready(kitchen.send(Order::Write(set_up), &at(0, 1))).unwrap();
    Bench {
        journal,
        kitchen,
        cast: demo.cast,
    }
}

impl Bench {
    fn order(&mut self, command: Command, seconds: i64) -> Result<(), Refused> {
        ready(self.kitchen.send(Order::Guide(command), &at(seconds, 1))).map(|_| ())
    }

    fn step(&self, now: &Now) -> Option<StepId> {
        self.kitchen.guide().gate(now).map(|g| g.id())
    }

    fn reopened(&self, now: &Now) -> Kitchen<MemoryJournal> {
        ready(Kitchen::open(self.journal.clone(), outside(), now)).unwrap()
    }
}

fn kit() -> Command {
    let evidence = [Item::Gloves, Item::Face, Item::Apron, Item::Sleeves, Item::Shoes]
        .into_iter()
        .fold(Evidence::new(), |seen, item| seen.with(item, Word::Worn));
    Command::Answer {
        step: StepId::Kit,
        evidence,
        read: None,
    }
}

fn opened() -> Bench {
    let mut bench = bench();
    bench.order(Command::Open(JobId(1)), 1).unwrap();
    let person = *bench.cast.people.first().unwrap();
    bench
        .order(
            Command::Who {
                person,
                supervisor: None,
            },
            2,
        )
        .unwrap();
    bench
}

#[test]
fn a_write_refused_on_a_hard_hold_moves_nothing() {
    let mut bench = opened();
    for fault in [StoreFault::Full, StoreFault::Closed] {
        bench.journal.fail(Some(fault.clone()));
        let refused = bench.order(kit(), 3).unwrap_err();
        assert!(matches!(refused, Refused::Store(f) if f == fault));
        assert_eq!(bench.step(&at(3, 1)), Some(StepId::Kit), "the step stands");
        bench.journal.fail(None);
    }
    bench.order(kit(), 4).unwrap();
    assert_eq!(bench.step(&at(4, 1)), Some(StepId::Floor));
}

#[test]
fn a_refusal_writes_nothing() {
    let mut bench = opened();
    let before = bench.kitchen.ledger().lines().count();
    let missing = Command::Answer {
        step: StepId::Kit,
        evidence: Evidence::new(),
        read: None,
    };
    let refused = bench.order(missing, 3).unwrap_err();
    assert!(matches!(
        refused,
        Refused::Guide(Refusal::Unanswered { item: Item::Gloves })
    ));
    assert_eq!(bench.kitchen.ledger().lines().count(), before);
}

#[test]
fn a_killed_app_stands_where_its_log_stops() {
    let mut bench = opened();
    bench.order(kit(), 3).unwrap();
    let again = bench.reopened(&at(10, 2));
    let job = again.guide().job().unwrap();
    assert!(job.stands(Hold::Kit, &at(10, 2)));
    assert_eq!(again.guide().gate(&at(10, 2)).map(|g| g.id()), Some(StepId::Floor));
    assert_eq!(again.ledger(), bench.kitchen.ledger());
}

#[test]
fn a_run_taken_up_again_is_looked_at_before_anything_else() {
    let mut bench = opened();
    bench.order(kit(), 3).unwrap();
    let answer = |step, pairs: &[(Item, Word)]| Command::Answer {
        step,
        evidence: pairs
            .iter()
            .fold(Evidence::new(), |seen, (item, word)| seen.with(*item, *word)),
        read: None,
    };
    let floor = [
        (Item::Floor, Word::Dry),
        (Item::Way, Word::Clear),
        (Item::Extinguisher, Word::Seen),
    ];
    bench.order(answer(StepId::Floor, &floor), 4).unwrap();
    let machine = bench.cast.machine;
    bench
        .order(
            Command::Machine {
                machine,
                used_since: Word::No,
            },
            5,
        )
        .unwrap();
    let dry = [
        (Item::Filter, Word::Dry),
        (Item::TankInside, Word::Dry),
        (Item::Hose, Word::Dry),
        (Item::Sound, Word::Whole),
    ];
    bench.order(answer(StepId::Dry, &dry), 6).unwrap();
    bench
        .order(answer(StepId::Empty, &[(Item::Tank, Word::Empty)]), 7)
        .unwrap();
    let pan = *bench.cast.pans.first().unwrap();
    let begin = Command::Begin {
        run: RunId(9),
        pan,
        form: panward::domain::facts::run::Form::Long,
        plan: Default::default(),
    };
    bench.order(begin, 8).unwrap();
    let again = bench.reopened(&at(20, 2));
    let run = again.guide().job().unwrap().run.as_ref().unwrap();
    assert_eq!(run.phase, Phase::LookAgain);
    assert_eq!(again.guide().gate(&at(20, 2)).map(|g| g.id()), Some(StepId::LookAgain));
}

#[test]
fn a_clock_put_back_asks_before_it_writes_and_a_confirmed_one_is_believed() {
    let mut bench = opened();
    let early = at(-3600, 1);
    let refused = ready(bench.kitchen.send(Order::Guide(kit()), &early)).unwrap_err();
    assert!(matches!(refused, Refused::Clock(ClockDoubt::Behind { .. })));
    assert_eq!(bench.step(&at(3, 1)), Some(StepId::Kit));
    ready(
        bench
            .kitchen
            .send(Order::TimeConfirmed(Box::new(Order::Guide(kit()))), &early),
    )
    .unwrap();
    assert_eq!(bench.step(&early), Some(StepId::Floor));
}
