//! Today as it was shown last, kept so that the next start shows it before the whole log is read.
//!
//! The log is the only truth, and a glance is never more than a copy of one look at it: it stands for one log of so
//! many entries, on one trading day, read by one build of the app, and anything else is no glance at all. What must
//! never be shown from a copy is not in it: while a job is open, old oil waits, something is wrong, a pan stands empty or
//! low, or a claim is lost, none is kept.

use std::ops::Range;

use super::Kitchen;
use super::today::{LifeToday, PanToday, Today};
use crate::domain::claim::ClaimKind;
use crate::domain::facts::job::JobKind;
use crate::domain::fat::Fat;
use crate::domain::ids::{Dev, PanId};
use crate::domain::ledger::PutOff;
use crate::domain::oil_life::{Basis, DaysLeft, Usual, Word};
use crate::domain::time::{Day, Millis, Now};
use crate::store::Journal;
use crate::store::json::{self, Out};
use crate::store::wire::scalar::Text;
use crate::store::wire::stored::{Stored, Unless, stored};

/// What a glance was taken of.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The build of the app that took it: another may work Today out differently.
    pub build: String,
    /// The store's own name.
    pub dev: Dev,
    /// How many entries the log held. Entries are added and never changed, so the same log with as many is the same.
    pub entries: usize,
}

/// Today at a glance, and what the app must know beside it before the log is read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Glance {
    /// The kitchen's country, whose words are spoken.
    pub country: String,
    /// The number to call, as its owner wrote it.
    pub emergency_number: String,
    /// From when to before when it holds: from when it was taken to the end of its trading day.
    pub holds: Range<Millis>,
    /// What Today showed.
    pub today: Today,
}

stored! {
    struct GlanceText {
        build: String,
        dev: Text<Dev>,
        entries: u32,
        country: String,
        number: String,
        from: Text<Millis>,
        to: Text<Millis>,
        day: Text<Day>,
        pans: Vec<PanText>,
        night: Option<Text<Day>>,
        names: Unless<Vec<String>>,
        done: Unless<Vec<Text<JobKind>>>,
        none: Unless<bool>,
        look: Unless<bool>,
        sheet: Unless<bool>,
        closed: Option<Text<Day>>,
    }
}

stored! {
    struct PanText {
        pan: Text<PanId>,
        name: String,
        fat: Text<Fat>,
        claims: Unless<Vec<Text<ClaimKind>>>,
        shade: Option<u8>,
        level: u8,
        life: Option<LifeText>,
        filtered: Option<Text<Day>>,
        used: Unless<bool>,
        due: Unless<bool>,
        job: Option<String>,
        put_off: Option<PutOffText>,
    }
}

stored! {
    struct PutOffText {
        night: Text<Day>,
        why: Option<String>,
        nights: u32,
    }
}

stored! {
    struct LifeText {
        score: Option<u8>,
        days: Option<DaysText>,
        holds: Option<u8>,
        word: Option<u8>,
        usual: Option<[u16; 2]>,
        read: Unless<bool>,
    }
}

stored! {
    struct DaysText {
        low: Option<u8>,
        median: Option<u8>,
        high: Option<u8>,
    }
}

/// The glance to keep of a kitchen that is set up; `None` while a job is open, old oil waits to be put by, something is
/// wrong, a pan stands empty or low, a claim is lost, or oil is parked.
#[must_use]
pub fn taken<J: Journal>(kitchen: &Kitchen<J>, today: &Today, taken: &Taken, now: &Now) -> Option<String> {
    let ledger = kitchen.ledger();
    let set_up = ledger.book.kitchen.as_ref()?;
    let unsettled = |pan: &PanToday| pan.low || !pan.lost.is_empty() || !pan.parked.is_empty();
    if !today.open.is_empty()
        || !kitchen.pan_jobs().state().waste.is_empty()
        || !ledger.troubles().is_empty()
        || !ledger.empties().is_empty()
        || today.pans.iter().any(unsettled)
    {
        return None;
    }
    // A claim begun for an evening is shown by no copy that outlives it.
    let evenings = ledger.evening_ends().into_iter().filter(|end| *end >= now.wall);
    let to = evenings.fold(kitchen.day_ends(today.day), Millis::min);
    let (night, names) = today.unanswered.clone().unzip();
    let text = GlanceText {
        build: taken.build.clone(),
        dev: Text(taken.dev),
        entries: u32::try_from(taken.entries).ok()?,
        country: set_up.country.clone(),
        number: set_up.emergency_number.clone(),
        from: Text(now.wall),
        to: Text(to),
        day: Text(today.day),
        pans: today.pans.iter().map(PanText::from).collect(),
        night: night.map(Text),
        names: Unless(names.unwrap_or_default()),
        done: Unless(today.done.iter().copied().map(Text).collect()),
        none: Unless(today.none_filtered),
        look: Unless(today.look_owed),
        sheet: Unless(today.sheet_open),
        closed: today.closed.map(Text),
    };
    let mut out = Out::new();
    text.put(&mut out);
    Some(out.into_text())
}

/// The glance in a kept text, if it was taken of this very log; `None` for anything else, and the log is read.
#[must_use]
pub fn read(text: &str, of: &Taken) -> Option<Glance> {
    let kept = GlanceText::from_json(json::read(text).ok()?).ok()?;
    let taken = Taken {
        build: kept.build,
        dev: kept.dev.0,
        entries: usize::try_from(kept.entries).ok()?,
    };
    let today = Today {
        day: kept.day.0,
        pans: kept
            .pans
            .into_iter()
            .map(PanToday::try_from)
            .collect::<Result<_, ()>>()
            .ok()?,
        unanswered: kept.night.map(|night| (night.0, kept.names.0)),
        open: Vec::new(),
        care: Vec::new(),
        done: kept.done.0.into_iter().map(|job| job.0).collect(),
        none_filtered: kept.none.0,
        look_owed: kept.look.0,
        machine_down: false,
        sheet_open: kept.sheet.0,
        closed: kept.closed.map(|day| day.0),
    };
    (taken == *of).then_some(Glance {
        country: kept.country,
        emergency_number: kept.number,
        holds: kept.from.0..kept.to.0,
        today,
    })
}

impl Glance {
    /// Whether it still is the trading day the glance was taken on, by a clock that has not run back since. No zone is
    /// asked: a browser takes its time to learn of one.
    #[must_use]
    pub fn holds_at(&self, wall: Millis) -> bool {
        self.holds.contains(&wall)
    }
}

impl From<&PanToday> for PanText {
    fn from(pan: &PanToday) -> Self {
        Self {
            pan: Text(pan.pan),
            name: pan.name.clone(),
            fat: Text(pan.fat),
            claims: Unless(pan.claims.iter().copied().map(Text).collect()),
            shade: pan.shade,
            level: pan.level,
            life: pan.life.map(LifeText::from),
            filtered: pan.last_filtered.map(Text),
            used: Unless(pan.used),
            due: Unless(pan.due),
            job: pan.job.clone(),
            put_off: pan.put_off.as_ref().map(|put_off| PutOffText {
                night: Text(put_off.night),
                why: put_off.why.clone(),
                nights: put_off.nights,
            }),
        }
    }
}

impl TryFrom<PanText> for PanToday {
    type Error = ();

    fn try_from(pan: PanText) -> Result<Self, ()> {
        Ok(Self {
            pan: pan.pan.0,
            name: pan.name,
            fat: pan.fat.0,
            claims: pan.claims.0.into_iter().map(|claim| claim.0).collect(),
            lost: Vec::new(),
            shade: pan.shade,
            level: pan.level,
            life: pan.life.map(LifeToday::try_from).transpose()?,
            last_filtered: pan.filtered.map(|day| day.0),
            used: pan.used.0,
            due: pan.due.0,
            job: pan.job,
            put_off: pan.put_off.map(|put_off| PutOff {
                night: put_off.night.0,
                why: put_off.why,
                nights: put_off.nights,
            }),
            low: false,
            out: false,
            parked: Vec::new(),
        })
    }
}

impl From<LifeToday> for LifeText {
    fn from(life: LifeToday) -> Self {
        let place = |word| Word::ALL.iter().position(|one| *one == word);
        Self {
            score: life.score,
            days: life
                .days_left
                .map(|DaysLeft { low, median, high }| DaysText { low, median, high }),
            holds: life.holds,
            word: life.word.and_then(place).and_then(|at| u8::try_from(at).ok()),
            usual: life.usual.map(|usual| [usual.days, usual.today]),
            read: Unless(life.basis == Basis::Readings),
        }
    }
}

impl TryFrom<LifeText> for LifeToday {
    type Error = ();

    fn try_from(life: LifeText) -> Result<Self, ()> {
        let word = |at: u8| Word::ALL.get(usize::from(at)).copied().ok_or(());
        Ok(Self {
            score: life.score,
            days_left: life
                .days
                .map(|DaysText { low, median, high }| DaysLeft { low, median, high }),
            holds: life.holds,
            word: life.word.map(word).transpose()?,
            usual: life.usual.map(|[days, today]| Usual { days, today }),
            basis: if life.read.0 {
                Basis::Readings
            } else {
                Basis::UsualDaysAndPriors
            },
        })
    }
}
