//! Plays rows in their order: what the estimator foretells of each reading, knowing only the rows before it.

use panward::domain::facts::oil::{Load, Measured};
use panward::domain::ids::{Dev, EntryId, InstrumentId};
use panward::domain::oil_life::{
    self, DaysLeft, Estimate, Event, FillHistory, Habit, LimitsInForce, Outlook, REFERENCE_TEMP, Shop, Start, TopUps,
    UsualFry, What, usual_temp,
};
use panward::domain::time::Millis;
use panward::domain::units::{Minutes, Share, Temp, Volume};

use crate::row::Row;

/// Frying hours of a service nobody has logged one of yet: our own choice.
const USUAL_MINUTES: Minutes = match Minutes::new(360) {
    Some(minutes) => minutes,
    None => unreachable!(),
};

/// A reading and what was foretold of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Foretold {
    /// The fill's name.
    pub fill: String,
    /// Its trading day.
    pub day: f64,
    /// Median and 80 % interval, % m/m.
    pub forecast: Estimate,
    /// What the instrument showed, % m/m.
    pub truth: f64,
    /// Hours this fill had fried when it was read, so far as they were logged.
    pub fry_hours: f64,
}

/// One fill as the rows so far tell it.
#[derive(Clone, Debug)]
struct Fill {
    name: String,
    history: FillHistory,
    events: Vec<Event>,
    /// What was known of services and top-ups before it began.
    habit: Habit,
    fry_hours: f64,
}

/// The shop so far.
#[derive(Clone, Debug, Default)]
pub struct Player {
    fills: Vec<Fill>,
    instruments: Vec<String>,
    worked: Vec<Minutes>,
    /// What the fills up to each place taught, as long as none of them has changed since.
    taught: Vec<Shop>,
}

impl Player {
    /// Takes the next row; gives what was foretold of its reading, if it holds one. An impossible row must not come
    /// here.
    pub fn take(&mut self, row: &Row) -> Option<Foretold> {
        let at = self.fill(row);
        self.taught.truncate(at);
        let temp = row.frying_c.and_then(celsius);
        let fresh = self.fills[at].events.is_empty() && row.day == 0.0;
        // Asked before this service is one more without a top-up.
        let usual_top_up = self.usual_top_up(at);
        match row.fry_hours {
            Some(hours) => {
                let fry = minutes(hours);
                self.worked.push(fry);
                self.push(
                    at,
                    What::Fried {
                        fry,
                        temp,
                        load: Load::Normal,
                    },
                );
                self.fills[at].fry_hours += hours;
            }
            None if fresh => {}
            None => {
                self.push(
                    at,
                    What::Unlogged {
                        temp: Some(temp.unwrap_or(REFERENCE_TEMP)),
                    },
                );
                self.fills[at].fry_hours += self.fills[at].habit.fry.mean_h;
            }
        }
        let foretold = row.tpc.map(|truth| self.read(at, row, truth));
        let after = litres(row.volume_l);
        let added = match row.topup_l {
            Some(added) => litres(added),
            None if fresh => Volume::NONE,
            None => litres(row.volume_l * usual_top_up),
        };
        if added > Volume::NONE {
            let fat = row.fat;
            self.push(at, What::Topped { fat, added, after });
        }
        foretold
    }

    fn read(&mut self, at: usize, row: &Row, truth: f64) -> Foretold {
        let instrument = self.instrument(&row.instrument);
        let shop = self.shop_without(at);
        let fill = &self.fills[at];
        let forecast = oil_life::reading_ahead(&fill.history, &fill.habit, &shop, instrument, None);
        let foretold = Foretold {
            fill: row.fill.clone(),
            day: row.day,
            forecast,
            truth,
            fry_hours: fill.fry_hours,
        };
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "0–100 % in hundredths"
        )]
        let share = Share::from_cpc((truth * 100.0).round() as u16);
        if let Some(share) = share {
            let value = Measured::Polar(share);
            let spread = None;
            self.push(
                at,
                What::Read {
                    value,
                    instrument,
                    spread,
                },
            );
        }
        foretold
    }

    /// Days left of a fill under a limit on what `instrument` shows (or, without one, on what the oil holds), as the
    /// rows so far tell it.
    #[must_use]
    pub fn days_left(&mut self, fill: &str, limit: f64, shown_by: Option<&str>) -> Option<DaysLeft> {
        let at = self.fills.iter().position(|f| f.name == fill)?;
        let shop = self.shop_without(at);
        let off = shown_by.map_or(0.0, |name| {
            let tool = self.instrument(name);
            let fill = &self.fills[at];
            oil_life::reading_off(&fill.history, &fill.habit, &shop, tool)
        });
        let fill = &self.fills[at];
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "0–100 % in hundredths"
        )]
        let polar = Share::from_cpc(((limit - off) * 100.0).round().clamp(1.0, 10_000.0) as u16);
        let limits = LimitsInForce { polar, acid: None };
        let outlook = Outlook {
            fry: UsualFry::learn(USUAL_MINUTES, self.worked.iter().copied()),
            temp: usual_temp(&fill.history, fill.habit.temp),
            top_up: self.usual_top_up(at),
            ..Outlook::new(limits, fill.habit)
        };
        oil_life::of(&fill.history, &outlook, &shop).days_left
    }

    fn usual_top_up(&self, at: usize) -> f64 {
        let fill = &self.fills[at];
        fill.habit.top_up.in_fill(&fill.history)
    }

    /// What all fills but one taught, in the order they began.
    fn shop_without(&mut self, without: usize) -> Shop {
        while self.taught.len() < without {
            let mut shop = self.taught.last().cloned().unwrap_or_default();
            let fill = &self.fills[self.taught.len()];
            shop.learn(&fill.history, &fill.habit);
            self.taught.push(shop);
        }
        let before = without.checked_sub(1).and_then(|last| self.taught.get(last));
        let mut shop = before.cloned().unwrap_or_default();
        for fill in &self.fills[without + 1..] {
            shop.learn(&fill.history, &fill.habit);
        }
        shop
    }

    fn push(&mut self, at: usize, what: What) {
        let fill = &mut self.fills[at];
        let place = u32::try_from(fill.events.len()).unwrap_or(u32::MAX);
        let moment = Millis(i64::from(place));
        fill.events.push(Event {
            order: (moment, moment, Dev(1), place),
            entry: EntryId(u128::from(place)),
            what,
        });
        fill.history = FillHistory::new(fill.history.fat(), Start::Fresh, fill.events.clone());
    }

    fn fill(&mut self, row: &Row) -> usize {
        if let Some(at) = self.fills.iter().position(|f| f.name == row.fill) {
            return at;
        }
        let before = self.fills.last();
        let habit = Habit {
            top_up: TopUps::learn(self.fills.iter().map(|f| &f.history)),
            temp: before.map_or(REFERENCE_TEMP, |f| usual_temp(&f.history, f.habit.temp)),
            ..Habit::of(UsualFry::learn(USUAL_MINUTES, self.worked.iter().copied()))
        };
        self.fills.push(Fill {
            name: row.fill.clone(),
            history: FillHistory::new(row.fat, Start::Fresh, Vec::new()),
            events: Vec::new(),
            habit,
            fry_hours: 0.0,
        });
        self.fills.len() - 1
    }

    fn instrument(&mut self, name: &str) -> Option<InstrumentId> {
        if name.is_empty() {
            return None;
        }
        let known = self.instruments.iter().position(|n| n == name);
        let at = known.unwrap_or_else(|| {
            self.instruments.push(name.to_owned());
            self.instruments.len() - 1
        });
        u128::try_from(at + 1).ok().map(InstrumentId)
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a possible row's hours are 0–24"
)]
fn minutes(hours: f64) -> Minutes {
    Minutes::new((hours * 60.0).round() as u16).unwrap_or_default()
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a possible row's litres are 0–1,000"
)]
fn litres(litres: f64) -> Volume {
    Volume::from_ml((litres * 1_000.0).round() as u32).unwrap_or(Volume::NONE)
}

#[expect(clippy::cast_possible_truncation, reason = "a possible row's degrees are 100–250")]
fn celsius(degrees: f64) -> Option<Temp> {
    Temp::from_dc((degrees * 10.0).round() as i16)
}
