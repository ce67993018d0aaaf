//! Ready: who, kit, floor, and the machine built, dry and empty. What it proves stays proved until broken.
//!
//! Looks that share a number are one answer for who has earned the short form; see `guide::state::FilterJob::is_short`.

use super::tables::{alone, good, look, not_yet};
use super::{Ask, Block, Hazard, Hold, How, Step, StepId};
use crate::domain::evidence::{Item, Word};

pub(super) const WORN: &[super::Answer] = &[good(Word::Worn), not_yet(Word::Missing)];
pub(super) const DRY: &[super::Answer] = &[good(Word::Dry), not_yet(Word::Wet)];

const fn ready(id: StepId, hazard: Hazard, holds: &'static [Hold], asks: &'static [Ask]) -> Step {
    alone(Block::Ready, id, hazard, holds, asks)
}

/// The steps of Ready.
pub(super) const READY: &[Step] = &[
    ready(
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
    ),
    ready(
        StepId::Kit,
        Hazard::Splash,
        &[Hold::Kit],
        &[
            look(Item::Gloves, WORN).proves(Hold::Kit).with(1),
            look(Item::Face, WORN).proves(Hold::Kit).with(1),
            look(Item::Apron, WORN).proves(Hold::Kit).with(1),
            look(Item::Sleeves, WORN).proves(Hold::Kit).with(1),
            look(Item::Shoes, WORN).proves(Hold::Kit).with(1),
        ],
    ),
    ready(
        StepId::Floor,
        Hazard::Slip,
        &[Hold::Floor],
        &[
            look(Item::Floor, DRY).proves(Hold::Floor).with(1),
            look(Item::Way, &[good(Word::Clear), not_yet(Word::Blocked)])
                .proves(Hold::Floor)
                .with(1),
            look(Item::Extinguisher, &[good(Word::Seen), not_yet(Word::Missing)])
                .proves(Hold::Floor)
                .with(1),
        ],
    ),
    ready(
        StepId::Machine,
        Hazard::Allergen,
        &[Hold::Match],
        &[
            Ask {
                item: Item::Machine,
                how: How::Machine,
                hold: None,
                together: 0,
                still: false,
            },
            // Yes and not known are honest answers: they close the machine to claimed pans, not the job.
            look(
                Item::UsedSince,
                &[good(Word::No), good(Word::Yes), good(Word::NotKnown)],
            )
            .proves(Hold::Match),
        ],
    ),
    ready(
        StepId::Dry,
        Hazard::Steam,
        &[Hold::Dry],
        &[
            look(Item::Filter, DRY).proves(Hold::Dry).with(1),
            look(Item::TankInside, DRY).proves(Hold::Dry).with(1),
            look(Item::Hose, DRY).proves(Hold::Dry).with(1),
            look(Item::Sound, &[good(Word::Whole), not_yet(Word::Damaged)]).proves(Hold::Dry),
        ],
    ),
    ready(
        StepId::Empty,
        Hazard::Overflow,
        &[Hold::Room],
        &[look(Item::Tank, &[good(Word::Empty), not_yet(Word::Oil)]).proves(Hold::Room)],
    ),
    ready(
        StepId::SoundCheck,
        Hazard::Unheard,
        &[],
        // No is a run by eye only; it is recorded, not refused.
        &[look(Item::Heard, &[good(Word::Yes), good(Word::No)])],
    ),
    // Only where fat may have set in the line: the machine's own melt, looked at when its warm-up is over.
    ready(
        StepId::WarmUp,
        Hazard::SetInLine,
        &[Hold::WarmUp],
        &[
            look(Item::Line, &[good(Word::AllLiquid), not_yet(Word::Solid)]).proves(Hold::WarmUp),
            look(Item::Sound, &[good(Word::Whole), not_yet(Word::Damaged)]).proves(Hold::WarmUp),
        ],
    ),
];
