//! Who is at the pans: told no at the first step and not at the pan, and put right at any time.

use panward::domain::entry::Draft;
use panward::domain::evidence::Word;
use panward::domain::facts::run::Form;
use panward::domain::facts::setup::{OutBy, Route};
use panward::domain::fat::Fat;
use panward::domain::guide::{Command, Refusal};
use panward::domain::ids::{MachineId, PersonId};
use panward::domain::procedure::{Hold, StepId, Tables};
use panward::kitchen::filter::{Fit, fit};

use crate::node::Node;
use crate::orders::answers;
use crate::world::{JOB, MACHINE, NONE, OWNER, STARTER, World, world};

const BY_HAND: MachineId = MachineId(77);

/// A kitchen with one machine; with a hand kit beside it where `hand`. The starter is signed off for emptying by hand.
fn kitchen(hand: bool) -> World {
    let mut world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, NONE);
    world.scene.people[1].0.routes = vec![Route::Cold];
    if hand {
        let mut kit = world.scene.machines[0].clone();
        (kit.machine.machine, kit.machine.out_by) = (BY_HAND, OutBy::Hand);
        world.scene.machines.push(kit);
    }
    world
}

fn opened(world: &World) -> Node {
    let mut node = Node::first(world, Tables::REAL);
    order(&mut node, &Command::Open(JOB)).unwrap();
    node
}

/// Decides by the guide alone and believes it.
fn order(node: &mut Node, command: &Command) -> Result<(), Refusal> {
    let drafts: Vec<Draft> = node.guide.decide(&node.scene, command, &node.now)?;
    node.write(drafts, None).unwrap();
    Ok(())
}

const fn who(person: PersonId) -> Command {
    Command::Who {
        person,
        supervisor: None,
    }
}

const fn with(machine: MachineId) -> Command {
    Command::Machine {
        machine,
        used_since: Word::No,
    }
}

#[test]
fn who_may_do_nothing_here_is_told_at_the_first_step() {
    let hot = Refusal::NotSignedOff { route: Route::Hot };
    let mut node = opened(&kitchen(false));
    assert_eq!(order(&mut node, &who(STARTER)), Err(hot.clone()));
    let fits = |person, beside| fit(&node.guide, &node.scene, person, beside, &node.now);
    assert_eq!(fits(STARTER, None), Fit::BesideSupervisor(hot));
    assert_eq!(fits(STARTER, Some(OWNER)), Fit::Yes(Word::Supervised));
}

#[test]
fn who_may_do_some_of_it_is_told_at_the_machine_and_another_takes_over() {
    let mut node = opened(&kitchen(true));
    order(&mut node, &who(STARTER)).unwrap();
    let hot = Err(Refusal::NotSignedOff { route: Route::Hot });
    assert_eq!(order(&mut node, &with(MACHINE)), hot);
    order(&mut node, &with(BY_HAND)).unwrap();
    order(&mut node, &who(OWNER)).unwrap();
    order(&mut node, &with(MACHINE)).unwrap();
    assert_eq!(order(&mut node, &who(STARTER)), hot, "the machine is named by now");
}

#[test]
fn a_wrong_name_is_put_right_and_the_new_person_shows_their_own_kit() {
    let mut node = opened(&kitchen(true));
    assert_eq!(node.guide.who_gate().unwrap().id(), StepId::Who);
    order(&mut node, &who(OWNER)).unwrap();
    let gate = node.guide.gate(&node.now).unwrap();
    assert_eq!(gate.id(), StepId::Kit);
    let worn = answers(&gate).swap_remove(0);
    let answer = Command::Answer {
        step: StepId::Kit,
        evidence: worn,
        read: None,
    };
    order(&mut node, &answer).unwrap();
    let stands = |node: &Node, hold| node.guide.job().unwrap().stands(hold, &node.now);
    // The same name again changes nothing.
    order(&mut node, &who(OWNER)).unwrap();
    assert!(stands(&node, Hold::Kit));
    order(&mut node, &who(STARTER)).unwrap();
    assert_eq!(node.guide.job().unwrap().who, Some(STARTER));
    assert!(stands(&node, Hold::Person) && !stands(&node, Hold::Kit));
}
