//! What a pan is kept for, lost and restored: what to tell the counter, what restores it, and the allergen sheet.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::fat::FatAllergen;
use crate::domain::ids::MachineId;
use crate::domain::ledger::{Because, Book, Ledger, Lost, Met};
use crate::domain::quick::Need;

use super::setup::{claim_name, exposure_name};
use super::{Lang, dates, format, run};

/// A title, button or line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// Heading of what to tell.
    Tell,
    /// Heading of what restores it.
    Restores,
    /// What restores no promise.
    RestoresNot,
    /// Heading of the reasons.
    Why,
    /// Before the reason that was given.
    WhyGiven,
    /// Why the reason was put in afterwards.
    WhyAfter,
    /// The way to the entry that lost it.
    ToEntry,
    /// Heading of what the log knows.
    LogKnows,
    /// Heading of what is to be seen.
    LookAtIt,
    /// Beside something the log knows.
    There,
    /// Beside something that is missing.
    Missing,
    /// What it rests on.
    Basis,
    /// Until when tonight.
    Until,
    /// Restores it.
    Restore,
    /// Begins it for an evening.
    Begin,
    /// What that means.
    BeginText,
    /// Nothing is promised here.
    Nothing,
    /// The way to this page.
    ToHere,
    /// The sheet's title.
    Sheet,
    /// It stands open.
    SheetOpen,
    /// The way to it.
    SheetGo,
    /// What going through it means.
    SheetText,
    /// What is not on it.
    SheetNot,
    /// It was never gone through.
    SheetNever,
    /// Print it.
    Print,
    /// Gone through.
    SheetChecked,
    /// Heading: what the fat brings.
    ColumnFat,
    /// Heading: what oil and food carry.
    ColumnCarries,
    /// Nothing known of.
    CarriesNothing,
    /// Nothing of the list.
    FatNone,
    /// Nobody knows before the label is read.
    FatLabel,
    /// Heading of what a machine met.
    MachineMet,
    /// A machine met nothing since its last strip-clean.
    MetNothing,
}

/// The words of a [`Line`].
#[must_use]
pub const fn line(what: Line, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Line::Tell => "Tell the counter now",
        Line::Restores => "What restores it",
        Line::RestoresNot => "Filtering does not. Neither does waiting, skimming or a top-up.",
        Line::Why => "Why? Now or later",
        Line::WhyGiven => "Why",
        Line::WhyAfter => "Why, said afterwards",
        Line::ToEntry => "The entry in the log",
        Line::LogKnows => "By the log",
        Line::LookAtIt => "Look, then say what you see",
        Line::There => "yes",
        Line::Missing => "missing",
        Line::Basis => "What it rests on",
        Line::Until => "Until when?",
        Line::Restore => "Restore it",
        Line::Begin => "Begin it",
        Line::BeginText => {
            "Only on a pan emptied and cleaned today, with fresh oil nothing was fried in. It ends by itself."
        }
        Line::Nothing => "This pan is kept for nothing.",
        Line::ToHere => "Kept for…",
        Line::Sheet => "Allergen sheet",
        Line::SheetOpen => "Allergen sheet: to be gone through",
        Line::SheetGo => "Go through it",
        Line::SheetText => {
            "Pan by pan: is it so? Then put right the signs and the sheet at the counter. Read the labels of fat, batter and coating."
        }
        Line::SheetNot => {
            "Pans and oil by the log, and nothing else: batter, sauces and bought-in food stay on your own sheet of dishes. The law names 14 allergens; those not named here were not asked about."
        }
        Line::SheetNever => "Nobody has gone through it yet.",
        Line::Print => "Print",
        Line::SheetChecked => "Gone through, it is so",
        Line::ColumnFat => "Fat",
        Line::ColumnCarries => "Oil and food carry",
        Line::CarriesNothing => "nothing the log knows of",
        Line::FatNone => "no allergen of the list",
        Line::FatLabel => "read its label",
        Line::MachineMet => "What it met since its last strip-clean",
        Line::MetNothing => "Met nothing since its last strip-clean.",
    }
}

/// The reasons a promise is lost, in one touch.
#[must_use]
pub const fn lost_reasons(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "Battered piece in it",
        "Wrong scoop or basket",
        "Wrong oil in",
        "Shared a machine",
        "Not known",
    ]
}

/// The one touch that loses a promise: "Log pan 4’s gluten-free as lost".
#[must_use]
pub fn log_lost(pan: &str, claim: ClaimKind, lang: Lang) -> String {
    let Lang::En = lang;
    let kept = format::first_low(claim_name(claim, lang));
    format!("Log {}’s {kept} as lost", run::pan_name(pan, lang))
}

/// A promise that is lost: "Gluten-free lost".
#[must_use]
pub fn lose(claim: ClaimKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} lost", claim_name(claim, lang))
}

/// A promise that stands: "Gluten-free stands".
#[must_use]
pub fn stands(claim: ClaimKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} stands", claim_name(claim, lang))
}

/// A loss as it stands: "Gluten-free lost, 13:05 on 25 November".
#[must_use]
pub fn stands_lost(lost: &Lost, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "{} lost, {}",
        claim_name(lost.what, lang),
        dates::moment(lost.at, lost.off_min, lang)
    )
}

/// The same for Today: "Pan 4: Gluten-free lost, 13:05 on 25 November".
#[must_use]
pub fn pan_lost(pan: &str, lost: &Lost, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: {}", run::pan_title(pan, lang), stands_lost(lost, lang))
}

/// What lost it, where the log itself says so.
#[must_use]
pub fn because(lost: &Lost, lang: Lang) -> Option<String> {
    let Lang::En = lang;
    match lost.because {
        Because::Said => None,
        Because::Met(Exposure::Unknown) => Some("The log says so: nobody knows what this oil has met.".to_owned()),
        Because::Met(met) => Some(format!(
            "The log says so: this oil has met {}.",
            format::first_low(exposure_name(met, lang))
        )),
    }
}

/// What to tell the counter, and whom they tell.
#[must_use]
pub fn tell(pan: &str, claim: ClaimKind, since: &str, lang: Lang) -> [String; 3] {
    let Lang::En = lang;
    let kept = format::first_low(claim_name(claim, lang));
    [
        format!(
            "“{} is not {kept} now.” Everybody at the counter, out loud.",
            run::pan_title(pan, lang)
        ),
        format!("Take the {kept} sign down. Sell nothing from this pan as {kept}."),
        format!(
            "Tell anyone served from it since {since}, and before if it may have happened before. Anyone unwell: medical help. Trouble breathing: the emergency number, at once."
        ),
    ]
}

/// What restores a promise, a line each.
#[must_use]
pub const fn restores(claim: ClaimKind, lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    match claim {
        ClaimKind::GlutenFree => &[
            "Pan emptied, cleaned, seen dry.",
            "Fresh oil, filtered through no shared machine.",
            "Its own basket, scoop and tongs.",
        ],
        ClaimKind::Vegetarian => &[
            "Pan emptied, cleaned, seen dry.",
            "Fresh oil that has met no animal fat, fish or meat.",
            "Its own basket, scoop and tongs.",
        ],
        ClaimKind::Halal => &[
            "Pan emptied, cleaned, seen dry.",
            "Fresh oil, and meat or animal fat only on your own basis.",
            "Its own basket, scoop and tongs.",
        ],
    }
}

/// Something that restores a promise.
#[must_use]
pub const fn need(need: Need, evening: bool, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match need {
        Need::Emptied if evening => "Pan emptied and filled today",
        Need::Emptied => "Pan emptied since (oil change)",
        Need::FreshOil if evening => "Fresh oil in it, nothing fried in it yet",
        Need::FreshOil => "Fresh oil in it",
        Need::NothingExcluded => "Nothing in the oil that it excludes",
        Need::CleanDry => "Pan clean and dry before the oil went in",
        Need::OwnUtensils => "Own basket, scoop, tongs at this pan",
        Need::Basis => "What it rests on, in words",
        Need::Until => "Until when, within a day",
        Need::NotStanding => "Not lost, so nothing to restore",
    }
}

/// What else is to be seen before an evening.
#[must_use]
pub const fn only_such_food(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Only food that keeps it, until then"
}

/// Why it is not restored.
#[must_use]
pub fn not_restored(pan: &str, claim: ClaimKind, missing: Need, met: Option<Exposure>, lang: Lang) -> String {
    let Lang::En = lang;
    let met = met.map(|met| format!(" It has met: {}.", exposure_name(met, lang)));
    format!(
        "{} is not {} yet. Missing: {}.{}",
        format::first_up(pan),
        format::first_low(claim_name(claim, lang)),
        format::first_low(need(missing, false, lang)),
        met.unwrap_or_default()
    )
}

/// How a fat stands in the list of allergens.
#[must_use]
pub fn fat_allergen(allergen: FatAllergen, lang: Lang) -> String {
    let Lang::En = lang;
    match allergen {
        FatAllergen::None => line(Line::FatNone, lang).to_owned(),
        FatAllergen::Declared(what) => format!("{}: declare it, refined or not", exposure_name(what, lang)),
        FatAllergen::ExemptIfRefined(what) => format!(
            "{}: exempt only if its label says fully refined",
            exposure_name(what, lang)
        ),
        FatAllergen::OnItsLabel => line(Line::FatLabel, lang).to_owned(),
    }
}

/// Exposures as a list: "wheat or batter, fish".
#[must_use]
pub fn exposures(set: impl Iterator<Item = Exposure>, lang: Lang) -> String {
    let Lang::En = lang;
    let names: Vec<String> = set.map(|e| format::first_low(exposure_name(e, lang))).collect();
    if names.is_empty() {
        return line(Line::CarriesNothing, lang).to_owned();
    }
    names.join(", ")
}

/// When the sheet is of: "As of 14 Nov, 13:05".
#[must_use]
pub fn as_of(moment: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("As of {moment}")
}

/// Who went through it last.
#[must_use]
pub fn gone_through(who: &str, moment: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Last gone through by {who}, {moment}")
}

/// A promise that ends by itself.
#[must_use]
pub fn ends(claim: ClaimKind, moment: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} until {moment}", claim_name(claim, lang))
}

/// One meeting of a machine, by the entry that says so: "Met wheat or batter, fish: pan 1, 14 Nov".
#[must_use]
pub fn met(met: &Met, book: &Book, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    let pan = met.pan.and_then(|pan| book.pan(pan));
    let pan = pan.map(|pan| format!("{}, ", run::pan_name(&pan.name, lang)));
    let day = dates::short(book.day_of(met.at, off_min), lang);
    format!(
        "Met {}: {}{day}",
        exposures(met.set.iter(), lang),
        pan.unwrap_or_default()
    )
}

/// All a machine has met since its last strip-clean, a line for each entry that says so.
#[must_use]
pub fn all_met(ledger: &Ledger, machine: MachineId, off_min: i16, lang: Lang) -> Vec<String> {
    let all = ledger.machine_met(machine).iter().filter(|met| !met.set.is_empty());
    all.map(|one| met(one, &ledger.book, off_min, lang)).collect()
}

/// The same in one sentence, for a list of machines.
#[must_use]
pub fn machine_met(ledger: &Ledger, machine: MachineId, off_min: i16, lang: Lang) -> String {
    match all_met(ledger, machine, off_min, lang) {
        none if none.is_empty() => line(Line::MetNothing, lang).to_owned(),
        some => some.join("; "),
    }
}
