//! Orders a screen may send, and every way one may come back refused.

use thiserror::Error;

use super::Kitchen;
use crate::domain::day_jobs;
use crate::domain::entry::Draft;
use crate::domain::facts::Fact;
use crate::domain::facts::trouble::TroubleFact;
use crate::domain::guide::{Command, Refusal};
use crate::domain::ids::PersonId;
use crate::domain::pan_jobs;
use crate::domain::time::Now;
use crate::domain::trouble;
use crate::store::stamp::{ClockDoubt, Unstamped};
use crate::store::{BadEntry, Journal, StoreFault};

/// An order.
#[derive(Clone, Debug)]
pub enum Order {
    /// To the filter job's guide.
    Guide(Command),
    /// To light-up or lock-up.
    Day(day_jobs::Command),
    /// Something said of a day that goes wrong, and by whom.
    Trouble(TroubleFact, Option<PersonId>),
    /// To an oil change or a boil-out.
    Pan(pan_jobs::Command),
    /// Something logged or set up, checked where it was drafted.
    Write(Vec<Draft>),
    /// The same order again, after a person looked at the date and said it is right.
    TimeConfirmed(Box<Order>),
}

/// Why nothing was written and nothing moved.
#[derive(Clone, Debug, Error)]
pub enum Refused {
    /// The guide says no.
    #[error("the guide refuses")]
    Guide(Refusal),
    /// Light-up or lock-up says no.
    #[error("the day's jobs refuse")]
    Day(day_jobs::Refusal),
    /// Oil change or boil-out says no.
    #[error("the pan's job refuses")]
    Pan(pan_jobs::Refusal),
    /// The wall clock is not believed.
    #[error(transparent)]
    Clock(ClockDoubt),
    /// It cannot be dated so.
    #[error(transparent)]
    Stamp(Unstamped),
    /// It cannot be put in words the store keeps.
    #[error(transparent)]
    BadEntry(BadEntry),
    /// The store did not take it.
    #[error(transparent)]
    Store(#[from] StoreFault),
}

impl<J: Journal> Kitchen<J> {
    pub(super) fn decide(&self, order: Order, now: &Now) -> Result<Vec<Draft>, Refused> {
        match order {
            Order::Guide(command) => self
                .guide
                .decide(&self.scene(now), &command, now)
                .map_err(Refused::Guide),
            Order::Day(command) => self
                .day_jobs
                .decide(&self.scene(now), &command, now)
                .map_err(Refused::Day),
            Order::Trouble(fact, who) => trouble::check(&self.scene(now), &fact)
                .map(|()| vec![Draft::now(who, Fact::Trouble(Box::new(fact)))])
                .map_err(Refused::Guide),
            Order::Pan(command) => self
                .pan_jobs
                .decide(&self.scene(now), &command, now)
                .map_err(Refused::Pan),
            Order::Write(drafts) => Ok(drafts),
            Order::TimeConfirmed(order) => self.decide(*order, now),
        }
    }
}
