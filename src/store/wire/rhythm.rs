//! Bodies of when a pan is filtered and what it is for: a pan's version 2, where it is filtered by sessions or on nights
//! of its own; a pan's job for a day; days closed. A pan filtered by days is still written as version 1, so that an
//! older app reads it.

use super::body::Body;
use super::parts::{read_exposures, write_exposures};
use super::scalar::{Text, Whole};
use super::setup::{ClaimV1, PanV1};
use super::stored::stored;
use crate::domain::claim::Exposure;
use crate::domain::facts::closed::{Closed, NotDays};
use crate::domain::facts::pan_job::PanJob;
use crate::domain::facts::rhythm::{Rhythm, Weekdays};
use crate::domain::facts::setup::{HeatKind, OffSign, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::PanId;
use crate::domain::time::Day;
use crate::domain::units::Volume;

stored! {
    /// A pan that is filtered by sessions or on nights of its own, whole: version 1 with those in the place of its days.
    #[cfg_attr(feature = "schema", schemars(extend("oneOf" = [
        { "required": ["rhythm_sessions"] }, { "required": ["rhythm_weekdays"] },
    ])))]
    pub struct PanV2 {
        pan: Text<PanId>,
        name: String,
        full_ml: Whole<Volume>,
        min_ml: Whole<Volume>,
        mark: String,
        heat: Text<HeatKind>,
        off_signs: [Text<OffSign>; 2],
        fat: Text<Fat>,
        claims: Vec<ClaimV1>,
        food: Vec<Text<Exposure>>,
        rhythm_sessions: Option<u16>,
        rhythm_weekdays: Option<[u8; 7]>,
        usual_days: Option<u16>,
        end_sign: Option<String>,
        in_use: bool,
    }
}

impl Body for PanV2 {
    type Fact = Pan;

    fn write(fact: &Pan) -> Self {
        let plain = PanV1::write(fact);
        let (sessions, weekdays) = match fact.rhythm {
            Some(Rhythm::Sessions(every)) => (Some(every.get()), None),
            Some(Rhythm::Weekdays(nights)) => (None, Some(nights.days().map(u8::from))),
            Some(Rhythm::Days(_)) | None => (None, None),
        };
        Self {
            pan: plain.pan,
            name: plain.name,
            full_ml: plain.full_ml,
            min_ml: plain.min_ml,
            mark: plain.mark,
            heat: plain.heat,
            off_signs: plain.off_signs,
            fat: plain.fat,
            claims: plain.claims,
            food: plain.food,
            rhythm_sessions: sessions,
            rhythm_weekdays: weekdays,
            usual_days: plain.usual_days,
            end_sign: plain.end_sign,
            in_use: plain.in_use,
        }
    }

    fn read(self) -> Result<Pan, String> {
        let sessions = self.rhythm_sessions.and_then(|every| every.try_into().ok());
        let weekdays = self.rhythm_weekdays.filter(|days| days.iter().all(|day| *day <= 1));
        let weekdays = weekdays.and_then(|days| Weekdays::of(days.map(|day| day == 1)));
        let rhythm = match (sessions, weekdays) {
            (Some(every), None) if self.rhythm_weekdays.is_none() => Rhythm::Sessions(every),
            (None, Some(nights)) if self.rhythm_sessions.is_none() => Rhythm::Weekdays(nights),
            (Some(_) | None, Some(_) | None) => {
                return Err("neither a number of sessions alone, nor days of the week".into());
            }
        };
        let plain = PanV1 {
            pan: self.pan,
            name: self.name,
            full_ml: self.full_ml,
            min_ml: self.min_ml,
            mark: self.mark,
            heat: self.heat,
            off_signs: self.off_signs,
            fat: self.fat,
            claims: self.claims,
            food: self.food,
            rhythm: None,
            usual_days: self.usual_days,
            end_sign: self.end_sign,
            in_use: self.in_use,
        };
        Ok(Pan {
            rhythm: Some(rhythm),
            ..plain.read()?
        })
    }
}

stored! {
    /// A pan does another's job, or its own again, on one day.
    pub struct PanJobV1 {
        pan: Text<PanId>,
        of: Text<PanId>,
        food: Vec<Text<Exposure>>,
        day: Text<Day>,
    }
}

impl Body for PanJobV1 {
    type Fact = PanJob;

    fn write(fact: &PanJob) -> Self {
        Self {
            pan: Text(fact.pan),
            of: Text(fact.of),
            food: write_exposures(fact.food),
            day: Text(fact.day),
        }
    }

    fn read(self) -> Result<PanJob, String> {
        Ok(PanJob {
            pan: self.pan.0,
            of: self.of.0,
            food: read_exposures(&self.food),
            day: self.day.0,
        })
    }
}

stored! {
    /// Days without trade, both counted.
    pub struct ClosedV1 {
        from: Text<Day>,
        to: Text<Day>,
        why: Option<String>,
    }
}

impl Body for ClosedV1 {
    type Fact = Closed;

    fn write(fact: &Closed) -> Self {
        Self {
            from: Text(fact.from()),
            to: Text(fact.to()),
            why: fact.why.clone(),
        }
    }

    fn read(self) -> Result<Closed, String> {
        Closed::between(self.from.0, self.to.0, self.why).map_err(|why| match why {
            NotDays::Turned => "to lies before from".into(),
            NotDays::TooMany => "more than 366 days closed".into(),
        })
    }
}
