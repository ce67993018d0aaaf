//! What went wrong, told to the person at the keyboard: one sentence and the way out.

use std::fmt;
use std::path::Path;

/// A failure in words. It is printed as it stands, without a backtrace.
#[derive(Debug)]
pub struct Trouble(String);

/// What every chore returns.
pub type Outcome<T = ()> = Result<T, Trouble>;

impl Trouble {
    /// A failure told by `sentence`, which also names the way out.
    pub fn new(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }

    /// A file or folder that could not be used: `verb` it, as in "read".
    #[must_use]
    pub fn file(verb: &str, path: &Path, error: &std::io::Error) -> Self {
        Self(format!("cannot {verb} {}: {error}.", path.display()))
    }
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Trouble {}
