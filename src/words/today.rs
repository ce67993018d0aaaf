//! What Today, "last night" and first start say beyond their titles.

use crate::domain::facts::job::JobKind;
use crate::domain::fat::Fat;
use crate::domain::oil_life::{DaysLeft, MOST_DAYS, Word};
use crate::domain::time::Day;
use crate::domain::units::Volume;

use super::screens::{Screen, screen};
use super::{Lang, dates, format, oil, run};

/// Lines that carry nothing of the kitchen's state.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Line {
    /// First start: what the app is for.
    ThisIsFor,
    /// First start: what the demo is.
    DemoIs,
    /// First start: what setting up takes.
    SetUpTakes,
    /// While the demo is being made.
    MakingDemo,
    /// The demo could not be made.
    NoDemo,
    /// On every screen of the demo.
    DemoBand,
    /// The button that leaves the demo.
    LeaveDemo,
    /// What leaving it does, asked before it is done.
    LeavingDemo,
    /// Leaves it all the same.
    LeaveDemoYes,
    /// Does not.
    LeaveDemoNo,
    /// Why it is not left from a window that only shows it.
    DemoElsewhere,
    /// Before the set-up is finished.
    NotSetUp,
    /// What is missing then.
    NotSetUpText,
    /// No pan is in use.
    NoPans,
    /// Everything of the day is done.
    AllDone,
    /// What follows that.
    AllDoneText,
    /// The light-up has not been done.
    LightUpText,
    /// Nothing is due, and the day goes on.
    LockUpText,
    /// A job was begun and not ended.
    OpenText,
    /// The mark on a pan that is due.
    Due,
    /// The button that says why not.
    NotDoneBecause,
    /// The heading of the reasons.
    WhyNot,
    /// Which pans the reason is for.
    WhichPans,
    /// All pans that are due.
    AllDue,
    /// Filtered, with no guide.
    Unguided,
    /// Not used on that day.
    NotUsed,
    /// A reason in own words.
    OwnReason,
    /// Every pan the question is about.
    AllPans,
    /// The way to the morning's question.
    SayWhichPans,
    /// Closes a sheet.
    Close,
    /// Heading above the small lines.
    ThisPhone,
    /// Sound is on.
    SoundOn,
    /// No sound in this browser.
    NoSound,
    /// The screen stays lit when it must.
    WakeReady,
    /// Takes the new version.
    TakeUpdate,
    /// Starts the new version.
    StartUpdate,
    /// A new version waits.
    UpdateTitle,
    /// Heading of the reasons behind the numbers.
    Why,
    /// Heading of the readings as a table.
    Table,
    /// Column.
    ColumnDay,
    /// Column.
    ColumnEstimate,
    /// Column.
    ColumnReading,
    /// Heading of the last runs.
    LastRuns,
    /// No run yet.
    NoRuns,
    /// The way to the quick entries.
    LogSomething,
    /// The pan stands empty.
    PanIsEmpty,
    /// What to do with an empty pan.
    PanIsEmptyText,
    /// The pan's oil is out of it, or it stands empty.
    OilIsOut,
    /// Oil of this pan stands in a machine.
    OilParked,
    /// The pan's oil stands below the mark.
    PanIsLow,
    /// What to do with a low pan.
    PanIsLowText,
    /// An address of a pan there is not.
    NoSuchPan,
    /// Back to Today.
    ToToday,
    /// Nothing left to answer.
    NightAnswered,
    /// What an answer here is worth.
    LateNote,
    /// The oil life drawing.
    DrawingTitle,
    /// Under today.
    Now,
    /// The burn card's clock anew.
    ClockAgain,
}

/// The words of a [`Line`].
#[must_use]
pub const fn line(what: Line, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Line::ThisIsFor => {
            "For whoever runs the pans of a fish and chip kitchen. Panward guides the daily filter run of hot oil step by \
             step, with timers and safety holds, tells how many days each pan's oil has left, and keeps the record. It \
             needs no network and sends nothing anywhere."
        }
        Line::DemoIs => "Four invented pans with five weeks of log. Nothing you do there can reach your own log.",
        Line::SetUpTakes => "Your pans, fats, machines and people. A kitchen with one pan takes about two minutes.",
        Line::MakingDemo => "Making the demo kitchen…",
        Line::NoDemo => "The demo could not be made",
        Line::DemoBand => "Demo kitchen",
        Line::LeaveDemo => "Leave the demo",
        Line::LeavingDemo => {
            "Leaving deletes the demo kitchen and all that you logged in it, for good. Your own log is not touched."
        }
        Line::LeaveDemoYes => "Leave and delete the demo",
        Line::LeaveDemoNo => "Stay",
        Line::DemoElsewhere => "Another window has the demo open. Leave it there, or close that window first.",
        Line::NotSetUp => "Set up your kitchen",
        Line::NotSetUpText => "Nothing is guided or counted before the pans and the people are known.",
        Line::NoPans => "No pan is in use.",
        Line::AllDone => "All done for today",
        Line::AllDoneText => "Filtered, locked up, written down.",
        Line::LightUpText => "Fan on, lids off, levels seen, then heat.",
        Line::LockUpText => "Scraps, filters and cloths cold, floor clear, pans off and lidded.",
        Line::OpenText => "Begun and not ended. It asks what stands before it goes on.",
        Line::Due => "due today",
        Line::NotDoneBecause => "Not done, because…",
        Line::WhyNot => "Not done, because",
        Line::WhichPans => "Which pans?",
        Line::AllDue => "All that are due",
        Line::Unguided => "Filtered without the guide",
        Line::NotUsed => "Not used",
        Line::OwnReason => "Another reason",
        Line::AllPans => "All of them",
        Line::SayWhichPans => "Say which pans",
        Line::Close => "Close",
        Line::ThisPhone => "This phone",
        Line::SoundOn => "Sound is on",
        Line::NoSound => "This browser makes no sound: watch the screen",
        Line::WakeReady => "The screen stays lit while a job is open",
        Line::TakeUpdate => "Take the new version",
        Line::StartUpdate => "Start the new version",
        Line::UpdateTitle => "New version",
        Line::Why => "Why",
        Line::Table => "The drawing as a table",
        Line::ColumnDay => "Day",
        Line::ColumnEstimate => "Polar compounds, likely",
        Line::ColumnReading => "Reading",
        Line::LastRuns => "Filtered",
        Line::NoRuns => "Not filtered since this oil came in.",
        Line::LogSomething => "Log something",
        Line::PanIsEmpty => "No oil in this pan",
        Line::PanIsEmptyText => "Do not light it. Log the fill once fresh oil is in.",
        Line::OilIsOut => "Its oil is out: do not light",
        Line::OilParked => "Parked oil",
        Line::PanIsLow => "Below the mark: do not light",
        Line::PanIsLowText => "Its tag stays on. Top it up, then light-up asks for the level again.",
        Line::NoSuchPan => "No pan has this address.",
        Line::ToToday => "Back to Today",
        Line::NightAnswered => "Every pan has its word.",
        Line::LateNote => "Written down afterwards: it proves no hold. It is honest all the same.",
        Line::DrawingTitle => "This oil so far and ahead",
        Line::Now => "today",
        Line::ClockAgain => "Start the clock again",
    }
}

/// What begins a job.
#[must_use]
pub const fn begin(job: JobKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match job {
        JobKind::LightUp => "Begin the light-up",
        JobKind::Filter => "Begin the filter job",
        JobKind::LockUp => "Begin the lock-up",
        JobKind::OilChange => "Begin the oil change",
        JobKind::BoilOut => "Begin the boil-out",
    }
}

/// What goes on with an open job.
#[must_use]
pub const fn resume(job: JobKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match job {
        JobKind::LightUp => "Go on with the light-up",
        JobKind::Filter => "Go on with the filter job",
        JobKind::LockUp => "Go on with the lock-up",
        JobKind::OilChange => "Go on with the oil change",
        JobKind::BoilOut => "Go on with the boil-out",
    }
}

/// A job that is open, as a heading.
#[must_use]
pub fn open(job: JobKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} is open", run::job_name(job, lang))
}

/// A job that is over for today, done or not.
#[must_use]
pub fn recorded(job: JobKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: recorded", run::job_name(job, lang))
}

/// A filter job that is over for today with no pan filtered in it.
#[must_use]
pub fn none_filtered(lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: nothing filtered", run::job_name(JobKind::Filter, lang))
}

/// The heading of the morning's question: "Last night: which pans?", for an earlier one "Monday night: which pans?".
#[must_use]
pub fn night_question(day: Day, today: Day, lang: Lang) -> String {
    let Lang::En = lang;
    if today.since(day) == 1 {
        screen(Screen::LastNight, lang).to_owned()
    } else {
        format!("{} night: which pans?", dates::weekday_of(day, lang))
    }
}

/// What the morning's question is about: "Pans 1 and 3 have no word yet."
#[must_use]
pub fn night_open(pans: &[String], lang: Lang) -> String {
    let Lang::En = lang;
    match pans {
        [only] => format!("Pan {only} has no word yet."),
        many => format!("Pans {} have no word yet.", format::list(many, lang)),
    }
}

/// Days left as a hero: the number, and what stands small beside it.
#[must_use]
pub fn days_hero(days: DaysLeft, lang: Lang) -> (String, &'static str) {
    let Lang::En = lang;
    let unit = |n: u8| if n == 1 { "day" } else { "days" };
    match (days.low, days.high) {
        (_, Some(0)) => ("<1".to_owned(), "day"),
        (Some(low), Some(high)) if low == high => (low.to_string(), unit(low)),
        (Some(low), Some(high)) => (format::range(low.into(), high.into()), "days"),
        (Some(low), None) => (format!("{low}+"), "days"),
        (None, _) => (format!("{MOST_DAYS}+"), "days"),
    }
}

/// The owner's own count as a hero: what stands before the number, and under it: "day" 4 "of your usual 9".
#[must_use]
pub fn usual_hero(days: u16, lang: Lang) -> (&'static str, String) {
    let Lang::En = lang;
    (
        "day",
        format!("of your usual {}", format::count(days.into(), "day", "days")),
    )
}

/// What days left stand over, in the place where [`usual_hero`] has its own: "days left".
#[must_use]
pub fn days_left_under(unit: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{unit} left")
}

/// The level an oil holds at as a hero, in place of a day: what stands before it, the level, and under it.
#[must_use]
pub fn holds_hero(percent: u8, lang: Lang) -> (&'static str, String, &'static str) {
    let Lang::En = lang;
    (
        "holds at",
        format!("{percent}{}%", format::NBSP),
        "with your usual fresh oil",
    )
}

/// The same while the owner's count leads.
#[must_use]
pub fn likely_holds(percent: u8, lang: Lang) -> String {
    let Lang::En = lang;
    format!("likely holds at {percent}{}%", format::NBSP)
}

/// Oil that stands in a machine: "In Blue since 5 Jan: 28 L of dripping. Melt before use."
#[must_use]
pub fn parked(machine: &str, since: Day, fat: Fat, volume: Option<Volume>, lang: Lang) -> String {
    let Lang::En = lang;
    let melt = if fat.is_solid() { " Melt before use." } else { "" };
    let fat = format::first_low(oil::fat_name(fat, lang));
    let what = volume.map_or_else(|| fat.clone(), |volume| format!("{} of {fat}", format::litres(volume)));
    format!("In {machine} since {}: {what}.{melt}", dates::short(since, lang))
}

/// What the model says while the owner's count leads: "likely 5–16 days left".
#[must_use]
pub fn likely_left(days: DaysLeft, lang: Lang) -> String {
    let Lang::En = lang;
    let (number, unit) = days_hero(days, lang);
    format!("likely {number}{}{unit} left", format::NBSP)
}

/// The word of an oil.
#[must_use]
pub const fn word(word: Word, lang: Lang) -> &'static str {
    match word {
        Word::ChangeNow => oil::change_now(lang),
        Word::PlanTheChange => oil::plan_change(lang),
        Word::KeepAnEye => oil::keep_an_eye(lang),
        Word::Fresh => oil::fresh(lang),
        Word::Good => oil::good(lang),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn the_line_under_the_number_says_which_count_it_is() {
        assert_eq!(
            usual_hero(9, Lang::En),
            ("day", format!("of your usual 9{}days", format::NBSP))
        );
        assert_eq!(days_left_under("days", Lang::En), "days left");
        assert_eq!(days_left_under("day", Lang::En), "day left");
    }

    #[test]
    fn days_left_read_as_a_number_and_a_unit() {
        let hero = |low, high| {
            let days = DaysLeft { low, median: low, high };
            let (number, unit) = days_hero(days, Lang::En);
            format!("{number} {unit}")
        };
        assert_eq!(hero(Some(3), Some(5)), "3–5 days");
        assert_eq!(hero(Some(0), Some(0)), "<1 day");
        assert_eq!(hero(Some(1), Some(1)), "1 day");
        assert_eq!(hero(Some(12), None), "12+ days");
        assert_eq!(hero(None, None), "60+ days");
    }
}
