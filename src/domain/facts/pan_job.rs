//! What a pan is for on one day, where that is not what it was set up for.

use crate::domain::claim::Exposures;
use crate::domain::ids::PanId;
use crate::domain::time::Day;

/// A pan does another pan's job, or its own again, until the trading day ends.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PanJob {
    /// The pan.
    pub pan: PanId,
    /// Whose job it does; itself for its own again.
    pub of: PanId,
    /// What that one fries: this pan meets it until it is emptied, whatever it does tomorrow.
    pub food: Exposures,
    /// The trading day.
    pub day: Day,
}
