//! One stylesheet instead of one a part: each file costs a start its own way through the service worker.

use crate::trouble::{Outcome, Trouble};
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::path::Path;

/// Joins the stylesheets of the page in `dir` into one, in the order in which it names them.
pub fn bundle(dir: &Path) -> Outcome {
    let page = dir.join("index.html");
    let html = std::fs::read_to_string(&page).map_err(|error| Trouble::file("read", &page, &error))?;
    let links = stylesheets(&html);
    let mut css = String::new();
    for (_, name) in &links {
        let part = dir.join(name);
        css += &std::fs::read_to_string(&part).map_err(|error| Trouble::file("read", &part, &error))?;
        std::fs::remove_file(&part).map_err(|error| Trouble::file("remove", &part, &error))?;
    }
    let Some((first, _)) = links.first() else { return Ok(()) };
    let digest = Sha256::digest(&css);
    let hash = digest.iter().take(8).fold(String::new(), |mut hex, byte| {
        let _ = write!(hex, "{byte:02x}");
        hex
    });
    let whole = format!("panward-{hash}.css");
    let mut joined = html.replacen(first, &format!("<link rel=\"stylesheet\" href=\"./{whole}\" />"), 1);
    for (rest, _) in &links {
        joined = joined.replacen(rest, "", 1);
    }
    let target = dir.join(whole);
    std::fs::write(&target, css).map_err(|error| Trouble::file("write", &target, &error))?;
    std::fs::write(&page, joined).map_err(|error| Trouble::file("write", &page, &error))
}

/// Every stylesheet link as it stands in the page, and the file it names; minified or not.
fn stylesheets(html: &str) -> Vec<(&str, &str)> {
    let tags = html.match_indices("<link").filter_map(|(at, _)| {
        let tag = html.get(at..)?;
        tag.get(..=tag.find('>')?)
    });
    tags.filter(|tag| value(tag, "rel") == Some("stylesheet"))
        .filter_map(|tag| Some((tag, value(tag, "href")?.trim_start_matches("./"))))
        .collect()
}

/// The value of an attribute, in quotes or bare.
fn value<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let (_, rest) = tag.split_once(&format!(" {name}="))?;
    match rest.strip_prefix('"') {
        Some(quoted) => quoted.split('"').next(),
        None => rest.split([' ', '>']).next(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn joins_in_order_and_leaves_other_links_alone() {
        let dir = std::env::temp_dir().join(format!("panward-bundle-{}", std::process::id()));
        std::fs::create_dir_all(&dir).unwrap();
        for (name, rule) in [("b-1.css", "b{}"), ("a-2.css", "a{}")] {
            std::fs::write(dir.join(name), rule).unwrap();
        }
        let icon = "<link href=icons/pan.svg rel=icon>";
        let html =
            format!("{icon}<link href=./b-1.css rel=stylesheet><p>\n<link rel=\"stylesheet\" href=\"./a-2.css\" />");
        std::fs::write(dir.join("index.html"), html).unwrap();
        bundle(&dir).unwrap();

        let html = std::fs::read_to_string(dir.join("index.html")).unwrap();
        let links = stylesheets(&html);
        assert_eq!(links.len(), 1, "{html}");
        assert!(html.starts_with(icon) && html.ends_with("<p>\n"), "{html}");
        assert_eq!(std::fs::read_to_string(dir.join(links[0].1)).unwrap(), "b{}a{}");
        assert_eq!(std::fs::read_dir(&dir).unwrap().count(), 2);
        std::fs::remove_dir_all(&dir).unwrap();
    }
}
