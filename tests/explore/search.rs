//! Every path of a world, breadth first: what a person, a clock or a fault could do next, judged entry by entry.

use std::collections::{HashMap, VecDeque};
use std::hash::{DefaultHasher, Hash, Hasher};
use std::rc::Rc;

use panward::domain::entry::{Draft, Entry};
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Fault, Form, Place, RunEvent};
use panward::domain::guide::gate::{Gate, QuestionKind, may_be_lit};
use panward::domain::guide::{Command, Guide, Run, Scene, Warm};
use panward::domain::ids::PersonId;
use panward::domain::procedure::{Hold, StepId, Tables, Verdict};
use panward::domain::time::{Millis, Now, PageLife};
use panward::domain::wait::{Standing, Wait};

use crate::auditor::{Auditor, Heater, Trouble, between};
use crate::world::{JOB, MACHINE, OWNER, PAN, STARTER, World, YOUNG, run_id, stamp, start};

const MINUTE: i64 = 60_000;

/// Whether something goes wrong or out of turn: a stop, a fault, a broken hold, somebody else, a heater switched off;
/// clocks count as well. What sets things right never does. Each world says how many of these a path may hold.
fn is_trouble(command: &Command, node: &Node, world: &World) -> bool {
    match command {
        // With oil out, to stop is a way back.
        Command::Stop => !node.aud.oil_out(),
        Command::Fault(_) | Command::Broke(_) | Command::Heater(false) => true,
        Command::Who { person, supervisor } => (*person, *supervisor) != world.who,
        _ => false,
    }
}

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
    /// How much went wrong or out of turn so far.
    troubles: u32,
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
    /// The way to a state with oil out from which it can neither come back to its pan nor be left under a tag.
    pub stuck: Option<String>,
    /// The way to a state with oil out from which it cannot be pumped or poured back.
    pub no_way_back: Option<String>,
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
        troubles: 0,
        waited: false,
    };
    let mut found = Found {
        states: 1,
        moves: 0,
        violation: None,
        drew: false,
        finished: false,
        stuck: None,
        no_way_back: None,
    };
    let mut ids: HashMap<u64, u32> = HashMap::new();
    ids.insert(key(&first), 0);
    // Per state: oil out, oil in its pan, left under a tag.
    let mut kinds = vec![kind(&first)];
    let mut paths = vec![None];
    let mut edges = Vec::new();
    let mut queue = VecDeque::from([(0_u32, first)]);
    // What takes one trouble more waits until everything with fewer is done.
    let mut later = VecDeque::new();
    loop {
        if queue.is_empty() {
            std::mem::swap(&mut queue, &mut later);
        }
        let Some((from, node)) = queue.pop_front() else { break };
        let mut next = Vec::new();
        for (command, read) in commands(&node, world) {
            found.moves += 1;
            let trouble = is_trouble(&command, &node, world);
            if trouble && node.troubles == world.troubles {
                continue;
            }
            let taken = node.decide(&command);
            let mut to = match taken {
                Ok(None) => continue,
                Ok(Some(_)) | Err(_) => node.clone(),
            };
            match taken.and_then(|drafts| to.write(drafts.unwrap_or_default(), read.as_ref())) {
                Ok(()) => {
                    to.troubles += u32::from(trouble);
                    let by_word = matches!(command, Command::LeaveOut(_))
                        || matches!(&command, Command::Answer { step: StepId::LookAgain, evidence, .. }
                            if evidence.is(Item::Place, Word::InPan));
                    next.push((to, !by_word));
                }
                Err(line) => {
                    found.violation = Some(format!("{}: {line}\n{}", world.name, story(to.path.as_ref())));
                    return found;
                }
            }
        }
        if node.troubles < world.troubles {
            for mut to in node.clocks() {
                to.troubles += 1;
                next.push((to, true));
            }
        }
        for (to, by_work) in next {
            found.drew |= to.aud.drew;
            let id = *ids.entry(key(&to)).or_insert_with(|| {
                let id = u32::try_from(kinds.len()).unwrap();
                kinds.push(kind(&to));
                paths.push(to.path.clone());
                if to.troubles > node.troubles {
                    &mut later
                } else {
                    &mut queue
                }
                .push_back((id, to));
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
        let lost = safe.iter().zip(reached).position(|(safe, reached)| !safe && !reached);
        lost.and_then(|i| paths.get(i)).map(|path| story(path.as_ref()))
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
    /// Gives an order: what is to be written, nothing where it is refused, or the line that crosses.
    fn decide(&self, command: &Command) -> Result<Option<Vec<Draft>>, String> {
        match self.guide.decide(&self.scene, command, &self.now) {
            Ok(drafts) => Ok(Some(drafts)),
            // Whoever stops or reports a fault is heard.
            Err(refusal) if matches!(command, Command::Stop | Command::Fault(_)) => {
                Err(format!("{command:?} refused: {refusal:?}"))
            }
            Err(_) => Ok(None),
        }
    }

    /// Writes, has it judged, and believes it; or the line it crossed.
    fn write(&mut self, drafts: Vec<Draft>, read: Option<&Now>) -> Result<(), String> {
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
        self.lit()
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
        let Some(job) = self.guide.job().filter(|_| !self.over()) else {
            return Vec::new();
        };
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
            for jump in [-3_600_000, -3_000, 3_000, 3_600_000] {
                out.push(passed(jump, 0, 0));
            }
            // The phone sleeps: the page's clock stands still.
            out.push(passed(6 * MINUTE, 0, 6 * MINUTE));
        }
        if !self.waited {
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

    /// Whether this world's one pan is done with: only the machine is left to put away.
    fn over(&self) -> bool {
        let in_hand = self.guide.job().is_some_and(|j| j.run.is_some());
        self.runs > 0 && !in_hand && self.scene.pans[0].place == Place::InPan
    }

    /// A temperature that is right for the run in hand.
    fn world_target(&self) -> i32 {
        let run = self.guide.job().and_then(|j| j.run.as_ref());
        run.map_or(1_500, |r| i32::from(r.limits.target.dc()))
    }
}

/// The entries of a path, one a line.
fn story(path: Option<&Rc<Path>>) -> String {
    let mut lines = Vec::new();
    let mut at = path;
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
        at = path.before.as_ref();
    }
    lines.reverse();
    lines.join("\n")
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

/// What two states must share to count as one: everything that can still matter, and of times only the side of
/// their deadline they are on. Once the oil is out for good, what only mattered to the draw no longer does.
fn key(node: &Node) -> u64 {
    let mut h = DefaultHasher::new();
    let now = &node.now;
    let aud = &node.aud;
    (node.waited, node.runs.min(2), node.scene.pans[0].place).hash(&mut h);
    let last = between(&aud.last, now);
    (bucket(last, 5 * MINUTE), bucket(last, 20 * MINUTE)).hash(&mut h);
    (
        aud.who,
        aud.beside,
        aud.run_open,
        aud.trouble,
        aud.faulty,
        aud.level,
        aud.place,
        aud.pump,
    )
        .hash(&mut h);
    let Some(job) = node.guide.job() else {
        return h.finish();
    };
    if node.over() {
        // Nothing of the pan matters any more, only how far the putting away is.
        let mut h = DefaultHasher::new();
        (aud.place, aud.run_open, job.done.is_empty(), job.away).hash(&mut h);
        return h.finish();
    }
    let run = job.run.as_ref();
    (job.who, job.supervisor, job.machine, job.done.len().min(2), job.away).hash(&mut h);
    (run.is_none() && job.sound_checked).hash(&mut h);
    let may_still_draw = run.is_none_or(|run| {
        let steps = node.guide.run_steps(run);
        let over = steps
            .iter()
            .position(|s| matches!(s.id, StepId::Remainder | StepId::EmptyByHand));
        over.is_none_or(|over| run.at <= over)
    });
    for hold in [Hold::Person, Hold::Kit, Hold::Match, Hold::Floor, Hold::Dry, Hold::Room] {
        if may_still_draw || matches!(hold, Hold::Person | Hold::Kit | Hold::Match) {
            (aud.standing.contains(&hold), job.stands(hold, now)).hash(&mut h);
        }
    }
    if may_still_draw {
        draw_key(node, &mut h);
    }
    if let Some(run) = run {
        (run.at, run.phase, run.place, run.contents, run.pump, run.heat, run.form).hash(&mut h);
        (
            run.drawn,
            run.fault,
            run.came_out,
            run.level,
            run.silent(&job.touched, now),
        )
            .hash(&mut h);
    }
    h.finish()
}

/// What only matters while a draw may still come.
fn draw_key(node: &Node, h: &mut DefaultHasher) {
    let now = &node.now;
    let aud = &node.aud;
    (aud.strange, aud.heat_off, aud.quiet, aud.label).hash(h);
    let reading = aud.reading.map(|(dc, read, real)| {
        let apart = (now.wall.0 - read.wall.0) - (now.mono - read.mono);
        let age = bucket(between(&read, now).max(node.real - real), 5 * MINUTE);
        (dc < 390, dc > 1_800, age, apart.signum(), apart.abs() > 2_000)
    });
    reading.hash(h);
    match aud.heater {
        Heater::Cold => 0.hash(h),
        Heater::On { credit_ms, real, .. } => (1, bucket(credit_ms + node.real - real, 10 * MINUTE)).hash(h),
        Heater::Off { since, real } => (2, bucket(between(&since, now).max(node.real - real), 20 * MINUTE)).hash(h),
    }
    let Some(job) = node.guide.job() else { return };
    (job.held, job.strange, job.is_idle(now)).hash(h);
    match job.warm {
        Warm::Cold => 0.hash(h),
        Warm::On(wait) => (1, stands(&wait, now), bucket(-wait.due().since(now.wall), 20 * MINUTE)).hash(h),
        Warm::Off(wait) => (2, stands(&wait, now)).hash(h),
    }
    job.run.as_ref().and_then(|r| r.reading).map(|r| r.counts(now)).hash(h);
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
        if (person, supervisor) == world.who || job.who.is_none() || job.run.as_ref().is_some_and(|r| r.at % 4 == 2) {
            out.push(Command::Who { person, supervisor });
        }
    }
    for used_since in [Word::No, Word::NotKnown, Word::Dry] {
        // Whether it is strange only matters to a claim.
        let told_apart = used_since != Word::NotKnown || !world.scene.pans[0].claims.is_empty();
        let asked = job.machine.is_none() || !job.proved.contains(&Hold::Match);
        if (asked && told_apart) || used_since == Word::Dry {
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
                        let mut evidence = answers(&gate).swap_remove(0);
                        evidence.put(Item::OilTemp, Seen::Number(1_500));
                        Command::Answer {
                            step,
                            evidence,
                            read: Some(now),
                        }
                    }
                }
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
