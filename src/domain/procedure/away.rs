//! Looking again after trouble, and putting the machine away after the last pan.

use super::tables::{alone, good, look, not_yet, off_sign};
use super::{Answer, Ask, Block, Hazard, Hold, How, Step, StepId};
use crate::domain::evidence::{Item, Word};

const fn step(id: StepId, block: Block, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    alone(block, id, hazard, holds, asks)
}

const PUMP_OFF: Ask = look(Item::Pump, &[good(Word::Off), not_yet(Word::Running)]).proves(Hold::LookAgain);
const SIGN_0: Ask = off_sign(0, 0).proves(Hold::LookAgain);
const SIGN_1: Ask = off_sign(1, 0).proves(Hold::LookAgain);

const fn look_again(asks: &'static [Ask]) -> Step {
    step(
        StepId::LookAgain,
        Block::Return,
        Hazard::BareHeat,
        &[Hold::LookAgain],
        asks,
    )
}

const LEAVE_OUT: Step = step(
    StepId::LeaveOut,
    Block::Return,
    Hazard::BareHeat,
    &[Hold::LookAgain],
    &[
        PUMP_OFF,
        SIGN_0,
        SIGN_1,
        look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::LookAgain),
    ],
);

/// By hand there is no pump to look at.
const LEAVE_OUT_HAND: Step = step(
    StepId::LeaveOut,
    Block::Return,
    Hazard::BareHeat,
    &[Hold::LookAgain],
    &[
        SIGN_0,
        SIGN_1,
        look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::LookAgain),
    ],
);

const PLACES: &[Answer] = &[good(Word::InPan), good(Word::Split), good(Word::InMachine)];
const PLACES_HAND: &[Answer] = &[good(Word::InPan), good(Word::Split), good(Word::InContainer)];

const fn place(places: &'static [Answer]) -> Ask {
    look(Item::Place, places).proves(Hold::LookAgain)
}

/// An answer that goes against the log is believed only when it is given twice.
const fn place_again(places: &'static [Answer]) -> Ask {
    Ask {
        item: Item::PlaceAgain,
        how: How::IfElsewhere(places),
        hold: Some(Hold::LookAgain),
        together: 0,
        still: false,
    }
}

/// After trouble with a machine: the look again, then leaving with oil out of the pan.
pub(super) const AGAIN: &[Step] = &[
    look_again(&[
        PUMP_OFF,
        SIGN_0,
        SIGN_1,
        place(PLACES),
        place_again(PLACES),
        // Asked only after a fault.
        look(Item::Sound, &[good(Word::Whole), not_yet(Word::Damaged)]).proves(Hold::LookAgain),
    ]),
    LEAVE_OUT,
];

/// The same on the cold route.
pub(super) const AGAIN_HAND: &[Step] = &[
    look_again(&[SIGN_0, SIGN_1, place(PLACES_HAND), place_again(PLACES_HAND)]),
    LEAVE_OUT_HAND,
];

/// The line after a fat that sets, before another fat goes through it or the machine is put away. Common practice, no
/// source. Where it cannot be run empty that is said, and remembered: melt before use.
pub(super) const LINE_SOLID: Step = step(
    StepId::AwayLine,
    Block::PutAway,
    Hazard::SetInLine,
    &[],
    &[look(Item::Line, &[good(Word::RunEmpty), good(Word::Oil)])],
);

/// A pan left to set after a fault: off, closed and tagged, for nobody carries it hot.
pub(super) const LEAVE_SET: Step = step(
    StepId::Leave,
    Block::Return,
    Hazard::Carrying,
    &[Hold::LookAgain],
    &[
        SIGN_0,
        SIGN_1,
        look(Item::Lid, &[good(Word::InPlace), not_yet(Word::Off)]).proves(Hold::LookAgain),
        look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::LookAgain),
    ],
);

/// After the last pan. Scraps, filter and cloths stay on the tray: lock-up proves them cold.
pub(super) const AWAY: &[Step] = &[
    step(
        StepId::AwayLine,
        Block::PutAway,
        Hazard::SetInLine,
        &[],
        &[look(Item::Line, &[good(Word::RunEmpty), not_yet(Word::Oil)])],
    ),
    step(
        StepId::AwayOff,
        Block::PutAway,
        Hazard::Live,
        &[],
        &[
            look(Item::Heater, &[good(Word::Off), not_yet(Word::On)]),
            look(Item::MachinePlug, &[good(Word::Out), not_yet(Word::InPlace)]),
        ],
    ),
    step(
        StepId::AwayFilter,
        Block::PutAway,
        Hazard::SelfHeating,
        &[],
        &[look(
            Item::SpentFilter,
            &[good(Word::OnTray), good(Word::InMachine), not_yet(Word::NoTray)],
        )],
    ),
    step(
        StepId::AwayCloths,
        Block::PutAway,
        Hazard::SelfHeating,
        &[],
        &[look(
            Item::Cloths,
            &[good(Word::OnTray), good(Word::None), good(Word::InBin)],
        )],
    ),
    step(
        StepId::AwayFloor,
        Block::PutAway,
        Hazard::Slip,
        &[],
        &[look(Item::Floor, &[good(Word::Dry), not_yet(Word::Wet)])],
    ),
    step(
        StepId::AwayMachine,
        Block::PutAway,
        Hazard::Steam,
        &[],
        &[look(
            Item::Machine,
            &[good(Word::Ready), good(Word::NeedsDrying), good(Word::OutOfService)],
        )],
    ),
];
