//! A quick entry as the kitchen hears it: checked against the log, and a reading against what its oil is believed to be.

use super::life::Known;
use crate::domain::entry::Draft;
use crate::domain::facts::oil::{Measured, Reading};
use crate::domain::ledger::Ledger;
use crate::domain::oil_life::{self, FillHistory};
use crate::domain::quick::{self, Doubt, Quick, QuickRefusal, Said};
use crate::domain::time::Now;
use crate::domain::units::Share;

/// The drafts that say it.
///
/// # Errors
///
/// As [`quick::drafts`]; and [`Doubt::Unexpected`] once, where a reading contradicts what is believed of its oil by
/// more than chance. Said again with `sure`, it is kept like any other.
pub fn drafts(ledger: &Ledger, said: Said, now: Now) -> Result<Vec<Draft>, QuickRefusal> {
    if let Quick::Reading(reading) = &said.what
        && !said.sure
        && let Some(doubt) = unexpected(ledger, reading, &said, now)
    {
        // What cannot be is refused all the same.
        quick::drafts(ledger, Said { sure: true, ..said }, now)?;
        return Err(QuickRefusal::Doubt(doubt));
    }
    quick::drafts(ledger, said, now)
}

/// What was expected of the oil as it stood at the moment said, where the reading is far from it.
fn unexpected(ledger: &Ledger, reading: &Reading, said: &Said, now: Now) -> Option<Doubt> {
    let Measured::Polar(read) = reading.value else {
        return None;
    };
    let at = said.at.unwrap_or(now.wall);
    // Oil that is gone by now is not judged.
    ledger.fill(reading.pan).filter(|fill| fill.at <= at)?;
    let known = Known::of(ledger, reading.pan, ledger.book.day_of(at, now.off_min))?;
    let before = known.history.events().iter().filter(|event| event.order.0 <= at);
    let history = FillHistory::new(known.history.fat(), known.history.start(), before.copied().collect());
    let tool = reading.instrument;
    let spread = tool.and_then(|id| ledger.book.instrument(id)?.spread);
    let expected = oil_life::contradicts(&history, &known.outlook.habit, &known.shop, tool, spread, read)?;
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "percent of a mass, between 0 and 100"
    )]
    let share = |percent: f64| Share::from_cpc((percent.clamp(0.0, 100.0) * 100.0).round() as u16);
    Some(Doubt::Unexpected {
        low: share(expected.low)?,
        high: share(expected.high)?,
    })
}
