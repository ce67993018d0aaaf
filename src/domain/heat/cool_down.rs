//! When oil will have cooled to a temperature, by Newton's law of cooling fitted to a pan's own readings.
//!
//! It says when to switch off and when a look is worth it. It never opens a hold: the cooling rate varies with pan,
//! lid and draught, and one degree of error in a reading moves the answer by minutes.

/// Cooling constant of a bulk pan, per minute: the quickest, the usual and the slowest where a pan has no readings of
/// its own. Two independent routes meet at 0.005–0.008: 6–7 h from frying to 40 °C (HSE CAIS 17, end points assumed)
/// and the idle power of standard fryers (US DOE FEMP, 2012).
pub const DEFAULT_RATE: Band = Band {
    slow: 0.005,
    usual: 0.006,
    quick: 0.008,
};

/// Air in a kitchen at the end of a service, °C: common practice, no source.
pub const KITCHEN_AIR_C: f64 = 25.0;

/// Degrees a pan must have cooled between two readings before a fitted time is worth showing.
const WORTH_SHOWING_DROP_C: f64 = 15.0;
/// Readings that are worth showing whatever the drop.
const WORTH_SHOWING_READINGS: usize = 3;

/// Three cooling constants, per minute.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// The slowest likely.
    pub slow: f64,
    /// The usual.
    pub usual: f64,
    /// The quickest likely.
    pub quick: f64,
}

/// A reading of cooling oil.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cooling {
    /// Minutes since any fixed moment.
    pub at_min: f64,
    /// Degrees.
    pub temp: f64,
}

/// The constant of two readings `minutes` apart towards `ambient`, per the same unit of time; works for warming too.
/// `None` unless both lie strictly on the same side of `ambient`, the second nearer to it, and time went by.
#[must_use]
pub fn rate_of_two(first: f64, second: f64, ambient: f64, minutes: f64) -> Option<f64> {
    let ratio = (first - ambient) / (second - ambient);
    let nearer = ratio.is_finite() && ratio > 1.0;
    (nearer && minutes > 0.0 && minutes.is_finite()).then(|| libm::log(ratio) / minutes)
}

/// Time from `from` to `target` at a constant `rate`; works for warming too. `None` where it is never reached, or is
/// behind already.
#[must_use]
pub fn time_until(from: f64, target: f64, ambient: f64, rate: f64) -> Option<f64> {
    let ratio = (from - ambient) / (target - ambient);
    let ahead = ratio.is_finite() && ratio > 1.0;
    (ahead && rate > 0.0 && rate.is_finite()).then(|| libm::log(ratio) / rate)
}

/// The constant that fits a pan's readings: two by the law itself, more by least squares on ln(T − ambient).
/// `None` for fewer than two, for any at or under `ambient`, or where they do not cool.
#[must_use]
pub fn fitted_rate(readings: &[Cooling], ambient: f64) -> Option<f64> {
    let usable = |r: &Cooling| r.at_min.is_finite() && r.temp.is_finite() && r.temp > ambient;
    if readings.len() < 2 || !ambient.is_finite() || !readings.iter().all(usable) {
        return None;
    }
    #[expect(clippy::cast_precision_loss, reason = "a handful of readings")]
    let n = readings.len() as f64;
    let mean_t = readings.iter().map(|r| r.at_min).sum::<f64>() / n;
    let mean_y = readings.iter().map(|r| libm::log(r.temp - ambient)).sum::<f64>() / n;
    let (mut across, mut along) = (0.0, 0.0);
    for r in readings {
        let t = r.at_min - mean_t;
        across += t * (libm::log(r.temp - ambient) - mean_y);
        along += t * t;
    }
    let rate = -across / along;
    (rate.is_finite() && rate > 0.0).then_some(rate)
}

/// Whether a fit from these readings is worth showing: three of them, or a drop of 15 °C.
#[must_use]
pub fn is_worth_showing(readings: &[Cooling]) -> bool {
    let hottest = readings.iter().map(|r| r.temp).fold(f64::NEG_INFINITY, f64::max);
    let coolest = readings.iter().map(|r| r.temp).fold(f64::INFINITY, f64::min);
    readings.len() >= WORTH_SHOWING_READINGS || hottest - coolest >= WORTH_SHOWING_DROP_C
}

/// Minutes until cooling oil reaches a target: soonest, likely, latest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wait {
    /// At the quickest constant.
    pub soonest: f64,
    /// At the usual constant.
    pub likely: f64,
    /// At the slowest constant.
    pub latest: f64,
}

/// The wait for oil at `now` to cool to `target` in air at `ambient`, all in °C. By the pan's own readings where they
/// are worth it (spread as the default band is), else by [`DEFAULT_RATE`]. `None` where it never gets there or is
/// there already.
#[must_use]
pub fn wait(now: f64, target: f64, ambient: f64, readings: &[Cooling]) -> Option<Wait> {
    let own = if is_worth_showing(readings) {
        fitted_rate(readings, ambient)
    } else {
        None
    };
    let usual = own.unwrap_or(DEFAULT_RATE.usual);
    let scale = usual / DEFAULT_RATE.usual;
    if now <= target {
        return None;
    }
    Some(Wait {
        soonest: time_until(now, target, ambient, DEFAULT_RATE.quick * scale)?,
        likely: time_until(now, target, ambient, usual)?,
        latest: time_until(now, target, ambient, DEFAULT_RATE.slow * scale)?,
    })
}
