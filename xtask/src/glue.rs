//! Short names between the module and its glue. Those that wasm-bindgen gives carry a digest each, in both files: 5 KiB
//! that no packing makes smaller. And scripts without what only people read in them.

use crate::finish::walk;
use crate::trouble::{Outcome, Trouble};
use std::collections::BTreeMap;
use std::path::Path;

/// What the names of wasm-bindgen begin with. No other name is touched.
const OURS: &str = "__wb";
const IMPORTS: u8 = 2;

/// Shortens the names by which the module in `dir` asks for its glue's functions, in both files.
pub fn shorten(dir: &Path) -> Outcome {
    for (name, module) in walk(dir)? {
        let Some(stem) = name.strip_suffix("_bg.wasm") else {
            continue;
        };
        let glue = dir.join(format!("{stem}.js"));
        let bytes = std::fs::read(&module).map_err(|error| Trouble::file("read", &module, &error))?;
        let script = std::fs::read_to_string(&glue).map_err(|error| Trouble::file("read", &glue, &error))?;
        let (bytes, short) = renamed(&bytes)
            .ok_or_else(|| Trouble::new(format!("{name} is not built as expected: its imports cannot be read.")))?;
        let script = with_names(&script, &short);
        std::fs::write(&module, bytes).map_err(|error| Trouble::file("write", &module, &error))?;
        std::fs::write(&glue, script).map_err(|error| Trouble::file("write", &glue, &error))?;
    }
    Ok(())
}

/// Takes out of the scripts in `dir` what only people read.
pub fn tidy(dir: &Path) -> Outcome {
    for (name, path) in walk(dir)? {
        if name.ends_with(".js") {
            let script = std::fs::read_to_string(&path).map_err(|error| Trouble::file("read", &path, &error))?;
            std::fs::write(&path, tidied(&script)).map_err(|error| Trouble::file("write", &path, &error))?;
        }
    }
    Ok(())
}

/// Short names by long ones.
type Names = BTreeMap<String, String>;

/// The module with short names in its import section (WebAssembly core specification 2.0, 5.5.5), and these names.
/// `None` where the bytes are no module.
fn renamed(module: &[u8]) -> Option<(Vec<u8>, Names)> {
    let (head, rest) = module.split_at_checked(8)?;
    let mut out = head.to_vec();
    let mut short = Names::new();
    let mut from = Reader(rest);
    while let Some(id) = from.byte() {
        let len = from.number()?;
        let body = from.bytes(len)?;
        out.push(id);
        if id == IMPORTS {
            let body = imports(Reader(body), &mut short)?;
            put_named(&mut out, &body);
        } else {
            put_named(&mut out, body);
        }
    }
    Some((out, short))
}

fn imports(mut from: Reader<'_>, short: &mut Names) -> Option<Vec<u8>> {
    let mut out = Vec::new();
    let count = from.number()?;
    put_number(&mut out, count);
    for _ in 0..count {
        let module = from.named()?;
        let name = std::str::from_utf8(from.named()?).ok()?;
        put_named(&mut out, module);
        if name.starts_with(OURS) {
            let next = format!("i{}", short.len());
            let short = short.entry(name.to_owned()).or_insert(next);
            put_named(&mut out, short.as_bytes());
        } else {
            put_named(&mut out, name.as_bytes());
        }
        out.extend_from_slice(from.kind()?);
    }
    Some(out)
}

/// The bytes of a module, read from the front.
struct Reader<'a>(&'a [u8]);

impl<'a> Reader<'a> {
    fn byte(&mut self) -> Option<u8> {
        let (byte, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*byte)
    }

    fn bytes(&mut self, len: usize) -> Option<&'a [u8]> {
        let (bytes, rest) = self.0.split_at_checked(len)?;
        self.0 = rest;
        Some(bytes)
    }

    /// An unsigned number, seven bits a byte.
    fn number(&mut self) -> Option<usize> {
        let mut number = 0;
        for place in (0..35).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << place;
            if byte < 0x80 {
                return Some(number);
            }
        }
        None
    }

    /// Bytes with their number before them.
    fn named(&mut self) -> Option<&'a [u8]> {
        let len = self.number()?;
        self.bytes(len)
    }

    /// What kind of thing is imported, as it stands there.
    fn kind(&mut self) -> Option<&'a [u8]> {
        let all = self.0;
        match self.byte()? {
            0 => drop(self.number()?),
            1 => {
                self.byte()?;
                self.limits()?;
            }
            2 => self.limits()?,
            3 => drop(self.bytes(2)?),
            _ => return None,
        }
        all.get(..all.len() - self.0.len())
    }

    fn limits(&mut self) -> Option<()> {
        let has_most = self.byte()? & 1 == 1;
        self.number()?;
        if has_most {
            self.number()?;
        }
        Some(())
    }
}

fn put_number(out: &mut Vec<u8>, mut number: usize) {
    while number >= 0x80 {
        out.push((number & 0x7f) as u8 | 0x80);
        number >>= 7;
    }
    out.push(number as u8);
}

fn put_named(out: &mut Vec<u8>, bytes: &[u8]) {
    put_number(out, bytes.len());
    out.extend_from_slice(bytes);
}

/// The script with each of these names in its short form, wherever it stands as a whole word.
fn with_names(script: &str, short: &Names) -> String {
    let part = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '$';
    let mut out = String::with_capacity(script.len());
    let mut rest = script;
    while let Some(at) = rest.find(part) {
        let (before, word) = rest.split_at(at);
        let (word, after) = word.split_at(word.find(|c| !part(c)).unwrap_or(word.len()));
        out.push_str(before);
        out.push_str(short.get(word).map_or(word, String::as_str));
        rest = after;
    }
    out + rest
}

/// The script without indentation and whole-line comments, line by line; as it is, where a text in it goes over a line.
#[must_use]
pub fn tidied(script: &str) -> String {
    if script.lines().any(|line| line.matches('`').count() % 2 == 1) {
        return script.to_owned();
    }
    let lines = script.lines().map(str::trim_start);
    let kept = lines.filter(|line| !line.is_empty() && !line.starts_with("//"));
    kept.fold(String::with_capacity(script.len()), |out, line| out + line + "\n")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// A type section, then imports: two functions of one name, one of another's, a memory and a global; then nothing.
    fn module(first: &str) -> Vec<u8> {
        let mut body = vec![5];
        for (name, kind) in [
            (first, &[0, 0][..]),
            ("other", &[0, 1]),
            (first, &[0, 2]),
            ("memory", &[2, 1, 17, 0x80, 0x80, 1]),
            ("base", &[3, 0x7f, 0]),
        ] {
            put_named(&mut body, b"./app_bg.js");
            put_named(&mut body, name.as_bytes());
            body.extend_from_slice(kind);
        }
        let mut module = b"\0asm\x01\0\0\0\x01\x01\0".to_vec();
        module.push(IMPORTS);
        put_named(&mut module, &body);
        module.extend_from_slice(&[7, 1, 0]);
        module
    }

    #[test]
    fn only_names_of_the_glue_change_and_the_rest_stays_as_it_was() {
        let long = format!("__wbg_set_{}", "0".repeat(200));
        let (short, names) = renamed(&module(&long)).unwrap();
        assert_eq!(short, module("i0"));
        assert_eq!(names, Names::from([(long.clone(), "i0".to_owned())]));
        let script = format!("  {long}: function() {{ // not this\n    // but this\n\n  x{long}, {long}$;\n}},\n");
        let tidy = tidied(&with_names(&script, &names));
        assert_eq!(tidy, format!("i0: function() {{ // not this\nx{long}, {long}$;\n}},\n"));
    }

    #[test]
    fn what_cannot_be_read_is_not_guessed_at() {
        let whole = module("__wbg_set");
        assert_eq!(renamed(&whole[..20]), None);
        let mut odd = whole;
        odd[36] = 9;
        assert_eq!(renamed(&odd), None, "a kind of import nobody knows");
        let over_lines = "  const words = `a\n  b`;\n";
        assert_eq!(tidied(over_lines), over_lines);
    }
}
