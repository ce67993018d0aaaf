//! The tools a build and a test need: looked for at the exact version, installed where missing.
//!
//! PATH is asked first, then the user's own cache, into which `cargo install` puts what is missing. A tool is complete
//! or absent, so an interrupted installation goes on where it stopped when the same command runs again.

use crate::shell::{aloud, answer, command, on_path, root};
use crate::trouble::{Outcome, Trouble};
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// 0.22 wants a newer compiler than the one this project promises to build with.
const TRUNK: &str = "0.21.14";
/// The accessibility checker the journeys put into the page.
const AXE: &str = "4.14.1";
const TARGET: &str = "wasm32-unknown-unknown";

/// A program published as a crate.
struct Tool {
    package: &'static str,
    /// Programs it brings; the first one answers `--version`.
    programs: &'static [&'static str],
    version: String,
    /// Trunk builds with the versions its own lock file names; the CLI's lock file has fallen behind its dependencies.
    locked: bool,
    minutes: u32,
}

fn build_tools() -> Outcome<[Tool; 2]> {
    Ok([
        Tool {
            package: "trunk",
            programs: &["trunk"],
            version: TRUNK.to_owned(),
            locked: true,
            minutes: 7,
        },
        Tool {
            package: "wasm-bindgen-cli",
            programs: &["wasm-bindgen", "wasm-bindgen-test-runner"],
            version: locked_version("wasm-bindgen")?,
            locked: false,
            minutes: 2,
        },
    ])
}

/// PATH for child processes, with every build tool on it at its exact version; installs what is missing.
pub fn path_with_build_tools() -> Outcome<OsString> {
    wasm_target()?;
    let mut dirs = Vec::new();
    for tool in build_tools()? {
        if let Some(dir) = tool.ready()? {
            dirs.push(dir);
        }
    }
    let path = std::env::var_os("PATH").unwrap_or_default();
    dirs.extend(std::env::split_paths(&path));
    std::env::join_paths(dirs).map_err(|error| Trouble::new(format!("PATH cannot be used: {error}.")))
}

impl Tool {
    /// The folder to put on PATH, or nothing when PATH has the tool already.
    fn ready(&self) -> Outcome<Option<PathBuf>> {
        if self
            .programs
            .iter()
            .all(|program| on_path(program).is_some_and(|file| self.is(&file)))
        {
            return Ok(None);
        }
        let home = tools_home()?.join(format!("{}-{}", self.package, self.version));
        let bin = home.join("bin");
        if !self.programs.iter().all(|program| self.is(&bin.join(program))) {
            self.install(&home)?;
        }
        Ok(Some(bin))
    }

    fn is(&self, file: &Path) -> bool {
        let said = answer(file, &["--version"]).unwrap_or_default();
        said.split_whitespace().any(|word| word == self.version)
    }

    fn install(&self, home: &Path) -> Outcome {
        let Self {
            package,
            version,
            minutes,
            ..
        } = self;
        println!(
            "Installing {package} {version} into {}: about {minutes} minutes, once.",
            home.display()
        );
        let root = home.display().to_string();
        // Kept until the tool stands: an interrupted installation has this much less to compile again.
        let half_done = PathBuf::from(format!("{root}-build"));
        let target = half_done.display().to_string();
        let mut args = vec![
            "install",
            "--quiet",
            "--version",
            version,
            "--root",
            &root,
            "--target-dir",
            &target,
        ];
        args.extend(self.locked.then_some("--locked"));
        args.push(package);
        aloud(
            &mut command("cargo", &args),
            &format!(
                "{package} {version} could not be installed (see above). It needs the network once: \
                 when that is back, run this again; it goes on from here."
            ),
        )?;
        // What is left of it takes room and does no harm.
        let _ = std::fs::remove_dir_all(half_done);
        Ok(())
    }
}

fn tools_home() -> Outcome<PathBuf> {
    let var = |name| {
        std::env::var_os(name)
            .filter(|value| !value.is_empty())
            .map(PathBuf::from)
    };
    var("PANWARD_TOOLS")
        .or_else(|| var("XDG_CACHE_HOME").map(|cache| cache.join("panward/tools")))
        .or_else(|| var("HOME").map(|home| home.join(".cache/panward/tools")))
        .ok_or_else(|| Trouble::new("no place for the tools: set PANWARD_TOOLS to a folder and run this again."))
}

fn wasm_target() -> Outcome {
    let sysroot = answer(Path::new("rustc"), &["--print", "sysroot"]);
    if sysroot.is_some_and(|dir| Path::new(&dir).join("lib/rustlib").join(TARGET).is_dir()) {
        return Ok(());
    }
    if on_path("rustup").is_none() {
        return Err(Trouble::new(format!(
            "this Rust has no {TARGET} target and rustup is not on PATH to add it. \
             Install Rust by rustup (https://rustup.rs), or add the target the way your Rust was installed."
        )));
    }
    println!("Adding the Rust target {TARGET}: under a minute, once.");
    aloud(
        &mut command("rustup", &["target", "add", TARGET]),
        &format!("the Rust target {TARGET} could not be added. It needs the network once; then run this again."),
    )
}

/// rustfmt and clippy, which a minimal Rust comes without.
pub fn checkers() -> Outcome {
    for (component, program) in [("rustfmt", "cargo-fmt"), ("clippy", "cargo-clippy")] {
        if answer(Path::new(program), &["--version"]).is_none() {
            println!("Adding the Rust component {component}: under a minute, once.");
            aloud(
                &mut command("rustup", &["component", "add", component]),
                &format!("{component} could not be added. It needs the network once; then run this again."),
            )?;
        }
    }
    Ok(())
}

/// Chromium and its driver, by apt-get where they are missing.
pub fn browser() -> Outcome {
    let browser = ["chromium", "chromium-browser", "google-chrome"]
        .iter()
        .any(|name| on_path(name).is_some());
    if browser && on_path("chromedriver").is_some() {
        return Ok(());
    }
    apt_get("Chromium and its driver", &["chromium", "chromium-driver"])
}

/// axe-core's source at the pinned version, under `target/`.
pub fn axe() -> Outcome<PathBuf> {
    let dir = root().join("target/axe-core");
    let file = dir.join(format!("axe-{AXE}.min.js"));
    if file.is_file() {
        return Ok(file);
    }
    if on_path("npm").is_none() {
        apt_get("npm", &["npm"])?;
    }
    println!("Fetching axe-core {AXE} into {}: a few seconds, once.", dir.display());
    std::fs::create_dir_all(&dir).map_err(|error| Trouble::file("make", &dir, &error))?;
    let sorry = format!("axe-core {AXE} could not be fetched. It needs the network once; then run this again.");
    let package = format!("axe-core@{AXE}");
    aloud(
        command("npm", &["pack", "--silent", &package])
            .current_dir(&dir)
            .stdout(std::process::Stdio::null()),
        &sorry,
    )?;
    let archive = format!("axe-core-{AXE}.tgz");
    aloud(
        command("tar", &["-xzf", &archive, "package/axe.min.js"]).current_dir(&dir),
        &sorry,
    )?;
    // Moved last: the file stands under its final name only when it is whole.
    std::fs::rename(dir.join("package/axe.min.js"), &file).map_err(|error| Trouble::file("write", &file, &error))?;
    Ok(file)
}

fn apt_get(what: &str, packages: &[&str]) -> Outcome {
    let list = packages.join(" ");
    let by_hand = format!("Install {what} by hand (on Debian: sudo apt-get install {list}), then run this again.");
    if on_path("apt-get").is_none() {
        return Err(Trouble::new(format!(
            "{what} is missing and this system has no apt-get. {by_hand}"
        )));
    }
    if answer(Path::new("id"), &["-u"]).as_deref() != Some("0") {
        return Err(Trouble::new(format!(
            "{what} is missing and only root may install it. {by_hand}"
        )));
    }
    println!("Installing {what} by apt-get: about 2 minutes, once.");
    let sorry = format!("{what} could not be installed by apt-get (see above). {by_hand}");
    let quiet = |args: &[&str]| {
        let mut apt = command("apt-get", args);
        apt.env("DEBIAN_FRONTEND", "noninteractive")
            .stdout(std::process::Stdio::null());
        apt
    };
    aloud(&mut quiet(&["update", "-qq"]), &sorry)?;
    aloud(
        quiet(&["install", "-qq", "-y", "--no-install-recommends"]).args(packages),
        &sorry,
    )
}

/// The version of `package` in Cargo.lock.
fn locked_version(package: &str) -> Outcome<String> {
    let file = root().join("Cargo.lock");
    let lock = std::fs::read_to_string(&file).map_err(|error| Trouble::file("read", &file, &error))?;
    version_in(&lock, package)
        .ok_or_else(|| Trouble::new(format!("Cargo.lock names no {package}: run cargo check once.")))
}

fn version_in(lock: &str, package: &str) -> Option<String> {
    let mut lines = lock.lines().skip_while(|line| *line != format!("name = \"{package}\""));
    let version = lines.nth(1)?.strip_prefix("version = \"")?.strip_suffix('"')?;
    Some(version.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_lock_file_tells_the_version_of_the_very_package_asked_for() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.80\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(version_in(lock, "wasm-bindgen").as_deref(), Some("0.2.130"));
        assert_eq!(version_in(lock, "wasm"), None);
    }
}
