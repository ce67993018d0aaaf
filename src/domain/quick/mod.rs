//! Quick entries of the log: what a person says in a few touches, checked against the ledger, made into drafts.

mod amend;
mod doubt;
mod form;
mod jobs;
mod kind;
mod moving;
mod open_again;
mod refusal;
mod restoring;
mod retype;
mod said;

use super::claim::Exposures;
use super::entry::Draft;
use super::facts::oil::{
    ClaimChange, ClaimRestored, Fill, Move, Note, OilChange, PartChange, Reading, Service, Sign, TopUp,
};
use super::facts::pan_job::PanJob;
use super::facts::run::Contents;
use super::facts::{AllergensChecked, Fact, MachineCleaned, RunNoted};
use super::fat::Fat;
use super::ids::{PanId, PersonId};
use super::ledger::{Ledger, check_at, meets};
use super::time::{Day, Millis, Now};

pub use amend::{Amendment, TAKE_BACK_MS, amend, take_back, void};
pub use doubt::doubt_reading;
pub use form::{After, AgeSaid, Form, Gauge, Gauged, Slot};
pub use jobs::{own_job, swap, take_job};
pub use kind::{Kind, is_quick};
pub use moving::{Other, others};
pub use open_again::open_again;
pub use refusal::{Doubt, QuickRefusal};
pub use restoring::{LONGEST_EVENING, Need, Restoring, restoring};
pub use retype::{Retype, retype, retyped};
pub use said::{Gap, moment, parts};

/// What somebody says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Quick {
    /// A measured number.
    Reading(Reading),
    /// Fresh oil added.
    TopUp(TopUp),
    /// A service worked, or not.
    Service(Service),
    /// Something noticed.
    Sign(Sign),
    /// Some out, fresh in.
    PartChange(PartChange),
    /// All out, and what went in after it; without a fill the pan stands empty.
    OilChange {
        /// The oil out.
        out: OilChange,
        /// The oil in.
        fill: Option<Fill>,
    },
    /// Oil into an empty pan.
    Fill(Fill),
    /// Oil from one pan to another.
    Move(Move),
    /// Words.
    Note(Note),
    /// A claim lost.
    ClaimLost(ClaimChange),
    /// A claim restored, or begun for an evening, on evidence.
    ClaimRestored(ClaimRestored),
    /// Filtered without the guide, or not filtered.
    RunNoted(RunNoted),
    /// A machine strip-cleaned.
    MachineCleaned(MachineCleaned),
    /// The allergen sheet gone through.
    AllergensChecked(AllergensChecked),
    /// Pans that do each other's jobs for a day.
    PanJobs(Vec<PanJob>),
}

/// A quick entry, with who says it and when it happened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// What.
    pub what: Quick,
    /// Who.
    pub who: Option<PersonId>,
    /// When; `None` for now.
    pub at: Option<Millis>,
    /// Whether a [`Doubt`] was already put to them and they stand by it.
    pub sure: bool,
}

/// The drafts that say it.
///
/// # Errors
///
/// [`QuickRefusal`]: what it speaks of is not there, its oil is not in the pan, it cannot be, its date does not
/// stand, or it breaks a claim. [`QuickRefusal::Doubt`] asks once and is gone with `sure`.
pub fn drafts(ledger: &Ledger, said: Said, now: Now) -> Result<Vec<Draft>, QuickRefusal> {
    let at = said.at.unwrap_or(now.wall);
    let day = ledger.book.day_of(at, now.off_min);
    let saying = Saying { who: said.who, at, day };
    let facts = facts(said.what);
    for (i, fact) in facts.iter().enumerate() {
        // The fill of a whole change goes into the pan that its first half empties.
        let emptied = i > 0;
        known(ledger, fact)?;
        possible(ledger, fact, saying, emptied)?;
        check_at(ledger, fact, at, now.wall).map_err(QuickRefusal::Date)?;
        if let Fact::Move(moved) = fact {
            moving::dated(ledger, moved, at).map_err(QuickRefusal::Date)?;
        }
        doubt::impossible(ledger, fact)?;
        if !said.sure
            && let Some(doubt) = doubt::doubt(ledger, fact, at, day)
        {
            return Err(QuickRefusal::Doubt(doubt));
        }
    }
    let who = said.who;
    let draft = |fact| Draft { at: said.at, who, fact };
    Ok(facts.into_iter().map(draft).collect())
}

/// Who says it, and of when.
#[derive(Clone, Copy)]
struct Saying {
    who: Option<PersonId>,
    at: Millis,
    day: Day,
}

fn facts(what: Quick) -> Vec<Fact> {
    match what {
        Quick::Reading(f) => vec![Fact::Reading(f)],
        Quick::TopUp(f) => vec![Fact::TopUp(f)],
        Quick::Service(f) => vec![Fact::Service(f)],
        Quick::Sign(f) => vec![Fact::Sign(f)],
        Quick::PartChange(f) => vec![Fact::PartChange(f)],
        Quick::OilChange { out, fill } => {
            let fill = fill.map(|fill| Fact::Fill(Fill { pan: out.pan, ..fill }));
            std::iter::once(Fact::OilChange(out)).chain(fill).collect()
        }
        Quick::Fill(f) => vec![Fact::Fill(f)],
        Quick::Move(f) => vec![Fact::Move(f)],
        Quick::Note(f) => vec![Fact::Note(f)],
        Quick::ClaimLost(f) => vec![Fact::ClaimLost(f)],
        Quick::ClaimRestored(f) => vec![Fact::ClaimRestored(f)],
        Quick::RunNoted(f) => vec![Fact::RunNoted(f)],
        Quick::MachineCleaned(f) => vec![Fact::MachineCleaned(f)],
        Quick::AllergensChecked(f) => vec![Fact::AllergensChecked(f)],
        Quick::PanJobs(jobs) => jobs.into_iter().map(Fact::PanJob).collect(),
    }
}

/// Whether everything the fact names is set up.
fn known(ledger: &Ledger, fact: &Fact) -> Result<(), QuickRefusal> {
    for pan in super::ledger::pans(fact).into_iter().flatten() {
        if ledger.book.pan(pan).is_none_or(|p| !p.in_use) {
            return Err(QuickRefusal::NoSuchPan { pan });
        }
    }
    let machine = if let Fact::RunNoted(noted) = fact {
        noted.machine
    } else if let Fact::Move(moved) = fact {
        moved.from.machine().or(moved.to.machine())
    } else if let Fact::MachineCleaned(cleaned) = fact {
        if ledger.book.person(cleaned.by).is_none() {
            return Err(QuickRefusal::NoSuchPerson { person: cleaned.by });
        }
        Some(cleaned.machine)
    } else {
        None
    };
    match machine {
        Some(machine) if ledger.book.machine(machine).is_none() => Err(QuickRefusal::NoSuchMachine { machine }),
        Some(_) | None => Ok(()),
    }
}

/// Whether the oil it speaks of is where it must be, and no claim is broken by it.
fn possible(ledger: &Ledger, fact: &Fact, said: Saying, emptied: bool) -> Result<(), QuickRefusal> {
    let day = said.day;
    match fact {
        Fact::Reading(f) => holds(ledger, f.pan),
        Fact::Service(f) if f.fry.get() > 0 => holds(ledger, f.pan),
        // Oil that is parked is changed where it stands.
        Fact::OilChange(f) if moving::is_parked(ledger, f.pan) => Ok(()),
        Fact::OilChange(f) => holds(ledger, f.pan),
        Fact::TopUp(f) => {
            holds(ledger, f.pan).and_then(|()| at_home(ledger, f.pan))?;
            fat_fits(ledger, f.pan, f.fat, day)
        }
        Fact::PartChange(f) => holds(ledger, f.pan).and_then(|()| at_home(ledger, f.pan)),
        Fact::Fill(f) => {
            if !emptied && ledger.fill(f.pan).is_some() && !moving::is_parked(ledger, f.pan) {
                return Err(QuickRefusal::StillOil { pan: f.pan });
            }
            dry_of_water(ledger, f.pan)?;
            // A fill says "not empty any more"; a run whose oil is still out would bring that back on top of it.
            if ledger.open_runs().any(|run| run.pan == f.pan) && ledger.oil_left(f.pan).is_some() {
                return Err(QuickRefusal::OilOut { pan: f.pan });
            }
            fat_fits(ledger, f.pan, f.fat, day)
        }
        Fact::Move(f) => {
            if let Some(to) = f.to.pan() {
                dry_of_water(ledger, to)?;
            }
            moving::possible(ledger, f, day)
        }
        Fact::PanJob(f) => {
            if ledger.book.pan(f.of).is_none_or(|p| !p.in_use) {
                return Err(QuickRefusal::NoSuchPan { pan: f.of });
            }
            claims_fit(ledger, f.pan, f.food, f.day)
        }
        Fact::ClaimLost(f) => {
            let stands = ledger.claims_standing(f.pan, day).iter().any(|c| c.what == f.what);
            if stands {
                Ok(())
            } else {
                Err(QuickRefusal::NoSuchClaim { pan: f.pan })
            }
        }
        Fact::ClaimRestored(f) => restoring::check(ledger, f, said),
        Fact::AllergensChecked(_) => named(ledger, said.who).map(drop),
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Service(_)
        | Fact::Closed(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::Correct(_)
        | Fact::Job(_)
        | Fact::Run(_)
        | Fact::RunNoted(_)
        | Fact::MachineCleaned(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => Ok(()),
    }
}

/// No oil goes onto water, whoever says so.
fn dry_of_water(ledger: &Ledger, pan: PanId) -> Result<(), QuickRefusal> {
    match ledger.contents(pan) {
        Contents::CleaningWater => Err(QuickRefusal::WaterIn { pan }),
        Contents::Oil | Contents::SetFat | Contents::EmptyWet | Contents::EmptyDry => Ok(()),
    }
}

/// Somebody who is set up here says so.
fn named(ledger: &Ledger, who: Option<PersonId>) -> Result<PersonId, QuickRefusal> {
    who.filter(|who| ledger.book.person(*who).is_some())
        .ok_or(QuickRefusal::Nobody)
}

fn holds(ledger: &Ledger, pan: PanId) -> Result<(), QuickRefusal> {
    ledger.fill(pan).map_or(Err(QuickRefusal::NoOil { pan }), |_| Ok(()))
}

fn at_home(ledger: &Ledger, pan: PanId) -> Result<(), QuickRefusal> {
    ledger
        .oil_left(pan)
        .map_or(Ok(()), |_| Err(QuickRefusal::OilOut { pan }))
}

fn fat_fits(ledger: &Ledger, pan: PanId, fat: Fat, day: Day) -> Result<(), QuickRefusal> {
    claims_fit(ledger, pan, fat.exposures(), day)
}

fn claims_fit(ledger: &Ledger, pan: PanId, set: Exposures, day: Day) -> Result<(), QuickRefusal> {
    for claim in ledger.claims_standing(pan, day) {
        if let Some(exposure) = meets(&claim, set) {
            let claim = claim.what;
            return Err(QuickRefusal::ClaimMet { pan, claim, exposure });
        }
    }
    Ok(())
}
