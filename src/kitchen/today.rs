//! What Today shows, worked out: each pan with its oil, what is due, what is open, what nobody answered.

use super::life;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::setup::Claim;
use crate::domain::fat::Fat;
use crate::domain::ids::{JobId, PanId};
use crate::domain::ledger::{FilterDone, Ledger};
use crate::domain::oil_life::{OilLife, oil_shade};
use crate::domain::time::Day;
use crate::domain::units::Volume;

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
    /// Whether a look at scraps left outdoors is owed.
    pub look_owed: bool,
}

/// Today, from the ledger.
#[must_use]
pub fn of(ledger: &Ledger, day: Day) -> Today {
    let due = ledger.due(day);
    let empties = ledger.empties();
    let limit = life::limits(ledger.book.kitchen.as_ref())
        .polar
        .map_or(25.0, crate::domain::units::Share::percent);
    let pans = ledger.book.pans_in_use().into_iter().map(|pan| {
        let id = pan.pan;
        let fill = ledger.fill(id);
        let life = life::of(ledger, id, day);
        PanToday {
            pan: id,
            name: pan.name.clone(),
            fat: fill.map_or(pan.fat, |f| f.fat),
            claims: ledger.claims_standing(id, day),
            shade: life.as_ref().map(|l| oil_shade(l.polar.median, limit)),
            level: fill.map_or(0, |f| share_of(f.volume, pan.full)),
            day_of_oil: fill.and_then(|f| f.days_since_fresh(day)).map(|n| n + 1),
            last_filtered: ledger.last_filtered(id).cloned(),
            due: due.contains(&id),
            empty: empties.contains(&id),
            streak: ledger.filter_streak(id, day),
            life,
        }
    });
    let open = JobKind::ALL
        .iter()
        .filter_map(|kind| Some((*kind, ledger.open_job(*kind)?)));
    Today {
        day,
        pans: pans.collect(),
        unanswered: ledger.unanswered_nights(day),
        open: open.collect(),
        look_owed: ledger.looks_owed().next().is_some(),
    }
}

fn share_of(part: Volume, whole: Volume) -> u8 {
    let percent = u64::from(part.ml()) * 100 / u64::from(whole.ml()).max(1);
    u8::try_from(percent.min(100)).unwrap_or(100)
}
