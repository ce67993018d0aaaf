//! How long a machine's heater must run before solid fat may pass through pump and hose.

use crate::domain::fat::Fat;
use crate::domain::time::Millis;

/// Never less for a fat that sets (10–15 minutes is common practice, no source).
pub const LEAST_MIN: u16 = 10;
/// In the colder half of the year.
pub const WINTER_MIN: u16 = 15;
/// Minutes a warm-up stays good once the heater is off: fat in a small pipe sets again within a break. The project's
/// own line.
pub const EXPIRES_MIN: u16 = 20;

/// Minutes the heater must run: none for an oil that is liquid in any kitchen, 15 for a fat that sets in the local
/// winter half-year, 10 in summer.
#[must_use]
pub const fn minutes(fat: Fat, winter_half_year: bool) -> u16 {
    if !fat.is_solid() {
        0
    } else if winter_half_year {
        WINTER_MIN
    } else {
        LEAST_MIN
    }
}

/// Whether `month` (1–12) lies in the colder half of the year: October to March in the north, April to September in
/// the south.
#[must_use]
pub const fn is_winter_half_year(month: u32, southern: bool) -> bool {
    let northern_winter = month >= 10 || month <= 3;
    northern_winter != southern
}

/// Whether a finished warm-up no longer counts. `heater_off` is when the heater was seen off, `None` while it is on.
/// A heater seen off later than `now` means a clock moved: then it does not count either.
#[must_use]
pub fn is_expired(heater_off: Option<Millis>, now: Millis) -> bool {
    heater_off.is_some_and(|off| !(0..i64::from(EXPIRES_MIN) * Millis::MINUTE).contains(&now.since(off)))
}
