//! Honest notes made afterwards: filtered without the guide, not done and why, not used. They prove no hold.

use crate::domain::entry::Draft;
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::oil::{Load, Service};
use crate::domain::facts::{Fact, RunNoted};
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::ledger::Ledger;
use crate::domain::time::{Day, Millis, Now};
use crate::domain::units::Minutes;

/// The minute of the day a kitchen is taken to close at until its owner says: 22:00 (project default).
pub const CLOSING_MIN: u16 = 22 * 60;

/// What a person says of a pan on a day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Told {
    /// It was filtered, without the guide.
    Unguided,
    /// It was used and not filtered.
    NotDone(String),
    /// It was not used.
    NotUsed,
}

/// The moment a note about a day is dated: now for today, else the evening of that day, never ahead of now.
#[must_use]
pub fn moment(ledger: &Ledger, day: Day, off_min: i16, now: &Now) -> Option<Millis> {
    let start = ledger.book.day_start_min();
    if ledger.book.day_of(now.wall, now.off_min) == day {
        return None;
    }
    let closing = ledger.book.kitchen.as_ref().and_then(|k| k.closing_min);
    let closing = closing.map_or(CLOSING_MIN, Minutes::get);
    // Closing in the small hours belongs to the day before.
    let after_midnight = if closing < start { 24 * 60 } else { 0 };
    let at = day
        .begins(off_min, 0)
        .plus((i64::from(closing) + after_midnight) * Millis::MINUTE);
    Some(at.min(now.wall))
}

/// The entry that says it of one pan.
#[must_use]
pub fn note(pan: PanId, told: Told, who: Option<PersonId>, at: Option<Millis>) -> Draft {
    let noted = |how, why| {
        Fact::RunNoted(RunNoted {
            pan,
            machine: None,
            how,
            why,
        })
    };
    let fact = match told {
        Told::Unguided => noted(Grade::Unguided, None),
        Told::NotDone(why) => noted(Grade::NotDone, Some(why)),
        Told::NotUsed => Fact::Service(Service {
            pan,
            fry: Minutes::default(),
            load: Load::Normal,
            temp: None,
            food_g: None,
        }),
    };
    Draft { at, who, fact }
}

/// The entry that says a whole job was not done today.
#[must_use]
pub fn job_not_done(job: JobId, what: JobKind, why: String, who: Option<PersonId>) -> Draft {
    let fact = JobFact {
        how: Some(Grade::NotDone),
        why: Some(why),
        ..JobFact::new(job, what, JobEvent::Noted)
    };
    Draft::now(who, Fact::Job(Box::new(fact)))
}
