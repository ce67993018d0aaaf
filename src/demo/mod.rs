//! The demo kitchen: an invented fish bar with five weeks of log behind it, made from a seed.
//!
//! Everything here is invented and belongs to the demo only. Filter nights are handed out as a plan: the kitchen
//! runs them through the guide like any other night, so that no run in the demo was made up by hand.

mod kitchen;
mod play;
mod rng;
mod season;

use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::ids::{MachineId, PanId, PersonId};
use crate::domain::sorted::in_order;
use crate::domain::time::{Day, Millis};

pub use kitchen::Cast;
pub use play::{Played, ZONE, play};

/// Weeks of log behind the demo.
pub const WEEKS: i64 = 5;

/// A filter job of the demo, to be run through the guide.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DemoNight {
    /// The trading day.
    pub day: Day,
    /// When the job is opened.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// The pans in the order they are filtered.
    pub pans: Vec<PanId>,
    /// With what.
    pub machine: MachineId,
    /// By whom.
    pub by: PersonId,
}

/// An entry of the demo, and when it is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DemoDraft {
    /// When.
    pub at: Millis,
    /// Minutes the zone was ahead of UTC then.
    pub off_min: i16,
    /// What.
    pub draft: Draft,
}

/// The demo kitchen's whole log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Demo {
    /// Who and what is in it.
    pub cast: Cast,
    /// Its entries, in order of time.
    pub drafts: Vec<DemoDraft>,
    /// Its filter nights, in order of time.
    pub nights: Vec<DemoNight>,
}

/// The demo kitchen as it stands on `today`: five weeks, ending with the last trading day before it.
///
/// `off_min` gives the minutes the zone is ahead of UTC on a day. The same arguments give the same log.
#[must_use]
pub fn demo_drafts(seed: u64, today: Day, off_min: impl Fn(Day) -> i16) -> Demo {
    let mut rng = rng::Rng::new(seed);
    let mut demo = Demo {
        cast: Cast::new(&mut rng),
        drafts: Vec::new(),
        nights: Vec::new(),
    };
    let days: Vec<Moment> = trading_days(today)
        .into_iter()
        .map(|day| Moment::new(day, off_min(day)))
        .collect();
    if let Some(first) = days.first() {
        let owner = demo.cast.people.first().copied();
        for (minute, fact) in (0..).zip(kitchen::facts(&demo.cast, first.day)) {
            demo.write(first.at(8, minute), owner, fact);
        }
    }
    season::Season::new(rng).play(&mut demo, &days);
    in_order(&mut demo.drafts, |d| d.at);
    in_order(&mut demo.nights, |n| n.at);
    demo
}

impl Demo {
    fn write(&mut self, (at, off_min): (Millis, i16), who: Option<PersonId>, fact: Fact) {
        let draft = Draft::now(who, fact);
        self.drafts.push(DemoDraft { at, off_min, draft });
    }
}

/// The trading days of the five weeks before `today`, oldest first.
fn trading_days(today: Day) -> Vec<Day> {
    let trades = |day: &Day| kitchen::TRADING.get(day.weekday_index()).copied().unwrap_or(false);
    let last = (1..=7).map(|n| today.plus(-n)).find(trades);
    let days = last
        .into_iter()
        .flat_map(|last| (0..WEEKS * 7).rev().map(move |n| last.plus(-n)));
    days.filter(trades).collect()
}

/// A day as the demo tells time: hours and minutes of the local clock, past 24 for the small hours.
#[derive(Clone, Copy, Debug)]
struct Moment {
    day: Day,
    off_min: i16,
}

impl Moment {
    const fn new(day: Day, off_min: i16) -> Self {
        Self { day, off_min }
    }

    fn at(self, hour: i64, minute: i64) -> (Millis, i16) {
        let midnight = self.day.begins(self.off_min, 0);
        (
            midnight.plus(hour * Millis::HOUR + minute * Millis::MINUTE),
            self.off_min,
        )
    }
}
