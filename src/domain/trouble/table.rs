//! Each trouble as data: what it is about, what it stops while it stands, what must be seen to be safe, and to be over.
//!
//! What each stops, and that nothing but a look ends it, is a project default on the grounds named with each; the words
//! of its card and their sources stand in the words.

use crate::domain::evidence::{Item, Word};
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::procedure::{Answer, Hold, Verdict};

/// What a trouble is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// The whole kitchen.
    Kitchen,
    /// One pan.
    Pan,
    /// One machine.
    Machine,
}

/// Something to be looked at, and its answers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// What.
    pub item: Item,
    /// The answers.
    pub answers: &'static [Answer],
}

/// A trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// What it is about.
    pub of: Of,
    /// Whether it stops oil from leaving its pan.
    pub draw: bool,
    /// Whether it stops heat.
    pub heat: bool,
    /// The holds of Ready it breaks.
    pub breaks: &'static [Hold],
    /// What must be seen to be safe.
    pub safe: &'static [Look],
    /// What must be seen before it is over.
    pub over: &'static [Look],
    /// Whether it is over only by a named person's work.
    pub mended_by: bool,
}

const fn look(item: Item, answers: &'static [Answer]) -> Look {
    Look { item, answers }
}

const fn good(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::Good,
    }
}

const fn not_yet(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::NotYet,
    }
}

const PANS_OFF: Look = look(Item::Pans, &[good(Word::Off), not_yet(Word::On)]);
const PLUG_OUT: Look = look(Item::MachinePlug, &[good(Word::Out), not_yet(Word::InPlace)]);
const TAG: Look = look(Item::Tag, &[good(Word::Hung), not_yet(Word::Missing)]);
const LID: Look = look(Item::Lid, &[good(Word::InPlace), not_yet(Word::Missing)]);
const HEAT_OFF: Look = look(Item::HeatSetting, &[good(Word::Off), not_yet(Word::On)]);
const PUMP_OFF: Look = look(Item::Pump, &[good(Word::Off), not_yet(Word::Running)]);
const FLOOR: Look = look(Item::Floor, &[good(Word::Dry), not_yet(Word::Wet)]);
const WAY: Look = look(Item::Way, &[good(Word::Clear), not_yet(Word::Blocked)]);
const CARRIED: Look = look(Item::Carried, &[good(Word::None), not_yet(Word::Oil)]);

const PLAIN: Row = Row {
    of: Of::Kitchen,
    draw: false,
    heat: false,
    breaks: &[],
    safe: &[],
    over: &[],
    mended_by: false,
};

/// Pump, fan and gas valve drop together, and electric pans may start again by themselves (common practice, no source).
const POWER_CUT: Row = Row {
    draw: true,
    heat: true,
    safe: &[PANS_OFF, PLUG_OUT, TAG, CARRIED],
    over: &[PANS_OFF, look(Item::Fan, &[good(Word::On), not_yet(Word::Off)])],
    ..PLAIN
};

/// A machine left broken for two months ended in hot oil carried in open pots (WorkSafe Victoria, 2023).
const MACHINE_DOWN: Row = Row {
    of: Of::Machine,
    draw: true,
    breaks: &[Hold::Dry, Hold::Room, Hold::Match],
    safe: &[
        PLUG_OUT,
        TAG,
        look(Item::Left, &[good(Word::Set), good(Word::Off)]),
        LID,
        CARRIED,
    ],
    mended_by: true,
    ..PLAIN
};

/// A cut-out that trips by itself says that the thermostat has failed (from memory: a manual reset in the standards).
const CUT_OUT: Row = Row {
    of: Of::Pan,
    heat: true,
    safe: &[HEAT_OFF, LID, TAG],
    mended_by: true,
    ..PLAIN
};

/// Soaked up with absorbent, never wet-mopped; the floor fully clean and dry (HSE, Stop slips in kitchens; HSE Catering
/// Information Sheet 17).
const SPILL: Row = Row {
    draw: true,
    heat: true,
    breaks: &[Hold::Floor],
    safe: &[PUMP_OFF, PANS_OFF, WAY],
    over: &[FLOOR, WAY],
    ..PLAIN
};

/// Smoke means too hot: heat off, let it cool, add nothing (Bedfordshire Fire and Rescue, Chip pan fires).
const SMOKE: Row = Row {
    of: Of::Pan,
    draw: true,
    heat: true,
    safe: &[HEAT_OFF],
    over: &[look(Item::Smoke, &[good(Word::None), not_yet(Word::Smoking)]), HEAT_OFF],
    ..PLAIN
};

/// A second person in the building before pumps (project default).
const ALONE: Row = Row {
    draw: true,
    safe: &[PUMP_OFF, CARRIED],
    over: &[look(Item::Second, &[good(Word::Seen), not_yet(Word::Missing)])],
    ..PLAIN
};

/// The pan is not serving and nobody else is within reach while oil moves (project default).
const COUNTER_OPENS: Row = Row {
    draw: true,
    breaks: &[Hold::Floor],
    safe: &[
        PUMP_OFF,
        look(
            Item::Place,
            &[good(Word::InPan), not_yet(Word::Split), not_yet(Word::InMachine)],
        ),
        PLUG_OUT,
    ],
    over: &[FLOOR, WAY],
    ..PLAIN
};

/// What stood for days is looked at before it is heated (common practice, no source).
const SHUT: Row = Row {
    draw: true,
    heat: true,
    breaks: &[Hold::Dry, Hold::Floor],
    safe: &[
        PANS_OFF,
        PLUG_OUT,
        LID,
        look(Item::Scraps, &[good(Word::Cold), good(Word::None), not_yet(Word::Warm)]),
    ],
    over: &[
        look(Item::UnderOil, &[good(Word::Dry), not_yet(Word::Wet)]),
        look(Item::Pests, &[good(Word::None), not_yet(Word::Seen)]),
        look(Item::Smell, &[good(Word::Clear), not_yet(Word::Different)]),
        look(Item::Probe, &[good(Word::Same), not_yet(Word::Different)]),
        look(Item::Extinguisher, &[good(Word::Seen), not_yet(Word::Missing)]),
    ],
    ..PLAIN
};

/// What is known of a trouble.
#[must_use]
pub const fn row(what: TroubleKind) -> &'static Row {
    match what {
        TroubleKind::PowerCut => &POWER_CUT,
        TroubleKind::MachineDown => &MACHINE_DOWN,
        TroubleKind::CutOut => &CUT_OUT,
        TroubleKind::Spill => &SPILL,
        TroubleKind::Smoke => &SMOKE,
        TroubleKind::Alone => &ALONE,
        TroubleKind::CounterOpens => &COUNTER_OPENS,
        TroubleKind::Shut => &SHUT,
    }
}
