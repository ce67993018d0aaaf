//! The frying media a kitchen uses: what allergen they carry, whether they are animal, how they melt.

use super::claim::{Exposure, Exposures};
use super::keyed::keyed;
use super::units::Temp;

keyed! {
    /// The kind of frying fat or oil.
    pub enum Fat {
        /// Rapeseed (canola).
        Rapeseed = "rapeseed",
        /// High-oleic rapeseed.
        HighOleicRapeseed = "high_oleic_rapeseed",
        /// Sunflower.
        Sunflower = "sunflower",
        /// Soya.
        Soya = "soya",
        /// Cottonseed.
        Cottonseed = "cottonseed",
        /// Maize (corn).
        Maize = "maize",
        /// Groundnut (peanut).
        Groundnut = "groundnut",
        /// Palm olein.
        PalmOlein = "palm_olein",
        /// Palm.
        Palm = "palm",
        /// Dripping (edible beef tallow).
        Dripping = "dripping",
        /// Lard.
        Lard = "lard",
        /// A blend; treated as the most cautious of its kinds.
        Blend = "blend",
    }
}

impl Fat {
    /// Whether it sets at room temperature, so that pump and hose must be warm before it is moved. A blend nobody
    /// described counts as solid: the longest warm-up is the safe guess.
    #[must_use]
    pub const fn is_solid(self) -> bool {
        match self {
            Self::Palm | Self::Dripping | Self::Lard | Self::Blend => true,
            Self::Rapeseed
            | Self::HighOleicRapeseed
            | Self::Sunflower
            | Self::Soya
            | Self::Cottonseed
            | Self::Maize
            | Self::Groundnut
            | Self::PalmOlein => false,
        }
    }

    /// Whether it is still set at 40 °C, where emptying by hand would begin: then there is no cold route.
    ///
    /// Melting ranges: beef tallow 40–50 °C and lard 28–40 °C (*Lehrbuch Lebensmittelchemie und Ernährung*,
    /// Springer 2011, second-hand), palm 33–39 °C slip (PORAM). Palm and lard may hold crystals at 40 °C; only a
    /// fat whose whole range lies below it is let through.
    #[must_use]
    pub const fn is_set_at_40c(self) -> bool {
        self.is_solid()
    }

    /// The lowest temperature at which it moves as a liquid through a pump, from the discharge temperatures of
    /// Codex CXC 36-1987 App. 1 (palm 50–55, tallow 55–65, lard 50–55 °C; from memory) and, for oils liquid in
    /// any kitchen, the manual route's own limit.
    #[must_use]
    pub const fn pumpable_at(self) -> Temp {
        match self {
            Self::Palm | Self::Lard => Temp::celsius(55),
            Self::Dripping | Self::Blend => Temp::celsius(65),
            Self::PalmOlein => Temp::celsius(35),
            Self::Rapeseed
            | Self::HighOleicRapeseed
            | Self::Sunflower
            | Self::Soya
            | Self::Cottonseed
            | Self::Maize
            | Self::Groundnut => Temp::celsius(20),
        }
    }

    /// Whether it comes from an animal.
    #[must_use]
    pub const fn is_animal(self) -> bool {
        match self {
            Self::Dripping | Self::Lard => true,
            Self::Rapeseed
            | Self::HighOleicRapeseed
            | Self::Sunflower
            | Self::Soya
            | Self::Cottonseed
            | Self::Maize
            | Self::Groundnut
            | Self::PalmOlein
            | Self::Palm
            | Self::Blend => false,
        }
    }

    /// What the fat itself brings into a pan: groundnut is declared even when refined; fully refined soya is
    /// exempt from declaration (Reg. (EU) 1169/2011 Annex II, from memory) and so brings nothing here.
    #[must_use]
    pub fn exposures(self) -> Exposures {
        match self {
            Self::Groundnut => Exposures::of(&[Exposure::Peanut]),
            Self::Dripping => Exposures::of(&[Exposure::AnimalFat, Exposure::Meat]),
            Self::Lard => Exposures::of(&[Exposure::AnimalFat, Exposure::Pork]),
            Self::Blend => Exposures::of(&[Exposure::Unknown]),
            Self::Rapeseed
            | Self::HighOleicRapeseed
            | Self::Sunflower
            | Self::Soya
            | Self::Cottonseed
            | Self::Maize
            | Self::PalmOlein
            | Self::Palm => Exposures::NONE,
        }
    }
}
