//! `cargo xtask backtest`: plays a shop's log past the oil-life estimator and prints what each forecast was worth.

use crate::shell::{cannot_start, root};
use crate::trouble::{Outcome, Trouble};
use std::process::{Command, Stdio};

/// Hands the words over as they stand; they are read in the folder the chore was called from.
pub fn backtest(words: &[&str]) -> Outcome {
    let mut cargo = Command::new("cargo");
    cargo
        .args(["run", "--quiet", "--profile", "backtest", "-p", "backtest"])
        .arg("--manifest-path")
        .arg(root().join("Cargo.toml"))
        .arg("--")
        .args(words)
        .stderr(Stdio::piped());
    let child = cargo.spawn().map_err(|error| cannot_start(&cargo, &error))?;
    let ended = child.wait_with_output().map_err(|error| cannot_start(&cargo, &error))?;
    if ended.status.success() {
        return Ok(());
    }
    Err(Trouble::new(String::from_utf8_lossy(&ended.stderr).trim()))
}
