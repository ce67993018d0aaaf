//! The one place that runs decide, append, apply: an order is decided on what stands, written, and only then believed.
//!
//! Generic over the journal, so that whole days are simulated natively on a [`MemoryJournal`] and lived in the
//! browser on IndexedDB.
//!
//! [`MemoryJournal`]: crate::store::MemoryJournal

pub mod alarm;
pub mod care;
pub mod day;
pub mod filter;
pub mod forecast;
pub mod glance;
pub mod life;
pub mod log;
pub mod nights;
pub mod oil;
mod order;
pub mod said;
pub mod scene;
pub mod taught;
pub mod today;
pub mod what_if;
pub mod wrong;

use std::rc::Rc;

use crate::domain::day_jobs::DayJobs;
use crate::domain::entry::{Draft, Entry};
use crate::domain::facts::Fact;
use crate::domain::facts::job::JobKind;
use crate::domain::guide::{Guide, Scene};
use crate::domain::ids::JobId;
use crate::domain::ledger::Ledger;
use crate::domain::pan_jobs::PanJobs;
use crate::domain::procedure::{DayTables, PanTables, Tables};
use crate::domain::time::{Day, Millis, Now};
use crate::store::stamp::{Moment, Stamp, Trust, Unstamped};
use crate::store::{Journal, Loaded, Record, StoreFault, Unreadable};

pub use order::{Order, Refused};

/// What the kitchen cannot know of itself: the zone's offset at a moment, and chance for ids.
pub struct Outside {
    /// Minutes the kitchen's zone is ahead of UTC at a moment.
    pub off_min: Box<dyn Fn(Millis) -> i16>,
    /// Ten random bytes, new at each call.
    pub random: Box<dyn FnMut() -> [u8; 10]>,
}

/// A kitchen: its journal, and everything the journal comes to.
pub struct Kitchen<J> {
    journal: Rc<J>,
    stamp: Stamp,
    outside: Outside,
    ledger: Ledger,
    unreadable: Vec<Unreadable>,
    held: usize,
    guide: Guide,
    day_jobs: DayJobs,
    pan_jobs: PanJobs,
}

/// Entries that are decided and stamped, but neither written nor believed.
#[derive(Debug)]
pub struct Prepared {
    records: Vec<Record>,
    now: Now,
}

impl Prepared {
    /// What is to be written.
    #[must_use]
    pub fn records(&self) -> &[Record] {
        &self.records
    }
}

impl<J: Journal> Kitchen<J> {
    /// Reads the journal and stands where it stopped. An open job is taken up again with pump and heat unknown.
    ///
    /// # Errors
    /// Why the journal could not be read. Nothing was written.
    pub async fn open(journal: J, outside: Outside, now: &Now) -> Result<Self, StoreFault> {
        let loaded = journal.load().await?;
        Ok(Self::from_loaded(journal, loaded, outside, now))
    }

    fn from_loaded(journal: J, loaded: Loaded, outside: Outside, now: &Now) -> Self {
        let held = loaded.records.len() + loaded.unreadable.len();
        let stamp = Stamp::after(journal.dev(), &loaded);
        let journal = Rc::new(journal);
        let entries: Vec<Entry> = loaded.records.into_iter().map(Record::into_entry).collect();
        let ledger = Ledger::of(entries);
        let mut kitchen = Self {
            journal,
            stamp,
            outside,
            ledger,
            unreadable: loaded.unreadable,
            held,
            guide: Guide::new(Tables::REAL),
            day_jobs: DayJobs::new(DayTables::REAL),
            pan_jobs: PanJobs::new(PanTables::REAL),
        };
        let Self {
            ledger,
            day_jobs,
            pan_jobs,
            ..
        } = &mut kitchen;
        for line in ledger.lines() {
            day_jobs.apply(line.written(), None);
            pan_jobs.apply(line.written(), None);
        }
        if let Some(job) = kitchen.ledger.open_job(JobKind::Filter) {
            let scene = kitchen.scene(now);
            let Self { ledger, guide, .. } = &mut kitchen;
            let written = ledger.lines().map(|line| line.written());
            for entry in written.filter(|e| is_trouble(&e.fact) || job_of(&e.fact) == Some(job)) {
                guide.apply(entry, &scene, None);
            }
        }
        kitchen
    }

    /// Decides, writes, believes.
    ///
    /// # Errors
    /// A refusal, a doubtful clock or a fault of the store; in each case nothing was written and nothing moved.
    pub async fn send(&mut self, order: Order, now: &Now) -> Result<Vec<Entry>, Refused> {
        let prepared = self.prepare(order, now)?;
        self.journal.append(prepared.records()).await?;
        Ok(self.believe(prepared))
    }

    /// The first third of [`Kitchen::send`]: what would be written.
    ///
    /// # Errors
    /// A refusal, or a doubtful clock.
    pub fn prepare(&mut self, order: Order, now: &Now) -> Result<Prepared, Refused> {
        let confirmed = matches!(order, Order::TimeConfirmed(_));
        let drafts = self.decide(order, now)?;
        let trust = match (confirmed, self.run_open()) {
            (true, _) => Trust::Confirmed,
            (false, true) => Trust::RunOpen,
            (false, false) => Trust::Ask,
        };
        Ok(Prepared {
            records: self.stamped(drafts, trust, now)?,
            now: *now,
        })
    }

    /// The last third: the records are on disk.
    pub fn believe(&mut self, prepared: Prepared) -> Vec<Entry> {
        let entries: Vec<Entry> = prepared.records.into_iter().map(Record::into_entry).collect();
        self.stamp.wrote(&entries);
        self.held += entries.len();
        for entry in &entries {
            self.ledger.push(entry.clone());
            self.day_jobs.apply(entry, Some(&prepared.now));
            self.pan_jobs.apply(entry, Some(&prepared.now));
            if is_trouble(&entry.fact) || job_of(&entry.fact).is_some() {
                let scene = self.scene(&prepared.now);
                self.guide.apply(entry, &scene, Some(&prepared.now));
            }
        }
        entries
    }

    fn stamped(&mut self, drafts: Vec<Draft>, trust: Trust, now: &Now) -> Result<Vec<Record>, Refused> {
        let Outside { off_min, random } = &mut self.outside;
        let mut moment = Moment {
            wall: now.wall,
            trust,
            off_min: &**off_min,
            random: &mut **random,
        };
        let entries = self.stamp.stamp(drafts, &mut moment).map_err(|why| match why {
            Unstamped::Clock(doubt) => Refused::Clock(doubt),
            Unstamped::Future { .. } | Unstamped::DatedEvidence | Unstamped::NoNumbers => Refused::Stamp(why),
        })?;
        entries
            .into_iter()
            .map(|e| Record::of(e).map_err(Refused::BadEntry))
            .collect()
    }

    /// The journal, to write what was prepared and to export.
    pub fn journal_handle(&self) -> Rc<J> {
        Rc::clone(&self.journal)
    }

    /// Everything the log comes to.
    pub const fn ledger(&self) -> &Ledger {
        &self.ledger
    }

    /// The filter job's guide.
    pub const fn guide(&self) -> &Guide {
        &self.guide
    }

    /// Light-up and lock-up.
    pub const fn day_jobs(&self) -> &DayJobs {
        &self.day_jobs
    }

    /// Oil change and boil-out.
    pub const fn pan_jobs(&self) -> &PanJobs {
        &self.pan_jobs
    }

    /// How many entries the journal holds, read or not.
    pub const fn entries_held(&self) -> usize {
        self.held
    }

    /// Lines nobody can read; kept, counted, exported.
    pub fn unreadable(&self) -> &[Unreadable] {
        &self.unreadable
    }

    /// The trading day it is.
    pub fn today(&self, now: &Now) -> Day {
        self.ledger.book.day_of(now.wall, now.off_min)
    }

    /// When a trading day ends, and the next begins.
    pub fn day_ends(&self, day: Day) -> Millis {
        let (next, start_min) = (day.plus(1), self.ledger.book.day_start_min());
        let off = &self.outside.off_min;
        // The offset is that of the moment itself, which is known well enough without it.
        next.begins(off(next.begins(0, start_min)), start_min)
    }

    /// Whether a pan's run is open.
    pub fn run_open(&self) -> bool {
        self.guide.job().is_some_and(|j| j.run.is_some())
    }

    /// Whether anything is open that an update must wait for.
    pub fn job_open(&self) -> bool {
        JobKind::ALL.iter().any(|kind| self.ledger.open_job(*kind).is_some())
    }

    /// What the guide must know of the kitchen.
    pub fn scene(&self, now: &Now) -> Scene {
        scene::of(&self.ledger, self.today(now))
    }
}

/// Whether a fact speaks of a trouble, which concerns whatever job is open.
const fn is_trouble(fact: &Fact) -> bool {
    matches!(fact, Fact::Trouble(_))
}

/// The filter job a fact belongs to.
fn job_of(fact: &Fact) -> Option<JobId> {
    if let Fact::Job(job) = fact {
        (job.what == JobKind::Filter).then_some(job.job)
    } else if let Fact::Run(run) = fact {
        Some(run.job)
    } else {
        None
    }
}
