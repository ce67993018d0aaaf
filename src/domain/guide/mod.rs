//! The guide: one small machine that interprets the step tables.
//!
//! `decide(scene, command, now)` answers with drafts to be written, or refuses with a reason; `apply(entry)` then
//! believes what was written. Nothing moves before its entry is on disk.

mod answers;
mod apply;
pub mod asking;
mod command;
mod decide;
mod effects;
pub mod gate;
mod holds;
pub mod refusal;
pub mod scene;
pub mod state;

pub(crate) use answers::answers;
pub use command::Command;
pub use holds::BY_HAND_MAX;
pub(crate) use holds::person as fit_for_route;
pub use refusal::Refusal;
pub use scene::Scene;
pub use state::{FilterJob, Run, Warm};

use super::procedure::Tables;

/// How long a reading of the oil's temperature counts, in milliseconds (project default: 5 minutes).
pub const READING_FRESH_MS: i64 = 5 * 60_000;
/// How long oil may be out of its pan without an answer before everything is looked at again (5 minutes).
pub const SILENCE_MS: i64 = 5 * 60_000;
/// How long a filter job may lie idle before floor and kit are asked again (20 minutes).
pub const IDLE_MS: i64 = 20 * 60_000;
/// How long a finished warm-up outlives the machine's heater (20 minutes, owner's choice elsewhere; no source).
pub const WARM_EXPIRY_MS: i64 = 20 * 60_000;
/// How far from its target the oil may be before a reason is asked for, in tenths of a degree (project default).
pub const TARGET_SLACK_DC: i16 = 100;
/// A draw under this many milliseconds in all is remarked upon (project default: a quarter of the least usual minute).
pub const SHORT_DRAW_MS: i64 = 15_000;
/// Clean guided runs before the short form is offered.
pub const RUNS_BEFORE_SHORT: u32 = 10;

/// The filter job's machine: its tables and what it knows.
#[derive(Clone, Debug)]
pub struct Guide {
    tables: Tables,
    job: Option<FilterJob>,
}

impl Guide {
    /// A guide with no job open.
    #[must_use]
    pub const fn new(tables: Tables) -> Self {
        Self { tables, job: None }
    }

    /// The open job.
    #[must_use]
    pub const fn job(&self) -> Option<&FilterJob> {
        self.job.as_ref()
    }

    /// The tables it runs by.
    #[must_use]
    pub const fn tables(&self) -> &Tables {
        &self.tables
    }
}
