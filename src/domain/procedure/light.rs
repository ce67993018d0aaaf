//! Light-up: what is looked at before a pan is lit, and the melt of a fat that has set.
//!
//! Common practice, no source: low heat, lid off, the crust open over hot surface and bulb until all is liquid, a look
//! every five minutes; fresh blocks cut small, packed against the surface, never across bare tubes. That the
//! level is asked now rests on cold oil standing about 9 % lower than at 150 °C (density fits after Esteban 2012).

use super::tables::{alone, good, look, not_yet, off_sign};
use super::{Answer, Ask, Block, Hazard, Hold, How, Step, StepId, Verdict};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::run::Fault;

const fn step(id: StepId, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    alone(Block::LightUp, id, hazard, holds, asks)
}

/// Crackling is water under the fat: heat off and stand back.
const WARMING: Ask = look(
    Item::Warming,
    &[
        good(Word::Quiet),
        Answer {
            word: Word::Crackling,
            verdict: Verdict::Fault(Fault::Water),
        },
    ],
);
const LOW: Ask = look(Item::HeatSetting, &[good(Word::Low), not_yet(Word::On)]).proves(Hold::Melt);
/// The thermostat's bulb too: under a crust it reads cold while the film beside the heat burns.
const BULB: Ask = look(Item::Thermostat, &[good(Word::Clear), not_yet(Word::Blocked)]).proves(Hold::Melt);
/// Fresh blocks small and against the hot surface; across bare tubes they leave them dry. Gone: all of them have melted.
const BLOCKS: Ask = look(
    Item::InPan,
    &[good(Word::InPlace), not_yet(Word::Loose), good(Word::Gone)],
)
.proves(Hold::Melt);
const CRUST: Ask = look(Item::Crust, &[good(Word::Open), good(Word::None), not_yet(Word::Solid)]).proves(Hold::Melt);
const TAG_HUNG: Ask = look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]).proves(Hold::Level);
const LEVEL_NOW: Ask = look(
    Item::Level,
    &[good(Word::Enough), good(Word::JustAbove), good(Word::Below)],
)
.proves(Hold::Level);

const FAN: Ask = look(Item::Fan, &[good(Word::On), not_yet(Word::Off)]);
const LID: Ask = look(Item::Lid, &[good(Word::Off), not_yet(Word::InPlace)]).with(1);
const IN_PAN: Ask = look(
    Item::InPan,
    &[good(Word::None), not_yet(Word::Blocked), not_yet(Word::Wet)],
)
.with(1);
const NO_TAG: Ask = look(Item::Tag, &[good(Word::None), not_yet(Word::Hung)]).with(1);
const VALVE: Ask = look(Item::Valve, &[good(Word::Shut), not_yet(Word::Open)]);
/// Asked, never guessed from the log: what was left liquid at night may have set by morning.
const SET_OR_NOT: Ask = look(
    Item::Melt,
    &[good(Word::AllLiquid), good(Word::PartLiquid), good(Word::Solid)],
);

/// Who lights, and stays. Answered by a name as the job is opened.
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

/// What the morning found where a lock-up left scraps outdoors.
pub(super) const FOUND: Step = step(
    StepId::Found,
    Hazard::SelfHeating,
    &[],
    &[look(
        Item::Found,
        &[good(Word::Cold), good(Word::Warm), good(Word::Burnt)],
    )],
);

/// Before a pan of oil is lit.
pub(super) const LOOK: Step = step(
    StepId::LightLook,
    Hazard::BareHeat,
    &[],
    &[FAN, LID, IN_PAN, NO_TAG, VALVE],
);

/// The same for a fat that may have set.
pub(super) const LOOK_SOLID: Step = step(
    StepId::LightLook,
    Hazard::BareHeat,
    &[],
    &[FAN, LID, IN_PAN, NO_TAG, VALVE, SET_OR_NOT],
);

/// The level now, on the same hold as the look. A set fat whose level cannot be read is not above its mark.
pub(super) const LEVEL: Step = Step {
    joins: true,
    ..step(StepId::LightLevel, Hazard::BareHeat, &[Hold::Level], &[LEVEL_NOW])
};

/// A pan found low stays off, and says so itself.
pub(super) const LOW_TAG: Step = step(StepId::LightLevel, Hazard::BareHeat, &[Hold::Level], &[TAG_HUNG]);

/// Full heat, on liquid oil above its mark.
pub(super) const ON: Step = step(
    StepId::LightOn,
    Hazard::BareHeat,
    &[],
    &[look(Item::HeatSetting, &[good(Word::On)])],
);

/// Low heat on set fat.
pub(super) const MELT_LOW: Step = step(
    StepId::MeltLow,
    Hazard::Crust,
    &[Hold::Melt],
    &[LOW, CRUST.with(1), BULB.with(1)],
);

/// The same where blocks went in since the fat was last liquid: they are looked at before any heat.
pub(super) const MELT_BLOCKS: Step = Step {
    asks: &[BLOCKS, LOW, CRUST.with(1), BULB.with(1)],
    ..MELT_LOW
};

/// One look at the melt: what it sounds like first, for that decides whether anybody stays near.
pub(super) const MELT_LOOK: Step = step(
    StepId::MeltLook,
    Hazard::Crust,
    &[Hold::Melt],
    &[
        WARMING,
        LOW.with(1),
        LID.proves(Hold::Melt),
        CRUST.with(2),
        BULB.with(2),
        look(
            Item::Melt,
            &[good(Word::PartLiquid), good(Word::Solid), good(Word::AllLiquid)],
        )
        .proves(Hold::Melt),
    ],
);

/// Before full heat: the level once more, for fat sinks as its hollows close.
pub(super) const MELT_FULL: Step = step(
    StepId::MeltFull,
    Hazard::BareHeat,
    &[Hold::Melt, Hold::Level],
    &[LEVEL_NOW],
);

/// Safe state after crackling, a low level or second thoughts.
pub(super) const OFF: Step = step(
    StepId::LookAgain,
    Hazard::BareHeat,
    &[Hold::LookAgain],
    &[off_sign(0, 1), off_sign(1, 1)],
);

/// The same on a pan that stands low, or empty.
pub(super) const OFF_TAGGED: Step = step(
    StepId::LookAgain,
    Hazard::BareHeat,
    &[Hold::LookAgain],
    &[off_sign(0, 1), off_sign(1, 1), TAG_HUNG],
);
