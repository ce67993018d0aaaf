//! A state of the whole small kitchen: three machines, the ledger they share, the judge, both clocks.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash, Hasher};
use std::rc::Rc;

use panward::domain::day_jobs::{self, DayJobs};
use panward::domain::entry::{Draft, Entry};
use panward::domain::facts::Fact;
use panward::domain::guide::{self, Guide, Scene};
use panward::domain::ledger::Ledger;
use panward::domain::pan_jobs::{self, PanJobs};
use panward::domain::procedure::{DayTables, PanTables, Tables};
use panward::domain::quick::{self, Said};
use panward::domain::time::Now;

use crate::auditor::{Auditor, must};
use crate::world::{filled, reloaded, scene_of, start, written};

/// An order to any of the machines, or a word in the log.
#[derive(Clone, Debug)]
pub enum Order {
    Pan(pan_jobs::Command),
    Day(day_jobs::Command),
    Guide(guide::Command),
    Said(Box<Said>),
}

#[derive(Clone)]
pub struct Node {
    pub pans: PanJobs,
    pub day: DayJobs,
    pub guide: Guide,
    pub ledger: Rc<Ledger>,
    pub scene: Rc<Scene>,
    pub auditor: Auditor,
    pub log: Rc<Vec<Entry>>,
    pub now: Now,
    /// Reloads and jumps of a clock so far, and times that passed.
    pub troubles: u8,
    pub waits: u8,
    /// Jobs opened so far, for their ids.
    pub opened: usize,
}

impl Node {
    pub fn new(tables: PanTables) -> Self {
        let log = filled();
        let ledger = Ledger::replay(&log);
        let scene = scene_of(&ledger);
        Self {
            pans: PanJobs::new(tables),
            day: DayJobs::new(DayTables::REAL),
            guide: Guide::new(Tables::REAL),
            auditor: Auditor::of(&scene),
            ledger: Rc::new(ledger),
            scene,
            log: Rc::new(log),
            now: start(),
            troubles: 0,
            waits: 0,
            opened: 0,
        }
    }

    /// What tells one state from another.
    pub fn key(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        (self.pans.state(), self.day.state(), self.guide.job(), &self.auditor).hash(&mut hasher);
        for pan in &self.scene.pans {
            (pan.place, pan.contents, pan.pan.fat).hash(&mut hasher);
        }
        (self.now, self.troubles, self.waits).hash(&mut hasher);
        hasher.finish()
    }

    /// The drafts of an order; `None` where it is refused.
    fn decide(&self, order: &Order) -> Option<Vec<Draft>> {
        match order {
            Order::Pan(command) => self.pans.decide(&self.scene, command, &self.now).ok(),
            Order::Day(command) => self.day.decide(&self.scene, command, &self.now).ok(),
            Order::Guide(command) => self.guide.decide(&self.scene, command, &self.now).ok(),
            Order::Said(said) => quick::drafts(&self.ledger, (**said).clone(), self.now).ok(),
        }
    }

    /// The state after an order: `None` where it is refused, or what the judge says of it.
    pub fn after(&self, order: &Order) -> Option<Result<Self, String>> {
        let drafts = self.decide(order)?;
        let mut after = self.clone();
        for draft in drafts {
            if let Err(what) = after.take(draft, matches!(order, Order::Said(_))) {
                return Some(Err(format!("{what}: {order:?}")));
            }
        }
        Some(
            after
                .stands()
                .map(|()| after)
                .map_err(|what| format!("{what}: {order:?}")),
        )
    }

    fn take(&mut self, draft: Draft, said: bool) -> Result<(), String> {
        let seq = u32::try_from(self.log.len()).unwrap() + 1;
        let entry = written(draft, seq, &self.now, self.log.last());
        self.opened += usize::from(
            matches!(&entry.fact, Fact::Job(f) if f.event == panward::domain::facts::job::JobEvent::Opened),
        );
        // What is said in the log, the judge takes as said.
        let judged = self.auditor.read(&entry, &self.scene, &self.now);
        if !said || !matches!(entry.fact, Fact::OilChange(_)) {
            judged?;
        }
        Rc::make_mut(&mut self.ledger).push(entry.clone());
        self.scene = scene_of(&self.ledger);
        self.pans.apply(&entry, Some(&self.now));
        self.day.apply(&entry, Some(&self.now));
        self.guide.apply(&entry, &self.scene, Some(&self.now));
        Rc::make_mut(&mut self.log).push(entry);
        Ok(())
    }

    /// What must hold whatever was ordered: a bare pan says so on every screen, and no machine lights or filters it.
    fn stands(&self) -> Result<(), String> {
        let empties = self.ledger.empties();
        for pan in &self.scene.pans {
            let id = pan.pan.pan;
            if !self.auditor.is_bare(id) {
                continue;
            }
            must(empties.contains(&id), "a bare pan and no standing PAN EMPTY")?;
            let open = self.day.state().light.is_some();
            let gate = self.day.light_gate(&self.scene, id, &self.now);
            let half = self.day.state().light.as_ref().and_then(|l| l.pans.get(&id));
            let safe = half.is_some_and(day_jobs::LightPan::is_half_lit);
            must(
                !open || safe || !matches!(gate, Ok(Some(_))),
                "the light-up asks on over a bare pan",
            )?;
        }
        Ok(())
    }

    /// A kill: every machine reads its log anew.
    pub fn killed(&self) -> Self {
        let mut node = Self {
            pans: PanJobs::new(*self.pans.tables()),
            day: DayJobs::new(DayTables::REAL),
            guide: Guide::new(Tables::REAL),
            now: reloaded(self.now),
            troubles: self.troubles + 1,
            ..self.clone()
        };
        for entry in self.log.iter() {
            node.pans.apply(entry, None);
            node.day.apply(entry, None);
            node.guide.apply(entry, &self.scene, None);
        }
        node
    }

    /// The clocks moved on, or apart.
    pub fn at(&self, now: Now) -> Self {
        Self { now, ..self.clone() }
    }
}
