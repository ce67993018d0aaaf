//! What is ahead of a fill: the limits in force, the usual frying and top-up, and what the owner is used to.

use crate::domain::facts::setup::AcidLimit;
use crate::domain::fat::Fat;
use crate::domain::units::{Minutes, Share, Temp};

use super::fresh;
use super::history::{FillHistory, What, share_of};
use super::kinetics::{REFERENCE_TEMP, ffa_percent};

/// The limits in force; a quantity counts only if it has one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LimitsInForce {
    /// On polar compounds.
    pub polar: Option<Share>,
    /// On acidity.
    pub acid: Option<AcidLimit>,
}

/// Why a limit is refused.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UnderFresh {
    /// What fresh oil of this fat holds already, % m/m (acidity as FFA).
    pub fresh_percent: f64,
}

impl LimitsInForce {
    /// The acidity limit as FFA, % as oleic, whichever unit the owner uses.
    #[must_use]
    pub fn ffa_percent(self) -> Option<f64> {
        self.acid.map(|limit| match limit {
            AcidLimit::Ffa(share) => share.percent(),
            AcidLimit::AcidValue(value) => ffa_percent(value),
        })
    }

    /// Whether these limits make sense for a fat.
    ///
    /// # Errors
    /// The fresh value, where a limit lies at or under it: such oil would be over from the first minute.
    pub fn check(self, fat: Fat) -> Result<(), UnderFresh> {
        let pairs = [
            (self.polar.map(Share::percent), fresh::polar(fat).mean),
            (self.ffa_percent(), fresh::ffa(fat).mean),
        ];
        for (limit, fresh_percent) in pairs {
            if limit.is_some_and(|l| l <= fresh_percent) {
                return Err(UnderFresh { fresh_percent });
            }
        }
        Ok(())
    }
}

/// Hours of frying in a usual service.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UsualFry {
    /// Mean, hours.
    pub mean_h: f64,
    /// Standard deviation between services, hours.
    pub sd_h: f64,
}

impl UsualFry {
    /// Learnt from services worked with this pan; what was set up counts like [`Self::SETUP_SERVICES`] of them,
    /// spread by a quarter. A service of no minutes was not worked and does not count.
    #[must_use]
    pub fn learn(setup: Minutes, worked: impl IntoIterator<Item = Minutes>) -> Self {
        const SETUP_SPREAD: f64 = 0.25;
        let prior = setup.hours();
        let (mut n, mut sum, mut squares) = (0.0, 0.0, 0.0);
        for hours in worked.into_iter().filter(|m| m.get() > 0).map(Minutes::hours) {
            n += 1.0;
            sum += hours;
            squares += (hours - prior) * (hours - prior);
        }
        let weight = Self::SETUP_SERVICES + n;
        let mean_h = (Self::SETUP_SERVICES * prior + sum) / weight;
        let prior_sd = SETUP_SPREAD * prior;
        let about_prior = (Self::SETUP_SERVICES * prior_sd * prior_sd + squares) / weight;
        let variance = about_prior - (mean_h - prior) * (mean_h - prior);
        Self {
            mean_h,
            sd_h: variance.max(0.0).sqrt(),
        }
    }

    /// How many services the set-up's own figure counts for.
    pub const SETUP_SERVICES: f64 = 3.0;
}

/// The usual frying temperature of a fill: the mean of the last [`LAST_SERVICES`] that were logged with one, or
/// `before` where none was. A thermometer read once a day scatters more than a thermostat is turned.
#[must_use]
pub fn usual_temp(history: &FillHistory, before: Temp) -> Temp {
    let logged = history.events().iter().rev().filter_map(|e| match e.what {
        What::Fried { temp, .. } | What::Unlogged { temp } => temp.map(Temp::dc),
        What::Topped { .. }
        | What::PartChanged { .. }
        | What::MovedIn { .. }
        | What::Read { .. }
        | What::Sign(_)
        | What::Filtered
        | What::Adsorbed { .. } => None,
    });
    let (sum, count) = logged
        .take(LAST_SERVICES)
        .fold((0_i32, 0_i32), |(sum, count), dc| (sum + i32::from(dc), count + 1));
    let mean = sum.checked_div(count).and_then(|dc| i16::try_from(dc).ok());
    mean.and_then(Temp::from_dc).unwrap_or(before)
}

/// Services the usual temperature is taken from.
const LAST_SERVICES: usize = 10;

/// How a pan is topped up: how often, and how much.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TopUps {
    /// Top-ups a service, 0 or more.
    pub often: f64,
    /// The share of the pan (0–1) that is fresh oil after one; `None` where none was ever logged.
    pub share: Option<f64>,
    /// The share of the pan (0–1) that part-changes bring fresh a service; none where there were not several.
    pub changed: f64,
}

impl TopUps {
    /// Where nothing was logged yet: 5 % of the pan after every service. Our own choice, half of what six hours of
    /// chips that take up 9 % of their weight (Seafish SR584) carry off at 7.5 kg an hour from 40 kg of oil; none at
    /// all would make every kitchen's first oil look older than it is.
    pub const GUESSED: Self = Self::each(0.05);

    /// One after every service, of this share.
    #[must_use]
    pub const fn each(share: f64) -> Self {
        Self {
            often: 1.0,
            share: Some(share),
            changed: 0.0,
        }
    }

    /// As earlier fills had them.
    #[must_use]
    pub fn learn<'a>(fills: impl IntoIterator<Item = &'a FillHistory>) -> Self {
        let counts = fills
            .into_iter()
            .fold(Counts::default(), |sum, fill| sum.and(Counts::of(fill)));
        Self {
            often: if counts.services > 0.0 {
                counts.top_ups / counts.services
            } else {
                0.0
            },
            share: (counts.top_ups > 0.0).then(|| counts.shares / counts.top_ups),
            changed: counts.changed(0.0, 0.0),
        }
    }

    /// The share of the pan (0–1) that is fresh oil after a usual service.
    #[must_use]
    pub fn a_service(self) -> f64 {
        (self.often * self.share.unwrap_or_default() + self.changed).min(1.0)
    }

    /// The same for a fill with a history of its own. How much goes in varies from night to night more than from fill
    /// to fill, whether any goes in is a fill's own affair: so the size is the pan's habit for longer than the
    /// frequency is. Part-changes are too large and too rare to be averaged with either: what they bring is spread over
    /// the services between them. Neither another top-up nor another part-change ever lowers the answer.
    #[must_use]
    pub fn in_fill(self, history: &FillHistory) -> f64 {
        const SIZE_COUNTS_FOR: f64 = 20.0;
        const FREQUENCY_COUNTS_FOR: f64 = 1.0;
        let own = Counts::of(history);
        let (size_weight, frequency_weight) = match self.share {
            Some(_) => (SIZE_COUNTS_FOR, FREQUENCY_COUNTS_FOR),
            None => (0.0, 0.0),
        };
        let changed = own.changed(self.changed, frequency_weight);
        if own.top_ups + size_weight == 0.0 || own.services + frequency_weight == 0.0 {
            return changed.clamp(0.0, 1.0);
        }
        let size = (size_weight * self.share.unwrap_or_default() + own.shares) / (size_weight + own.top_ups);
        let often = (frequency_weight * self.often + own.top_ups) / (frequency_weight + own.services);
        (often * size + changed).clamp(0.0, 1.0)
    }
}

/// What top-ups and services add up to.
#[derive(Clone, Copy, Default)]
struct Counts {
    services: f64,
    top_ups: f64,
    shares: f64,
    part_changes: f64,
    changed: f64,
}

impl Counts {
    fn of(fill: &FillHistory) -> Self {
        fill.events()
            .iter()
            .fold(Self::default(), |sum, event| match event.what {
                What::Fried { fry, .. } if fry.get() > 0 => Self {
                    services: sum.services + 1.0,
                    ..sum
                },
                What::Unlogged { .. } => Self {
                    services: sum.services + 1.0,
                    ..sum
                },
                What::Topped { added, after, .. } => match share_of(added, after) {
                    Some(share) if share > 0.0 => Self {
                        top_ups: sum.top_ups + 1.0,
                        shares: sum.shares + share,
                        ..sum
                    },
                    Some(_) | None => sum,
                },
                What::PartChanged { added, after, .. } => match share_of(added, after) {
                    Some(share) if share > 0.0 => Self {
                        part_changes: sum.part_changes + 1.0,
                        changed: sum.changed + share,
                        ..sum
                    },
                    Some(_) | None => sum,
                },
                What::Fried { .. }
                | What::MovedIn { .. }
                | What::Read { .. }
                | What::Sign(_)
                | What::Filtered
                | What::Adsorbed { .. } => sum,
            })
    }

    fn and(self, other: Self) -> Self {
        Self {
            services: self.services + other.services,
            top_ups: self.top_ups + other.top_ups,
            shares: self.shares + other.shares,
            part_changes: self.part_changes + other.part_changes,
            changed: self.changed + other.changed,
        }
    }

    /// What part-changes bring a service, where `before` was usual and counts for so many services. One alone is no
    /// habit (project default).
    fn changed(self, before: f64, weight: f64) -> f64 {
        const HABIT: f64 = 2.0;
        let services = self.services + weight;
        if services == 0.0 || (before == 0.0 && self.part_changes < HABIT) {
            return 0.0;
        }
        (weight * before + self.changed) / services
    }
}

/// What was known of a pan's use before this fill began: set-up and earlier fills, never the fill itself.
///
/// The rate's prior and hours nobody logged rest on it. Were it learnt from the fill, more hours would lower the rate
/// the owner's usual days imply, and oil could look fresher for having been fried in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Habit {
    /// Days the owner usually gets from this pan's oil.
    pub days: Option<u16>,
    /// Usual frying in a service.
    pub fry: UsualFry,
    /// Usual frying temperature.
    pub temp: Temp,
    /// Usual top-ups.
    pub top_up: TopUps,
}

/// What is ahead of a fill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlook {
    /// The limits in force.
    pub limits: LimitsInForce,
    /// What was known before this fill.
    pub habit: Habit,
    /// Usual frying in a service, learnt up to now.
    pub fry: UsualFry,
    /// Usual frying temperature now.
    pub temp: Temp,
    /// This fill's usual share of fresh oil after a service, 0–1; see [`TopUps::in_fill`].
    pub top_up: f64,
    /// Today counted in trading days of this fill, the day it was filled being 1.
    pub day_of_fill: u16,
}

impl Outlook {
    /// The habit goes on, on the first day of a fill.
    #[must_use]
    pub fn new(limits: LimitsInForce, habit: Habit) -> Self {
        Self {
            limits,
            habit,
            fry: habit.fry,
            temp: habit.temp,
            top_up: habit.top_up.a_service(),
            day_of_fill: 1,
        }
    }
}

impl Habit {
    /// Nothing known but the set-up's frying hours: 175 °C, no top-up, no usual days.
    #[must_use]
    pub fn of(fry: UsualFry) -> Self {
        Self {
            days: None,
            fry,
            temp: REFERENCE_TEMP,
            top_up: TopUps::default(),
        }
    }
}
