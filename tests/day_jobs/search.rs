//! Every path, to a depth: every answer good and bad, every step out of turn, times just before, at and after each
//! deadline, clocks that jump, pages that die.

use std::collections::HashSet;
use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::rc::Rc;

use panward::domain::day_jobs::{Command, DayJobs};
use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::job::{Grade, JobKind};
use panward::domain::guide::Scene;
use panward::domain::guide::gate::{Gate, QuestionKind};
use panward::domain::ids::PersonId;
use panward::domain::procedure::{DayTables, StepId};
use panward::domain::time::{Millis, Now};

use crate::auditor::Auditor;
use crate::world::{
    ANN, BOB, LIGHT, LOCK, NEXT_LIGHT, NOBODY, PAN, STARTER, YOUNG, later, reloaded, replayed, start, written,
};

/// Who may want to light the range, and beside whom; only the first of them may.
const OPENERS: [(PersonId, Option<PersonId>); 5] = [
    (ANN, None),
    (STARTER, None),
    (STARTER, Some(YOUNG)),
    (STARTER, Some(STARTER)),
    (YOUNG, Some(ANN)),
];

/// Steps tried out of turn.
const TURNS: [StepId; 12] = [
    StepId::LightLevel,
    StepId::LightOn,
    StepId::MeltLow,
    StepId::MeltLook,
    StepId::MeltFull,
    StepId::LookAgain,
    StepId::Scraps,
    StepId::ScrapsAgain,
    StepId::ScrapsOut,
    StepId::LockFloor,
    StepId::LockPans,
    StepId::Draw,
];

/// What a search found.
#[derive(Debug, Default)]
pub struct Found {
    pub states: usize,
    pub violations: Vec<String>,
    pub refused: usize,
    pub lit: usize,
    pub low: usize,
    pub ended: usize,
    pub left_open: usize,
    pub looked: usize,
}

/// Where a search begins and how far it goes.
pub struct Plan {
    pub scene: Scene,
    pub tables: DayTables,
    pub open: Vec<JobKind>,
    pub depth: usize,
}

#[derive(Clone)]
struct Node {
    jobs: DayJobs,
    auditor: Auditor,
    log: Rc<Vec<Entry>>,
    now: Now,
    troubles: u8,
}

impl Node {
    fn key(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        (self.jobs.state(), &self.auditor, self.now, self.troubles).hash(&mut hasher);
        hasher.finish()
    }
}

pub fn explore(plan: &Plan) -> Found {
    let mut found = Found::default();
    let mut seen = HashSet::new();
    let mut edge = vec![Node {
        jobs: DayJobs::new(plan.tables),
        auditor: Auditor::default(),
        log: Rc::new(Vec::new()),
        now: start(),
        troubles: 0,
    }];
    for _ in 0..plan.depth {
        let mut next = Vec::new();
        for node in edge {
            for after in moves(&node, plan, &mut found) {
                if seen.insert(after.key()) {
                    next.push(after);
                }
            }
        }
        edge = next;
    }
    found.states = seen.len();
    found
}

fn moves(node: &Node, plan: &Plan, found: &mut Found) -> Vec<Node> {
    let mut out: Vec<Node> = commands(node, plan)
        .into_iter()
        .filter_map(|command| step(node, plan, &command, found))
        .collect();
    out.extend(times(node).into_iter().map(|now| Node { now, ..node.clone() }));
    if node.troubles < 1 && !node.log.is_empty() {
        let wall = |ms| Now {
            wall: node.now.wall.plus(ms),
            ..node.now
        };
        let troubled = |jobs: DayJobs, now| Node {
            jobs,
            now,
            troubles: node.troubles + 1,
            ..node.clone()
        };
        out.push(troubled(replayed(plan.tables, &node.log), reloaded(node.now)));
        for ms in [-3_600_000, 2_001, 3_600_000] {
            out.push(troubled(node.jobs.clone(), wall(ms)));
        }
    }
    out
}

/// A millisecond before, at and after everything that is due, in step on both clocks.
fn times(node: &Node) -> Vec<Now> {
    let state = node.jobs.state();
    let five = 5 * Millis::MINUTE;
    let mut due: Vec<Millis> = Vec::new();
    if state.light.as_ref().is_some_and(|l| !l.pans.is_empty()) {
        due.extend(node.log.last().map(|e| e.rec.plus(five)));
    }
    due.extend(state.lock.as_ref().and_then(|l| l.wait).map(|w| w.due()));
    due.iter()
        .flat_map(|d| [d.plus(-1), *d, d.plus(1)])
        .map(|at| at.since(node.now.wall))
        .filter(|ms| *ms > 0)
        .map(|ms| later(node.now, ms))
        .collect()
}

fn step(node: &Node, plan: &Plan, command: &Command, found: &mut Found) -> Option<Node> {
    let drafts = match node.jobs.decide(&plan.scene, command, &node.now) {
        Ok(drafts) => drafts,
        Err(_) => {
            found.refused += 1;
            return None;
        }
    };
    let mut after = node.clone();
    for draft in drafts {
        let seq = u32::try_from(after.log.len()).unwrap() + 1;
        let entry = written(draft, seq, &after.now, after.log.last());
        after.jobs.apply(&entry, Some(&after.now));
        count(&entry, found);
        if let Err(what) = after.auditor.read(&entry, &plan.scene, &after.now) {
            found.violations.push(format!("{what}: {command:?}"));
            return None;
        }
        Rc::make_mut(&mut after.log).push(entry);
    }
    Some(after)
}

fn count(entry: &Entry, found: &mut Found) {
    use panward::domain::facts::Fact;
    use panward::domain::facts::job::JobEvent;
    use panward::domain::facts::run::Heat;
    if let Fact::Job(fact) = &entry.fact {
        found.lit += usize::from(fact.heat == Some(Heat::On));
        found.low += usize::from(fact.heat == Some(Heat::Low));
        found.ended += usize::from(fact.event == JobEvent::Ended && fact.what == JobKind::LockUp);
        found.left_open += usize::from(fact.event == JobEvent::LeftOpen);
        found.looked += usize::from(fact.event == JobEvent::Looked);
    }
}

/// All as it must be, then each look in each of its other words, then nothing at all; each number everywhere.
fn answers(gate: &Gate) -> Vec<Evidence> {
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
            all = all.iter().flat_map(|e| numbers(e, item)).collect();
        }
    }
    all.push(Evidence::new());
    all
}

fn numbers(evidence: &Evidence, item: Item) -> Vec<Evidence> {
    [390, 398, 399, 400, 401]
        .iter()
        .map(|dc| {
            let mut with = evidence.clone();
            with.put(item, Seen::Number(*dc));
            with
        })
        .collect()
}

/// Everything a hasty hand could claim at once.
fn too_good() -> Evidence {
    let mut all: Evidence = [
        (Item::Level, Word::Enough),
        (Item::Melt, Word::AllLiquid),
        (Item::HeatSetting, Word::On),
        (Item::Fan, Word::On),
        (Item::Lid, Word::Off),
        (Item::InPan, Word::None),
        (Item::Tag, Word::None),
        (Item::Valve, Word::Shut),
        (Item::Warming, Word::Quiet),
        (Item::Crust, Word::Open),
        (Item::Thermostat, Word::Clear),
        (Item::Knob, Word::Off),
        (Item::Flame, Word::Out),
        (Item::Floor, Word::Dry),
    ]
    .into_iter()
    .map(|(item, word)| (item, Seen::Is(word)))
    .collect();
    all.put(Item::Heap, Seen::Number(300));
    all.put(Item::HeapAgain, Seen::Number(300));
    all
}

fn commands(node: &Node, plan: &Plan) -> Vec<Command> {
    let (jobs, now) = (&node.jobs, &node.now);
    let mut out = Vec::new();
    for what in &plan.open {
        let job = match what {
            JobKind::LockUp => LOCK,
            JobKind::LightUp if jobs.state().owed.is_empty() => LIGHT,
            JobKind::LightUp | JobKind::Filter | JobKind::OilChange | JobKind::BoilOut => NEXT_LIGHT,
        };
        // One of each a path, so that the judge need not tell two apart.
        let had = |e: &Entry| matches!(&e.fact, panward::domain::facts::Fact::Job(f) if f.job == job);
        if !node.log.iter().any(had) {
            let openers = if *what == JobKind::LightUp {
                &OPENERS[..]
            } else {
                &OPENERS[..1]
            };
            for &(who, supervisor) in openers {
                out.push(Command::Open {
                    job,
                    what: *what,
                    who,
                    supervisor,
                });
            }
        }
    }
    if let Ok(Some(gate)) = jobs.light_gate(&plan.scene, PAN, now) {
        out.extend(answers(&gate).into_iter().map(|evidence| Command::Light {
            pan: PAN,
            step: gate.id(),
            evidence,
        }));
    }
    for ask in jobs.lock_asks(&plan.scene, now) {
        out.extend(answers(&ask.gate).into_iter().map(|evidence| Command::Lock {
            step: ask.gate.id(),
            pan: ask.pan,
            evidence,
        }));
    }
    for step in TURNS {
        out.push(Command::Light {
            pan: PAN,
            step,
            evidence: too_good(),
        });
        for pan in [None, Some(PAN)] {
            out.push(Command::Lock {
                step,
                pan,
                evidence: too_good(),
            });
        }
    }
    if let Some(gate) = jobs.no_scraps_gate() {
        out.extend(answers(&gate).into_iter().map(Command::NoScraps));
    }
    if let Some(gate) = jobs.scraps_out_gate() {
        let looks = answers(&gate);
        for (looker, ahead) in [(BOB, 1), (NOBODY, 3_600_000), (BOB, 0), (BOB, 24 * 3_600_000 + 1)] {
            out.extend(looks.iter().map(|evidence| Command::ScrapsOut {
                evidence: evidence.clone(),
                looker,
                next_look: now.wall.plus(ahead),
            }));
        }
    }
    for lock_up in [LOCK, LIGHT] {
        out.extend(answers(&jobs.found_gate()).into_iter().map(|evidence| Command::Looked {
            lock_up,
            who: BOB,
            evidence,
        }));
    }
    out.extend([
        Command::HeatOff { pan: PAN },
        Command::EndLight,
        Command::TimeIs(true),
        Command::TimeIs(false),
        Command::Note {
            job: LOCK,
            what: JobKind::LockUp,
            how: Grade::NotDone,
            why: String::new(),
            who: None,
            at: None,
        },
    ]);
    out
}
