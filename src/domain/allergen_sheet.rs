//! The allergen sheet: what each pan's oil and food carry, by the log, and whether it still stands as it was gone through.
//!
//! The caterer gives allergen information for loose food and prevents cross-contact (Food Standards Agency, *Allergen
//! guidance for food businesses*). This sheet is of pans and oil alone: what is in batter, seasoning or a bought-in
//! product is on the kitchen's own sheet of its dishes.

use super::claim::{ClaimKind, Exposure, Exposures};
use super::fat::{Fat, FatAllergen};
use super::ids::PanId;
use super::ledger::Ledger;
use super::time::Day;

/// One pan on the sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetRow {
    /// The pan.
    pub pan: PanId,
    /// What it is called.
    pub name: String,
    /// The fat in it, or that it is kept with.
    pub fat: Fat,
    /// How that fat stands in the list of allergens.
    pub allergen: FatAllergen,
    /// What food, fat, moved oil and shared machines bring.
    pub carried: Exposures,
    /// The claims that are lost.
    pub lost: Vec<ClaimKind>,
}

/// The pans in use, in name order, as they are on a trading day.
#[must_use]
pub fn sheet(ledger: &Ledger, day: Day) -> Vec<SheetRow> {
    let pans = ledger.book.pans_in_use().into_iter();
    let rows = pans.map(|pan| {
        let fat = ledger.fill(pan.pan).map_or(pan.fat, |_| ledger.fat_in(pan));
        SheetRow {
            pan: pan.pan,
            name: pan.name.clone(),
            fat,
            allergen: fat.allergen(),
            carried: ledger.pan_exposures(pan.pan),
            lost: ledger.claims_lost(pan.pan, day).iter().map(|c| c.what).collect(),
        }
    });
    rows.collect()
}

/// What a sheet says, short enough for an entry: `1: rapeseed, gluten fish; 2: dripping, animal_fat meat, -vegetarian`.
/// A claim that stands changes only with the rest, or ends by the clock; one that is lost is part of it.
#[must_use]
pub fn short(rows: &[SheetRow]) -> String {
    let each = rows.iter().map(|row| {
        let mut said = format!("{}: {}", plain(&row.name), row.fat.key());
        let carried: Vec<&str> = row.carried.iter().map(Exposure::key).collect();
        if !carried.is_empty() {
            said.push_str(", ");
            said.push_str(&carried.join(" "));
        }
        for lost in &row.lost {
            said.push_str(", -");
            said.push_str(lost.key());
        }
        said
    });
    each.collect::<Vec<_>>().join("; ")
}

/// A pan's name with nothing in it that parts one pan of a sheet from the next.
fn plain(name: &str) -> String {
    name.replace([':', ';', ','], " ")
}

/// Whether a sheet in its short form still holds for a pan: the same fat, the same claims lost, and nothing carried that
/// it did not name. Fresh oil carries less than the sheet says, which misleads nobody into eating.
fn holds(checked: &str, row: &SheetRow) -> bool {
    let name = plain(&row.name);
    let mut pans = checked.split("; ").filter_map(|pan| pan.split_once(": "));
    let Some((_, said)) = pans.find(|(pan, _)| *pan == name) else {
        return false;
    };
    let mut said = said.split(", ");
    if said.next() != Some(row.fat.key()) {
        return false;
    }
    let (lost, carried): (Vec<&str>, Vec<&str>) = said.partition(|words| words.starts_with('-'));
    let lost = lost
        .into_iter()
        .filter_map(|key| ClaimKind::from_key(key.trim_start_matches('-')));
    let carried = carried.into_iter().flat_map(|words| words.split(' '));
    let carried: Vec<Exposure> = carried.filter_map(Exposure::from_key).collect();
    lost.eq(row.lost.iter().copied()) && row.carried.iter().all(|met| carried.contains(&met))
}

/// Whether the sheet is to be gone through: it never was, something happened since that asks for it, or it no longer
/// holds for every pan. No pan, no sheet.
#[must_use]
pub fn is_open(ledger: &Ledger, day: Day) -> bool {
    let rows = sheet(ledger, day);
    let checked = ledger.allergens_checked().map_or("", |checked| checked.sheet.as_str());
    ledger.allergens_opened().is_some() && !rows.is_empty() || !rows.iter().all(|row| holds(checked, row))
}
