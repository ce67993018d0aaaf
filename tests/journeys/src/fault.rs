//! What ends a journey early, in words.

use std::fmt;

/// Why a journey failed.
#[derive(Debug)]
pub struct Fault(pub(crate) String);

/// What every step of a journey returns.
pub type Outcome<T = ()> = Result<T, Fault>;

/// A failed journey, told by `words`.
pub fn fault<T>(words: impl Into<String>) -> Outcome<T> {
    Err(Fault(words.into()))
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Fault {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}
