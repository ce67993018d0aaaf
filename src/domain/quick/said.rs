//! From what was typed to what was said: numbers read, gaps named.

use crate::domain::facts::oil::{
    Age, ClaimChange, Fill, Measured, Move, Note, OilChange, PartChange, Reading, Service, Sign, TopUp, Vessel,
};
use crate::domain::ids::PersonId;
use crate::domain::ledger::Ledger;
use crate::domain::time::{Day, Millis, figures};
use crate::domain::units::{AcidValue, Amount, Minutes, Share, Temp, Typed, Unit, Volume};
use crate::domain::volume::{self, NoAmount, Packs};

use super::form::{After, AgeSaid, Form, Gauged};
use super::kind::Kind;
use super::moving::{self, Other};
use super::{Quick, Said};

/// What is still missing, or cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Gap {
    /// No number, or one that cannot be read.
    Number,
    /// A number no such thing can have.
    Range,
    /// Nobody has said what a block weighs.
    Block,
    /// Nobody has said what a drum holds.
    Drum,
    /// Nobody has said what a bag holds.
    Bag,
    /// What was read.
    Gauge,
    /// What was noticed.
    Sign,
    /// Into what, or out of what.
    To,
    /// Which claim.
    Claim,
    /// Fresh oil, or empty.
    After,
    /// The day it was fresh on.
    FreshOn,
    /// Why, or the words.
    Words,
    /// The day or time it happened.
    When,
}

impl Gap {
    /// Every gap there is.
    pub const ALL: &'static [Self] = &[
        Self::Number,
        Self::Range,
        Self::Block,
        Self::Drum,
        Self::Bag,
        Self::Gauge,
        Self::Sign,
        Self::To,
        Self::Claim,
        Self::After,
        Self::FreshOn,
        Self::Words,
        Self::When,
    ];
}

impl Form {
    /// What the form says, once nothing is missing. `off` is the zone's minutes ahead of UTC at a moment.
    ///
    /// # Errors
    /// The first [`Gap`].
    pub fn said(
        &self,
        ledger: &Ledger,
        packs: Packs,
        who: Option<PersonId>,
        off: impl Fn(Millis) -> i16,
    ) -> Result<Said, Gap> {
        Ok(Said {
            what: self.what(ledger, packs)?,
            who,
            at: self.at(off)?,
            sure: false,
        })
    }

    /// The same of a pan that was not used: no number is read.
    ///
    /// # Errors
    /// [`Gap::When`].
    pub fn not_used(&self, who: Option<PersonId>, off: impl Fn(Millis) -> i16) -> Result<Said, Gap> {
        Ok(Said {
            what: Quick::Service(self.service(Minutes::default())),
            who,
            at: self.at(off)?,
            sure: false,
        })
    }

    fn at(&self, off: impl Fn(Millis) -> i16) -> Result<Option<Millis>, Gap> {
        match (self.date.trim(), self.time.trim()) {
            ("", "") => Ok(None),
            (date, time) => moment(date, time, off).map(Some).ok_or(Gap::When),
        }
    }

    fn what(&self, ledger: &Ledger, packs: Packs) -> Result<Quick, Gap> {
        let pan = self.pan;
        let batch = Some(self.batch.trim()).filter(|b| !b.is_empty()).map(str::to_owned);
        let amount = || self.amount(packs);
        Ok(match self.kind {
            Kind::TopUp => Quick::TopUp(TopUp {
                pan,
                fat: self.fat,
                amount: amount()?,
                batch,
            }),
            Kind::Service => {
                let hundredths = parts(&self.number, 2).ok_or(Gap::Number)?;
                let min =
                    u16::try_from((hundredths.saturating_mul(60).saturating_add(50)) / 100).map_err(|_| Gap::Range)?;
                Quick::Service(self.service(Minutes::new(min).ok_or(Gap::Range)?))
            }
            Kind::Reading => {
                let gauge = self.gauge.ok_or(Gap::Gauge)?;
                Quick::Reading(Reading {
                    pan,
                    value: measured(gauge.what, &self.number)?,
                    instrument: gauge.with,
                    oil: None,
                })
            }
            Kind::Sign => Quick::Sign(Sign {
                pan: Some(pan),
                sign: self.sign.ok_or(Gap::Sign)?,
                text: Some(self.words.trim()).filter(|w| !w.is_empty()).map(str::to_owned),
            }),
            Kind::PartChange => {
                let fresh = amount()?;
                Quick::PartChange(PartChange { pan, out: fresh, fresh })
            }
            Kind::OilChange => {
                let reason = self.words()?;
                let fill = match self.after.ok_or(Gap::After)? {
                    After::Fresh => Some(self.fill(amount()?, batch)?),
                    After::Empty => None,
                };
                let out = litres(moving::all_of(ledger, pan));
                Quick::OilChange {
                    out: OilChange {
                        pan,
                        amount: out,
                        reason,
                        temp: None,
                        container: None,
                    },
                    fill,
                }
            }
            Kind::Fill => Quick::Fill(self.fill(amount()?, batch)?),
            Kind::Move => {
                let (from, to) = match self.to.ok_or(Gap::To)? {
                    Other::Into(to) => (Vessel::Pan(pan), to),
                    Other::OutOf(machine) => (Vessel::Machine(machine), Vessel::Pan(pan)),
                };
                let out = amount()?;
                Quick::Move(Move {
                    from,
                    to,
                    out,
                    arrived: out,
                })
            }
            Kind::Note => Quick::Note(Note {
                pan: Some(pan),
                text: self.words()?,
            }),
            Kind::ClaimLost => Quick::ClaimLost(ClaimChange {
                pan,
                what: self.claim.ok_or(Gap::Claim)?,
                why: self.words()?,
                basis: None,
            }),
        })
    }

    fn service(&self, fry: Minutes) -> Service {
        Service {
            pan: self.pan,
            fry,
            load: self.load,
            temp: None,
            food_g: None,
        }
    }

    fn fill(&self, amount: Amount, batch: Option<String>) -> Result<Fill, Gap> {
        let age = match self.age {
            AgeSaid::Fresh => Age::Fresh,
            AgeSaid::Unknown => Age::Unknown,
            AgeSaid::Since => Age::Since(Day::spelt(self.fresh_on.trim()).ok_or(Gap::FreshOn)?),
        };
        Ok(Fill {
            pan: self.pan,
            fat: self.fat,
            amount,
            batch,
            age,
        })
    }

    fn words(&self) -> Result<String, Gap> {
        let words = self.words.trim();
        if words.is_empty() {
            Err(Gap::Words)
        } else {
            Ok(words.to_owned())
        }
    }

    /// What a job asks of the form: the quantity, and of an oil change the reason with it.
    ///
    /// # Errors
    /// The first [`Gap`].
    pub fn counted(&self, packs: Packs) -> Result<Amount, Gap> {
        if self.kind == Kind::OilChange {
            self.words()?;
        }
        self.amount(packs)
    }

    fn amount(&self, packs: Packs) -> Result<Amount, Gap> {
        let thousandths = parts(&self.number, 3).filter(|n| *n > 0).ok_or(Gap::Number)?;
        let typed = Typed {
            thousandths,
            unit: self.unit,
        };
        volume::amount(typed, self.fat, packs).map_err(|why| match why {
            NoAmount::BlockUnknown => Gap::Block,
            NoAmount::DrumUnknown => Gap::Drum,
            NoAmount::BagUnknown => Gap::Bag,
            NoAmount::TooMuch => Gap::Range,
        })
    }
}

/// A volume as an amount typed in litres.
const fn litres(volume: Volume) -> Amount {
    Amount {
        volume,
        typed: Typed {
            thousandths: volume.ml(),
            unit: Unit::Litres,
        },
    }
}

/// A measured value from what was typed.
pub(super) fn measured(what: Gauged, text: &str) -> Result<Measured, Gap> {
    let whole = |places| parts(text, places).ok_or(Gap::Number);
    let short = |n: u32| u16::try_from(n).ok();
    let temp = |n: u32| i16::try_from(n).ok().and_then(Temp::from_dc);
    let value = match what {
        Gauged::Polar => short(whole(2)?).and_then(Share::from_cpc).map(Measured::Polar),
        Gauged::Ffa => short(whole(2)?).and_then(Share::from_cpc).map(Measured::Ffa),
        Gauged::Acid => short(whole(2)?).and_then(AcidValue::from_cav).map(Measured::Acid),
        Gauged::Temp => temp(whole(1)?).map(Measured::Temp),
        Gauged::Smoke => temp(whole(1)?).map(Measured::Smoke),
    };
    value.ok_or(Gap::Range)
}

/// A typed decimal as whole parts of 10^-`places`: `12.5` with 3 is 12500. A comma is a point; finer figures than
/// the log keeps are dropped.
#[must_use]
pub fn parts(text: &str, places: u32) -> Option<u32> {
    let text = text.trim().replace(',', ".");
    let (whole, rest) = text.split_once('.').unwrap_or((&text, ""));
    let figures = |s: &str| s.bytes().all(|b| b.is_ascii_digit());
    if (whole.is_empty() && rest.is_empty()) || !figures(whole) || !figures(rest) {
        return None;
    }
    let rest: String = rest.chars().chain("000000000".chars()).take(places as usize).collect();
    format!("{whole}{rest}").parse().ok()
}

/// A moment from a date and a time as their fields give them (`2026-11-25`, `21:47`), in the kitchen's zone.
#[must_use]
pub fn moment(date: &str, time: &str, off: impl Fn(Millis) -> i16) -> Option<Millis> {
    let (date, time) = (Day::spelt(date.trim())?, time.trim());
    let colon = time.get(2..3)? == ":";
    let minutes = figures(time, 0..2, 23)? * 60 + figures(time, 3..5, 59)?;
    let local = colon.then(|| date.begins(0, 0).plus(minutes * Millis::MINUTE))?;
    let utc = |off_min: i16| local.plus(-i64::from(off_min) * Millis::MINUTE);
    // The offset is asked at the moment itself, which is not known before the offset: the second guess settles it
    // but for the hour a clock change repeats.
    Some(utc(off(utc(off(local)))))
}
