//! Taking back what was just written, and putting right what was written earlier.

use std::mem::discriminant;

use crate::domain::entry::{Draft, Entry};
use crate::domain::facts::{Correct, Correction, Fact};
use crate::domain::ids::{EntryId, PersonId};
use crate::domain::ledger::{Ledger, check_redate, is_evidence};
use crate::domain::time::{Millis, Now};

use super::refusal::QuickRefusal;
use super::{doubt, known};

/// For how long the last entry can be taken back in one touch, in milliseconds.
pub const TAKE_BACK_MS: i64 = 10 * Millis::SECOND;

/// Takes back what was just written: all entries of one saying, a whole oil change too, or none.
///
/// # Errors
///
/// When an entry is not there, is evidence, or was written more than ten seconds ago.
pub fn take_back(
    ledger: &Ledger,
    of: &[EntryId],
    why: &str,
    who: Option<PersonId>,
    now: Now,
) -> Result<Vec<Draft>, QuickRefusal> {
    let one = |id: &EntryId| {
        let entry = correctable(ledger, *id)?;
        let age = now.wall.since(entry.rec);
        // A clock that was set back cannot make the ten seconds last longer.
        if (0..=TAKE_BACK_MS).contains(&age) {
            void(ledger, *id, why.to_owned(), who)
        } else {
            Err(QuickRefusal::TooLate)
        }
    };
    of.iter().map(one).collect()
}

/// Says, however late, that an entry did not happen.
///
/// # Errors
///
/// When the entry is not there, does not stand, or is evidence.
pub fn void(ledger: &Ledger, of: EntryId, why: String, who: Option<PersonId>) -> Result<Draft, QuickRefusal> {
    correctable(ledger, of)?;
    let how = Correction::Void;
    correct(of, why, how).map(|fact| Draft::now(who, fact))
}

/// What of an entry is put right.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Amendment {
    /// Why, in words.
    pub why: String,
    /// The right moment, and the minutes the zone was ahead of UTC then.
    pub at: Option<(Millis, i16)>,
    /// The whole right body.
    pub fact: Option<Fact>,
}

/// Puts an entry right. A new date may move it to another fill of its pan.
///
/// # Errors
///
/// When the entry is not there or is evidence, the body is of another kind, names what is not there or cannot be,
/// the date does not stand, or nothing is changed.
pub fn amend(
    ledger: &Ledger,
    of: EntryId,
    amendment: Amendment,
    who: Option<PersonId>,
    now: Now,
) -> Result<Draft, QuickRefusal> {
    let entry = correctable(ledger, of)?;
    let fact = amendment.fact.as_ref().unwrap_or(&entry.fact);
    if discriminant(fact) != discriminant(&entry.fact) || !same_way(fact, &entry.fact) {
        return Err(QuickRefusal::OtherKind { of });
    }
    let at = amendment.at.map_or(entry.at, |(at, _)| at);
    if at == entry.at && *fact == entry.fact {
        return Err(QuickRefusal::NothingTyped);
    }
    known(ledger, fact)?;
    doubt::impossible(ledger, fact)?;
    check_redate(ledger, of, fact, at, now.wall).map_err(QuickRefusal::Date)?;
    let why = amendment.why;
    let how = Correction::Amend {
        at: amendment.at.map(|(at, _)| at),
        off_min: amendment.at.map(|(_, off_min)| off_min),
        fact: amendment.fact.map(Box::new),
    };
    correct(of, why, how).map(|fact| Draft::now(who, fact))
}

/// Oil that went another way is another move, and is checked like one.
fn same_way(a: &Fact, b: &Fact) -> bool {
    let (Fact::Move(a), Fact::Move(b)) = (a, b) else {
        return true;
    };
    (a.from, a.to) == (b.from, b.to)
}

fn correct(of: EntryId, why: String, how: Correction) -> Result<Fact, QuickRefusal> {
    if why.trim().is_empty() {
        return Err(QuickRefusal::NothingTyped);
    }
    Ok(Fact::Correct(Correct { of, why, how }))
}

fn correctable(ledger: &Ledger, of: EntryId) -> Result<&Entry, QuickRefusal> {
    let standing = ledger.line(of).and_then(|line| line.standing());
    let entry = standing.ok_or(QuickRefusal::NoSuchEntry { of })?;
    if is_evidence(&entry.fact) {
        return Err(QuickRefusal::Evidence { of });
    }
    Ok(entry)
}
