//! The quick entries of the log and the office: names of forms, fields, export and import.

use crate::domain::quick::Kind;

use super::Lang;

/// The button that begins it.
#[must_use]
pub const fn quick_name(quick: Kind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match quick {
        Kind::Reading => "Reading",
        Kind::TopUp => "Top-up",
        Kind::Service => "Service worked",
        Kind::Sign => "Sign",
        Kind::PartChange => "Part-change",
        Kind::OilChange => "Oil change",
        Kind::Fill => "Oil in",
        Kind::Move => "Move oil",
        Kind::Note => "Note",
        Kind::ClaimLost => "Kept-for lost",
    }
}

/// The question its form asks first.
#[must_use]
pub const fn quick_question(quick: Kind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match quick {
        Kind::Reading => "What does the instrument read?",
        Kind::TopUp => "How much went in?",
        Kind::Service => "How long was it hot, and how busy?",
        Kind::Sign => "What do you notice?",
        Kind::PartChange => "How much went out, and as much fresh in?",
        Kind::OilChange => "Why is it changed, and what goes in?",
        Kind::Fill => "What goes into the empty pan?",
        Kind::Move => "Which way, and how much?",
        Kind::Note => "What should be known?",
        Kind::ClaimLost => "Which promise, and what happened?",
    }
}

/// What oil that leaves a pan needs said; `None` where nothing does.
#[must_use]
pub const fn quick_caution(quick: Kind, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    match quick {
        Kind::OilChange | Kind::PartChange | Kind::Move => {
            Some("By hand only at 40 °C or under, by probe. Heat stays off until the oil is above the mark.")
        }
        Kind::Fill => Some("Pan dry and clean. Heat stays off until the oil is above the mark."),
        Kind::TopUp => Some("Dry container, low and slow. Cut blocks small."),
        Kind::ClaimLost => Some("Tell the counter first, then log it."),
        Kind::Reading | Kind::Service | Kind::Sign | Kind::Note => None,
    }
}

/// A field, a button or a line of the log and the office.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Office {
    /// Screen title.
    Log,
    /// Empty log.
    LogEmpty,
    /// Field: which pan.
    WhichPan,
    /// Field: how much.
    HowMuch,
    /// Field: counted in.
    CountedIn,
    /// Field: which fat.
    WhichFat,
    /// Field: batch.
    Batch,
    /// Field: when.
    When,
    /// Field: why.
    Why,
    /// Field: who.
    Who,
    /// Field: with which instrument.
    Instrument,
    /// Field: how busy.
    HowBusy,
    /// Field: temperature of the oil.
    OilTemp,
    /// Not used in a service.
    NotUsed,
    /// Save.
    Save,
    /// Leave without saving.
    Cancel,
    /// Take the last entry back.
    TakeBack,
    /// Correct an entry.
    CorrectIt,
    /// It did not happen.
    Void,
    /// Mark: written late.
    Late,
    /// Mark: written by a newer app.
    Newer,
    /// Make the file.
    Export,
    /// What it is.
    ExportText,
    /// It was made.
    Exported,
    /// Read a file.
    Import,
    /// What it does.
    ImportText,
    /// It was taken.
    Imported,
    /// This phone has entries.
    ImportRefusedEntries,
    /// A demo or practice file.
    ImportRefusedDemo,
    /// The file is damaged.
    ImportRefusedBroken,
    /// Strip-clean a machine.
    StripClean,
    /// What that means.
    StripCleanText,
    /// The office.
    Office,
}

/// The words of an [`Office`].
#[must_use]
pub const fn office(what: Office, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Office::Log => "Log",
        Office::LogEmpty => "Nothing logged yet. The first entry starts here.",
        Office::WhichPan => "Which pan?",
        Office::HowMuch => "How much?",
        Office::CountedIn => "Counted in",
        Office::WhichFat => "Which fat?",
        Office::Batch => "Batch on the container",
        Office::When => "When?",
        Office::Why => "Why?",
        Office::Who => "Who?",
        Office::Instrument => "With which instrument?",
        Office::HowBusy => "How busy?",
        Office::OilTemp => "Oil temperature",
        Office::NotUsed => "Pan stood unused",
        Office::Save => "Save",
        Office::Cancel => "Leave it",
        Office::TakeBack => "Take it back",
        Office::CorrectIt => "Put it right",
        Office::Void => "It did not happen",
        Office::Late => "written late",
        Office::Newer => "from a newer app: kept as it is",
        Office::Export => "Make the export file",
        Office::ExportText => "Everything logged, as one JSON file. It leaves this phone only if you send it.",
        Office::Exported => "The file is made. Look where your phone keeps downloads.",
        Office::Import => "Read an export file",
        Office::ImportText => "Onto an empty phone: the whole log comes back, entry by entry.",
        Office::Imported => "All entries are in.",
        Office::ImportRefusedEntries => {
            "This phone already has entries, so the file was left alone and nothing changed. Read it on an empty phone."
        }
        Office::ImportRefusedDemo => {
            "This is a demo or practice file. A real kitchen takes none of it; nothing changed."
        }
        Office::ImportRefusedBroken => {
            "This file is damaged, so none of it was taken and nothing changed. Make the export again."
        }
        Office::StripClean => "Strip-clean of the machine",
        Office::StripCleanText => {
            "Tank, hose, pump and seat taken apart and cleaned by the maker's manual, then seen dry. Only then is what it has met forgotten."
        }
        Office::Office => "Office",
    }
}

/// The seconds in which the last entry can be taken back: "Take it back (8)".
#[must_use]
pub fn take_back_in(seconds: u32, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} ({seconds})", office(Office::TakeBack, lang))
}

/// Where and why a file was refused: "Line 14: count is wrong."
#[must_use]
pub fn refused_at(line: usize, reason: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Line {line}: {reason}")
}
