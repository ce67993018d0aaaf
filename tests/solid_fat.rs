//! Solid fat through the filter job: the machine's own melt, the line run empty before it sets, and no way out by hand.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, dead_code)]

mod hand;
#[path = "explore/world.rs"]
mod world;

use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Contents, Fault, Form, Left, Place};
use panward::domain::facts::setup::{OutBy, Route};
use panward::domain::fat::Fat;
use panward::domain::guide::{Command, Refusal};
use panward::domain::ids::PanId;
use panward::domain::procedure::{Ask, Hold, How, Step, StepId, Tables, Verdict};
use panward::domain::time::Millis;
use panward::words::faults;
use panward::words::whys::{CUSTOM, why};
use panward::words::{Lang, steps};

use hand::Hand;
use world::{ALL, KIT, NONE, PAN, World, after_solid, set_in_line, world};

const EN: Lang = Lang::En;
const OTHER: PanId = PanId(11);
const TEN_MINUTES: i64 = 10 * Millis::MINUTE;

fn dripping() -> World {
    world(OutBy::Nozzle, Fat::Dripping, Form::Long, NONE)
}

/// A dripping pan and a rapeseed pan beside one machine.
fn two_fats() -> World {
    let mut world = dripping();
    let mut other = world.scene.pans[0].clone();
    (other.pan.pan, other.pan.fat) = (OTHER, Fat::Rapeseed);
    world.scene.pans.push(other);
    world
}

fn offered(step: &Step, item: Item) -> Vec<(Word, bool)> {
    let ask: &Ask = step.asks.iter().find(|a| a.item == item).unwrap();
    let How::Look(answers) = ask.how else { panic!("no look") };
    let good = |v| v == Verdict::Good;
    answers.iter().map(|a| (a.word, good(a.verdict))).collect()
}

#[test]
fn the_tables_ask_for_line_and_melt_by_id() {
    let t = Tables::REAL;
    assert_eq!(t.line_solid.id, StepId::AwayLine);
    assert_eq!(
        offered(t.line_solid, Item::Line),
        [(Word::RunEmpty, true), (Word::Oil, true)]
    );
    let plain = t.away.iter().find(|s| s.id == StepId::AwayLine).unwrap();
    assert_eq!(offered(plain, Item::Line), [(Word::RunEmpty, true), (Word::Oil, false)]);
    let melt = t.ready.iter().find(|s| s.id == StepId::WarmUp).unwrap();
    assert_eq!(melt.holds, [Hold::WarmUp]);
    assert_eq!(
        offered(melt, Item::Line),
        [(Word::AllLiquid, true), (Word::Solid, false)]
    );
    assert_eq!(
        offered(melt, Item::Sound),
        [(Word::Whole, true), (Word::Damaged, false)]
    );
    assert_eq!(t.leave_set.id, StepId::Leave);
    let seen: Vec<Item> = t.leave_set.asks.iter().map(|a| a.item).collect();
    assert!(seen.contains(&Item::Lid) && seen.contains(&Item::Tag));
    for run in [t.nozzle, t.drain, t.built_in] {
        for step in run {
            let asks_warm = matches!(step.id, StepId::Connect | StepId::GiveBack);
            assert_eq!(step.holds.contains(&Hold::WarmUp), asks_warm, "{}", step.id.key());
        }
    }
    // Habits of the trade that nobody published say so.
    for step in [
        StepId::WarmUp,
        StepId::AwayLine,
        StepId::MeltLow,
        StepId::MeltLook,
        StepId::MeltFull,
    ] {
        assert_eq!(why(step, EN).source, CUSTOM, "{}", step.key());
    }
    let melt = steps::step_detail(StepId::WarmUp, EN);
    assert!(melt.contains("manual") && melt.contains("never a flame") && melt.contains("never boiling water"));
}

#[test]
fn rapeseed_after_dripping_waits_for_the_machine() {
    let world = after_solid().swap_remove(0);
    assert_eq!(world.scene.pans[0].pan.fat, Fat::Rapeseed);
    let mut hand = Hand::new(&world);
    hand.ready();
    hand.begin();
    hand.to(StepId::Connect);
    let connect = Command::Answer {
        step: StepId::Connect,
        evidence: Evidence::new()
            .with(Item::Nozzle, Word::InCorner)
            .with(Item::Valve, Word::Shut),
        read: None,
    };
    assert_eq!(hand.refusal(&world.scene, &connect), Some(Refusal::WarmUpNotBegun));
    hand.order(&Command::Heater(true));
    assert_eq!(
        hand.refusal(&world.scene, &connect),
        Some(Refusal::WarmingUp { left_ms: TEN_MINUTES })
    );
    hand.pass(TEN_MINUTES);
    hand.to(StepId::Connect);
    hand.to_the_end(Word::Off);
    // What it held last is rapeseed now: putting away asks the line as ever.
    hand.order(&Command::PutAway);
    let gate = hand.guide.gate(&hand.now).unwrap();
    let not_yet = gate.looks()[0]
        .2
        .iter()
        .filter(|a| a.verdict == Verdict::NotYet)
        .count();
    assert_eq!((gate.id(), not_yet), (StepId::AwayLine, 1));
}

#[test]
fn fat_set_in_the_line_is_melted_before_any_pan() {
    let mut world = set_in_line();
    // Who has yet to earn the short form is asked every look of Ready.
    world.scene.people[0].1 = 0;
    let mut hand = Hand::new(&world);
    hand.to(StepId::WarmUp);
    let melted = Command::Answer {
        step: StepId::WarmUp,
        evidence: Evidence::new()
            .with(Item::Line, Word::AllLiquid)
            .with(Item::Sound, Word::Whole),
        read: None,
    };
    assert_eq!(hand.refusal(&world.scene, &melted), Some(Refusal::WarmUpNotBegun));
    let first = Some(Refusal::ReadyFirst { hold: Hold::WarmUp });
    assert_eq!(hand.refusal(&world.scene, &hand.begins(PAN)), first);
    hand.touch();
    hand.order(&Command::Heater(true));
    hand.pass(TEN_MINUTES - 1);
    assert_eq!(
        hand.refusal(&world.scene, &melted),
        Some(Refusal::WarmingUp { left_ms: 1 })
    );
    hand.pass(1);
    hand.gate(Word::Off);
    println!("Ready, the line's melt included: {} touches", hand.touches);
    assert_eq!(hand.touches, 27);
    assert_eq!(hand.step(), None);
    hand.begin();
    hand.to_the_end(Word::Off);
}

#[test]
fn between_dripping_and_rapeseed_the_line_is_run_empty() {
    let world = two_fats();
    for line in [Word::RunEmpty, Word::Oil] {
        let mut hand = Hand::new(&world);
        hand.line = line;
        hand.ready();
        hand.pass(TEN_MINUTES);
        hand.pan(Word::Set);
        let other = hand.begins(OTHER);
        hand.order(&other);
        assert_eq!(hand.step(), Some(StepId::AwayLine));
        hand.gate(Word::Off);
        assert!(hand.has(Item::Line, line));
        // Then what another fat breaks anyway.
        assert_eq!(hand.step(), Some(StepId::Machine));
        hand.to_the_end(Word::Off);
        assert_eq!(hand.guide.job().unwrap().done.len(), 2);
        // The putting away has not begun by it.
        assert_eq!(hand.guide.job().unwrap().away, 0);
        hand.line = Word::RunEmpty;
        hand.put_away();
    }
}

#[test]
fn the_same_fat_again_asks_no_line_between() {
    let mut world = two_fats();
    world.scene.pans[1].pan.fat = Fat::Dripping;
    let mut hand = Hand::new(&world);
    hand.ready();
    hand.pass(TEN_MINUTES);
    hand.pan(Word::Set);
    let other = hand.begins(OTHER);
    hand.order(&other);
    assert_eq!(hand.step(), Some(StepId::HeatOff));
}

#[test]
fn a_line_that_cannot_be_run_empty_does_not_keep_the_machine_out() {
    let world = dripping();
    let mut hand = Hand::new(&world);
    hand.line = Word::Oil;
    hand.ready();
    hand.pass(TEN_MINUTES);
    hand.pan(Word::Set);
    let away = hand.put_away();
    println!("Put away with the line not run empty: {away} touches");
    assert!(away <= 12 && hand.has(Item::Line, Word::Oil));
}

#[test]
fn after_a_fault_solid_fat_is_left_to_set_and_nobody_carries_it() {
    let world = dripping().with_kit();
    let mut hand = Hand::new(&world);
    hand.ready();
    hand.begin();
    hand.to(StepId::OilTemp);
    hand.order(&Command::Fault(Fault::WillNotStart));
    assert_eq!(hand.guide.leave_set_gate(), None);
    hand.order(&Command::MadeSafe);
    let bare = Evidence::new().with(Item::Knob, Word::Off).with(Item::Flame, Word::Out);
    let lidded = bare.clone().with(Item::Lid, Word::InPlace);
    for (seen, item) in [(&bare, Item::Lid), (&lidded, Item::Tag)] {
        let refused = hand.refusal(&world.scene, &Command::LeaveSet(seen.clone()));
        assert_eq!(refused, Some(Refusal::Unanswered { item }));
    }
    hand.order(&Command::LeaveSet(lidded.with(Item::Tag, Word::Hung)));
    let Fact::Run(ended) = &hand.log.last().unwrap().fact else {
        panic!("no run")
    };
    assert_eq!((ended.left, ended.contents), (Some(Left::Set), Contents::SetFat));
    // The hand kit does not help, wherever the fat is and whichever way it went.
    hand.order(&Command::Machine {
        machine: KIT,
        used_since: Word::No,
    });
    while hand.step().is_some() {
        hand.gate(Word::Off);
    }
    for (place, went, why) in [
        (Place::InPan, None, Refusal::SetAtForty),
        (Place::InContainer, None, Refusal::SetAtForty),
        (Place::Split, Some(Route::Hot), Refusal::WrongMachine),
        (Place::Split, None, Refusal::SetAtForty),
        (Place::InMachine, Some(Route::Hot), Refusal::WrongMachine),
    ] {
        for fat in [Fat::Palm, Fat::Dripping, Fat::Lard, Fat::Blend] {
            let mut scene = world.scene.clone();
            (scene.pans[0].place, scene.pans[0].went) = (place, went);
            scene.pans[0].pan.fat = fat;
            let refused = hand.refusal(&scene, &hand.begins(PAN));
            assert_eq!(refused, Some(why.clone()), "{} {}", fat.key(), place.key());
        }
    }
}

#[test]
fn oil_that_went_out_hot_does_not_come_back_by_hand() {
    let world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, ALL).with_kit();
    let mut hand = Hand::new(&world);
    hand.order(&Command::Machine {
        machine: KIT,
        used_since: Word::No,
    });
    while hand.step().is_some() {
        hand.gate(Word::Off);
    }
    let mut scene = world.scene.clone();
    (scene.pans[0].place, scene.pans[0].went) = (Place::Split, Some(Route::Hot));
    assert_eq!(hand.refusal(&scene, &hand.begins(PAN)), Some(Refusal::WrongMachine));
    scene.pans[0].went = Some(Route::Cold);
    assert_eq!(hand.refusal(&scene, &hand.begins(PAN)), None);
}

#[test]
fn no_fault_of_a_fat_that_sets_is_answered_by_hand() {
    for fat in Fat::ALL {
        for place in Place::ALL {
            for fault in Fault::ALL.iter().copied().map(Some).chain([None]) {
                let said = faults::then(fault, *fat, *place, EN);
                let all = said.join(" ");
                if !fat.is_set_at_40c() {
                    let plain: Vec<&str> = fault.map(|f| faults::fault_then(f, EN)).into_iter().collect();
                    assert_eq!(said, plain);
                    continue;
                }
                assert!(all.contains("no way out by hand"), "{fault:?} {place:?}: {all}");
                assert!(!all.contains("Filter this pan cold"), "{fault:?} {place:?}: {all}");
                if fault.is_some() && *place == Place::InPan {
                    for words in [
                        "Tonight: not filtered. Carry on with it, or close the pan.",
                        "to set. Lid on, tag on the control.",
                        "Never carry it hot",
                        "repair or another machine",
                        "heat isolated",
                    ] {
                        assert!(all.contains(words), "{fault:?}: {all}");
                    }
                }
                let melts = [
                    "as its manual says",
                    "hose and lid sound",
                    "Never a flame, never boiling water.",
                ];
                let out = matches!(place, Place::Split | Place::InMachine);
                assert_eq!(melts.iter().all(|words| all.contains(words)), out, "{place:?}: {all}");
            }
        }
    }
    for line in faults::set_fat_path(EN).iter().chain(faults::set_in_machine(EN)) {
        assert!(
            line.ends_with('.') && !line.contains('!') && line.split_whitespace().count() <= 18,
            "{line}"
        );
    }
}

#[test]
fn fat_parked_in_the_machine_is_melted_before_it_is_pumped_back() {
    let mut world = dripping();
    (world.scene.pans[0].place, world.scene.pans[0].went) = (Place::InMachine, Some(Route::Hot));
    world.scene.pans[0].contents = Contents::EmptyWet;
    let mut hand = Hand::new(&world);
    hand.place = Word::InMachine;
    while hand.guide.gate(&hand.now).is_some() {
        hand.gate(Word::Off);
    }
    hand.begin();
    hand.to(StepId::GiveBack);
    let back = Command::Answer {
        step: StepId::GiveBack,
        evidence: Evidence::new()
            .with(Item::Valve, Word::Shut)
            .with(Item::PanInside, Word::ClearDry)
            .with(Item::Knob, Word::Off)
            .with(Item::Flame, Word::Out)
            .with(Item::Nozzle, Word::Clamped),
        read: None,
    };
    assert_eq!(hand.refusal(&world.scene, &back), Some(Refusal::WarmUpNotBegun));
    hand.order(&Command::Heater(true));
    hand.pass(TEN_MINUTES);
    // Ten silent minutes with oil out of its pan: looked at again first.
    assert_eq!(hand.step(), Some(StepId::LookAgain));
    hand.to(StepId::GiveBack);
    assert_eq!(hand.refusal(&world.scene, &back), None);
    hand.to_the_end(Word::Set);
}
