//! A pan's form: what it holds, how it is heated and how that is seen to be off, its fat, its promise, what is in it.

use std::num::NonZeroU16;

use super::kitchen::limits_fit;
use super::read::{LINE_MOST, NAME_MOST, Reader, as_number, as_set, as_weekdays, weekdays};
use super::{Answers, Around, Fault, Field, RhythmBy, Wrong, YES};
use crate::domain::claim::{ClaimKind, Exposure, Exposures};
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Age, Fill};
use crate::domain::facts::rhythm::{Rhythm, Weekdays};
use crate::domain::facts::setup::{Claim, HeatKind, OffSign, Pan};
use crate::domain::fat::Fat;
use crate::domain::ids::PanId;
use crate::domain::ledger::{Book, meets};
use crate::domain::oil_life::LimitsInForce;
use crate::domain::time::Day;
use crate::domain::units::{Amount, Typed, Unit, Volume};

/// The most litres of one pan.
const MOST_LITRES: u32 = 300;
/// Oil older than this many days is oil of unknown age.
const OLDEST: i64 = 730;

/// What a sign of off shows. Two signs of one kind may both lie for one reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OffShows {
    /// Where the control stands.
    Control,
    /// That nothing burns or glows.
    Effect,
    /// That nothing comes in.
    Supply,
}

/// What a sign shows.
#[must_use]
pub const fn off_shows(sign: OffSign) -> OffShows {
    match sign {
        OffSign::Knob | OffSign::Thermostat => OffShows::Control,
        OffSign::Flame | OffSign::Light => OffShows::Effect,
        OffSign::Isolator | OffSign::GasTap | OffSign::Plug => OffShows::Supply,
    }
}

/// Whether a pan with this heat can have the sign at all.
const fn fits(sign: OffSign, heat: HeatKind) -> bool {
    match (sign, heat) {
        (OffSign::Flame | OffSign::GasTap, HeatKind::Electric) | (OffSign::Plug, HeatKind::Gas) => false,
        (
            OffSign::Knob
            | OffSign::Flame
            | OffSign::Light
            | OffSign::Thermostat
            | OffSign::Isolator
            | OffSign::GasTap
            | OffSign::Plug,
            HeatKind::Gas | HeatKind::Electric,
        ) => true,
    }
}

/// Another heat brings the two signs most pans of it have.
pub(super) fn change_heat(answers: &mut Answers, value: &str) {
    answers.put(Field::PanHeat, value);
    let signs = match HeatKind::from_key(value) {
        Some(HeatKind::Gas) => [OffSign::Knob, OffSign::Flame],
        Some(HeatKind::Electric) => [OffSign::Knob, OffSign::Light],
        None => return,
    };
    answers.put(Field::OffSigns, as_set(signs.iter().map(|s| s.key())));
}

/// A new pan starts as the last one: a range's pans are mostly alike. The first knows only the likeliest heat.
pub(super) fn blank(book: &Book) -> Answers {
    let pans = book.pans_in_use();
    let mut answers = match pans.last() {
        Some(last) => described(last).with(Field::PanName, ""),
        None => {
            let mut answers = Answers::default().with_rhythm(None);
            change_heat(&mut answers, HeatKind::Gas.key());
            answers
        }
    };
    let taken = |n: &u32| pans.iter().any(|p| p.name.trim() == n.to_string());
    if let Some(free) = (1..).find(|n| !taken(n)) {
        answers.put(Field::PanName, free.to_string());
    }
    answers.put(Field::InIt, Age::Unknown.key());
    // A promise is made for each pan by itself.
    answers.put(Field::Claims, "");
    answers.put(Field::ClaimBasis, "");
    answers
}

impl Age {
    /// The answer that stands for it.
    const fn key(self) -> &'static str {
        match self {
            Self::Fresh => "fresh",
            Self::Since(_) => "since",
            Self::Unknown => "unknown",
        }
    }
}

/// The answer for a pan with nothing in it.
const NOTHING: &str = "nothing";

fn described(pan: &Pan) -> Answers {
    Answers::default()
        .with(Field::PanName, &*pan.name)
        .with(Field::PanFull, as_number(pan.full.ml(), 3))
        .with(Field::PanMin, as_number(pan.min.ml(), 3))
        .with(Field::PanMark, &*pan.mark)
        .with(Field::PanHeat, pan.heat.key())
        .with(Field::OffSigns, as_set(pan.off_signs.iter().map(|s| s.key())))
        .with(Field::PanFat, pan.fat.key())
        .with(Field::Food, as_set(pan.food.iter().map(Exposure::key)))
        .with(Field::UsualDays, number(pan.usual_days))
        .with(Field::EndSign, pan.end_sign.clone().unwrap_or_default())
        .with_rhythm(pan.rhythm)
}

impl Answers {
    fn with_rhythm(self, rhythm: Option<Rhythm>) -> Self {
        let (by, field, answer) = match rhythm {
            None => (RhythmBy::Days, Field::Rhythm, String::new()),
            Some(Rhythm::Days(every)) => (RhythmBy::Days, Field::Rhythm, every.to_string()),
            Some(Rhythm::Sessions(every)) => (RhythmBy::Sessions, Field::RhythmSessions, every.to_string()),
            Some(Rhythm::Weekdays(nights)) => (RhythmBy::Weekdays, Field::RhythmWeekdays, as_weekdays(nights.days())),
        };
        self.with(Field::RhythmBy, by.key()).with(field, answer)
    }
}

fn number(n: Option<u16>) -> String {
    n.map(|n| n.to_string()).unwrap_or_default()
}

pub(super) fn of(pan: &Pan, today: Day) -> Answers {
    let mut answers = described(pan);
    let claims: Vec<&Claim> = pan.claims_on(today).collect();
    answers.put(Field::Claims, as_set(claims.iter().map(|c| c.what.key())));
    if let Some(claim) = claims.first() {
        answers.put(Field::ClaimBasis, &*claim.basis);
    }
    answers.tick(Field::InUse, pan.in_use);
    answers
}

/// What a first set-up asks of a pan: its litres and mark, how heat is seen to be off, its fat, what meets it, what is
/// in it. Nothing that a hold or a claim rests on is left unseen.
pub(super) const FIRST: &[&[Field]] = &[
    &[Field::PanName, Field::PanFull, Field::PanMin, Field::PanMark],
    &[
        Field::PanHeat,
        Field::OffSigns,
        Field::PanFat,
        Field::Food,
        Field::InIt,
        Field::FreshOn,
    ],
];

pub(super) fn pages(id: PanId, answers: &Answers, book: &Book) -> Vec<Vec<Field>> {
    let mut kept_for = vec![Field::Claims];
    if answers.set(Field::Claims).next().is_some() {
        kept_for.push(Field::ClaimBasis);
    }
    let mut oil = Vec::new();
    if book.pan(id).is_none() {
        oil.push(Field::InIt);
        if answers.get(Field::InIt) == "since" {
            oil.push(Field::FreshOn);
        }
    }
    oil.extend([Field::UsualDays, Field::EndSign, Field::RhythmBy]);
    oil.push(match rhythm_by(answers) {
        RhythmBy::Days => Field::Rhythm,
        RhythmBy::Sessions => Field::RhythmSessions,
        RhythmBy::Weekdays => Field::RhythmWeekdays,
    });
    if book.pan(id).is_some() {
        oil.push(Field::InUse);
    }
    vec![
        vec![Field::PanName, Field::PanFull, Field::PanMin, Field::PanMark],
        vec![Field::PanHeat, Field::OffSigns],
        vec![Field::PanFat, Field::Food],
        kept_for,
        oil,
    ]
}

/// What it is filtered by; days until somebody says otherwise.
fn rhythm_by(answers: &Answers) -> RhythmBy {
    RhythmBy::from_key(answers.get(Field::RhythmBy)).unwrap_or(RhythmBy::Days)
}

fn rhythm(read: &mut Reader) -> Option<Option<Rhythm>> {
    let every = |number: Option<u16>| number.and_then(NonZeroU16::new);
    match rhythm_by(read.answers) {
        RhythmBy::Sessions => {
            let sessions = read.whole(Field::RhythmSessions, 1, 60)?;
            Some(every(Some(sessions)).map(Rhythm::Sessions))
        }
        RhythmBy::Weekdays => match Weekdays::of(weekdays(read.answers, Field::RhythmWeekdays)) {
            Some(nights) => Some(Some(Rhythm::Weekdays(nights))),
            None => read.refuse(Field::RhythmWeekdays, Fault::Missing),
        },
        RhythmBy::Days => Some(every(read.whole_if_any(Field::Rhythm, 1, 60)?).map(Rhythm::Days)),
    }
}

pub(super) fn check(id: PanId, answers: &Answers, around: Around, wrongs: &mut Vec<Wrong>) -> Option<Vec<Fact>> {
    let new = around.book.pan(id).is_none();
    let mut read = Reader { answers, wrongs };
    let name = read.words(Field::PanName, NAME_MOST);
    if let Some(name) = &name
        && around
            .book
            .pans
            .values()
            .any(|p| p.pan != id && p.in_use && p.name == *name)
    {
        read.refuse::<()>(Field::PanName, Fault::NameTaken);
    }
    let full = read.litres(Field::PanFull, 1, MOST_LITRES);
    let min = read.litres(Field::PanMin, 1, MOST_LITRES);
    if let (Some(full), Some(min)) = (full, min)
        && min >= full
    {
        read.refuse::<()>(Field::PanMin, Fault::MinNotUnderFull);
    }
    let mark = read.words(Field::PanMark, LINE_MOST);
    let heat = read.one(Field::PanHeat, HeatKind::from_key);
    let off_signs = off_signs(&mut read, heat);
    let fat = read.one(Field::PanFat, Fat::from_key);
    let food = Exposures::of(&read.set(Field::Food, Exposure::from_key));
    let claims = claims(&mut read, id, around, fat.map(|fat| food.and(fat.exposures())));
    if let (Some(fat), Some(kitchen)) = (fat, &around.book.kitchen) {
        let limits = LimitsInForce {
            polar: kitchen.polar_limit,
            acid: kitchen.acid_limit,
        };
        if let Some(wrong) = limits_fit(limits, fat) {
            read.refuse::<()>(Field::PanFat, wrong.why);
        }
    }
    let in_it = if new {
        in_it(&mut read, around.today)
    } else {
        Some(None)
    };
    let usual_days = read.whole_if_any(Field::UsualDays, 1, 365);
    let end_sign = read.words_if_any(Field::EndSign, LINE_MOST);
    let rhythm = rhythm(&mut read);
    let pan = Pan {
        pan: id,
        name: name?,
        full: full?,
        min: min?,
        mark: mark?,
        heat: heat?,
        off_signs: off_signs?,
        fat: fat?,
        claims: claims?,
        food,
        rhythm: rhythm?,
        usual_days: usual_days?,
        end_sign: end_sign?,
        in_use: new || answers.get(Field::InUse) == YES,
    };
    let fill = in_it?.map(|age| {
        Fact::Fill(Fill {
            pan: id,
            fat: pan.fat,
            amount: whole(pan.full),
            batch: None,
            age,
        })
    });
    Some(std::iter::once(Fact::Pan(Box::new(pan))).chain(fill).collect())
}

/// A pan full, counted in litres.
const fn whole(full: Volume) -> Amount {
    Amount {
        volume: full,
        typed: Typed {
            thousandths: full.ml(),
            unit: Unit::Litres,
        },
    }
}

fn off_signs(read: &mut Reader, heat: Option<HeatKind>) -> Option<[OffSign; 2]> {
    let signs = read.set(Field::OffSigns, OffSign::from_key);
    let &[one, two] = signs.as_slice() else {
        return read.refuse(Field::OffSigns, Fault::NotTwo);
    };
    if heat.is_some_and(|heat| !fits(one, heat) || !fits(two, heat)) {
        return read.refuse(Field::OffSigns, Fault::NotOnThisHeat);
    }
    if off_shows(one) == off_shows(two) {
        return read.refuse(Field::OffSigns, Fault::SameKind);
    }
    Some([one, two])
}

/// The claims of the pan: those chosen, from the day they were first made; those given up, with their last day.
fn claims(read: &mut Reader, id: PanId, around: Around, met: Option<Exposures>) -> Option<Vec<Claim>> {
    let chosen = read.set(Field::Claims, ClaimKind::from_key);
    let basis = if chosen.is_empty() {
        String::new()
    } else {
        read.words(Field::ClaimBasis, LINE_MOST)?
    };
    let before = around.book.pan(id).map_or(&[][..], |p| p.claims.as_slice());
    let today = around.today;
    let mut claims = Vec::new();
    for old in before {
        let stands = old.until.is_none_or(|until| today <= until);
        if !stands {
            claims.push(old.clone());
        } else if !chosen.contains(&old.what) && old.from < today {
            claims.push(Claim {
                until: Some(today.plus(-1)),
                ..old.clone()
            });
        }
    }
    for what in chosen {
        let stood = before
            .iter()
            .find(|c| c.what == what && c.until.is_none_or(|until| today <= until));
        let claim = Claim {
            what,
            from: stood.map_or(today, |c| c.from),
            basis: basis.clone(),
            until: None,
        };
        if let Some(met) = met.and_then(|met| meets(&claim, met)) {
            return read.refuse(Field::Claims, Fault::BreaksClaim { claim: what, met });
        }
        claims.push(claim);
    }
    Some(claims)
}

fn in_it(read: &mut Reader, today: Day) -> Option<Option<Age>> {
    match read.answers.get(Field::InIt) {
        NOTHING => Some(None),
        "fresh" => Some(Some(Age::Fresh)),
        "unknown" => Some(Some(Age::Unknown)),
        "since" => {
            let Some(day) = read.day_if_any(Field::FreshOn)? else {
                return read.refuse(Field::FreshOn, Fault::Missing);
            };
            if day > today {
                read.refuse(Field::FreshOn, Fault::DayAhead)
            } else if today.since(day) > OLDEST {
                read.refuse(Field::FreshOn, Fault::TooLongAgo)
            } else {
                Some(Some(Age::Since(day)))
            }
        }
        _ => read.refuse(Field::InIt, Fault::Missing),
    }
}
