//! The oil life of what is in a pan, from the ledger: the history of its fill and what is ahead of it.

use crate::domain::facts::oil::{Age, Service};
use crate::domain::facts::setup::{Kitchen as SetUp, Pan};
use crate::domain::ids::PanId;
use crate::domain::ledger::{Happened, Ledger, OilEvent, PanFill};
use crate::domain::oil_life::{
    self, Event, FillHistory, Habit, LimitsInForce, OilLife, Outlook, REFERENCE_TEMP, Shop, Start, TopUps, UsualFry,
    What, usual_temp,
};
use crate::domain::time::Day;

/// How many fills oil may have passed through before its past no longer matters: stops a ring of moves.
pub(super) const MOVES_BACK: u8 = 4;

/// Limits in force in this kitchen.
#[must_use]
pub fn limits(kitchen: Option<&SetUp>) -> LimitsInForce {
    LimitsInForce {
        polar: kitchen.and_then(|k| k.polar_limit),
        acid: kitchen.and_then(|k| k.acid_limit),
    }
}

/// The oil life of what is in a pan on a day; `None` for an empty pan.
#[must_use]
pub fn of(ledger: &Ledger, pan: PanId, today: Day) -> Option<OilLife> {
    let fill = ledger.fill(pan)?;
    let set_up = ledger.book.pan(pan)?;
    let history = history(ledger, fill, MOVES_BACK);
    let outlook = outlook(ledger, set_up, fill, &history, today);
    Some(oil_life::of(&history, &outlook, &Shop::new()))
}

/// What happened to a fill, as the model reads it.
pub(super) fn history(ledger: &Ledger, fill: &PanFill, moves_back: u8) -> FillHistory {
    let start = match fill.age {
        Age::Fresh => Start::Fresh,
        Age::Since(day) => Start::Worked {
            services: trading_days_between(ledger, day, fill.day),
        },
        Age::Unknown => Start::Unknown,
    };
    let events = fill
        .events
        .iter()
        .filter_map(|event| told(ledger, fill, event, moves_back))
        .collect();
    FillHistory::new(fill.fat, start, events)
}

fn told(ledger: &Ledger, fill: &PanFill, event: &OilEvent, moves_back: u8) -> Option<Event> {
    let what = match &event.what {
        Happened::TopUp(t) => What::Topped {
            fat: t.fat,
            added: t.amount.volume,
            after: event.volume,
        },
        Happened::PartChange(c) => What::Topped {
            fat: fill.fat,
            added: c.fresh.volume,
            after: event.volume,
        },
        Happened::MovedIn {
            from,
            from_fill,
            arrived,
        } => {
            let source = ledger.fills(*from).iter().find(|f| Some(f.began) == *from_fill)?;
            let before = moves_back.checked_sub(1)?;
            let until = source.events.iter().filter(|e| e.at < event.at).cloned().collect();
            let then = PanFill {
                events: until,
                ..source.clone()
            };
            let past = history(ledger, &then, before);
            let pan = ledger.book.pan(*from)?;
            let oil = oil_life::incoming(
                &past,
                &outlook(ledger, pan, &then, &past, event.day).habit,
                &Shop::new(),
            );
            What::MovedIn {
                oil,
                added: arrived.volume,
                after: event.volume,
            }
        }
        Happened::Service(s) if s.fry.get() > 0 => What::Fried {
            fry: s.fry,
            temp: s.temp,
            load: s.load,
        },
        Happened::Reading(r) => What::Read {
            value: r.value,
            instrument: r.instrument,
            spread: r.instrument.and_then(|id| ledger.book.instrument(id)?.spread),
        },
        Happened::Sign(s) => What::Sign(s.sign),
        Happened::Filtered(_) => What::Filtered,
        Happened::MovedOut { .. } | Happened::Service(_) | Happened::Noted(_) => return None,
    };
    let order = ledger.line(event.id)?.standing()?.oil_order();
    Some(Event {
        order,
        entry: event.id,
        what,
    })
}

/// What is ahead of a fill.
pub(super) fn outlook(ledger: &Ledger, pan: &Pan, fill: &PanFill, history: &FillHistory, today: Day) -> Outlook {
    let kitchen = ledger.book.kitchen.as_ref();
    let usual = kitchen.map(|k| k.fry_min).unwrap_or_default();
    let before: Vec<&PanFill> = ledger.fills(fill.pan).iter().filter(|f| f.at < fill.at).collect();
    let earlier: Vec<FillHistory> = before.iter().map(|f| self::history(ledger, f, 0)).collect();
    // What was known before this fill, and nothing of the fill itself: else its own hours would make it look fresher.
    let habit = Habit {
        days: pan.usual_days,
        fry: UsualFry::learn(usual, before.iter().flat_map(|f| services(f)).map(|s| s.fry)),
        temp: earlier.iter().fold(REFERENCE_TEMP, |temp, fill| usual_temp(fill, temp)),
        top_up: TopUps::learn(&earlier),
    };
    let day_of_fill = trading_days_between(ledger, fill.fresh_on().unwrap_or(fill.day), today).saturating_add(1);
    Outlook {
        limits: limits(kitchen),
        fry: UsualFry::learn(
            usual,
            before.iter().copied().chain([fill]).flat_map(services).map(|s| s.fry),
        ),
        temp: usual_temp(history, habit.temp),
        top_up: habit.top_up.in_fill(history),
        day_of_fill,
        habit,
    }
}

fn services(fill: &PanFill) -> impl Iterator<Item = &Service> {
    fill.events.iter().filter_map(|e| match &e.what {
        Happened::Service(s) => Some(s),
        Happened::TopUp(_)
        | Happened::PartChange(_)
        | Happened::MovedOut { .. }
        | Happened::MovedIn { .. }
        | Happened::Reading(_)
        | Happened::Sign(_)
        | Happened::Noted(_)
        | Happened::Filtered(_) => None,
    })
}

/// Trading days from one day up to, not including, another.
fn trading_days_between(ledger: &Ledger, from: Day, to: Day) -> u16 {
    let days = (0..to.since(from).max(0)).filter(|n| ledger.book.is_trading_day(from.plus(*n)));
    u16::try_from(days.count()).unwrap_or(u16::MAX)
}
