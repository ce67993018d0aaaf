//! What Today shows, worked out: each pan with its oil, what is due, what is open, what nobody answered.

use std::rc::Rc;

use super::{Kitchen, care, forecast, life, oil, wrong};
use crate::domain::allergen_sheet;
use crate::domain::claim::ClaimKind;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::setup::{Claim, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::{JobId, PanId};
use crate::domain::ledger::{Ledger, Lost, PanDay, PutOff, RunState, Word};
use crate::domain::oil_life::{self, Basis, DaysLeft, OilLife, Quantity, Usual, oil_shade};
use crate::domain::time::{Day, Millis};
use crate::domain::units::{Share, Volume};
use crate::store::Journal;

/// What Today says of the life of an oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LifeToday {
    /// The score; `None` while no limit is in force.
    pub score: Option<u8>,
    /// Days left; `None` while no limit is in force.
    pub days_left: Option<DaysLeft>,
    /// The level it holds at with the usual fresh oil, whole % of polar compounds: where it is likelier never to be over
    /// its limit, no day of a change is named.
    pub holds: Option<u8>,
    /// The word.
    pub word: Option<oil_life::Word>,
    /// The owner's usual days, while nothing narrower is known.
    pub usual: Option<Usual>,
    /// What the numbers rest on.
    pub basis: Basis,
}

impl From<&OilLife> for LifeToday {
    fn from(life: &OilLife) -> Self {
        Self {
            score: life.score.map(|score| score.now),
            days_left: life.days_left,
            holds: holds(life),
            word: life.word,
            usual: life.usual,
            basis: life.basis,
        }
    }
}

fn holds(life: &OilLife) -> Option<u8> {
    life.days_left.filter(|days| days.median.is_none())?;
    let settles = life.settles_at.filter(|settles| match settles.quantity {
        Quantity::Polar => true,
        Quantity::Ffa => false,
    })?;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a level from 0 to 100 %"
    )]
    let level = settles.level.before_top_up.round() as u8;
    Some(level)
}

/// Oil of a pan that stands in a machine.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ParkedToday {
    /// The machine.
    pub machine: String,
    /// The trading day it went in.
    pub since: Day,
    /// The fat.
    pub fat: Fat,
    /// How much, where that is known.
    pub volume: Option<Volume>,
}

/// A pan on Today.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanToday {
    /// The pan.
    pub pan: PanId,
    /// What it is called.
    pub name: String,
    /// The fat in it, or that it is kept with.
    pub fat: Fat,
    /// The claims that stand.
    pub claims: Vec<ClaimKind>,
    /// The claims that are lost: they stand as lost until they are restored.
    pub lost: Vec<Lost>,
    /// How dark its oil is, 1–5; none when it is empty.
    pub shade: Option<u8>,
    /// How full it is to be drawn, percent; 0 while its oil is out, or low, when nobody knows how much is left.
    pub level: u8,
    /// Its oil life; none when it is empty.
    pub life: Option<LifeToday>,
    /// The trading day it was last filtered on.
    pub last_filtered: Option<Day>,
    /// Whether it was used this trading day.
    pub used: bool,
    /// Whether it was used this trading day and not filtered in it.
    pub due: bool,
    /// The name of the pan whose job it does today.
    pub job: Option<String>,
    /// That its filtering was put off to today, while it stands.
    pub put_off: Option<PutOff>,
    /// Whether its oil was last seen below the mark: not to be lit before it is topped up.
    pub low: bool,
    /// Whether it stands empty or without all of its oil: not to be lit.
    pub out: bool,
    /// Its oil that stands in machines.
    pub parked: Vec<ParkedToday>,
}

/// Today.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Today {
    /// The trading day.
    pub day: Day,
    /// The day the kitchen opens again, while it is closed.
    pub closed: Option<Day>,
    /// The pans in use, in order of name.
    pub pans: Vec<PanToday>,
    /// The newest day before today with no word for some pan, and the names of those pans.
    pub unanswered: Option<(Day, Vec<String>)>,
    /// Jobs that are open.
    pub open: Vec<(JobKind, JobId)>,
    /// The open jobs about single pans, what boils first.
    pub care: Vec<(JobKind, PanId)>,
    /// Jobs begun this trading day and ended since.
    pub done: Vec<JobKind>,
    /// Whether the filter job last ended this trading day filtered no pan.
    pub none_filtered: bool,
    /// Whether a look at scraps left outdoors is owed.
    pub look_owed: bool,
    /// Whether every filter machine is down.
    pub machine_down: bool,
    /// Whether the allergen sheet is to be gone through.
    pub sheet_open: bool,
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
    /// Closed until a day; work begins as on any other.
    Closed(Day),
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
            Self::Closed(_) | Self::Nothing => None,
        }
    }
}

impl Today {
    /// The one next thing to do. An open filter job comes first: its oil may be out.
    #[must_use]
    pub fn next(&self) -> Next {
        let open = |kind| self.open.iter().any(|(open, _)| *open == kind);
        let by_danger = [
            JobKind::Filter,
            JobKind::BoilOut,
            JobKind::OilChange,
            JobKind::LightUp,
            JobKind::LockUp,
        ];
        if let Some(kind) = by_danger.into_iter().find(|kind| open(*kind)) {
            return Next::Resume(kind);
        }
        let done = |kind| self.done.contains(&kind);
        let used = self.pans.iter().any(|p| p.used);
        if self.look_owed {
            Next::Look
        } else if self.pans.iter().any(|p| p.due) {
            Next::Begin(JobKind::Filter)
        } else if let Some(opens) = self.closed.filter(|_| !used && self.done.is_empty()) {
            Next::Closed(opens)
        } else if !done(JobKind::LightUp) && !used {
            Next::Begin(JobKind::LightUp)
        } else if done(JobKind::LockUp) {
            Next::Nothing
        } else {
            Next::Begin(JobKind::LockUp)
        }
    }

    /// The pan of the first open job of a kind, where that is about one.
    #[must_use]
    pub fn pan_of(&self, kind: JobKind) -> Option<PanId> {
        let care = self.care.iter().find(|(open, _)| *open == kind);
        care.map(|(_, pan)| *pan)
    }

    /// The pans that are due, by name.
    #[must_use]
    pub fn due_names(&self) -> Vec<String> {
        self.pans.iter().filter(|p| p.due).map(|p| p.name.clone()).collect()
    }
}

/// Today of a kitchen at a moment of it, with its open jobs about single pans.
pub fn of_kitchen<J: Journal>(kitchen: &Kitchen<J>, day: Day, now: Millis) -> Today {
    let care = care::open_jobs(kitchen.pan_jobs());
    Today {
        care,
        ..at(kitchen.ledger(), day, now)
    }
}

/// Today, from the ledger.
#[must_use]
pub fn of(ledger: &Ledger, day: Day) -> Today {
    let pans = ledger.book.pans_in_use().into_iter();
    let open = JobKind::ALL
        .iter()
        .filter_map(|kind| Some((*kind, ledger.open_job(*kind)?)));
    let done = JobKind::DAILY.iter().copied().filter(|kind| {
        let last = ledger.last_job(*kind);
        last.is_some_and(|j| j.ended.is_some() && ledger.book.day_of(j.opened, j.off_min) == day)
    });
    let opens = || forecast::trading_days_after(ledger, day, 1).first().copied();
    let closed = ledger.book.closed_on(day);
    Today {
        day,
        closed: closed.map(|closed| opens().unwrap_or(closed.to().plus(1))),
        pans: pans
            .map(|pan| pan_today(ledger, pan, (*oil::life(ledger, pan.pan, day)).as_ref(), day))
            .collect(),
        unanswered: ledger
            .unanswered_nights(day)
            .last()
            .map(|night| (*night, unanswered_pans(ledger, *night))),
        open: open.collect(),
        care: Vec::new(),
        none_filtered: done.clone().any(|kind| kind == JobKind::Filter) && !last_filter_job_filtered(ledger),
        done: done.collect(),
        look_owed: ledger.looks_owed().next().is_some(),
        machine_down: wrong::all_down(ledger),
        sheet_open: allergen_sheet::is_open(ledger, day),
    }
}

/// Today, from the ledger, at a moment of the day: a claim begun for an evening that is over stands no more.
#[must_use]
pub fn at(ledger: &Ledger, day: Day, now: Millis) -> Today {
    let mut today = of(ledger, day);
    for pan in &mut today.pans {
        pan.claims = kinds(&ledger.claims_now(pan.pan, day, now));
    }
    today
}

fn kinds(claims: &[Claim]) -> Vec<ClaimKind> {
    claims.iter().map(|claim| claim.what).collect()
}

/// Whether any pan was filtered in the last filter job.
fn last_filter_job_filtered(ledger: &Ledger) -> bool {
    let last = ledger.last_job(JobKind::Filter);
    last.is_some_and(|job| ledger.runs_of(job.job).any(RunState::filtered))
}

/// One pan, in use or not, and all that is known of the life of its oil; `None` for one that was never set up.
#[must_use]
pub fn of_pan(ledger: &Ledger, pan: PanId, day: Day) -> Option<(PanToday, Rc<Option<OilLife>>)> {
    let life = oil::life(ledger, pan, day);
    let pan = ledger.book.pan(pan)?;
    Some((pan_today(ledger, pan, (*life).as_ref(), day), life))
}

/// The names of the pans nobody said anything of on a night.
fn unanswered_pans(ledger: &Ledger, night: Day) -> Vec<String> {
    let name = |id| ledger.book.pan(id).map(|pan| pan.name.clone());
    ledger.unanswered_pans(night).into_iter().filter_map(name).collect()
}

fn pan_today(ledger: &Ledger, pan: &Pan, life: Option<&OilLife>, day: Day) -> PanToday {
    let id = pan.pan;
    let fill = ledger.fill(id);
    let (low, out) = (ledger.is_low(id), ledger.empties().contains(&id));
    let limit = life::limits(ledger.book.kitchen.as_ref())
        .polar
        .map_or(25.0, Share::percent);
    let word = ledger.word(id, day);
    let put_off = match word {
        Word::Due | Word::NotUsed | Word::NotYetDue | Word::Silent => Some(ledger.put_off(id, day)),
        Word::Filtered(_) | Word::NotDone => None,
    };
    let job = ledger.book.pan_job(id, day).and_then(|job| ledger.book.pan(job.of));
    PanToday {
        pan: id,
        name: pan.name.clone(),
        fat: fill.map_or(pan.fat, |f| f.fat),
        claims: kinds(&ledger.claims_standing(id, day)),
        lost: ledger.claims_lost(id, day),
        shade: life.map(|l| oil_shade(l.polar.median, limit)),
        level: fill
            .filter(|_| !low && !out)
            .map_or(0, |f| share_of(f.volume, pan.full)),
        last_filtered: ledger.last_filtered(id).map(|done| done.day),
        used: ledger.pan_day(id, day).is_some_and(PanDay::used),
        due: word == Word::Due,
        job: job.map(|of| of.name.clone()),
        put_off: put_off.flatten(),
        low,
        out,
        parked: parked_today(ledger, id),
        life: life.map(LifeToday::from),
    }
}

fn parked_today(ledger: &Ledger, pan: PanId) -> Vec<ParkedToday> {
    let off_min = ledger.lines().next_back().map_or(0, |line| line.written().off_min);
    let own = ledger.parked().into_iter().filter(|parked| parked.pan == pan);
    own.map(|parked| ParkedToday {
        machine: ledger
            .book
            .machine(parked.machine)
            .map_or_else(String::new, |m| m.name.clone()),
        since: ledger.book.day_of(parked.since, off_min),
        fat: parked.fat,
        volume: parked.volume,
    })
    .collect()
}

fn share_of(part: Volume, whole: Volume) -> u8 {
    let percent = u64::from(part.ml()) * 100 / u64::from(whole.ml()).max(1);
    u8::try_from(percent.min(100)).unwrap_or(100)
}
