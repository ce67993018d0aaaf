//! First start, set-up and Today: titles, labels and standing lines.

pub mod add;
pub mod care;
pub mod day;
pub mod job;
pub mod log;

use super::Lang;
use super::format::{self, count};

/// A title, button or line of first start, set-up or Today.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Screen {
    /// The app's name.
    AppName,
    /// First start: the demo.
    StartDemo,
    /// First start: one's own kitchen.
    StartSetUp,
    /// First start: read a file.
    StartImport,
    /// Leave the demo.
    LeaveDemo,
    /// Today.
    Today,
    /// Begin a job.
    Begin,
    /// Go on with an open job.
    Resume,
    /// What is due.
    Due,
    /// Nothing is due.
    NothingDue,
    /// A pan never filtered.
    NeverFiltered,
    /// An unanswered day.
    LastNight,
    /// A lock-up left open.
    LookOwed,
    /// Storage is kept.
    Kept,
    /// Storage may be cleared.
    MayBeCleared,
    /// Storage not asked yet.
    KeptUnknown,
    /// A new version waits.
    UpdateWaiting,
    /// A new version may be taken.
    UpdateReady,
    /// Set-up.
    SetUp,
    /// Field.
    KitchenName,
    /// Field.
    Country,
    /// Field.
    Zone,
    /// Field.
    DayStart,
    /// Field.
    TradingDays,
    /// Field.
    UsualHours,
    /// Field.
    Closing,
    /// Field.
    EmergencyNumber,
    /// Field.
    OilLimit,
    /// Section.
    People,
    /// Field.
    Initials,
    /// Field.
    Adult,
    /// Field.
    SignedOffFor,
    /// Field.
    MaySupervise,
    /// Field.
    SignedOffBy,
    /// A one-person kitchen.
    VouchForMyself,
    /// What one vouches for.
    VouchText,
    /// Section.
    Pans,
    /// Field.
    PanName,
    /// Field.
    FullLitres,
    /// Field.
    MinLitres,
    /// Field.
    Mark,
    /// Help for it.
    MarkHelp,
    /// Field.
    HeatedBy,
    /// Field.
    OffSigns,
    /// Field.
    Fat,
    /// Field.
    KeptFor,
    /// Field.
    FriedInIt,
    /// Field.
    InItNow,
    /// Choice.
    InItFresh,
    /// Choice.
    InItSince,
    /// Choice.
    InItUnknown,
    /// Choice.
    InItNothing,
    /// Field.
    UsualDays,
    /// Field.
    EndSign,
    /// Field.
    Rhythm,
    /// Section.
    Machines,
    /// No machine at all.
    NoMachine,
    /// Field.
    MachineName,
    /// Field.
    OutBy,
    /// Field.
    TankLitres,
    /// Field.
    FreeShare,
    /// Field.
    Heater,
    /// Field.
    TakesSolid,
    /// Field.
    FilterKind,
    /// Help for it.
    WindowHelp,
    /// Field.
    Target,
    /// Field.
    RinseMax,
    /// Field.
    RinseMin,
    /// Field.
    FilterOrder,
    /// Help for it.
    SwitchWordsHelp,
    /// Field.
    HasHeld,
    /// Section.
    Instruments,
    /// Field.
    Measures,
    /// Button.
    Next,
    /// Button.
    Back,
    /// Button.
    Finish,
    /// A field that may stay empty.
    Optional,
    /// Heading of the cautions.
    Cautions,
}

/// The words of a [`Screen`].
#[must_use]
pub const fn screen(what: Screen, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Screen::AppName => "Panward",
        Screen::StartDemo => "Look round with a demo kitchen",
        Screen::StartSetUp => "Set up my kitchen",
        Screen::StartImport => "Bring my log from another phone",
        Screen::LeaveDemo => "Leave the demo and delete it",
        Screen::Today => "Today",
        Screen::Begin => "Begin",
        Screen::Resume => "Go on with it",
        Screen::Due => "Due today",
        Screen::NothingDue => "Nothing due",
        Screen::NeverFiltered => "never filtered here",
        Screen::LastNight => "Last night: which pans?",
        Screen::LookOwed => "Scraps were left out warm. What did the look find?",
        Screen::Kept => "This phone will not clear the log by itself. A lost phone is a lost log: export",
        Screen::MayBeCleared => "This phone may clear the log when it is short of space: export often",
        Screen::KeptUnknown => "Whether this phone keeps the log is asked after your first entry",
        Screen::UpdateWaiting => "A new version waits until no job is open",
        Screen::UpdateReady => "A new version is here: touch to take it",
        Screen::SetUp => "Set up",
        Screen::KitchenName => "Name of the kitchen",
        Screen::Country => "Country",
        Screen::Zone => "Time zone",
        Screen::DayStart => "A trading day starts at",
        Screen::TradingDays => "Trading days",
        Screen::UsualHours => "Usual hours hot a day",
        Screen::Closing => "Service ends at",
        Screen::EmergencyNumber => "Emergency number",
        Screen::OilLimit => "Limit for oil in use",
        Screen::People => "People",
        Screen::Initials => "Initials",
        Screen::Adult => "Eighteen or over",
        Screen::SignedOffFor => "Signed off for",
        Screen::MaySupervise => "May stand beside a starter",
        Screen::SignedOffBy => "Signed off by",
        Screen::VouchForMyself => "I work alone and vouch for myself",
        Screen::VouchText => "I am over eighteen, know this machine's manual, and have run it safely before.",
        Screen::Pans => "Pans",
        Screen::PanName => "Name or number of the pan",
        Screen::FullLitres => "Litres when full",
        Screen::MinLitres => "Least litres it may be heated with",
        Screen::Mark => "What is its lowest mark?",
        Screen::MarkHelp => {
            "A line in the wall, or a finger above the thermostat bulb: say it so that anybody finds it."
        }
        Screen::HeatedBy => "Heated by",
        Screen::OffSigns => "Two signs that the heat is off",
        Screen::Fat => "Fat",
        Screen::KeptFor => "Kept for",
        Screen::FriedInIt => "Fried in it",
        Screen::InItNow => "In it now",
        Screen::InItFresh => "Fresh oil today",
        Screen::InItSince => "Oil that was fresh on",
        Screen::InItUnknown => "Oil of unknown age",
        Screen::InItNothing => "Nothing",
        Screen::UsualDays => "Days you usually get from its oil",
        Screen::EndSign => "What tells you it is finished?",
        Screen::Rhythm => "Filtered every how many days",
        Screen::Machines => "Filter machines and hand kits",
        Screen::NoMachine => "None yet",
        Screen::MachineName => "What you call it",
        Screen::OutBy => "How does oil leave the pan?",
        Screen::TankLitres => "Litres of its tank",
        Screen::FreeShare => "Share of the tank kept free",
        Screen::Heater => "Its heater, in watts",
        Screen::TakesSolid => "Its manual takes solid fat without a heater",
        Screen::FilterKind => "How does oil pass its filter?",
        Screen::WindowHelp => "From its manual. 100–180 °C is offered: a default of this guide. Never above 200 °C.",
        Screen::Target => "Best oil temperature",
        Screen::RinseMax => "Longest rinse, seconds",
        Screen::RinseMin => "Shortest rinse, seconds",
        Screen::FilterOrder => "Its filters, in the order they go in",
        Screen::SwitchWordsHelp => "Type the words on your machine: the guide speaks those.",
        Screen::HasHeld => "What has it met since its last strip-clean?",
        Screen::Instruments => "Instruments",
        Screen::Measures => "Measures",
        Screen::Next => "Next",
        Screen::Back => "Back",
        Screen::Finish => "Ready for today",
        Screen::Optional => "may stay empty",
        Screen::Cautions => "Before you rely on it",
    }
}

/// What the guide is and is not; shown at first start and in the office.
#[must_use]
pub const fn cautions(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "The maker's manual of your pan and your machine comes first, then local codes. Where they are stricter, they win.",
        "Gas, wiring, fixed fire systems and repairs belong to licensed engineers.",
        "Nothing here replaces training by a person who knows your kitchen, or their sign-off.",
        "The guide sees nothing and moves nothing. It asks what you see, and believes you.",
        "Days left are a forecast. They are no proof that food is safe or lawful.",
        "Keep what to do in a fire, and the steps, on paper too: a phone can fail.",
    ]
}

/// When a pan was last filtered: "filtered today", "filtered 3 days ago".
#[must_use]
pub fn last_filtered(days_ago: u32, lang: Lang) -> String {
    let Lang::En = lang;
    match days_ago {
        0 => "filtered today".to_owned(),
        1 => "filtered yesterday".to_owned(),
        n => format!("filtered {} ago", count(n, "day", "days")),
    }
}

/// How long ago the last export was made: "Last export: 23 days ago".
#[must_use]
pub fn last_export(days_ago: Option<u32>, lang: Lang) -> String {
    let Lang::En = lang;
    match days_ago {
        None => "Never exported: this phone holds the only copy".to_owned(),
        Some(0) => "Last export: today".to_owned(),
        Some(1) => "Last export: yesterday".to_owned(),
        Some(n) => format!("Last export: {} ago", count(n, "day", "days")),
    }
}

/// Several pans are due: "Pans 1, 2 and 4 are due".
#[must_use]
pub fn pans_due(pans: &[String], lang: Lang) -> String {
    let Lang::En = lang;
    match pans {
        [] => screen(Screen::NothingDue, lang).to_owned(),
        [only] => format!("Pan {only} is due"),
        many => format!("Pans {} are due", format::list(many, lang)),
    }
}
