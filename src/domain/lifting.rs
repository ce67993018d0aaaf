//! What one person lifts without help: guideline figures by where the hands are, and what drums and blocks weigh.
//!
//! The figures are a filter for "no detailed assessment needed", not a safe most (HSE, *Manual handling at work*, INDG143,
//! and L23; the figure from memory). Anybody may lift here, so the smaller of the two columns counts (project default).

use super::fat::Fat;
use super::keyed::keyed;
use super::units::Volume;
use super::volume::density_20c_tenths_g_per_l;

keyed! {
    /// Where the hands are, from the top down.
    pub enum Zone {
        /// Above the shoulder.
        AboveShoulder = "above_shoulder",
        /// Shoulder to elbow.
        Shoulder = "shoulder",
        /// Elbow to knuckle.
        Elbow = "elbow",
        /// Knuckle to the middle of the lower leg.
        Knuckle = "knuckle",
        /// Near the floor.
        Floor = "floor",
    }
}

/// Guideline figures of one zone in kilograms: held close, and at arm's length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Guideline {
    /// Men, close and at arm's length.
    pub men_kg: (u8, u8),
    /// Women, close and at arm's length.
    pub women_kg: (u8, u8),
}

impl Zone {
    /// Its figures.
    #[must_use]
    pub const fn guideline(self) -> Guideline {
        let (men_kg, women_kg) = match self {
            Self::AboveShoulder => ((10, 5), (7, 3)),
            Self::Shoulder | Self::Knuckle => ((20, 10), (13, 7)),
            Self::Elbow => ((25, 15), (16, 10)),
            Self::Floor => ((10, 5), (7, 3)),
        };
        Guideline { men_kg, women_kg }
    }
}

/// From how many kilograms on a lift between two heights needs help: hands that pass several zones go by the smallest.
#[must_use]
pub fn help_from_kg(one: Zone, other: Zone) -> u8 {
    let (top, low) = (one.min(other), one.max(other));
    let passed = Zone::ALL.iter().filter(|zone| (top..=low).contains(zone));
    let kg = |zone: &Zone| zone.guideline().men_kg.0.min(zone.guideline().women_kg.0);
    passed.map(kg).min().unwrap_or(0)
}

/// Whether a lift from the floor to the rim of a pan needs a second person or a trolley.
#[must_use]
pub fn needs_help(grams: u32) -> bool {
    grams > u32::from(help_from_kg(Zone::Floor, Zone::Elbow)) * 1000
}

/// What an empty drum weighs, in grams (project default: a thin can of 20 litres).
pub const DRUM_EMPTY_G: u32 = 1_000;

/// What some litres of a fat weigh in their drum, in grams.
#[must_use]
pub fn drum_g(oil: Volume, fat: Fat) -> u32 {
    let grams = u64::from(oil.ml()) * u64::from(density_20c_tenths_g_per_l(fat)) / 10_000;
    u32::try_from(grams).unwrap_or(u32::MAX).saturating_add(DRUM_EMPTY_G)
}
