//! What must be seen: the evidence of each hold, of each line to the machine, of heat that is off.

use panward::domain::evidence::{Evidence, Item, Word};
use panward::domain::facts::setup::{OffSign, OutBy};
use panward::domain::procedure::Hold;

/// The evidence each hold of Ready must hold: items and the one word that opens it.
pub(super) const READY_EVIDENCE: &[(Hold, &[(Item, Word)])] = &[
    (
        Hold::Kit,
        &[
            (Item::Gloves, Word::Worn),
            (Item::Face, Word::Worn),
            (Item::Apron, Word::Worn),
            (Item::Sleeves, Word::Worn),
            (Item::Shoes, Word::Worn),
        ],
    ),
    (
        Hold::Floor,
        &[
            (Item::Floor, Word::Dry),
            (Item::Way, Word::Clear),
            (Item::Extinguisher, Word::Seen),
        ],
    ),
    (
        Hold::Dry,
        &[
            (Item::Filter, Word::Dry),
            (Item::TankInside, Word::Dry),
            (Item::Hose, Word::Dry),
            (Item::Sound, Word::Whole),
        ],
    ),
    (Hold::Room, &[(Item::Tank, Word::Empty)]),
];

/// What the line to the machine must be seen to be before oil leaves the pan.
pub(super) const fn connected_out(kind: OutBy) -> &'static [(Item, Word)] {
    match kind {
        OutBy::Nozzle => &[(Item::Nozzle, Word::InCorner), (Item::Valve, Word::Shut)],
        OutBy::Drain => &[(Item::Pipe, Word::Locked), (Item::TankPlace, Word::InPlace)],
        OutBy::BuiltIn => &[(Item::TankPlace, Word::InPlace)],
        OutBy::Hand => &[(Item::Container, Word::MetalDry), (Item::Room, Word::Enough)],
    }
}

/// The same before a rinse.
pub(super) const fn connected_rinse(kind: OutBy) -> &'static [(Item, Word)] {
    match kind {
        OutBy::Nozzle => &[(Item::Nozzle, Word::Clamped), (Item::Valve, Word::Shut)],
        OutBy::Drain | OutBy::BuiltIn => &[(Item::Valve, Word::Open), (Item::TankPlace, Word::InPlace)],
        OutBy::Hand => &[],
    }
}

/// The same before oil comes back.
pub(super) const fn connected_back(kind: OutBy) -> &'static [(Item, Word)] {
    match kind {
        OutBy::Nozzle => &[(Item::Nozzle, Word::Clamped), (Item::Valve, Word::Shut)],
        OutBy::Drain => &[(Item::Pipe, Word::Locked), (Item::Valve, Word::Shut)],
        OutBy::BuiltIn => &[(Item::TankPlace, Word::InPlace), (Item::Valve, Word::Shut)],
        OutBy::Hand => &[(Item::Valve, Word::Shut)],
    }
}

pub(super) fn holds(evidence: &Evidence, wanted: &[(Item, Word)]) -> bool {
    wanted.iter().all(|(item, word)| evidence.is(*item, *word))
}

pub(super) fn off(sign: OffSign) -> (Item, Word) {
    match sign {
        OffSign::Knob => (Item::Knob, Word::Off),
        OffSign::Flame => (Item::Flame, Word::Out),
        OffSign::Light => (Item::Light, Word::Out),
        OffSign::Thermostat => (Item::Thermostat, Word::Off),
        OffSign::Isolator => (Item::Isolator, Word::Off),
        OffSign::GasTap => (Item::GasTap, Word::Shut),
        OffSign::Plug => (Item::Plug, Word::Out),
    }
}
