//! Lock-up: scraps proven cold or laid out safely, the floor, and every pan off and lidded.
//!
//! Scraps in a heap heat themselves: smoke after about 2 h and flame after about 3 h in a Tokyo Fire Department test,
//! 3–10 h in fires told of by the Madison Fire Department (both second-hand). So a probe in the middle of the heap,
//! not a wait, says they are cold. 40 °C and ten minutes are project defaults.

use super::tables::{alone, good, look, not_yet, off_sign};
use super::{Ask, Block, Hazard, Hold, How, Step, StepId};
use crate::domain::evidence::{Item, Word};

const fn step(id: StepId, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    alone(Block::LockUp, id, hazard, holds, asks)
}

const fn probe(item: Item) -> Ask {
    Ask {
        item,
        how: How::Probe,
        hold: Some(Hold::Scraps),
        together: 0,
        still: false,
    }
}

/// Nothing was fried or filtered, and nothing lies about.
pub(super) const NO_SCRAPS: Step = step(
    StepId::Scraps,
    Hazard::SelfHeating,
    &[Hold::Scraps],
    &[
        look(Item::Scraps, &[good(Word::None), not_yet(Word::Warm)])
            .proves(Hold::Scraps)
            .with(1),
        look(Item::SpentFilter, &[good(Word::None), not_yet(Word::OnTray)])
            .proves(Hold::Scraps)
            .with(1),
        look(Item::Cloths, &[good(Word::None), not_yet(Word::OnTray)])
            .proves(Hold::Scraps)
            .with(1),
    ],
);

/// Scraps, filters and cloths in one heap: the first reading in the middle of it.
pub(super) const SCRAPS: Step = step(
    StepId::Scraps,
    Hazard::SelfHeating,
    &[Hold::Scraps],
    &[probe(Item::Heap)],
);

/// Ten minutes on: still under 40 °C, and not rising.
pub(super) const SCRAPS_AGAIN: Step = step(
    StepId::ScrapsAgain,
    Hazard::SelfHeating,
    &[Hold::Scraps],
    &[probe(Item::HeapAgain)],
);

/// Still warm at closing: nobody locks them in.
pub(super) const SCRAPS_OUT: Step = step(
    StepId::ScrapsOut,
    Hazard::SelfHeating,
    &[Hold::Scraps],
    &[
        look(Item::Scraps, &[good(Word::ThinOutdoors), not_yet(Word::Warm)]).proves(Hold::Scraps),
        look(Item::Way, &[good(Word::Clear), not_yet(Word::Blocked)]).proves(Hold::Scraps),
        look(
            Item::Wetted,
            &[good(Word::Wet), not_yet(Word::Crackling), not_yet(Word::Dry)],
        )
        .proves(Hold::Scraps),
    ],
);

/// Floor.
pub(super) const FLOOR: Step = step(
    StepId::LockFloor,
    Hazard::Slip,
    &[],
    &[look(Item::Floor, &[good(Word::Dry), not_yet(Word::Wet)])],
);

const LID_ON: Ask = look(Item::Lid, &[good(Word::InPlace), not_yet(Word::Off)]).with(1);

/// One pan off, in the two ways its owner named, and lidded.
pub(super) const PANS: Step = step(
    StepId::LockPans,
    Hazard::BareHeat,
    &[Hold::HeatOff],
    &[off_sign(0, 1), off_sign(1, 1), LID_ON],
);

/// A pan that stands empty says so itself.
pub(super) const PANS_TAGGED: Step = step(
    StepId::LockPans,
    Hazard::BareHeat,
    &[Hold::HeatOff],
    &[
        off_sign(0, 1),
        off_sign(1, 1),
        LID_ON,
        look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]),
    ],
);
