//! The release build: Trunk with its tools on PATH and the network out of it.

use crate::shell::{Heard, command, quietly, root};
use crate::tools;
use crate::trouble::{Outcome, Trouble};
use std::path::PathBuf;
use std::process::Command;

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
    names_no_folder(&mut trunk);
    match optimise {
        Optimise::IfFound => trunk.env_remove(NO_WASM_OPT),
        Optimise::Never => trunk.env(NO_WASM_OPT, "1"),
    };
    quietly(&mut trunk)
}

/// Has a build for the browser name no folder of this machine in what it ships: a panic's place is told from the
/// crate's own folder on.
pub fn names_no_folder(command: &mut Command) {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".cargo")));
    let remap = |(from, to): (PathBuf, &str)| format!("--remap-path-prefix={}={to}", from.display());
    let folders = home
        .map(|home| (home, "cargo"))
        .into_iter()
        .chain([(root(), "panward")]);
    // For the browser alone: the chores are built by the same cargo on the way. Flags are parted by spaces, so a folder
    // with one in its name keeps it.
    let flags: Vec<String> = folders.map(remap).filter(|flag| !flag.contains(' ')).collect();
    command.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", flags.join(" "));
}
