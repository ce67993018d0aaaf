//! Degrees Fahrenheit, US gallons and pounds: what a kitchen there reads and types. The log knows none of them.
//!
//! Exact by definition (NIST Special Publication 811, 2008, appendix B): 1 US gallon = 3.785 411 784 L, 1 pound =
//! 0.453 592 37 kg, degrees Fahrenheit = degrees Celsius × 9/5 + 32.

use super::keyed::keyed;

keyed! {
    /// A measure that is counted otherwise in the United States; the key is how its number is marked on screen.
    pub enum Measure {
        /// Degrees Celsius; there degrees Fahrenheit.
        Temp = "°C",
        /// Litres; there US gallons.
        Litres = "L",
        /// Kilograms; there pounds.
        Kilograms = "kg",
    }
}

/// Nanolitres in a US gallon.
const GALLON_NL: i64 = 3_785_411_784;
/// Tens of micrograms in a pound.
const POUND: i64 = 45_359_237;

impl Measure {
    /// How the number is marked in the United States.
    #[must_use]
    pub const fn us_unit(self) -> &'static str {
        match self {
            Self::Temp => "°F",
            Self::Litres => "gal",
            Self::Kilograms => "lb",
        }
    }

    /// Thousandths of the US unit, from thousandths of our own.
    #[must_use]
    pub fn to_us(self, thousandths: i64) -> i64 {
        match self {
            Self::Temp => self.difference_to_us(thousandths).saturating_add(32_000),
            Self::Litres | Self::Kilograms => self.difference_to_us(thousandths),
        }
    }

    /// The same of how far two of them lie apart.
    #[must_use]
    pub fn difference_to_us(self, thousandths: i64) -> i64 {
        match self {
            Self::Temp => scaled(thousandths, 9, 5),
            Self::Litres => scaled(thousandths, 1_000_000_000, GALLON_NL),
            Self::Kilograms => scaled(thousandths, 100_000_000, POUND),
        }
    }

    /// Thousandths of our own unit, from thousandths of the US one.
    #[must_use]
    pub fn from_us(self, thousandths: i64) -> i64 {
        match self {
            Self::Temp => scaled(thousandths.saturating_sub(32_000), 5, 9),
            Self::Litres => scaled(thousandths, GALLON_NL, 1_000_000_000),
            Self::Kilograms => scaled(thousandths, POUND, 100_000_000),
        }
    }

    /// The decimal places a US figure is shown with: a degree is less than one of ours, a hundredth of a gallon is
    /// 38 ml, a tenth of a pound 45 g.
    #[must_use]
    pub const fn us_places(self) -> u32 {
        match self {
            Self::Temp => 0,
            Self::Litres => 2,
            Self::Kilograms => 1,
        }
    }

    /// The decimal places of our own unit that what was typed is kept to: enough that it reads the same again.
    #[must_use]
    pub const fn own_places(self) -> u32 {
        match self {
            Self::Temp => 1,
            Self::Litres | Self::Kilograms => 3,
        }
    }
}

/// `n` times `by` over `over`, to the nearest whole, halves away from nothing. Two million litres are the most there is:
/// so every product fits.
fn scaled(n: i64, by: i64, over: i64) -> i64 {
    let n = n.clamp(-2_000_000_000, 2_000_000_000);
    (n * by + over / 2 * n.signum()) / over
}

/// Thousandths to a number of decimal places, to the nearest, halves away from nothing: (1250, 1) is 13.
#[must_use]
pub fn rounded(thousandths: i64, places: u32) -> i64 {
    scaled(thousandths, 1, 10_i64.pow(3_u32.saturating_sub(places)))
}
