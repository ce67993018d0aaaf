//! A quick entry as the kitchen hears it: checked against the log, and a reading against what its oil is believed to be.

use super::life::Known;
use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::{Measured, Reading};
use crate::domain::ids::{EntryId, PersonId};
use crate::domain::ledger::Ledger;
use crate::domain::oil_life::{self, FillHistory};
use crate::domain::quick::{self, Amendment, Doubt, Quick, QuickRefusal, Said};
use crate::domain::time::{Millis, Now};
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
        && let Some(doubt) = unexpected(ledger, reading, said.at.unwrap_or(now.wall), None, now)
    {
        // What cannot be is refused all the same.
        quick::drafts(ledger, Said { sure: true, ..said }, now)?;
        return Err(QuickRefusal::Doubt(doubt));
    }
    quick::drafts(ledger, said, now)
}

/// The draft that puts an entry right.
///
/// # Errors
///
/// As [`quick::amend`]; and once, without `sure`, a doubt about a reading typed anew, asked as [`drafts`] asks it of one
/// that is typed first.
pub fn amend(
    ledger: &Ledger,
    of: EntryId,
    amendment: Amendment,
    sure: bool,
    who: Option<PersonId>,
    now: Now,
) -> Result<Draft, QuickRefusal> {
    let doubt = || {
        let Some(Fact::Reading(reading)) = &amendment.fact else {
            return None;
        };
        let written = ledger.line(of)?.standing()?.at;
        let at = amendment.at.map_or(written, |(at, _)| at);
        unexpected(ledger, reading, at, Some(of), now).or_else(|| quick::doubt_reading(ledger, reading, at, Some(of)))
    };
    let doubt = if sure { None } else { doubt() };
    // What cannot be is refused all the same.
    let draft = quick::amend(ledger, of, amendment, who, now)?;
    doubt.map_or(Ok(draft), |doubt| Err(QuickRefusal::Doubt(doubt)))
}

/// What was expected of the oil as it stood then, where the reading is far from it. What the entry `of` said, which the
/// reading puts right, is not believed.
fn unexpected(ledger: &Ledger, reading: &Reading, at: Millis, of: Option<EntryId>, now: Now) -> Option<Doubt> {
    let Measured::Polar(read) = reading.value else {
        return None;
    };
    // Oil that is gone by now is not judged.
    ledger.fill(reading.pan).filter(|fill| fill.at <= at)?;
    let known = Known::of(ledger, reading.pan, ledger.book.day_of(at, now.off_min))?;
    let events = known.history.events().iter();
    let before = events.filter(|event| event.order.0 <= at && Some(event.entry) != of);
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
