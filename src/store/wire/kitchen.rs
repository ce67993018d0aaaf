//! The body of a kitchen, version 2: where the owner's rule of a second person is off. A kitchen that keeps it is still
//! written as version 1, so that an older app reads it.

use super::body::Body;
use super::scalar::{Text, Whole};
use super::setup::{KitchenV1, SpanV1};
use super::stored::stored;
use crate::domain::facts::setup::{Kitchen, LimitBasis};
use crate::domain::ids::KitchenId;
use crate::domain::units::{AcidValue, Minutes, Share};

stored! {
    /// The kitchen, whole, where nobody else need be in the building before pumps.
    pub struct KitchenV2 {
        kitchen: Text<KitchenId>,
        name: String,
        country: String,
        zone: String,
        day_start_min: u16,
        trading_days: [u8; 7],
        fry_min: Whole<Minutes>,
        closing_min: Option<Whole<Minutes>>,
        quiet: Option<SpanV1>,
        emergency_number: String,
        polar_limit_cpc: Option<Whole<Share>>,
        ffa_limit_cpc: Option<Whole<Share>>,
        av_limit_cav: Option<Whole<AcidValue>>,
        limit_basis: Text<LimitBasis>,
        languages: Vec<String>,
        second_person: bool,
    }
}

impl Body for KitchenV2 {
    type Fact = Kitchen;

    fn write(fact: &Kitchen) -> Self {
        let plain = KitchenV1::write(fact);
        Self {
            kitchen: plain.kitchen,
            name: plain.name,
            country: plain.country,
            zone: plain.zone,
            day_start_min: plain.day_start_min,
            trading_days: plain.trading_days,
            fry_min: plain.fry_min,
            closing_min: plain.closing_min,
            quiet: plain.quiet,
            emergency_number: plain.emergency_number,
            polar_limit_cpc: plain.polar_limit_cpc,
            ffa_limit_cpc: plain.ffa_limit_cpc,
            av_limit_cav: plain.av_limit_cav,
            limit_basis: plain.limit_basis,
            languages: plain.languages,
            second_person: fact.second_person,
        }
    }

    fn read(self) -> Result<Kitchen, String> {
        let plain = KitchenV1 {
            kitchen: self.kitchen,
            name: self.name,
            country: self.country,
            zone: self.zone,
            day_start_min: self.day_start_min,
            trading_days: self.trading_days,
            fry_min: self.fry_min,
            closing_min: self.closing_min,
            quiet: self.quiet,
            emergency_number: self.emergency_number,
            polar_limit_cpc: self.polar_limit_cpc,
            ffa_limit_cpc: self.ffa_limit_cpc,
            av_limit_cav: self.av_limit_cav,
            limit_basis: self.limit_basis,
            languages: self.languages,
        };
        Ok(Kitchen {
            second_person: self.second_person,
            ..plain.read()?
        })
    }
}
