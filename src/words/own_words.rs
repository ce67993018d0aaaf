//! The owner's own words for their machine, spoken where a hand is on it: what its switch says, how its filters go in.
//! Where the owner typed none, nothing is said: no make's words are built in.

use crate::domain::evidence::Item;
use crate::domain::facts::setup::Machine;
use crate::domain::procedure::StepId;

use super::Lang;

/// What the owner calls what is touched at this step, or looked at in this item of it; `None` where they named nothing.
#[must_use]
pub fn own_words(step: StepId, item: Option<Item>, machine: &Machine, lang: Lang) -> Option<String> {
    let Lang::En = lang;
    let slot = |slot: &str| {
        let named = machine.words.iter().find(|(name, _)| name == slot);
        named.map(|(_, words)| words.as_str()).filter(|words| !words.is_empty())
    };
    let switch = |start: Option<&str>| match (start, slot("off")) {
        (Some(start), Some(off)) => Some(format!("Switch: “{start}” starts it, “{off}” stops it.")),
        (Some(start), None) => Some(format!("Switch: “{start}” starts it.")),
        (None, Some(off)) => Some(format!("Switch: “{off}” stops it.")),
        (None, None) => None,
    };
    match (step, item) {
        (StepId::Draw, _) => switch(slot("draw")),
        (StepId::Rinsing | StepId::Returning, _) => switch(slot("return")),
        (StepId::AwayOff, Some(Item::Heater)) => slot("off").map(|off| format!("Switch: “{off}”.")),
        (StepId::Dry, Some(Item::Filter)) | (StepId::AwayFilter, Some(Item::SpentFilter))
            if !machine.filters.is_empty() =>
        {
            Some(format!("Yours, in order: {}.", machine.filters.join(", then ")))
        }
        _ => None,
    }
}
