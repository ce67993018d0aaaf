//! The folds of the log and the quick entries checked against them: given entries, the ledger says.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod balance;
mod claims;
mod days;
mod demo;
mod form;
mod given;
mod jobs;
mod kept_apart;
mod laws;
mod log;
mod met;
mod oil;
mod parked;
mod powder;
mod quick;
mod rhythm;
mod runs;
mod solid;
