//! `cargo xtask measure`: how long the app takes to start, beside a bare counter built and served the same way, and how
//! long ten years of log take to fold, beside `JSON.parse` of their export.

use crate::build::{NO_WASM_OPT, Optimise, names_no_folder, trunk};
use crate::finish::finish;
use crate::shell::{Heard, command, quietly, root};
use crate::tools;
use crate::trouble::{Outcome, Trouble};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

const TARGET: &str = "wasm32-unknown-unknown";

/// Builds everything, measures everything, prints it, and fails when something is over its gate.
pub fn measure() -> Outcome {
    let path = tools::path_with_build_tools()?;
    tools::browser()?;
    println!(
        "Building the release and what it is measured with, then 9 rounds of each: about 5 minutes the first time."
    );
    let built = trunk(&path, Optimise::Never)?;
    let all = if built.ok {
        vec![starts(&path)?, years(&path)?]
    } else {
        vec![built]
    };
    for heard in &all {
        println!("{}", heard.lines.join("\n"));
    }
    if all.iter().all(|heard| heard.ok) {
        Ok(())
    } else {
        Err(Trouble::new(
            "the measure failed, or something is over its gate (see above).",
        ))
    }
}

/// Measures the start of the release in `dist/` against the counter, with `path` as PATH.
fn starts(path: &OsStr) -> Outcome<Heard> {
    let (site, built) = page(path, "bare", &["tests/bare/index.html", "public/boot.js"])?;
    if !built.ok {
        return Ok(built);
    }
    finish(&site)?;
    journey(path, "starts", &site)
}

/// Measures the fold of ten years of log, with `path` as PATH.
fn years(path: &OsStr) -> Outcome<Heard> {
    let (site, built) = page(path, "years", &["tests/years/index.html"])?;
    if !built.ok {
        return Ok(built);
    }
    journey(path, "years", &site)
}

/// Builds the release of a package under `tests/` as a page of these files: the folder it lies in.
fn page(path: &OsStr, name: &str, files: &[&str]) -> Outcome<(PathBuf, Heard)> {
    let dir = root().join(format!("target/{name}-site"));
    let site = dir.display().to_string();
    let module = format!("target/{TARGET}/release/{name}.wasm");
    let bind = [
        "--target",
        "web",
        "--no-typescript",
        "--out-name",
        name,
        "--out-dir",
        &site,
        &module,
    ];
    let build = [
        "build",
        "--quiet",
        "--release",
        "-p",
        name,
        "--target",
        TARGET,
        "--target-dir",
        "target",
    ];
    let mut cargo = command("cargo", &build);
    names_no_folder(&mut cargo);
    let mut built = quietly(cargo.env("PATH", path).env(NO_WASM_OPT, "1"))?;
    if built.ok {
        built = quietly(command("wasm-bindgen", &bind).env("PATH", path))?;
    }
    if built.ok {
        for from in files {
            let from = root().join(from);
            let to = dir.join(from.file_name().unwrap_or_default());
            std::fs::copy(&from, &to).map_err(|error| Trouble::file("copy", &from, &error))?;
        }
    }
    Ok((dir, built))
}

/// Runs one of the journeys' own programs on the page in `site`.
fn journey(path: &OsStr, bin: &str, site: &Path) -> Outcome<Heard> {
    let site = site.display().to_string();
    let run = ["run", "--quiet", "-p", "journeys", "--bin", bin, "--", &site];
    quietly(command("cargo", &run).env("PATH", path))
}
