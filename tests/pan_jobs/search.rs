//! Every path of one pan's jobs, and long seeded walks of the whole kitchen, with clocks that jump and pages that die.

use std::collections::HashSet;

use panward::domain::facts::Fact;
use panward::domain::facts::job::JobEvent;
use panward::domain::facts::run::Heat;
use panward::domain::ids::PanId;
use panward::domain::procedure::PanTables;
use panward::domain::time::{Millis, Now};

use crate::node::{Node, Order};
use crate::orders::{of_all, of_pan, of_waste};
use crate::world::later;

/// What a search found.
#[derive(Debug, Default)]
pub struct Found {
    pub states: usize,
    pub refused: usize,
    pub violations: Vec<String>,
    pub fills: usize,
    pub boiled: usize,
    pub put_by: usize,
    pub left: usize,
}

impl Found {
    fn count(&mut self, before: &Node, after: &Node) {
        for entry in &after.log[before.log.len()..] {
            match &entry.fact {
                Fact::Fill(_) => self.fills += 1,
                Fact::Job(fact) => {
                    self.boiled += usize::from(fact.heat == Some(Heat::Low) && fact.what.is_of_pan());
                    self.put_by += usize::from(fact.step == Some(panward::domain::procedure::StepId::Waste));
                    self.left += usize::from(fact.event == JobEvent::Ended && fact.what.is_of_pan());
                }
                _ => {}
            }
        }
    }
}

/// A millisecond before, at and after everything that is due, in step on both clocks.
fn times(node: &Node, pan: PanId) -> Vec<Now> {
    let minutes = [5, 10, 20];
    let Some(last) = node.log.last().filter(|_| node.pans.job(pan).is_some()) else {
        return Vec::new();
    };
    let due = minutes.map(|m| last.rec.plus(m * Millis::MINUTE));
    let around = due.into_iter().flat_map(|d| [d.plus(-1), d, d.plus(1)]);
    let ahead = around.map(|at| at.since(node.now.wall)).filter(|ms| *ms > 0);
    ahead.map(|ms| later(node.now, ms)).collect()
}

fn jumped(now: Now, ms: i64) -> Now {
    Now {
        wall: now.wall.plus(ms),
        ..now
    }
}

/// How far a breadth-first search goes.
#[derive(Clone, Copy)]
pub struct Reach {
    pub depth: usize,
    pub troubles: u8,
    pub waits: u8,
}

/// Every path of one pan's jobs from a state, to a depth. Stops at the first line crossed where `until` says so.
pub fn explore(from: Node, pan: PanId, reach: Reach, until: bool) -> Found {
    let mut found = Found::default();
    let mut seen = HashSet::new();
    let mut edge = vec![from];
    for _ in 0..reach.depth {
        let mut next = Vec::new();
        for node in &edge {
            for command in of_pan(node, pan).into_iter().chain(of_waste(node)) {
                match node.after(&Order::Pan(command)) {
                    None => found.refused += 1,
                    Some(Err(what)) => found.violations.push(what),
                    Some(Ok(after)) => {
                        if seen.insert(after.key()) {
                            found.count(node, &after);
                            next.push(after);
                        }
                    }
                }
            }
            if until && !found.violations.is_empty() {
                found.states = seen.len();
                return found;
            }
            let mut moved = Vec::new();
            if node.waits < reach.waits {
                moved.extend(times(node, pan).into_iter().map(|now| Node {
                    waits: node.waits + 1,
                    ..node.at(now)
                }));
            }
            if node.troubles < reach.troubles && node.pans.job(pan).is_some() {
                moved.push(node.killed());
                moved.extend([-3_600_000, 3_600_000].map(|ms| Node {
                    troubles: node.troubles + 1,
                    ..node.at(jumped(node.now, ms))
                }));
            }
            next.extend(moved.into_iter().filter(|node| seen.insert(node.key())));
        }
        edge = next;
    }
    found.states = seen.len();
    found
}

/// Every path through everything anybody could order of any pan and any job, from a state, to a depth; with the page
/// dying once on the way.
pub fn explore_all(from: Node, depth: usize) -> Found {
    let mut found = Found::default();
    let mut seen = HashSet::new();
    let mut edge = vec![from];
    for _ in 0..depth {
        let mut next = Vec::new();
        for node in &edge {
            for order in of_all(node) {
                match node.after(&order) {
                    None => found.refused += 1,
                    Some(Err(what)) => found.violations.push(format!("{what}{}", told(node))),
                    Some(Ok(after)) => {
                        if seen.insert(after.key()) {
                            found.count(node, &after);
                            next.push(after);
                        }
                    }
                }
            }
            let killed = (node.troubles == 0).then(|| node.killed());
            next.extend(killed.filter(|node| seen.insert(node.key())));
        }
        edge = next;
    }
    found.states = seen.len();
    found
}

/// The first state found, breadth first through what `orders` offers, that `is` so.
pub fn first_where(from: Node, orders: impl Fn(&Node) -> Vec<Order>, is: impl Fn(&Node) -> bool) -> Node {
    let mut seen = HashSet::new();
    let mut edge = vec![from];
    while !edge.is_empty() {
        let mut next = Vec::new();
        for node in &edge {
            for order in orders(node) {
                if let Some(Ok(after)) = node.after(&order) {
                    if is(&after) {
                        return after;
                    }
                    if seen.insert(after.key()) {
                        next.push(after);
                    }
                }
            }
        }
        edge = next;
    }
    panic!("no such state is to be found");
}

/// The multiplier and increment of Knuth's MMIX generator: the same walks on every machine.
pub struct Chance(pub u64);

impl Chance {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % n.max(1)
    }
}

/// What gives work up, or ends it: taken one time in eight, or no walk would get anywhere.
fn gives_up(order: &Order) -> bool {
    use panward::domain::{day_jobs::Command as Day, guide::Command as Guide, pan_jobs::Command as Pan};
    match order {
        Order::Pan(command) => matches!(command, Pan::End { .. } | Pan::HeatOff { .. } | Pan::Who { .. }),
        Order::Day(command) => matches!(command, Day::EndLight | Day::HeatOff { .. }),
        Order::Guide(command) => matches!(command, Guide::Stop | Guide::GiveUp | Guide::End | Guide::PutAway),
        Order::Said(_) => true,
    }
}

/// The first of some orders, drawn by chance, that is not refused.
fn one_of(node: &Node, orders: &[Order], chance: &mut Chance, found: &mut Found) -> Option<Result<Node, String>> {
    for _ in 0..60 {
        let order = &orders[chance.below(orders.len())];
        if gives_up(order) && chance.below(8) != 0 {
            continue;
        }
        match node.after(order) {
            None => found.refused += 1,
            taken => return taken,
        }
    }
    None
}

/// What was written last of the pans' own jobs, for who reads a failure.
fn told(node: &Node) -> String {
    let jobs = node.log.iter().rev().filter_map(|e| match &e.fact {
        Fact::Job(f) if f.pan.is_some() => Some(format!(
            "\n{} {:?} {:?} {:?} {:?} {:?} {:?}",
            e.rec.0, f.what, f.pan, f.event, f.step, f.contents, f.heat
        )),
        Fact::Run(f) => Some(format!(
            "\n{} run {:?} {:?} {:?} {:?}",
            e.rec.0, f.pan, f.event, f.place, f.contents
        )),
        Fact::Fill(f) => Some(format!("\n{} fill {:?}", e.rec.0, f.pan)),
        _ => None,
    });
    jobs.take(60).collect()
}

/// One long walk through everything anybody could order, orders that change something taken as they come.
pub fn walk(seed: u64, steps: usize, tables: PanTables, found: &mut Found, seen: &mut HashSet<u64>) {
    let mut chance = Chance(seed);
    let mut node = Node::new(tables);
    for _ in 0..steps {
        let after = match chance.below(24) {
            0 => Some(Ok(node.killed())),
            1 => Some(Ok(
                node.at(jumped(node.now, [-3_600_000, 2_001, 3_600_000][chance.below(3)]))
            )),
            2 => Some(Ok(
                node.at(later(node.now, [299_999, 300_001, 600_000, 1_200_000][chance.below(4)]))
            )),
            _ => one_of(&node, &of_all(&node), &mut chance, found),
        };
        match after {
            None => {}
            Some(Err(what)) => {
                found.violations.push(format!("walk {seed}: {what}{}", told(&node)));
                return;
            }
            Some(Ok(after)) => {
                if seen.insert(after.key()) {
                    found.count(&node, &after);
                }
                node = Node {
                    now: later(after.now, 1_000),
                    ..after
                };
            }
        }
    }
}
