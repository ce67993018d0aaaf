//! Stored shapes: one body per kind and version, the envelope, and the export's header.
//!
//! A shape that was ever shipped is never changed. A new one gets the next version beside it, and its own frozen
//! sample; old versions are then read through their own shape.

pub mod body;
pub mod claim;
pub mod correct;
pub mod envelope;
pub mod kitchen;
pub mod machine;
pub mod moved;
pub mod oil;
pub mod parts;
pub mod rhythm;
pub mod scalar;
pub mod setup;
pub mod stored;
pub mod trouble;
pub mod work;

use thiserror::Error;

use super::json::Json;
use crate::domain::facts::Fact;
use crate::domain::facts::job::JobFact;
use crate::domain::facts::oil::Vessel;
use crate::domain::facts::rhythm::Rhythm;
use crate::domain::facts::setup::Heater;

/// Why a fact cannot be written: it could not be read back as itself.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{0}")]
pub struct Unwritable(pub String);

/// Kind, version and body of a fact.
pub fn write_body(fact: &Fact) -> Result<(&'static str, u32, String), Unwritable> {
    let (kind, v, body) = match fact {
        Fact::Kitchen(f) if f.second_person => ("kitchen", 1, body::write::<setup::KitchenV1>(f)),
        Fact::Kitchen(f) => ("kitchen", 2, body::write::<kitchen::KitchenV2>(f)),
        Fact::Person(f) => ("person", 1, body::write::<setup::PersonV1>(f)),
        Fact::Pan(f) => match f.rhythm {
            Some(Rhythm::Days(_)) | None => ("pan", 1, body::write::<setup::PanV1>(f)),
            Some(Rhythm::Sessions(_) | Rhythm::Weekdays(_)) => ("pan", 2, body::write::<rhythm::PanV2>(f)),
        },
        Fact::Machine(f) if f.heater == Heater::NotKnown => ("machine", 3, body::write::<machine::MachineV3>(f)),
        Fact::Machine(f) if f.powder.is_none() => ("machine", 1, body::write::<machine::MachineV1>(f)),
        Fact::Machine(f) => ("machine", 2, body::write::<machine::MachineV2>(f)),
        Fact::Instrument(f) => ("instrument", 1, body::write::<setup::InstrumentV1>(f)),
        Fact::Fill(f) => ("fill", 1, body::write::<oil::FillV1>(f)),
        Fact::TopUp(f) => ("topup", 1, body::write::<oil::TopUpV1>(f)),
        Fact::PartChange(f) => ("part_change", 1, body::write::<oil::PartChangeV1>(f)),
        Fact::Move(f) => match (f.from, f.to) {
            (Vessel::Pan(_), Vessel::Pan(_)) => ("move", 1, body::write::<moved::MoveV1>(f)),
            (Vessel::Pan(_), Vessel::Machine(_)) | (Vessel::Machine(_), Vessel::Pan(_)) => {
                ("move", 2, body::write::<moved::MoveV2>(f))
            }
            (Vessel::Machine(_), Vessel::Machine(_)) => {
                return Err(Unwritable("oil moved from a machine into a machine".to_owned()));
            }
        },
        Fact::OilChange(f) => ("oil_change", 1, body::write::<oil::OilChangeV1>(f)),
        Fact::Service(f) => ("service", 1, body::write::<oil::ServiceV1>(f)),
        Fact::PanJob(f) => ("pan_job", 1, body::write::<rhythm::PanJobV1>(f)),
        Fact::Closed(f) => ("closed", 1, body::write::<rhythm::ClosedV1>(f)),
        Fact::Reading(f) => ("reading", 1, body::write::<oil::ReadingV1>(f)),
        Fact::Sign(f) => ("sign", 1, body::write::<oil::SignV1>(f)),
        Fact::Note(f) => ("note", 1, body::write::<oil::NoteV1>(f)),
        Fact::ClaimLost(f) => ("claim_lost", 1, body::write::<claim::ClaimChangeV1>(f)),
        Fact::ClaimRestored(f) if f.looked.is_none() => ("claim_restored", 1, body::write::<claim::ClaimRestoredV1>(f)),
        Fact::ClaimRestored(f) => ("claim_restored", 2, body::write::<claim::ClaimRestoredV2>(f)),
        Fact::Correct(f) => ("correct", 1, correct::write(f)?),
        // The same shape with the steps of a pan's own job, which an older app does not know.
        Fact::Job(f) if f.what.is_of_pan() => ("job", 2, body::write::<work::JobV1>(f)),
        Fact::Job(f) => ("job", 1, body::write::<work::JobV1>(f)),
        Fact::Run(f) => ("run", 1, body::write::<work::RunV1>(f)),
        Fact::RunNoted(f) => ("run_noted", 1, body::write::<work::RunNotedV1>(f)),
        Fact::MachineCleaned(f) => ("machine_cleaned", 1, body::write::<work::MachineCleanedV1>(f)),
        Fact::AllergensChecked(f) => ("allergens_checked", 1, body::write::<claim::AllergensCheckedV1>(f)),
        Fact::Practised(f) => ("practised", 1, body::write::<work::PractisedV1>(f)),
        Fact::Trouble(f) => ("trouble", 1, body::write::<trouble::TroubleV1>(f)),
        Fact::Newer(newer) => {
            let (kind, v) = (&newer.kind, newer.v);
            return Err(Unwritable(format!(
                "{kind} version {v} is known only from its own bytes"
            )));
        }
    };
    Ok((kind, v, body))
}

/// A job's fact. Version 1 says nothing of a pan's own job, version 2 of nothing else.
fn job(v: u32, body: Json<'_>) -> Result<JobFact, String> {
    let fact = body::read::<work::JobV1>(body)?;
    if fact.what.is_of_pan() == (v == 2) {
        Ok(fact)
    } else {
        Err(format!("what is {}, which is not of version {v}", fact.what.key()))
    }
}

/// The fact a body says; `None` for a kind or version this app does not know.
pub fn read_body(kind: &str, v: u32, body: Json<'_>) -> Result<Option<Fact>, String> {
    let fact = match (kind, v) {
        ("kitchen", 1) => Fact::Kitchen(Box::new(body::read::<setup::KitchenV1>(body)?)),
        ("kitchen", 2) => Fact::Kitchen(Box::new(body::read::<kitchen::KitchenV2>(body)?)),
        ("person", 1) => Fact::Person(body::read::<setup::PersonV1>(body)?),
        ("pan", 1) => Fact::Pan(Box::new(body::read::<setup::PanV1>(body)?)),
        ("pan", 2) => Fact::Pan(Box::new(body::read::<rhythm::PanV2>(body)?)),
        ("machine", 1) => Fact::Machine(Box::new(body::read::<machine::MachineV1>(body)?)),
        ("machine", 3) => Fact::Machine(Box::new(body::read::<machine::MachineV3>(body)?)),
        ("machine", 2) => Fact::Machine(Box::new(body::read::<machine::MachineV2>(body)?)),
        ("instrument", 1) => Fact::Instrument(body::read::<setup::InstrumentV1>(body)?),
        ("fill", 1) => Fact::Fill(body::read::<oil::FillV1>(body)?),
        ("topup", 1) => Fact::TopUp(body::read::<oil::TopUpV1>(body)?),
        ("part_change", 1) => Fact::PartChange(body::read::<oil::PartChangeV1>(body)?),
        ("move", 1) => Fact::Move(body::read::<moved::MoveV1>(body)?),
        ("move", 2) => Fact::Move(body::read::<moved::MoveV2>(body)?),
        ("oil_change", 1) => Fact::OilChange(body::read::<oil::OilChangeV1>(body)?),
        ("service", 1) => Fact::Service(body::read::<oil::ServiceV1>(body)?),
        ("pan_job", 1) => Fact::PanJob(body::read::<rhythm::PanJobV1>(body)?),
        ("closed", 1) => Fact::Closed(body::read::<rhythm::ClosedV1>(body)?),
        ("reading", 1) => Fact::Reading(body::read::<oil::ReadingV1>(body)?),
        ("sign", 1) => Fact::Sign(body::read::<oil::SignV1>(body)?),
        ("note", 1) => Fact::Note(body::read::<oil::NoteV1>(body)?),
        ("claim_lost", 1) => Fact::ClaimLost(body::read::<claim::ClaimChangeV1>(body)?),
        ("claim_restored", 1) => Fact::ClaimRestored(body::read::<claim::ClaimRestoredV1>(body)?),
        ("claim_restored", 2) => Fact::ClaimRestored(body::read::<claim::ClaimRestoredV2>(body)?),
        ("correct", 1) => match correct::read(body)? {
            Some(correct) => Fact::Correct(correct),
            None => return Ok(None),
        },
        ("job", 1 | 2) => Fact::Job(Box::new(job(v, body)?)),
        ("run", 1) => Fact::Run(Box::new(body::read::<work::RunV1>(body)?)),
        ("run_noted", 1) => Fact::RunNoted(body::read::<work::RunNotedV1>(body)?),
        ("machine_cleaned", 1) => Fact::MachineCleaned(body::read::<work::MachineCleanedV1>(body)?),
        ("allergens_checked", 1) => Fact::AllergensChecked(body::read::<claim::AllergensCheckedV1>(body)?),
        ("practised", 1) => Fact::Practised(body::read::<work::PractisedV1>(body)?),
        ("trouble", 1) => Fact::Trouble(Box::new(body::read::<trouble::TroubleV1>(body)?)),
        _ => return Ok(None),
    };
    Ok(Some(fact))
}
