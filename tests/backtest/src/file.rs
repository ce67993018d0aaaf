//! Reading a file of rows: a wrong header, column count or number refuses it whole, with line and column.

use csv::{Position, ReaderBuilder, StringRecord};

use crate::row::{Row, fat_named};

/// The header, word for word.
pub const HEADER: [&str; 9] = [
    "fill",
    "fat",
    "volume_l",
    "day",
    "fry_hours",
    "frying_c",
    "topup_l",
    "tpc",
    "instrument",
];

/// Why a file is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// The line, from 1.
    pub line: u64,
    /// The column, from 1.
    pub column: usize,
    /// What is wrong there.
    pub why: String,
}

impl std::fmt::Display for Refused {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "line {}, column {}: {}", self.line, self.column, self.why)
    }
}

/// The rows of a file, in its order.
///
/// # Errors
/// The first place where the header, the number of columns or a number is wrong.
pub fn read(text: &str) -> Result<Vec<Row>, Refused> {
    let mut reader = ReaderBuilder::new()
        .flexible(true)
        .has_headers(false)
        .from_reader(text.as_bytes());
    let mut lines = Lines {
        text: text.as_bytes(),
        byte: 0,
        line: 1,
    };
    let mut rows = Vec::new();
    let mut header_seen = false;
    for record in reader.records() {
        let record = record.map_err(|error| Refused {
            line: lines.at(error.position()),
            column: 1,
            why: error.to_string(),
        })?;
        let line = lines.at(record.position());
        if header_seen {
            rows.push(row(&record, line)?);
        } else {
            header(&record, line)?;
            header_seen = true;
        }
    }
    if header_seen {
        Ok(rows)
    } else {
        Err(Refused {
            line: 1,
            column: 1,
            why: format!("the file is empty; it begins with {}", HEADER.join(",")),
        })
    }
}

/// Counts the lines a reader has come to. Its own count leaves out what is left of a line's end, and blank lines
/// before the record.
struct Lines<'a> {
    text: &'a [u8],
    byte: usize,
    line: u64,
}

impl Lines<'_> {
    /// The line a record begins on, from 1; positions must come in their order.
    fn at(&mut self, position: Option<&Position>) -> u64 {
        let start = position
            .and_then(|p| usize::try_from(p.byte()).ok())
            .unwrap_or_default();
        while let Some(byte) = self.text.get(self.byte) {
            if self.byte >= start && !matches!(byte, b'\r' | b'\n') {
                break;
            }
            self.line += u64::from(*byte == b'\n');
            self.byte += 1;
        }
        self.line
    }
}

fn header(record: &StringRecord, line: u64) -> Result<(), Refused> {
    for (at, wanted) in HEADER.iter().enumerate() {
        let found = record
            .get(at)
            .unwrap_or("nothing")
            .trim_start_matches('\u{feff}')
            .trim();
        if found != *wanted {
            return Err(Refused {
                line,
                column: at + 1,
                why: format!("the header says {found}, not {wanted}"),
            });
        }
    }
    columns(record, line)
}

fn columns(record: &StringRecord, line: u64) -> Result<(), Refused> {
    if record.len() == HEADER.len() {
        return Ok(());
    }
    Err(Refused {
        line,
        column: record.len().min(HEADER.len()) + 1,
        why: format!("{} columns, not {}", record.len(), HEADER.len()),
    })
}

fn row(record: &StringRecord, line: u64) -> Result<Row, Refused> {
    columns(record, line)?;
    let text = |at: usize| record.get(at).unwrap_or_default().trim();
    let number = |at: usize| {
        let written = text(at);
        if written.is_empty() {
            return Ok(None);
        }
        let refused = |_| Refused {
            line,
            column: at + 1,
            why: format!("{} is {written:?}, which is no number", HEADER[at]),
        };
        written.parse::<f64>().map_err(refused).and_then(|value| {
            value.is_finite().then_some(Some(value)).ok_or_else(|| Refused {
                line,
                column: at + 1,
                why: format!("{} is {written:?}, which is no number anybody measures", HEADER[at]),
            })
        })
    };
    let needed = |at: usize| {
        number(at)?.ok_or_else(|| Refused {
            line,
            column: at + 1,
            why: format!("{} is blank", HEADER[at]),
        })
    };
    if text(0).is_empty() {
        return Err(Refused {
            line,
            column: 1,
            why: "fill is blank".to_owned(),
        });
    }
    Ok(Row {
        line,
        fill: text(0).to_owned(),
        fat: fat_named(text(1)),
        volume_l: needed(2)?,
        day: needed(3)?,
        fry_hours: number(4)?,
        frying_c: number(5)?,
        topup_l: number(6)?,
        tpc: number(7)?,
        instrument: text(8).to_owned(),
    })
}
