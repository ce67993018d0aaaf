//! Every path of a world, breadth first: what a person, a clock or a fault could do next, judged entry by entry.

use std::collections::{HashMap, VecDeque};

use panward::domain::evidence::{Item, Word};
use panward::domain::guide::Command;
use panward::domain::procedure::{StepId, Tables};

use crate::key::key;
use crate::node::{Node, story};
use crate::orders::{commands, is_trouble};
use crate::world::World;

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
    let first = Node::first(world, tables);
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
        next.extend(node.waits_for_the_machine().map(|to| (to, true)));
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
