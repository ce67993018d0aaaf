//! An instrument's form: what it measures, and how far its readings spread.

use super::read::{NAME_MOST, Reader, as_number};
use super::{Answers, Field, Wrong};
use crate::domain::facts::Fact;
use crate::domain::facts::setup::{Instrument, Measures};
use crate::domain::ids::InstrumentId;
use crate::domain::units::Share;

pub(super) fn blank() -> Answers {
    Answers::default().with(Field::Measures, Measures::Temp.key())
}

pub(super) fn of(instrument: &Instrument) -> Answers {
    let spread = instrument.spread.map(|s| as_number(u32::from(s.cpc()), 2));
    Answers::default()
        .with(Field::InstrumentName, &*instrument.name)
        .with(Field::Measures, instrument.measures.key())
        .with(Field::Spread, spread.unwrap_or_default())
}

/// The spread is asked only where oil life uses it.
pub(super) fn pages(answers: &Answers) -> Vec<Vec<Field>> {
    let mut page = vec![Field::InstrumentName, Field::Measures];
    let share = matches!(
        Measures::from_key(answers.get(Field::Measures)),
        Some(Measures::Polar | Measures::Ffa)
    );
    if share {
        page.push(Field::Spread);
    }
    vec![page]
}

pub(super) fn check(id: InstrumentId, answers: &Answers, wrongs: &mut Vec<Wrong>) -> Option<Vec<Fact>> {
    let mut read = Reader { answers, wrongs };
    let name = read.words(Field::InstrumentName, NAME_MOST);
    let measures = read.one(Field::Measures, Measures::from_key);
    let spread = read.hundredths_if_any(Field::Spread, 0, 20);
    Some(vec![Fact::Instrument(Instrument {
        instrument: id,
        name: name?,
        measures: measures?,
        spread: spread?.and_then(Share::from_cpc),
    })])
}
