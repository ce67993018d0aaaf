//! The hot route: an enclosed pumped machine, one table for each way oil leaves the pan.
//!
//! Order and durations are common practice, no source (a body of oil out in 60–90 s, a rinse of at most 30 s on
//! single-pass filters, a return of about a minute). The holds rest on HSE Catering Information Sheet 17 and the
//! cases in its like; heat goes off before anybody leans over the oil.

use super::tables::{good, look, not_yet, off_sign};
use super::{Act, Answer, Ask, Block, Hazard, Hold, How, Part, Step, StepId, Stop, Timer, Verdict};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::Fault;

const fn fault(word: Word, fault: Fault) -> Answer {
    Answer {
        word,
        verdict: Verdict::Fault(fault),
    }
}

const OFF: &[Answer] = &[good(Word::Off)];
const SHUT: &[Answer] = &[good(Word::Shut), not_yet(Word::Open)];
const OPEN: &[Answer] = &[good(Word::Open), not_yet(Word::Shut)];
const CLEAR_DRY: &[Answer] = &[good(Word::ClearDry), not_yet(Word::Wet), not_yet(Word::Blocked)];
const LEAVINGS: &[Answer] = &[good(Word::OnTray), good(Word::None), not_yet(Word::NoTray)];

const fn step(id: StepId, block: Block, hazard: Hazard, stop: Stop) -> Step {
    Step {
        id,
        block,
        hazard,
        holds: &[],
        asks: &[],
        act: Act::Nothing,
        timer: None,
        stop,
        part: Part::Always,
        joins: false,
    }
}

/// Which pan, which fat: the first thing on either route.
pub(super) const MATCH: Step = Step {
    holds: &[Hold::Dry, Hold::Room, Hold::Match],
    asks: &[look(Item::Label, &[good(Word::Same), not_yet(Word::Different)])
        .proves(Hold::Match)
        .with(1)],
    ..step(StepId::Match, Block::PumpOut, Hazard::Allergen, Stop::BeforePump)
};

/// Heat off in two ways, and no smoke, before anybody leans over.
pub(super) const HEAT_OFF: Step = Step {
    holds: &[Hold::HeatOff],
    asks: &[
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::Smoke, &[good(Word::None), not_yet(Word::Smoking)])
            .proves(Hold::HeatOff)
            .with(2),
    ],
    joins: true,
    ..step(StepId::HeatOff, Block::PumpOut, Hazard::BareHeat, Stop::BeforePump)
};

pub(super) const SCRAPE: Step = Step {
    asks: &[look(Item::Walls, &[good(Word::Scraped), good(Word::ForCold)]).with(2)],
    ..step(StepId::Scrape, Block::PumpOut, Hazard::Leaning, Stop::BeforePump)
};

pub(super) const SKIM: Step = Step {
    asks: &[look(Item::Skimmings, LEAVINGS).with(2)],
    ..step(StepId::Skim, Block::PumpOut, Hazard::SelfHeating, Stop::BeforePump)
};

pub(super) const SAMPLE_OUT: Step = Step {
    asks: &[look(Item::Sample, &[good(Word::Taken), good(Word::None)])],
    part: Part::Samples,
    ..step(StepId::SampleOut, Block::PumpOut, Hazard::Carrying, Stop::BeforePump)
};

/// The reading that counts. Off target is passed with a reason; outside the window is not passed at all.
pub(super) const OIL_TEMP: Step = Step {
    holds: &[Hold::Temperature],
    asks: &[
        Ask {
            item: Item::OilTemp,
            how: How::Probe,
            hold: Some(Hold::Temperature),
            together: 0,
            still: false,
        },
        Ask {
            item: Item::OffTarget,
            how: How::OffTarget(&[good(Word::NoTime), good(Word::FatNeeds), good(Word::MachineNeeds)]),
            hold: None,
            together: 0,
            still: false,
        },
    ],
    ..step(StepId::OilTemp, Block::PumpOut, Hazard::WrongTemp, Stop::BeforePump)
};

/// What must stand before oil leaves a pan by pump or drain: every hold of Ready unbroken, a fresh reading, heat
/// off, the line secured, and for solid fat a warm machine.
const BEFORE_DRAW: &[Hold] = &[
    Hold::Person,
    Hold::Kit,
    Hold::Floor,
    Hold::Dry,
    Hold::Room,
    Hold::Match,
    Hold::Temperature,
    Hold::HeatOff,
    Hold::Connected,
    Hold::WarmUp,
];

const CONNECT: Step = Step {
    holds: BEFORE_DRAW,
    act: Act::StartDraw,
    ..step(StepId::Connect, Block::PumpOut, Hazard::Jump, Stop::BeforePump)
};

const CONNECT_NOZZLE: Step = Step {
    asks: &[
        look(Item::Nozzle, &[good(Word::InCorner), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(3),
        look(Item::Valve, SHUT).proves(Hold::Connected).with(3),
    ],
    ..CONNECT
};

/// The drain valve opens to empty the pan, so pipe and tank are what must be seen first.
const CONNECT_DRAIN: Step = Step {
    asks: &[
        look(Item::Pipe, &[good(Word::Locked), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(3),
        look(Item::TankPlace, &[good(Word::InPlace), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(3),
    ],
    ..CONNECT
};

const CONNECT_BUILT_IN: Step = Step {
    asks: &[look(Item::TankPlace, &[good(Word::InPlace), not_yet(Word::Loose)])
        .proves(Hold::Connected)
        .with(3)],
    ..CONNECT
};

const DRAW: Step = Step {
    asks: &[look(Item::Pump, OFF)],
    act: Act::EndDraw,
    timer: Some(Timer::Expect { from_s: 60, to_s: 90 }),
    ..step(StepId::Draw, Block::PumpOut, Hazard::Jump, Stop::Alone)
};

const REMAINDER: Step = Step {
    asks: &[look(
        Item::Remainder,
        &[
            good(Word::Film),
            Answer {
                word: Word::Oil,
                verdict: Verdict::Again,
            },
            fault(Word::Slow, Fault::SlowDraw),
        ],
    )],
    ..step(StepId::Remainder, Block::PumpOut, Hazard::Leaning, Stop::Alone)
};

/// Heat still off before a wad goes near the wall; the wiping itself is looked at by "clear and dry" before oil comes.
pub(super) const WIPE: Step = Step {
    holds: &[Hold::HeatOff],
    asks: &[off_sign(0, 1), off_sign(1, 1)],
    part: Part::Wipe,
    ..step(StepId::Wipe, Block::Return, Hazard::HotWall, Stop::BeforeWipe)
};

const BEFORE_OIL_COMES: &[Hold] = &[Hold::Person, Hold::Kit, Hold::HeatOff, Hold::Connected, Hold::ClearDry];

const RINSE: Step = Step {
    holds: BEFORE_OIL_COMES,
    act: Act::StartRinse,
    part: Part::Rinse,
    ..step(StepId::Rinse, Block::Return, Hazard::Jump, Stop::BeforeRinse)
};

const CLAMPED: &[Answer] = &[good(Word::Clamped), not_yet(Word::Loose)];

const RINSE_NOZZLE: Step = Step {
    asks: &[
        look(Item::PanInside, CLEAR_DRY).proves(Hold::ClearDry).with(2),
        off_sign(0, 1),
        off_sign(1, 1),
        // With a nozzle nobody touches the valve: it stands as it was seen before the draw.
        look(Item::Valve, SHUT).proves(Hold::Connected).with(1).still(),
        look(Item::Nozzle, CLAMPED).proves(Hold::Connected).with(2),
    ],
    ..RINSE
};

/// These machines rinse with the valve open, so that the oil goes round.
const RINSE_OPEN: Step = Step {
    asks: &[
        look(Item::PanInside, CLEAR_DRY).proves(Hold::ClearDry).with(2),
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::TankPlace, &[good(Word::InPlace), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(1)
            .still(),
        look(Item::Valve, OPEN).proves(Hold::Connected).with(2),
    ],
    ..RINSE
};

const RINSING: Step = Step {
    asks: &[look(Item::Pump, OFF)],
    act: Act::EndRinse,
    timer: Some(Timer::Rinse),
    part: Part::Rinse,
    ..step(StepId::Rinsing, Block::Return, Hazard::Jump, Stop::Alone)
};

/// Taken, and at once held beside the first: the answer to [`COMPARE`] says both.
pub(super) const SAMPLE_BACK: Step = Step {
    part: Part::Samples,
    ..step(StepId::SampleBack, Block::Return, Hazard::Carrying, Stop::Alone)
};

/// Fat that stood in the machine since another run is melted there first; else no warm-up stands before a return.
const BEFORE_RETURN: &[Hold] = &[
    Hold::Person,
    Hold::Kit,
    Hold::HeatOff,
    Hold::Connected,
    Hold::ClearDry,
    Hold::WarmUp,
];

const GIVE_BACK: Step = Step {
    holds: BEFORE_RETURN,
    act: Act::StartReturn,
    ..step(StepId::GiveBack, Block::Return, Hazard::OpenValve, Stop::BeforeReturn)
};

const GIVE_BACK_NOZZLE: Step = Step {
    asks: &[
        look(Item::Valve, SHUT).proves(Hold::Connected).with(2),
        look(Item::PanInside, CLEAR_DRY).proves(Hold::ClearDry).with(2),
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::Nozzle, CLAMPED).proves(Hold::Connected).with(1).still(),
    ],
    ..GIVE_BACK
};

const GIVE_BACK_DRAIN: Step = Step {
    asks: &[
        look(Item::Valve, SHUT).proves(Hold::Connected).with(2),
        look(Item::PanInside, CLEAR_DRY).proves(Hold::ClearDry).with(2),
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::Pipe, &[good(Word::Locked), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(1)
            .still(),
    ],
    ..GIVE_BACK
};

const GIVE_BACK_BUILT_IN: Step = Step {
    asks: &[
        look(Item::Valve, SHUT).proves(Hold::Connected).with(2),
        look(Item::PanInside, CLEAR_DRY).proves(Hold::ClearDry).with(2),
        off_sign(0, 1),
        off_sign(1, 1),
        look(Item::TankPlace, &[good(Word::InPlace), not_yet(Word::Loose)])
            .proves(Hold::Connected)
            .with(1)
            .still(),
    ],
    ..GIVE_BACK
};

const RETURNING: Step = Step {
    asks: &[look(Item::Pump, OFF)],
    act: Act::EndReturn,
    timer: Some(Timer::Expect { from_s: 45, to_s: 75 }),
    ..step(StepId::Returning, Block::Return, Hazard::Jump, Stop::Alone)
};

/// Oil left in the tank breaks "machine empty" until it is seen empty again.
const TANK: Step = Step {
    asks: &[look(Item::Tank, &[good(Word::Empty), good(Word::Oil)]).with(4)],
    ..step(StepId::Tank, Block::Return, Hazard::Overflow, Stop::BeforeLeaving)
};

pub(super) const LEVEL: Step = Step {
    asks: &[look(
        Item::Level,
        &[good(Word::Enough), good(Word::JustAbove), good(Word::Below)],
    )
    .proves(Hold::Level)
    .with(4)],
    ..step(StepId::Level, Block::Return, Hazard::BareHeat, Stop::BeforeLeaving)
};

pub(super) const COMPARE: Step = Step {
    asks: &[look(
        Item::Compared,
        &[
            good(Word::Better),
            good(Word::Same),
            good(Word::Worse),
            // There is no second one: seldom said, and the screen keeps it aside.
            good(Word::None),
        ],
    )],
    part: Part::Samples,
    joins: true,
    ..step(StepId::Compare, Block::Return, Hazard::Carrying, Stop::Alone)
};

pub(super) const LEAVE: Step = Step {
    holds: &[Hold::Level],
    asks: &[
        Ask {
            item: Item::Tag,
            how: How::TagIfLow(&[good(Word::Hung), not_yet(Word::Missing)]),
            hold: Some(Hold::Level),
            together: 0,
            still: false,
        },
        look(Item::Left, &[good(Word::Off), good(Word::Relit), good(Word::Set)]).with(4),
    ],
    act: Act::Leave,
    ..step(StepId::Leave, Block::Return, Hazard::BareHeat, Stop::BeforeLeaving)
};

/// Lifted by a nozzle from above.
pub(super) const NOZZLE: &[Step] = &[
    MATCH,
    HEAT_OFF,
    SCRAPE,
    SKIM,
    SAMPLE_OUT,
    OIL_TEMP,
    CONNECT_NOZZLE,
    DRAW,
    REMAINDER,
    WIPE,
    RINSE_NOZZLE,
    RINSING,
    SAMPLE_BACK,
    COMPARE,
    GIVE_BACK_NOZZLE,
    RETURNING,
    TANK,
    LEVEL,
    LEAVE,
];

/// Drained through the valve to a portable machine.
pub(super) const DRAIN: &[Step] = &[
    MATCH,
    HEAT_OFF,
    SCRAPE,
    SKIM,
    SAMPLE_OUT,
    OIL_TEMP,
    CONNECT_DRAIN,
    DRAW,
    REMAINDER,
    WIPE,
    RINSE_OPEN,
    RINSING,
    SAMPLE_BACK,
    COMPARE,
    GIVE_BACK_DRAIN,
    RETURNING,
    TANK,
    LEVEL,
    LEAVE,
];

/// Drained to a machine built into the range.
pub(super) const BUILT_IN: &[Step] = &[
    MATCH,
    HEAT_OFF,
    SCRAPE,
    SKIM,
    SAMPLE_OUT,
    OIL_TEMP,
    CONNECT_BUILT_IN,
    DRAW,
    REMAINDER,
    WIPE,
    RINSE_OPEN,
    RINSING,
    SAMPLE_BACK,
    COMPARE,
    GIVE_BACK_BUILT_IN,
    RETURNING,
    TANK,
    LEVEL,
    LEAVE,
];
