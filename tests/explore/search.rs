//! Every path of a world, breadth first: what a person, a clock or a fault could do next, judged entry by entry.

use std::collections::{HashMap, VecDeque};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::rc::Rc;

use panward::domain::entry::Entry;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Fault, Form, Place, RunEvent};
use panward::domain::guide::gate::{Gate, QuestionKind, may_be_lit};
use panward::domain::guide::{Command, Guide, Scene, Warm};
use panward::domain::ids::PersonId;
use panward::domain::procedure::{Hold, StepId, Tables, Verdict};
use panward::domain::time::{Millis, Now, PageLife};
use panward::domain::wait::{Standing, Wait};

use crate::auditor::{Auditor, Heater, Trouble, between};
use crate::world::{JOB, MACHINE, OWNER, PAN, STARTER, World, YOUNG, run_id, stamp, start};

const MINUTE: i64 = 60_000;

/// Entries so far, newest first, shared between paths.
struct Path {
    entry: Entry,
    before: Option<Rc<Path>>,
}

#[derive(Clone)]
struct Node {
    guide: Guide,
    aud: Auditor,
    scene: Rc<Scene>,
    now: Now,
    real: i64,
    path: Option<Rc<Path>>,
    seq: u32,
    runs: u32,
    /// Nothing but time since the last command: no more time on top.
    waited: bool,
}

/// What was found.
pub struct Found {
    pub states: usize,
    pub moves: usize,
    /// What went wrong, and the way there.
    pub violation: Option<String>,
    /// Whether oil ever left the pan, came back, and was left out under a tag.
    pub drew: bool,
    pub finished: bool,
    /// States with oil out from which it can neither come back to its pan nor be left under a tag.
    pub stuck: usize,
    /// States with oil out from which it cannot be pumped or poured back.
    pub no_way_back: usize,
}

struct Edge {
    from: u32,
    to: u32,
    /// Neither a tag nor somebody's word that the oil is back.
    by_work: bool,
}

/// Explores a world until nothing new is found or a line is crossed.
pub fn explore(world: &World, tables: Tables) -> Found {
    let now = start();
    let first = Node {
        guide: Guide::new(tables),
        aud: Auditor::new(&now),
        scene: Rc::new(world.scene.clone()),
        now,
        real: 0,
        path: None,
        seq: 0,
        runs: 0,
        waited: false,
    };
    let mut found = Found {
        states: 1,
        moves: 0,
        violation: None,
        drew: false,
        finished: false,
        stuck: 0,
        no_way_back: 0,
    };
    let mut ids: HashMap<u64, u32> = HashMap::new();
    ids.insert(key(&first), 0);
    // Per state: oil out, oil in its pan, left under a tag.
    let mut kinds = vec![kind(&first)];
    let mut edges = Vec::new();
    let mut queue = VecDeque::from([(0_u32, first)]);
    while let Some((from, node)) = queue.pop_front() {
        let mut next = Vec::new();
        for (command, read) in commands(&node, world) {
            found.moves += 1;
            let mut to = node.clone();
            match to.order(&command, read.as_ref()) {
                Ok(false) => {}
                Ok(true) => {
                    let by_word = matches!(command, Command::LeaveOut(_))
                        || matches!(&command, Command::Answer { step: StepId::LookAgain, evidence, .. }
                            if evidence.is(Item::Place, Word::InPan));
                    next.push((to, !by_word));
                }
                Err(line) => {
                    found.violation = Some(format!("{}: {line}\n{}", world.name, to.story()));
                    return found;
                }
            }
        }
        for to in node.clocks() {
            next.push((to, true));
        }
        for (to, by_work) in next {
            found.drew |= to.aud.oil_out();
            let id = *ids.entry(key(&to)).or_insert_with(|| {
                let id = u32::try_from(kinds.len()).unwrap();
                kinds.push(kind(&to));
                queue.push_back((id, to));
                id
            });
            edges.push(Edge { from, to: id, by_work });
        }
    }
    found.states = kinds.len();
    found.finished = kinds.iter().any(|k| k.finished);
    let safe: Vec<bool> = kinds.iter().map(|k| !k.out || k.tagged).collect();
    let stuck = |by_work: bool| {
        let reached = reaches(&safe, &edges, by_work);
        kinds
            .iter()
            .zip(reached)
            .filter(|(k, r)| k.out && !k.tagged && !r)
            .count()
    };
    found.stuck = stuck(false);
    found.no_way_back = stuck(true);
    found
}

struct Kind {
    out: bool,
    tagged: bool,
    finished: bool,
}

fn kind(node: &Node) -> Kind {
    Kind {
        out: node.aud.oil_out(),
        tagged: node.aud.oil_out() && !node.aud.run_open,
        finished: !node.aud.oil_out() && node.guide.job().is_some_and(|j| !j.done.is_empty()),
    }
}

/// From which states a goal can be reached.
fn reaches(goal: &[bool], edges: &[Edge], only_work: bool) -> Vec<bool> {
    let mut back: Vec<Vec<u32>> = vec![Vec::new(); goal.len()];
    for edge in edges.iter().filter(|e| e.by_work || !only_work) {
        back[edge.to as usize].push(edge.from);
    }
    let mut reached = goal.to_vec();
    let mut queue: Vec<u32> = (0..).zip(goal).filter(|(_, g)| **g).map(|(i, _)| i).collect();
    while let Some(at) = queue.pop() {
        for from in &back[at as usize] {
            if !reached[*from as usize] {
                reached[*from as usize] = true;
                queue.push(*from);
            }
        }
    }
    reached
}

impl Node {
    /// Gives an order. Whether it was taken; or the line it crossed.
    fn order(&mut self, command: &Command, read: Option<&Now>) -> Result<bool, String> {
        let drafts = match self.guide.decide(&self.scene, command, &self.now) {
            Ok(drafts) => drafts,
            Err(refusal) => {
                // Whoever stops or reports a fault is heard.
                let deaf = self.guide.job().is_some_and(|j| j.run.is_some())
                    && matches!(command, Command::Stop | Command::Fault(_));
                return if deaf {
                    Err(format!("{command:?} refused: {refusal:?}"))
                } else {
                    Ok(false)
                };
            }
        };
        for draft in drafts {
            self.seq += 1;
            let entry = stamp(draft, self.seq, &self.now);
            self.path = Some(Rc::new(Path {
                entry: entry.clone(),
                before: self.path.clone(),
            }));
            self.aud.observe(&entry, &self.now, self.real, read, &self.scene)?;
            self.guide.apply(&entry, &self.scene, Some(&self.now));
            if let Fact::Run(fact) = &entry.fact {
                self.runs += u32::from(fact.event == RunEvent::Began);
                if fact.event == RunEvent::Ended {
                    let mut scene = (*self.scene).clone();
                    (scene.pans[0].place, scene.pans[0].contents) = (fact.place, fact.contents);
                    self.scene = Rc::new(scene);
                }
            }
        }
        self.waited = false;
        self.lit()?;
        Ok(true)
    }

    /// The first line never to be reached, as the screens ask it.
    fn lit(&self) -> Result<(), String> {
        let run = self.guide.job().and_then(|j| j.run.as_ref());
        let says_so = run.is_some_and(may_be_lit);
        let is_so = !self.aud.oil_out() && self.aud.level == Some(Word::Enough) && self.aud.trouble == Trouble::None;
        if says_so && !is_so {
            Err("the guide says heat may go on".into())
        } else {
            Ok(())
        }
    }

    /// What clocks can do: run to just before, at and just after each deadline, jump, sleep, and die with the page.
    fn clocks(&self) -> Vec<Self> {
        let Some(job) = self.guide.job() else { return Vec::new() };
        let mut out = Vec::new();
        let passed = |wall: i64, mono: i64, real: i64| {
            let mut to = self.clone();
            to.now.wall = Millis(to.now.wall.0 + wall);
            to.now.mono += mono;
            to.real += real;
            to.waited = true;
            to
        };
        if !self.waited {
            let mut due = vec![20 * MINUTE - between(&self.aud.last, &self.now)];
            if self.aud.oil_out() {
                due.push(5 * MINUTE - between(&self.aud.last, &self.now));
            }
            if let Some((_, read, _)) = self.aud.reading.filter(|_| !self.aud.oil_out()) {
                due.push(5 * MINUTE - between(&read, &self.now));
            }
            match job.warm {
                Warm::On(wait) => {
                    if let Standing::Running { left_ms } = wait.standing(&self.now) {
                        due.push(left_ms);
                    }
                    due.push(wait.due().since(self.now.wall) + 20 * MINUTE);
                }
                Warm::Off(wait) => due.push(wait.due().since(self.now.wall)),
                Warm::Cold => {}
            }
            due.sort_unstable();
            due.dedup();
            for ms in due.iter().flat_map(|d| [d - 1, *d, d + 1]).filter(|d| *d > 0) {
                out.push(passed(ms, ms, ms));
            }
            for jump in [-3_600_000, -3_000, -1_500, 1_500, 3_000, 3_600_000] {
                out.push(passed(jump, 0, 0));
            }
            // The phone sleeps: the page's clock stands still.
            out.push(passed(6 * MINUTE, 0, 6 * MINUTE));
        }
        if self.now.life == PageLife(1) {
            out.push(self.reload());
        }
        out
    }

    /// The page dies and comes back two seconds later: everything is read back from the log.
    fn reload(&self) -> Self {
        let mut entries = Vec::new();
        let mut at = &self.path;
        while let Some(path) = at {
            entries.push(&path.entry);
            at = &path.before;
        }
        let mut to = self.clone();
        to.guide = Guide::new(*self.guide.tables());
        for entry in entries.into_iter().rev() {
            to.guide.apply(entry, &self.scene, None);
        }
        to.now = Now {
            wall: Millis(self.now.wall.0 + 2_000),
            mono: 5_000_000,
            life: PageLife(self.now.life.0 + 1),
            off_min: 0,
        };
        to.real += 2_000;
        to.aud.reloaded(to.now.life);
        to.waited = false;
        to
    }

    fn story(&self) -> String {
        let mut lines = Vec::new();
        let mut at = &self.path;
        while let Some(path) = at {
            let line = match &path.entry.fact {
                Fact::Run(f) => format!(
                    "{:?} at {} {:?} {} {} {} {:?}",
                    f.event,
                    f.step.key(),
                    f.fault,
                    f.place.key(),
                    f.pump.key(),
                    f.heat.key(),
                    f.evidence
                        .iter()
                        .map(|(i, s)| format!("{} {s:?}", i.key()))
                        .collect::<Vec<_>>()
                ),
                Fact::Job(f) => format!("job {:?} {:?} {:?}", f.event, f.hold, f.step),
                other => format!("{other:?}"),
            };
            lines.push(format!("  {} {line}", path.entry.rec.0 - start().wall.0));
            at = &path.before;
        }
        lines.reverse();
        lines.join("\n")
    }
}

/// How far an age is from a deadline.
fn bucket(age: i64, due: i64) -> u8 {
    match age - due {
        _ if age < 0 => 0,
        ..-1 => 1,
        -1 => 2,
        0 => 3,
        1 => 4,
        _ => 5,
    }
}

fn stands(wait: &Wait, now: &Now) -> (u8, bool) {
    let bucket = match wait.standing(now) {
        Standing::Running { left_ms: 1 } => 1,
        Standing::Running { .. } => 0,
        Standing::Over { since_ms: 0 } => 2,
        Standing::Over { .. } => 3,
        Standing::AskTime => 4,
    };
    (bucket, wait.is_within(now))
}

/// What two states must share to count as one: everything but how long ago things were, which only counts by the
/// side of its deadline it is on.
fn key(node: &Node) -> u64 {
    let mut h = DefaultHasher::new();
    let now = &node.now;
    let aud = &node.aud;
    (node.waited, node.runs.min(2), node.scene.pans[0].place, now.life).hash(&mut h);
    let last = between(&aud.last, now);
    (bucket(last, 5 * MINUTE), bucket(last, 20 * MINUTE)).hash(&mut h);
    (
        &aud.standing,
        aud.who,
        aud.beside,
        aud.strange,
        aud.run_open,
        aud.trouble,
        aud.faulty,
    )
        .hash(&mut h);
    (
        aud.heat_off,
        aud.quiet,
        aud.label,
        aud.reason,
        aud.level,
        aud.place,
        aud.pump,
    )
        .hash(&mut h);
    let reading = aud.reading.map(|(dc, read, real)| {
        let apart = (now.wall.0 - read.wall.0) - (now.mono - read.mono);
        (
            dc,
            bucket(between(&read, now).max(node.real - real), 5 * MINUTE),
            apart.signum(),
            apart.abs() > 2_000,
        )
    });
    reading.hash(&mut h);
    match aud.heater {
        Heater::Cold => 0.hash(&mut h),
        Heater::On { credit_ms, real, .. } => (1, bucket(credit_ms + node.real - real, 10 * MINUTE)).hash(&mut h),
        Heater::Off { since, real } => {
            (2, bucket(between(&since, now).max(node.real - real), 20 * MINUTE)).hash(&mut h);
        }
    }
    if let Some(job) = node.guide.job() {
        (
            job.who,
            job.supervisor,
            job.machine,
            &job.proved,
            job.sound_checked,
            job.fault,
        )
            .hash(&mut h);
        (job.done.len().min(2), job.held, job.strange, job.away, job.is_idle(now)).hash(&mut h);
        match job.warm {
            Warm::Cold => 0.hash(&mut h),
            Warm::On(wait) => (1, stands(&wait, now), bucket(-wait.due().since(now.wall), 20 * MINUTE)).hash(&mut h),
            Warm::Off(wait) => (2, stands(&wait, now)).hash(&mut h),
        }
        if let Some(run) = &job.run {
            (run.at, run.phase, run.place, run.contents, run.pump, run.heat, run.form).hash(&mut h);
            (
                run.drawn,
                run.returned,
                run.fault,
                run.troubled,
                run.came_out,
                run.level,
            )
                .hash(&mut h);
            (
                run.silent(&job.touched, now),
                run.reading.map(|r| (r.temp, r.counts(now))),
            )
                .hash(&mut h);
        }
    } else {
        0.hash(&mut h);
    }
    h.finish()
}

/// Everything somebody could order now.
fn commands(node: &Node, world: &World) -> Vec<(Command, Option<Now>)> {
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
        if (person, supervisor) == world.who || job.who.is_none() || job.run.is_some() {
            out.push(Command::Who { person, supervisor });
        }
    }
    for used_since in [Word::No, Word::NotKnown, Word::Dry] {
        if job.machine.is_none() || !job.proved.contains(&Hold::Match) || used_since == Word::Dry {
            out.push(Command::Machine {
                machine: MACHINE,
                used_since,
            });
        }
    }
    if world.scene.pans[0].pan.fat.is_solid() && job.done.is_empty() {
        out.extend([
            Command::Heater(true),
            Command::Heater(false),
            Command::TimeIs(true),
            Command::TimeIs(false),
        ]);
    }
    if let Some(run) = &job.run {
        out.extend([Command::Stop, Command::MadeSafe, Command::GiveUp]);
        if run.phase != panward::domain::guide::state::Phase::Stopped {
            for fault in [Fault::Spill, Fault::WillNotStart] {
                out.push(Command::Fault(fault));
            }
        }
        for hold in [Hold::Person, Hold::Kit, Hold::Floor, Hold::Dry, Hold::Room, Hold::Match] {
            if job.proved.contains(&hold) && run.form == Form::Long {
                out.push(Command::Broke(hold));
            }
        }
    } else if node.runs == 0 || node.scene.pans[0].place != Place::InPan && node.runs < 3 {
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
        all.extend(answers(&gate).into_iter().map(|e| (Command::LeaveOut(e), None)));
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
        for evidence in answers(&gate) {
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
            for dc in temperatures(node) {
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
fn answers(gate: &Gate) -> Vec<Evidence> {
    let looks = gate.looks();
    let open = |v: Verdict| v != Verdict::NotYet;
    let mut good = vec![Evidence::new()];
    for (_, item, offered) in &looks {
        let words: Vec<Word> = offered.iter().filter(|a| open(a.verdict)).map(|a| a.word).collect();
        // All answers of a gate together while they are few; beyond that only those that steer.
        let steers = matches!(
            item,
            Item::Tank | Item::Level | Item::Left | Item::Place | Item::Remainder | Item::OffTarget
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
