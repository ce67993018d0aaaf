//! The project's rules that no compiler checks: arrows between layers, what each file begins with, words that may not be.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::path::{Path, PathBuf};

/// A layer of `src/`, the layers it may name, and whether it may touch the browser.
struct Layer {
    name: &'static str,
    may_use: &'static [&'static str],
    web: bool,
}

/// Inwards only, and the three in the middle do not know each other.
const LAYERS: &[Layer] = &[
    Layer {
        name: "domain",
        may_use: &[],
        web: false,
    },
    Layer {
        name: "store",
        may_use: &["domain"],
        web: false,
    },
    Layer {
        name: "words",
        may_use: &["store", "domain"],
        web: false,
    },
    Layer {
        name: "kitchen",
        may_use: &["store", "domain"],
        web: false,
    },
    Layer {
        name: "demo",
        may_use: &["kitchen", "store", "domain"],
        web: false,
    },
    Layer {
        name: "browser",
        may_use: &["store", "domain"],
        web: true,
    },
    Layer {
        name: "ui",
        may_use: &["browser", "demo", "kitchen", "words", "store", "domain"],
        web: true,
    },
];

const WEB_CRATES: &[&str] = &["leptos", "web_sys", "js_sys", "wasm_bindgen", "wasm_bindgen_futures"];

/// A word that may not stand in the code of `src/` outside its tests, and what to do instead.
const BANNED_IN_SRC: &[(&str, &str)] = &[
    (
        "inner_html",
        "markup from text is how imported names become scripts: let the framework escape it",
    ),
    (
        "style=\"",
        "the security policy blocks style attributes: use a class, or style:property",
    ),
    (
        "style=move",
        "the security policy blocks style attributes: use a class, or style:property",
    ),
    (".unwrap()", "say what happened, what is safe and what to do"),
    (".expect(", "say what happened, what is safe and what to do"),
];

/// A word that may stand nowhere.
const BANNED: &[(&str, &str)] = &[
    ("TODO", "an issue is the place for it"),
    ("FIXME", "an issue is the place for it"),
    ("#[ignore", "a test that does not run is no test"),
    ("thread::sleep", "wait for a condition, up to a deadline"),
];

const LINES_MAX: usize = 500;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file under these folders, by its path from the root, with its text.
fn rust_files(folders: &[&str]) -> Vec<(String, String)> {
    let mut queue: Vec<PathBuf> = folders.iter().map(|folder| root().join(folder)).collect();
    let mut found = Vec::new();
    while let Some(folder) = queue.pop() {
        for entry in std::fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                queue.push(path);
            } else if path.extension().is_some_and(|kind| kind == "rs") {
                let name = path.strip_prefix(root()).unwrap().display().to_string();
                found.push((name, std::fs::read_to_string(&path).unwrap()));
            }
        }
    }
    found.sort();
    assert!(found.len() > 10, "the walk found only {} files", found.len());
    found
}

/// The code of a file: without comments, and without the tests at its end.
fn code(text: &str) -> String {
    let shipped = text
        .lines()
        .take_while(|line| !line.starts_with("#[cfg(test)]") && !line.starts_with("#[cfg(all(test"));
    shipped
        .map(|line| line.split("//").next().unwrap_or_default())
        .collect::<Vec<_>>()
        .join("\n")
}

/// Whether `word` stands in `code` as a whole name.
fn names(code: &str, word: &str) -> bool {
    let part = |c: char| c.is_alphanumeric() || c == '_';
    code.match_indices(word).any(|(at, _)| {
        !code[..at].chars().next_back().is_some_and(part) && !code[at + word.len()..].chars().next().is_some_and(part)
    })
}

/// What the code of one file of `layer` names that it may not.
fn trespasses(layer: &Layer, code: &str) -> Vec<String> {
    let layers = LAYERS.iter().map(|other| other.name).chain(["main"]);
    let outward = layers
        .filter(|name| *name != layer.name && !layer.may_use.contains(name))
        .map(|name| format!("crate::{name}"));
    let web = WEB_CRATES.iter().filter(|_| !layer.web).map(|name| (*name).to_owned());
    let own = (layer.name == "browser").then(|| "leptos".to_owned());
    // Stored shapes are the store's affair, so that a domain type is free to change; the shipped app reads and writes
    // them without serde.
    let serde = (layer.name != "store")
        .then(|| ["Serialize", "Deserialize"].map(str::to_owned))
        .into_iter()
        .flatten();
    outward
        .chain(web)
        .chain(own)
        .chain(serde)
        .filter(|word| names(code, word))
        .collect()
}

fn layer_of(file: &str) -> Option<&'static Layer> {
    let inside = file.strip_prefix("src/")?;
    let name = inside.split('/').next()?.trim_end_matches(".rs");
    LAYERS.iter().find(|layer| layer.name == name)
}

#[test]
fn arrows_between_layers_point_inwards() {
    let mut wrong = Vec::new();
    for (file, text) in rust_files(&["src"]) {
        match layer_of(&file) {
            Some(layer) => wrong.extend(
                trespasses(layer, &code(&text))
                    .iter()
                    .map(|word| format!("{file} names {word}")),
            ),
            None => assert!(
                matches!(file.as_str(), "src/lib.rs" | "src/main.rs"),
                "{file} belongs to no layer"
            ),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_layer_check_sees_what_it_should() {
    let layer = |name| LAYERS.iter().find(|layer| layer.name == name).unwrap();
    let cases = [
        ("domain", "use crate::store::Journal;", 1),
        ("domain", "use crate::domain::fat::Fat;", 0),
        ("domain", "let x = web_sys::window();", 1),
        ("domain", "#[derive(Serialize)]", 1),
        ("domain", "// crate::ui draws it", 0),
        ("kitchen", "use crate::words::say;", 1),
        ("browser", "use leptos::prelude::*;", 1),
        ("ui", "use crate::kitchen::Kitchen; use leptos::prelude::*;", 0),
    ];
    for (name, line, expected) in cases {
        assert_eq!(trespasses(layer(name), &code(line)).len(), expected, "{name}: {line}");
    }
    assert_eq!(code("a.b();\n#[cfg(test)]\nmod tests { c.unwrap() }").trim(), "a.b();");
}

#[test]
fn every_file_says_first_what_it_is_for_and_is_not_long() {
    let mut wrong = Vec::new();
    for (file, text) in rust_files(&["src", "tests", "xtask"]) {
        let lines = text.lines().count();
        if !text.starts_with("//! ") {
            wrong.push(format!(
                "{file}: say in its first line, with //!, what this file is for"
            ));
        }
        if lines > LINES_MAX {
            wrong.push(format!("{file}: {lines} lines; split it by noun"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn no_banned_word_is_used() {
    let mut wrong = Vec::new();
    for (file, text) in rust_files(&["src", "tests", "xtask"]) {
        let mut look = |text: &str, words: &[(&str, &str)]| {
            let found = words.iter().filter(|(word, _)| text.contains(word));
            wrong.extend(found.map(|(word, why)| format!("{file}: {word}: {why}")));
        };
        if file != "tests/tidy.rs" {
            look(&text, BANNED);
        }
        if file.starts_with("src/") {
            look(&code(&text), BANNED_IN_SRC);
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn the_page_allows_no_script_or_style_but_its_own_files() {
    let page = std::fs::read_to_string(root().join("public/index.html")).unwrap();
    let policy = page
        .split("Content-Security-Policy")
        .nth(1)
        .unwrap()
        .split('>')
        .next()
        .unwrap();
    for part in [
        "default-src 'none'",
        "script-src 'self' 'wasm-unsafe-eval'",
        "style-src 'self'",
        "base-uri 'none'",
    ] {
        assert!(policy.contains(part), "{part} is missing from the policy");
    }
    assert!(
        !policy.contains("unsafe-inline") && !policy.contains("http"),
        "{policy}"
    );
    assert!(
        !page.contains("<style") && !page.contains(" style="),
        "styles belong in style/"
    );
    assert!(!page.contains("://"), "the page asks no other host for anything");
}
