//! Boil-out: an empty pan, cold water, the chemical by its maker's sheet, low heat with somebody there.
//!
//! HSE Catering Information Sheet 17 names fumes and boil-over of cleaning chemicals and splashes in the eye; that a
//! boil-out is never left, and the pan rinsed and completely dry before oil goes in, from memory. The sheet of the
//! chemical's maker goes before all of this. Water drained at or under 40 °C: project default, stricter than the trade.

use super::change::{KIT, TAG_HUNG, VALVE_SHUT, probe, step};
use super::tables::{good, look, not_yet, off_sign};
use super::{Answer, Ask, Block, Hazard, Hold, Step, StepId, Verdict};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::Fault;

const fn boil(id: StepId, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    Step {
        block: Block::BoilOut,
        ..step(id, hazard, holds, asks)
    }
}

/// What means heat off before another word.
const fn off_now(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::Fault(Fault::Water),
    }
}

const FAN: Ask = look(Item::Fan, &[good(Word::On), not_yet(Word::Off)]);
const WATER: Ask = look(
    Item::WaterLevel,
    &[good(Word::InBand), not_yet(Word::Below), not_yet(Word::High)],
)
.proves(Hold::Water);
const HERE: Ask = look(Item::Attended, &[good(Word::Here), not_yet(Word::Leaving)]).proves(Hold::Water);

/// The sheet read, and what it asks to be worn.
pub(super) const CHEMICAL_KIT: Step = Step {
    block: Block::BoilOut,
    hazard: Hazard::Chemical,
    holds: &[Hold::Kit, Hold::Chemical],
    asks: &[
        look(Item::Sheet, &[good(Word::Read), not_yet(Word::Missing)]).proves(Hold::Chemical),
        look(Item::Gloves, super::ready::WORN).proves(Hold::Kit),
        look(Item::Face, super::ready::WORN).proves(Hold::Kit),
        look(Item::Apron, super::ready::WORN).proves(Hold::Kit),
        look(Item::Sleeves, super::ready::WORN).proves(Hold::Kit),
        look(Item::Shoes, super::ready::WORN).proves(Hold::Kit),
    ],
    ..KIT
};

/// No oil in it, off, tagged, valve shut, fan on.
pub(super) const EMPTY: Step = boil(
    StepId::BoilEmpty,
    Hazard::Steam,
    &[Hold::HeatOff, Hold::ClearDry, Hold::Connected, Hold::Level],
    &[
        look(
            Item::Remainder,
            &[good(Word::Film), good(Word::None), not_yet(Word::Oil)],
        )
        .proves(Hold::ClearDry),
        off_sign(0, 1),
        off_sign(1, 1),
        VALVE_SHUT,
        TAG_HUNG,
        FAN,
    ],
);

/// Cold water in.
pub(super) const WATER_IN: Step = boil(StepId::BoilWater, Hazard::BoilOver, &[Hold::Water], &[WATER]);

/// The chemical into the cold water, alone.
pub(super) const CHEMICAL: Step = boil(
    StepId::BoilChemical,
    Hazard::Chemical,
    &[Hold::Kit, Hold::Chemical],
    &[look(
        Item::Chemical,
        &[good(Word::AsSheet), good(Word::None), not_yet(Word::Mixed)],
    )
    .proves(Hold::Chemical)],
);

/// Low heat.
pub(super) const HEAT: Step = boil(
    StepId::BoilHeat,
    Hazard::BoilOver,
    &[Hold::Water],
    &[
        WATER,
        FAN,
        HERE,
        look(Item::HeatSetting, &[good(Word::Low), not_yet(Word::On)]).proves(Hold::Water),
    ],
);

/// One look: what it does first, for that decides whether anybody stays near.
pub(super) const LOOK: Step = boil(
    StepId::BoilLook,
    Hazard::BoilOver,
    &[Hold::Water],
    &[
        look(
            Item::Foam,
            &[good(Word::Quiet), off_now(Word::Rising), off_now(Word::Crackling)],
        )
        .proves(Hold::Water),
        look(
            Item::WaterLevel,
            &[good(Word::InBand), off_now(Word::Below), off_now(Word::High)],
        )
        .proves(Hold::Water),
        look(Item::Attended, &[good(Word::Here), off_now(Word::Leaving)]).proves(Hold::Water),
    ],
);

/// Heat off, after trouble or before anybody leaves.
pub(super) const OFF: Step = boil(
    StepId::LookAgain,
    Hazard::BoilOver,
    &[Hold::LookAgain, Hold::Level],
    &[off_sign(0, 1), off_sign(1, 1), TAG_HUNG],
);

/// Cool enough to drain.
pub(super) const COOL: Step = boil(
    StepId::BoilCool,
    Hazard::WrongTemp,
    &[Hold::Temperature],
    &[probe(Item::WaterTemp)],
);

/// Drained where the sheet and the rules of the place say.
pub(super) const DRAIN: Step = boil(
    StepId::BoilDrain,
    Hazard::Chemical,
    &[Hold::Kit, Hold::Floor, Hold::Temperature, Hold::HeatOff, Hold::Chemical],
    &[look(Item::DrainedTo, &[good(Word::AsSheet), not_yet(Word::NotKnown)]).proves(Hold::Chemical)],
);

/// Scrubbed cold, and rinsed until nothing of it is left.
pub(super) const RINSE: Step = boil(
    StepId::BoilRinse,
    Hazard::Chemical,
    &[Hold::Chemical],
    &[look(Item::Rinse, &[good(Word::Clean), not_yet(Word::Cloudy)]).proves(Hold::Chemical)],
);
