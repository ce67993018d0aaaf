//! Claims a pan makes, and the exposures that break them.
//!
//! Filtering takes out crumbs, not allergens (Coeliac UK, *Guidance for fish and chip shops*), so a claim is lost
//! to whatever the shared machine has met since it was last strip-cleaned.

use super::keyed::keyed;

keyed! {
    /// What a pan's food is promised to be.
    pub enum ClaimKind {
        /// At most 20 mg/kg gluten (Reg. (EU) 828/2014).
        GlutenFree = "gluten_free",
        /// No contact with meat, fish or seafood, oil included.
        Vegetarian = "vegetarian",
        /// No pork; meat and animal fat only on the basis the owner gives.
        Halal = "halal",
    }
}

keyed! {
    /// Something a pan or a machine has met.
    pub enum Exposure {
        /// Wheat, batter, breadcrumb.
        Gluten = "gluten",
        /// Fish.
        Fish = "fish",
        /// Prawns, scampi, crab.
        Crustacean = "crustacean",
        /// Meat other than pork.
        Meat = "meat",
        /// Pork.
        Pork = "pork",
        /// Milk.
        Milk = "milk",
        /// Egg.
        Egg = "egg",
        /// Peanut, groundnut oil included even when refined (Reg. (EU) 1169/2011 Annex II).
        Peanut = "peanut",
        /// Dripping, lard, or any other animal fat.
        AnimalFat = "animal_fat",
        /// Soya.
        Soya = "soya",
        /// Something nobody logged; it meets every claim.
        Unknown = "unknown",
    }
}

impl ClaimKind {
    /// Whether this claim cannot stand once `exposure` was met. `meat_has_basis`: the owner gave a basis
    /// (a certificate, say) on which meat and animal fat in this kitchen are halal.
    #[must_use]
    pub fn excludes(self, exposure: Exposure, meat_has_basis: bool) -> bool {
        match (self, exposure) {
            (_, Exposure::Unknown)
            | (Self::GlutenFree, Exposure::Gluten)
            | (
                Self::Vegetarian,
                Exposure::Fish | Exposure::Crustacean | Exposure::Meat | Exposure::Pork | Exposure::AnimalFat,
            )
            | (Self::Halal, Exposure::Pork) => true,
            (Self::Halal, Exposure::Meat | Exposure::AnimalFat) => !meat_has_basis,
            (
                Self::GlutenFree,
                Exposure::Fish
                | Exposure::Crustacean
                | Exposure::Meat
                | Exposure::Pork
                | Exposure::Milk
                | Exposure::Egg
                | Exposure::Peanut
                | Exposure::AnimalFat
                | Exposure::Soya,
            )
            | (
                Self::Vegetarian,
                Exposure::Gluten | Exposure::Milk | Exposure::Egg | Exposure::Peanut | Exposure::Soya,
            )
            | (
                Self::Halal,
                Exposure::Gluten
                | Exposure::Fish
                | Exposure::Crustacean
                | Exposure::Milk
                | Exposure::Egg
                | Exposure::Peanut
                | Exposure::Soya,
            ) => false,
        }
    }
}

/// A set of exposures; ordered and small, so two equal sets are equal bit for bit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Exposures {
    bits: u16,
}

impl Exposures {
    /// Nothing met.
    pub const NONE: Self = Self { bits: 0 };

    /// The set of the given exposures.
    #[must_use]
    pub fn of(list: &[Exposure]) -> Self {
        list.iter().fold(Self::NONE, |set, e| set.with(*e))
    }

    /// This set and one more.
    #[must_use]
    pub const fn with(self, exposure: Exposure) -> Self {
        Self {
            bits: self.bits | (1 << exposure as u16),
        }
    }

    /// Both sets together.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self {
            bits: self.bits | other.bits,
        }
    }

    /// Whether the set holds `exposure`.
    #[must_use]
    pub const fn has(self, exposure: Exposure) -> bool {
        self.bits & (1 << exposure as u16) != 0
    }

    /// Whether nothing was met.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.bits == 0
    }

    /// The exposures, in declaration order.
    pub fn iter(self) -> impl Iterator<Item = Exposure> {
        Exposure::ALL.iter().copied().filter(move |e| self.has(*e))
    }
}
