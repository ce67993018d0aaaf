//! What every stored line keeps to, whatever its kind: one line, whole numbers only, no nulls, not deep.

use thiserror::Error;

/// The deepest nesting a line may have. Version 1 needs five; the rest is room for kinds to come.
const DEPTH: u32 = 32;

/// How a line departs from the stored form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
pub enum Odd {
    /// It breaks the line.
    #[error("a line break inside an entry")]
    LineBreak,
    /// Objects and lists stand too deep in each other.
    #[error("nested deeper than an entry can be")]
    Deep,
    /// A number that is not whole.
    #[error("a number that is not whole")]
    NotWhole,
    /// A null; what is absent is left out.
    #[error("a null; what is absent is left out")]
    Null,
}

/// Looks at every byte outside strings. Says nothing about whether the line is JSON: the reader does.
pub fn check(line: &str) -> Result<(), Odd> {
    let mut depth = 0_u32;
    let mut in_string = false;
    let mut escaped = false;
    let mut before = b' ';
    for byte in line.bytes() {
        if byte == b'\n' || byte == b'\r' {
            return Err(Odd::LineBreak);
        }
        if in_string {
            in_string = escaped || byte != b'"';
            escaped = !escaped && byte == b'\\';
            continue;
        }
        match byte {
            b'"' => in_string = true,
            b'{' | b'[' => depth += 1,
            b'}' | b']' => depth = depth.saturating_sub(1),
            b'.' => return Err(Odd::NotWhole),
            b'e' | b'E' if before.is_ascii_digit() => return Err(Odd::NotWhole),
            b'n' => return Err(Odd::Null),
            _ => {}
        }
        if depth > DEPTH {
            return Err(Odd::Deep);
        }
        before = byte;
    }
    Ok(())
}
