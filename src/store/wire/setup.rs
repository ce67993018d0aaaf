//! Bodies of the kinds that describe the kitchen but for its machines, version 1.

use super::body::Body;
use super::parts::{read_exposures, write_exposures};
use super::scalar::{Text, Whole};
use super::stored::stored;
use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::facts::rhythm::Rhythm;
use crate::domain::facts::setup::{
    AcidLimit, Claim, HeatKind, Instrument, Kitchen, LimitBasis, Measures, OffSign, Pan, Person, Route, Span,
};
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, KitchenId, PanId, PersonId};
use crate::domain::time::Day;
use crate::domain::units::{AcidValue, Minutes, Share, Volume};

stored! {
    /// A span of the day that may cross midnight.
    pub struct SpanV1 {
        from_min: Whole<Minutes>,
        to_min: Whole<Minutes>,
    }
}

stored! {
    /// The kitchen, whole.
    pub struct KitchenV1 {
        pub kitchen: Text<KitchenId>,
        pub name: String,
        pub country: String,
        pub zone: String,
        pub day_start_min: u16,
        pub trading_days: [u8; 7],
        pub fry_min: Whole<Minutes>,
        pub closing_min: Option<Whole<Minutes>>,
        pub quiet: Option<SpanV1>,
        pub emergency_number: String,
        pub polar_limit_cpc: Option<Whole<Share>>,
        pub ffa_limit_cpc: Option<Whole<Share>>,
        pub av_limit_cav: Option<Whole<AcidValue>>,
        pub limit_basis: Text<LimitBasis>,
        pub languages: Vec<String>,
    }
}

impl Body for KitchenV1 {
    type Fact = Kitchen;

    fn write(fact: &Kitchen) -> Self {
        let (ffa, acid_value) = match fact.acid_limit {
            Some(AcidLimit::Ffa(share)) => (Some(share), None),
            Some(AcidLimit::AcidValue(value)) => (None, Some(value)),
            None => (None, None),
        };
        Self {
            kitchen: Text(fact.kitchen),
            name: fact.name.clone(),
            country: fact.country.clone(),
            zone: fact.zone.clone(),
            day_start_min: fact.day_start_min,
            trading_days: fact.trading_days.map(u8::from),
            fry_min: Whole(fact.fry_min),
            closing_min: fact.closing_min.map(Whole),
            quiet: fact.quiet.map(|s| SpanV1 {
                from_min: Whole(s.from_min),
                to_min: Whole(s.to_min),
            }),
            emergency_number: fact.emergency_number.clone(),
            polar_limit_cpc: fact.polar_limit.map(Whole),
            ffa_limit_cpc: ffa.map(Whole),
            av_limit_cav: acid_value.map(Whole),
            limit_basis: Text(fact.limit_basis),
            languages: fact.languages.clone(),
        }
    }

    fn read(self) -> Result<Kitchen, String> {
        if !(180..=660).contains(&self.day_start_min) {
            return Err("day_start_min lies outside 180 to 660".into());
        }
        if self.trading_days.iter().any(|day| *day > 1) {
            return Err("trading_days holds something other than 0 and 1".into());
        }
        if self.country.len() != 2 || !self.country.bytes().all(|b| b.is_ascii_uppercase()) {
            return Err("country is not two capital letters".into());
        }
        let acid_limit = match (self.ffa_limit_cpc, self.av_limit_cav) {
            (Some(Whole(share)), None) => Some(AcidLimit::Ffa(share)),
            (None, Some(Whole(value))) => Some(AcidLimit::AcidValue(value)),
            (None, None) => None,
            (Some(_), Some(_)) => return Err("two limits on acidity".into()),
        };
        Ok(Kitchen {
            kitchen: self.kitchen.0,
            name: self.name,
            country: self.country,
            zone: self.zone,
            day_start_min: self.day_start_min,
            trading_days: self.trading_days.map(|day| day == 1),
            fry_min: self.fry_min.0,
            closing_min: self.closing_min.map(|m| m.0),
            quiet: self.quiet.map(|s| Span {
                from_min: s.from_min.0,
                to_min: s.to_min.0,
            }),
            emergency_number: self.emergency_number,
            polar_limit: self.polar_limit_cpc.map(|s| s.0),
            acid_limit,
            limit_basis: self.limit_basis.0,
            languages: self.languages,
            second_person: true,
        })
    }
}

stored! {
    /// A person, whole.
    pub struct PersonV1 {
        person: Text<PersonId>,
        initials: String,
        adult: bool,
        routes: Vec<Text<Route>>,
        may_supervise: bool,
        by: Option<Text<PersonId>>,
        until: Option<Text<Day>>,
    }
}

impl Body for PersonV1 {
    type Fact = Person;

    fn write(fact: &Person) -> Self {
        Self {
            person: Text(fact.person),
            initials: fact.initials.clone(),
            adult: fact.adult,
            routes: fact.routes.iter().copied().map(Text).collect(),
            may_supervise: fact.may_supervise,
            by: fact.by.map(Text),
            until: fact.until.map(Text),
        }
    }

    fn read(self) -> Result<Person, String> {
        Ok(Person {
            person: self.person.0,
            initials: self.initials,
            adult: self.adult,
            routes: self.routes.into_iter().map(|r| r.0).collect(),
            may_supervise: self.may_supervise,
            by: self.by.map(|p| p.0),
            until: self.until.map(|d| d.0),
        })
    }
}

stored! {
    /// A promise a pan makes.
    pub struct ClaimV1 {
        what: Text<ClaimKind>,
        from: Text<Day>,
        basis: String,
        until: Option<Text<Day>>,
    }
}

impl From<&Claim> for ClaimV1 {
    fn from(claim: &Claim) -> Self {
        Self {
            what: Text(claim.what),
            from: Text(claim.from),
            basis: claim.basis.clone(),
            until: claim.until.map(Text),
        }
    }
}

impl From<ClaimV1> for Claim {
    fn from(claim: ClaimV1) -> Self {
        Self {
            what: claim.what.0,
            from: claim.from.0,
            basis: claim.basis,
            until: claim.until.map(|d| d.0),
        }
    }
}

stored! {
    /// A pan, whole.
    pub struct PanV1 {
        pub(super) pan: Text<PanId>,
        pub(super) name: String,
        pub(super) full_ml: Whole<Volume>,
        pub(super) min_ml: Whole<Volume>,
        pub(super) mark: String,
        pub(super) heat: Text<HeatKind>,
        pub(super) off_signs: [Text<OffSign>; 2],
        pub(super) fat: Text<Fat>,
        pub(super) claims: Vec<ClaimV1>,
        pub(super) food: Vec<Text<Exposure>>,
        pub(super) rhythm: Option<u16>,
        pub(super) usual_days: Option<u16>,
        pub(super) end_sign: Option<String>,
        pub(super) in_use: bool,
    }
}

impl Body for PanV1 {
    type Fact = Pan;

    fn write(fact: &Pan) -> Self {
        Self {
            pan: Text(fact.pan),
            name: fact.name.clone(),
            full_ml: Whole(fact.full),
            min_ml: Whole(fact.min),
            mark: fact.mark.clone(),
            heat: Text(fact.heat),
            off_signs: fact.off_signs.map(Text),
            fat: Text(fact.fat),
            claims: fact.claims.iter().map(ClaimV1::from).collect(),
            food: write_exposures(fact.food),
            rhythm: match fact.rhythm {
                Some(Rhythm::Days(every)) => Some(every.get()),
                Some(Rhythm::Sessions(_) | Rhythm::Weekdays(_)) | None => None,
            },
            usual_days: fact.usual_days,
            end_sign: fact.end_sign.clone(),
            in_use: fact.in_use,
        }
    }

    fn read(self) -> Result<Pan, String> {
        Ok(Pan {
            pan: self.pan.0,
            name: self.name,
            full: self.full_ml.0,
            min: self.min_ml.0,
            mark: self.mark,
            heat: self.heat.0,
            off_signs: self.off_signs.map(|s| s.0),
            fat: self.fat.0,
            claims: self.claims.into_iter().map(Claim::from).collect(),
            food: read_exposures(&self.food),
            // None in so many days always counted as every day.
            rhythm: self.rhythm.and_then(|every| every.try_into().ok()).map(Rhythm::Days),
            usual_days: self.usual_days,
            end_sign: self.end_sign,
            in_use: self.in_use,
        })
    }
}

stored! {
    /// An instrument, whole.
    pub struct InstrumentV1 {
        instrument: Text<InstrumentId>,
        name: String,
        measures: Text<Measures>,
        spread_cpc: Option<Whole<Share>>,
    }
}

impl Body for InstrumentV1 {
    type Fact = Instrument;

    fn write(fact: &Instrument) -> Self {
        Self {
            instrument: Text(fact.instrument),
            name: fact.name.clone(),
            measures: Text(fact.measures),
            spread_cpc: fact.spread.map(Whole),
        }
    }

    fn read(self) -> Result<Instrument, String> {
        Ok(Instrument {
            instrument: self.instrument.0,
            name: self.name,
            measures: self.measures.0,
            spread: self.spread_cpc.map(|s| s.0),
        })
    }
}
