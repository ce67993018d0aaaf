//! The cold route: emptying by hand, at or under 40 °C by probe (HSE Catering Information Sheet 17).

use super::hot::{COMPARE, HEAT_OFF, LEAVE, LEVEL, MATCH as HOT_MATCH, SAMPLE_BACK, SAMPLE_OUT, SCRAPE, SKIM, WIPE};
use super::tables::{good, look, not_yet, off_sign};
use super::{Act, Ask, Block, Hazard, Hold, How, Part, Step, StepId, Stop};
use crate::domain::evidence::{Item, Word};

/// No machine to be dry or large enough; the container is asked about where it stands.
const MATCH: Step = Step {
    holds: &[Hold::Match],
    ..HOT_MATCH
};

const OIL_TEMP: Step = Step {
    holds: &[Hold::Temperature],
    asks: &[Ask {
        item: Item::OilTemp,
        how: How::Probe,
        hold: Some(Hold::Temperature),
        together: 0,
        still: false,
    }],
    ..super::hot::OIL_TEMP
};

const CONTAINER: Step = Step {
    id: StepId::Container,
    block: Block::PumpOut,
    hazard: Hazard::Carrying,
    holds: &[
        Hold::Person,
        Hold::Kit,
        Hold::Floor,
        Hold::Match,
        Hold::Temperature,
        Hold::HeatOff,
        Hold::Container,
    ],
    asks: &[
        look(Item::Container, &[good(Word::MetalDry), not_yet(Word::Unfit)])
            .proves(Hold::Container)
            .with(3),
        look(Item::Room, &[good(Word::Enough), not_yet(Word::Short)])
            .proves(Hold::Container)
            .with(3),
    ],
    act: Act::StartHand,
    timer: None,
    stop: Stop::BeforePump,
    part: Part::Always,
    joins: false,
};

const EMPTY_BY_HAND: Step = Step {
    id: StepId::EmptyByHand,
    holds: &[],
    asks: &[look(Item::ByHand, &[good(Word::InContainer)])],
    act: Act::EndHand,
    stop: Stop::Alone,
    ..CONTAINER
};

const POUR_BACK: Step = Step {
    id: StepId::PourBack,
    block: Block::Return,
    hazard: Hazard::OpenValve,
    holds: &[Hold::Person, Hold::Kit, Hold::HeatOff, Hold::Connected, Hold::ClearDry],
    asks: &[
        look(Item::Valve, &[good(Word::Shut), not_yet(Word::Open)])
            .proves(Hold::Connected)
            .with(2),
        look(
            Item::PanInside,
            &[good(Word::ClearDry), not_yet(Word::Wet), not_yet(Word::Blocked)],
        )
        .proves(Hold::ClearDry)
        .with(1),
        off_sign(0, 1),
        off_sign(1, 1),
    ],
    act: Act::StartPour,
    timer: None,
    stop: Stop::BeforeReturn,
    part: Part::Always,
    joins: false,
};

const POURING: Step = Step {
    id: StepId::Pouring,
    holds: &[],
    asks: &[look(Item::ByHand, &[good(Word::InPan)])],
    act: Act::EndPour,
    stop: Stop::Alone,
    ..POUR_BACK
};

/// By hand.
pub(super) const HAND: &[Step] = &[
    MATCH,
    HEAT_OFF,
    SCRAPE,
    SKIM,
    SAMPLE_OUT,
    OIL_TEMP,
    CONTAINER,
    EMPTY_BY_HAND,
    WIPE,
    SAMPLE_BACK,
    COMPARE,
    POUR_BACK,
    POURING,
    LEVEL,
    LEAVE,
];
