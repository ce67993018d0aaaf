//! What if, and what would help: the oil of a pan tried another way, what would make it last, when to measure next.
//!
//! Nothing here is ever written: a trial lives on the screen that shows it, and Today knows nothing of it.

use super::forecast::{self, Forecast};
use super::life::Known;
use super::oil;
use crate::domain::facts::oil::Reading;
use crate::domain::facts::setup::Measures;
use crate::domain::ids::{EntryId, InstrumentId, PanId};
use crate::domain::ledger::{Happened, Ledger, PanFill};
use crate::domain::limits::CHIPS_BELOW;
use crate::domain::oil_life::{self, Knob, Lift, OilLife, Quantity, Trial, WhatIf};
use crate::domain::time::Day;

/// What a trial comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Tried {
    /// The oil life, were it so.
    pub life: OilLife,
    /// The line as it was, going on as it would.
    pub line: Forecast,
}

/// Where the knobs of a pan stand; `None` for an empty pan.
#[must_use]
pub fn trial(ledger: &Ledger, pan: PanId, today: Day) -> Option<Trial> {
    let known = Known::of(ledger, pan, today)?;
    Some(Trial::as_it_is(&known.outlook, known.full))
}

/// Whether any service of a pan was logged with how hot it fried; where none was, its usual heat is a guess.
#[must_use]
pub fn heat_is_logged(ledger: &Ledger, pan: PanId) -> bool {
    let mut events = ledger.fills(pan).iter().flat_map(|fill| &fill.events);
    events.any(|event| matches!(&event.what, Happened::Service(service) if service.temp.is_some()))
}

/// Which heat is too hot for chips.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TooHot {
    /// The usual one.
    Usual,
    /// Another, only tried.
    Tried,
}

/// Whether a heat is not under [`CHIPS_BELOW`]: the usual one, where the log knows it, or another that is tried. A usual
/// heat that is only guessed is held against nobody.
#[must_use]
pub fn too_hot_for_chips(usual: Trial, now: Trial, heat_logged: bool) -> Option<TooHot> {
    let (usual, now) = (usual.at(Knob::Temp), now.at(Knob::Temp));
    let too_hot = |dc| dc >= i32::from(CHIPS_BELOW.dc());
    if too_hot(usual) && heat_logged {
        Some(TooHot::Usual)
    } else {
        (too_hot(now) && now != usual).then_some(TooHot::Tried)
    }
}

/// What comes of trying something on the oil in a pan; `None` for an empty pan.
#[must_use]
pub fn tried(ledger: &Ledger, pan: PanId, today: Day, what: &WhatIf) -> Option<Tried> {
    let known = Known::of(ledger, pan, today)?;
    let known = Known {
        history: what.by_now(&known.history),
        outlook: what.ahead(&known.outlook),
        ..known
    };
    let life = known.life();
    let (ahead, change) = forecast::ahead(ledger, &known, life.days_left, today);
    let as_it_is = (*oil::line(ledger, pan, today)).clone()?;
    Some(Tried {
        life,
        line: Forecast {
            ahead,
            change,
            ..as_it_is
        },
    })
}

/// When to measure next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measure {
    /// After the service of this day.
    pub after: Day,
    /// With the instrument polar compounds were last read with, where one is known.
    pub with: Option<InstrumentId>,
    /// Whether it is a reading to be taken again now, because the last of its kind does not fit.
    pub again: bool,
}

/// What would help.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Advice {
    /// What would make this oil last, most first.
    pub levers: Vec<Lift>,
    /// When a reading is worth most; `None` where none would change what is done.
    pub measure: Option<Measure>,
}

/// Levers said at most.
const LEVERS_MOST: usize = 3;
/// Services under which a lever is not worth a word.
const LEVER_LEAST: f64 = 0.5;

/// What would help the oil in a pan; nothing for an empty one.
#[must_use]
pub fn advice(ledger: &Ledger, pan: PanId, today: Day) -> Advice {
    let (Some(known), Some(fill)) = (Known::of(ledger, pan, today), ledger.fill(pan)) else {
        return Advice::default();
    };
    let Known {
        history, outlook, shop, ..
    } = &known;
    let mut levers = oil_life::levers(history, outlook, shop);
    levers.retain(|lift| lift.services >= LEVER_LEAST);
    levers.truncate(LEVERS_MOST);
    let with = instrument(ledger, fill);
    let spread = with.and_then(|id| ledger.book.instrument(id)?.spread);
    let worth_most = || {
        let next = oil_life::next_reading(history, outlook, shop, with, spread)?;
        let coming = forecast::trading_days_after(ledger, today, next.services);
        Some(Measure {
            after: if next.services == 0 { today } else { *coming.last()? },
            with,
            again: false,
        })
    };
    let life = oil::life(ledger, pan, today);
    let doubtful = (*life).as_ref().and_then(|life| doubtful(fill, &life.contradicting));
    let again = doubtful.map(|reading| Measure {
        after: today,
        with: reading.instrument,
        again: true,
    });
    Advice {
        levers,
        measure: again.or_else(worth_most),
    }
}

/// A reading that does not fit, with none of its kind after it: taken again, the second tells which of them to believe.
fn doubtful<'a>(fill: &'a PanFill, contradicting: &[EntryId]) -> Option<&'a Reading> {
    [Quantity::Polar, Quantity::Ffa].iter().find_map(|quantity| {
        let (id, last) = fill.events.iter().rev().find_map(|event| {
            let Happened::Reading(reading) = &event.what else {
                return None;
            };
            quantity.measured(reading.value).map(|_| (event.id, reading))
        })?;
        contradicting.contains(&id).then_some(last)
    })
}

/// What polar compounds were last read with in this fill, or else the first instrument there is for them.
fn instrument(ledger: &Ledger, fill: &PanFill) -> Option<InstrumentId> {
    let read = fill.events.iter().rev().find_map(|event| {
        let Happened::Reading(reading) = &event.what else {
            return None;
        };
        Quantity::Polar.measured(reading.value).map(|_| reading.instrument)
    });
    read.unwrap_or_else(|| {
        let mut tools = ledger.book.instruments.iter();
        tools.find_map(|(id, tool)| (tool.measures == Measures::Polar).then_some(*id))
    })
}
