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

/// How a fat stands in the list of allergens that must be declared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FatAllergen {
    /// It comes from nothing in the list.
    None,
    /// Declared, refined or not.
    Declared(Exposure),
    /// Exempt when fully refined, which its label says; declared otherwise.
    ExemptIfRefined(Exposure),
    /// Nobody knows before the label is read.
    OnItsLabel,
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

    /// How the fat itself stands in the list of allergens: Reg. (EU) 1169/2011 Annex II, from memory, kept in UK law.
    ///
    /// - Peanuts "and products thereof" have no exemption for refined oil: groundnut is declared (5).
    /// - "Fully refined soybean oil and fat" is exempt by name, other soya oil is not (6 (a)); the FEDIOL allergen page
    ///   speaks of the same two oils.
    /// - No other oil or fat of this list comes from anything in the annex. Beef and pork fat are no allergens there,
    ///   but of an animal.
    /// - A blend may hold any of them: its label says.
    #[must_use]
    pub const fn allergen(self) -> FatAllergen {
        match self {
            Self::Groundnut => FatAllergen::Declared(Exposure::Peanut),
            Self::Soya => FatAllergen::ExemptIfRefined(Exposure::Soya),
            Self::Blend => FatAllergen::OnItsLabel,
            Self::Rapeseed
            | Self::HighOleicRapeseed
            | Self::Sunflower
            | Self::Cottonseed
            | Self::Maize
            | Self::PalmOlein
            | Self::Palm
            | Self::Dripping
            | Self::Lard => FatAllergen::None,
        }
    }

    /// What the fat itself brings into a pan, by [`Fat::allergen`]: exempt soya brings nothing.
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
