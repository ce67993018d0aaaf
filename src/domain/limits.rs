//! The temperatures that decide what may be done with hot oil, each with where it comes from.

use super::units::Temp;

/// Emptying or filtering by hand: only at or under this. HSE Catering Information Sheet 17, *Safety during emptying
/// and cleaning of fryers*.
pub const MANUAL_MAX: Temp = Temp::celsius(40);

/// Offered as the low end of a machine's window until the owner types what its manual says: HSE CAIS 17 has most
/// enclosed systems need at least 100 °C to work.
pub const WINDOW_LOW_DEFAULT: Temp = Temp::celsius(100);

/// Offered as the high end of a machine's window: a project default, near the usual frying temperature, at which
/// HSE CAIS 17 allows enclosed systems to work. The machine's manual wins.
pub const WINDOW_HIGH_DEFAULT: Temp = Temp::celsius(180);

/// The soft target of a filter run: about this (common practice, no source).
pub const TARGET_DEFAULT: Temp = Temp::celsius(150);

/// Oil is never to be hotter than this, nor any window to reach above it: Dover District Council, *Safe use of deep
/// fat fryers*, quoting HSE guidance.
pub const NEVER_ABOVE: Temp = Temp::celsius(200);

/// From here a reading is to be taken for a thermostat that failed: UK insurers ask for a separate safety thermostat
/// at 230 °C at most (quoted by a broker).
pub const LIMITER_FAILED: Temp = Temp::celsius(230);

/// Chips are fried under this, as low as food safety allows: Commission Regulation (EU) 2017/2158, Annex II Part A,
/// point 1, as kept in UK law. It is about acrylamide, not about how long oil lasts.
pub const CHIPS_BELOW: Temp = Temp::celsius(175);

/// Scraps, filters and cloths count as cold under this (hold 12), by a probe in the heap. The project's own line,
/// taken from the hand-emptying limit.
pub const SCRAPS_COLD_BELOW: Temp = Temp::celsius(40);
