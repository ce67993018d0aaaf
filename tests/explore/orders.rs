//! What somebody could order in a state: every command, every good answer, every bad and missing one.

use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::run::{Fault, Form, Place};
use panward::domain::guide::Command;
use panward::domain::guide::gate::{Gate, QuestionKind};
use panward::domain::guide::state::Phase;
use panward::domain::ids::PersonId;
use panward::domain::procedure::{Hold, StepId, Verdict};
use panward::domain::time::{Millis, Now};

use crate::node::Node;
use crate::world::{JOB, KIT, MACHINE, OWNER, PAN, STARTER, World, YOUNG, run_id};

/// Whether something goes wrong or out of turn: a stop, a fault, a broken hold, somebody else, a heater switched off;
/// clocks count as well. What sets things right never does. Each world says how many of these a path may hold.
pub fn is_trouble(command: &Command, node: &Node, world: &World) -> bool {
    match command {
        // With oil out, to stop is a way back.
        Command::Stop => !node.aud.oil_out(),
        Command::Fault(_) | Command::Broke(_) | Command::Heater(false) => true,
        Command::Who { person, supervisor } => (*person, *supervisor) != world.who,
        _ => false,
    }
}

/// Everything somebody could order now.
pub fn commands(node: &Node, world: &World) -> Vec<(Command, Option<Now>)> {
    let Some(job) = node.guide.job() else {
        // One job a world; the next one is another world.
        let fresh = node.seq == 0;
        return if fresh {
            vec![(Command::Open(JOB), None)]
        } else {
            Vec::new()
        };
    };
    let mut out: Vec<Command> = Vec::new();
    let others: [(PersonId, Option<PersonId>); 5] = [
        (OWNER, None),
        (STARTER, None),
        (STARTER, Some(STARTER)),
        (STARTER, Some(YOUNG)),
        (YOUNG, Some(OWNER)),
    ];
    // Somebody else takes over once at most: it is who they are that counts, not how often.
    for (person, supervisor) in others.into_iter().chain([world.who]) {
        if (person, supervisor) == world.who || job.who.is_none() || job.run.as_ref().is_some_and(|r| r.at % 4 == 2) {
            out.push(Command::Who { person, supervisor });
        }
    }
    for used_since in [Word::No, Word::NotKnown, Word::Dry] {
        // Whether it is strange only matters to a claim.
        let told_apart = used_since != Word::NotKnown || !world.scene.pans[0].claims.is_empty();
        let at_kit = job.run.is_none() && job.machine == Some(KIT);
        let asked = job.machine.is_none() || !job.proved.contains(&Hold::Match) || at_kit;
        if (asked && told_apart) || used_since == Word::Dry {
            out.push(Command::Machine {
                machine: MACHINE,
                used_since,
            });
        }
        // To the hand kit is gone over with no pan in hand.
        let other = job.machine == Some(MACHINE) && used_since == Word::No;
        if job.run.is_none() && world.scene.machine(KIT).is_some() && (other || job.machine.is_none()) {
            out.push(Command::Machine {
                machine: KIT,
                used_since,
            });
        }
    }
    let machine = &world.scene.machines[0];
    let sets = world.scene.pans[0].pan.fat.is_solid() || machine.held_solid();
    if sets && (job.done.is_empty() || node.aud.oil_out() && machine.machine.heater_w > 0) {
        out.extend([
            Command::Heater(true),
            Command::Heater(false),
            Command::TimeIs(true),
            Command::TimeIs(false),
        ]);
    }
    if let Some(run) = &job.run {
        out.extend([Command::Stop, Command::MadeSafe, Command::GiveUp]);
        if run.phase != Phase::Stopped {
            for fault in [Fault::Spill, Fault::WillNotStart] {
                out.push(Command::Fault(fault));
            }
        }
        for hold in [Hold::Person, Hold::Kit, Hold::Floor, Hold::Dry, Hold::Room, Hold::Match] {
            // One at a time: what is broken is put right before the next breaks.
            if job.proved.len() == 6 && run.form == Form::Long && run.place == Place::InPan
                || job.proved.contains(&hold) && matches!(hold, Hold::Person | Hold::Kit)
            {
                out.push(Command::Broke(hold));
            }
        }
    } else if node.runs == 0 || node.scene.pans[0].place != Place::InPan && node.runs < 2 {
        let begin = |form, plan| Command::Begin {
            run: run_id(node.runs),
            pan: PAN,
            form,
            plan,
        };
        out.push(begin(world.form, world.plan));
    }
    out.extend([Command::PutAway, Command::End]);
    let mut all: Vec<(Command, Option<Now>)> = out.into_iter().map(|c| (c, None)).collect();
    if let Some(gate) = node.guide.leave_out_gate() {
        let few = if node.waited { 1 } else { usize::MAX };
        all.extend(
            answers(&gate)
                .into_iter()
                .take(few)
                .map(|e| (Command::LeaveOut(e), None)),
        );
    }
    if let Some(gate) = node.guide.leave_set_gate() {
        all.extend(answers(&gate).into_iter().map(|e| (Command::LeaveSet(e), None)));
    }
    let gate = node.guide.gate(&node.now);
    let other = if gate.as_ref().is_some_and(|g| g.id() == StepId::Connect) {
        StepId::GiveBack
    } else {
        StepId::Connect
    };
    all.push((
        Command::Answer {
            step: other,
            evidence: Evidence::new(),
            read: None,
        },
        None,
    ));
    if let Some(gate) = gate {
        let step = gate.id();
        let probes = gate
            .questions
            .iter()
            .any(|q| matches!(q.kind, QuestionKind::Probe { .. }));
        let mut offered = answers(&gate);
        if node.waited {
            // A bad or missing answer is refused whatever the time is; that was tried before it passed.
            offered.truncate(1);
        }
        for evidence in offered {
            if !probes {
                all.push((
                    Command::Answer {
                        step,
                        evidence,
                        read: None,
                    },
                    None,
                ));
                continue;
            }
            let limits = if node.waited {
                vec![node.world_target()]
            } else {
                temperatures(node)
            };
            for dc in limits {
                let mut evidence = evidence.clone();
                evidence.put(Item::OilTemp, Seen::Number(dc));
                let readings: &[i64] = if matches!(dc, 400 | 1500) {
                    &[0, 299_999, 300_001]
                } else {
                    &[0]
                };
                for ago in readings {
                    let now = node.now;
                    let read = Some(Now {
                        wall: Millis(now.wall.0 - ago),
                        mono: now.mono - ago,
                        ..now
                    });
                    all.push((
                        Command::Answer {
                            step,
                            evidence: evidence.clone(),
                            read,
                        },
                        read,
                    ));
                }
                if dc == 1500 || dc == 400 {
                    all.push((
                        Command::Answer {
                            step,
                            evidence: evidence.clone(),
                            read: None,
                        },
                        None,
                    ));
                }
            }
            all.push((
                Command::Answer {
                    step,
                    evidence,
                    read: Some(node.now),
                },
                Some(node.now),
            ));
        }
    }
    all
}

/// At, just under and just over each limit.
fn temperatures(node: &Node) -> Vec<i32> {
    let Some(run) = node.guide.job().and_then(|j| j.run.as_ref()) else {
        return Vec::new();
    };
    let (low, high) = (i32::from(run.limits.low.dc()), i32::from(run.limits.high.dc()));
    let mut all = vec![
        390,
        400,
        401,
        410,
        low - 10,
        low - 1,
        low,
        1_500,
        high,
        high + 1,
        high + 10,
        2_010,
    ];
    all.sort_unstable();
    all.dedup();
    all
}

/// Every good answer, every single bad one, and each missing one.
pub fn answers(gate: &Gate) -> Vec<Evidence> {
    let looks = gate.looks();
    let open = |v: Verdict| v != Verdict::NotYet;
    let mut good = vec![Evidence::new()];
    for (_, item, offered) in &looks {
        let words: Vec<Word> = offered.iter().filter(|a| open(a.verdict)).map(|a| a.word).collect();
        // All answers of a gate together while they are few; beyond that only those that steer.
        let steers = matches!(
            item,
            Item::Tank | Item::Level | Item::Left | Item::Place | Item::PlaceAgain | Item::Remainder | Item::OffTarget
        );
        let few = if steers {
            words.as_slice()
        } else {
            words.get(..1).unwrap_or(&[])
        };
        good = good
            .iter()
            .flat_map(|e| few.iter().map(|w| e.clone().with(*item, *w)))
            .collect();
    }
    let best = good.first().cloned().unwrap_or_default();
    let mut out = good;
    for (_, item, offered) in &looks {
        out.extend(offered.iter().map(|a| best.clone().with(*item, a.word)));
        out.push(best.iter().filter(|(i, _)| i != item).cloned().collect());
    }
    out.push(Evidence::new());
    out
}
