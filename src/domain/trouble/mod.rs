//! Days that go wrong: which trouble stands, what it stops, and what must be seen before it is over.
//!
//! Nothing here ever stops oil that is out of its pan on its way back.

mod table;

pub use table::{Look, Of, Row, row};

use super::evidence::{Evidence, Seen, Word};
use super::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use super::guide::{Refusal, Scene};
use super::ids::{MachineId, PanId};
use super::procedure::Verdict;
use super::time::Millis;

/// A trouble nobody has said is over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Standing {
    /// Which.
    pub what: TroubleKind,
    /// The pan, where one is meant.
    pub pan: Option<PanId>,
    /// The machine, where one is meant.
    pub machine: Option<MachineId>,
    /// Since when.
    pub since: Millis,
    /// Whether what makes it safe was looked at.
    pub looked: bool,
}

impl Standing {
    /// Whether a fact speaks of this one.
    #[must_use]
    pub fn is_of(&self, fact: &TroubleFact) -> bool {
        (self.what, self.pan, self.machine) == (fact.what, fact.pan, fact.machine)
    }

    /// Whether it stops oil from leaving a pan by a machine.
    #[must_use]
    pub fn stops_draw(&self, pan: PanId, machine: MachineId) -> bool {
        row(self.what).draw && concerns(self.pan, self.machine, Some(pan), Some(machine))
    }

    /// Whether it stops heat under a pan.
    #[must_use]
    pub fn stops_heat(&self, pan: PanId) -> bool {
        row(self.what).heat && concerns(self.pan, self.machine, Some(pan), None)
    }
}

/// Whether something said of a pan or a machine, or of the whole kitchen, concerns these.
pub(crate) fn concerns(
    pan: Option<PanId>,
    machine: Option<MachineId>,
    at_pan: Option<PanId>,
    by_machine: Option<MachineId>,
) -> bool {
    (pan.is_none() || pan == at_pan) && (machine.is_none() || machine == by_machine)
}

/// Whether something may be said of a trouble.
///
/// # Errors
/// It stands already or does not; something was not seen, or is not as it must be; nobody was named.
pub fn check(scene: &Scene, fact: &TroubleFact) -> Result<(), Refusal> {
    let row = row(fact.what);
    let (pan, machine) = (
        fact.pan.is_some_and(|id| scene.pan(id).is_some()),
        fact.machine.is_some_and(|id| scene.machine(id).is_some()),
    );
    let stands = scene.troubles.iter().any(|standing| standing.is_of(fact));
    match (fact.event, row.of) {
        // What stands is seen to its end, even where the pan it spoke of went out of use.
        _ if stands && fact.event != TroubleEvent::Began => {}
        (_, Of::Pan) if !pan => return Err(Refusal::NoSuchPan),
        (_, Of::Machine) if !machine => return Err(Refusal::NoSuchMachine),
        (_, Of::Kitchen) if fact.pan.is_some() => return Err(Refusal::NoSuchPan),
        (_, Of::Kitchen | Of::Pan) if fact.machine.is_some() => return Err(Refusal::NoSuchMachine),
        (_, Of::Machine) if fact.pan.is_some() => return Err(Refusal::NoSuchPan),
        _ => {}
    }
    match fact.event {
        TroubleEvent::Began if stands => Err(Refusal::TroubleStands { what: fact.what }),
        TroubleEvent::Began => seen(&[], &fact.evidence),
        TroubleEvent::Looked | TroubleEvent::Over if !stands => Err(Refusal::NoTrouble),
        TroubleEvent::Looked => seen(row.safe, &fact.evidence),
        TroubleEvent::Over => {
            seen(row.over, &fact.evidence)?;
            let named = fact.text.as_deref().is_some_and(|name| !name.trim().is_empty());
            if row.mended_by && !named {
                return Err(Refusal::NameNeeded);
            }
            Ok(())
        }
    }
}

/// Every look answered as it must be, and nothing else said.
fn seen(looks: &[Look], evidence: &Evidence) -> Result<(), Refusal> {
    for look in looks {
        let word = evidence
            .word(look.item)
            .ok_or(Refusal::Unanswered { item: look.item })?;
        if !is_good(look, word) {
            return Err(Refusal::NotSo {
                item: look.item,
                word: Some(word),
            });
        }
    }
    let odd = evidence.iter().find(|(item, _)| !looks.iter().any(|l| l.item == *item));
    odd.map_or(Ok(()), |(item, seen)| {
        Err(Refusal::NotSo {
            item: *item,
            word: match seen {
                Seen::Is(word) => Some(*word),
                Seen::Number(_) | Seen::Words(_) => None,
            },
        })
    })
}

/// Whether an answer is as it must be.
#[must_use]
pub fn is_good(look: &Look, word: Word) -> bool {
    look.answers
        .iter()
        .any(|a| a.word == word && a.verdict == Verdict::Good)
}
