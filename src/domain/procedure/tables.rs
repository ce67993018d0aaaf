//! All step tables together, as one value: tests explore the guide with a table that lacks one hold.

use super::{Act, Answer, Ask, Block, Hazard, Hold, How, Part, Step, StepId, Stop, Verdict, away, cold, hot, ready};
use crate::domain::evidence::{Item, Word};
use crate::domain::facts::setup::{OutBy, Route};

/// The step tables the guide runs by.
#[derive(Clone, Copy, Debug)]
pub struct Tables {
    /// Before the first pan.
    pub ready: &'static [Step],
    /// Hot, lifted by a nozzle.
    pub nozzle: &'static [Step],
    /// Hot, drained to a portable machine.
    pub drain: &'static [Step],
    /// Hot, drained to a built-in machine.
    pub built_in: &'static [Step],
    /// By hand, at or under 40 °C.
    pub hand: &'static [Step],
    /// After a stop, a fault or an interruption.
    pub again: &'static [Step],
    /// The same on the cold route.
    pub again_hand: &'static [Step],
    /// After the last pan.
    pub away: &'static [Step],
    /// The line after a fat that sets.
    pub line_solid: &'static Step,
    /// A pan of solid fat left to set after a fault.
    pub leave_set: &'static Step,
}

impl Tables {
    /// The tables as they are.
    pub const REAL: Self = Self {
        ready: ready::READY,
        nozzle: hot::NOZZLE,
        drain: hot::DRAIN,
        built_in: hot::BUILT_IN,
        hand: cold::HAND,
        again: away::AGAIN,
        again_hand: away::AGAIN_HAND,
        away: away::AWAY,
        line_solid: &away::LINE_SOLID,
        leave_set: &away::LEAVE_SET,
    };

    /// The steps of one pan's run.
    #[must_use]
    pub const fn run(&self, route: Route, out_by: OutBy) -> &'static [Step] {
        match (route, out_by) {
            (Route::Cold, _) | (Route::Hot, OutBy::Hand) => self.hand,
            (Route::Hot, OutBy::Nozzle) => self.nozzle,
            (Route::Hot, OutBy::Drain) => self.drain,
            (Route::Hot, OutBy::BuiltIn) => self.built_in,
        }
    }
}

/// A step that stands between stops: always there, without a clock, and nothing is set in motion by it.
pub(super) const fn alone(
    block: Block,
    id: StepId,
    hazard: Hazard,
    holds: &'static [Hold],
    asks: &'static [Ask],
) -> Step {
    Step {
        id,
        block,
        hazard,
        holds,
        asks,
        act: Act::Nothing,
        timer: None,
        stop: Stop::Alone,
        part: Part::Always,
        joins: false,
    }
}

/// As it must be.
pub(super) const fn good(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::Good,
    }
}

/// Put it right first.
pub(super) const fn not_yet(word: Word) -> Answer {
    Answer {
        word,
        verdict: Verdict::NotYet,
    }
}

/// A look.
pub(super) const fn look(item: Item, answers: &'static [Answer]) -> Ask {
    Ask {
        item,
        how: How::Look(answers),
        hold: None,
        together: 0,
        still: false,
    }
}

impl Ask {
    /// The same question as evidence for a hold.
    pub(super) const fn proves(mut self, hold: Hold) -> Self {
        self.hold = Some(hold);
        self
    }

    /// The same question, in the short form answered together with others of that number.
    pub(super) const fn with(mut self, together: u8) -> Self {
        self.together = together;
        self
    }

    /// The same question, in the long form too answered with the others of its number once each was seen so.
    pub(super) const fn still(mut self) -> Self {
        self.still = true;
        self
    }
}

/// The two signs of heat off, answered together as `group` in the short form, and once seen so in the long form too.
pub(super) const fn off_sign(which: usize, group: u8) -> Ask {
    Ask {
        item: Item::Knob,
        how: How::OffSign(which),
        hold: Some(Hold::HeatOff),
        together: group,
        still: true,
    }
}
