//! Pans that do each other's jobs for a day: "pan 2 on chips today".

use super::Quick;
use crate::domain::facts::pan_job::PanJob;
use crate::domain::ids::PanId;
use crate::domain::ledger::Ledger;
use crate::domain::time::Day;

/// A pan does another's job until the trading day ends; `None` where one of the two is not set up.
#[must_use]
pub fn take_job(ledger: &Ledger, pan: PanId, of: PanId, day: Day) -> Option<PanJob> {
    let food = ledger.book.pan(of).filter(|_| ledger.book.pan(pan).is_some())?.food;
    Some(PanJob { pan, of, food, day })
}

/// Two pans do each other's jobs.
#[must_use]
pub fn swap(ledger: &Ledger, one: PanId, other: PanId, day: Day) -> Option<Quick> {
    let jobs = [take_job(ledger, one, other, day)?, take_job(ledger, other, one, day)?];
    Some(Quick::PanJobs(jobs.into()))
}

/// A pan does its own job again, and so does the one that did it meanwhile.
#[must_use]
pub fn own_job(ledger: &Ledger, pan: PanId, day: Day) -> Option<Quick> {
    let swapped = ledger.book.pan_job(pan, day).map(|job| job.of);
    let other = swapped.filter(|of| ledger.book.pan_job(*of, day).is_some_and(|job| job.of == pan));
    let jobs = std::iter::once(pan)
        .chain(other)
        .map(|pan| take_job(ledger, pan, pan, day));
    jobs.collect::<Option<Vec<_>>>().map(Quick::PanJobs)
}
