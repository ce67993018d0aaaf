//! What could not be written: what happened, what is safe, what to do.

use crate::domain::time::Millis;
use crate::store::stamp::{ClockDoubt, Unstamped};
use crate::store::{BadEntry, StoreFault};

use super::{Lang, dates};

/// A trouble in words: what happened, then what is safe and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// What happened.
    pub title: &'static str,
    /// What is safe, and what to do.
    pub text: String,
}

/// The wall clock is not believed: "It is 21:47 on 25 November. Right?"
#[must_use]
pub fn clock(doubt: ClockDoubt, off: impl Fn(Millis) -> i16, lang: Lang) -> Told {
    let Lang::En = lang;
    let (ClockDoubt::Behind { last, wall } | ClockDoubt::FarAhead { last, wall }) = doubt;
    let said = |at| dates::moment(at, off(at), lang);
    let why = match doubt {
        ClockDoubt::Behind { .. } => "The phone's clock stands before the last entry",
        ClockDoubt::FarAhead { .. } => "The phone's clock stands more than a day after the last entry",
    };
    Told {
        title: "Is the clock right?",
        text: format!(
            "It is {} — right? {why}, {}. Nothing is saved yet.",
            said(wall),
            said(last)
        ),
    }
}

/// The answers: the clock is right, or not.
#[must_use]
pub const fn clock_answers(lang: Lang) -> [&'static str; 2] {
    let Lang::En = lang;
    ["Yes, save it", "No, I set the clock first"]
}

/// It cannot be dated so.
#[must_use]
pub fn stamp(why: &Unstamped, off: impl Fn(Millis) -> i16, lang: Lang) -> Told {
    let Lang::En = lang;
    match why {
        Unstamped::Clock(doubt) => clock(*doubt, off, lang),
        Unstamped::Future { at, .. } => Told {
            title: "That is yet to come",
            text: format!(
                "Nothing was saved. {} has not been yet: look at the date, then save again.",
                dates::moment(*at, off(*at), lang)
            ),
        },
        Unstamped::DatedEvidence => Told {
            title: "Not saved",
            text: "What is seen is saved as it is seen, with no other date. Nothing was changed.".to_owned(),
        },
        Unstamped::NoNumbers => Told {
            title: "This log is full",
            text: "Nothing was saved. What is logged is safe: make the export file, then start a new log.".to_owned(),
        },
    }
}

/// It cannot be put in words the store keeps.
#[must_use]
pub fn bad_entry(why: &BadEntry, lang: Lang) -> Told {
    let Lang::En = lang;
    Told {
        title: "Not saved",
        text: format!("The log would not read it back ({why}). What is logged is safe. Type it otherwise."),
    }
}

/// The log could not be opened at a start.
#[must_use]
pub fn cannot_open(why: &StoreFault, lang: Lang) -> Told {
    let Lang::En = lang;
    Told {
        title: "The log cannot be opened",
        text: format!(
            "{}. Nothing was changed. Close other windows of this app, then start it again. Fire and Burn still work.",
            sentence(why)
        ),
    }
}

/// What the store says, as a sentence begins.
fn sentence(why: &StoreFault) -> String {
    super::format::first_up(&why.to_string())
}

/// The store did not take it.
#[must_use]
pub fn store(why: &StoreFault, lang: Lang) -> Told {
    let Lang::En = lang;
    let (title, text) = match why {
        StoreFault::Full => (
            "No room left on this phone",
            "Nothing of this was saved; what is logged is safe. Free some space, then try again: it is kept here."
                .to_owned(),
        ),
        StoreFault::Blocked => (
            "This browser keeps nothing",
            "Nothing of this was saved. Private windows and some settings forbid it: open the app in a normal window."
                .to_owned(),
        ),
        StoreFault::Closed => (
            "The log was closed",
            "Another window or the phone closed it. What is logged is safe. Close other windows, then try again: it is kept here."
                .to_owned(),
        ),
        StoreFault::OtherWindow => (
            "Open in another window",
            "Nothing of this was saved; what is logged is safe. Go on in the other window, or close it: this one takes over by itself."
                .to_owned(),
        ),
        StoreFault::Taken => (
            "Another window wrote first",
            "Nothing of this was saved; what is logged is safe. Close other windows, start this one again, then log it."
                .to_owned(),
        ),
        StoreFault::Damaged { why } => (
            "The log is damaged",
            format!("Nothing was written over it ({why}). Make the export file now; Fire and Burn still work."),
        ),
        StoreFault::Failed { why } => (
            "Could not save",
            format!("Nothing of this was saved; what is logged is safe ({why}). Try again: it is kept here."),
        ),
    };
    Told { title, text }
}

/// This window only shows the log, because another one has it: what to know and do.
#[must_use]
pub fn second_window(lang: Lang) -> Told {
    let Lang::En = lang;
    Told {
        title: "Open in another window",
        text: "This one only shows what stood when it was opened, and saves nothing. Close the other: this one takes over."
            .to_owned(),
    }
}

/// The guide said no and its own screen is not there to say why.
#[must_use]
pub fn guide(lang: Lang) -> Told {
    let Lang::En = lang;
    Told {
        title: "The guide did not go on",
        text: "Nothing moved. Go to the job and look at what it asks.".to_owned(),
    }
}

/// A button of the trouble.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Way {
    /// The same once more.
    Again,
    /// Leave it.
    Leave,
}

/// Its words.
#[must_use]
pub const fn way(way: Way, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match way {
        Way::Again => "Try again",
        Way::Leave => "Leave it for now",
    }
}
