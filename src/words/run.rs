//! What a job says around its steps: the standing lines, clocks, resuming, the look again, endings and grades.

use crate::domain::facts::job::{Grade, JobKind};
use crate::domain::facts::run::{Form, Heat, Left, Place, Pump};
use crate::domain::facts::setup::Route;
use crate::domain::time::Millis;

use super::Lang;
use super::format;

/// The standing line of a pan whose oil is out: on every screen until the oil is back above the mark.
#[must_use]
pub fn pan_empty(pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("PAN {pan} EMPTY, DO NOT LIGHT")
}

/// The standing line of a pan with cleaning water in it: on every screen until it is drained.
#[must_use]
pub fn pan_water(pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("PAN {pan}: WATER, NO OIL IN IT")
}

/// A pan by name inside a sentence.
#[must_use]
pub fn pan_name(pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("pan {pan}")
}

/// A pan by name as a heading.
#[must_use]
pub fn pan_title(pan: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Pan {pan}")
}

/// Where one is: "Pump out · 4 of 9".
#[must_use]
pub fn place_in_block(block: &str, n: usize, of: usize, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{block} · {n} of {of}")
}

/// Words that stand on many screens of a job and carry nothing of its state.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Say {
    /// The one control that stops the run.
    Stop,
    /// Its full name.
    StopMakeSafe,
    /// The button that opens a hold once all is answered.
    GoOn,
    /// Why it still sleeps.
    AnswerAllFirst,
    /// Heading of the make-safe screen.
    MakeSafe,
    /// The button that leaves it, once safe.
    SafeNow,
    /// Why and source, on request.
    Why,
    /// A button that reports that something is wrong.
    SomethingWrong,
    /// What that screen says.
    ResumeText,
    /// While the pump runs.
    PumpRuns,
    /// Over the expected time.
    PumpLong,
    /// Rinse: stop now.
    RinseStopNow,
    /// Rinse on a recirculating filter: its least time is over.
    RinseEnough,
    /// Five minutes without an answer.
    AreYouThere,
    /// Sound cannot start before a touch.
    SoundOff,
    /// Wake lock refused.
    ScreenMaySleep,
    /// Accept a typed number.
    Accept,
    /// A number that looks mistyped.
    NumberAgain,
    /// Saved, after the store says so.
    Saved,
    /// Practice.
    Practice,
    /// The app was closed while a wait ran.
    ClosedIsSilent,
}

/// The words of a [`Say`].
#[must_use]
pub const fn say(what: Say, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Say::Stop => "STOP",
        Say::StopMakeSafe => "Stop, make safe",
        Say::GoOn => "Go on",
        Say::AnswerAllFirst => "Answer all first",
        Say::MakeSafe => "Make safe now",
        Say::SafeNow => "It is safe",
        Say::Why => "Why?",
        Say::SomethingWrong => "Something is wrong",
        Say::ResumeText => "The guide was away. It takes nothing as it was: say what you see now.",
        Say::PumpRuns => "Watch the oil. Press after your hand has switched off.",
        Say::PumpLong => "Longer than usual. Switch off and look.",
        Say::RinseStopNow => "Rinse over: pump off",
        Say::RinseEnough => "Long enough. Stop when you are ready.",
        Say::AreYouThere => "Five minutes without an answer. Look again before you go on.",
        Say::SoundOff => "Sound is off until you touch",
        Say::ScreenMaySleep => "The screen may go dark: set the phone to stay on",
        Say::Accept => "That is it",
        Say::NumberAgain => "Unusual. Read it once more and type it again.",
        Say::Saved => "Saved",
        Say::Practice => "Practice: pans cold, nothing is logged",
        Say::ClosedIsSilent => "A closed app stays silent. Look at the kitchen clock too.",
    }
}

/// A wait that ended while nobody looked: "ended 3 min 10 s ago".
#[must_use]
pub fn ended_ago(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("ended {} ago", format::length(seconds, lang))
}

/// When a wait ends, so that the kitchen clock is a second one: "until 21:47".
#[must_use]
pub fn until(at: Millis, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    format!("until {}", format::time_of_day(at, off_min))
}

/// Both clocks disagree, or the page died: "Is 21:47 the right time?".
#[must_use]
pub fn clock_question(at: Millis, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Is {} the right time?", format::time_of_day(at, off_min))
}

/// The two answers to [`clock_question`] and what each leads to.
#[must_use]
pub const fn clock_answers(lang: Lang) -> [&'static str; 2] {
    let Lang::En = lang;
    ["Yes, that is the time", "No, start the wait again"]
}

/// The expectation beside a running clock: "usually 60–90 s".
#[must_use]
pub fn expected(from_s: u16, to_s: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "usually {}{}s",
        format::range(u32::from(from_s), u32::from(to_s)),
        format::NBSP
    )
}

/// Which job it is.
#[must_use]
pub const fn job_name(job: JobKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match job {
        JobKind::LightUp => "Light-up",
        JobKind::Filter => "Filter job",
        JobKind::LockUp => "Lock-up",
        JobKind::OilChange => "Oil change",
        JobKind::BoilOut => "Boil-out",
    }
}

/// How honest a record is. A guided one has no [`Grade`].
#[must_use]
pub const fn grade_name(grade: Option<Grade>, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match grade {
        None => "guided",
        Some(Grade::Unguided) => "done without the guide",
        Some(Grade::NotDone) => "not done, because",
    }
}

/// What an unguided record is worth.
#[must_use]
pub const fn unguided_note(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "A record without the guide proves no hold. It is honest all the same."
}

/// The reasons offered for not filtering, most frequent first; the owner may type another.
#[must_use]
pub const fn not_done_reasons(lang: Lang) -> &'static [&'static str] {
    let Lang::En = lang;
    &[
        "Pan stood unused",
        "Oil is to be changed",
        "Machine is down",
        "Too few people",
        "No time",
    ]
}

/// Which form of the guide.
#[must_use]
pub const fn form_name(form: Form, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match form {
        Form::Long => "Long form: every item",
        Form::Short => "Short form: four stops, same holds",
    }
}

/// The route.
#[must_use]
pub const fn route_name(route: Route, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match route {
        Route::Hot => "Hot, by closed machine",
        Route::Cold => "Cold, by hand, 40 °C or under",
    }
}

/// How a run ended.
#[must_use]
pub const fn left_name(left: Left, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match left {
        Left::Relit => "Lit again",
        Left::Off => "Left off",
        Left::Set => "Left to set",
        Left::AsWas => "Not filtered after all",
        Left::OilOut => "Left with oil out, tagged",
    }
}

/// Where the oil is, as the drawing says under itself.
#[must_use]
pub const fn place_name(place: Place, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match place {
        Place::InPan => "Oil in the pan",
        Place::Split => "Oil in pan and machine",
        Place::InMachine => "Oil in the machine",
        Place::InContainer => "Oil in the container",
        Place::Gone => "Oil gone",
    }
}

/// What the pump was last seen to do.
#[must_use]
pub const fn pump_name(pump: Pump, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match pump {
        Pump::Off => "Pump seen off",
        Pump::Drawing => "Oil is leaving",
        Pump::Rinsing => "Oil goes round",
        Pump::Returning => "Oil is coming back",
        Pump::Unknown => "Pump: look",
    }
}

/// What the heat was last seen to do.
#[must_use]
pub const fn heat_name(heat: Heat, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match heat {
        Heat::On => "Heat on",
        Heat::Low => "Lowest heat",
        Heat::OffSeen => "Heat seen off",
        Heat::Unknown => "Heat: look",
    }
}

/// The tabs at the foot of every screen that is not a job's: Today, the log, the office.
#[must_use]
pub const fn tabs(lang: Lang) -> [&'static str; 3] {
    let Lang::En = lang;
    ["Today", "Log", "Office"]
}

/// What the row of tabs is called, for who cannot see it.
#[must_use]
pub const fn tabs_label(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Screens"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_sentences_that_carry_a_value_carry_it() {
        let nine_forty_seven = Millis(0).plus(21 * Millis::HOUR + 47 * Millis::MINUTE);
        assert_eq!(pan_empty("2", Lang::En), "PAN 2 EMPTY, DO NOT LIGHT");
        assert_eq!(
            ended_ago(190, Lang::En).replace(format::NBSP, " "),
            "ended 3 min 10 s ago"
        );
        assert_eq!(
            clock_question(nine_forty_seven, 0, Lang::En),
            "Is 21:47 the right time?"
        );
        assert_eq!(until(nine_forty_seven, 60, Lang::En), "until 22:47");
        assert_eq!(expected(60, 90, Lang::En).replace(format::NBSP, " "), "usually 60–90 s");
        assert_eq!(place_in_block("Pump out", 4, 9, Lang::En), "Pump out · 4 of 9");
    }
}
