//! A clean run from end to end, and the hard holds it meets.

use panward::domain::evidence::{Item, Seen, Word};
use panward::domain::guide::gate::Gate;
use panward::domain::guide::{Command, Guide, Run};
use panward::domain::procedure::{StepId, Tables};
use panward::domain::time::Now;

use crate::orders::answers;
use crate::world::{JOB, MACHINE, PAN, World, run_id, stamp, start};

/// A guide whose Ready is proved: a pan is to be chosen.
pub fn proved(world: &World) -> Guide {
    let now = start();
    let mut guide = Guide::new(Tables::REAL);
    let mut next = Some(Command::Open(JOB));
    let mut seq = 0;
    while let Some(command) = next {
        for draft in guide.decide(&world.scene, &command, &now).unwrap() {
            seq += 1;
            guide.apply(&stamp(draft, seq, &now), &world.scene, Some(&now));
        }
        next = guide.gate(&now).map(|gate| said(&gate, world, &now));
    }
    guide
}

/// A gate answered well.
fn said(gate: &Gate, world: &World, now: &Now) -> Command {
    match gate.id() {
        StepId::Who => Command::Who {
            person: world.who.0,
            supervisor: world.who.1,
        },
        StepId::Machine => Command::Machine {
            machine: MACHINE,
            used_since: Word::No,
        },
        step => {
            let mut evidence = answers(gate).swap_remove(0);
            evidence.put(Item::OilTemp, Seen::Number(1_500));
            Command::Answer {
                step,
                evidence,
                read: Some(*now),
            }
        }
    }
}

/// The hard holds of a clean run, each with the run that stood there. Left out: a lone number, which has its own
/// accept, and leaving, which opens nothing while the pan stays unlit.
pub fn hard_gates(world: &World) -> Vec<(Gate, Option<Run>)> {
    let now = start();
    let mut guide = Guide::new(Tables::REAL);
    let mut out = Vec::new();
    let mut commands = vec![Command::Open(JOB)];
    for seq in 1..60 {
        let command = commands.pop().unwrap_or_else(|| match guide.gate(&now) {
            None => Command::Begin {
                run: run_id(0),
                pan: PAN,
                form: world.form,
                plan: world.plan,
            },
            Some(gate) => {
                let run = guide.job().and_then(|j| j.run.clone());
                let lone = gate.looks().is_empty() || gate.id() == StepId::OilTemp;
                if gate.is_hold() && (!lone || run.is_none()) && gate.id() != StepId::Leave {
                    out.push((gate.clone(), run));
                }
                said(&gate, world, &now)
            }
        });
        for draft in guide.decide(&world.scene, &command, &now).unwrap() {
            guide.apply(&stamp(draft, seq, &now), &world.scene, Some(&now));
        }
        if guide.job().is_some_and(|j| !j.done.is_empty()) {
            return out;
        }
    }
    panic!("{}: the clean run does not end", world.name)
}
