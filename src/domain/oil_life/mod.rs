//! Oil life: how worn a fill is, how long it lasts, and why we say so.
//!
//! One way in, [`of`]: a [`FillHistory`] and an [`Outlook`] give an [`OilLife`]. Screens know these three and nothing
//! of the estimator in `belief`, which can be replaced without touching them. Same input, same bits, on every target:
//! everything transcendental goes through `libm`.
//!
//! What is claimed: passive filtering takes out crumb and changes neither polar compounds nor acidity, so a filter run
//! moves nothing here; only a powder that takes matter out of the oil does, and little. Without a reading the numbers
//! are usual days and priors, and [`OilLife::basis`] says so.

mod answer;
mod belief;
mod constants;
mod cov;
mod forecast;
mod fresh;
mod grid;
mod history;
mod judge;
mod kinetics;
mod next_reading;
mod noise;
mod normal;
mod outlook;
mod quantity;
mod rates;
mod shade;
mod shop;
mod trial;
mod what_if;

pub use answer::{Basis, Because, DaysLeft, Estimate, Figure, Lacking, OilLife, Role, Score, SettlesAt, Usual, Word};
pub use forecast::MOST_DAYS;
pub use fresh::{FreshValue, Grounds, ffa as fresh_ffa, polar as fresh_polar};
pub use history::{Event, FillHistory, Incoming, OilOrder, Start, What};
pub use kinetics::{
    ACTIVATION_ENERGY, Dilution, FFA_PER_ACID_VALUE, GAS_CONSTANT, REFERENCE_TEMP, Settling, acid_value,
    adsorbed_at_most, ffa_percent, heat_factor, implied_activation_energy, mixed, speed_up,
};
pub use next_reading::NextReading;
pub use outlook::{Habit, LimitsInForce, Outlook, TopUps, UnderFresh, UsualFry, usual_temp};
pub use quantity::{POWDER_HOLDS, Quantity, RatePrior, Scale};
pub use shade::oil_shade;
pub use shop::Shop;
pub use trial::{Knob, Trial};
pub use what_if::{Foreseen, Lever, Lift, WhatIf};

use crate::domain::ids::{EntryId, InstrumentId};
use crate::domain::sorted::in_order;
use crate::domain::units::Share;

use belief::Belief;
use forecast::OverBy;
use judge::Criterion;

/// The quantiles of every 80 % interval.
const LOW: f64 = 0.1;
const MEDIAN: f64 = 0.5;
const HIGH: f64 = 0.9;

/// What a fill's history and what is ahead of it add up to.
#[must_use]
pub fn of(history: &FillHistory, outlook: &Outlook, shop: &Shop) -> OilLife {
    let believed = Believed::fold(history, outlook, shop);
    let criteria = believed.criteria(outlook);
    let over = believed.over(outlook);
    let score = judge::score(&criteria);
    let days_left = over.as_ref().map(days_left);
    let chance_over = over.as_ref().map(OverBy::next);
    let change_sign = history.change_sign();
    let basis = if believed.in_force(outlook).any(|b| b.readings() > 0) {
        Basis::Readings
    } else {
        Basis::UsualDaysAndPriors
    };
    OilLife {
        score,
        chance_over,
        days_left,
        word: judge::word(change_sign.is_some(), &criteria, score, days_left, chance_over),
        settles_at: believed.settles_at(score, outlook),
        basis,
        polar: estimate(&believed.polar),
        ffa: believed.ffa.as_ref().map(estimate),
        usual: usual(history, outlook, shop, basis, days_left),
        change_sign,
        because: because(history, outlook, shop, &believed),
        lacking: lacking(history, outlook, basis),
        contradicting: believed.contradicting(),
        folded_around: believed.polar.folded_around(),
    }
}

/// When the next reading of polar compounds is worth most, taken with an instrument; `None` without a limit on them,
/// or where no reading in the next two weeks would change what is done.
#[must_use]
pub fn next_reading(
    history: &FillHistory,
    outlook: &Outlook,
    shop: &Shop,
    instrument: Option<InstrumentId>,
    spread: Option<Share>,
) -> Option<NextReading> {
    let limit = outlook.limits.polar?.percent();
    let belief = Belief::fold(Quantity::Polar, history, &outlook.habit, shop);
    let noise = belief.noise_of(instrument, spread, shop);
    next_reading::next_reading(&belief, outlook, limit, noise)
}

/// What a kitchen could do otherwise to make this oil last, and what each would bring, most first; empty without a
/// limit, of nothing where nothing would help, and where the oil outlasts what is foreseen as it is.
#[must_use]
pub fn levers(history: &FillHistory, outlook: &Outlook, shop: &Shop) -> Vec<Lift> {
    let believed = Believed::fold(history, outlook, shop);
    let as_it_is = believed.over(outlook);
    let Some(as_it_is) = as_it_is.filter(|over| Foreseen::of(over.outlasts()) != Foreseen::Past) else {
        return Vec::new();
    };
    let lifts = Lever::ALL.into_iter().filter_map(|lever| {
        let ahead = lever.pulled(history, outlook)?.ahead(outlook);
        let over = believed.over(&ahead)?;
        let services = over.mean_days() - as_it_is.mean_days();
        (services > 0.0).then(|| Lift {
            lever,
            services,
            foreseen: Foreseen::of(over.outlasts()),
        })
    });
    let mut lifts: Vec<Lift> = lifts.collect();
    #[expect(clippy::cast_possible_truncation, reason = "at most 61 services")]
    in_order(&mut lifts, |lift| (-1_000.0 * lift.services) as i64);
    lifts
}

/// Polar compounds as believed after the first so many events of a fill, for each of `after` in rising order: what
/// [`of`] would say of the fill as it stood then, by one fold for all.
#[must_use]
pub fn polar_after(history: &FillHistory, habit: &Habit, shop: &Shop, after: &[usize]) -> Vec<Estimate> {
    let mut said = Vec::with_capacity(after.len());
    Belief::fold_through(Quantity::Polar, history, habit, shop, &mut |events, belief| {
        while after.get(said.len()).is_some_and(|wanted| *wanted <= events) {
            said.push(estimate(belief));
        }
    });
    said
}

/// What a reading of polar compounds was expected to show, where it lies outside that by more than chance, by the
/// measure that [`OilLife::contradicting`] goes by; `None` where it may well be so.
#[must_use]
pub fn contradicts(
    history: &FillHistory,
    habit: &Habit,
    shop: &Shop,
    instrument: Option<InstrumentId>,
    spread: Option<Share>,
    read: Share,
) -> Option<Estimate> {
    let belief = Belief::fold(Quantity::Polar, history, habit, shop);
    belief
        .contradicts(instrument, spread, shop, read.percent())
        .then(|| belief.reading_ahead(instrument, spread, shop))
}

/// What the next reading of polar compounds by an instrument should show, % m/m: its median and 80 % interval.
#[must_use]
pub fn reading_ahead(
    history: &FillHistory,
    habit: &Habit,
    shop: &Shop,
    instrument: Option<InstrumentId>,
    spread: Option<Share>,
) -> Estimate {
    Belief::fold(Quantity::Polar, history, habit, shop).reading_ahead(instrument, spread, shop)
}

/// How far an instrument's readings of polar compounds are believed to be off, points over the truth.
#[must_use]
pub fn reading_off(history: &FillHistory, habit: &Habit, shop: &Shop, instrument: Option<InstrumentId>) -> f64 {
    Belief::fold(Quantity::Polar, history, habit, shop).off(instrument)
}

/// What is believed of a fill's oil, for the fill it is moved into.
#[must_use]
pub fn incoming(history: &FillHistory, habit: &Habit, shop: &Shop) -> Incoming {
    // Standard deviations between the 10 % and 90 % quantiles of a normal.
    const INTERVAL_SDS: f64 = 2.563_103;
    let of = |quantity| {
        let now = estimate(&Belief::fold(quantity, history, habit, shop));
        (now.median, (now.high - now.low) / INTERVAL_SDS)
    };
    Incoming {
        polar: of(Quantity::Polar),
        ffa: of(Quantity::Ffa),
    }
}

/// The beliefs a fill needs: polar compounds always, acidity where it has a limit.
struct Believed {
    polar: Belief,
    ffa: Option<Belief>,
}

impl Believed {
    fn fold(history: &FillHistory, outlook: &Outlook, shop: &Shop) -> Self {
        let fold = |quantity| Belief::fold(quantity, history, &outlook.habit, shop);
        Self {
            polar: fold(Quantity::Polar),
            ffa: outlook.limits.acid.map(|_| fold(Quantity::Ffa)),
        }
    }

    /// The beliefs that count: those with a limit, or polar compounds where there is none.
    fn in_force(&self, outlook: &Outlook) -> impl Iterator<Item = &Belief> {
        let polar_counts = outlook.limits.polar.is_some() || self.ffa.is_none();
        polar_counts.then_some(&self.polar).into_iter().chain(&self.ffa)
    }

    /// Readings that contradict what was believed, of either quantity.
    fn contradicting(&self) -> Vec<EntryId> {
        let all = [Some(&self.polar), self.ffa.as_ref()].into_iter().flatten();
        all.flat_map(Belief::contradicting).copied().collect()
    }

    /// Each belief beside its limit.
    fn limited(&self, outlook: &Outlook) -> impl Iterator<Item = (&Belief, f64)> {
        let polar = outlook.limits.polar.map(|l| (&self.polar, Share::percent(l)));
        let ffa = self.ffa.as_ref().zip(outlook.limits.ffa_percent());
        polar.into_iter().chain(ffa)
    }

    fn criteria(&self, outlook: &Outlook) -> Vec<Criterion> {
        self.limited(outlook)
            .map(|(belief, limit)| Criterion {
                quantity: belief.quantity(),
                limit,
                fresh: belief.fresh_mean(),
                now: estimate(belief),
            })
            .collect()
    }

    fn over(&self, outlook: &Outlook) -> Option<OverBy> {
        self.limited(outlook)
            .map(|(belief, limit)| OverBy::ahead(belief, outlook, limit))
            .reduce(|a, b| a.either(&b))
    }

    fn settles_at(&self, score: Option<Score>, outlook: &Outlook) -> Option<SettlesAt> {
        let quantity = score?.limited_by;
        let belief = match quantity {
            Quantity::Polar => &self.polar,
            Quantity::Ffa => self.ffa.as_ref()?,
        };
        forecast::settling(belief, outlook).map(|level| SettlesAt { quantity, level })
    }
}

fn estimate(belief: &Belief) -> Estimate {
    Estimate {
        low: belief.quantile(LOW),
        median: belief.quantile(MEDIAN),
        high: belief.quantile(HIGH),
    }
}

fn days_left(over: &OverBy) -> DaysLeft {
    DaysLeft {
        low: over.days(LOW),
        median: over.days(MEDIAN),
        high: over.days(HIGH),
    }
}

/// The owner's usual days, until readings have made the interval narrower than those days alone make it for a fresh
/// fill.
fn usual(
    history: &FillHistory,
    outlook: &Outlook,
    shop: &Shop,
    basis: Basis,
    days_left: Option<DaysLeft>,
) -> Option<Usual> {
    let usual = Usual {
        days: outlook.habit.days?,
        today: outlook.day_of_fill,
    };
    let narrower = match (basis, days_left) {
        (Basis::Readings, Some(now)) => {
            let fresh = FillHistory::new(history.fat(), Start::Fresh, Vec::new());
            let ahead = Outlook::new(outlook.limits, outlook.habit);
            let alone = Believed::fold(&fresh, &ahead, shop).over(&ahead);
            alone.is_some_and(|over| now.width() < self::days_left(&over).width())
        }
        (Basis::Readings, None) | (Basis::UsualDaysAndPriors, _) => false,
    };
    (!narrower).then_some(usual)
}

/// Entries and sources an answer rests on.
fn because(history: &FillHistory, outlook: &Outlook, shop: &Shop, believed: &Believed) -> Vec<Because> {
    let mut all: Vec<Because> = history.events().iter().filter_map(entry_role).collect();
    all.extend(match history.start() {
        Start::Fresh => None,
        Start::Worked { services } => Some(Because::UnloggedServices(services)),
        Start::Unknown => Some(Because::UnknownAge),
    });
    all.extend(guessed(history).map(Because::GuessedHours));
    all.extend((outlook.habit.top_up == TopUps::GUESSED).then_some(Because::GuessedTopUps));
    let quantities = [Some(Quantity::Polar), outlook.limits.acid.map(|_| Quantity::Ffa)];
    for quantity in quantities.into_iter().flatten() {
        all.push(Because::FreshValue {
            fat: history.fat(),
            quantity,
            grounds: quantity.fresh(history.fat()).grounds,
        });
        all.push(Because::PublishedRate(quantity));
    }
    all.extend(history.powder().map(|dose| Because::Powder {
        at_most: adsorbed_at_most(dose, POWDER_HOLDS),
        acidity: outlook.limits.acid.is_some(),
    }));
    all.push(Because::Rate {
        per_hour: believed.polar.rate_median(),
        heat: heat_factor(outlook.temp),
        temp: outlook.temp,
    });
    if shop.fills() > 0 {
        all.push(Because::Taught {
            fills: shop.fills(),
            per_hour: shop.rate(Quantity::Polar, history.fat()).median,
        });
    }
    all.extend(believed.polar.instruments(history, shop));
    all.extend(outlook.habit.days.map(Because::UsualDays));
    all.push(Because::Ahead {
        fry_h: outlook.fry.mean_h,
        top_up: outlook.top_up,
    });
    let limits = believed.limited(outlook);
    all.extend(limits.map(|(belief, limit)| Because::Limit(belief.quantity(), limit)));
    all
}

/// What would make the answer better if it were logged, most useful first.
fn lacking(history: &FillHistory, outlook: &Outlook, basis: Basis) -> Vec<Lacking> {
    let fried = |e: &Event| matches!(e.what, What::Fried { fry, .. } if fry.get() > 0);
    let limits = outlook.limits;
    let all = [
        (Lacking::Limit, limits.polar.is_none() && limits.acid.is_none()),
        (Lacking::Hours, guessed(history).is_some()),
        (
            Lacking::Reading,
            basis == Basis::UsualDaysAndPriors && history.events().iter().any(fried),
        ),
        (Lacking::FreshValue, history.start() == Start::Unknown),
    ];
    all.into_iter()
        .filter_map(|(what, lacks)| lacks.then_some(what))
        .collect()
}

/// Services whose hours nobody logged; `None` for none.
fn guessed(history: &FillHistory) -> Option<u16> {
    let guessed = history
        .events()
        .iter()
        .filter(|e| matches!(e.what, What::Unlogged { .. }));
    u16::try_from(guessed.count()).ok().filter(|n| *n > 0)
}

fn entry_role(event: &Event) -> Option<Because> {
    let role = match event.what {
        What::Fried { fry, .. } => (fry.get() > 0).then_some(Role::Wear),
        What::Topped { .. } | What::PartChanged { .. } => Some(Role::Dilution),
        What::MovedIn { .. } => Some(Role::MovedIn),
        What::Read { value, .. } => [Quantity::Polar, Quantity::Ffa]
            .into_iter()
            .find(|q| q.measured(value).is_some())
            .map(Role::Reading),
        What::Sign(kind) if kind.means_change() => Some(Role::ChangeSign),
        What::Sign(_) => Some(Role::OtherSign),
        What::Adsorbed { .. } => Some(Role::Powder),
        What::Filtered | What::Unlogged { .. } => None,
    };
    role.map(|role| Because::Entry {
        entry: event.entry,
        role,
    })
}
