//! How frying oil wears: growth by hours and heat, dilution by fresh oil, and the two acidity units.

use crate::domain::units::{AcidValue, Share, Temp};

/// Gas constant in J/(mol·K) (CODATA 2018).
pub const GAS_CONSTANT: f64 = 8.314_462_618;
/// Activation energy of wear in J/mol. Published values run from 5.4 to 76.5 kJ/mol (Mba, Dumont & Ngadi 2016);
/// Li et al. 2020 (times to discard at 190, 205 and 220 °C) give about 33.
pub const ACTIVATION_ENERGY: f64 = 32_000.0;
/// Frying temperature the rates are quoted at, and the one taken where an entry names none.
pub const REFERENCE_TEMP: Temp = Temp::celsius(175);
/// FFA (% as oleic) per mg KOH/g: 282.47 / (10 × 56.11), the molar masses of oleic acid and KOH.
pub const FFA_PER_ACID_VALUE: f64 = 282.47 / (10.0 * 56.11);

const ZERO_CELSIUS_K: f64 = 273.15;

/// How much faster oil wears at `to` than at `from` for an activation energy in J/mol (Arrhenius).
#[must_use]
pub fn speed_up(activation_energy: f64, from: Temp, to: Temp) -> f64 {
    let from_k = from.as_celsius() + ZERO_CELSIUS_K;
    let to_k = to.as_celsius() + ZERO_CELSIUS_K;
    libm::exp(activation_energy / GAS_CONSTANT * (1.0 / from_k - 1.0 / to_k))
}

/// How much faster oil wears at `temp` than at 175 °C, with [`ACTIVATION_ENERGY`].
#[must_use]
pub fn heat_factor(temp: Temp) -> f64 {
    speed_up(ACTIVATION_ENERGY, REFERENCE_TEMP, temp)
}

/// The activation energy in J/mol that two times to the same end-point imply: `hours_hot` at the hotter `hot`,
/// `hours_cool` at `cool`. `None` unless both times are positive and `hot` is hotter.
#[must_use]
pub fn implied_activation_energy(cool: Temp, hours_cool: f64, hot: Temp, hours_hot: f64) -> Option<f64> {
    if !(hours_cool > 0.0 && hours_hot > 0.0 && hot > cool) {
        return None;
    }
    let cool_k = cool.as_celsius() + ZERO_CELSIUS_K;
    let hot_k = hot.as_celsius() + ZERO_CELSIUS_K;
    Some(GAS_CONSTANT * libm::log(hours_cool / hours_hot) / (1.0 / cool_k - 1.0 / hot_k))
}

/// An acid value as free fatty acids, % m/m as oleic.
#[must_use]
pub fn ffa_percent(acid: AcidValue) -> f64 {
    acid.mg_per_g() * FFA_PER_ACID_VALUE
}

/// Free fatty acids as an acid value in mg KOH/g.
#[must_use]
pub fn acid_value(ffa: Share) -> f64 {
    ffa.percent() / FFA_PER_ACID_VALUE
}

/// The most an adsorbent can take out, in points: `dose` % m/m of one that takes up `capacity` mg of polar matter a
/// gram. Yates & Caldwell, JAOCS 70 (1993) 507–511: about 200 for synthetic magnesium silicate, the most of six kinds
/// tried, 2 for diatomaceous earth.
#[must_use]
pub fn adsorbed_at_most(dose: Share, capacity: f64) -> f64 {
    const MG_PER_G: f64 = 1_000.0;
    dose.percent() * capacity / MG_PER_G
}

/// Concentration after fresh oil: `share` (0–1) of what is in the pan afterwards is `fresh`.
#[must_use]
pub fn mixed(concentration: f64, share: f64, fresh: f64) -> f64 {
    concentration + share * (fresh - concentration)
}

/// A pan kept level by fresh oil as it loses oil to the food: steady growth against steady dilution.
///
/// `M dC/dt = k M − u C + u C0`, so `dC/dt = k − r (C − C0)` with `r = u/M`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dilution {
    /// Growth in points an hour, over 0.
    pub growth: f64,
    /// Share of the pan replaced by fresh oil an hour, 0 or more.
    pub turnover: f64,
    /// What fresh oil holds, in points.
    pub fresh: f64,
}

impl Dilution {
    /// Where the concentration settles; `None` without fresh oil, when it never does.
    #[must_use]
    pub fn settles_at(self) -> Option<f64> {
        (self.turnover > 0.0).then(|| self.fresh + self.growth / self.turnover)
    }

    /// Hours until `limit` is reached from `from`; 0 when it already is, `None` for never.
    #[must_use]
    pub fn hours_until(self, from: f64, limit: f64) -> Option<f64> {
        if from >= limit {
            return Some(0.0);
        }
        match self.settles_at() {
            None => (self.growth > 0.0).then(|| (limit - from) / self.growth),
            Some(level) if level <= limit => None,
            // −ln(1 − x)/r rather than the ratio of differences: it stays exact as r falls towards nothing.
            Some(level) => Some(-libm::log1p((from - limit) / (level - from)) / self.turnover),
        }
    }
}

/// Where a pan settles that is fried in and then topped up, over and over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Settling {
    /// At the end of frying, before the top-up.
    pub before_top_up: f64,
    /// After the top-up.
    pub after_top_up: f64,
}

impl Settling {
    /// For growth by `points` a service and a top-up of `share` (0–1) after each: C0 + kD/f and C0 + kD(1 − f)/f.
    /// `None` without a top-up.
    #[must_use]
    pub fn linear(fresh: f64, points: f64, share: f64) -> Option<Self> {
        (share > 0.0).then(|| Self {
            before_top_up: fresh + points / share,
            after_top_up: fresh + points * (1.0 - share) / share,
        })
    }

    /// For growth by the factor `times` (over 1) a service: `None` where dilution cannot hold it.
    #[must_use]
    pub fn compounding(fresh: f64, times: f64, share: f64) -> Option<Self> {
        let kept = (1.0 - share) * times;
        (share > 0.0 && kept < 1.0).then(|| {
            let after = share * fresh / (1.0 - kept);
            Self {
                before_top_up: after * times,
                after_top_up: after,
            }
        })
    }
}
