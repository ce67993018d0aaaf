//! The one thing of an entry that is most often mistyped, to be typed again.

use crate::domain::facts::Fact;
use crate::domain::facts::oil::Measured;
use crate::domain::units::{Amount, Minutes, Typed, Unit, Volume};

use super::form::{Gauged, plain};
use super::said::{Gap, measured, parts};

/// What can be typed again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Retype {
    /// An amount, in the unit it was counted in.
    Amount(Unit, String),
    /// A reading.
    Reading(Gauged, String),
    /// Hours hot.
    Hours(String),
    /// Words.
    Words(String),
}

/// What of an entry can be typed again; `None` where only its date can be put right.
#[must_use]
pub fn retype(fact: &Fact) -> Option<Retype> {
    if let Some(amount) = amounts(fact).into_iter().flatten().next() {
        let typed = amount.typed;
        return Some(Retype::Amount(typed.unit, plain(typed.thousandths, 3)));
    }
    if let Fact::Reading(f) = fact {
        let degrees = |dc: i16| plain(u32::try_from(dc).unwrap_or(0), 1);
        Some(match f.value {
            Measured::Polar(share) => Retype::Reading(Gauged::Polar, plain(share.cpc().into(), 2)),
            Measured::Ffa(share) => Retype::Reading(Gauged::Ffa, plain(share.cpc().into(), 2)),
            Measured::Acid(value) => Retype::Reading(Gauged::Acid, plain(value.cav().into(), 2)),
            Measured::Temp(temp) => Retype::Reading(Gauged::Temp, degrees(temp.dc())),
            Measured::Smoke(temp) => Retype::Reading(Gauged::Smoke, degrees(temp.dc())),
        })
    } else if let Fact::Service(f) = fact {
        Some(Retype::Hours(plain(u32::from(f.fry.get()) * 100 / 60, 2)))
    } else if let Fact::Note(f) = fact {
        Some(Retype::Words(f.text.clone()))
    } else {
        None
    }
}

/// The entry's body with that typed anew; `None` when `text` says what stood there before.
///
/// # Errors
/// What cannot be read.
pub fn retyped(fact: &Fact, text: &str) -> Result<Option<Fact>, Gap> {
    let was = match retype(fact) {
        Some(Retype::Amount(_, was) | Retype::Reading(_, was) | Retype::Hours(was) | Retype::Words(was)) => was,
        None => return Ok(None),
    };
    if was == text.trim() {
        return Ok(None);
    }
    let mut fact = fact.clone();
    let mut wrong = None;
    each_amount(&mut fact, &mut |amount| match scaled(*amount, text) {
        Ok(anew) => *amount = anew,
        Err(gap) => wrong = Some(gap),
    });
    if let Some(gap) = wrong {
        return Err(gap);
    }
    if let Fact::Reading(f) = &mut fact {
        let what = match f.value {
            Measured::Polar(_) => Gauged::Polar,
            Measured::Ffa(_) => Gauged::Ffa,
            Measured::Acid(_) => Gauged::Acid,
            Measured::Temp(_) => Gauged::Temp,
            Measured::Smoke(_) => Gauged::Smoke,
        };
        f.value = measured(what, text)?;
    } else if let Fact::Service(f) = &mut fact {
        let hundredths = parts(text, 2).ok_or(Gap::Number)?;
        let min = u16::try_from((hundredths.saturating_mul(60).saturating_add(50)) / 100)
            .ok()
            .and_then(Minutes::new);
        f.fry = min.ok_or(Gap::Range)?;
    } else if let Fact::Note(f) = &mut fact {
        if text.trim().is_empty() {
            return Err(Gap::Words);
        }
        f.text = text.trim().to_owned();
    }
    Ok(Some(fact))
}

/// What packs held when it was written stays true: the volume changes as the typed figure does.
fn scaled(was: Amount, text: &str) -> Result<Amount, Gap> {
    let thousandths = parts(text, 3).filter(|n| *n > 0).ok_or(Gap::Number)?;
    let before = u64::from(was.typed.thousandths).max(1);
    let ml = u64::from(was.volume.ml()) * u64::from(thousandths) / before;
    let volume = u32::try_from(ml).ok().and_then(Volume::from_ml).ok_or(Gap::Range)?;
    let unit = was.typed.unit;
    Ok(Amount {
        volume,
        typed: Typed { thousandths, unit },
    })
}

/// The amounts that one typed figure stands for: out and in of a part-change only where they were one figure.
fn amounts(fact: &Fact) -> [Option<Amount>; 2] {
    let mut found = [None, None];
    let mut slots = found.iter_mut();
    each_amount(&mut fact.clone(), &mut |amount| {
        if let Some(slot) = slots.next() {
            *slot = Some(*amount);
        }
    });
    found
}

fn each_amount(fact: &mut Fact, change: &mut dyn FnMut(&mut Amount)) {
    if let Fact::TopUp(f) = fact {
        change(&mut f.amount);
    } else if let Fact::Fill(f) = fact {
        change(&mut f.amount);
    } else if let Fact::OilChange(f) = fact {
        change(&mut f.amount);
    } else if let Fact::PartChange(f) = fact {
        pair(&mut f.fresh, &mut f.out, change);
    } else if let Fact::Move(f) = fact {
        pair(&mut f.out, &mut f.arrived, change);
    }
}

fn pair(first: &mut Amount, second: &mut Amount, change: &mut dyn FnMut(&mut Amount)) {
    let one_figure = first == second;
    change(first);
    if one_figure {
        change(second);
    }
}
