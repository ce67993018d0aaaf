//! What the screens of a job say around their steps: beginning, choosing, pausing, leaving.

use crate::domain::facts::run::Left;
use crate::domain::facts::setup::{Claim, OutBy};
use crate::domain::fat::Fat;
use crate::domain::units::Temp;
use crate::words::screens::last_filtered;
use crate::words::today::{Line, line};
use crate::words::{Lang, format, oil, run, setup};

/// Fixed words of a job's screens.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum JobSay {
    /// Opens a filter job.
    BeginFilter,
    /// What a filter job is, before it is opened.
    BeginFilterText,
    /// Back to Today.
    ToToday,
    /// Back to where one was.
    Back,
    /// A starter needs somebody beside them.
    WhoBeside,
    /// Somebody else takes over.
    AnotherPerson,
    /// Where a wrong name is put right.
    WrongName,
    /// The answers of a group one by one.
    OneByOne,
    /// The heater is on now.
    HeaterIsOn,
    /// The heater is off now.
    HeaterIsOff,
    /// Not now.
    NotNow,
    /// What the machine is doing while the wait runs.
    Warming,
    /// The machine is warm.
    MachineWarm,
    /// Warm, heater off.
    StillWarm,
    /// Plays the test sound once more.
    PlayAgain,
    /// The screen on which the next pan is chosen.
    Choose,
    /// Over the options of the next run.
    NextRun,
    /// An optional part.
    WithRinse,
    /// An optional part.
    WithWipe,
    /// An optional part.
    WithSamples,
    /// Every item asked, although the short form is open.
    LongForm,
    /// Goes over to putting away.
    PutAway,
    /// Ends a job in which nothing was begun.
    EndJob,
    /// Goes on with Ready, or with putting away, before oil is brought back.
    BringLater,
    /// Nothing runs: what STOP shows then.
    Paused,
    /// What it says.
    PausedText,
    /// Leaves the job open.
    LeaveOpen,
    /// The heading over the faults.
    WhatIsWrong,
    /// The pan is not filtered after all.
    GiveUp,
    /// The oil stays out of the pan.
    LeaveOut,
    /// Solid fat stays in the pan to set.
    LeaveSet,
    /// The heater is to be switched on, as the machine's manual says.
    SwitchHeaterOn,
    /// The machine's line was not run empty after a fat that sets.
    SetInLine,
    /// What would clear a refusal.
    Clears,
    /// What to do meanwhile.
    Meanwhile,
    /// Who can change a limit.
    WhoCan,
    /// Not as it must be.
    NotYet,
    /// Closes a sheet.
    Close,
    /// Above the source of a why.
    Source,
    /// The oil of a pan stands outside it.
    ComesBack,
    /// Parked oil can come into a pan that has none.
    TakesParked,
}

/// The words of a [`JobSay`].
#[must_use]
pub const fn say(what: JobSay, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        JobSay::BeginFilter => "Begin the filter job",
        JobSay::BeginFilterText => {
            "Ready first, then pan by pan, then put away. Follow the machine's manual; where it is stricter, it wins."
        }
        JobSay::ToToday => "Back to Today",
        JobSay::Back => "Back",
        JobSay::WhoBeside => "Who stands beside?",
        JobSay::AnotherPerson => "Another person",
        JobSay::WrongName => "Wrong name? STOP, then Another person.",
        JobSay::OneByOne => "One by one",
        JobSay::HeaterIsOn => "Heater is on",
        JobSay::HeaterIsOff => "Heater is off",
        JobSay::NotNow => "Not now",
        JobSay::Warming => "until the machine is warm",
        JobSay::MachineWarm => "Machine warm",
        JobSay::StillWarm => "warm, heater off",
        JobSay::PlayAgain => "Play it again",
        JobSay::Choose => "Which pan is next?",
        JobSay::NextRun => "With the next pan",
        JobSay::WithRinse => "Rinse",
        JobSay::WithWipe => "Wipe hot",
        JobSay::WithSamples => "Samples",
        JobSay::LongForm => "Every item",
        JobSay::PutAway => "Put away",
        JobSay::EndJob => "End the job",
        JobSay::BringLater => "Not yet, go on",
        JobSay::Paused => "Stopped",
        JobSay::PausedText => "No pan is in hand. Go on when you are ready; the job stays open.",
        JobSay::LeaveOpen => "Leave the job open",
        JobSay::WhatIsWrong => "What is wrong?",
        JobSay::GiveUp => "Not this pan after all",
        JobSay::LeaveOut => "Leave it like this",
        JobSay::LeaveSet => "Leave it to set",
        JobSay::SwitchHeaterOn => "Switch the machine's heater on.",
        JobSay::SetInLine => "Set in line: melt before use.",
        JobSay::Clears => "What clears it",
        JobSay::Meanwhile => "Meanwhile",
        JobSay::WhoCan => "Who can change it",
        JobSay::NotYet => "Not yet",
        JobSay::Close => "Close",
        JobSay::Source => "Source",
        JobSay::ComesBack => "its oil comes back",
        JobSay::TakesParked => "empty: bring the parked oil into it",
    }
}

/// How long until the machine is warm: "Warm in 14:38".
#[must_use]
pub fn warm_in(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Warm in {}", format::clock(seconds))
}

/// That a pan of solid fat had better wait: "Wait: machine warm in 9:14".
#[must_use]
pub fn waits_for_machine(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Wait: machine warm in {}", format::clock(seconds))
}

/// How long it stays warm with its heater off: "Warm for 19:20".
#[must_use]
pub fn warm_for(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Warm for {}", format::clock(seconds))
}

/// The line under a pan in the list: its fat, whether it is due or filtered today, how it was left, whether its oil
/// stands outside it.
#[must_use]
pub fn pan_line(
    fat: Fat,
    today: Option<Today>,
    done: Option<Left>,
    comes_back: bool,
    bare: bool,
    lang: Lang,
) -> String {
    let mut said = oil::fat_name(fat, lang).to_owned();
    let today = today.map(|today| match today {
        Today::Due => line(Line::Due, lang).to_owned(),
        Today::Filtered => last_filtered(0, lang),
    });
    let left = if bare {
        Some(say(JobSay::TakesParked, lang).to_owned())
    } else if comes_back {
        Some(say(JobSay::ComesBack, lang).to_owned())
    } else {
        done.map(|left| run::left_name(left, lang).to_ascii_lowercase())
    };
    for more in [today, left].into_iter().flatten() {
        said.push_str(", ");
        said.push_str(&more);
    }
    said
}

/// A machine as a choice: its name, and whose oil stands in it: "Blue: holds oil of pan 2".
#[must_use]
pub fn machine_holding(name: &str, pans: &[&str], lang: Lang) -> String {
    let Lang::En = lang;
    match pans {
        [] => name.to_owned(),
        [pan] => format!("{name}: holds oil of {}", run::pan_name(pan, lang)),
        pans => format!("{name}: holds oil of pans {}", pans.join(", ")),
    }
}

/// Where a pan stands today, where that is to be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Today {
    /// It is due.
    Due,
    /// It was filtered today.
    Filtered,
}

/// What the pan's own label must say: "Pan 1: Rapeseed. Kept for: gluten-free."
#[must_use]
pub fn label_says(pan: &str, fat: Fat, claims: &[Claim], lang: Lang) -> String {
    let Lang::En = lang;
    let mut said = format!("{}: {}.", run::pan_title(pan, lang), oil::fat_name(fat, lang));
    for (n, claim) in claims.iter().enumerate() {
        said.push_str(if n == 0 { " Kept for: " } else { ", " });
        said.push_str(&setup::claim_name(claim.what, lang).to_ascii_lowercase());
    }
    if !claims.is_empty() {
        said.push('.');
    }
    said
}

/// How much must stand above the mark, as nobody sees litres on a wall: so many percent of the way from the mark up to
/// full.
#[must_use]
pub fn above_mark(percent: u32, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Enough, hot as it is: about {percent}{}% of the way from the mark to full. It sinks as it cools.",
        format::NBSP
    )
}

/// A draw that ended early, said beside the look at what is left.
#[must_use]
pub fn short_draw(seconds: i64, from_s: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Only {}: a pan mostly takes {} or more. Look well.",
        format::length(seconds, lang),
        format::length(i64::from(from_s), lang)
    )
}

/// The window a reading must lie in, and what it aims at.
#[must_use]
pub fn window(low: Temp, high: Temp, target: Temp, lang: Lang) -> String {
    let Lang::En = lang;
    if low <= Temp::MIN {
        return format!("At most {}", format::temp(high));
    }
    format!(
        "{}, about {} is best",
        format::temp_range(low, high),
        format::temp(target)
    )
}

/// What stands beside the pan, under the drawing.
#[must_use]
pub const fn vessel_name(out_by: OutBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match out_by {
        OutBy::Hand => "container",
        OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn => "machine",
    }
}

/// The words on the keys of a pad: take back a figure, clear, change the sign, the decimal point.
#[must_use]
pub const fn pad_keys(lang: Lang) -> [&'static str; 4] {
    let Lang::En = lang;
    ["Back", "Clear", "Plus or minus", "."]
}

/// How long a rinse may be: "30 s at most".
#[must_use]
pub fn rinse_most(seconds: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} at most", format::length(i64::from(seconds), lang))
}

/// How long oil has been moving, once that is too long: "0:33 in all".
#[must_use]
pub fn in_all(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} in all", format::clock(seconds))
}

/// How long a rinse must be: "60 s at least".
#[must_use]
pub fn rinse_least(seconds: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} at least", format::length(i64::from(seconds), lang))
}
