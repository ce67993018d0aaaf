//! The stamp: gives what was decided its id, its place in the store and its time of writing.
//!
//! Time of writing never runs back. A clock that stands behind the log, or far ahead of it, is a doubt the person
//! settles before anything is written; only a run in progress goes on writing, and its entries say what the clock
//! read.

use thiserror::Error;
use uuid::Builder;

use super::journal::Loaded;
use crate::domain::entry::{Draft, Entry};
use crate::domain::facts::Fact;
use crate::domain::facts::job::JobEvent;
use crate::domain::ids::{Dev, EntryId};
use crate::domain::time::Millis;

/// How far behind the last entry a clock may stand without a question: network time nudges clocks by about so much.
const NUDGE_MS: i64 = 5 * Millis::SECOND;
/// How far ahead of the last entry a clock may stand without a question.
const AHEAD_MS: i64 = 24 * Millis::HOUR;
/// How far ahead of its writing a thing may be said to have happened.
const FUTURE_MS: i64 = 2 * Millis::MINUTE;

/// Why the wall clock is not believed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum ClockDoubt {
    /// It stands behind the last entry.
    #[error("the clock stands behind the last entry")]
    Behind {
        /// When the last entry was written.
        last: Millis,
        /// What the clock says.
        wall: Millis,
    },
    /// It stands more than 24 hours ahead of the last entry.
    #[error("the clock stands more than 24 hours ahead of the last entry")]
    FarAhead {
        /// When the last entry was written.
        last: Millis,
        /// What the clock says.
        wall: Millis,
    },
}

/// What to do about a doubtful clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Write nothing; the person is asked for the date.
    Ask,
    /// The person looked: the clock is right.
    Confirmed,
    /// A run is in progress: write, right after the last entry, and mark it with what the clock says.
    RunOpen,
}

/// Why nothing was stamped.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum Unstamped {
    /// The clock is doubtful and nobody has said that it is right.
    #[error(transparent)]
    Clock(#[from] ClockDoubt),
    /// It is said to have happened more than two minutes from now.
    #[error("dated more than two minutes ahead")]
    Future {
        /// When it is said to have happened.
        at: Millis,
        /// When it would be written.
        rec: Millis,
    },
    /// Evidence is seen as it is written; it carries no date of its own.
    #[error("evidence cannot be dated")]
    DatedEvidence,
    /// The store has numbered as many entries as it can.
    #[error("the store is out of numbers")]
    NoNumbers,
}

/// What the stamp needs to know of the world at the moment of writing.
pub struct Moment<'a> {
    /// The wall clock.
    pub wall: Millis,
    /// What to do should it be doubtful.
    pub trust: Trust,
    /// Minutes the kitchen's zone is ahead of UTC at a moment.
    pub off_min: &'a dyn Fn(Millis) -> i16,
    /// Ten random bytes, new at each call.
    pub random: &'a mut dyn FnMut() -> [u8; 10],
}

/// The next place in a store, and the last time of writing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stamp {
    dev: Dev,
    seq: u32,
    last: Option<Millis>,
}

impl Stamp {
    /// The stamp that goes on where a store of this name stopped.
    ///
    /// The last time of writing is that of the whole log, not of this store alone: what is written now was written
    /// knowing all of it, so it must follow all of it. Numbers of unreadable lines are taken, too.
    #[must_use]
    pub fn after(dev: Dev, loaded: &Loaded) -> Self {
        let read = loaded.records.iter().map(|r| (r.entry().dev, r.entry().seq));
        let places = read.chain(loaded.unreadable.iter().map(|u| (u.dev, u.seq)));
        let seq = places.filter(|(of, _)| *of == dev).map(|(_, seq)| seq).max();
        let last = loaded.records.iter().map(|r| r.entry().rec).max();
        Self {
            dev,
            seq: seq.unwrap_or(0),
            last,
        }
    }

    /// Whether this reading of the wall clock is to be doubted.
    #[must_use]
    pub fn doubt(&self, wall: Millis) -> Option<ClockDoubt> {
        let last = self.last?;
        let ahead = wall.since(last);
        if ahead < -NUDGE_MS {
            Some(ClockDoubt::Behind { last, wall })
        } else if ahead > AHEAD_MS {
            Some(ClockDoubt::FarAhead { last, wall })
        } else {
            None
        }
    }

    /// Entries for what was decided, in order. The stamp itself moves on only by [`Stamp::wrote`].
    ///
    /// # Errors
    /// Why none of them may be written.
    pub fn stamp(&self, drafts: Vec<Draft>, moment: &mut Moment) -> Result<Vec<Entry>, Unstamped> {
        let rec = self.time_of_writing(moment.wall, moment.trust)?;
        let mut seq = self.seq;
        let mut entries = Vec::with_capacity(drafts.len());
        for draft in drafts {
            seq = seq.checked_add(1).ok_or(Unstamped::NoNumbers)?;
            let at = match draft.at {
                Some(_) if is_evidence(&draft.fact) => return Err(Unstamped::DatedEvidence),
                Some(at) if at.since(rec) > FUTURE_MS => return Err(Unstamped::Future { at, rec }),
                Some(at) => at,
                None => rec,
            };
            entries.push(Entry {
                id: entry_id(rec, &(moment.random)()),
                dev: self.dev,
                seq,
                at,
                rec,
                clk: (moment.wall != rec).then_some(moment.wall),
                off_min: (moment.off_min)(at),
                who: draft.who,
                fact: draft.fact,
            });
        }
        Ok(entries)
    }

    /// Moves on past entries that are written.
    pub fn wrote(&mut self, entries: &[Entry]) {
        for entry in entries {
            if entry.dev == self.dev {
                self.seq = self.seq.max(entry.seq);
            }
            self.last = self.last.max(Some(entry.rec));
        }
    }

    fn time_of_writing(&self, wall: Millis, trust: Trust) -> Result<Millis, ClockDoubt> {
        let next = |last: Millis| last.plus(1);
        match (self.doubt(wall), trust, self.last) {
            (Some(doubt), Trust::Ask, _) => Err(doubt),
            // A leap far ahead, unconfirmed, must not drag the log with it: no later entry could get behind it again.
            (Some(_), Trust::RunOpen, Some(last)) => Ok(next(last)),
            (_, _, Some(last)) if wall < last => Ok(next(last)),
            (_, _, Some(_) | None) => Ok(wall),
        }
    }
}

/// Whether a fact is evidence: it holds what was seen while the guide stood by. A job noted afterwards, as done
/// without the guide or not done, is not.
fn is_evidence(fact: &Fact) -> bool {
    match fact {
        Fact::Run(_) => true,
        Fact::Job(job) => job.event != JobEvent::Noted,
        _ => false,
    }
}

/// A UUID v7 (RFC 9562, section 5.7) of this time and these random bytes.
fn entry_id(rec: Millis, random: &[u8; 10]) -> EntryId {
    let ms = u64::try_from(rec.0).unwrap_or(0);
    EntryId(Builder::from_unix_timestamp_millis(ms, random).into_uuid().as_u128())
}
