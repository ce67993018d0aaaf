//! The melt of set fat, as one hard hold: low heat and an open crust, a look every five minutes, full heat only once
//! all of it was stirred and seen liquid.

use super::LOOK_MS;
use super::light_up::high_enough;
use super::state::{LightPan, Stage, look_wait};
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::job::JobFact;
use crate::domain::facts::run::Heat;
use crate::domain::ids::PersonId;
use crate::domain::procedure::{DayTables, Hold, StepId};
use crate::domain::time::{Millis, Now};

/// Whether some of the fat was seen solid.
pub(super) fn is_set(seen: &Evidence) -> bool {
    seen.word(Item::Melt).is_some_and(|melt| melt != Word::AllLiquid)
}

/// Low heat was seen: somebody looks again in five minutes.
pub(super) fn on_low_heat(fact: &mut JobFact, who: Option<PersonId>, now: &Now) {
    fact.heat = Some(Heat::Low);
    fact.next_look = Some(now.wall.plus(LOOK_MS));
    fact.looker = who;
}

pub(super) fn apply(pan: &mut LightPan, fact: &JobFact, tables: &DayTables, rec: Millis, lived: Option<&Now>) {
    let seen = &fact.evidence;
    if fact.step == Some(StepId::MeltLow) {
        (pan.stage, pan.low, pan.look) = (Stage::Melting, true, Some(look_wait(rec, lived)));
    } else if seen.is(Item::Warming, Word::Crackling) {
        pan.stage = Stage::MakeSafe;
    } else if fact.step == Some(StepId::MeltLook) {
        pan.melt = seen.word(Item::Melt);
        pan.look = Some(look_wait(rec, lived));
        pan.stage = if all_liquid(pan, tables) {
            Stage::MeltFull
        } else {
            Stage::Melting
        };
    } else if fact.step == Some(StepId::MeltFull) {
        pan.level = seen.word(Item::Level);
        pan.stage = if high_enough(tables.melt_full, seen) {
            Stage::On
        } else {
            Stage::MakeSafe
        };
    }
}

/// The hold itself.
fn all_liquid(pan: &LightPan, tables: &DayTables) -> bool {
    !tables.melt_look.holds.contains(&Hold::Melt) || pan.melt == Some(Word::AllLiquid)
}
