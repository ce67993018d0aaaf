//! When what is due and what a pan is for, in words: jobs for the day, days closed, what was put off.

use super::local::theirs;
use super::{Lang, dates, run, setup};
use crate::domain::claim::Exposures;
use crate::domain::facts::closed::{Closed, NotDays};
use crate::domain::ledger::PutOff;
use crate::domain::setting_up::RhythmBy;
use crate::domain::time::Day;

/// Fixed words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Say {
    /// Heading: what a pan is for today.
    JobToday,
    /// Its own job.
    OwnJob,
    /// The choice of another's.
    AnotherJob,
    /// Back to its own job.
    OwnAgain,
    /// What follows from another job.
    JobMeets,
    /// The way past a promise that stands against a job.
    LoseFirst,
    /// Puts a filter job off.
    NotTonight,
    /// Heading: it was put off before.
    Again,
    /// Heading: days closed.
    ClosedDays,
    /// What they do.
    ClosedText,
    /// The first day closed.
    FirstDay,
    /// The last day closed.
    LastDay,
    /// Why, if anybody likes to say.
    Why,
    /// Writes the days.
    CloseDays,
    /// Opens again from today, or takes days back that have not come.
    OpenAgain,
    /// Why the log says they were put right.
    OpenedAgain,
    /// A day is missing.
    NoDay,
    /// What Today says of jobs on a day closed.
    ClosedToday,
}

impl Say {
    /// All of them.
    pub const ALL: [Self; 18] = [
        Self::JobToday,
        Self::OwnJob,
        Self::AnotherJob,
        Self::OwnAgain,
        Self::JobMeets,
        Self::LoseFirst,
        Self::NotTonight,
        Self::Again,
        Self::ClosedDays,
        Self::ClosedText,
        Self::FirstDay,
        Self::LastDay,
        Self::Why,
        Self::CloseDays,
        Self::OpenAgain,
        Self::OpenedAgain,
        Self::NoDay,
        Self::ClosedToday,
    ];
}

/// The words of a [`Say`].
#[must_use]
pub const fn say(what: Say, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Say::JobToday => "Today's job",
        Say::OwnJob => "Its own job.",
        Say::AnotherJob => "Another pan's job, for today",
        Say::OwnAgain => "Back to its own job",
        Say::JobMeets => {
            "Until this pan is emptied, its oil counts as having met all of that. The day's end ends the job."
        }
        Say::LoseFirst => "Lose the promise first",
        Say::Again => "Not tonight again?",
        Say::NotTonight => "Not tonight, because…",
        Say::ClosedDays => "Closed days",
        Say::ClosedText => {
            "Nothing is due on them and none is asked about. A day worked all the same counts as worked."
        }
        Say::FirstDay => "First day closed",
        Say::LastDay => "Last day closed",
        Say::Why => "Why (may stay empty)",
        Say::CloseDays => "Close on these days",
        Say::OpenAgain => "Open again",
        Say::OpenedAgain => "Opened again",
        Say::NoDay => "Choose both days.",
        Say::ClosedToday => "Nothing is due. If you work all the same, begin with the light-up.",
    }
}

/// What a pan is filtered by.
#[must_use]
pub const fn by_name(by: RhythmBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match by {
        RhythmBy::Days => "After so many days of use",
        RhythmBy::Sessions => "After so many sessions",
        RhythmBy::Weekdays => "On its own nights",
    }
}

/// What a pan fries: "wheat or batter, fish".
#[must_use]
pub fn foods(food: Exposures, lang: Lang) -> String {
    let Lang::En = lang;
    let names: Vec<String> = food
        .iter()
        .map(|met| setup::exposure_name(met, lang).to_ascii_lowercase())
        .collect();
    if names.is_empty() {
        "no food marked in set-up".to_owned()
    } else {
        names.join(", ")
    }
}

/// Whose job, and what it fries: "pan 1's: wheat or batter, fish". `of` is the pan in words.
#[must_use]
pub fn job_of(of: &str, food: Exposures, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{of}'s: {}", foods(food, lang))
}

/// On a pan that does another's job: "on pan 1's job today".
#[must_use]
pub fn on_job(of: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("on {}'s job today", run::pan_name(of, lang))
}

/// The touch that offers another pan's job: "Pan 1's job".
#[must_use]
pub fn offered(of: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}'s job", run::pan_title(of, lang))
}

/// The touch that lets two pans change places: "Swap: pan 1 does this pan's".
#[must_use]
pub fn swap(with: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Swap: {} does this one's", run::pan_name(with, lang))
}

/// The touch that gives a pan the job alone: "This pan as well".
#[must_use]
pub fn alone(of: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("This pan as well as {}", run::pan_name(of, lang))
}

/// Days closed: "1 June to 14 June"; one day alone: "1 June".
fn days(closed: &Closed, lang: Lang) -> String {
    let Lang::En = lang;
    let (from, to) = (dates::date(closed.from(), lang), dates::date(closed.to(), lang));
    if closed.from() == closed.to() {
        from
    } else {
        format!("{from} to {to}")
    }
}

/// Days closed and why: "1 June to 14 June, holiday".
#[must_use]
pub fn days_and_why(closed: &Closed, lang: Lang) -> String {
    let Lang::En = lang;
    let days = days(closed, lang);
    let why = closed.why.as_deref().map(str::trim).filter(|why| !why.is_empty());
    why.map_or_else(|| days.clone(), |why| format!("{days}, {}", theirs(why)))
}

/// That the kitchen is closed today, and the day it opens: "Closed until Monday 15 June".
#[must_use]
pub fn closed_until(opens: Day, lang: Lang) -> String {
    let Lang::En = lang;
    format!("Closed until {}", dates::day(opens, lang))
}

/// Why days cannot be closed.
#[must_use]
pub const fn not_days(why: NotDays, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match why {
        NotDays::Turned => "The last day lies before the first.",
        NotDays::TooMany => "More than a year. Look at both days.",
    }
}

/// That a pan's filtering was put off to today: "moved from yesterday, because: no time".
#[must_use]
pub fn moved(put_off: &PutOff, today: Day, lang: Lang) -> String {
    let Lang::En = lang;
    let from = match today.since(put_off.night) {
        1 => "yesterday".to_owned(),
        2..=6 => dates::weekday_of(put_off.night, lang).to_owned(),
        _ => dates::date(put_off.night, lang),
    };
    let nights = if put_off.nights > 1 {
        format!(", {} nights in a row", put_off.nights)
    } else {
        String::new()
    };
    let why = put_off.why.as_deref().map(str::trim).filter(|why| !why.is_empty());
    let why = why.map_or_else(String::new, |why| format!(", because: {}", theirs(why)));
    format!("moved from {from}{nights}{why}")
}

/// What putting it off once more would be: "Pan 1: this would be the second night in a row."
#[must_use]
pub fn once_more(pan: &str, put_off: &PutOff, lang: Lang) -> String {
    let Lang::En = lang;
    let pan = run::pan_title(pan, lang);
    let before = put_off.why.as_deref().map(str::trim).filter(|why| !why.is_empty());
    let before = before.map_or_else(String::new, |why| format!(" Before: {}.", theirs(why)));
    let night = match put_off.nights {
        0 | 1 => "second",
        2 => "third",
        more => return format!("{pan}: put off {more} nights in a row already.{before}"),
    };
    format!("{pan}: this would be the {night} night in a row.{before}")
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::domain::claim::Exposure;
    use crate::words::format::NBSP;

    fn day(n: i64) -> Day {
        Day::spelt("2026-06-15").unwrap().plus(n)
    }

    #[test]
    fn what_was_put_off_says_from_when_how_often_and_why() {
        let said = |back: i64, nights, why: Option<&str>| {
            let put_off = PutOff {
                night: day(-back),
                why: why.map(str::to_owned),
                nights,
            };
            let once_more = once_more("2", &put_off, Lang::En);
            (moved(&put_off, day(0), Lang::En).replace(NBSP, " "), once_more)
        };
        for (back, nights, why, moved, again) in [
            (
                1,
                1,
                Some("no time"),
                "moved from yesterday, because: no time",
                "Pan 2: this would be the second night in a row. Before: no time.",
            ),
            (
                2,
                2,
                None,
                "moved from Saturday, 2 nights in a row",
                "Pan 2: this would be the third night in a row.",
            ),
            (
                14,
                3,
                Some(" "),
                "moved from 1 June, 3 nights in a row",
                "Pan 2: put off 3 nights in a row already.",
            ),
        ] {
            assert_eq!(said(back, nights, why), (moved.to_owned(), again.to_owned()));
        }
    }

    #[test]
    fn days_closed_and_jobs_read_as_people_say_them() {
        let closed = |to| Closed::between(day(0), day(to), None).unwrap();
        let plain = |text: String| text.replace(NBSP, " ");
        assert_eq!(plain(days(&closed(0), Lang::En)), "15 June");
        assert_eq!(plain(days(&closed(13), Lang::En)), "15 June to 28 June");
        assert_eq!(plain(closed_until(day(14), Lang::En)), "Closed until Monday 29 June");
        let food = Exposures::of(&[Exposure::Gluten, Exposure::Fish]);
        assert_eq!(job_of("pan 1", food, Lang::En), "pan 1's: wheat or batter, fish");
        assert_eq!(
            job_of("pan 4", Exposures::NONE, Lang::En),
            "pan 4's: no food marked in set-up"
        );
    }
}
