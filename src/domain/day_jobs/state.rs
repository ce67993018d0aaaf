//! What is known of the day's two jobs, folded from their entries.

use super::{FRESH_MS, LOOK_MS, SCRAPS_WAIT_MS};
use crate::domain::evidence::Word;
use crate::domain::facts::run::Heat;
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::sorted::{SortedMap, SortedSet};
use crate::domain::time::{Millis, Now};
use crate::domain::wait::{Standing, Wait};

/// Everything the day's jobs remember.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct DayState {
    /// The open light-up.
    pub light: Option<LightUp>,
    /// The open lock-up.
    pub lock: Option<LockUp>,
    /// Lock-ups people left with a look still owed, oldest first.
    pub owed: Vec<Owed>,
    /// Pans whose filter run is open.
    pub(super) in_run: SortedSet<PanId>,
    /// Pans whose oil change or boil-out is open.
    pub(super) in_job: SortedSet<PanId>,
    /// Whether something was fried or filtered since the last lock-up.
    pub(super) worked: bool,
    /// When the last lock-up was ended or left.
    pub(super) locked_at: Option<Millis>,
}

/// A light-up.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct LightUp {
    /// Its id.
    pub job: JobId,
    /// Who lights, and stays.
    pub who: Option<PersonId>,
    /// The pans begun so far.
    pub pans: SortedMap<PanId, LightPan>,
}

/// Where the lighting of one pan stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// To be looked at before anything else.
    Look,
    /// Found low: its tag is to be hung.
    LowTag,
    /// Set fat: low heat and crust are next.
    MeltLow,
    /// On low heat; looked at every five minutes.
    Melting,
    /// Seen all liquid; the level is next.
    MeltFull,
    /// Full heat may go on.
    On,
    /// Lit.
    Lit,
    /// Heat is to be seen off.
    MakeSafe,
    /// Not lit, because it stands low; tagged.
    LeftLow,
}

/// One pan in a light-up.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct LightPan {
    /// The stage its last entry left it at; [`LightPan::stage_at`] says which is asked now.
    pub stage: Stage,
    /// What its heat does.
    pub heat: Heat,
    /// The level seen last.
    pub level: Option<Word>,
    /// How much of its fat was seen liquid, where that was asked.
    pub melt: Option<Word>,
    /// Whether it is, or was, on low heat in this light-up.
    pub low: bool,
    /// How long what was seen last counts.
    pub(super) seen: Wait,
    /// When the next look at the melt is due.
    pub(super) look: Option<Wait>,
}

impl LightPan {
    pub(super) fn begun(seen: Wait) -> Self {
        Self {
            stage: Stage::Look,
            heat: Heat::Unknown,
            level: None,
            melt: None,
            low: false,
            seen,
            look: None,
        }
    }

    /// What is asked now: a look more than five minutes old, across a reload, or of an age nobody knows, is taken
    /// again before heat goes up.
    #[must_use]
    pub fn stage_at(&self, now: &Now) -> Stage {
        let stale = !self.seen.is_within(now);
        match self.stage {
            Stage::MeltFull | Stage::On if stale && self.low => Stage::Melting,
            Stage::MeltLow | Stage::On if stale => Stage::Look,
            Stage::Look
            | Stage::LowTag
            | Stage::MeltLow
            | Stage::Melting
            | Stage::MeltFull
            | Stage::On
            | Stage::Lit
            | Stage::MakeSafe
            | Stage::LeftLow => self.stage,
        }
    }

    /// Where the wait for the next look at the melt stands; a clock nobody can trust means look now.
    #[must_use]
    pub fn next_look(&self, now: &Now) -> Option<Standing> {
        let melting = matches!(self.stage, Stage::Melting | Stage::MeltFull) || (self.stage == Stage::On && self.low);
        self.look.filter(|_| melting).map(|wait| wait.standing(now))
    }

    /// Whether heat may be on under it while it is not yet lit.
    #[must_use]
    pub fn is_half_lit(&self) -> bool {
        match self.stage {
            Stage::Melting | Stage::MeltFull | Stage::MakeSafe | Stage::LowTag => true,
            Stage::On => self.low,
            Stage::Look | Stage::MeltLow | Stage::Lit | Stage::LeftLow => false,
        }
    }
}

/// A lock-up.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct LockUp {
    /// Its id.
    pub job: JobId,
    /// Who locks up.
    pub who: Option<PersonId>,
    /// The first reading of the heap that counts, tenths of a degree Celsius.
    pub heap: Option<i32>,
    /// Ten minutes from that reading.
    pub wait: Option<Wait>,
    /// The last reading, where it did not count, tenths of a degree Celsius: too warm, or risen since the first.
    pub warm: Option<i32>,
    /// What became of the scraps, once hold 12 is proved.
    pub scraps: Option<ScrapsAre>,
    /// Whether the floor was seen dry.
    pub floor: bool,
    /// Pans seen off and lidded.
    pub pans: SortedSet<PanId>,
    /// Whether a heap was probed at all.
    pub(super) probed: bool,
}

/// How hold 12 was proved.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ScrapsAre {
    /// There are none.
    None,
    /// Probed cold twice.
    Cold,
    /// Thin outdoors, with a named look.
    Out {
        /// Who looks.
        looker: Option<PersonId>,
        /// When.
        next_look: Option<Millis>,
    },
}

/// A look owed for scraps left outdoors.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Owed {
    /// The lock-up that was left open.
    pub job: JobId,
    /// Who owes the look.
    pub looker: Option<PersonId>,
    /// When it is due.
    pub next_look: Option<Millis>,
    /// What the last look found, if one was taken that did not find them cold.
    pub found: Option<Word>,
    /// The light-up that has asked already.
    pub(super) asked_by: Option<JobId>,
}

impl Owed {
    /// Whether the look is due or late.
    #[must_use]
    pub fn is_due(&self, wall: Millis) -> bool {
        self.next_look.is_none_or(|due| wall >= due)
    }
}

const fn wait(duration_ms: i64, rec: Millis, lived: Option<&Now>) -> Wait {
    match lived {
        Some(now) => Wait::begin(duration_ms, now),
        None => Wait::recalled(duration_ms, rec),
    }
}

pub(super) const fn fresh_wait(rec: Millis, lived: Option<&Now>) -> Wait {
    wait(FRESH_MS, rec, lived)
}

pub(super) const fn look_wait(rec: Millis, lived: Option<&Now>) -> Wait {
    wait(LOOK_MS, rec, lived)
}

pub(super) const fn scraps_wait(rec: Millis, lived: Option<&Now>) -> Wait {
    wait(SCRAPS_WAIT_MS, rec, lived)
}
