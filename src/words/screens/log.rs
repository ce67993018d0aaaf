//! The log screen: its filter, its marks and its way to put an entry right.

use crate::words::{Lang, format};

/// A label of the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Log {
    /// The filter.
    Filter,
    /// No filter.
    AllPans,
    /// Unfolds the next lines.
    More,
    /// Mark of a voided line.
    Voided,
    /// Mark of an amended line.
    PutRight,
    /// Mark of a guided run.
    Guided,
    /// As it was written.
    Before,
    /// As it stands.
    Now,
    /// What was said of it later.
    Corrections,
    /// Evidence stays.
    EvidenceStays,
    /// The field for a note on it.
    AddNote,
    /// Saves the note.
    SaveNote,
    /// The field for the reason.
    WhyPutRight,
    /// The field for the number typed anew.
    RightNumber,
    /// The field for words typed anew.
    RightWords,
    /// Saves the correction.
    SaveRight,
    /// Folds a line's ways away.
    Close,
    /// A newer app wrote it.
    NewerText,
    /// Heading of the lines nobody can read.
    Unreadable,
    /// What that means.
    UnreadableText,
    /// Nothing under this filter.
    NothingHere,
}

/// Its words.
#[must_use]
pub const fn log(what: Log, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Log::Filter => "Show",
        Log::AllPans => "All",
        Log::More => "Show more",
        Log::Voided => "did not happen",
        Log::PutRight => "put right",
        Log::Guided => "guided",
        Log::Before => "As it was written",
        Log::Now => "As it stands",
        Log::Corrections => "Said of it later",
        Log::EvidenceStays => "What was seen stays as it was seen. You can add a note beside it.",
        Log::AddNote => "Note",
        Log::SaveNote => "Save the note",
        Log::WhyPutRight => "Why? In a few words",
        Log::RightNumber => "The right number",
        Log::RightWords => "The right words",
        Log::SaveRight => "Save what is right",
        Log::Close => "Leave it as it is",
        Log::NewerText => "A newer version of the app wrote this. It is kept as it is, and exported.",
        Log::Unreadable => "Lines that cannot be read",
        Log::UnreadableText => "They are kept as they are, counted, and exported. Nothing was dropped.",
        Log::NothingHere => "Nothing logged for this pan yet.",
    }
}

/// How many entries of a run lie folded: "12 entries".
#[must_use]
pub fn entries(n: usize, lang: Lang) -> String {
    let Lang::En = lang;
    format::count(u32::try_from(n).unwrap_or(u32::MAX), "entry", "entries")
}

/// A line that cannot be read: "No. 14: broken envelope".
#[must_use]
pub fn unreadable(seq: u32, why: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("No.{}{seq}: {why}", format::NBSP)
}

/// When an entry was written, where that is long after it happened.
#[must_use]
pub fn written(moment: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("written {moment}")
}
