//! Quantities with their unit in the type: what a kitchen counts, as the whole numbers the log keeps.

use super::keyed::keyed;

/// A volume in millilitres, always booked as oil at 20 °C (hot oil stands 10–13 % higher).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Volume {
    ml: u32,
}

impl Volume {
    /// No oil at all.
    pub const NONE: Self = Self { ml: 0 };
    /// The largest volume a single entry may name: 1,000 L, far above any one pan.
    pub const MAX: Self = Self { ml: 1_000_000 };

    /// A volume in millilitres; `None` above [`Volume::MAX`].
    #[must_use]
    pub const fn from_ml(ml: u32) -> Option<Self> {
        if ml <= Self::MAX.ml { Some(Self { ml }) } else { None }
    }

    /// Millilitres at 20 °C.
    #[must_use]
    pub const fn ml(self) -> u32 {
        self.ml
    }

    /// Litres at 20 °C.
    #[must_use]
    pub fn litres(self) -> f64 {
        f64::from(self.ml) / 1000.0
    }
}

/// A temperature in tenths of a degree Celsius, from −50.0 to 400.0 °C.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Temp {
    dc: i16,
}

impl Temp {
    /// Lowest temperature an entry may hold.
    pub const MIN: Self = Self { dc: -500 };
    /// Highest temperature an entry may hold: above the ignition of any frying fat.
    pub const MAX: Self = Self { dc: 4000 };

    /// Tenths of a degree Celsius; `None` outside −50.0…400.0 °C.
    #[must_use]
    pub const fn from_dc(dc: i16) -> Option<Self> {
        if dc >= Self::MIN.dc && dc <= Self::MAX.dc {
            Some(Self { dc })
        } else {
            None
        }
    }

    /// Whole degrees Celsius, clamped to the allowed range. For constants.
    #[must_use]
    pub const fn celsius(c: i16) -> Self {
        let dc = c * 10;
        if dc < Self::MIN.dc {
            Self::MIN
        } else if dc > Self::MAX.dc {
            Self::MAX
        } else {
            Self { dc }
        }
    }

    /// Tenths of a degree Celsius.
    #[must_use]
    pub const fn dc(self) -> i16 {
        self.dc
    }

    /// Degrees Celsius.
    #[must_use]
    pub fn as_celsius(self) -> f64 {
        f64::from(self.dc) / 10.0
    }
}

/// A share by mass in hundredths of a percent (polar compounds, free fatty acids, free tank share), 0–100 %.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Share {
    cpc: u16,
}

impl Share {
    /// The whole: 100 %.
    pub const MAX: Self = Self { cpc: 10_000 };

    /// Hundredths of a percent; `None` above 100 %.
    #[must_use]
    pub const fn from_cpc(cpc: u16) -> Option<Self> {
        if cpc <= 10_000 { Some(Self { cpc }) } else { None }
    }

    /// Hundredths of a percent.
    #[must_use]
    pub const fn cpc(self) -> u16 {
        self.cpc
    }

    /// Percent.
    #[must_use]
    pub fn percent(self) -> f64 {
        f64::from(self.cpc) / 100.0
    }
}

/// An acid value in hundredths of mg KOH per g, 0–50 mg/g.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct AcidValue {
    cav: u16,
}

impl AcidValue {
    /// Hundredths of mg KOH/g; `None` above 50 mg/g.
    #[must_use]
    pub const fn from_cav(cav: u16) -> Option<Self> {
        if cav <= 5_000 { Some(Self { cav }) } else { None }
    }

    /// Hundredths of mg KOH/g.
    #[must_use]
    pub const fn cav(self) -> u16 {
        self.cav
    }

    /// mg KOH per g of oil.
    #[must_use]
    pub fn mg_per_g(self) -> f64 {
        f64::from(self.cav) / 100.0
    }
}

/// How much of something is stirred into oil each time: whole grams a litre of oil at 20 °C, 1–100.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Dose {
    g_per_l: u16,
}

impl Dose {
    /// The least there is to weigh.
    pub const MIN: Self = Self { g_per_l: 1 };
    /// About a tenth of the oil, far above any dose of a kitchen.
    pub const MAX: Self = Self { g_per_l: 100 };

    /// Grams a litre; `None` outside 1–100.
    #[must_use]
    pub const fn from_g_per_l(g_per_l: u16) -> Option<Self> {
        if g_per_l >= Self::MIN.g_per_l && g_per_l <= Self::MAX.g_per_l {
            Some(Self { g_per_l })
        } else {
            None
        }
    }

    /// Grams a litre of oil at 20 °C.
    #[must_use]
    pub const fn g_per_l(self) -> u16 {
        self.g_per_l
    }
}

/// Minutes of frying or of the day, 0–1440.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Minutes {
    min: u16,
}

impl Minutes {
    /// Minutes; `None` above one day.
    #[must_use]
    pub const fn new(min: u16) -> Option<Self> {
        if min <= 1440 { Some(Self { min }) } else { None }
    }

    /// Minutes.
    #[must_use]
    pub const fn get(self) -> u16 {
        self.min
    }

    /// Hours.
    #[must_use]
    pub fn hours(self) -> f64 {
        f64::from(self.min) / 60.0
    }
}

keyed! {
    /// What a quantity of fat was counted in when it was typed.
    pub enum Unit {
        /// Litres.
        Litres = "l",
        /// Kilograms.
        Kilograms = "kg",
        /// Blocks of solid fat; the owner says what one weighs.
        Block = "block",
        /// Drums of oil; the owner says what one holds.
        Drum = "drum",
        /// Bags of oil, boxed or not; the owner says what one holds.
        Bag = "bag",
    }
}

/// A quantity as it was typed, kept beside the computed volume so that "half a block" stays half a block.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Typed {
    /// Thousandths of the unit.
    pub thousandths: u32,
    /// The unit it was counted in.
    pub unit: Unit,
}

/// An amount of oil as logged: what it is in millilitres at 20 °C, and what was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Amount {
    /// Volume at 20 °C.
    pub volume: Volume,
    /// As typed.
    pub typed: Typed,
}
