//! Numbers that cannot be, and numbers to ask about once.
//!
//! The bounds are common practice without a source unless one is named; they judge typing, never oil.

use crate::domain::facts::Fact;
use crate::domain::facts::job::Grade;
use crate::domain::facts::oil::{Age, Measured, Reading, Vessel};
use crate::domain::facts::rhythm::Rhythm;
use crate::domain::facts::run::Contents;
use crate::domain::facts::setup::Measures;
use crate::domain::ids::{EntryId, PanId};
use crate::domain::ledger::{Happened, Ledger};
use crate::domain::time::{Day, Millis};
use crate::domain::units::Volume;

use super::moving;
use super::refusal::{Doubt, QuickRefusal};

/// No frying oil reads 60 % polar compounds and still runs (hundredths of a percent).
const POLAR_END_CPC: u16 = 6_000;
/// Nor 30 % free fatty acids.
const FFA_END_CPC: u16 = 3_000;
/// The hottest oil anybody means to log: above it frying oils burn by themselves (tenths of a degree).
const OIL_END_DC: i16 = 3_300;

/// Refuses what cannot be.
pub(super) fn impossible(ledger: &Ledger, fact: &Fact) -> Result<(), QuickRefusal> {
    match fact {
        Fact::Reading(f) => reading(ledger, f),
        Fact::TopUp(f) => fits(ledger, f.pan, f.amount.volume),
        Fact::Fill(f) => fits(ledger, f.pan, f.amount.volume),
        Fact::OilChange(f) => fits(ledger, f.pan, f.amount.volume),
        Fact::PartChange(f) => {
            fits(ledger, f.pan, f.out.volume)?;
            fits(ledger, f.pan, f.fresh.volume)
        }
        Fact::Move(f) => {
            for (vessel, amount) in [(f.from, f.out), (f.to, f.arrived)] {
                match vessel {
                    Vessel::Pan(pan) => fits(ledger, pan, amount.volume)?,
                    Vessel::Machine(_) if amount.volume == Volume::NONE => return Err(QuickRefusal::NothingTyped),
                    Vessel::Machine(_) => {}
                }
            }
            if f.arrived.volume > f.out.volume {
                Err(QuickRefusal::MoreInThanOut)
            } else {
                Ok(())
            }
        }
        Fact::Note(f) => words(&f.text),
        // Why a claim was lost may be said afterwards: telling the counter comes first.
        Fact::ClaimRestored(f) => words(&f.why),
        Fact::MachineCleaned(f) => words(&f.how),
        Fact::RunNoted(f) => match f.how {
            Grade::NotDone => words(f.why.as_deref().unwrap_or_default()),
            Grade::Unguided => Ok(()),
        },
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::Service(_)
        | Fact::PanJob(_)
        | Fact::Closed(_)
        | Fact::Sign(_)
        | Fact::ClaimLost(_)
        | Fact::AllergensChecked(_)
        | Fact::Correct(_)
        | Fact::Job(_)
        | Fact::Run(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => Ok(()),
    }
}

fn words(text: &str) -> Result<(), QuickRefusal> {
    if text.trim().is_empty() {
        Err(QuickRefusal::NothingTyped)
    } else {
        Ok(())
    }
}

/// Something, and no more than the pan holds when full. Full is booked at 20 °C like every amount.
fn fits(ledger: &Ledger, pan: PanId, volume: Volume) -> Result<(), QuickRefusal> {
    if volume == Volume::NONE {
        return Err(QuickRefusal::NothingTyped);
    }
    match ledger.book.pan(pan) {
        Some(p) if volume > p.full => Err(QuickRefusal::TooMuch { pan, full: p.full }),
        Some(_) | None => Ok(()),
    }
}

fn reading(ledger: &Ledger, reading: &Reading) -> Result<(), QuickRefusal> {
    if let Some(id) = reading.instrument {
        let measures = ledger.book.instrument(id).map(|tool| tool.measures);
        if measures != Some(needed(reading.value)) {
            let instrument = id;
            return Err(QuickRefusal::WrongInstrument { instrument, measures });
        }
    }
    let wrong = match reading.value {
        Measured::Polar(share) => share.cpc() == 0 || share.cpc() >= POLAR_END_CPC,
        Measured::Ffa(share) => share.cpc() >= FFA_END_CPC,
        Measured::Acid(_) => false,
        Measured::Temp(temp) => temp.dc() > OIL_END_DC,
        Measured::Smoke(temp) => temp.dc() > OIL_END_DC || temp.dc() < 1_000,
    };
    if wrong { Err(QuickRefusal::Impossible) } else { Ok(()) }
}

const fn needed(value: Measured) -> Measures {
    match value {
        Measured::Polar(_) => Measures::Polar,
        Measured::Ffa(_) => Measures::Ffa,
        Measured::Acid(_) => Measures::Acid,
        Measured::Temp(_) | Measured::Smoke(_) => Measures::Temp,
    }
}

/// What to ask about once of a reading as it stands at `at`. `of` is the entry it puts right, where it does: what it
/// said before is held against nothing.
#[must_use]
pub fn doubt_reading(ledger: &Ledger, reading: &Reading, at: Millis, of: Option<EntryId>) -> Option<Doubt> {
    unusual(reading.value).or_else(|| fell(ledger, reading, at, of).then_some(Doubt::Fell))
}

/// What to ask about once.
pub(super) fn doubt(ledger: &Ledger, fact: &Fact, at: Millis, day: Day) -> Option<Doubt> {
    let pan = |id: PanId| ledger.book.pan(id);
    match fact {
        Fact::Reading(f) => doubt_reading(ledger, f, at, None),
        Fact::TopUp(f) => {
            let pan = pan(f.pan)?;
            let kept = pan.fat;
            if kept != f.fat {
                return Some(Doubt::OtherFat { kept });
            }
            (f.amount.volume.ml() > pan.full.ml() / 2).then_some(Doubt::BigTopUp)
        }
        Fact::Fill(f) => {
            let pan = pan(f.pan)?;
            let (kept, min) = (pan.fat, pan.min);
            let met = f.age != Age::Fresh && ledger.in_pan(f.pan).is_none();
            if !met && ledger.contents(f.pan) != Contents::EmptyDry {
                let kept = (kept != f.fat).then_some(kept);
                return Some(Doubt::NotSeenDry { kept });
            }
            if kept != f.fat {
                return Some(Doubt::OtherFat { kept });
            }
            (f.amount.volume < min).then_some(Doubt::UnderMark { min })
        }
        Fact::Service(f) => {
            let logged = ledger.pan_day(f.pan, day).and_then(|sheet| sheet.fry_min);
            // Who filters by the session logs each.
            let by_session = pan(f.pan).is_some_and(|p| matches!(p.rhythm, Some(Rhythm::Sessions(_))));
            if logged.is_some() && !by_session {
                return Some(Doubt::SecondService);
            }
            (f.fry.get() > 16 * 60).then_some(Doubt::LongService)
        }
        Fact::RunNoted(f) => {
            let done = ledger
                .pan_day(f.pan, day)
                .is_some_and(|sheet| !sheet.filtered.is_empty());
            done.then_some(Doubt::AlreadyFiltered)
        }
        Fact::Move(f) => moving::doubt(ledger, f, day),
        Fact::Kitchen(_)
        | Fact::Person(_)
        | Fact::Pan(_)
        | Fact::Machine(_)
        | Fact::Instrument(_)
        | Fact::PartChange(_)
        | Fact::PanJob(_)
        | Fact::Closed(_)
        | Fact::OilChange(_)
        | Fact::Sign(_)
        | Fact::Note(_)
        | Fact::ClaimLost(_)
        | Fact::ClaimRestored(_)
        | Fact::Correct(_)
        | Fact::Job(_)
        | Fact::Run(_)
        | Fact::MachineCleaned(_)
        | Fact::AllergensChecked(_)
        | Fact::Practised(_)
        | Fact::Trouble(_)
        | Fact::Newer(_) => None,
    }
}

fn unusual(value: Measured) -> Option<Doubt> {
    match value {
        Measured::Polar(share) if share.cpc() > 3_500 => Some(Doubt::High),
        Measured::Polar(share) if share.cpc() < 150 => Some(Doubt::Low),
        Measured::Ffa(share) if share.cpc() > 500 => Some(Doubt::High),
        Measured::Acid(value) if value.cav() > 1_000 => Some(Doubt::High),
        Measured::Temp(temp) if temp.dc() > 2_000 => Some(Doubt::Hot),
        Measured::Smoke(temp) if temp.dc() > 2_600 => Some(Doubt::High),
        Measured::Smoke(temp) if temp.dc() < 1_400 => Some(Doubt::Low),
        Measured::Polar(_) | Measured::Ffa(_) | Measured::Acid(_) | Measured::Temp(_) | Measured::Smoke(_) => None,
    }
}

/// Whether polar compounds read three points lower than before, with nothing fresh in between.
fn fell(ledger: &Ledger, reading: &Reading, at: Millis, of: Option<EntryId>) -> bool {
    let Measured::Polar(now) = reading.value else {
        return false;
    };
    for event in ledger
        .fill(reading.pan)
        .into_iter()
        .flat_map(|fill| fill.events.iter().rev())
        .filter(|event| event.at <= at && Some(event.id) != of)
    {
        match &event.what {
            Happened::Reading(Reading {
                value: Measured::Polar(before),
                ..
            }) => return now.cpc().saturating_add(300) < before.cpc(),
            Happened::TopUp(_) | Happened::PartChange(_) | Happened::MovedIn { .. } => return false,
            Happened::Reading(_)
            | Happened::MovedOut { .. }
            | Happened::Returned { .. }
            | Happened::Service(_)
            | Happened::Sign(_)
            | Happened::Noted(_)
            | Happened::Filtered(_) => {}
        }
    }
    false
}
