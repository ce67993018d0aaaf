//! What Today shows, worked out: each pan with its oil, what is due, what is open, what nobody answered.

use super::life;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::{JobId, PanId};
use crate::domain::ledger::{FilterDone, Ledger, PanDay, Word};
use crate::domain::oil_life::{OilLife, oil_shade};
use crate::domain::time::Day;
use crate::domain::units::{Share, Volume};

/// A pan on Today.
#[derive(Clone, Debug, PartialEq)]
pub struct PanToday {
    /// The pan.
    pub pan: PanId,
    /// What it is called.
    pub name: String,
    /// The fat in it, or that it is kept with.
    pub fat: Fat,
    /// The claims that stand.
    pub claims: Vec<Claim>,
    /// How dark its oil is, 1–5; none when it is empty.
    pub shade: Option<u8>,
    /// How full it is, percent.
    pub level: u8,
    /// Its oil life; none when it is empty.
    pub life: Option<OilLife>,
    /// Which trading day of this oil today is, the first being 1.
    pub day_of_oil: Option<i64>,
    /// When it was last filtered.
    pub last_filtered: Option<FilterDone>,
    /// Whether it was used this trading day.
    pub used: bool,
    /// Whether it was used this trading day and not filtered in it.
    pub due: bool,
    /// Whether it stands empty, or with its oil elsewhere.
    pub empty: bool,
    /// Days used in a row that it was filtered.
    pub streak: u32,
}

/// Today.
#[derive(Clone, Debug, PartialEq)]
pub struct Today {
    /// The trading day.
    pub day: Day,
    /// The pans in use, in order of name.
    pub pans: Vec<PanToday>,
    /// Days before today with no word for some pan, newest first.
    pub unanswered: Vec<Day>,
    /// Jobs that are open.
    pub open: Vec<(JobKind, JobId)>,
    /// Jobs begun this trading day and ended since.
    pub done: Vec<JobKind>,
    /// Whether a look at scraps left outdoors is owed.
    pub look_owed: bool,
}

/// The one next thing to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Next {
    /// Go on with an open job.
    Resume(JobKind),
    /// Say what the look at scraps left outdoors found; light-up asks it.
    Look,
    /// Begin a job.
    Begin(JobKind),
    /// Nothing more today.
    Nothing,
}

impl Next {
    /// The job it leads to.
    #[must_use]
    pub const fn job(self) -> Option<JobKind> {
        match self {
            Self::Resume(kind) | Self::Begin(kind) => Some(kind),
            Self::Look => Some(JobKind::LightUp),
            Self::Nothing => None,
        }
    }
}

impl Today {
    /// The one next thing to do. An open filter job comes first: its oil may be out.
    #[must_use]
    pub fn next(&self) -> Next {
        let open = |kind| self.open.iter().any(|(open, _)| *open == kind);
        let by_danger = [JobKind::Filter, JobKind::LightUp, JobKind::LockUp];
        if let Some(kind) = by_danger.into_iter().find(|kind| open(*kind)) {
            return Next::Resume(kind);
        }
        let done = |kind| self.done.contains(&kind);
        let used = self.pans.iter().any(|p| p.used);
        if self.look_owed {
            Next::Look
        } else if self.pans.iter().any(|p| p.due) {
            Next::Begin(JobKind::Filter)
        } else if !done(JobKind::LightUp) && !used {
            Next::Begin(JobKind::LightUp)
        } else if done(JobKind::LockUp) {
            Next::Nothing
        } else {
            Next::Begin(JobKind::LockUp)
        }
    }

    /// The pans that are due, by name.
    #[must_use]
    pub fn due_names(&self) -> Vec<String> {
        self.pans.iter().filter(|p| p.due).map(|p| p.name.clone()).collect()
    }
}

/// Today, from the ledger.
#[must_use]
pub fn of(ledger: &Ledger, day: Day) -> Today {
    let pans = ledger.book.pans_in_use().into_iter();
    let open = JobKind::ALL
        .iter()
        .filter_map(|kind| Some((*kind, ledger.open_job(*kind)?)));
    let done = JobKind::ALL.iter().copied().filter(|kind| {
        let last = ledger.last_job(*kind);
        last.is_some_and(|j| j.ended.is_some() && ledger.book.day_of(j.opened, j.off_min) == day)
    });
    Today {
        day,
        pans: pans.map(|pan| pan_today(ledger, pan, day)).collect(),
        unanswered: ledger.unanswered_nights(day).into_iter().rev().collect(),
        open: open.collect(),
        done: done.collect(),
        look_owed: ledger.looks_owed().next().is_some(),
    }
}

/// One pan, in use or not; `None` for one that was never set up.
#[must_use]
pub fn of_pan(ledger: &Ledger, pan: PanId, day: Day) -> Option<PanToday> {
    ledger.book.pan(pan).map(|pan| pan_today(ledger, pan, day))
}

fn pan_today(ledger: &Ledger, pan: &Pan, day: Day) -> PanToday {
    let id = pan.pan;
    let fill = ledger.fill(id);
    let life = life::of(ledger, id, day);
    let limit = life::limits(ledger.book.kitchen.as_ref())
        .polar
        .map_or(25.0, Share::percent);
    PanToday {
        pan: id,
        name: pan.name.clone(),
        fat: fill.map_or(pan.fat, |f| f.fat),
        claims: ledger.claims_standing(id, day),
        shade: life.as_ref().map(|l| oil_shade(l.polar.median, limit)),
        level: fill.map_or(0, |f| share_of(f.volume, pan.full)),
        day_of_oil: fill.and_then(|f| f.days_since_fresh(day)).map(|n| n + 1),
        last_filtered: ledger.last_filtered(id).cloned(),
        used: ledger.pan_day(id, day).is_some_and(PanDay::used),
        due: ledger.word(id, day) == Word::Due,
        empty: ledger.empties().contains(&id),
        streak: ledger.filter_streak(id, day),
        life,
    }
}

fn share_of(part: Volume, whole: Volume) -> u8 {
    let percent = u64::from(part.ml()) * 100 / u64::from(whole.ml()).max(1);
    u8::try_from(percent.min(100)).unwrap_or(100)
}
