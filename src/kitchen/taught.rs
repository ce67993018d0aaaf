//! What the kitchen's finished fills taught about its oil, instruments and habits: the prior of its next ones.

use std::rc::Rc;

use super::life::{self, MOVES_BACK};
use crate::domain::ledger::{Happened, Ledger, PanFill};
use crate::domain::oil_life::{Quantity, Shop};
use crate::domain::sorted::in_order;

/// Finished fills learnt from: between this many and twice as many, the latest. Older ones say little about a kitchen
/// whose people, trade and instruments have changed; the window moves on in whole steps, so that one more finished
/// fill is one more lesson and not a hundred.
const WINDOW: usize = 50;

/// What the fills finished so far taught, in the order they ended.
#[must_use]
pub fn shop(ledger: &Ledger) -> Rc<Shop> {
    let print = ledger.ended_print();
    ledger.kept.of(0, print, || {
        let lessons = lessons(ledger);
        let begin = (lessons.len() / WINDOW).saturating_sub(1) * WINDOW;
        let mut print = ledger.book.print;
        let mut shop = Rc::new(Shop::new());
        for fill in &lessons[begin..] {
            print = print.and(fill.print);
            let before = Rc::clone(&shop);
            shop = ledger.kept.of(fill.began.0, print, || learnt(ledger, fill, &before));
        }
        Shop::clone(&shop)
    })
}

/// What a shop is after one more fill.
fn learnt(ledger: &Ledger, fill: &PanFill, before: &Shop) -> Shop {
    let mut shop = before.clone();
    if let (Some(pan), Some(ended)) = (ledger.book.pan(fill.pan), life::ended_on(ledger, fill)) {
        let history = life::history(ledger, fill, MOVES_BACK, before, ended);
        shop.learn(&history, &life::habit(ledger, pan, fill));
    }
    shop
}

/// The finished fills with a reading of polar compounds, in the order they ended.
fn lessons(ledger: &Ledger) -> Vec<&PanFill> {
    let fills = ledger.book.pans.keys().flat_map(|pan| ledger.fills(*pan));
    let mut finished: Vec<&PanFill> = fills.filter(|fill| fill.ended.is_some() && was_read(fill)).collect();
    in_order(&mut finished, |fill| fill.ended.map(|end| (end.at, end.by)));
    finished
}

fn was_read(fill: &PanFill) -> bool {
    fill.events.iter().any(|event| match &event.what {
        Happened::Reading(reading) => Quantity::Polar.measured(reading.value).is_some(),
        Happened::TopUp(_)
        | Happened::PartChange(_)
        | Happened::MovedOut { .. }
        | Happened::MovedIn { .. }
        | Happened::Returned { .. }
        | Happened::Service(_)
        | Happened::Sign(_)
        | Happened::Noted(_)
        | Happened::Filtered(_) => false,
    })
}
