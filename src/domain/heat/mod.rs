//! Heat and waiting: warming a machine for solid fat, and estimating how long oil takes to cool.
//!
//! Nothing here opens a hold. A wait that is over and an estimate that has run out are reasons to measure; only a
//! reading proves a temperature.

pub mod cool_down;
pub mod warm_up;
