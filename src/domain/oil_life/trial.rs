//! A trial: what a person turns to see what it would do to the oil, in the steps of its controls.

use crate::domain::units::{Temp, Volume};

use super::outlook::Outlook;
use super::what_if::WhatIf;

/// Something that can be tried, and the step it is tried in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Knob {
    /// Frying temperature, by a degree.
    Temp,
    /// Hours hot a service, by a quarter.
    Hours,
    /// Fresh oil after each service, by half a litre.
    TopUp,
    /// Oil changed for fresh right now, by a litre.
    PartChange,
}

impl Knob {
    /// Every knob, in the order they are shown.
    pub const ALL: [Self; 4] = [Self::Temp, Self::Hours, Self::TopUp, Self::PartChange];

    /// One step: tenths of a degree, minutes, millilitres.
    const fn step(self) -> i32 {
        match self {
            Self::Temp => 10,
            Self::Hours => 15,
            Self::TopUp => 500,
            Self::PartChange => 1_000,
        }
    }

    /// From where to where it can be turned. Temperatures are those frying is done at.
    fn range(self, full: Volume) -> (i32, i32) {
        let ml = i32::try_from(full.ml()).unwrap_or(i32::MAX);
        match self {
            Self::Temp => (1_500, 1_900),
            Self::Hours => (15, 16 * 60),
            Self::TopUp => (0, ml / 2),
            Self::PartChange => (0, ml),
        }
    }
}

/// What is tried: where each knob stands, and where it stood.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trial {
    usual: [i32; 4],
    now: [i32; 4],
    full: Volume,
}

impl Trial {
    /// The oil as it is: every knob at the step nearest to what is usual.
    #[must_use]
    pub fn as_it_is(outlook: &Outlook, full: Volume) -> Self {
        let usual = [
            f64::from(outlook.temp.dc()),
            outlook.fry.mean_h * 60.0,
            outlook.top_up * f64::from(full.ml()),
            0.0,
        ];
        let at = |knob: Knob| {
            let ((low, high), step) = (knob.range(full), knob.step());
            #[expect(
                clippy::cast_possible_truncation,
                reason = "a temperature, minutes of a day, part of a pan"
            )]
            let steps = (usual[knob as usize] / f64::from(step)).round() as i32;
            (steps * step).clamp(low, high)
        };
        let usual = Knob::ALL.map(at);
        Self {
            usual,
            now: usual,
            full,
        }
    }

    /// A knob turned by one step, up or down, as far as it goes.
    #[must_use]
    pub fn turned(mut self, knob: Knob, up: bool) -> Self {
        let (low, high) = knob.range(self.full);
        let step = if up { knob.step() } else { -knob.step() };
        let at = &mut self.now[knob as usize];
        *at = (*at + step).clamp(low, high);
        self
    }

    /// Where a knob stands: tenths of a degree, minutes, millilitres.
    #[must_use]
    pub const fn at(&self, knob: Knob) -> i32 {
        self.now[knob as usize]
    }

    /// Whether a knob can be turned on.
    #[must_use]
    pub fn turns(&self, knob: Knob, up: bool) -> bool {
        self.turned(knob, up) != *self
    }

    /// Whether anything is tried at all.
    #[must_use]
    pub fn is_as_it_is(&self) -> bool {
        self.now == self.usual
    }

    /// What is tried; a knob that was not turned leaves what is usual to the last digit.
    #[must_use]
    pub fn what_if(&self) -> WhatIf {
        let at = |knob: Knob| {
            let now = self.now[knob as usize];
            (now != self.usual[knob as usize]).then_some(now)
        };
        let share = |knob| at(knob).map(|ml| f64::from(ml) / f64::from(self.full.ml().max(1)));
        WhatIf {
            temp: at(Knob::Temp).and_then(|dc| Temp::from_dc(i16::try_from(dc).ok()?)),
            fry_h: at(Knob::Hours).map(|minutes| f64::from(minutes) / 60.0),
            top_up: share(Knob::TopUp),
            part_change: share(Knob::PartChange),
        }
    }
}
