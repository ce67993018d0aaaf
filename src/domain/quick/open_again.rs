//! Days closed that are opened again: those to come are taken back, of those begun today is the first one open.

use super::amend::{Amendment, amend, void};
use super::refusal::QuickRefusal;
use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::facts::closed::Closed;
use crate::domain::ids::{EntryId, PersonId};
use crate::domain::ledger::Ledger;
use crate::domain::time::{Day, Now};

/// Opens again on `today`.
///
/// # Errors
///
/// When the entry does not stand or closes no days, or its days are over.
pub fn open_again(
    ledger: &Ledger,
    of: EntryId,
    today: Day,
    why: String,
    who: Option<PersonId>,
    now: Now,
) -> Result<Draft, QuickRefusal> {
    let entry = ledger.line(of).and_then(|line| line.standing());
    let Some(Fact::Closed(closed)) = entry.map(|entry| &entry.fact) else {
        return Err(QuickRefusal::NoSuchEntry { of });
    };
    if closed.to() < today {
        return Err(QuickRefusal::NothingTyped);
    }
    match Closed::between(closed.from(), today.plus(-1), closed.why.clone()) {
        Ok(gone_by) => {
            let fact = Some(Fact::Closed(gone_by));
            amend(ledger, of, Amendment { why, at: None, fact }, who, now)
        }
        Err(_) => void(ledger, of, why, who),
    }
}
