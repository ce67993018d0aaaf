//! A state on a path: what the guide and the auditor believe, both clocks, and what time alone may do to it.

use std::rc::Rc;

use panward::domain::entry::{Draft, Entry};
use panward::domain::evidence::Word;
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Place, RunEvent};
use panward::domain::guide::gate::may_be_lit;
use panward::domain::guide::{Command, Guide, Scene, Warm};
use panward::domain::procedure::Tables;
use panward::domain::time::{Millis, Now, PageLife};
use panward::domain::wait::Standing;

use crate::auditor::{Auditor, MINUTE, Trouble, between};
use crate::world::{World, stamp, start};

/// Entries so far, newest first, shared between paths.
pub struct Path {
    entry: Entry,
    before: Option<Rc<Path>>,
}

#[derive(Clone)]
pub struct Node {
    pub guide: Guide,
    pub aud: Auditor,
    pub scene: Rc<Scene>,
    pub now: Now,
    pub real: i64,
    pub path: Option<Rc<Path>>,
    pub seq: u32,
    pub runs: u32,
    /// How much went wrong or out of turn so far.
    pub troubles: u32,
    /// Nothing but time since the last command: no more time on top.
    pub waited: bool,
}

impl Node {
    /// Where every path of a world begins.
    pub fn first(world: &World, tables: Tables) -> Self {
        let now = start();
        Self {
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
        }
    }

    /// Gives an order: what is to be written, nothing where it is refused, or the line that crosses.
    pub fn decide(&self, command: &Command) -> Result<Option<Vec<Draft>>, String> {
        match self.guide.decide(&self.scene, command, &self.now) {
            Ok(drafts) => Ok(Some(drafts)),
            // Whoever stops or reports a fault is heard.
            Err(refusal) if matches!(command, Command::Stop | Command::Fault(_)) => {
                Err(format!("{command:?} refused: {refusal:?}"))
            }
            Err(_) => Ok(None),
        }
    }

    /// Everything written so far, in order.
    pub fn entries(&self) -> Vec<Entry> {
        let mut all: Vec<Entry> = std::iter::successors(self.path.as_ref(), |path| path.before.as_ref())
            .map(|path| path.entry.clone())
            .collect();
        all.reverse();
        all
    }

    /// Writes, has it judged, and believes it; or the line it crossed.
    pub fn write(&mut self, drafts: Vec<Draft>, read: Option<&Now>) -> Result<(), String> {
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
                    scene.pans[0].went = (fact.place != Place::InPan).then_some(fact.route);
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
    pub fn clocks(&self) -> Vec<Self> {
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

    /// The wait for a machine that warms while oil stands out of its pan: what sets things right is no trouble.
    pub fn waits_for_the_machine(&self) -> Option<Self> {
        let job = self
            .guide
            .job()
            .filter(|job| job.run.as_ref().is_some_and(|run| run.came_out))?;
        let (Warm::On(wait), true) = (job.warm, self.aud.oil_out()) else {
            return None;
        };
        let Standing::Running { left_ms } = wait.standing(&self.now) else {
            return None;
        };
        let mut to = self.clone();
        to.now.wall = Millis(to.now.wall.0 + left_ms);
        to.now.mono += left_ms;
        to.real += left_ms;
        to.waited = true;
        Some(to)
    }

    /// The page dies and comes back two seconds later: everything is read back from the log.
    pub fn reload(&self) -> Self {
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
    pub fn over(&self) -> bool {
        let in_hand = self.guide.job().is_some_and(|j| j.run.is_some());
        self.runs > 0 && !in_hand && self.scene.pans[0].place == Place::InPan
    }

    /// A temperature that is right for the run in hand.
    pub fn world_target(&self) -> i32 {
        let run = self.guide.job().and_then(|j| j.run.as_ref());
        run.map_or(1_500, |r| i32::from(r.limits.target.dc()))
    }
}

/// The entries of a path, one a line.
pub fn story(path: Option<&Rc<Path>>) -> String {
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
