//! Which safety sign stands beside a hazard or an instruction.

use crate::domain::evidence::Item;
use crate::domain::procedure::{Hazard, StepId};
use crate::ui::parts::SignKind;

/// The sign beside a hazard line.
#[must_use]
pub const fn of_hazard(hazard: Hazard) -> SignKind {
    match hazard {
        Hazard::Slip => SignKind::Slippery,
        Hazard::BareHeat | Hazard::SelfHeating => SignKind::Fire,
        Hazard::Splash
        | Hazard::WrongTemp
        | Hazard::Leaning
        | Hazard::HotWall
        | Hazard::Crust
        | Hazard::Overflow
        | Hazard::BoilOver => SignKind::Hot,
        Hazard::Person
        | Hazard::Allergen
        | Hazard::Steam
        | Hazard::SetInLine
        | Hazard::Carrying
        | Hazard::Jump
        | Hazard::OpenValve
        | Hazard::Live
        | Hazard::Unheard
        | Hazard::Lifting
        | Hazard::Chemical
        | Hazard::Drain => SignKind::Warning,
    }
}

/// The sign beside the step line, where the open sign language has one for what is looked at.
#[must_use]
pub const fn of_question(step: StepId, item: Option<Item>) -> Option<SignKind> {
    match (step, item) {
        (_, Some(Item::Gloves)) => Some(SignKind::Gloves),
        (_, Some(Item::Face)) => Some(SignKind::FaceShield),
        (_, Some(Item::Apron)) => Some(SignKind::Apron),
        (_, Some(Item::Shoes)) => Some(SignKind::Shoes),
        (_, Some(Item::Extinguisher)) => Some(SignKind::FireEquipment),
        (StepId::HeatOff, Some(Item::Smoke)) => None,
        (StepId::HeatOff, _) => Some(SignKind::HeatOff),
        _ => None,
    }
}
