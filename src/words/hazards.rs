//! What can hurt somebody at a step, in one short sentence that holds no instruction.

use crate::domain::procedure::Hazard;

use super::Lang;

/// The hazard line: it stands before the act it guards.
#[must_use]
pub const fn hazard_line(hazard: Hazard, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match hazard {
        Hazard::Person => "A trip or an untrained hand beside hot oil burns deepest.",
        Hazard::Splash => "A splash of hot oil keeps burning through cloth.",
        Hazard::Slip => "A slip here ends in hot oil.",
        Hazard::Allergen => "A trace in the oil can make a customer gravely ill.",
        Hazard::Steam => "Water under hot oil turns to steam and throws the oil out.",
        Hazard::Overflow => "Hot oil that runs over burns feet and catches fire.",
        Hazard::SetInLine => "Fat that sets in pump or hose bursts a joint or strands the oil.",
        Hazard::WrongTemp => "Oil too hot burns worse; fat too cool blocks the line.",
        Hazard::BareHeat => "Heat on a bare wall sets its film of oil alight.",
        Hazard::Leaning => "Leaning over hot oil puts face and sleeve in its way.",
        Hazard::SelfHeating => "A heap of scraps heats itself and can burn hours later.",
        Hazard::Carrying => "Hot oil in the hand spills at the first trip.",
        Hazard::Jump => "A loose nozzle jumps in the first seconds and sprays.",
        Hazard::HotWall => "The wall is hot enough to burn through a glove in seconds.",
        Hazard::OpenValve => "An open valve here puts the whole pan on the floor.",
        Hazard::Live => "A live machine, opened, burns and shocks.",
        Hazard::Crust => "Melted fat under a crust bursts through it.",
        Hazard::Unheard => "A warning that goes unheard comes too late.",
        Hazard::Lifting => "A full drum strains a back at the first wrong lift.",
        Hazard::Chemical => "Cleaning chemicals burn eyes and skin, and their fumes choke.",
        Hazard::BoilOver => "Boiling cleaner foams over the rim and burns.",
        Hazard::Drain => "Oil on the ground or in a drain is a fall and a fine.",
    }
}

/// The one word above the hazard line, for the sign beside it.
#[must_use]
pub const fn hazard_name(hazard: Hazard, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match hazard {
        Hazard::Person => "Person",
        Hazard::Splash => "Splash",
        Hazard::Slip => "Slip",
        Hazard::Allergen => "Allergen",
        Hazard::Steam => "Steam",
        Hazard::Overflow => "Overflow",
        Hazard::SetInLine => "Set fat in the line",
        Hazard::WrongTemp => "Temperature",
        Hazard::BareHeat => "Fire",
        Hazard::Leaning => "Leaning over",
        Hazard::SelfHeating => "Fire later",
        Hazard::Carrying => "Carrying",
        Hazard::Jump => "Jumping nozzle",
        Hazard::HotWall => "Hot wall",
        Hazard::OpenValve => "Open valve",
        Hazard::Live => "Live machine",
        Hazard::Crust => "Crust",
        Hazard::Unheard => "Unheard warning",
        Hazard::Lifting => "Lifting",
        Hazard::Chemical => "Chemical",
        Hazard::BoilOver => "Boiling over",
        Hazard::Drain => "Oil outside",
    }
}
