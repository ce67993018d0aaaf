//! `cargo xtask measure`: how long the app takes to start, beside a bare counter built and served the same way.

use crate::build::{NO_WASM_OPT, Optimise, trunk};
use crate::finish::finish;
use crate::shell::{Heard, command, quietly, root};
use crate::tools;
use crate::trouble::{Outcome, Trouble};
use std::ffi::OsStr;
use std::path::Path;

const TARGET: &str = "wasm32-unknown-unknown";

/// Builds both, measures both, prints both, and fails when the app is over its gate.
pub fn measure() -> Outcome {
    let path = tools::path_with_build_tools()?;
    tools::browser()?;
    println!("Building the release and a bare counter, then 9 starts of each: about 4 minutes the first time.");
    let built = trunk(&path, Optimise::Never)?;
    let heard = if built.ok { starts(&path)? } else { built };
    println!("{}", heard.lines.join("\n"));
    if heard.ok {
        Ok(())
    } else {
        Err(Trouble::new(
            "the measure failed, or the start is over its gate (see above).",
        ))
    }
}

/// Measures the release in `dist/` against the counter, with `path` as PATH.
pub fn starts(path: &OsStr) -> Outcome<Heard> {
    let dir = root().join("target/bare-site");
    let site = dir.display().to_string();
    let module = format!("target/{TARGET}/release/bare.wasm");
    let bind = [
        "--target",
        "web",
        "--no-typescript",
        "--out-name",
        "bare",
        "--out-dir",
        &site,
        &module,
    ];
    let build = [
        "build",
        "--quiet",
        "--release",
        "-p",
        "bare",
        "--target",
        TARGET,
        "--target-dir",
        "target",
    ];
    for (program, args) in [("cargo", &build[..]), ("wasm-bindgen", &bind[..])] {
        let heard = quietly(command(program, args).env("PATH", path).env(NO_WASM_OPT, "1"))?;
        if !heard.ok {
            return Ok(heard);
        }
    }
    for from in ["tests/bare/index.html", "public/boot.js"] {
        let from = root().join(from);
        let to = dir.join(from.file_name().unwrap_or_default());
        std::fs::copy(&from, &to).map_err(|error| Trouble::file("copy", &from, &error))?;
    }
    finish(Path::new(&dir))?;
    let run = ["run", "--quiet", "-p", "journeys", "--bin", "starts", "--", &site];
    quietly(command("cargo", &run).env("PATH", path))
}
