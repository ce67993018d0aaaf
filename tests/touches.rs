//! Touches of a clean filter job, counted as a person goes through it, and the evidence each hold must leave behind.
//!
//! A touch is one answer or Go on; a number is one touch and its accept. Limits: the project's own design.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, dead_code)]

mod hand;
#[path = "explore/world.rs"]
mod world;

use panward::domain::evidence::{Item, Word};
use panward::domain::facts::run::{Form, Plan};
use panward::domain::facts::setup::{OffSign, OutBy};
use panward::domain::fat::Fat;
use panward::domain::guide::gate::{Question, QuestionKind};
use panward::domain::guide::{Command, Refusal, Warm};
use panward::domain::procedure::{Hold, StepId};

use hand::Hand;
use world::{ALL, NONE, OWNER, STARTER, World, world};

fn count(out_by: OutBy, form: Form, plan: Plan, left: Word) -> (u32, u32, u32) {
    let mut world = world(out_by, Fat::Dripping, form, plan);
    if form == Form::Long {
        world.scene.people[0].1 = 0;
    } else {
        world.scene.machines[0].left_ready_by = Some(world.who.0);
    }
    let mut hand = Hand::new(&world);
    let ready = hand.ready();
    // The machine warms: ten minutes in summer.
    hand.pass(10 * 60_000);
    let pan = hand.pan(left);
    assert_holds_left_their_evidence(&hand, out_by);
    let away = hand.put_away();
    println!("{out_by:?} {form:?} {plan:?} {left:?}: Ready {ready}, pan {pan}, put away {away}");
    (ready, pan, away)
}

/// For each hold the evidence a finished run must hold, whichever form it took.
fn assert_holds_left_their_evidence(hand: &Hand<'_>, out_by: OutBy) {
    let line: &[(Item, Word)] = match out_by {
        OutBy::Nozzle => &[
            (Item::Nozzle, Word::InCorner),
            (Item::Nozzle, Word::Clamped),
            (Item::Valve, Word::Shut),
        ],
        OutBy::Drain => &[
            (Item::Pipe, Word::Locked),
            (Item::TankPlace, Word::InPlace),
            (Item::Valve, Word::Shut),
        ],
        OutBy::BuiltIn => &[(Item::TankPlace, Word::InPlace), (Item::Valve, Word::Shut)],
        OutBy::Hand => &[],
    };
    let table: &[(Hold, &[(Item, Word)])] = &[
        (Hold::Person, &[(Item::SignOff, Word::Signed)]),
        (
            Hold::Kit,
            &[
                (Item::Gloves, Word::Worn),
                (Item::Face, Word::Worn),
                (Item::Apron, Word::Worn),
                (Item::Sleeves, Word::Worn),
                (Item::Shoes, Word::Worn),
            ],
        ),
        (
            Hold::Floor,
            &[
                (Item::Floor, Word::Dry),
                (Item::Way, Word::Clear),
                (Item::Extinguisher, Word::Seen),
            ],
        ),
        (
            Hold::Dry,
            &[
                (Item::Filter, Word::Dry),
                (Item::TankInside, Word::Dry),
                (Item::Hose, Word::Dry),
                (Item::Sound, Word::Whole),
            ],
        ),
        (Hold::Room, &[(Item::Tank, Word::Empty)]),
        (Hold::Match, &[(Item::UsedSince, Word::No), (Item::Label, Word::Same)]),
        (
            Hold::HeatOff,
            &[
                (Item::Knob, Word::Off),
                (Item::Flame, Word::Out),
                (Item::Smoke, Word::None),
            ],
        ),
        (Hold::Connected, line),
        (Hold::Level, &[(Item::Level, Word::Enough)]),
        (Hold::ClearDry, &[(Item::PanInside, Word::ClearDry)]),
        (Hold::WarmUp, &[(Item::Heater, Word::On)]),
    ];
    for (hold, wanted) in table {
        for (item, word) in *wanted {
            assert!(
                hand.has(*item, *word),
                "{}: {} was never seen {}",
                hold.key(),
                item.key(),
                word.key()
            );
        }
    }
    assert!(
        hand.seen.iter().any(|(_, e)| e.number(Item::OilTemp).is_some()),
        "no reading"
    );
    let signs = [OffSign::Knob, OffSign::Flame];
    assert_eq!(hand.world.scene.pans[0].pan.off_signs, signs);
    let off = hand
        .seen
        .iter()
        .filter(|(_, e)| e.is(Item::Knob, Word::Off) && e.is(Item::Flame, Word::Out));
    let needed = 2 + usize::from(hand.world.plan.wipe) + usize::from(hand.world.plan.rinse);
    assert_eq!(
        off.count(),
        needed,
        "heat is looked at before the draw, the wipe, the rinse and the return"
    );
}

#[test]
fn a_clean_job_costs_no_more_touches_than_promised() {
    for out_by in [OutBy::Nozzle, OutBy::Drain, OutBy::BuiltIn] {
        // The long form with everything it can have: wipe, samples and rinse.
        let (ready, long, away) = count(out_by, Form::Long, ALL, Word::Off);
        assert!(ready <= 24, "Ready takes {ready}");
        assert!(long <= 32, "{out_by:?}: a pan in the long form takes {long}");
        assert!(away <= 12, "put away takes {away}");
        let (ready, short, _) = count(out_by, Form::Short, NONE, Word::Off);
        assert!(ready <= 17, "Ready in the short form takes {ready}");
        assert!(short <= 14, "{out_by:?}: a pan in the short form takes {short}");
        count(out_by, Form::Short, ALL, Word::Off);
    }
}

/// The questions of each step of Ready, as groups of items.
fn ready_asks(world: &World) -> Vec<(StepId, Vec<Vec<Item>>)> {
    let mut hand = Hand::new(world);
    let mut asked = Vec::new();
    while let Some(gate) = hand.guide.gate(&hand.now) {
        asked.push((gate.id(), gate.questions.iter().map(items).collect()));
        hand.gate(Word::Off);
    }
    asked
}

/// Who has earned the short form answers for kit and floor by the place, and for the machine only where the same hands
/// put it away ready and nobody used it since. What is written is the same.
#[test]
fn ready_is_short_for_who_earned_it() {
    let of = |asked: &[(StepId, Vec<Vec<Item>>)], step| {
        let found = asked.iter().find(|(id, _)| *id == step).expect("the step is asked");
        found.1.iter().map(Vec::len).collect::<Vec<_>>()
    };
    let mut new = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    new.scene.people[0].1 = 9;
    new.scene.machines[0].left_ready_by = Some(new.who.0);
    let long = ready_asks(&new);
    for (step, looks) in [(StepId::Kit, 5), (StepId::Floor, 3), (StepId::Dry, 4)] {
        assert_eq!(of(&long, step), vec![1; looks], "nine runs are not ten");
    }
    let mut known = world(OutBy::Nozzle, Fat::Rapeseed, Form::Short, NONE);
    for (left_by, dry) in [
        (None, vec![1; 4]),
        (Some(STARTER), vec![1; 4]),
        (Some(known.who.0), vec![3, 1]),
    ] {
        known.scene.machines[0].left_ready_by = left_by;
        let asked = ready_asks(&known);
        assert_eq!(of(&asked, StepId::Kit), [3, 2]);
        assert_eq!(of(&asked, StepId::Floor), [3]);
        assert_eq!(of(&asked, StepId::Dry), dry, "left by {left_by:?}");
        let all = |asked: &[(StepId, Vec<Vec<Item>>)]| -> Vec<Item> {
            asked.iter().flat_map(|(_, groups)| groups.concat()).collect()
        };
        assert_eq!(all(&asked), all(&long), "the same is seen, in the same order");
    }
    // A starter beside a supervisor is nobody's tenth clean run.
    known.who = (STARTER, Some(OWNER));
    known.scene.people[1].1 = 30;
    assert_eq!(of(&ready_asks(&known), StepId::Kit), vec![1; 5]);
}

/// What a pan's run with everything in it leaves in the log, and how often: fewer touches must not be fewer looks.
const FULL_NOZZLE: &[(Item, usize)] = &[
    (Item::Knob, 4),
    (Item::Flame, 4),
    (Item::Label, 1),
    (Item::Smoke, 1),
    (Item::Walls, 1),
    (Item::Skimmings, 1),
    (Item::Sample, 2),
    (Item::OilTemp, 1),
    (Item::Nozzle, 3),
    (Item::Valve, 3),
    (Item::Pump, 3),
    (Item::Remainder, 1),
    (Item::PanInside, 2),
    (Item::Tank, 1),
    (Item::Level, 1),
    (Item::Left, 1),
    (Item::Compared, 1),
];

#[test]
fn fewer_touches_are_not_fewer_looks() {
    for form in [Form::Long, Form::Short] {
        let world = world(OutBy::Nozzle, Fat::Rapeseed, form, ALL);
        let mut hand = Hand::new(&world);
        hand.ready();
        let ready = hand.seen.len();
        hand.pan(Word::Off);
        let run = &hand.seen[ready..];
        for (item, times) in FULL_NOZZLE {
            let written = run.iter().filter(|(_, e)| e.get(*item).is_some()).count();
            assert_eq!(written, *times, "{form:?}: {} in the log", item.key());
        }
        let all: usize = run.iter().map(|(_, e)| e.iter().count()).sum();
        let wanted: usize = FULL_NOZZLE.iter().map(|(_, times)| times).sum();
        assert_eq!(all, wanted, "{form:?}");
    }
}

/// How the questions of a step are put in the long form: each answer with the items it names.
fn asked_at(world: &World, wanted: StepId) -> Vec<Vec<Item>> {
    let mut hand = Hand::new(world);
    hand.ready();
    hand.pass(10 * 60_000);
    hand.begin();
    loop {
        let gate = hand.guide.gate(&hand.now).expect("a gate stands");
        if gate.id() == wanted {
            return gate.questions.iter().map(items).collect();
        }
        hand.gate(Word::Off);
    }
}

fn items(question: &Question) -> Vec<Item> {
    match &question.kind {
        QuestionKind::Look { item, .. } | QuestionKind::Probe { item } => vec![*item],
        QuestionKind::Together(parts) => parts.iter().flat_map(|(part, _)| items(part)).collect(),
        QuestionKind::Person | QuestionKind::Machine => Vec::new(),
    }
}

#[test]
fn only_a_look_already_given_in_this_run_is_answered_with_others() {
    let full = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, ALL);
    // First looks of the run stand alone.
    for (step, looks) in [(StepId::HeatOff, 4), (StepId::Connect, 2)] {
        let asked = asked_at(&full, step);
        assert_eq!(asked.len(), looks);
        assert!(asked.iter().all(|one| one.len() == 1), "{asked:?}");
    }
    // Heat off a second time is one answer naming both signs; the inside of the pan never hides among others.
    assert_eq!(asked_at(&full, StepId::Wipe), [[Item::Knob, Item::Flame]]);
    let rinse = asked_at(&full, StepId::Rinse);
    assert_eq!(
        rinse,
        [
            vec![Item::PanInside],
            vec![Item::Knob, Item::Flame, Item::Valve],
            vec![Item::Nozzle]
        ]
    );
    let back = asked_at(&full, StepId::GiveBack);
    assert_eq!(
        back,
        [
            vec![Item::Valve],
            vec![Item::PanInside],
            vec![Item::Knob, Item::Flame, Item::Nozzle]
        ]
    );
    // Without a rinse nobody has seen the nozzle clamped yet.
    let plain = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    assert!(asked_at(&plain, StepId::GiveBack).contains(&vec![Item::Nozzle]));
    // A drain valve that stood open for the rinse is looked at by itself before oil comes back.
    let drain = world(OutBy::Drain, Fat::Rapeseed, Form::Long, ALL);
    assert_eq!(asked_at(&drain, StepId::GiveBack).first(), Some(&vec![Item::Valve]));
}

#[test]
fn after_a_stop_every_look_stands_alone_again() {
    let world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, ALL);
    let mut hand = Hand::new(&world);
    hand.ready();
    hand.begin();
    while hand.guide.gate(&hand.now).expect("a gate stands").id() != StepId::Wipe {
        hand.gate(Word::Off);
    }
    hand.order(&Command::Stop);
    hand.order(&Command::MadeSafe);
    hand.place = Word::InMachine;
    hand.gate(Word::Off);
    let gate = hand.guide.gate(&hand.now).expect("a gate stands");
    assert_eq!(gate.id(), StepId::Wipe);
    assert_eq!(
        gate.questions.iter().map(items).collect::<Vec<_>>(),
        [[Item::Knob], [Item::Flame]]
    );
}

#[test]
fn nothing_warms_once_the_machine_is_off_to_be_put_away() {
    let world = world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE);
    let mut hand = Hand::new(&world);
    hand.ready();
    let warm = |hand: &Hand<'_>| hand.guide.job().unwrap().warm;
    hand.order(&Command::PutAway);
    assert!(matches!(warm(&hand), Warm::On(_)));
    while hand.guide.gate(&hand.now).unwrap().id() != StepId::AwayOff {
        hand.gate(Word::Off);
    }
    hand.gate(Word::Off);
    assert_eq!(warm(&hand), Warm::Cold);
}

#[test]
fn a_job_without_a_pan_is_not_ended_while_the_heater_is_on() {
    let world = world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE);
    let mut hand = Hand::new(&world);
    hand.ready();
    let end = |hand: &Hand<'_>| {
        hand.guide
            .decide(&world.scene, &Command::End, &hand.now)
            .map(|d| d.len())
    };
    hand.order(&Command::Heater(true));
    assert_eq!(end(&hand), Err(Refusal::HeaterOn));
    hand.order(&Command::Heater(false));
    assert_eq!(end(&hand), Ok(1));
}

#[test]
fn both_forms_leave_the_same_evidence() {
    let items = |form| {
        let world = world(OutBy::Nozzle, Fat::Rapeseed, form, ALL);
        let mut hand = Hand::new(&world);
        hand.ready();
        hand.pan(Word::Off);
        let mut all: Vec<_> = hand
            .seen
            .iter()
            .flat_map(|(_, e)| e.iter().map(|(i, s)| (*i, s.clone())))
            .collect();
        all.sort();
        all
    };
    assert_eq!(items(Form::Long), items(Form::Short));
}
