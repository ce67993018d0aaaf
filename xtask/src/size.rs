//! The size gate: what a first visit costs, every file of the site at brotli's best.

use crate::finish::walk;
use crate::trouble::{Outcome, Trouble};
use std::path::Path;

/// Bytes all of `dist/` is to weigh at most, compressed. Not reached yet; see [`CEILING`].
pub const GATE: usize = 250 * 1024;
/// Bytes all of `dist/` may weigh, compressed, or the build fails: what it weighs now. Lowered whenever it is made
/// lighter, until it meets [`GATE`] and goes; raised only for whole jobs that were not there before, with what they
/// weigh said in DEVELOPERS.md.
pub const CEILING: usize = 479 * 1024;
/// Bytes it should weigh.
pub const GOAL: usize = 150 * 1024;

/// What the site weighs, file by file.
pub struct Weight {
    /// Name, bytes as they are, bytes compressed; heaviest first.
    pub files: Vec<(String, usize, usize)>,
}

impl Weight {
    /// Compressed bytes of all files together.
    #[must_use]
    pub fn total(&self) -> usize {
        self.files.iter().map(|(_, _, packed)| packed).sum()
    }

    /// A line a file, and the sum beside gate and goal.
    #[must_use]
    pub fn lines(&self) -> Vec<String> {
        let kib = |bytes: usize| bytes as f64 / 1024.0;
        let mut lines: Vec<String> = self
            .files
            .iter()
            .map(|(name, raw, packed)| format!("{:>8.1} KiB br {:>9.1} KiB raw  {name}", kib(*packed), kib(*raw)))
            .collect();
        lines.push(format!(
            "{:>8.1} KiB br in all; fails over {:.0}, is to come to {:.0}, goal {:.0}",
            kib(self.total()),
            kib(CEILING),
            kib(GATE),
            kib(GOAL)
        ));
        lines
    }
}

/// Weighs every file in `dir` but source maps.
pub fn weigh(dir: &Path) -> Outcome<Weight> {
    let mut files = Vec::new();
    for (name, path) in walk(dir)? {
        if name.ends_with(".map") || name.starts_with(".stage/") {
            continue;
        }
        let raw = std::fs::read(&path).map_err(|error| Trouble::file("read", &path, &error))?;
        files.push((
            name,
            raw.len(),
            packed_len(&raw).map_err(|error| Trouble::file("compress", &path, &error))?,
        ));
    }
    files.sort_by_key(|(_, _, packed)| std::cmp::Reverse(*packed));
    Ok(Weight { files })
}

fn packed_len(raw: &[u8]) -> std::io::Result<usize> {
    let params = brotli::enc::BrotliEncoderParams {
        quality: 11,
        lgwin: 22,
        ..Default::default()
    };
    let mut packed = Vec::new();
    brotli::BrotliCompress(&mut &raw[..], &mut packed, &params)?;
    Ok(packed.len())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn what_repeats_packs_and_what_is_heaviest_comes_first() {
        let dir = std::env::temp_dir().join(format!("panward-size-{}", std::process::id()));
        std::fs::create_dir_all(&dir).unwrap();
        std::fs::write(dir.join("a.txt"), "oil ".repeat(5_000)).unwrap();
        let noise: Vec<u8> = (0..2_000u32)
            .map(|n| (n.wrapping_mul(2_654_435_761) >> 13) as u8)
            .collect();
        std::fs::write(dir.join("b.bin"), noise).unwrap();
        std::fs::write(dir.join("b.js.map"), "not counted").unwrap();
        let weight = weigh(&dir).unwrap();
        std::fs::remove_dir_all(&dir).unwrap();
        let names: Vec<&str> = weight.files.iter().map(|(name, _, _)| name.as_str()).collect();
        assert_eq!(names, ["b.bin", "a.txt"]);
        assert!(weight.files[1].2 < 200, "{}", weight.files[1].2);
    }
}
