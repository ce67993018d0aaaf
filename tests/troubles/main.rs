//! Days that go wrong: what each stops, what ends it, and that oil which is out still finds its way back.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs, dead_code)]

mod check;
mod helper;
mod kitchen;
mod light;
mod table;
mod walk;
#[path = "../explore/world.rs"]
mod world;

use panward::domain::evidence::Evidence;
use panward::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use panward::domain::ids::{MachineId, PanId};
use panward::domain::trouble::{Of, row};

/// What each stops, written down apart from the table: oil out of its pan, heat.
const STOPS: [(TroubleKind, bool, bool); 8] = [
    (TroubleKind::PowerCut, true, true),
    (TroubleKind::MachineDown, true, false),
    (TroubleKind::CutOut, false, true),
    (TroubleKind::Spill, true, true),
    (TroubleKind::Smoke, true, true),
    (TroubleKind::Alone, true, false),
    (TroubleKind::CounterOpens, true, false),
    (TroubleKind::Shut, true, true),
];

fn stops(what: TroubleKind) -> (bool, bool) {
    let (_, draw, heat) = STOPS.into_iter().find(|row| row.0 == what).unwrap();
    (draw, heat)
}

/// That it begins, of this pan or machine where one is meant.
fn begins(what: TroubleKind, pan: PanId, machine: MachineId) -> TroubleFact {
    TroubleFact {
        what,
        event: TroubleEvent::Began,
        pan: (row(what).of == Of::Pan).then_some(pan),
        machine: (row(what).of == Of::Machine).then_some(machine),
        evidence: Evidence::new(),
        text: None,
    }
}
