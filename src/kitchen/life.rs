//! The oil life of what is in a pan, from the ledger: the history of its fill and what is ahead of it.

use std::rc::Rc;

use super::taught;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Age, Service};
use crate::domain::facts::setup::{Kitchen as SetUp, Pan};
use crate::domain::ids::Dev;
use crate::domain::ids::PanId;
use crate::domain::ledger::{Happened, Ledger, OilEvent, PanFill};
use crate::domain::oil_life::{
    self, Event, FillHistory, Habit, LimitsInForce, OilLife, Outlook, REFERENCE_TEMP, Shop, Start, TopUps, UsualFry,
    What, usual_temp,
};
use crate::domain::time::{Day, Millis};
use crate::domain::units::{Dose, Volume};
use crate::domain::volume::share_of_mass;

/// How many fills oil may have passed through before its past no longer matters: stops a ring of moves.
pub(super) const MOVES_BACK: u8 = 4;

/// Fills of a pan before this one that make its habit: people and trade change.
const HABIT_FILLS: usize = 10;

/// Limits in force in this kitchen.
#[must_use]
pub fn limits(kitchen: Option<&SetUp>) -> LimitsInForce {
    LimitsInForce {
        polar: kitchen.and_then(|k| k.polar_limit),
        acid: kitchen.and_then(|k| k.acid_limit),
    }
}

/// All that an answer about what is in a pan is worked out from.
#[derive(Clone, Debug)]
pub struct Known {
    /// What happened to the fill.
    pub history: FillHistory,
    /// What is ahead of it.
    pub outlook: Outlook,
    /// What earlier fills taught.
    pub shop: Rc<Shop>,
    /// What the pan holds when full.
    pub full: Volume,
}

impl Known {
    /// What is known of what is in a pan on a day; `None` for an empty pan.
    #[must_use]
    pub fn of(ledger: &Ledger, pan: PanId, today: Day) -> Option<Self> {
        let fill = ledger.fill(pan)?;
        let set_up = ledger.book.pan(pan)?;
        let shop = taught::shop(ledger);
        let history = history(ledger, fill, MOVES_BACK, &shop, today);
        Some(Self {
            outlook: outlook(ledger, set_up, fill, &history, today),
            history,
            shop,
            full: set_up.full,
        })
    }

    /// The oil life.
    #[must_use]
    pub fn life(&self) -> OilLife {
        oil_life::of(&self.history, &self.outlook, &self.shop)
    }
}

/// The oil life of what is in a pan on a day; `None` for an empty pan.
#[must_use]
pub fn of(ledger: &Ledger, pan: PanId, today: Day) -> Option<OilLife> {
    Known::of(ledger, pan, today).map(|known| known.life())
}

/// What happened to a fill, as the model reads it; oil that came from another pan is judged with what `shop` taught.
/// Trading days before `until` that say nothing of the pan's hours are services nobody logged.
pub(super) fn history(ledger: &Ledger, fill: &PanFill, moves_back: u8, shop: &Shop, until: Day) -> FillHistory {
    let start = match fill.age {
        Age::Fresh => Start::Fresh,
        Age::Since(day) => Start::Worked {
            services: trading_days_between(ledger, day, fill.day),
        },
        Age::Unknown => Start::Unknown,
    };
    let logged = fill
        .events
        .iter()
        .filter_map(|event| told(ledger, fill, event, moves_back, shop));
    FillHistory::new(
        fill.filled_with,
        start,
        logged.chain(unlogged(ledger, fill, until)).collect(),
    )
}

/// The services nobody logged: oil does not stay fresh for want of a pencil. Each is put in the middle of its trading
/// day, after a reading in the morning and before one at night; oil that came in later on its first day is taken not
/// to have been fried in that day.
fn unlogged<'a>(ledger: &'a Ledger, fill: &'a PanFill, until: Day) -> impl Iterator<Item = Event> + 'a {
    let book = &ledger.book;
    let began = ledger.line(fill.began).and_then(|line| line.standing());
    let off_min = began.map_or(0, |entry| entry.off_min);
    let midday = move |day: Day| day.begins(off_min, book.day_start_min()).plus(12 * Millis::HOUR);
    let days = (0..until.since(fill.day).max(0)).map(|n| fill.day.plus(n));
    let now = ledger.fill(fill.pan).is_some_and(|now| now.began == fill.began);
    let out_since = ledger.out_since(fill.pan).filter(|_| now);
    let silent = days.filter(move |day| {
        let mut its = fill.events.iter().filter(|event| event.day == *day);
        let worked = its.clone().any(|event| matches!(event.what, Happened::Service(_)));
        let filtered = its.any(|event| matches!(event.what, Happened::Filtered(_)));
        let noon = midday(*day);
        let cold = fill.is_cold(noon) || out_since.is_some_and(|since| since <= noon);
        !worked && !cold && fill.at < noon && (filtered || book.is_trading_day(*day))
    });
    silent.map(move |day| Event {
        order: (midday(day), midday(day), Dev(0), 0),
        entry: fill.began,
        what: What::Unlogged { temp: None },
    })
}

/// The day a finished fill ended on.
pub(super) fn ended_on(ledger: &Ledger, fill: &PanFill) -> Option<Day> {
    let end = ledger.line(fill.ended?.by)?.standing()?;
    Some(ledger.book.day_of(end.at, end.off_min))
}

fn told(ledger: &Ledger, fill: &PanFill, event: &OilEvent, moves_back: u8, shop: &Shop) -> Option<Event> {
    let what = match &event.what {
        Happened::TopUp(t) => What::Topped {
            fat: t.fat,
            added: t.amount.volume,
            after: event.volume,
        },
        Happened::PartChange(c) => What::PartChanged {
            fat: fill.filled_with,
            added: c.fresh.volume,
            after: event.volume,
        },
        Happened::MovedIn {
            from,
            from_fill,
            left,
            arrived,
        } => {
            let source = ledger.fills(*from).iter().find(|f| Some(f.began) == *from_fill)?;
            let before = moves_back.checked_sub(1)?;
            // As it was when it left its fill: hours parked cold add nothing.
            let leaves = source.events.iter().position(|e| e.id == *left);
            let until = source.events.iter().take(leaves?).cloned().collect();
            let day = source.events.get(leaves?)?.day;
            let then = PanFill {
                events: until,
                ..source.clone()
            };
            let past = history(ledger, &then, before, shop, day);
            let pan = ledger.book.pan(*from)?;
            let oil = oil_life::incoming(&past, &outlook(ledger, pan, &then, &past, day).habit, shop);
            What::MovedIn {
                oil,
                added: *arrived,
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
        Happened::Filtered(_) => powder(ledger, event).map_or(What::Filtered, |powder| What::Adsorbed {
            dose: share_of_mass(powder, fill.filled_with),
        }),
        Happened::MovedOut { .. } | Happened::Returned { .. } | Happened::Service(_) | Happened::Noted(_) => {
            return None;
        }
    };
    let order = ledger.line(event.id)?.standing()?.oil_order();
    Some(Event {
        order,
        entry: event.id,
        what,
    })
}

/// The powder a filter run was done with: what the machine it names was set up with when it was written.
fn powder(ledger: &Ledger, event: &OilEvent) -> Option<Dose> {
    let entry = ledger.line(event.id)?.standing()?;
    let machine = if let Fact::Run(run) = &entry.fact {
        run.machine
    } else if let Fact::RunNoted(noted) = &entry.fact {
        noted.machine
    } else {
        None
    };
    ledger.book.powder(machine?, entry)
}

/// What was known of a pan's use before this fill, and nothing of the fill itself: else its own hours would make it
/// look fresher.
pub(super) fn habit(ledger: &Ledger, pan: &Pan, fill: &PanFill) -> Habit {
    let usual = ledger.book.kitchen.as_ref().map(|k| k.fry_min).unwrap_or_default();
    let before = before(ledger, fill);
    let untaught = Shop::new();
    let earlier: Vec<FillHistory> = before
        .iter()
        .map(|f| history(ledger, f, 0, &untaught, ended_on(ledger, f).unwrap_or(fill.day)))
        .collect();
    Habit {
        days: pan.usual_days,
        fry: UsualFry::learn(usual, before.iter().flat_map(|f| services(f)).map(|s| s.fry)),
        temp: earlier.iter().fold(REFERENCE_TEMP, |temp, fill| usual_temp(fill, temp)),
        top_up: if earlier.is_empty() {
            TopUps::GUESSED
        } else {
            TopUps::learn(&earlier)
        },
    }
}

/// The last fills of a pan that were over when this one began, oldest first. One that lived on in a machine is not
/// among them: it would teach this one what came later.
fn before<'a>(ledger: &'a Ledger, fill: &PanFill) -> Vec<&'a PanFill> {
    let over = |f: &&PanFill| f.at < fill.at && f.ended.is_some_and(|end| end.at <= fill.at);
    let latest = ledger.fills(fill.pan).iter().rev().filter(over);
    let mut before: Vec<&PanFill> = latest.take(HABIT_FILLS).collect();
    before.reverse();
    before
}

/// What is ahead of a fill.
pub(super) fn outlook(ledger: &Ledger, pan: &Pan, fill: &PanFill, history: &FillHistory, today: Day) -> Outlook {
    let kitchen = ledger.book.kitchen.as_ref();
    let habit = habit(ledger, pan, fill);
    let worked = before(ledger, fill);
    let worked = worked.into_iter().chain([fill]).flat_map(services).map(|s| s.fry);
    let day_of_fill = trading_days_between(ledger, fill.fresh_on().unwrap_or(fill.day), today).saturating_add(1);
    Outlook {
        limits: limits(kitchen),
        fry: UsualFry::learn(kitchen.map(|k| k.fry_min).unwrap_or_default(), worked),
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
        | Happened::Returned { .. }
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
