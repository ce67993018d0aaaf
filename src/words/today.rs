//! What Today, one pan's page, "last night" and first start say beyond their titles.

use chrono::Datelike;

use crate::domain::facts::job::JobKind;
use crate::domain::oil_life::{DaysLeft, MOST_DAYS, Quantity, Role, Word};
use crate::domain::time::Day;

use super::{Lang, format, oil, run};

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
    /// The button that leaves the demo.
    LeaveDemo,
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
    /// An address of a pan there is not.
    NoSuchPan,
    /// The other entries behind the numbers.
    AllEntries,
    /// Back to Today.
    ToToday,
    /// Nothing left to answer.
    NightAnswered,
    /// What an answer here is worth.
    LateNote,
    /// The oil life drawing.
    DrawingTitle,
    /// Under the fill's first day.
    FilledOn,
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
            "For whoever runs the pans of a fish and chip kitchen. Panward takes you through the daily filter run of hot \
             oil one step at a time, with timers and safety holds that only what you see opens. It tells you how many \
             days each pan's oil has left, and keeps the record. It needs no network and sends nothing anywhere."
        }
        Line::DemoIs => "Four invented pans with five weeks of log. Nothing you do there can reach your own log.",
        Line::SetUpTakes => "Your pans, fats, machines and people. A kitchen with one pan takes about two minutes.",
        Line::MakingDemo => "Making the demo kitchen…",
        Line::NoDemo => "The demo could not be made",
        Line::LeaveDemo => "Leave the demo",
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
        Line::NoSuchPan => "No pan has this address.",
        Line::AllEntries => "Entries behind this",
        Line::ToToday => "Back to Today",
        Line::NightAnswered => "Every pan has its word.",
        Line::LateNote => "Written down afterwards: it proves no hold. It is honest all the same.",
        Line::DrawingTitle => "This oil so far and ahead",
        Line::FilledOn => "filled",
        Line::Now => "today",
        Line::ClockAgain => "Start the clock again",
    }
}

const WEEKDAYS: [&str; 7] = [
    "Monday",
    "Tuesday",
    "Wednesday",
    "Thursday",
    "Friday",
    "Saturday",
    "Sunday",
];
const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A day in full: "Tuesday 24 November".
#[must_use]
pub fn day_long(day: Day, lang: Lang) -> String {
    let Lang::En = lang;
    let weekday = WEEKDAYS.get(day.weekday_index()).copied().unwrap_or_default();
    format!("{weekday} {} {}", day.date().day(), month(day))
}

/// A day in short: "24 Nov".
#[must_use]
pub fn day_short(day: Day, lang: Lang) -> String {
    let Lang::En = lang;
    let month: String = month(day).chars().take(3).collect();
    format!("{}{}{month}", day.date().day(), format::NBSP)
}

/// The weekday alone: "Tuesday".
#[must_use]
pub fn weekday(day: Day, lang: Lang) -> &'static str {
    let Lang::En = lang;
    WEEKDAYS.get(day.weekday_index()).copied().unwrap_or_default()
}

fn month(day: Day) -> &'static str {
    MONTHS.get(day.date().month0() as usize).copied().unwrap_or_default()
}

/// What begins a job.
#[must_use]
pub const fn begin(job: JobKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match job {
        JobKind::LightUp => "Begin the light-up",
        JobKind::Filter => "Begin the filter job",
        JobKind::LockUp => "Begin the lock-up",
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
    }
}

/// A job that is open, as a heading.
#[must_use]
pub fn open(job: JobKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} is open", run::job_name(job, lang))
}

/// A job that was done today, in a small line.
#[must_use]
pub fn done(job: JobKind, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: done today", run::job_name(job, lang))
}

/// The heading of the morning's question: "Monday night: which pans?".
#[must_use]
pub fn night_question(day: Day, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} night: which pans?", weekday(day, lang))
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

/// The owner's own count as a hero: "day 4", and beside it "of your usual 9".
#[must_use]
pub fn usual_hero(days: u16, today: u16, lang: Lang) -> (String, String) {
    let Lang::En = lang;
    (format!("day{}{today}", format::NBSP), format!("of your usual {days}"))
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

/// The pan, its fat and the day of its oil: "Pan 1 · Rapeseed · day 11".
#[must_use]
pub fn pan_eyebrow(fat: &str, day_of_oil: Option<i64>, lang: Lang) -> String {
    let Lang::En = lang;
    match day_of_oil {
        Some(n) => format!("{fat} · calendar day {n} of this oil"),
        None => format!("{fat} · age not known"),
    }
}

/// A percentage to the tenth: "15.5 %".
#[must_use]
pub fn percent(value: f64) -> String {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "percent of a mass, between 0 and a few hundred"
    )]
    let tenths = (value * 10.0).round() as i64;
    format!("{}{}%", format::decimal(tenths, 1), format::NBSP)
}

/// The quantity a limit is on.
#[must_use]
pub const fn quantity(quantity: Quantity, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match quantity {
        Quantity::Polar => "Polar compounds",
        Quantity::Ffa => "Free fatty acids",
    }
}

/// A level believed: "Polar compounds about 15 % (12 % to 18 %)".
#[must_use]
pub fn level(of: Quantity, middle: f64, low: f64, high: f64, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "{} about {} ({} to {}), eight times in ten.",
        quantity(of, lang),
        percent(middle),
        percent(low),
        percent(high)
    )
}

/// A level in a table: "15 % (12–18)".
#[must_use]
pub fn interval(middle: f64, low: f64, high: f64) -> String {
    format!("{} ({} to {})", percent(middle), percent(low), percent(high))
}

/// Days in a row on which the pan was filtered when it was due.
#[must_use]
pub fn row_of_days(days: u32, lang: Lang) -> String {
    let Lang::En = lang;
    match days {
        0 | 1 => "The crumb of each of these is out.".to_owned(),
        n => format!("Filtered {n} days in a row: that crumb is out."),
    }
}

/// What uses up the room under the limits first.
#[must_use]
pub fn limited_by(of: Quantity, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} come nearest to their limit.", quantity(of, lang))
}

/// Where the oil settles: "At the usual top-up it settles at 27 %, over the limit of 25 %."
#[must_use]
pub fn settles(level: f64, limit: Option<f64>, lang: Lang) -> String {
    let Lang::En = lang;
    let at = format!("At the usual top-up it settles at {}", percent(level));
    match limit {
        Some(limit) if level > limit => format!("{at}, over the limit of {}.", percent(limit)),
        Some(limit) => format!("{at}, under the limit of {}.", percent(limit)),
        None => format!("{at}."),
    }
}

/// What an entry did to the numbers.
#[must_use]
pub fn role(of: Role, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match of {
        Role::Wear => "hours hot wear it",
        Role::Dilution => "fresh oil thins it",
        Role::MovedIn => "oil from another pan came in",
        Role::Reading(_) => "a reading says so",
        Role::ChangeSign => "a sign that means change",
        Role::OtherSign => "a sign, without a number",
    }
}

/// What fresh oil holds, and who says so.
#[must_use]
pub fn fresh_value(fat: &str, of: Quantity, source: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Fresh {}: {} from {source}",
        fat.to_lowercase(),
        quantity(of, lang).to_lowercase()
    )
}

/// The published spread of rates.
#[must_use]
pub fn published_rate(of: Quantity, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "How fast {} grow: the spread of published frying trials",
        quantity(of, lang).to_lowercase()
    )
}

/// The owner's usual days.
#[must_use]
pub fn your_usual(days: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Your usual {} of this pan's oil",
        format::count(days.into(), "day", "days")
    )
}

/// Services nobody logged.
#[must_use]
pub fn unlogged(services: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "{} before the log began, taken as usual ones",
        format::count(services.into(), "service", "services")
    )
}

/// Oil whose age nobody knows.
#[must_use]
pub const fn unknown_age(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Its age is not known: taken as oil of any age"
}

/// What the drawing shows, in full, for who cannot see it.
#[must_use]
pub fn drawing(now: &str, limit: Option<&str>, change: Option<&str>, readings: u32, lang: Lang) -> String {
    let Lang::En = lang;
    let measured = match readings {
        0 => "No reading yet.".to_owned(),
        n => format!("{} measured.", format::count(n, "reading", "readings")),
    };
    let limit = limit.map_or_else(String::new, |limit| format!(" Limit {limit}."));
    let change = change.map_or_else(String::new, |day| format!(" Change expected {day}."));
    format!("{now} {measured}{limit}{change}")
}

/// On the limit line.
#[must_use]
pub fn limit_mark(limit: f64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("limit {}", percent(limit))
}

/// Under the day to change.
#[must_use]
pub fn change_mark(day: Day, lang: Lang) -> String {
    let Lang::En = lang;
    format!("change about {}", day_short(day, lang))
}

/// How a pan was filtered on a day: "24 Nov, with the guide".
#[must_use]
pub fn filtered_on(day: Day, guided: bool, lang: Lang) -> String {
    let Lang::En = lang;
    let how = if guided { "with the guide" } else { "without the guide" };
    format!("{}, {how}", day_short(day, lang))
}

/// An entry in a list of reasons: "17 Nov · Reading · a reading says so".
#[must_use]
pub fn because_entry(day: Day, name: &str, did: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} · {name}: {did}", day_short(day, lang))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn plain(s: &str) -> String {
        s.replace(format::NBSP, " ")
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

    #[test]
    fn days_have_names() {
        let day = Day::from_date(chrono::NaiveDate::from_ymd_opt(2026, 11, 24).unwrap());
        assert_eq!(day_long(day, Lang::En), "Tuesday 24 November");
        assert_eq!(plain(&day_short(day, Lang::En)), "24 Nov");
    }

    #[test]
    fn percent_is_rounded_to_the_tenth() {
        assert_eq!(plain(&percent(15.46)), "15.5 %");
        assert_eq!(plain(&percent(25.0)), "25 %");
    }
}
