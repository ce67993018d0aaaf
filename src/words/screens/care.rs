//! What the screens of oil change, boil-out and old oil say around their steps.

use crate::domain::evidence::Word;
use crate::domain::facts::job::JobKind;
use crate::domain::facts::run::Contents;
use crate::domain::fat::Fat;
use crate::domain::time::Millis;
use crate::words::{Lang, format, oil, run};

use super::day::next_look;

/// Fixed words of these screens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum CareSay {
    /// Opens the guide from a quick entry.
    WithGuide,
    /// Title of the page that points to the filter job.
    PumpTitle,
    /// What to do there.
    PumpText,
    /// On the pan's page meanwhile.
    TakeUpAgain,
    /// Goes there.
    ToFilter,
    /// Another way out.
    OtherWay,
    /// Title of the page after old oil was seen out.
    HowMuchOut,
    /// Title of the page after fresh oil was seen in.
    HowMuchIn,
    /// What it went into.
    Container,
    /// The weight of what is lifted.
    HowHeavy,
    /// Another fat.
    OtherFat,
    /// Beneath the fats.
    OtherFatText,
    /// Opens the other fats.
    OtherFats,
    /// Over the wait between two looks.
    Boils,
    /// What to do in it.
    BoilsText,
    /// Looks before it is due.
    LookNow,
    /// Ends the heat.
    HeatOff,
    /// The clock's name.
    SinceHeat,
    /// Heats the water again.
    HeatAgain,
    /// Probes it after all.
    NotHeat,
    /// Nothing is left to do.
    Over,
    /// Why.
    OverText,
    /// Ends it.
    End,
    /// Leaves the pan as it stands.
    Leave,
    /// Another person.
    SomebodyElse,
    /// Beside the level of fresh oil.
    FreshLevel,
    /// Old oil, on the button that leads to its way out.
    PutBy,
    /// What to do with it.
    WasteText,
    /// No old oil stands anywhere.
    NoWaste,
}

/// The words of a [`CareSay`].
#[must_use]
pub const fn say(what: CareSay, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        CareSay::WithGuide => "With the guide, step by step",
        CareSay::PumpTitle => "Pump it out hot, and leave it in the machine.",
        CareSay::PumpText => {
            "The filter job does that, with all its holds. Take up the oil change again when the oil stands in the machine."
        }
        CareSay::TakeUpAgain => "Take up the oil change again when the oil stands in the machine.",
        CareSay::ToFilter => "To the filter job",
        CareSay::OtherWay => "Another way out",
        CareSay::HowMuchOut => "How much came out, and why?",
        CareSay::HowMuchIn => "How much went in?",
        CareSay::Container => "What it went into (may stay empty)",
        CareSay::HowHeavy => "How heavy is the heaviest?",
        CareSay::OtherFat => "Another fat",
        CareSay::OtherFatText => {
            "Another fat changes allergens and promises: sheet, signs and filter machine come first."
        }
        CareSay::OtherFats => "Another fat than before",
        CareSay::Boils => "Stay with the boil.",
        CareSay::BoilsText => "Foam, a crackle or low water: heat off at once. Never leave it.",
        CareSay::LookNow => "Look now",
        CareSay::HeatOff => "Done, or I must leave: heat off",
        CareSay::SinceHeat => "since the heat was on",
        CareSay::HeatAgain => "Heat it again",
        CareSay::NotHeat => "Leave the heat off",
        CareSay::Over => "Fresh oil is in the pan already.",
        CareSay::OverText => "It was logged without the guide. Nothing is left to ask. Light it from the light-up.",
        CareSay::End => "End here",
        CareSay::Leave => "End here, leave the pan as it stands",
        CareSay::SomebodyElse => "Somebody else goes on",
        CareSay::FreshLevel => "Cold oil grows by about a tenth as it heats: leave it room.",
        CareSay::PutBy => "Put it by",
        CareSay::WasteText => "Only at 40 °C or under by probe: out to its drum, sealed, labelled. Never to a drain.",
        CareSay::NoWaste => "No old oil waits here.",
    }
}

/// The button on a pan's page that begins a job, or goes on with it.
#[must_use]
pub const fn button(kind: JobKind, open: bool, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match (kind, open) {
        (JobKind::OilChange, false) => "Change the oil",
        (JobKind::OilChange, true) => "Go on with the oil change",
        (JobKind::BoilOut, false) => "Boil out",
        (JobKind::BoilOut, true) => "Go on with the boil-out",
        (JobKind::LightUp | JobKind::Filter | JobKind::LockUp, _) => run::job_name(kind, lang),
    }
}

/// An open job of one pan, by both: "Oil change, pan 2".
#[must_use]
pub fn job_of_pan(kind: JobKind, pan: &str, lang: Lang) -> String {
    format!("{}, {}", run::job_name(kind, lang), run::pan_name(pan, lang))
}

/// What is in a pan, beside its drawing; `leaving` while its oil is on the way out.
#[must_use]
pub const fn contents_name(contents: Contents, leaving: bool, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match contents {
        Contents::Oil | Contents::SetFat if leaving => "on its way out",
        Contents::Oil => "oil in it",
        Contents::SetFat => "set fat in it",
        Contents::CleaningWater => "water, no oil",
        Contents::EmptyWet => "empty",
        Contents::EmptyDry => "empty, dry",
    }
}

/// Why a way out for old oil is closed.
#[must_use]
pub const fn way_closed(way: Word, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match way {
        Word::Pumped => "Pumped is closed: no pumped machine here.",
        Word::ByHand => "By hand is closed: at 40 °C this fat is set.",
        _ => "Cutting out is closed: this oil does not set.",
    }
}

/// What is lifted, and from when on it takes help: "A full one weighs about 19 kg. From 7 kg on: two people or a
/// trolley."
#[must_use]
pub fn lifting(load_g: Option<u32>, from_kg: u8, lang: Lang) -> String {
    let Lang::En = lang;
    let help = format!("Over {from_kg}{}kg: two people or a trolley.", format::NBSP);
    match load_g {
        Some(grams) => format!("A full one weighs {}{}kg. {help}", (grams + 500) / 1000, format::NBSP),
        None => help,
    }
}

/// The fat a pan had before, as a choice: "Rapeseed, as before".
#[must_use]
pub fn as_before(fat: Fat, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}, as before", oil::fat_name(fat, lang))
}

/// Beside the look at the boil: how long the heat has been on, and the next look.
#[must_use]
pub fn heat_on_for(gone_s: i64, look_s: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Heat on for {}, {}", format::clock(gone_s), next_look(look_s, lang))
}

/// The standing line of a pan whose boil is to be looked at, whether it still boils or not.
#[must_use]
pub fn look_at_boil(pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("PAN {pan}, WATER: LOOK NOW")
}

/// Old oil that waits, as its tag says it: "Pan 2: hot oil inside Machine: waste, since 21:40".
#[must_use]
pub fn waste_of(pan: &str, machine: Option<&str>, since: Option<(Millis, i16)>, lang: Lang) -> String {
    let Lang::En = lang;
    let pan = run::pan_title(pan, lang);
    let mut said = match machine {
        Some(machine) => format!("{pan}: hot oil inside {machine}: waste"),
        None => format!("{pan}: old oil in its container: waste"),
    };
    if let Some((at, off_min)) = since {
        said.push_str(", since ");
        said.push_str(&format::time_of_day(at, off_min));
    }
    said
}

/// What to do before anything else is asked, for what stands in the pan now.
#[must_use]
pub const fn make_safe(contents: Contents, midway: bool, lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    match (contents, midway) {
        (_, true) => &[
            "Heat off under this pan, and see it off.",
            "Set down what you carry, level and lidded.",
            "Drain valve shut. Wipe up what was spilt.",
            "The tag hangs on this pan's control.",
        ],
        (Contents::Oil | Contents::SetFat, false) => &[
            "Heat off under this pan, and see it off.",
            "The oil stays in it, lid on.",
            "Drain valve shut.",
        ],
        (Contents::CleaningWater, false) => &[
            "Heat off under this pan, and see it off.",
            "Fan on. Stand clear of the steam.",
            "The water stays in it until it is cold.",
            "The tag hangs on this pan's control.",
        ],
        (Contents::EmptyWet | Contents::EmptyDry, false) => &[
            "Heat off under this pan, and see it off.",
            "No oil goes in before it was seen wiped and dry.",
            "The tag hangs on this pan's control.",
        ],
    }
}
