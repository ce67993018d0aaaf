//! What the screens of light-up and lock-up say around their steps.

use crate::domain::day_jobs::{HEAP_COLD_DC, Stage};
use crate::domain::facts::job::JobKind;
use crate::domain::units::Temp;
use crate::words::{Lang, format};

/// Fixed words of light-up and lock-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DaySay {
    /// Above the names: who does it.
    WhoDoesIt,
    /// The list of pans to light.
    WhichPan,
    /// Ends the light-up.
    EndLight,
    /// There are no scraps.
    NoScraps,
    /// They are still warm.
    StillWarm,
    /// By probe after all.
    ProbeThem,
    /// The wait for the second probe.
    SecondProbe,
    /// Over that wait, until it is due.
    WaitThenProbe,
    /// Who looks next.
    WhoLooks,
    /// When.
    WhenLooks,
    /// Heat off under the pan in hand.
    HeatOff,
    /// Other pans first.
    OtherPans,
    /// Nothing to light in this pan.
    DoNotLight,
    /// What STOP says when no heat is in hand.
    PausedText,
}

/// The words of a [`DaySay`].
#[must_use]
pub const fn say(what: DaySay, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        DaySay::WhoDoesIt => "Who does it, and stays?",
        DaySay::WhichPan => "Which pan is next?",
        DaySay::EndLight => "End the light-up",
        DaySay::NoScraps => "No scraps tonight",
        DaySay::StillWarm => "They are still warm",
        DaySay::ProbeThem => "Probe them instead",
        DaySay::SecondProbe => "until the second probe",
        DaySay::WaitThenProbe => "Wait, then probe again.",
        DaySay::WhoLooks => "Who looks next?",
        DaySay::WhenLooks => "When?",
        DaySay::HeatOff => "Turn this pan's heat off",
        DaySay::OtherPans => "Other pans",
        DaySay::DoNotLight => "do not light",
        DaySay::PausedText => {
            "Leave everything as it is: heat off where you are not standing. Go on when you are ready; the job stays open."
        }
    }
}

/// What the job is, before it is opened.
#[must_use]
pub const fn begin_text(job: JobKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match job {
        JobKind::LightUp => "Pan by pan: look, read the level, then heat. Light by the maker's instructions.",
        JobKind::Filter => "Ready first, then pan by pan, then put away.",
        JobKind::OilChange => "Old oil out cold or shut in the machine, pan wiped and dry, fresh in.",
        JobKind::BoilOut => "Empty pan, water above the mark, low heat, and somebody who stays.",
        JobKind::LockUp => "Scraps proven cold, floor dry, pans off and lidded. Every trading day, filtered or not.",
    }
}

/// Where the lighting of a pan stands, under its name.
#[must_use]
pub const fn stage_line(stage: Stage, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match stage {
        Stage::Look => "not lit yet",
        Stage::LowTag => "stands low: hang its tag",
        Stage::MeltLow => "set: low heat next",
        Stage::Melting => "melting on low heat",
        Stage::MeltFull => "all liquid: read the level",
        Stage::On => "ready for full heat",
        Stage::Lit => "lit",
        Stage::MakeSafe => "see its heat off",
        Stage::LeftLow => "left low, tagged",
    }
}

/// When a melting pan is looked at next: "look in 4:10", "look now, 0:20 late".
#[must_use]
pub fn next_look(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    if seconds > 0 {
        format!("look in {}", format::clock(seconds))
    } else {
        format!("look now, {} late", format::clock(-seconds))
    }
}

/// How long until the second probe: "Probe again in 9:12".
#[must_use]
pub fn probe_in(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Probe again in {}", format::clock(seconds))
}

/// What a probe of the heap must read: "Under 40 °C counts as cold".
#[must_use]
pub fn heap_limit(lang: Lang) -> String {
    let Lang::En = lang;
    format!("Under {} counts as cold", degrees(HEAP_COLD_DC))
}

/// Why a reading of the heap did not count, and what to do: too warm, or risen since the first.
#[must_use]
pub fn heap_warm(dc: i32, lang: Lang) -> String {
    let Lang::En = lang;
    let read = degrees(dc);
    let wrong = if dc < HEAP_COLD_DC {
        format!("Warmer than before: {read}.")
    } else {
        format!("Still hot: {read}. Cold is under {}.", degrees(HEAP_COLD_DC))
    };
    format!("{wrong} Spread thin outdoors, or wait.")
}

fn degrees(dc: i32) -> String {
    let temp = i16::try_from(dc).ok().and_then(Temp::from_dc);
    temp.map_or_else(|| dc.to_string(), format::temp)
}

/// A time from now at which somebody looks: "in 30 min".
#[must_use]
pub fn in_minutes(minutes: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("in {}", format::length(minutes * 60, lang))
}
