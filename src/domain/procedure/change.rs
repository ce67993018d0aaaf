//! Oil change: the old oil out for good, the pan wiped, fresh oil or fat in.
//!
//! HSE Catering Information Sheet 17: by hand only at or under 40 °C; into a dry metal container with handles and a lid
//! or the oil's own empty container, at most two thirds full to carry, two people (both second-hand, by a caterer's
//! handbook); full containers on a drip tray; never to a drain; help with what is heavy; not overfilled. Set fat cut out
//! cold, blocks cut small and packed against the surface, never bridging bare tubes: common practice, no source.

use super::ready::{DRY, WORN};
use super::tables::{alone, good, look, not_yet, off_sign};
use super::{Answer, Ask, Block, Hazard, Hold, How, Step, StepId, Verdict};
use crate::domain::evidence::{Item, Word};

pub(super) const fn step(id: StepId, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    alone(Block::OilChange, id, hazard, holds, asks)
}

pub(super) const fn probe(item: Item) -> Ask {
    Ask {
        item,
        how: How::Probe,
        hold: Some(Hold::Temperature),
        together: 0,
        still: false,
    }
}

/// Not all of it yet: the same movement goes on.
const fn again(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::Again,
    }
}

pub(super) const TAG_HUNG: Ask = look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::Level);
pub(super) const VALVE_SHUT: Ask = look(Item::Valve, &[good(Word::Shut), not_yet(Word::Open)]).proves(Hold::Connected);
/// Never a plastic drum, whatever the probe said.
const VESSEL: Ask = look(
    Item::Container,
    &[good(Word::MetalDry), good(Word::OwnTin), not_yet(Word::Unfit)],
)
.proves(Hold::Container);
/// Room for it all with none more than two thirds full.
const ROOM: Ask = look(Item::Room, &[good(Word::Enough), not_yet(Word::Short)]).proves(Hold::Container);
/// Alone is an answer; what one person may lift is checked by weight.
const CARRY: Ask = look(
    Item::Carry,
    &[good(Word::TwoPeople), good(Word::Trolley), good(Word::Alone)],
)
.proves(Hold::Lift);

/// Who does it. Answered by a name as the job is opened.
pub(super) const WHO: Step = step(
    StepId::Who,
    Hazard::Person,
    &[Hold::Person],
    &[Ask {
        item: Item::SignOff,
        how: How::Person,
        hold: Some(Hold::Person),
        together: 0,
        still: false,
    }],
);

/// What they wear.
pub(super) const KIT: Step = step(
    StepId::Kit,
    Hazard::Splash,
    &[Hold::Kit],
    &[
        look(Item::Gloves, WORN).proves(Hold::Kit),
        look(Item::Face, WORN).proves(Hold::Kit),
        look(Item::Apron, WORN).proves(Hold::Kit),
        look(Item::Sleeves, WORN).proves(Hold::Kit),
        look(Item::Shoes, WORN).proves(Hold::Kit),
    ],
);

/// Where they stand.
pub(super) const FLOOR: Step = step(
    StepId::Floor,
    Hazard::Slip,
    &[Hold::Floor],
    &[
        look(Item::Floor, DRY).proves(Hold::Floor),
        look(Item::Way, &[good(Word::Clear), not_yet(Word::Blocked)]).proves(Hold::Floor),
        look(Item::Extinguisher, &[good(Word::Seen), not_yet(Word::Missing)]).proves(Hold::Floor),
    ],
);

/// How it leaves: pumped hot by a filter run, by hand cold, or cut out.
pub(super) const HOW: Step = step(
    StepId::ChangeHow,
    Hazard::Carrying,
    &[],
    &[look(
        Item::OutWay,
        &[good(Word::Pumped), good(Word::ByHand), good(Word::CutOut)],
    )],
);

/// Heat off, in the two ways the owner named.
pub(super) const HEAT_OFF: Step = step(
    StepId::HeatOff,
    Hazard::BareHeat,
    &[Hold::HeatOff],
    &[off_sign(0, 1), off_sign(1, 1)],
);

/// The same for the cutting, and shut where nobody turns it on by mistake.
pub(super) const ISOLATE: Step = step(
    StepId::Isolate,
    Hazard::BareHeat,
    &[Hold::HeatOff],
    &[
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::Supply, &[good(Word::Isolated), not_yet(Word::On)]).proves(Hold::HeatOff),
    ],
);

/// The reading that counts.
pub(super) const TEMP: Step = step(
    StepId::OilTemp,
    Hazard::WrongTemp,
    &[Hold::Temperature],
    &[probe(Item::OilTemp)],
);

/// What it goes into, and the tag on the pan before anything leaves it.
pub(super) const CONTAINER: Step = step(
    StepId::Container,
    Hazard::Carrying,
    &[
        Hold::Person,
        Hold::Kit,
        Hold::Floor,
        Hold::Temperature,
        Hold::HeatOff,
        Hold::Container,
        Hold::Lift,
        Hold::Level,
    ],
    &[VESSEL, ROOM, CARRY, TAG_HUNG],
);

/// Drained cold.
pub(super) const DRAIN: Step = step(
    StepId::EmptyByHand,
    Hazard::Carrying,
    &[],
    &[look(Item::ByHand, &[good(Word::InContainer), again(Word::Split)])],
);

/// Cut out cold.
pub(super) const CUT_OUT: Step = step(
    StepId::CutOut,
    Hazard::Carrying,
    &[],
    &[look(Item::ByHand, &[good(Word::InContainer), again(Word::Split)])],
);

/// Shut in the machine, which says so itself.
pub(super) const IN_MACHINE: Step = step(
    StepId::InMachine,
    Hazard::Overflow,
    &[Hold::LookAgain, Hold::Level],
    &[
        look(Item::Lid, &[good(Word::InPlace), not_yet(Word::Off)]).proves(Hold::LookAgain),
        look(Item::MachineTag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::LookAgain),
        TAG_HUNG,
    ],
);

/// Out of the machine, cold, into what it is kept in.
pub(super) const LET_OUT: Step = step(
    StepId::LetOut,
    Hazard::Carrying,
    &[Hold::Temperature, Hold::Container, Hold::Lift],
    &[probe(Item::OilTemp), VESSEL, ROOM, CARRY],
);

/// Sealed, named, on its tray.
pub(super) const WASTE: Step = step(
    StepId::Waste,
    Hazard::Drain,
    &[Hold::Container],
    &[
        look(Item::Lid, &[good(Word::InPlace), not_yet(Word::Off)]).proves(Hold::Container),
        look(Item::WasteLabel, &[good(Word::Seen), not_yet(Word::Missing)]).proves(Hold::Container),
        look(
            Item::Stored,
            &[good(Word::DripTray), not_yet(Word::NoTray), not_yet(Word::NearDrain)],
        )
        .proves(Hold::Container),
    ],
);

/// Before hands go into the empty pan, and how it is cleaned.
pub(super) const CLEAN: Step = step(
    StepId::Clean,
    Hazard::BareHeat,
    &[Hold::HeatOff, Hold::Level],
    &[
        off_sign(0, 1),
        off_sign(1, 1),
        TAG_HUNG,
        look(Item::Cleaned, &[good(Word::Wiped), good(Word::BoilOut)]),
    ],
);

/// The way out of both jobs. "Dry" is dry here: no film is left, for what comes in is fresh.
pub(super) const EXIT: Step = step(
    StepId::Exit,
    Hazard::Steam,
    &[Hold::ClearDry, Hold::Connected],
    &[
        look(Item::Walls, &[good(Word::Wiped), not_yet(Word::ForCold)]).proves(Hold::ClearDry),
        look(
            Item::PanInside,
            &[good(Word::Dry), not_yet(Word::Wet), not_yet(Word::Blocked)],
        )
        .proves(Hold::ClearDry),
        VALVE_SHUT,
    ],
);

/// Another fat than the pan's.
pub(super) const CHANGE_OVER: Step = step(
    StepId::ChangeOver,
    Hazard::Allergen,
    &[Hold::Match],
    &[
        look(Item::AllergenSheet, &[good(Word::Redone), not_yet(Word::Old)]).proves(Hold::Match),
        look(Item::StripClean, &[good(Word::StripCleaned), good(Word::ToClean)]).proves(Hold::Match),
    ],
);

/// Before liquid goes in.
pub(super) const POUR: Step = step(
    StepId::FreshIn,
    Hazard::Lifting,
    &[Hold::Kit, Hold::Floor, Hold::Connected, Hold::ClearDry, Hold::Lift],
    &[VALVE_SHUT, CARRY],
);

/// Before blocks go in.
pub(super) const PACK: Step = step(
    StepId::PackIn,
    Hazard::BareHeat,
    &[
        Hold::Kit,
        Hold::Floor,
        Hold::Connected,
        Hold::ClearDry,
        Hold::Lift,
        Hold::Melt,
    ],
    &[
        VALVE_SHUT,
        CARRY,
        look(Item::Blocks, &[good(Word::CutSmall), not_yet(Word::Whole)]).proves(Hold::Melt),
        look(Item::Packing, &[good(Word::Packed), not_yet(Word::Bridging)]).proves(Hold::Melt),
    ],
);

/// Where it stands now. Below the mark, and the tag stays on.
pub(super) const LEVEL: Step = step(
    StepId::FreshLevel,
    Hazard::BareHeat,
    &[Hold::Level],
    &[
        look(
            Item::Level,
            &[good(Word::Enough), good(Word::JustAbove), good(Word::Below)],
        )
        .proves(Hold::Level),
        look(Item::Tag, &[good(Word::None), good(Word::Hung)]).proves(Hold::Level),
    ],
);

/// An empty pan, or one of water, left as it stands: off, and it says so itself.
pub(super) const LEAVE: Step = step(
    StepId::LeavePan,
    Hazard::BareHeat,
    &[Hold::HeatOff, Hold::Level],
    &[off_sign(0, 1), off_sign(1, 1), TAG_HUNG],
);

/// After an interruption: heat, and what is in the pan.
pub(super) const AGAIN: Step = step(
    StepId::LookAgain,
    Hazard::BareHeat,
    &[Hold::LookAgain],
    &[
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::PanHolds, &[good(Word::Oil), good(Word::Empty), good(Word::Water)]).proves(Hold::LookAgain),
    ],
);
