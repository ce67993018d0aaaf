//! Stored shapes: one body per kind and version, the envelope, and the export's header. Serde lives here only.
//!
//! A shape that was ever shipped is never changed. A new one gets the next version beside it, and its own frozen
//! sample; old versions are then read through their own shape.

pub mod body;
pub mod correct;
pub mod envelope;
pub mod oil;
pub mod parts;
pub mod scalar;
pub mod setup;
pub mod work;

use serde_json::value::RawValue;
use thiserror::Error;

use crate::domain::facts::Fact;

/// Why a fact cannot be written: it could not be read back as itself.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{0}")]
pub struct Unwritable(pub String);

impl From<serde_json::Error> for Unwritable {
    fn from(error: serde_json::Error) -> Self {
        Self(error.to_string())
    }
}

/// Kind, version and body of a fact.
pub fn write_body(fact: &Fact) -> Result<(&'static str, u32, Box<RawValue>), Unwritable> {
    let (kind, v, body) = match fact {
        Fact::Kitchen(f) => ("kitchen", 1, body::write::<setup::KitchenV1>(f)?),
        Fact::Person(f) => ("person", 1, body::write::<setup::PersonV1>(f)?),
        Fact::Pan(f) => ("pan", 1, body::write::<setup::PanV1>(f)?),
        Fact::Machine(f) => ("machine", 1, body::write::<setup::MachineV1>(f)?),
        Fact::Instrument(f) => ("instrument", 1, body::write::<setup::InstrumentV1>(f)?),
        Fact::Fill(f) => ("fill", 1, body::write::<oil::FillV1>(f)?),
        Fact::TopUp(f) => ("topup", 1, body::write::<oil::TopUpV1>(f)?),
        Fact::PartChange(f) => ("part_change", 1, body::write::<oil::PartChangeV1>(f)?),
        Fact::Move(f) => ("move", 1, body::write::<oil::MoveV1>(f)?),
        Fact::OilChange(f) => ("oil_change", 1, body::write::<oil::OilChangeV1>(f)?),
        Fact::Service(f) => ("service", 1, body::write::<oil::ServiceV1>(f)?),
        Fact::Reading(f) => ("reading", 1, body::write::<oil::ReadingV1>(f)?),
        Fact::Sign(f) => ("sign", 1, body::write::<oil::SignV1>(f)?),
        Fact::Note(f) => ("note", 1, body::write::<oil::NoteV1>(f)?),
        Fact::ClaimLost(f) => ("claim_lost", 1, body::write::<oil::ClaimChangeV1>(f)?),
        Fact::ClaimRestored(f) => ("claim_restored", 1, body::write::<oil::ClaimChangeV1>(f)?),
        Fact::Correct(f) => ("correct", 1, correct::write(f)?),
        Fact::Job(f) => ("job", 1, body::write::<work::JobV1>(f)?),
        Fact::Run(f) => ("run", 1, body::write::<work::RunV1>(f)?),
        Fact::RunNoted(f) => ("run_noted", 1, body::write::<work::RunNotedV1>(f)?),
        Fact::MachineCleaned(f) => ("machine_cleaned", 1, body::write::<work::MachineCleanedV1>(f)?),
        Fact::Practised(f) => ("practised", 1, body::write::<work::PractisedV1>(f)?),
        Fact::Newer(newer) => {
            let (kind, v) = (&newer.kind, newer.v);
            return Err(Unwritable(format!(
                "{kind} version {v} is known only from its own bytes"
            )));
        }
    };
    Ok((kind, v, body))
}

/// The fact a body says; `None` for a kind or version this app does not know.
pub fn read_body(kind: &str, v: u32, json: &str) -> Result<Option<Fact>, String> {
    let fact = match (kind, v) {
        ("kitchen", 1) => Fact::Kitchen(Box::new(body::read::<setup::KitchenV1>(json)?)),
        ("person", 1) => Fact::Person(body::read::<setup::PersonV1>(json)?),
        ("pan", 1) => Fact::Pan(Box::new(body::read::<setup::PanV1>(json)?)),
        ("machine", 1) => Fact::Machine(Box::new(body::read::<setup::MachineV1>(json)?)),
        ("instrument", 1) => Fact::Instrument(body::read::<setup::InstrumentV1>(json)?),
        ("fill", 1) => Fact::Fill(body::read::<oil::FillV1>(json)?),
        ("topup", 1) => Fact::TopUp(body::read::<oil::TopUpV1>(json)?),
        ("part_change", 1) => Fact::PartChange(body::read::<oil::PartChangeV1>(json)?),
        ("move", 1) => Fact::Move(body::read::<oil::MoveV1>(json)?),
        ("oil_change", 1) => Fact::OilChange(body::read::<oil::OilChangeV1>(json)?),
        ("service", 1) => Fact::Service(body::read::<oil::ServiceV1>(json)?),
        ("reading", 1) => Fact::Reading(body::read::<oil::ReadingV1>(json)?),
        ("sign", 1) => Fact::Sign(body::read::<oil::SignV1>(json)?),
        ("note", 1) => Fact::Note(body::read::<oil::NoteV1>(json)?),
        ("claim_lost", 1) => Fact::ClaimLost(body::read::<oil::ClaimChangeV1>(json)?),
        ("claim_restored", 1) => Fact::ClaimRestored(body::read::<oil::ClaimChangeV1>(json)?),
        ("correct", 1) => match correct::read(json)? {
            Some(correct) => Fact::Correct(correct),
            None => return Ok(None),
        },
        ("job", 1) => Fact::Job(Box::new(body::read::<work::JobV1>(json)?)),
        ("run", 1) => Fact::Run(Box::new(body::read::<work::RunV1>(json)?)),
        ("run_noted", 1) => Fact::RunNoted(body::read::<work::RunNotedV1>(json)?),
        ("machine_cleaned", 1) => Fact::MachineCleaned(body::read::<work::MachineCleanedV1>(json)?),
        ("practised", 1) => Fact::Practised(body::read::<work::PractisedV1>(json)?),
        _ => return Ok(None),
    };
    Ok(Some(fact))
}
