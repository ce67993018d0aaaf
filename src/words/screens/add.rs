//! The quick-entry screen: its buttons, questions and the reasons it offers.

use crate::domain::facts::oil::Vessel;
use crate::domain::facts::setup::Measures;
use crate::domain::ledger::{Book, Ledger};
use crate::domain::quick::{After, AgeSaid, Form, Gauge, Gauged, Kind, Other};
use crate::domain::units::{Minutes, Unit};
use crate::words::log::quick_name;
use crate::words::{Lang, format, run, setup};

/// A label of the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Add {
    /// Above the kinds.
    What,
    /// Back to the kinds.
    OtherKind,
    /// Which sign.
    Sign,
    /// Into which pan or machine, or out of which.
    Into,
    /// Which promise.
    Promise,
    /// What follows an oil change.
    After,
    /// How old the oil is.
    Age,
    /// The day it was fresh on.
    FreshOn,
    /// Unfolds what is seldom needed.
    More,
    /// The day it happened.
    Date,
    /// The time it happened.
    Time,
    /// Help for both.
    NowByDefault,
    /// Grams in a block.
    BlockSize,
    /// Litres in a drum.
    DrumSize,
    /// Litres in a bag.
    BagSize,
    /// Help for both.
    PackHelp,
    /// Keeps a pack's size.
    KeepSize,
    /// In one's own words.
    OwnWords,
    /// The same where it may stay empty.
    OwnWordsOptional,
    /// The words of a note.
    Note,
    /// The pan is not there.
    NoPan,
    /// How much is taken to have come out at an oil change.
    ComesOut,
}

/// Its words.
#[must_use]
pub const fn add(what: Add, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Add::What => "What happened?",
        Add::OtherKind => "Something else",
        Add::Sign => "Sign",
        Add::Into => "Where to, or out of what?",
        Add::Promise => "Which promise?",
        Add::After => "And then?",
        Add::Age => "How old is the oil?",
        Add::FreshOn => "It was fresh on",
        Add::More => "Earlier, or more to say",
        Add::Date => "Day it happened",
        Add::Time => "Time it happened",
        Add::NowByDefault => "Leave both empty for now.",
        Add::BlockSize => "What does one block weigh?",
        Add::DrumSize => "What does one drum hold?",
        Add::BagSize => "What does one bag hold?",
        Add::PackHelp => "It is printed on the pack. This phone remembers it.",
        Add::KeepSize => "Remember it",
        Add::OwnWords => "In your own words",
        Add::OwnWordsOptional => "In your own words (may stay empty)",
        Add::Note => "Note",
        Add::NoPan => "This pan is not set up here.",
        Add::ComesOut => "What the log says is in the pan is taken to have come out.",
    }
}

/// The title: the kind, once it is chosen.
#[must_use]
pub fn title(kind: Option<Kind>, pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    match kind {
        Some(kind) => quick_name(kind, lang).to_owned(),
        None => run::pan_title(pan, lang),
    }
}

/// The unit beside the number of a form.
#[must_use]
pub fn unit(form: &Form, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match form.kind {
        Kind::Service => "h",
        Kind::Reading => form.gauge.map_or("", |gauge| gauge_unit(gauge.what)),
        Kind::TopUp | Kind::PartChange | Kind::OilChange | Kind::Fill | Kind::Move => match form.unit {
            Unit::Litres => "L",
            Unit::Kilograms => "kg",
            Unit::Block => "blocks",
            Unit::Drum => "drums",
            Unit::Bag => "bags",
        },
        Kind::Sign | Kind::Note | Kind::ClaimLost => "",
    }
}

/// The unit of a reading.
#[must_use]
pub const fn gauge_unit(what: Gauged) -> &'static str {
    match what {
        Gauged::Polar | Gauged::Ffa => "%",
        Gauged::Acid => "mg/g",
        Gauged::Temp | Gauged::Smoke => "°C",
    }
}

/// What is read and with what: "Polar compounds, %" or the instrument's own name with it.
#[must_use]
pub fn gauge(gauge: Gauge, book: &Book, lang: Lang) -> String {
    let Lang::En = lang;
    let what = match gauge.what {
        Gauged::Polar => "Polar compounds",
        Gauged::Ffa => "Free fatty acids",
        Gauged::Acid => "Acid value",
        Gauged::Temp => "Oil temperature",
        Gauged::Smoke => "Smokes from",
    };
    match gauge.with.and_then(|id| book.instrument(id)) {
        Some(tool) if tool.measures == Measures::Temp => format!("{what}, {}", tool.name),
        Some(tool) => format!("{}: {}", tool.name, setup::measures_name(tool.measures, lang)),
        None => what.to_owned(),
    }
}

/// The keys of the number pad: take it away, all of it, minus, the point.
#[must_use]
pub const fn pad_keys(lang: Lang) -> [&'static str; 4] {
    let Lang::En = lang;
    ["Back", "Clear", "Minus", "."]
}

/// What follows an oil change.
#[must_use]
pub const fn after(after: After, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match after {
        After::Fresh => "Fresh oil in",
        After::Empty => "Pan stands EMPTY",
    }
}

/// How old oil is that goes in.
#[must_use]
pub const fn age(age: AgeSaid, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match age {
        AgeSaid::Fresh => "Fresh",
        AgeSaid::Since => "Fresh on a day",
        AgeSaid::Unknown => "Not known",
    }
}

/// The reasons offered in one touch, the most frequent first; one's own words replace them.
#[must_use]
pub const fn reasons(kind: Kind, lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    match kind {
        Kind::OilChange => &[
            "At its end",
            "Reading at the limit",
            "Smoke, foam or smell",
            "Planned day",
        ],
        Kind::ClaimLost => &["Other food went in", "Shared a machine", "Other oil went in"],
        Kind::TopUp
        | Kind::Service
        | Kind::Reading
        | Kind::Sign
        | Kind::PartChange
        | Kind::Fill
        | Kind::Move
        | Kind::Note => &[],
    }
}

/// Another pan or a machine, as a choice: "Pan 2", "Park in Blue", "Out of Blue".
#[must_use]
pub fn other(ledger: &Ledger, other: Other, lang: Lang) -> String {
    let Lang::En = lang;
    let machine = |id| ledger.book.machine(id).map_or("?", |m| m.name.as_str());
    match other {
        Other::Into(Vessel::Pan(pan)) => run::pan_title(ledger.book.pan(pan).map_or("?", |p| p.name.as_str()), lang),
        Other::Into(Vessel::Machine(id)) => format!("Park in {}", machine(id)),
        Other::OutOf(id) => format!("Out of {}", machine(id)),
    }
}

/// Said once it is on disk: "Saved: Top-up, pan 2: 4 L".
#[must_use]
pub fn saved(line: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: {line}", run::say(run::Say::Saved, lang))
}

/// Why an entry taken back at once did not happen.
#[must_use]
pub const fn taken_back(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Taken back at once"
}

/// The hours of a usual day.
#[must_use]
pub fn usual_hours(minutes: Minutes, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Your usual: {}", format::hours(minutes, lang))
}
