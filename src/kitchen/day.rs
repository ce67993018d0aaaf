//! What the screens of light-up and lock-up show now, worked out from the machine of the day's jobs.

use super::Kitchen;
use crate::domain::day_jobs::{DayJobs, LightPan, LockUp, Refusal, Stage, may_light};
use crate::domain::evidence::Word;
use crate::domain::facts::run::{Contents, Place};
use crate::domain::fat::Fat;
use crate::domain::guide::Scene;
use crate::domain::guide::gate::Gate;
use crate::domain::ids::{JobId, PanId, PersonId};
use crate::domain::procedure::StepId;
use crate::domain::time::Now;
use crate::domain::wait::Standing;
use crate::store::Journal;

/// What the light-up's screen is for now.
#[derive(Clone, Debug, PartialEq)]
pub enum LightNow {
    /// No light-up is open.
    Closed,
    /// Scraps were left outdoors: what was found, for that lock-up.
    Found(JobId, Gate),
    /// Which pan.
    Pans,
    /// A pan is looked at.
    Pan(PanId, Gate),
    /// A pan that must not be lit.
    Shut(PanId, Refusal),
}

/// What the light-up's screen is for now, with the pan in hand.
#[must_use]
pub fn light_now(day: &DayJobs, scene: &Scene, in_hand: Option<PanId>, now: &Now) -> LightNow {
    if day.state().light.is_none() {
        return LightNow::Closed;
    }
    let asked = in_hand.map(|pan| (pan, day.light_gate(scene, pan, now)));
    match asked {
        Some((pan, Ok(Some(gate)))) => LightNow::Pan(pan, gate),
        Some((_, Err(Refusal::FoundFirst))) | Some((_, Ok(None))) | None => day
            .found_first()
            .map_or(LightNow::Pans, |owed| LightNow::Found(owed.job, day.found_gate())),
        Some((pan, Err(why))) => LightNow::Shut(pan, why),
    }
}

/// Who may stand beside this starter at the range, with their initials.
#[must_use]
pub fn may_stand_beside(scene: &Scene, starter: PersonId) -> Vec<(PersonId, String)> {
    let people = scene.people.iter().map(|(person, _)| person);
    people
        .filter(|beside| matches!(may_light(scene, starter, Some(beside.person)), Ok(Word::Supervised)))
        .map(|beside| (beside.person, beside.initials.clone()))
        .collect()
}

/// A pan in the light-up's list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LightRow {
    /// The pan.
    pub pan: PanId,
    /// What it is called.
    pub name: String,
    /// The fat it is kept with.
    pub fat: Fat,
    /// Where its lighting stands.
    pub stage: Stage,
    /// Seconds until its melt is to be looked at, none or less when that is due; `None` where nothing melts.
    pub look_s: Option<i64>,
    /// It must not be lit.
    pub empty: bool,
}

/// The pans, by name, as the light-up finds them.
#[must_use]
pub fn light_rows(day: &DayJobs, scene: &Scene, now: &Now) -> Vec<LightRow> {
    let light = day.state().light.as_ref();
    let row = |pan: &crate::domain::guide::scene::PanNow| {
        let begun = light.and_then(|l| l.pans.get(&pan.pan.pan));
        LightRow {
            pan: pan.pan.pan,
            name: pan.pan.name.clone(),
            fat: pan.pan.fat,
            stage: begun.map_or(Stage::Look, |p| p.stage_at(now)),
            look_s: begun.and_then(|p| look_s(p, now)),
            empty: pan.place != Place::InPan || !matches!(pan.contents, Contents::Oil | Contents::SetFat),
        }
    };
    scene.pans.iter().map(row).collect()
}

fn look_s(pan: &LightPan, now: &Now) -> Option<i64> {
    pan.next_look(now).map(due_in_s)
}

/// Seconds until a look is due, rounded up, none or less once it is.
pub(super) const fn due_in_s(standing: Standing) -> i64 {
    match standing {
        Standing::Running { left_ms } => (left_ms + 999) / 1000,
        Standing::Over { since_ms } => -(since_ms / 1000),
        Standing::AskTime => 0,
    }
}

/// What the lock-up's screen is for now.
#[derive(Clone, Debug, PartialEq)]
pub enum LockNow {
    /// No lock-up is open.
    Closed,
    /// The clocks disagree about the ten minutes between the probes.
    AskTime,
    /// Something is asked, of a pan where one is meant.
    Ask(Gate, Option<PanId>),
    /// Nothing is left but to wait for the second probe.
    Wait,
}

/// Which of the lock-up's other ways is taken with the scraps.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Scraps {
    /// By probe.
    #[default]
    Probed,
    /// There are none.
    None,
    /// Still warm, thin, outdoors.
    Outdoors,
}

/// What the lock-up's screen is for now.
#[must_use]
pub fn lock_now(day: &DayJobs, scene: &Scene, scraps: Scraps, now: &Now) -> LockNow {
    let Some(lock) = &day.state().lock else {
        return LockNow::Closed;
    };
    let other = match scraps {
        Scraps::Probed => None,
        Scraps::None => day.no_scraps_gate(),
        Scraps::Outdoors => day.scraps_out_gate(),
    };
    if let Some(gate) = other {
        return LockNow::Ask(gate, None);
    }
    let standing = wait_standing(lock, now);
    match day.lock_asks(scene, now).into_iter().next() {
        Some(ask) if ask.gate.id() == StepId::ScrapsAgain => match standing {
            Some(Standing::Running { .. }) => LockNow::Wait,
            Some(Standing::AskTime) => LockNow::AskTime,
            Some(Standing::Over { .. }) | None => LockNow::Ask(ask.gate, ask.pan),
        },
        Some(ask) => LockNow::Ask(ask.gate, ask.pan),
        None => LockNow::Wait,
    }
}

/// Where the ten minutes between the probes stand.
#[must_use]
pub fn wait_standing(lock: &LockUp, now: &Now) -> Option<Standing> {
    lock.wait
        .filter(|_| lock.scraps.is_none())
        .map(|wait| wait.standing(now))
}

/// Seconds until the second probe, rounded up; `None` where nothing runs.
#[must_use]
pub fn second_probe_s(day: &DayJobs, now: &Now) -> Option<i64> {
    match wait_standing(day.state().lock.as_ref()?, now)? {
        Standing::Running { left_ms } => Some((left_ms + 999) / 1000),
        Standing::Over { .. } | Standing::AskTime => None,
    }
}

/// A pan's name.
pub fn pan_name<J: Journal>(kitchen: &Kitchen<J>, pan: PanId) -> String {
    kitchen
        .ledger()
        .book
        .pan(pan)
        .map(|pan| pan.name.clone())
        .unwrap_or_default()
}
