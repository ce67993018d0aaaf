//! Days that go wrong, as a screen shows them: what each can be said of, and what stands.

use super::Kitchen;
use crate::domain::facts::setup::OutBy;
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::ids::{MachineId, PanId};
use crate::domain::ledger::Ledger;
use crate::domain::sorted::in_order;
use crate::domain::trouble::{Of, Standing, row};
use crate::store::Journal;

/// What a trouble can be said of: the kitchen, a pan or a machine.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct About {
    /// The pan.
    pub pan: Option<PanId>,
    /// The machine.
    pub machine: Option<MachineId>,
    /// What it is called; empty for the kitchen.
    pub name: String,
    /// Where it stands: whether what makes it safe was looked at.
    pub looked: Option<bool>,
}

/// Everything a trouble can be said of; nothing before a kitchen is set up.
pub fn abouts<J: Journal>(kitchen: &Kitchen<J>, what: TroubleKind) -> Vec<About> {
    let ledger = kitchen.ledger();
    let book = &ledger.book;
    if book.kitchen.is_none() {
        return Vec::new();
    }
    let about = |pan, machine, name: &str| About {
        pan,
        machine,
        name: name.to_owned(),
        looked: ledger
            .troubles()
            .iter()
            .find(|t| (t.what, t.pan, t.machine) == (what, pan, machine))
            .map(|t| t.looked),
    };
    match row(what).of {
        Of::Kitchen => vec![about(None, None, "")],
        // An empty pan too: a burner left on under one smokes first.
        Of::Pan => {
            let known = |p: PanId| ledger.fill(p).is_some() || ledger.in_pan(p).is_some();
            let pans = book.pans_in_use().into_iter().filter(|p| known(p.pan));
            pans.map(|p| about(Some(p.pan), None, &p.name)).collect()
        }
        Of::Machine => {
            let machines = book.machines.values().filter(|m| m.out_by != OutBy::Hand);
            machines.map(|m| about(None, Some(m.machine), &m.name)).collect()
        }
    }
}

/// The troubles that stand, each with the name of its pan or machine, the most urgent first.
#[must_use]
pub fn standing(ledger: &Ledger) -> Vec<(TroubleKind, String)> {
    let pan = |t: &Standing| Some(ledger.book.pan(t.pan?)?.name.clone());
    let machine = |t: &Standing| Some(ledger.book.machine(t.machine?)?.name.clone());
    let named = |t: &Standing| (t.what, pan(t).or_else(|| machine(t)).unwrap_or_default());
    let mut all: Vec<_> = ledger.troubles().iter().map(named).collect();
    in_order(&mut all, |(what, name)| (urgency(*what), name.clone()));
    all
}

/// Which trouble is said first where several stand: what burns, what scalds, then the rest in the order of the list.
const fn urgency(what: TroubleKind) -> (u8, TroubleKind) {
    let first = match what {
        TroubleKind::Smoke => 0,
        TroubleKind::Spill => 1,
        TroubleKind::CutOut => 2,
        TroubleKind::PowerCut
        | TroubleKind::MachineDown
        | TroubleKind::Alone
        | TroubleKind::CounterOpens
        | TroubleKind::Shut => 3,
    };
    (first, what)
}

/// Whether every filter machine there is stands down: tonight is not filtered.
#[must_use]
pub fn all_down(ledger: &Ledger) -> bool {
    let down = |id| {
        let is = |t: &Standing| t.what == TroubleKind::MachineDown && t.machine == Some(id);
        ledger.troubles().iter().any(is)
    };
    let mut machines = ledger
        .book
        .machines
        .values()
        .filter(|m| m.out_by != OutBy::Hand)
        .peekable();
    machines.peek().is_some() && machines.all(|m| down(m.machine))
}
