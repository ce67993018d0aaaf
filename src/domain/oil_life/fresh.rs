//! What fresh oil holds before it has fried anything, by fat, and how well that is known.

use crate::domain::fat::Fat;

/// What a prior value rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grounds {
    /// A published measurement, named.
    Published(&'static str),
    /// Nothing was found for this fat: a wide guess, to be called one.
    Assumed,
}

/// A fresh value before any reading: normal, in % m/m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreshValue {
    /// Mean, % m/m.
    pub mean: f64,
    /// Standard deviation, points.
    pub sd: f64,
    /// What it rests on.
    pub grounds: Grounds,
}

const CUES1993: Grounds = Grounds::Published("Cuesta et al., Grasas y Aceites 44 (1993) 263–269");
const INAN: Grounds = Grounds::Published("İnanç & Maskan, Grasas y Aceites");
const AYDI: Grounds = Grounds::Published("Aydınkaptan & Barutçu Mazı, Grasas y Aceites");

/// Polar compounds of fresh oil. The papers' own spread is within one batch (± 0.2 for sunflower); a kitchen buys
/// many, so one point is allowed for.
#[must_use]
pub const fn polar(fat: Fat) -> FreshValue {
    let (mean, sd, grounds) = match fat {
        Fat::Sunflower => (5.09, 1.0, CUES1993),
        Fat::Palm => (7.5, 1.0, INAN),
        Fat::Rapeseed
        | Fat::HighOleicRapeseed
        | Fat::Soya
        | Fat::Cottonseed
        | Fat::Maize
        | Fat::Groundnut
        | Fat::PalmOlein
        | Fat::Dripping
        | Fat::Lard
        | Fat::Blend => (5.0, 2.0, Grounds::Assumed),
    };
    FreshValue { mean, sd, grounds }
}

/// Free fatty acids of fresh oil, % as oleic. Refined vegetable oil holds at most 0.30 (Codex CXS 210-1999, acid
/// value 0.6); animal fats 0.2–0.8 (from memory).
#[must_use]
pub const fn ffa(fat: Fat) -> FreshValue {
    let (mean, sd, grounds) = match fat {
        Fat::Sunflower => (0.157, 0.05, AYDI),
        Fat::Palm => (0.080, 0.05, INAN),
        Fat::Rapeseed
        | Fat::HighOleicRapeseed
        | Fat::Soya
        | Fat::Cottonseed
        | Fat::Maize
        | Fat::Groundnut
        | Fat::PalmOlein => (0.15, 0.08, Grounds::Assumed),
        Fat::Dripping | Fat::Lard | Fat::Blend => (0.40, 0.15, Grounds::Assumed),
    };
    FreshValue { mean, sd, grounds }
}
