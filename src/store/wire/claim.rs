//! The bodies of claims lost and restored and of the allergen sheet gone through. A claim is restored as version 2, with
//! what was looked at; version 1 did not say.

use super::body::Body;
use super::scalar::Text;
use super::stored::stored;
use crate::domain::claim::ClaimKind;
use crate::domain::facts::AllergensChecked;
use crate::domain::facts::oil::{ClaimChange, ClaimRestored, Looked};
use crate::domain::ids::PanId;
use crate::domain::keyed::keyed;
use crate::domain::time::Millis;

stored! {
    /// A claim lost, or restored.
    pub struct ClaimChangeV1 {
        pan: Text<PanId>,
        what: Text<ClaimKind>,
        why: String,
        basis: Option<String>,
    }
}

impl Body for ClaimChangeV1 {
    type Fact = ClaimChange;

    fn write(fact: &ClaimChange) -> Self {
        Self {
            pan: Text(fact.pan),
            what: Text(fact.what),
            why: fact.why.clone(),
            basis: fact.basis.clone(),
        }
    }

    fn read(self) -> Result<ClaimChange, String> {
        Ok(ClaimChange {
            pan: self.pan.0,
            what: self.what.0,
            why: self.why,
            basis: self.basis,
        })
    }
}

stored! {
    /// A claim restored, of which nobody asked what was looked at.
    pub struct ClaimRestoredV1 {
        pan: Text<PanId>,
        what: Text<ClaimKind>,
        why: String,
        basis: Option<String>,
    }
}

impl Body for ClaimRestoredV1 {
    type Fact = ClaimRestored;

    fn write(fact: &ClaimRestored) -> Self {
        Self {
            pan: Text(fact.pan),
            what: Text(fact.what),
            why: fact.why.clone(),
            basis: fact.basis.clone(),
        }
    }

    fn read(self) -> Result<ClaimRestored, String> {
        Ok(ClaimRestored {
            pan: self.pan.0,
            what: self.what.0,
            why: self.why,
            basis: self.basis,
            looked: None,
        })
    }
}

keyed! {
    /// Something seen before a claim was restored.
    pub enum Seen {
        /// The pan, clean and dry before the oil went in.
        CleanDry = "clean_dry",
        /// Basket, scoop and tongs of its own.
        OwnUtensils = "own_utensils",
        /// Nothing else was fried in this oil, and nothing else goes in until its end.
        OnlySuchFood = "only_such_food",
    }
}

impl Seen {
    /// What must have been seen.
    fn all(looked: Looked) -> Vec<Text<Self>> {
        let only = looked.until.map(|_| Self::OnlySuchFood);
        [Self::CleanDry, Self::OwnUtensils]
            .into_iter()
            .chain(only)
            .map(Text)
            .collect()
    }
}

stored! {
    /// A claim restored on evidence, or begun until a moment.
    pub struct ClaimRestoredV2 {
        pan: Text<PanId>,
        what: Text<ClaimKind>,
        why: String,
        basis: Option<String>,
        seen: Vec<Text<Seen>>,
        until: Option<Text<Millis>>,
    }
}

impl Body for ClaimRestoredV2 {
    type Fact = ClaimRestored;

    fn write(fact: &ClaimRestored) -> Self {
        let plain = ClaimRestoredV1::write(fact);
        let until = fact.looked.and_then(|looked| looked.until);
        Self {
            pan: plain.pan,
            what: plain.what,
            why: plain.why,
            basis: plain.basis,
            seen: Seen::all(Looked { until }),
            until: until.map(Text),
        }
    }

    fn read(self) -> Result<ClaimRestored, String> {
        let looked = Looked {
            until: self.until.map(|until| until.0),
        };
        if self.seen != Seen::all(looked) {
            return Err("not all was seen that restores a claim".into());
        }
        let plain = ClaimRestoredV1 {
            pan: self.pan,
            what: self.what,
            why: self.why,
            basis: self.basis,
        };
        Ok(ClaimRestored {
            looked: Some(looked),
            ..plain.read()?
        })
    }
}

stored! {
    /// The allergen sheet gone through.
    pub struct AllergensCheckedV1 {
        sheet: String,
        why: Option<String>,
    }
}

impl Body for AllergensCheckedV1 {
    type Fact = AllergensChecked;

    fn write(fact: &AllergensChecked) -> Self {
        Self {
            sheet: fact.sheet.clone(),
            why: fact.why.clone(),
        }
    }

    fn read(self) -> Result<AllergensChecked, String> {
        Ok(AllergensChecked {
            sheet: self.sheet,
            why: self.why,
        })
    }
}
