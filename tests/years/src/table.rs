//! The native table: what the fold takes, what each view takes, and both again after one entry more.
#![expect(
    clippy::disallowed_methods,
    reason = "a table of measured times, never built for the browser"
)]

use std::time::Instant;

use panward::domain::time::Millis;

use crate::log::ten_years;
use crate::timed::{fold, moment, one_more};
use crate::views::{Look, VIEWS};

/// Prints it, and what reading the same export with `serde_json` takes.
///
/// # Errors
/// Why the log could not be written or folded.
pub fn print() -> Result<(), String> {
    let years = ten_years()?;
    let at = moment(&years);
    println!(
        "{} entries, {} bytes of export",
        years.loaded.records.len(),
        years.text.len()
    );
    let begun = Instant::now();
    let mut kitchen = fold(years.loaded, &at)?;
    took("the kitchen opens", begun);
    let day_before = at.wall.plus(-24 * Millis::HOUR);
    let more = [
        ("", None),
        ("one entry more", None),
        ("one dated back a day", Some(day_before)),
    ];
    for (what, dated) in more {
        if !what.is_empty() {
            let begun = Instant::now();
            one_more(&mut kitchen, &at, dated)?;
            took(what, begun);
        }
        let begun = Instant::now();
        let look = Look::at(&kitchen, &at);
        took("the scene", begun);
        for (name, view) in VIEWS {
            let begun = Instant::now();
            let found = view(&look);
            took(&format!("{name}: {found}"), begun);
        }
    }
    let begun = Instant::now();
    serde_json::from_str::<serde_json::Value>(&years.text).map_err(|why| why.to_string())?;
    took("beside it, serde_json reads and drops the export", begun);
    Ok(())
}

fn took(what: &str, begun: Instant) {
    println!("{:>10.2} ms  {what}", begun.elapsed().as_secs_f64() * 1e3);
}
