//! The release build: Trunk with its tools on PATH and the network out of it.

use crate::shell::{Heard, command, quietly, root};
use crate::tools;
use crate::trouble::{Outcome, Trouble};
use std::path::PathBuf;

/// Whether `wasm-opt` may make the module smaller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Optimise {
    /// Yes, where it is on PATH.
    IfFound,
    /// No: the size gate holds on every machine, with the tool or without.
    Never,
}

/// Tells the hook (`finish`) to leave `wasm-opt` alone.
pub const NO_WASM_OPT: &str = "PANWARD_NO_WASM_OPT";

/// Where the finished site lies.
#[must_use]
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Builds the site into `dist/`, saying so.
pub fn build(optimise: Optimise) -> Outcome {
    let path = tools::path_with_build_tools()?;
    println!("Building the release: about 2 minutes the first time, seconds after that.");
    let heard = trunk(&path, optimise)?;
    if heard.ok {
        println!("Built {}", dist().display());
        Ok(())
    } else {
        eprintln!("{}", heard.lines.join("\n"));
        Err(Trouble::new(
            "the build failed; what it said stands above, and dist/ is as it was before.",
        ))
    }
}

/// Runs Trunk's release build with `path` as PATH.
pub fn trunk(path: &std::ffi::OsStr, optimise: Optimise) -> Outcome<Heard> {
    let mut trunk = command("trunk", &["build", "--release", "--offline", "true"]);
    // Trunk takes NO_COLOR for a flag of its own and stops at the customary value 1.
    trunk.env("PATH", path).env_remove("NO_COLOR");
    match optimise {
        Optimise::IfFound => trunk.env_remove(NO_WASM_OPT),
        Optimise::Never => trunk.env(NO_WASM_OPT, "1"),
    };
    quietly(&mut trunk)
}
