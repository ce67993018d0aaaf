//! The last step of a build: the service worker learns which files make up this version, each with its digest.
//!
//! Run by Trunk as its post-build hook, when every file has its final bytes. The version is the digest of that list,
//! so any change to any file is a new version and the same files are always the same version.

use crate::build::NO_WASM_OPT;
use crate::bundle::bundle;
use crate::glue::{shorten, tidied, tidy};
use crate::shell::{aloud, command, on_path, root};
use crate::trouble::{Outcome, Trouble};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD as BASE64;
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};

const WORKER: &str = "sw.js";

/// Finishes the folder Trunk names to its hooks.
pub fn finish_stage() -> Outcome {
    let stage = std::env::var_os("TRUNK_STAGING_DIR")
        .map(PathBuf::from)
        .ok_or_else(|| {
            Trouble::new("finish is the last step of a build and has nothing to do outside it. Run: cargo xtask build")
        })?;
    if std::env::var_os(NO_WASM_OPT).is_none() && on_path("wasm-opt").is_some() {
        optimise(&stage)?;
    }
    bundle(&stage)?;
    shorten(&stage)?;
    tidy(&stage)?;
    finish(&stage)
}

/// Writes `sw.js` in `dir`: the list of all the other files, then the hand-written worker.
pub fn finish(dir: &Path) -> Outcome {
    let files = digests(dir)?;
    let source = root().join("public").join(WORKER);
    let worker = std::fs::read_to_string(&source).map_err(|error| Trouble::file("read", &source, &error))?;
    let target = dir.join(WORKER);
    std::fs::write(&target, head(&files) + &tidied(&worker)).map_err(|error| Trouble::file("write", &target, &error))
}

/// Every file under `dir` by its path there, with `/` between folders, in order.
pub fn walk(dir: &Path) -> Outcome<BTreeMap<String, PathBuf>> {
    let mut found = BTreeMap::new();
    let mut folders = vec![(dir.to_path_buf(), String::new())];
    while let Some((folder, prefix)) = folders.pop() {
        let entries = std::fs::read_dir(&folder).map_err(|error| Trouble::file("read", &folder, &error))?;
        for entry in entries {
            let path = entry.map_err(|error| Trouble::file("read", &folder, &error))?.path();
            let name = path
                .file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default();
            if path.is_dir() {
                folders.push((path, format!("{prefix}{name}/")));
            } else {
                found.insert(format!("{prefix}{name}"), path);
            }
        }
    }
    Ok(found)
}

/// The digest of each file in the form of a subresource-integrity attribute. The page goes by `./`: a host may redirect
/// `index.html`, and a redirected answer cannot serve a navigation.
fn digests(dir: &Path) -> Outcome<BTreeMap<String, String>> {
    let mut digests = BTreeMap::new();
    for (name, path) in walk(dir)? {
        if name == WORKER {
            continue;
        }
        let bytes = std::fs::read(&path).map_err(|error| Trouble::file("read", &path, &error))?;
        let name = if name == "index.html" { "./".to_owned() } else { name };
        digests.insert(name, format!("sha256-{}", BASE64.encode(Sha256::digest(&bytes))));
    }
    Ok(digests)
}

fn head(files: &BTreeMap<String, String>) -> String {
    let mut hash = Sha256::new();
    for (name, digest) in files {
        hash.update(format!("{name} {digest}\n"));
    }
    let version = hash.finalize().iter().take(8).fold(String::new(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    });
    format!(
        "const VERSION = \"{version}\";\nconst FILES = {};\n",
        serde_json::json!(files)
    )
}

/// Lets `wasm-opt` make the module smaller, where somebody has it.
fn optimise(dir: &Path) -> Outcome {
    for (name, path) in walk(dir)? {
        if name.ends_with(".wasm") {
            let file = path.display().to_string();
            aloud(
                &mut command("wasm-opt", &["-Oz", "--all-features", "-o", &file, &file]),
                &format!("wasm-opt failed on {name}. Update it, or take it off PATH: it is not needed."),
            )?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn the_version_follows_the_bytes_and_nothing_else() {
        let dir = std::env::temp_dir().join(format!("panward-finish-{}", std::process::id()));
        std::fs::create_dir_all(dir.join("icons")).unwrap();
        std::fs::write(dir.join("index.html"), "abc").unwrap();
        std::fs::write(dir.join("icons/a.svg"), "").unwrap();
        let worker = |dir: &Path| {
            finish(dir).unwrap();
            std::fs::read_to_string(dir.join(WORKER)).unwrap()
        };
        let first = worker(&dir);
        // SHA-256 of "abc" and of the empty string: FIPS 180-2 appendix B.1 and NIST's test vectors, in base64.
        assert!(
            first.contains("\"./\":\"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\""),
            "{first}"
        );
        assert!(
            first.contains("\"icons/a.svg\":\"sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU=\""),
            "{first}"
        );
        assert_eq!(worker(&dir), first, "finishing twice changes nothing");
        std::fs::write(dir.join("index.html"), "abd").unwrap();
        assert_ne!(worker(&dir).lines().next(), first.lines().next());
        std::fs::remove_dir_all(&dir).unwrap();
    }
}
