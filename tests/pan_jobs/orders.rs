//! What somebody could order in a state: good answers, bad ones, steps out of turn, numbers at the limit.

use panward::domain::day_jobs;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::job::JobKind;
use panward::domain::facts::oil::{Age, Fill};
use panward::domain::facts::run::{Form, Plan};
use panward::domain::fat::Fat;
use panward::domain::guide;
use panward::domain::guide::gate::{Gate, QuestionKind};
use panward::domain::ids::{PanId, RunId};
use panward::domain::pan_jobs::Command;
use panward::domain::procedure::StepId;
use panward::domain::quick::{Quick, Said};
use panward::domain::time::Now;

use crate::node::{Node, Order};
use crate::world::{ANN, MACHINE, STARTER, YOUNG, job_id, litres};

/// Steps tried out of turn.
const TURNS: [StepId; 12] = [
    StepId::Container,
    StepId::EmptyByHand,
    StepId::InMachine,
    StepId::Exit,
    StepId::FreshIn,
    StepId::FreshLevel,
    StepId::BoilWater,
    StepId::BoilHeat,
    StepId::BoilLook,
    StepId::BoilDrain,
    StepId::LookAgain,
    StepId::LightOn,
];

/// Everything a hasty hand could claim at once.
fn too_good() -> Evidence {
    let mut all: Evidence = [
        (Item::Knob, Word::Off),
        (Item::Flame, Word::Out),
        (Item::Container, Word::MetalDry),
        (Item::Room, Word::Enough),
        (Item::Carry, Word::TwoPeople),
        (Item::Tag, Word::Hung),
        (Item::ByHand, Word::InContainer),
        (Item::Lid, Word::InPlace),
        (Item::MachineTag, Word::Hung),
        (Item::Walls, Word::Wiped),
        (Item::PanInside, Word::Dry),
        (Item::Valve, Word::Shut),
        (Item::Level, Word::Enough),
        (Item::WaterLevel, Word::InBand),
        (Item::Fan, Word::On),
        (Item::Attended, Word::Here),
        (Item::HeatSetting, Word::Low),
        (Item::Foam, Word::Quiet),
        (Item::DrainedTo, Word::AsSheet),
        (Item::PanHolds, Word::Empty),
    ]
    .into_iter()
    .map(|(item, word)| (item, Seen::Is(word)))
    .collect();
    all.put(Item::OilTemp, Seen::Number(300));
    all.put(Item::WaterTemp, Seen::Number(300));
    all
}

/// All as it must be, then each look in each of its other words, then nothing at all; each number everywhere.
pub fn answers(gate: &Gate) -> Vec<Evidence> {
    let looks = gate.looks();
    let first = looks.iter().filter_map(|(_, item, offered)| {
        let word = offered.first()?.word;
        Some((*item, Seen::Is(word)))
    });
    let best: Evidence = first.collect();
    let mut all = vec![best.clone()];
    for (_, item, offered) in &looks {
        all.extend(offered.iter().skip(1).map(|a| best.clone().with(*item, a.word)));
    }
    for question in &gate.questions {
        if let QuestionKind::Probe { item } = question.kind {
            let with = |evidence: &Evidence, dc| {
                let mut with = evidence.clone();
                with.put(item, Seen::Number(dc));
                with
            };
            all = all.iter().flat_map(|e| [400, 401].map(|dc| with(e, dc))).collect();
        }
    }
    all.push(Evidence::new());
    all
}

/// Each answer with a reading of now, of five minutes and a bit ago, of none; and each weight.
fn said(gate: &Gate, now: &Now) -> Vec<(Evidence, Option<Now>, Option<u32>)> {
    let probes = gate
        .questions
        .iter()
        .any(|q| matches!(q.kind, QuestionKind::Probe { .. }));
    let old = Now {
        wall: now.wall.plus(-300_001),
        mono: now.mono - 300_001,
        ..*now
    };
    let reads = if probes {
        vec![Some(*now), Some(old), None]
    } else {
        vec![None]
    };
    let mut all = Vec::new();
    for evidence in answers(gate) {
        let alone = evidence.is(Item::Carry, Word::Alone);
        let loads = if alone {
            vec![Some(7_000), Some(7_001), None]
        } else {
            vec![None]
        };
        for read in &reads {
            all.extend(loads.iter().map(|load| (evidence.clone(), *read, *load)));
        }
    }
    all
}

/// Orders about one pan's own job.
pub fn of_pan(node: &Node, pan: PanId) -> Vec<Command> {
    let mut out = Vec::new();
    let Some(job) = node.pans.job(pan) else {
        for what in [JobKind::OilChange, JobKind::BoilOut, JobKind::LightUp] {
            for (who, supervisor) in [(ANN, None), (STARTER, None), (STARTER, Some(YOUNG)), (YOUNG, Some(ANN))] {
                out.push(Command::Open {
                    job: job_id(node.opened),
                    what,
                    pan,
                    who,
                    supervisor,
                });
            }
        }
        return out;
    };
    for gate in node.pans.asks(&node.scene, pan, &node.now).unwrap_or_default() {
        for (evidence, read, load_g) in said(&gate, &node.now) {
            let step = gate.id();
            if matches!(step, StepId::EmptyByHand | StepId::CutOut | StepId::InMachine) {
                out.push(Command::Out {
                    pan,
                    step,
                    evidence: evidence.clone(),
                    amount: litres(18),
                    reason: "old".into(),
                    container: None,
                });
            }
            if step == StepId::FreshLevel {
                out.push(Command::Filled {
                    pan,
                    evidence: evidence.clone(),
                    amount: litres(18),
                    batch: None,
                });
            }
            out.push(Command::Answer {
                pan,
                step,
                evidence,
                read,
                load_g,
            });
        }
    }
    for step in TURNS {
        out.push(Command::Answer {
            pan,
            step,
            evidence: too_good(),
            read: Some(node.now),
            load_g: None,
        });
    }
    out.extend([Fat::Rapeseed, Fat::Dripping, Fat::Lard].map(|fat| Command::Fresh { pan, fat }));
    out.push(Command::Filled {
        pan,
        evidence: too_good(),
        amount: litres(18),
        batch: None,
    });
    out.push(Command::HeatOff { pan });
    let leave = node.pans.leave_gate(&node.scene, pan, &node.now).ok().flatten();
    for evidence in leave.iter().flat_map(answers).chain([Evidence::new()]) {
        out.push(Command::End { pan, evidence });
    }
    if job.who == Some(ANN) {
        for (who, supervisor) in [(STARTER, None), (STARTER, Some(ANN))] {
            out.push(Command::Who { pan, who, supervisor });
        }
    }
    out
}

/// Orders about old oil, the job over or not.
pub fn of_waste(node: &Node) -> Vec<Command> {
    let mut out = Vec::new();
    for waste in &node.pans.state().waste {
        let Some(gate) = node.pans.waste_gate(waste.job) else {
            continue;
        };
        for (evidence, read, load_g) in said(&gate, &node.now) {
            out.push(Command::Waste {
                job: waste.job,
                who: ANN,
                step: gate.id(),
                evidence,
                read,
                load_g,
            });
        }
    }
    out
}

/// Orders to light-up and lock-up.
pub fn of_day(node: &Node) -> Vec<day_jobs::Command> {
    use day_jobs::Command as Day;
    let mut out = Vec::new();
    for what in [JobKind::LightUp, JobKind::LockUp, JobKind::BoilOut] {
        out.push(Day::Open {
            job: job_id(node.opened),
            what,
            who: ANN,
            supervisor: None,
        });
    }
    for pan in node.scene.pans.iter().map(|p| p.pan.pan) {
        if let Ok(Some(gate)) = node.day.light_gate(&node.scene, pan, &node.now) {
            out.extend(answers(&gate).into_iter().map(|evidence| Day::Light {
                pan,
                step: gate.id(),
                evidence,
            }));
        }
        out.push(Day::Light {
            pan,
            step: StepId::LightOn,
            evidence: too_good(),
        });
        out.push(Day::HeatOff { pan });
    }
    for ask in node.day.lock_asks(&node.scene, &node.now) {
        out.extend(answers(&ask.gate).into_iter().map(|evidence| Day::Lock {
            step: ask.gate.id(),
            pan: ask.pan,
            evidence,
        }));
    }
    out.push(Day::EndLight);
    out
}

/// Orders to the filter job.
pub fn of_guide(node: &Node) -> Vec<guide::Command> {
    use guide::Command as Guide;
    let Some(job) = node.guide.job() else {
        return vec![Guide::Open(job_id(node.opened))];
    };
    let mut out = vec![
        Guide::Who {
            person: ANN,
            supervisor: None,
        },
        Guide::Machine {
            machine: MACHINE,
            used_since: Word::No,
        },
        Guide::PutAway,
        Guide::End,
        Guide::Stop,
        Guide::MadeSafe,
        Guide::GiveUp,
    ];
    if let Some(gate) = node.guide.gate(&node.now) {
        let looks = answers(&gate).into_iter();
        // Hot enough for the machine's window, besides the cold figures.
        let hot = |mut evidence: Evidence| {
            if evidence.number(Item::OilTemp).is_some() {
                evidence.put(Item::OilTemp, Seen::Number(1500));
            }
            evidence
        };
        out.extend(looks.map(|evidence| Guide::Answer {
            step: gate.id(),
            evidence: hot(evidence),
            read: Some(node.now),
        }));
    }
    if let Some(gate) = node.guide.leave_out_gate() {
        out.extend(answers(&gate).into_iter().map(Guide::LeaveOut));
    }
    if job.run.is_none() {
        out.extend(node.scene.pans.iter().map(|p| Guide::Begin {
            run: RunId(node.log.len() as u128),
            pan: p.pan.pan,
            form: Form::Long,
            plan: Plan::default(),
        }));
    }
    out
}

/// Fills said without the guide, sure and not.
pub fn of_log(node: &Node) -> Vec<Said> {
    let mut out = Vec::new();
    for pan in node.scene.pans.iter().map(|p| p.pan.pan) {
        for sure in [false, true] {
            out.push(Said {
                what: Quick::Fill(Fill {
                    pan,
                    fat: Fat::Rapeseed,
                    amount: litres(18),
                    batch: None,
                    age: Age::Fresh,
                }),
                who: Some(ANN),
                at: None,
                sure,
            });
        }
    }
    out
}

/// Everything that could be ordered.
pub fn of_all(node: &Node) -> Vec<Order> {
    let pans = node
        .scene
        .pans
        .iter()
        .flat_map(|p| of_pan(node, p.pan.pan))
        .chain(of_waste(node));
    let mut out: Vec<Order> = pans.map(Order::Pan).collect();
    out.extend(of_day(node).into_iter().map(Order::Day));
    out.extend(of_guide(node).into_iter().map(Order::Guide));
    out.extend(of_log(node).into_iter().map(|said| Order::Said(Box::new(said))));
    out
}
