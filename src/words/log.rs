//! The quick entries of the log and the office: names of forms, fields, export and import.

use super::Lang;

/// A quick entry: at most four touches and a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quick {
    /// A measured number.
    Reading,
    /// Fresh oil added.
    TopUp,
    /// A service worked.
    Service,
    /// Something seen, smelt or tasted.
    Sign,
    /// Some out, fresh in.
    PartChange,
    /// All out, fresh in.
    OilChange,
    /// From one pan to another.
    Move,
    /// In words.
    Note,
    /// A promise lost.
    ClaimLost,
    /// A promise restored.
    ClaimRestored,
}

impl Quick {
    /// Every quick entry, the most frequent first.
    pub const ALL: &'static [Self] = &[
        Self::TopUp,
        Self::Service,
        Self::Reading,
        Self::Sign,
        Self::PartChange,
        Self::OilChange,
        Self::Move,
        Self::Note,
        Self::ClaimLost,
        Self::ClaimRestored,
    ];
}

/// The button that begins it.
#[must_use]
pub const fn quick_name(quick: Quick, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match quick {
        Quick::Reading => "Reading",
        Quick::TopUp => "Top-up",
        Quick::Service => "Service worked",
        Quick::Sign => "Sign",
        Quick::PartChange => "Part-change",
        Quick::OilChange => "Oil change",
        Quick::Move => "Move oil",
        Quick::Note => "Note",
        Quick::ClaimLost => "Kept-for lost",
        Quick::ClaimRestored => "Kept-for restored",
    }
}

/// The question its form asks first.
#[must_use]
pub const fn quick_question(quick: Quick, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match quick {
        Quick::Reading => "What does the instrument read?",
        Quick::TopUp => "How much went in?",
        Quick::Service => "How long was it hot, and how busy?",
        Quick::Sign => "What do you notice?",
        Quick::PartChange => "How much out, how much fresh in?",
        Quick::OilChange => "Why is it changed, and what goes in?",
        Quick::Move => "From which pan into which, and how much?",
        Quick::Note => "What should be known?",
        Quick::ClaimLost => "Which promise, and what happened?",
        Quick::ClaimRestored => "Which promise, and on what basis?",
    }
}

/// What oil that leaves a pan needs said; `None` where nothing does.
#[must_use]
pub const fn quick_caution(quick: Quick, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    match quick {
        Quick::OilChange | Quick::PartChange | Quick::Move => {
            Some("By hand only at 40 °C or under, by probe. Heat stays off until the oil is above the mark.")
        }
        Quick::TopUp => Some("Dry container, low and slow. Cut blocks small."),
        Quick::ClaimLost => Some("Tell the counter first, then log it."),
        Quick::Reading | Quick::Service | Quick::Sign | Quick::Note | Quick::ClaimRestored => None,
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
    /// Field: hours hot.
    HoursHot,
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
    /// Mark: corrected later.
    Corrected,
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
        Office::HoursHot => "Hours hot",
        Office::HowBusy => "How busy?",
        Office::OilTemp => "Oil temperature",
        Office::NotUsed => "Pan stood unused",
        Office::Save => "Save",
        Office::Cancel => "Leave it",
        Office::TakeBack => "Take it back",
        Office::CorrectIt => "Put it right",
        Office::Void => "It did not happen",
        Office::Corrected => "put right later",
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
