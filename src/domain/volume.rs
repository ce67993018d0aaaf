//! How much oil there is: density by fat, hot against cold, and whether a pan fits into a tank.
//!
//! Every volume in the log is oil at 20 °C. Hot oil stands higher, and a level that looks right hot may be under the
//! mark in the morning.

use super::fat::Fat;
use super::units::{Amount, Dose, Share, Temp, Typed, Unit, Volume};

/// Density fitted as a straight line in temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DensityFit {
    /// kg/L at 0 °C.
    at_zero: f64,
    /// kg/L per °C, under 0.
    slope: f64,
}

/// A density, and whether it lies beyond what was measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    /// kg per litre.
    pub kg_per_l: f64,
    /// Above the fitted range: no measurement above 140 °C was found for any frying oil.
    pub extrapolated: bool,
}

/// Sunflower, 10–140 °C: Esteban et al., Biomass & Bioenergy 42 (2012) 164–171. The expected growth of any fat.
pub const SUNFLOWER: DensityFit = DensityFit {
    at_zero: 0.9310,
    slope: -6.4145e-4,
};
/// Soya, 24–110 °C: least squares on Noureddini, Teoh & Clements, JAOCS 69 (1992) 1184–1188. The most any liquid
/// frying oil was found to grow, so the one to be safe with.
pub const SOYA: DensityFit = DensityFit {
    at_zero: 0.934_44,
    slope: -6.677e-4,
};

const BOOKED_AT: Temp = Temp::celsius(20);
const MEASURED_TO: Temp = Temp::celsius(140);
/// Fits are used from 10 °C to the temperature no frying oil may pass.
const FITTED: (Temp, Temp) = (Temp::celsius(10), Temp::celsius(200));

impl DensityFit {
    /// The density at `temp`; `None` outside 10–200 °C.
    #[must_use]
    pub fn at(self, temp: Temp) -> Option<Density> {
        (temp >= FITTED.0 && temp <= FITTED.1).then(|| Density {
            kg_per_l: self.kg_per_l(temp),
            extrapolated: temp > MEASURED_TO,
        })
    }

    /// How many times its volume at 20 °C oil takes up at `temp`; `None` outside 10–200 °C.
    #[must_use]
    pub fn growth(self, temp: Temp) -> Option<f64> {
        self.at(temp).map(|hot| self.kg_per_l(BOOKED_AT) / hot.kg_per_l)
    }

    fn kg_per_l(self, temp: Temp) -> f64 {
        self.at_zero + self.slope * temp.as_celsius()
    }
}

/// Density at 20 °C in tenths of a gram per litre, for what is bought by weight. Solid fats as the liquid they
/// become, carried down to 20 °C at 0.64 g/L per °C (Rodenbush et al., JAOCS 76 (1999) 1415–1419).
#[must_use]
pub const fn density_20c_tenths_g_per_l(fat: Fat) -> u32 {
    match fat {
        // Esteban et al. 2012.
        Fat::Sunflower => 9182,
        // Fits to Noureddini et al. 1992.
        Fat::Soya => 9211,
        Fat::Maize => 9210,
        // Measured at 20 °C, Magne et al. 1950 by way of EN 1825-2.
        Fat::Cottonseed => 9200,
        // Middle of the relative densities of Codex CXS 210-1999, from memory: 0.914–0.920 at 20 °C.
        Fat::Rapeseed | Fat::HighOleicRapeseed => 9153,
        // The same, from memory: 0.912–0.920 at 20 °C.
        Fat::Groundnut => 9144,
        // The same, from memory: 0.899–0.920 at 40 °C, 0.891–0.899 at 50 °C.
        Fat::PalmOlein => 9207,
        Fat::Palm => 9126,
        // Middle of Codex CXS 211-1999, from memory: tallow 0.894–0.904, lard 0.896–0.904 at 40 °C.
        Fat::Dripping => 9102,
        Fat::Lard => 9112,
        // Nobody said what it is made of; the middle of the others.
        Fat::Blend => 9150,
    }
}

/// The volume at 20 °C of some grams of a fat; `None` above [`Volume::MAX`].
#[must_use]
pub fn volume_of_grams(grams: u32, fat: Fat) -> Option<Volume> {
    let density = u64::from(density_20c_tenths_g_per_l(fat));
    let ml = (u64::from(grams) * 10_000 + density / 2) / density;
    Volume::from_ml(u32::try_from(ml).ok()?)
}

/// A dose as a share of the oil's mass, to the nearest hundredth of a percent.
#[must_use]
pub fn share_of_mass(dose: Dose, fat: Fat) -> Share {
    let density = density_20c_tenths_g_per_l(fat);
    let cpc = (u32::from(dose.g_per_l()) * 100_000 + density / 2) / density;
    // The largest dose comes to 11.2 % of the lightest fat.
    u16::try_from(cpc).ok().and_then(Share::from_cpc).unwrap_or(Share::MAX)
}

/// What the owner's packs hold.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Packs {
    /// Grams in a block of solid fat.
    pub block_g: Option<u32>,
    /// Volume of a drum of oil.
    pub drum: Option<Volume>,
    /// Volume of a bag of oil.
    pub bag: Option<Volume>,
}

/// Why a typed amount cannot be turned into a volume.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAmount {
    /// Nobody has said what a block weighs.
    BlockUnknown,
    /// Nobody has said what a drum holds.
    DrumUnknown,
    /// Nobody has said what a bag holds.
    BagUnknown,
    /// More than one entry may hold.
    TooMuch,
}

/// What was typed, as a volume at 20 °C, with the typed figure kept beside it.
///
/// # Errors
/// The pack's size is not known, or the amount is above [`Volume::MAX`].
pub fn amount(typed: Typed, fat: Fat, packs: Packs) -> Result<Amount, NoAmount> {
    let times = |whole: u32| u32::try_from(u64::from(typed.thousandths) * u64::from(whole) / 1000).ok();
    let volume = match typed.unit {
        Unit::Litres => Volume::from_ml(typed.thousandths),
        Unit::Kilograms => volume_of_grams(typed.thousandths, fat),
        Unit::Block => times(packs.block_g.ok_or(NoAmount::BlockUnknown)?).and_then(|g| volume_of_grams(g, fat)),
        Unit::Drum => times(packs.drum.ok_or(NoAmount::DrumUnknown)?.ml()).and_then(Volume::from_ml),
        Unit::Bag => times(packs.bag.ok_or(NoAmount::BagUnknown)?.ml()).and_then(Volume::from_ml),
    };
    let volume = volume.ok_or(NoAmount::TooMuch)?;
    Ok(Amount { volume, typed })
}

/// What `cold` (at 20 °C) takes up at `temp`, as expected; `None` outside 10–200 °C.
#[must_use]
pub fn hot_ml(cold: Volume, temp: Temp) -> Option<u32> {
    SUNFLOWER.growth(temp).map(|g| rounded(f64::from(cold.ml()) * g))
}

/// What `hot` millilitres seen at `temp` are at 20 °C, as expected; `None` outside 10–200 °C or above the largest
/// volume.
#[must_use]
pub fn cold_volume(hot: u32, temp: Temp) -> Option<Volume> {
    let growth = SUNFLOWER.growth(temp)?;
    Volume::from_ml(rounded(f64::from(hot) / growth))
}

/// How many millilitres must stand above the minimum mark at `temp`, so that the oil still reaches the mark at 20 °C.
///
/// `min` is what the pan holds at its mark. By the fat that shrinks most, rounded up; oil at or under 20 °C needs
/// nothing above the mark, and above 200 °C it is not read at all (`None`).
#[must_use]
pub fn above_mark_needed(min: Volume, temp: Temp) -> Option<u32> {
    let growth = SOYA.growth(temp.max(BOOKED_AT))?;
    Some(rounded_up(f64::from(min.ml()) * (growth - 1.0)))
}

/// Growth from 20 °C that a tank must have room for, in hundredths, by the top of the temperature window in force.
///
/// Upper edge of the published fits, rounded up: 1.11 to 150 °C, 1.14 to 180, 1.16 to 200 (extrapolated above 140).
/// `None` above 200 °C, where nothing is pumped.
#[must_use]
pub fn room_growth_hundredths(window_top: Temp) -> Option<u32> {
    match window_top.dc() {
        ..=1500 => Some(111),
        1501..=1800 => Some(114),
        1801..=2000 => Some(116),
        _ => None,
    }
}

/// Why a pan's oil may not be pumped into a tank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DoesNotFit {
    /// The tank is too small with the oil at its hottest.
    TooSmall {
        /// Millilitres the oil takes up at the top of the window.
        needs_ml: u32,
        /// Millilitres the tank has once its free share is kept free.
        has_ml: u32,
    },
    /// The window's top lies above 200 °C.
    WindowTooHot,
}

/// Whether a full pan fits into an empty tank with the oil at the top of the window (hold 5): tank × (1 − free) ≥
/// pan × growth.
///
/// # Errors
/// The room needed and had, where it does not; or a window that reaches above 200 °C.
pub fn fits(tank: Volume, free: Share, pan_full: Volume, window_top: Temp) -> Result<(), DoesNotFit> {
    let growth = room_growth_hundredths(window_top).ok_or(DoesNotFit::WindowTooHot)?;
    // Volumes end at 1,000,000 ml, so neither product leaves u64 nor either quotient u32.
    let needs = (u64::from(pan_full.ml()) * u64::from(growth)).div_ceil(100);
    let has = u64::from(tank.ml()) * u64::from(10_000 - free.cpc()) / 10_000;
    if has >= needs {
        return Ok(());
    }
    Err(DoesNotFit::TooSmall {
        needs_ml: u32::try_from(needs).unwrap_or(u32::MAX),
        has_ml: u32::try_from(has).unwrap_or(u32::MAX),
    })
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "volumes are 0 to a few million ml"
)]
fn rounded(ml: f64) -> u32 {
    ml.round() as u32
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "volumes are 0 to a few million ml"
)]
fn rounded_up(ml: f64) -> u32 {
    ml.ceil() as u32
}
