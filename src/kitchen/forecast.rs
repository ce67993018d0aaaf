//! The line of one fill's polar compounds: what was believed on each day so far, what is expected on each day ahead.
//!
//! Every point is the oil life's own answer, for what the log says of this oil by that night or with usual services
//! added; nothing is computed here that the answer does not say. What finished fills taught since counts for the past
//! as well.

use super::life::Known;
use crate::domain::facts::closed::Closed;
use crate::domain::facts::oil::Load;
use crate::domain::ids::{Dev, EntryId, PanId};
use crate::domain::ledger::{Happened, Ledger, PanFill};
use crate::domain::oil_life::{self, DaysLeft, Estimate, Event, FillHistory, Quantity, What};
use crate::domain::time::{Day, Millis};
use crate::domain::units::{Minutes, Share, Volume};

/// Most trading days the line runs ahead of today.
const AHEAD_MOST: u8 = 14;
/// Services the change is foreseen over: as far as [`DaysLeft`] counts.
const CHANGE_MOST: u8 = 60;
/// Most days of the past that are drawn; older ones are left out.
const PAST_MOST: i64 = 60;

/// What is believed at the end of a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// The day.
    pub day: Day,
    /// Polar compounds, % m/m.
    pub polar: Estimate,
}

/// A reading of polar compounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The entry.
    pub entry: EntryId,
    /// The day.
    pub day: Day,
    /// % m/m.
    pub percent: f64,
    /// One standard deviation of what it may be off by, points.
    pub sd: f64,
}

/// The whole line.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// The day the fill began.
    pub first: Day,
    /// From the first day to today.
    pub past: Vec<Point>,
    /// The trading days ahead, after their usual services.
    pub ahead: Vec<Point>,
    /// The readings.
    pub readings: Vec<Measured>,
    /// The limit on polar compounds, % m/m, where there is one.
    pub limit: Option<f64>,
    /// The last day this oil is expected to serve, by the median of days left; `None` beyond what is foreseen. It may
    /// lie past the trading days of [`Self::ahead`].
    pub change: Option<Day>,
}

/// The line of what is in a pan; `None` for an empty pan.
#[must_use]
pub fn of(ledger: &Ledger, pan: PanId, today: Day) -> Option<Forecast> {
    let fill = ledger.fill(pan)?;
    let known = Known::of(ledger, pan, today)?;
    let first = fill.day.max(today.plus(-PAST_MOST));
    let past = (0..=today.since(first).max(0)).map(|n| first.plus(n));
    let past: Vec<Day> = past.filter(|day| *day <= today).collect();
    let days = days_of(ledger, fill, &known.history);
    // A day's last event and all before it: what the log said by that night.
    let by_night = |day: &Day| days.iter().rposition(|its| its <= day).map_or(0, |last| last + 1);
    let past = points(
        &past,
        &known.history,
        &known,
        &past.iter().map(by_night).collect::<Vec<_>>(),
    );
    let (ahead, change) = ahead(ledger, &known, known.life().days_left, today);
    Some(Forecast {
        first,
        past,
        ahead,
        readings: readings(ledger, fill),
        limit: known.outlook.limits.polar.map(Share::percent),
        change,
    })
}

/// The line from a day on, and the last day the oil is expected to serve.
pub(super) fn ahead(
    ledger: &Ledger,
    known: &Known,
    days_left: Option<DaysLeft>,
    today: Day,
) -> (Vec<Point>, Option<Day>) {
    let left = days_left.and_then(|days| days.median);
    let coming: Vec<Day> = trading_days_after(ledger, today, CHANGE_MOST);
    let ahead_days = left.unwrap_or(AHEAD_MOST).saturating_add(2).min(AHEAD_MOST);
    let (served, after_services) = served(known, ahead_days.into());
    let ahead = points(&coming, &served, known, &after_services);
    let change = left.and_then(|n| match n {
        0 => Some(today),
        n => coming.get(usize::from(n) - 1).copied(),
    });
    (ahead, change)
}

/// What is believed on each day, after so many events of a history.
fn points(days: &[Day], history: &FillHistory, known: &Known, after: &[usize]) -> Vec<Point> {
    let polar = oil_life::polar_after(history, &known.outlook.habit, &known.shop, after);
    days.iter()
        .zip(polar)
        .map(|(day, polar)| Point { day: *day, polar })
        .collect()
}

/// The trading day of each event of a fill's history.
fn days_of(ledger: &Ledger, fill: &PanFill, history: &FillHistory) -> Vec<Day> {
    let began = ledger.line(fill.began).and_then(|line| line.standing());
    let off_min = began.map_or(0, |entry| entry.off_min);
    let day_of = |event: &Event| {
        let logged = fill.events.iter().find(|logged| logged.id == event.entry);
        logged.map_or_else(|| ledger.book.day_of(event.order.0, off_min), |logged| logged.day)
    };
    history.events().iter().map(day_of).collect()
}

/// The trading days after a day.
pub(super) fn trading_days_after(ledger: &Ledger, day: Day, most: u8) -> Vec<Day> {
    // A kitchen that trades once a week, after the longest time it may be closed.
    let days = (1..=i64::from(most) * 7 + Closed::MOST).map(|n| day.plus(n));
    days.filter(|d| ledger.book.is_trading_day(*d))
        .take(most.into())
        .collect()
}

/// The history with usual services and their top-ups added, as if they had been logged, and how many events there are
/// after the frying of each.
fn served(known: &Known, services: u16) -> (FillHistory, Vec<usize>) {
    let Known {
        history, outlook, full, ..
    } = known;
    let minutes = (outlook.fry.mean_h * 60.0).round();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "hours of a service, and a share of a pan"
    )]
    let (fry, added) = (
        Minutes::new(minutes.clamp(0.0, 1_440.0) as u16).unwrap_or_default(),
        Volume::from_ml((f64::from(full.ml()) * outlook.top_up).round() as u32).unwrap_or(*full),
    );
    let mut events = history.events().to_vec();
    let mut after = Vec::new();
    for n in 0..services {
        let at = Millis(i64::MAX - i64::from(services - n));
        let event = |seq, what| Event {
            order: (at, at, Dev(u64::MAX), seq),
            entry: EntryId(u128::MAX),
            what,
        };
        events.push(event(
            1,
            What::Fried {
                fry,
                temp: Some(outlook.temp),
                load: Load::Normal,
            },
        ));
        // The level before its top-up is what is compared with the limit.
        after.push(events.len());
        if added.ml() > 0 {
            let fat = history.fat();
            events.push(event(
                2,
                What::Topped {
                    fat,
                    added,
                    after: *full,
                },
            ));
        }
    }
    (FillHistory::new(history.fat(), history.start(), events), after)
}

fn readings(ledger: &Ledger, fill: &PanFill) -> Vec<Measured> {
    let read = fill.events.iter().filter_map(|event| match &event.what {
        Happened::Reading(reading) => {
            let percent = Quantity::Polar.measured(reading.value)?;
            let spread = reading.instrument.and_then(|id| ledger.book.instrument(id)?.spread);
            let spread = spread.map(Share::percent);
            Some(Measured {
                entry: event.id,
                day: event.day,
                percent,
                sd: Quantity::Polar.reading_sd(percent, spread),
            })
        }
        Happened::TopUp(_)
        | Happened::PartChange(_)
        | Happened::MovedOut { .. }
        | Happened::MovedIn { .. }
        | Happened::Returned { .. }
        | Happened::Service(_)
        | Happened::Sign(_)
        | Happened::Noted(_)
        | Happened::Filtered(_) => None,
    });
    read.collect()
}
