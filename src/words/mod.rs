//! Every sentence on screen, by key and language. Pure: it knows the domain's words and nothing of pages or storage.
//!
//! The key is an enum of the domain wherever there is one, so the compiler proves that no sentence is missing. Every
//! function takes a [`Lang`] and begins by binding its only variant; a second language turns each of those lines into
//! an error, and the list of errors is the list of what is left to translate.
//!
//! House rules, held by `tests/words.rs`: a step line has at most eight words and begins with what to do; an answer
//! says the state that was seen, never "done"; a question has no negative in it; "hold" is a safety hold and never a
//! grip; nothing claims that the app controls a machine.

pub mod answers;
pub mod cards;
pub mod dates;
pub mod facts;
pub mod faults;
pub mod format;
pub mod forms;
pub mod hazards;
pub mod helper;
pub mod holds;
pub mod kept_for;
pub mod local;
pub mod log;
pub mod log_lines;
pub mod make_safe;
pub mod office;
pub mod oil;
pub mod own_words;
pub mod pan;
pub mod pan_refusals;
pub mod proposed;
pub mod questions;
pub mod quick_refusals;
pub mod refusals;
pub mod rhythm;
pub mod run;
pub mod screens;
pub mod setup;
pub mod steps;
pub mod today;
pub mod trouble;
pub mod what_if;
pub mod whys;
pub mod wrong_days;

/// A language on screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Lang {
    /// English as spoken in the kitchens of the United Kingdom.
    #[default]
    En,
}

impl Lang {
    /// Every language there is.
    pub const ALL: &'static [Self] = &[Self::En];

    /// The BCP 47 tag, for the page's `lang` and for speech.
    #[must_use]
    pub const fn tag(self) -> &'static str {
        match self {
            Self::En => "en-GB",
        }
    }

    /// What the language calls itself.
    #[must_use]
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::En => "English",
        }
    }

    /// The first language of `wanted` (tags such as `en` or `en-GB`) that there is; English when there is none.
    #[must_use]
    pub fn best(wanted: &[String]) -> Self {
        let primary = |tag: &str| tag.split('-').next().unwrap_or_default().to_ascii_lowercase();
        wanted
            .iter()
            .find_map(|want| Self::ALL.iter().copied().find(|l| primary(l.tag()) == primary(want)))
            .unwrap_or_default()
    }
}
