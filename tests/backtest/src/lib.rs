//! A shop's log, one row a trading day, played past the oil-life estimator: every reading is foretold from the rows
//! before it, and the forecasts are scored beside two baselines.

pub mod file;
pub mod foretell;
pub mod report;
pub mod row;
pub mod score;
