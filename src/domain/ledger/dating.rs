//! How far back an entry may be dated, so that nobody rewrites oil that is already gone.

use crate::domain::facts::Fact;
use crate::domain::ids::{EntryId, MachineId, PanId};
use crate::domain::time::Millis;

use super::Ledger;
use super::lines::is_evidence;

/// Why a date does not stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateRefusal {
    /// It lies more than two minutes ahead.
    Ahead {
        /// The latest moment that stands.
        latest: Millis,
    },
    /// Evidence is of the moment it is written.
    Evidence,
    /// A fill or oil change of that pan lies between.
    BeforeLastChange {
        /// The pan.
        pan: PanId,
        /// The earliest moment that stands.
        earliest: Millis,
    },
    /// The oil it speaks of was not yet in the pan.
    BeforeFill {
        /// The pan.
        pan: PanId,
        /// The earliest moment that stands.
        earliest: Millis,
    },
    /// The last of the oil went into that machine later.
    BeforeParked {
        /// The machine.
        machine: MachineId,
        /// The earliest moment that stands.
        earliest: Millis,
    },
    /// It was moved past the fill or oil change that followed it.
    AfterNextChange {
        /// The pan.
        pan: PanId,
        /// The latest moment that stands.
        latest: Millis,
    },
}

/// Clocks of two phones may differ by this much before a date is called wrong.
const AHEAD_MS: i64 = 2 * Millis::MINUTE;

/// Whether a new `fact` may carry the date `at`, at the moment `now`.
///
/// # Errors
///
/// A fill or oil change goes back to the one before it in that pan (the first without limit), what happened to oil
/// goes back to the start of its fill, and nothing lies more than two minutes ahead.
pub fn check_at(ledger: &Ledger, fact: &Fact, at: Millis, now: Millis) -> Result<(), DateRefusal> {
    not_ahead(at, now)?;
    if is_evidence(fact) {
        return if at == now { Ok(()) } else { Err(DateRefusal::Evidence) };
    }
    match reach(fact) {
        Reach::Changes(pan) => {
            let earliest = ledger.change_marks(pan).iter().map(|(at, _)| *at).max();
            not_before(at, earliest).map_err(|earliest| DateRefusal::BeforeLastChange { pan, earliest })
        }
        Reach::Oil(pans) => pans.into_iter().flatten().try_for_each(|pan| {
            not_before(at, ledger.fill(pan).map(|fill| fill.at))
                .map_err(|earliest| DateRefusal::BeforeFill { pan, earliest })
        }),
        Reach::Free => Ok(()),
    }
}

/// Whether the entry `of` may be moved to `at` by a correction that makes it `fact`. It may go to another fill of
/// the pan, which is what such corrections are for; fills and oil changes keep their order.
///
/// # Errors
///
/// As [`check_at`], and a fill or oil change may not pass the one after it.
pub fn check_redate(ledger: &Ledger, of: EntryId, fact: &Fact, at: Millis, now: Millis) -> Result<(), DateRefusal> {
    not_ahead(at, now)?;
    if is_evidence(fact) {
        return Err(DateRefusal::Evidence);
    }
    match reach(fact) {
        Reach::Changes(pan) => {
            let marks = ledger.change_marks(pan);
            let own = marks.iter().position(|(_, id)| *id == of).unwrap_or(marks.len());
            let before = marks.get(..own).and_then(<[_]>::last).map(|(at, _)| *at);
            let after = marks
                .get(own.saturating_add(1)..)
                .and_then(<[_]>::first)
                .map(|(at, _)| *at);
            not_before(at, before).map_err(|earliest| DateRefusal::BeforeLastChange { pan, earliest })?;
            match after {
                Some(latest) if at > latest => Err(DateRefusal::AfterNextChange { pan, latest }),
                Some(_) | None => Ok(()),
            }
        }
        Reach::Oil(pans) => pans.into_iter().flatten().try_for_each(|pan| {
            let earliest = ledger.fills(pan).first().map(|fill| fill.at);
            not_before(at, earliest).map_err(|earliest| DateRefusal::BeforeFill { pan, earliest })
        }),
        Reach::Free => Ok(()),
    }
}

const fn not_ahead(at: Millis, now: Millis) -> Result<(), DateRefusal> {
    if at.since(now) > AHEAD_MS {
        let latest = now.plus(AHEAD_MS);
        return Err(DateRefusal::Ahead { latest });
    }
    Ok(())
}

fn not_before(at: Millis, earliest: Option<Millis>) -> Result<(), Millis> {
    match earliest {
        Some(earliest) if at < earliest => Err(earliest),
        Some(_) | None => Ok(()),
    }
}

/// What bounds the date of a fact.
enum Reach {
    /// The fills and oil changes of this pan.
    Changes(PanId),
    /// The fills of these pans.
    Oil([Option<PanId>; 2]),
    /// Nothing but the present.
    Free,
}

/// A noted run and a note may be older than the oil now in the pan: "last night" is asked after this morning's
/// change, and neither changes what the oil is.
fn reach(fact: &Fact) -> Reach {
    match fact {
        Fact::Fill(f) => Reach::Changes(f.pan),
        Fact::OilChange(f) => Reach::Changes(f.pan),
        Fact::TopUp(f) => Reach::Oil([Some(f.pan), None]),
        Fact::PartChange(f) => Reach::Oil([Some(f.pan), None]),
        Fact::Move(f) => Reach::Oil([f.from.pan(), f.to.pan()]),
        Fact::Service(f) => Reach::Oil([Some(f.pan), None]),
        Fact::PanJob(f) => Reach::Oil([Some(f.pan), None]),
        Fact::Reading(f) => Reach::Oil([Some(f.pan), None]),
        Fact::Sign(f) => Reach::Oil([f.pan, None]),
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Closed(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::Job(_)
        | Fact::Run(_)
        | Fact::RunNoted(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => Reach::Free,
    }
}
