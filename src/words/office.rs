//! The owner's page: its lists, the export and import, how safe the log is, updates, how the numbers come about.

use super::Lang;
use super::format::count;

/// A title, button or line of the office.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// The owner's page.
    Title,
    /// Section.
    AtThisPhone,
    /// Section.
    Limits,
    /// Section.
    TheLog,
    /// Section.
    Storage,
    /// Nobody can say.
    RoomUnknown,
    /// Ask the phone again.
    AskAgain,
    /// Section.
    Version,
    /// Look for a new version.
    LookForUpdate,
    /// Section.
    Numbers,
    /// Not in use.
    OutOfUse,
    /// How was it cleaned.
    CleanedHow,
    /// Strip-cleaned.
    Cleaned,
    /// Nothing of this yet.
    NoneYet,
    /// A starter.
    Starter,
    /// Vouches for themselves.
    Vouches,
    /// The file could not be made.
    ExportFailed,
    /// The file could not be read.
    ReadFailed,
    /// The log could not be written.
    WriteFailed,
    /// Choose the file.
    ChooseFile,
    /// Go on after an import.
    GoOn,
}

/// The words of a [`Line`].
#[must_use]
pub const fn line(what: Line, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Line::Title => "Office",
        Line::AtThisPhone => "Who stands at this phone?",
        Line::Limits => "Limits in force",
        Line::TheLog => "The log as a file",
        Line::Storage => "Is the log safe?",
        Line::RoomUnknown => "This browser does not say how much room is left.",
        Line::AskAgain => "Ask the phone to keep it",
        Line::Version => "Version",
        Line::LookForUpdate => "Look for a new version",
        Line::Numbers => "How the numbers come about",
        Line::OutOfUse => "out of use",
        Line::CleanedHow => "How was it cleaned?",
        Line::Cleaned => "Strip-cleaned",
        Line::NoneYet => "None yet.",
        Line::Starter => "starter",
        Line::Vouches => "vouches for themselves",
        Line::ExportFailed => "No file was made. The log is untouched; try again.",
        Line::ReadFailed => "The file could not be read. Nothing changed; choose it again.",
        Line::WriteFailed => "Nothing was taken in. The file is unchanged; try again.",
        Line::ChooseFile => "Choose the export file",
        Line::GoOn => "Go on to Today",
    }
}

/// How the numbers come about, a paragraph each, with sources.
#[must_use]
pub const fn numbers(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "Days left are trading days until this oil is likely to pass your limit. They come from your readings, top-ups and hours hot; without a reading, from your usual days and published rates.",
        "Between two readings polar compounds rise with the hours hot, faster the hotter the oil (as published frying trials found; they are named with the source of this app).",
        "A top-up dilutes. Filtering takes out crumb, which keeps oil from burning, but moves neither polar compounds nor acidity.",
        "Smoke, foam that stays or an off smell mean change, whatever the number says (Centre for Food Safety, Hong Kong, 2019/2020).",
        "The span is meant to be right eight times in ten. It is a forecast and proves nothing to anybody.",
        "Temperatures for emptying: 40 °C by hand, a machine's own window else (HSE Catering Information Sheet 17). Never above 200 °C.",
    ]
}

/// How much room the log takes: "1 MB used of 512 MB".
#[must_use]
pub fn room(used: u64, allowed: u64, lang: Lang) -> String {
    let Lang::En = lang;
    let mb = |bytes: u64| bytes.div_ceil(1_000_000);
    format!("{} MB used of {} MB", mb(used), mb(allowed))
}

/// Lines of the log nobody can read.
#[must_use]
pub fn unreadable(lines: usize, lang: Lang) -> String {
    let Lang::En = lang;
    let lines = count(u32::try_from(lines).unwrap_or(u32::MAX), "line", "lines");
    format!("{lines} of the log cannot be read. They are kept as they are and go into the export.")
}

/// How much came in: "1,240 entries came in."
#[must_use]
pub fn imported(entries: usize, unreadable_lines: usize, lang: Lang) -> String {
    let Lang::En = lang;
    let entries = count(u32::try_from(entries).unwrap_or(u32::MAX), "entry", "entries");
    if unreadable_lines == 0 {
        format!("{entries} came in.")
    } else {
        let lines = count(u32::try_from(unreadable_lines).unwrap_or(u32::MAX), "line", "lines");
        format!("{entries} came in. {lines} in the file could not be read when it was made, and stayed there.")
    }
}

/// The name of an export: "panward-harbour-lane-2026-11-25.json". Only what every phone takes in a file name.
#[must_use]
pub fn file_name(kitchen: &str, day: &str) -> String {
    let mut slug = String::new();
    for c in kitchen.chars() {
        if c.is_ascii_alphanumeric() {
            slug.push(c.to_ascii_lowercase());
        } else if !slug.ends_with('-') && !slug.is_empty() {
            slug.push('-');
        }
    }
    let slug = slug.trim_end_matches('-');
    if slug.is_empty() {
        format!("panward-{day}.json")
    } else {
        format!("panward-{slug}-{day}.json")
    }
}

#[cfg(test)]
mod tests {
    #![expect(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn an_export_is_named_after_kitchen_and_day() {
        let name = |kitchen| file_name(kitchen, "2026-11-25");
        assert_eq!(
            name("Harbour Lane Fish Bar"),
            "panward-harbour-lane-fish-bar-2026-11-25.json"
        );
        assert_eq!(name("  Zoë's / Bar! "), "panward-zo-s-bar-2026-11-25.json");
        assert_eq!(name("魚"), "panward-2026-11-25.json");
    }

    #[test]
    fn room_and_lines_are_counted() {
        assert_eq!(room(1, 512_000_000, Lang::En), "1 MB used of 512 MB");
        let said = imported(2, 1, Lang::En);
        assert!(said.split(['.', '\u{a0}', ' ']).next().unwrap() == "2", "{said}");
        assert!(said.contains("1\u{a0}line in the file"), "{said}");
    }
}
