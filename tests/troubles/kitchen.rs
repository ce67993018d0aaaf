//! Whole kitchens on a day that goes wrong: said, written, stood by after a start anew, and over.

use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::demo::{Cast, demo_drafts};
use panward::domain::day_jobs;
use panward::domain::entry::Draft;
use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::JobKind;
use panward::domain::facts::oil::OilChange;
use panward::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use panward::domain::guide::{Command, Refusal};
use panward::domain::ids::{Dev, JobId};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::domain::trouble::row;
use panward::domain::units::{Amount, Typed, Unit};
use panward::kitchen::wrong::{abouts, all_down, standing};
use panward::kitchen::{Kitchen, Order, Outside, Refused, glance, today};
use panward::store::MemoryJournal;
use panward::words::{Lang, log_lines};

use super::begins;

const START: i64 = 1_763_000_000_000;

/// A memory journal never waits, so one look at its answer is enough.
fn ready<T>(answer: impl Future<Output = T>) -> T {
    match pin!(answer).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value,
        Poll::Pending => panic!("a memory journal waited"),
    }
}

fn at(seconds: i64) -> Now {
    Now {
        wall: Millis(START + seconds * 1000),
        mono: seconds * 1000,
        life: PageLife(1),
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
    seconds: i64,
}

impl Bench {
    /// The demo's kitchen on its first day, set up and filled.
    fn new() -> Self {
        let journal = MemoryJournal::new(Dev(7));
        let demo = demo_drafts(1, Day::of(Millis(START), 0, 300), |_| 0);
        let mut kitchen = ready(Kitchen::open(journal.clone(), outside(), &at(0))).unwrap();
        let first = demo.drafts.first().unwrap().at;
        let early = demo.drafts.iter().filter(|d| {
            let since = d.at.since(first);
            since < Millis::HOUR || (matches!(d.draft.fact, Fact::Fill(_)) && since < 12 * Millis::HOUR)
        });
        let set_up = early.map(|d| d.draft.clone()).collect();
        ready(kitchen.send(Order::Write(set_up), &at(0))).unwrap();
        Self {
            journal,
            kitchen,
            cast: demo.cast,
            seconds: 1,
        }
    }

    fn send(&mut self, order: Order) -> Result<(), Refused> {
        self.seconds += 1;
        ready(self.kitchen.send(order, &at(self.seconds))).map(|_| ())
    }

    fn fact(&self, what: TroubleKind, event: TroubleEvent) -> TroubleFact {
        let (pan, machine) = (*self.cast.pans.first().unwrap(), self.machine());
        let looks = match event {
            TroubleEvent::Began => &[][..],
            TroubleEvent::Looked => row(what).safe,
            TroubleEvent::Over => row(what).over,
        };
        TroubleFact {
            event,
            evidence: looks
                .iter()
                .fold(Evidence::new(), |seen, l| seen.with(l.item, l.answers[0].word)),
            text: (event == TroubleEvent::Over && row(what).mended_by).then(|| "A. Engineer".to_owned()),
            ..begins(what, pan, machine)
        }
    }

    fn machine(&self) -> panward::domain::ids::MachineId {
        self.cast.machine
    }

    fn say(&mut self, what: TroubleKind, event: TroubleEvent) -> Result<(), Refused> {
        let order = Order::Trouble(self.fact(what, event), self.cast.people.first().copied());
        self.send(order)
    }

    fn stands(kitchen: &Kitchen<MemoryJournal>) -> Vec<TroubleKind> {
        standing(kitchen.ledger()).into_iter().map(|t| t.0).collect()
    }
}

#[test]
fn each_is_said_stands_after_a_start_anew_and_is_over_in_the_log() {
    for what in TroubleKind::ALL {
        let mut bench = Bench::new();
        bench.say(*what, TroubleEvent::Began).unwrap();
        let again = ready(Kitchen::open(bench.journal.clone(), outside(), &at(60))).unwrap();
        assert_eq!(Bench::stands(&again), [*what]);
        assert!(abouts(&again, *what).iter().any(|a| a.looked == Some(false)));
        bench.say(*what, TroubleEvent::Looked).unwrap();
        assert!(abouts(&bench.kitchen, *what).iter().any(|a| a.looked == Some(true)));
        bench.say(*what, TroubleEvent::Over).unwrap();
        assert_eq!(Bench::stands(&bench.kitchen), []);
        let book = &bench.kitchen.ledger().book;
        let last = bench.kitchen.ledger().lines().next_back().unwrap().written();
        let line = log_lines::line(&last.fact, book, Lang::En);
        assert!(line.contains("over"), "{line}");
        assert!(last.who.is_some());
    }
}

/// Where several stand, what burns and what scalds is said first; and a pan that was emptied can smoke, too.
#[test]
fn what_burns_stands_first() {
    let mut bench = Bench::new();
    for what in [
        TroubleKind::PowerCut,
        TroubleKind::MachineDown,
        TroubleKind::Spill,
        TroubleKind::Smoke,
    ] {
        bench.say(what, TroubleEvent::Began).unwrap();
    }
    let first = Bench::stands(&bench.kitchen);
    assert_eq!(first[..2], [TroubleKind::Smoke, TroubleKind::Spill]);
    let pan = *bench.cast.pans.first().unwrap();
    let emptied = OilChange {
        pan,
        amount: Amount {
            volume: bench.kitchen.ledger().fill(pan).unwrap().first,
            typed: Typed {
                thousandths: 1_000,
                unit: Unit::Litres,
            },
        },
        reason: "old".to_owned(),
        temp: None,
        container: None,
    };
    bench
        .send(Order::Write(vec![Draft::now(None, Fact::OilChange(emptied))]))
        .unwrap();
    assert!(bench.kitchen.ledger().fill(pan).is_none());
    assert!(
        abouts(&bench.kitchen, TroubleKind::Smoke)
            .iter()
            .any(|a| a.pan == Some(pan))
    );
}

#[test]
fn a_glance_is_not_kept_while_something_is_wrong() {
    let mut bench = Bench::new();
    let taken = glance::Taken {
        build: "b".into(),
        dev: Dev(7),
        entries: bench.kitchen.entries_held(),
    };
    let kept = |bench: &Bench| {
        let now = at(bench.seconds);
        let today = today::of(bench.kitchen.ledger(), bench.kitchen.today(&now));
        glance::taken(&bench.kitchen, &today, &taken, &now)
    };
    assert!(kept(&bench).is_some());
    bench.say(TroubleKind::Spill, TroubleEvent::Began).unwrap();
    assert_eq!(kept(&bench), None);
}

#[test]
fn a_machine_that_is_down_says_so_on_today_until_somebody_mended_it() {
    let mut bench = Bench::new();
    let down = |bench: &Bench| all_down(bench.kitchen.ledger());
    assert!(!down(&bench));
    bench.say(TroubleKind::MachineDown, TroubleEvent::Began).unwrap();
    assert_eq!(
        down(&bench),
        abouts(&bench.kitchen, TroubleKind::MachineDown).len() == 1
    );
    let nobody = TroubleFact {
        text: None,
        ..bench.fact(TroubleKind::MachineDown, TroubleEvent::Over)
    };
    let refused = bench.send(Order::Trouble(nobody, None)).unwrap_err();
    assert!(matches!(refused, Refused::Guide(Refusal::NameNeeded)));
    bench.say(TroubleKind::MachineDown, TroubleEvent::Over).unwrap();
    assert!(!down(&bench));
}

#[test]
fn a_trouble_said_before_the_job_stops_it_as_one_said_within() {
    let mut bench = Bench::new();
    bench.say(TroubleKind::MachineDown, TroubleEvent::Began).unwrap();
    bench.send(Order::Guide(Command::Open(JobId(1)))).unwrap();
    let named = Order::Guide(Command::Machine {
        machine: bench.machine(),
        used_since: Word::No,
    });
    assert!(matches!(
        bench.send(named),
        Err(Refused::Guide(Refusal::Trouble { .. }))
    ));
}

#[test]
fn a_kitchen_that_was_shut_lights_no_pan_before_it_was_looked_at() {
    let mut bench = Bench::new();
    bench.say(TroubleKind::Shut, TroubleEvent::Began).unwrap();
    let who = *bench.cast.people.first().unwrap();
    let open = day_jobs::Command::Open {
        job: JobId(3),
        what: JobKind::LightUp,
        who,
        supervisor: None,
    };
    bench.send(Order::Day(open)).unwrap();
    let gate = |bench: &Bench| {
        let now = at(bench.seconds);
        let pan = *bench.cast.pans.first().unwrap();
        bench
            .kitchen
            .day_jobs()
            .light_gate(&bench.kitchen.scene(&now), pan, &now)
    };
    let what = TroubleKind::Shut;
    assert_eq!(gate(&bench), Err(day_jobs::Refusal::Guide(Refusal::Trouble { what })));
    bench.say(TroubleKind::Shut, TroubleEvent::Over).unwrap();
    assert!(gate(&bench).is_ok());
    let last = bench
        .kitchen
        .ledger()
        .lines()
        .next_back()
        .unwrap()
        .written()
        .fact
        .clone();
    let Fact::Trouble(fact) = last else {
        panic!("not a trouble")
    };
    assert!(fact.evidence.is(Item::UnderOil, Word::Dry) && fact.evidence.is(Item::Extinguisher, Word::Seen));
}
