//! One batch of oil in one pan: how it began, everything that happened to it, how it ended.

use crate::domain::facts::job::Grade;
use crate::domain::facts::oil::{Age, PartChange, Reading, Service, Sign, TopUp, Vessel};
use crate::domain::fat::Fat;
use crate::domain::ids::{EntryId, MachineId, PanId, RunId};
use crate::domain::print::Print;
use crate::domain::time::{Day, Millis};
use crate::domain::units::Volume;

/// One batch of oil in one pan, from fresh to change.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanFill {
    /// The pan.
    pub pan: PanId,
    /// The entry it began with.
    pub began: EntryId,
    /// When it began.
    pub at: Millis,
    /// The trading day it began on.
    pub day: Day,
    /// The fat it is: what it was filled with, a blend once another was moved in.
    pub fat: Fat,
    /// The fat it was filled with.
    pub filled_with: Fat,
    /// How old the oil was when it came in.
    pub age: Age,
    /// What was filled in.
    pub first: Volume,
    /// What the pan should hold now, at 20 °C: what went in less what went out, never above the pan's full mark,
    /// because what a top-up brings above it left with the food.
    pub volume: Volume,
    /// Minutes hot so far.
    pub fry_min: u32,
    /// What happened to it, in oil order.
    pub events: Vec<OilEvent>,
    /// When all of it stood out of its pan, cold for the log: from when, and until when unless it does still.
    pub cold: Vec<(Millis, Option<Millis>)>,
    /// How it ended; `None` while it is in the pan, or parked in a machine.
    pub ended: Option<FillEnd>,
    /// The print of all of this, as the ledger holds it: it changes with any entry or correction that touches it, and
    /// with nothing else.
    pub print: Print,
}

impl PanFill {
    /// Whether it is in its pan, or no further than a run has it: not ended, and not parked as a whole.
    #[must_use]
    pub fn is_in_pan(&self) -> bool {
        self.ended.is_none() && self.cold.last().is_none_or(|(_, until)| until.is_some())
    }

    /// Whether all of it stood out of its pan at a moment.
    #[must_use]
    pub fn is_cold(&self, at: Millis) -> bool {
        let stood = |(from, until): &(Millis, Option<Millis>)| *from <= at && until.is_none_or(|until| at < until);
        self.cold.iter().any(stood)
    }

    /// Whether the last that went in or out was moved, and left less than `min`.
    #[must_use]
    pub fn is_left_under(&self, min: Volume) -> bool {
        let last = self.events.iter().rev().find(|event| event.what.is_in_or_out());
        last.is_some_and(|event| match &event.what {
            Happened::MovedOut { .. } | Happened::MovedIn { .. } | Happened::Returned { .. } => event.volume < min,
            Happened::TopUp(_)
            | Happened::PartChange(_)
            | Happened::Service(_)
            | Happened::Reading(_)
            | Happened::Sign(_)
            | Happened::Noted(_)
            | Happened::Filtered(_) => false,
        })
    }

    /// Hours hot so far.
    #[must_use]
    pub fn hours_hot(&self) -> f64 {
        f64::from(self.fry_min) / 60.0
    }

    /// The day the oil was fresh; `None` when nobody knows.
    #[must_use]
    pub const fn fresh_on(&self) -> Option<Day> {
        match self.age {
            Age::Fresh => Some(self.day),
            Age::Since(day) => Some(day),
            Age::Unknown => None,
        }
    }

    /// Calendar days since it was fresh: 0 on the day itself, `None` when nobody knows.
    #[must_use]
    pub fn days_since_fresh(&self, today: Day) -> Option<i64> {
        self.fresh_on().map(|day| today.since(day))
    }

    /// Its last reading, of any kind.
    #[must_use]
    pub fn last_reading(&self) -> Option<(&OilEvent, &Reading)> {
        self.events.iter().rev().find_map(|event| match &event.what {
            Happened::Reading(reading) => Some((event, reading)),
            Happened::TopUp(_)
            | Happened::PartChange(_)
            | Happened::MovedOut { .. }
            | Happened::MovedIn { .. }
            | Happened::Returned { .. }
            | Happened::Service(_)
            | Happened::Sign(_)
            | Happened::Noted(_)
            | Happened::Filtered(_) => None,
        })
    }
}

/// How a fill ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FillEnd {
    /// The entry that ended it: an oil change, or a fill over it that nobody logged a change before.
    pub by: EntryId,
    /// When.
    pub at: Millis,
}

/// Something that happened to the oil of a fill.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OilEvent {
    /// The entry that says so.
    pub id: EntryId,
    /// When.
    pub at: Millis,
    /// The trading day.
    pub day: Day,
    /// What the pan should hold after it.
    pub volume: Volume,
    /// What happened.
    pub what: Happened,
}

/// What happened to the oil.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Happened {
    /// Fresh oil added.
    TopUp(TopUp),
    /// Some out, fresh in.
    PartChange(PartChange),
    /// Oil went to another pan or into a machine.
    MovedOut {
        /// Where to.
        to: Vessel,
        /// How much.
        out: Volume,
    },
    /// Oil of another fill came in, straight or out of a machine.
    MovedIn {
        /// The pan whose oil it was.
        from: PanId,
        /// The fill it was of, by the entry that began it; `None` when the log knows of none.
        from_fill: Option<EntryId>,
        /// The entry that took it out of that fill: it is what it was then.
        left: EntryId,
        /// How much arrived.
        arrived: Volume,
    },
    /// Its own oil came back out of a machine, as it went in.
    Returned {
        /// Which machine.
        from: MachineId,
        /// How much arrived.
        arrived: Volume,
    },
    /// It was fried in, or stood through a service.
    Service(Service),
    /// It was measured.
    Reading(Reading),
    /// Something was noticed.
    Sign(Sign),
    /// Somebody wrote about it.
    Noted(String),
    /// It was filtered.
    Filtered(Filtered),
}

impl Happened {
    /// Whether oil went in or out.
    #[must_use]
    pub const fn is_in_or_out(&self) -> bool {
        match self {
            Self::TopUp(_)
            | Self::PartChange(_)
            | Self::MovedOut { .. }
            | Self::MovedIn { .. }
            | Self::Returned { .. } => true,
            Self::Service(_) | Self::Reading(_) | Self::Sign(_) | Self::Noted(_) | Self::Filtered(_) => false,
        }
    }
}

/// How oil was filtered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Filtered {
    /// With the guide, hold by hold.
    Guided(RunId),
    /// Without it.
    Unguided,
}

impl Filtered {
    /// The grade a noted run carries, as a filtering; a run not done is none.
    #[must_use]
    pub const fn noted(how: Grade) -> Option<Self> {
        match how {
            Grade::Unguided => Some(Self::Unguided),
            Grade::NotDone => None,
        }
    }
}
