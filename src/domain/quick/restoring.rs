//! What restores a lost claim, or lets one begin for an evening: what of it the log knows, and what must be seen.
//!
//! Gluten-free needs separate, clean oil; filtering does not make shared oil gluten-free; a day straight after the
//! fryer was cleaned and filled with fresh oil will do; own tongs and scoops (Coeliac UK, *Guidance for fish and chip
//! shops*). That vegetarian and halal oil is restored in the same way is the project default: oil, pan or scoop that
//! met fish, meat or animal fat is the same carrier.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::facts::oil::{Age, ClaimRestored};
use crate::domain::facts::setup::Claim;
use crate::domain::ids::PanId;
use crate::domain::keyed::keyed;
use crate::domain::ledger::{Happened, Ledger, Lost, PanFill, meets};
use crate::domain::time::{Day, Millis};

use super::refusal::QuickRefusal;
use super::{Saying, named};

/// The longest a claim may be begun for at once: a day, so that an evening is never forgotten into the next. Project
/// default.
pub const LONGEST_EVENING: i64 = 24 * Millis::HOUR;

keyed! {
    /// Something that restores a claim.
    pub enum Need {
        /// All oil out of the pan since the loss; for an evening, in this trading day.
        Emptied = "emptied",
        /// Fresh oil in, all of it in the pan, and for an evening nothing fried in it yet.
        FreshOil = "fresh_oil",
        /// Nothing in this oil, its fat included, that the claim excludes.
        NothingExcluded = "nothing_excluded",
        /// The pan seen clean and dry before the oil went in.
        CleanDry = "clean_dry",
        /// Own basket, scoop and tongs.
        OwnUtensils = "own_utensils",
        /// What it rests on, in words.
        Basis = "basis",
        /// For an evening: until when, within a day.
        Until = "until",
        /// A claim that is lost, or one this pan is not set up for.
        NotStanding = "not_standing",
    }
}

/// How a claim stands between lost and restored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Restoring {
    /// When and how it was lost, if it was.
    pub lost: Option<Lost>,
    /// Whether it can only be begun until a moment: the pan is not set up for it.
    pub evening: bool,
    /// What the log knows of, and whether it is so. All else is to be seen.
    pub known: [(Need, bool); 3],
    /// What the oil carries that the claim excludes.
    pub exposure: Option<Exposure>,
}

impl Restoring {
    /// The first thing the log says is missing.
    #[must_use]
    pub fn missing(&self) -> Option<Need> {
        self.known.iter().find(|(_, there)| !there).map(|(need, _)| *need)
    }
}

/// What restores `what` of a pan, or begins it, on a day; `None` while it stands.
#[must_use]
pub fn restoring(ledger: &Ledger, pan: PanId, what: ClaimKind, basis: &str, day: Day) -> Option<Restoring> {
    let lost = ledger.claims_lost(pan, day).into_iter().find(|lost| lost.what == what);
    let listed = ledger.book.pan(pan)?.claims_on(day).find(|c| c.what == what).cloned();
    if lost.is_none() && (listed.is_some() || ledger.claims_standing(pan, day).iter().any(|c| c.what == what)) {
        return None;
    }
    let evening = listed.is_none();
    let claim = listed.unwrap_or_else(|| Claim {
        what,
        from: day,
        basis: basis.to_owned(),
        until: None,
    });
    let fill = ledger.fill(pan).filter(|_| ledger.oil_left(pan).is_none());
    let of_today = fill.is_some_and(|fill| fill.day == day);
    let emptied = lost.map_or(of_today, |lost| lost.emptied) && (!evening || of_today);
    let set = if evening {
        ledger.oil_exposures(pan)
    } else {
        ledger.pan_exposures(pan)
    };
    let exposure = meets(&claim, set);
    Some(Restoring {
        lost,
        evening,
        known: [
            (Need::Emptied, emptied),
            (Need::FreshOil, fill.is_some_and(|fill| is_fresh(fill, evening))),
            (Need::NothingExcluded, exposure.is_none()),
        ],
        exposure,
    })
}

/// Fresh from its container and from nowhere else; for an evening, before anything was fried in it.
fn is_fresh(fill: &PanFill, unused: bool) -> bool {
    let spoils = |what: &Happened| match what {
        Happened::MovedIn { .. } | Happened::Returned { .. } => true,
        Happened::Service(service) => unused && service.fry.get() > 0,
        Happened::TopUp(_)
        | Happened::PartChange(_)
        | Happened::MovedOut { .. }
        | Happened::Reading(_)
        | Happened::Sign(_)
        | Happened::Noted(_)
        | Happened::Filtered(_) => false,
    };
    fill.age == Age::Fresh && !fill.events.iter().any(|event| spoils(&event.what))
}

/// Refuses a restoration that lacks anything, with what it lacks first.
pub(super) fn check(ledger: &Ledger, restored: &ClaimRestored, said: Saying) -> Result<(), QuickRefusal> {
    let (pan, claim) = (restored.pan, restored.what);
    let refused = |need, exposure| {
        Err(QuickRefusal::NotRestored {
            pan,
            claim,
            need,
            exposure,
        })
    };
    let basis = restored.basis.as_deref().unwrap_or_default();
    let Some(now) = restoring(ledger, pan, claim, basis, said.day) else {
        return refused(Need::NotStanding, None);
    };
    if let Some(need) = now.missing() {
        return refused(need, now.exposure);
    }
    let Some(looked) = restored.looked else {
        return refused(Need::CleanDry, None);
    };
    if basis.trim().is_empty() {
        return refused(Need::Basis, None);
    }
    let fits = match looked.until {
        Some(until) => now.evening && (1..=LONGEST_EVENING).contains(&until.since(said.at)),
        None => !now.evening,
    };
    if !fits {
        return refused(Need::Until, None);
    }
    named(ledger, said.who).map(drop)
}
