//! What if: the same fill, fried cooler or hotter, longer or shorter, topped up more or less, or part-changed now.

use crate::domain::facts::oil::Load;
use crate::domain::ids::{Dev, EntryId};
use crate::domain::time::Millis;
use crate::domain::units::{Temp, Volume};

use super::history::{Event, FillHistory, What};
use super::outlook::{Outlook, UsualFry};

/// What to try. Nothing set is the oil as it is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WhatIf {
    /// Frying at this temperature from now on.
    pub temp: Option<Temp>,
    /// Hours hot a service from now on.
    pub fry_h: Option<f64>,
    /// The share of the pan (0–1) that is fresh oil after each service's top-up from now on.
    pub top_up: Option<f64>,
    /// The share of the pan (0–1) changed for fresh oil right now.
    pub part_change: Option<f64>,
}

impl WhatIf {
    /// What would be ahead.
    #[must_use]
    pub fn ahead(&self, outlook: &Outlook) -> Outlook {
        Outlook {
            temp: self.temp.unwrap_or(outlook.temp),
            fry: UsualFry {
                mean_h: self.fry_h.map_or(outlook.fry.mean_h, |hours| hours.clamp(0.0, 24.0)),
                sd_h: outlook.fry.sd_h,
            },
            top_up: self.top_up.map_or(outlook.top_up, |share| share.clamp(0.0, 1.0)),
            ..*outlook
        }
    }

    /// What would have happened by now.
    #[must_use]
    pub fn by_now(&self, history: &FillHistory) -> FillHistory {
        /// Shares to the hundredth of a percent.
        const WHOLE_ML: f64 = 10_000.0;
        let Some(share) = self.part_change else {
            return history.clone();
        };
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a share of ten litres"
        )]
        let ml =
            |share: f64| Volume::from_ml((share.clamp(0.0, 1.0) * WHOLE_ML).round() as u32).unwrap_or(Volume::NONE);
        let changed = What::PartChanged {
            fat: history.fat(),
            added: ml(share),
            after: ml(1.0),
        };
        let mut events = history.events().to_vec();
        events.push(last(changed));
        FillHistory::new(history.fat(), history.start(), events)
    }
}

/// An event after all that was logged, and before services that are only expected.
fn last(what: What) -> Event {
    let end = Millis(i64::MAX / 2);
    Event {
        order: (end, end, Dev(u64::MAX), u32::MAX),
        entry: EntryId(u128::MAX),
        what,
    }
}

/// Something a kitchen could do otherwise to make oil last, and by how much it is tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lever {
    /// Frying 5 °C cooler; not offered under 170 °C, where food takes up more oil.
    Heat,
    /// Half an hour less hot a service.
    Hours,
    /// Fresh oil for two percent of the pan more after a service.
    TopUp,
    /// Half of the hours hot in quiet services: oil that stands hot wears without frying anything.
    IdleHours,
}

/// What a lever would bring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lift {
    /// The lever.
    pub lever: Lever,
    /// Services more on average, those past what is foreseen not counted.
    pub services: f64,
    /// Whether that average is the whole.
    pub foreseen: Foreseen,
}

/// How much of an oil's life lies within the services foreseen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Foreseen {
    /// As good as all.
    Whole,
    /// More than one time in ten it lasts longer: a mean of what is foreseen is only the least.
    Part,
    /// It is likelier than not to last longer.
    Past,
}

impl Foreseen {
    /// By the chance of lasting longer. The tenth is the upper end of days left (project default).
    pub(super) fn of(outlasts: f64) -> Self {
        if outlasts > 0.5 {
            Self::Past
        } else if outlasts > 0.1 {
            Self::Part
        } else {
            Self::Whole
        }
    }
}

impl Lever {
    /// Every lever.
    pub const ALL: [Self; 4] = [Self::Heat, Self::Hours, Self::TopUp, Self::IdleHours];

    /// The share of the pan that [`Self::TopUp`] adds after a service.
    pub const MORE_SHARE: f64 = 0.02;

    /// What pulling it means for this fill; `None` where it cannot be pulled.
    pub(super) fn pulled(self, history: &FillHistory, outlook: &Outlook) -> Option<WhatIf> {
        const COOLER_DC: i16 = 50;
        const COOLEST: Temp = Temp::celsius(165);
        const LESS_H: f64 = 0.5;
        let as_it_is = WhatIf::default();
        match self {
            Self::Heat => {
                let temp = Temp::from_dc(outlook.temp.dc() - COOLER_DC).filter(|t| *t >= COOLEST)?;
                Some(WhatIf {
                    temp: Some(temp),
                    ..as_it_is
                })
            }
            Self::Hours => (outlook.fry.mean_h > LESS_H).then_some(WhatIf {
                fry_h: Some(outlook.fry.mean_h - LESS_H),
                ..as_it_is
            }),
            Self::TopUp => Some(WhatIf {
                top_up: Some(outlook.top_up + Self::MORE_SHARE),
                ..as_it_is
            }),
            Self::IdleHours => quiet_part(history).map(|quiet| WhatIf {
                fry_h: Some(outlook.fry.mean_h * (1.0 - 0.5 * quiet)),
                ..as_it_is
            }),
        }
    }
}

/// The part (0–1) of a fill's hours that was hot in quiet services; `None` where none was.
fn quiet_part(history: &FillHistory) -> Option<f64> {
    let (mut quiet, mut all) = (0.0, 0.0);
    for event in history.events() {
        if let What::Fried { fry, load, .. } = event.what {
            all += fry.hours();
            match load {
                Load::Quiet => quiet += fry.hours(),
                Load::Normal | Load::Heavy => {}
            }
        }
    }
    (quiet > 0.0).then(|| quiet / all)
}

#[cfg(test)]
mod tests {
    use super::super::{LimitsInForce, MOST_DAYS, Shop, Start, levers, of};
    use super::*;
    use crate::domain::fat::Fat;
    use crate::domain::oil_life::Habit;
    use crate::domain::units::Share;

    #[test]
    fn what_lies_past_what_is_foreseen_is_never_given_as_an_average() {
        let history = FillHistory::new(Fat::Sunflower, Start::Fresh, Vec::new());
        let limits = LimitsInForce {
            polar: Share::from_cpc(2_500),
            acid: None,
        };
        let mut met = Vec::new();
        for tenths in 3..60 {
            let fry = UsualFry {
                mean_h: f64::from(tenths) / 10.0,
                sd_h: 0.5,
            };
            let outlook = Outlook::new(limits, Habit::of(fry));
            let as_it_is = of(&history, &outlook, &Shop::new()).days_left;
            let lifts = levers(&history, &outlook, &Shop::new());
            if as_it_is.is_some_and(|days| days.median.is_none()) {
                assert!(lifts.is_empty(), "{tenths}: it lasts past {MOST_DAYS} as it is");
            }
            for lift in lifts {
                let Some(pulled) = lift.lever.pulled(&history, &outlook) else {
                    continue;
                };
                let then = of(&history, &pulled.ahead(&outlook), &Shop::new()).days_left;
                let said = then.map(|days| match (days.median, days.high) {
                    (None, _) => Foreseen::Past,
                    (Some(_), None) => Foreseen::Part,
                    (Some(_), Some(_)) => Foreseen::Whole,
                });
                assert_eq!(Some(lift.foreseen), said, "{tenths}: {lift:?}");
                met.push(lift.foreseen);
            }
        }
        for foreseen in [Foreseen::Whole, Foreseen::Part, Foreseen::Past] {
            assert!(met.contains(&foreseen), "{foreseen:?} was never met");
        }
    }
}
