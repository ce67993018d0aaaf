//! The oil of a pan: its life, its line and what would help it, each worked out once for as long as nothing they rest on changes.
//!
//! An entry about one pan leaves the others as they are, and a step of a run leaves all of them.

use std::rc::Rc;

use super::forecast::{self, Forecast};
use super::life;
use super::what_if::{self, Advice};
use crate::domain::ids::PanId;
use crate::domain::ledger::Ledger;
use crate::domain::oil_life::OilLife;
use crate::domain::time::Day;

/// The oil life of what is in a pan on a day; `None` for an empty pan.
#[must_use]
pub fn life(ledger: &Ledger, pan: PanId, day: Day) -> Rc<Option<OilLife>> {
    let print = ledger.oil_print(pan).with_day(day);
    ledger.kept.of(pan.0, print, || life::of(ledger, pan, day))
}

/// The line of what is in a pan on a day; `None` for an empty pan.
#[must_use]
pub fn line(ledger: &Ledger, pan: PanId, day: Day) -> Rc<Option<Forecast>> {
    let print = ledger.oil_print(pan).with_day(day);
    ledger.kept.of(pan.0, print, || forecast::of(ledger, pan, day))
}

/// What would help what is in a pan; nothing for an empty pan.
#[must_use]
pub fn advice(ledger: &Ledger, pan: PanId, day: Day) -> Rc<Advice> {
    let print = ledger.oil_print(pan).with_day(day);
    ledger.kept.of(pan.0, print, || what_if::advice(ledger, pan, day))
}
