//! Every reason an oil change or a boil-out says no, in words.

use crate::domain::pan_jobs::Refusal;
use crate::domain::procedure::Hold;

use super::refusals::{self, NOTHING_MOVED, Said};
use super::{Lang, format, setup};

/// What oil change and boil-out say no with.
#[must_use]
pub fn pan_refusal(refused: &Refusal, lang: Lang) -> Said {
    let Lang::En = lang;
    match refused {
        Refusal::Guide(why) => refusals::refusal(why, lang),
        Refusal::PanInRun => Said::new(
            "This pan is in the filter job",
            "Finish its run first, or leave it there with the oil in the machine.",
            "Heat stays off until the run says how it is left.",
        ),
        Refusal::HalfLit => Said::new(
            "This pan is half lit",
            "Finish lighting it, or turn its heat off and see it off.",
            "Somebody stays with it.",
        ),
        Refusal::OilInPan => Said::new(
            "There is oil in this pan",
            "The oil change first: the pan empty, the heat off.",
            "No water, no chemical. Heat stays off.",
        ),
        Refusal::WaterInPan => Said::new(
            "There is water in this pan",
            "The boil-out first, to its end: drained, wiped, dry.",
            "The tag stays on its control. Heat stays off.",
        ),
        Refusal::OilSplit => Said::new(
            "Some of the oil is in the pan, some is not",
            "Bring it together in the filter job, then begin here.",
            "Heat stays off. Nobody carries oil.",
        ),
        Refusal::AmountNeeded => Said::new(
            "How many litres was it",
            "The litres, as near as you can say.",
            NOTHING_MOVED,
        ),
        Refusal::ClaimMet { claim, exposure } => Said::new(
            format!(
                "{} would meet: {}",
                setup::claim_name(*claim, lang),
                setup::exposure_name(*exposure, lang).to_ascii_lowercase()
            ),
            "Another fat, or the owner ends what this pan is kept for.",
            "The pan stays empty, its tag on.",
        ),
        Refusal::WhyNot => Said::new("Say why it is changed", "A reason in a few words.", NOTHING_MOVED),
        Refusal::TooMuch { full } => Said::new(
            format!("More than this pan holds: {} full", format::litres(*full)),
            "The litres again, or less oil. Never overfill.",
            NOTHING_MOVED,
        ),
        Refusal::NeedsHelp { from_kg } => Said::of_hold(
            format!("Too heavy for one: help from {from_kg}{}kg on", format::NBSP),
            Hold::Lift,
            lang,
        ),
        Refusal::HeatFirst => Said::of_hold("Heat is on under this pan", Hold::HeatOff, lang),
        Refusal::Midway => Said::new(
            "Oil is on its way in or out",
            "Finish this movement, then leave the pan.",
            "Stay with it. Heat stays off.",
        ),
        Refusal::NoWaste => Said::new("No old oil stands there", "Go back to Today.", NOTHING_MOVED),
    }
}
