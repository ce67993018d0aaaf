//! An exported log, read as an officer's tool would read it: plain JSON.

use crate::fault::{Outcome, fault};
use serde_json::Value;

/// An exported log.
pub struct Export {
    text: String,
    whole: Value,
}

impl Export {
    /// Reads it.
    pub fn read(text: String) -> Outcome<Self> {
        let whole: Value = serde_json::from_str(&text)?;
        if whole["panward_export"]["format"] != "panward-log" {
            return fault("the file downloaded is no export of a log");
        }
        Ok(Self { text, whole })
    }

    /// The bytes without the moment they were made at, which is the only thing that may differ.
    #[must_use]
    pub fn without_moment(&self) -> String {
        let made = self.whole["panward_export"]["made_at"].as_str().unwrap_or_default();
        self.text.replacen(made, "", 1)
    }

    /// The file as it is.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The entries, in the order of the file.
    #[must_use]
    pub fn entries(&self) -> &[Value] {
        self.whole["entries"].as_array().map_or(&[], Vec::as_slice)
    }

    /// The entries after the first `n`.
    #[must_use]
    pub fn since(&self, n: usize) -> &[Value] {
        self.entries().get(n..).unwrap_or_default()
    }
}

/// Whether somewhere among these entries an item was seen to be so.
#[must_use]
pub fn saw(entries: &[Value], item: &str, word: &str) -> bool {
    times_seen(entries, item, word) > 0
}

/// In how many of these entries an item was seen to be so.
#[must_use]
pub fn times_seen(entries: &[Value], item: &str, word: &str) -> usize {
    entries
        .iter()
        .filter(|entry| entry["body"]["evidence"][item] == word)
        .count()
}
