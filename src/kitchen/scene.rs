//! What the guide must know of the kitchen, taken from the ledger.

use chrono::Datelike;

use crate::domain::country;
use crate::domain::facts::run::{Contents, Place};
use crate::domain::facts::setup::Pan;
use crate::domain::guide::scene::{MachineNow, PanNow, Scene};
use crate::domain::ledger::Ledger;
use crate::domain::time::Day;

/// The scene on a trading day.
#[must_use]
pub fn of(ledger: &Ledger, day: Day) -> Scene {
    let book = &ledger.book;
    let country = book.kitchen.as_ref().map_or("", |k| k.country.as_str());
    let pan = |pan: &Pan| {
        let filled = ledger.fill(pan.pan);
        PanNow {
            // What is in it melts and sets as itself, whatever it is kept with.
            pan: Pan {
                fat: filled.map_or(pan.fat, |fill| fill.fat),
                ..pan.clone()
            },
            claims: ledger.claims_standing(pan.pan, day),
            place: ledger.in_pan(pan.pan).map_or(Place::InPan, |left| left.place),
            contents: ledger.contents(pan.pan),
            went: ledger
                .in_pan(pan.pan)
                .filter(|left| !left.is_home())
                .and_then(|left| left.went),
            blocks: ledger.has_blocks(pan.pan),
        }
    };
    Scene {
        people: book
            .people
            .values()
            .map(|p| (p.clone(), ledger.clean_runs(p.person)))
            .collect(),
        // A pan nobody has ever filled has nothing in it that anybody knows of.
        pans: book
            .pans_in_use()
            .into_iter()
            .filter(|p| ledger.fill(p.pan).is_some() || ledger.in_pan(p.pan).is_some())
            .map(pan)
            .collect(),
        bare: book
            .pans_in_use()
            .into_iter()
            .filter(|p| ledger.fill(p.pan).is_none())
            .map(|p| PanNow {
                place: Place::InMachine,
                contents: Contents::EmptyWet,
                went: None,
                ..pan(p)
            })
            .collect(),
        machines: book
            .machines
            .values()
            .map(|m| MachineNow {
                machine: m.clone(),
                met: ledger.machine_exposures(m.machine),
                last_fat: ledger.last_fat(m.machine),
                holds: ledger.tank(m.machine),
                set_in_line: ledger.set_in_line(m.machine),
                left_ready_by: ledger.left_ready_by(m.machine),
            })
            .collect(),
        day,
        winter: is_winter(day, country::is_southern(country)),
        second_person: book.kitchen.as_ref().is_none_or(|k| k.second_person),
        troubles: ledger.troubles().to_vec(),
    }
}

/// The winter half-year: October to March in the north, April to September in the south.
fn is_winter(day: Day, southern: bool) -> bool {
    matches!(day.date().month(), 10..=12 | 1..=3) != southern
}
