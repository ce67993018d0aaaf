//! Bodies of the kinds that say what happens to the oil, version 1.

use super::body::Body;
use super::parts::{TypedV1, read_amount, write_amount};
use super::scalar::{Text, Whole};
use super::stored::{self, Stored, odd, put, stored, word};
use crate::domain::facts::oil::{
    Age, Fill, Load, Measured, Note, OilChange, PartChange, Reading, Service, Sign, SignKind, TopUp,
};
use crate::domain::fat::Fat;
use crate::domain::ids::{InstrumentId, PanId};
use crate::domain::time::Day;
use crate::domain::units::{AcidValue, Minutes, Share, Temp, Volume};
use crate::store::json::{Json, Out};

/// How old oil was when the log first met it.
#[derive(Debug)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum AgeV1 {
    /// Fresh from its container.
    Fresh,
    /// Fresh on this day.
    Since(Text<Day>),
    /// Nobody knows.
    Unknown,
}

impl Stored for AgeV1 {
    fn blank() -> Self {
        Self::Unknown
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        const EXPECTED: &str = "fresh, since a day, or unknown";
        match json {
            Json::Object(fields) => {
                let mut reading = stored::Reading::from(fields);
                let since = reading.take("since");
                reading.end(&["since"]).map(|()| Self::Since(since))
            }
            json => match word(json)?.as_ref() {
                "fresh" => Ok(Self::Fresh),
                "unknown" => Ok(Self::Unknown),
                other => Err(odd(&Json::Word(other.into()), EXPECTED)),
            },
        }
    }

    fn put(&self, out: &mut Out) {
        match self {
            Self::Fresh => out.word("fresh"),
            Self::Since(day) => {
                out.open('{');
                put(out, "since", day);
                out.close('}');
            }
            Self::Unknown => out.word("unknown"),
        }
    }
}

impl From<Age> for AgeV1 {
    fn from(age: Age) -> Self {
        match age {
            Age::Fresh => Self::Fresh,
            Age::Since(day) => Self::Since(Text(day)),
            Age::Unknown => Self::Unknown,
        }
    }
}

impl From<AgeV1> for Age {
    fn from(age: AgeV1) -> Self {
        match age {
            AgeV1::Fresh => Self::Fresh,
            AgeV1::Since(Text(day)) => Self::Since(day),
            AgeV1::Unknown => Self::Unknown,
        }
    }
}

stored! {
    /// Oil put into an empty pan.
    pub struct FillV1 {
        pan: Text<PanId>,
        fat: Text<Fat>,
        ml: Whole<Volume>,
        typed: TypedV1,
        batch: Option<String>,
        age: AgeV1,
    }
}

impl Body for FillV1 {
    type Fact = Fill;

    fn write(fact: &Fill) -> Self {
        let (ml, typed) = write_amount(fact.amount);
        Self {
            pan: Text(fact.pan),
            fat: Text(fact.fat),
            ml,
            typed,
            batch: fact.batch.clone(),
            age: fact.age.into(),
        }
    }

    fn read(self) -> Result<Fill, String> {
        Ok(Fill {
            pan: self.pan.0,
            fat: self.fat.0,
            amount: read_amount(self.ml, self.typed),
            batch: self.batch,
            age: self.age.into(),
        })
    }
}

stored! {
    /// Fresh oil added.
    pub struct TopUpV1 {
        pan: Text<PanId>,
        fat: Text<Fat>,
        ml: Whole<Volume>,
        typed: TypedV1,
        batch: Option<String>,
    }
}

impl Body for TopUpV1 {
    type Fact = TopUp;

    fn write(fact: &TopUp) -> Self {
        let (ml, typed) = write_amount(fact.amount);
        Self {
            pan: Text(fact.pan),
            fat: Text(fact.fat),
            ml,
            typed,
            batch: fact.batch.clone(),
        }
    }

    fn read(self) -> Result<TopUp, String> {
        let amount = read_amount(self.ml, self.typed);
        Ok(TopUp {
            pan: self.pan.0,
            fat: self.fat.0,
            amount,
            batch: self.batch,
        })
    }
}

stored! {
    /// Some oil out, fresh in.
    pub struct PartChangeV1 {
        pan: Text<PanId>,
        out_ml: Whole<Volume>,
        out_typed: TypedV1,
        in_ml: Whole<Volume>,
        in_typed: TypedV1,
    }
}

impl Body for PartChangeV1 {
    type Fact = PartChange;

    fn write(fact: &PartChange) -> Self {
        let (out_ml, out_typed) = write_amount(fact.out);
        let (in_ml, in_typed) = write_amount(fact.fresh);
        Self {
            pan: Text(fact.pan),
            out_ml,
            out_typed,
            in_ml,
            in_typed,
        }
    }

    fn read(self) -> Result<PartChange, String> {
        let out = read_amount(self.out_ml, self.out_typed);
        let fresh = read_amount(self.in_ml, self.in_typed);
        Ok(PartChange {
            pan: self.pan.0,
            out,
            fresh,
        })
    }
}

stored! {
    /// All oil out of a pan.
    pub struct OilChangeV1 {
        pan: Text<PanId>,
        ml: Whole<Volume>,
        typed: TypedV1,
        reason: String,
        temp_dc: Option<Whole<Temp>>,
        container: Option<String>,
    }
}

impl Body for OilChangeV1 {
    type Fact = OilChange;

    fn write(fact: &OilChange) -> Self {
        let (ml, typed) = write_amount(fact.amount);
        Self {
            pan: Text(fact.pan),
            ml,
            typed,
            reason: fact.reason.clone(),
            temp_dc: fact.temp.map(Whole),
            container: fact.container.clone(),
        }
    }

    fn read(self) -> Result<OilChange, String> {
        Ok(OilChange {
            pan: self.pan.0,
            amount: read_amount(self.ml, self.typed),
            reason: self.reason,
            temp: self.temp_dc.map(|t| t.0),
            container: self.container,
        })
    }
}

stored! {
    /// A service worked with a pan, or not: no frying minutes.
    pub struct ServiceV1 {
        pan: Text<PanId>,
        fry_min: Whole<Minutes>,
        load: Text<Load>,
        temp_dc: Option<Whole<Temp>>,
        food_g: Option<u32>,
    }
}

impl Body for ServiceV1 {
    type Fact = Service;

    fn write(fact: &Service) -> Self {
        Self {
            pan: Text(fact.pan),
            fry_min: Whole(fact.fry),
            load: Text(fact.load),
            temp_dc: fact.temp.map(Whole),
            food_g: fact.food_g,
        }
    }

    fn read(self) -> Result<Service, String> {
        Ok(Service {
            pan: self.pan.0,
            fry: self.fry_min.0,
            load: self.load.0,
            temp: self.temp_dc.map(|t| t.0),
            food_g: self.food_g,
        })
    }
}

stored! {
    /// A reading: exactly one of the five values.
    #[cfg_attr(feature = "schema", schemars(extend("oneOf" = [
        { "required": ["polar_cpc"] }, { "required": ["ffa_cpc"] }, { "required": ["acid_cav"] },
        { "required": ["temp_dc"] }, { "required": ["smoke_dc"] },
    ])))]
    pub struct ReadingV1 {
        pan: Text<PanId>,
        polar_cpc: Option<Whole<Share>>,
        ffa_cpc: Option<Whole<Share>>,
        acid_cav: Option<Whole<AcidValue>>,
        temp_dc: Option<Whole<Temp>>,
        smoke_dc: Option<Whole<Temp>>,
        instrument: Option<Text<InstrumentId>>,
        oil_dc: Option<Whole<Temp>>,
    }
}

impl Body for ReadingV1 {
    type Fact = Reading;

    fn write(fact: &Reading) -> Self {
        let mut body = Self {
            pan: Text(fact.pan),
            polar_cpc: None,
            ffa_cpc: None,
            acid_cav: None,
            temp_dc: None,
            smoke_dc: None,
            instrument: fact.instrument.map(Text),
            oil_dc: fact.oil.map(Whole),
        };
        match fact.value {
            Measured::Polar(share) => body.polar_cpc = Some(Whole(share)),
            Measured::Ffa(share) => body.ffa_cpc = Some(Whole(share)),
            Measured::Acid(value) => body.acid_cav = Some(Whole(value)),
            Measured::Temp(temp) => body.temp_dc = Some(Whole(temp)),
            Measured::Smoke(temp) => body.smoke_dc = Some(Whole(temp)),
        }
        body
    }

    fn read(self) -> Result<Reading, String> {
        let values = [
            self.polar_cpc.map(|v| Measured::Polar(v.0)),
            self.ffa_cpc.map(|v| Measured::Ffa(v.0)),
            self.acid_cav.map(|v| Measured::Acid(v.0)),
            self.temp_dc.map(|v| Measured::Temp(v.0)),
            self.smoke_dc.map(|v| Measured::Smoke(v.0)),
        ];
        let mut given = values.into_iter().flatten();
        let (Some(value), None) = (given.next(), given.next()) else {
            return Err("a reading holds exactly one value".into());
        };
        let instrument = self.instrument.map(|i| i.0);
        let oil = self.oil_dc.map(|t| t.0);
        Ok(Reading {
            pan: self.pan.0,
            value,
            instrument,
            oil,
        })
    }
}

stored! {
    /// Something seen, smelt or tasted.
    pub struct SignV1 {
        pan: Option<Text<PanId>>,
        sign: Text<SignKind>,
        text: Option<String>,
    }
}

impl Body for SignV1 {
    type Fact = Sign;

    fn write(fact: &Sign) -> Self {
        Self {
            pan: fact.pan.map(Text),
            sign: Text(fact.sign),
            text: fact.text.clone(),
        }
    }

    fn read(self) -> Result<Sign, String> {
        Ok(Sign {
            pan: self.pan.map(|p| p.0),
            sign: self.sign.0,
            text: self.text,
        })
    }
}

stored! {
    /// Words.
    pub struct NoteV1 {
        pan: Option<Text<PanId>>,
        text: String,
    }
}

impl Body for NoteV1 {
    type Fact = Note;

    fn write(fact: &Note) -> Self {
        Self {
            pan: fact.pan.map(Text),
            text: fact.text.clone(),
        }
    }

    fn read(self) -> Result<Note, String> {
        Ok(Note {
            pan: self.pan.map(|p| p.0),
            text: self.text,
        })
    }
}
