//! Days and moments in words.

use chrono::{Datelike, NaiveDate};

use crate::domain::time::{Day, Millis};

use super::{Lang, format};

/// A date: "25 November".
#[must_use]
pub fn date(day: Day, lang: Lang) -> String {
    said(day.date(), lang)
}

/// A date with its weekday: "Wednesday 25 November".
#[must_use]
pub fn day(day: Day, lang: Lang) -> String {
    let weekday = weekday(day.weekday_index(), lang);
    format!("{weekday} {}", date(day, lang))
}

/// A trading day as seen from `today`: "Today", "Yesterday", "Monday 23 November"; another year is named.
#[must_use]
pub fn day_from(of: Day, today: Day, lang: Lang) -> String {
    let Lang::En = lang;
    match today.since(of) {
        0 => format!("Today, {}", day(of, lang)),
        1 => format!("Yesterday, {}", day(of, lang)),
        _ if of.date().year() != today.date().year() => format!("{} {}", day(of, lang), of.date().year()),
        _ => day(of, lang),
    }
}

/// A moment: "21:47 on 25 November". `off_min` is the zone's offset at that moment.
#[must_use]
pub fn moment(at: Millis, off_min: i16, lang: Lang) -> String {
    let Lang::En = lang;
    let date = Day::of(at, off_min, 0).date();
    format!("{} on {}", format::time_of_day(at, off_min), said(date, lang))
}

/// A date in short: "25 Nov".
#[must_use]
pub fn short(day: Day, lang: Lang) -> String {
    let month: String = month(day.date().month0() as usize, lang).chars().take(3).collect();
    format!("{}{}{month}", day.date().day(), format::NBSP)
}

/// The weekday alone: "Wednesday".
#[must_use]
pub fn weekday_of(day: Day, lang: Lang) -> &'static str {
    weekday(day.weekday_index(), lang)
}

fn said(date: NaiveDate, lang: Lang) -> String {
    let month = month(date.month0() as usize, lang);
    format!("{}{}{month}", date.day(), format::NBSP)
}

fn weekday(index: usize, lang: Lang) -> &'static str {
    let Lang::En = lang;
    const NAMES: [&str; 7] = [
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
        "Sunday",
    ];
    NAMES.get(index).copied().unwrap_or_default()
}

fn month(index: usize, lang: Lang) -> &'static str {
    let Lang::En = lang;
    const NAMES: [&str; 12] = [
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
    NAMES.get(index).copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn days_are_said_as_a_kitchen_says_them() {
        let of = |y, m, d| Day::from_date(NaiveDate::from_ymd_opt(y, m, d).unwrap());
        let plain = |text: String| text.replace(format::NBSP, " ");
        let today = of(2026, 1, 5);
        assert_eq!(plain(day_from(today, today, Lang::En)), "Today, Monday 5 January");
        assert_eq!(plain(day_from(of(2026, 1, 3), today, Lang::En)), "Saturday 3 January");
        assert_eq!(
            plain(day_from(of(2025, 12, 31), today, Lang::En)),
            "Wednesday 31 December 2025"
        );
        let late = of(2026, 11, 25).begins(60, 21 * 60 + 47);
        assert_eq!(plain(moment(late, 60, Lang::En)), "21:47 on 25 November");
        assert_eq!(plain(short(of(2026, 11, 25), Lang::En)), "25 Nov");
        assert_eq!(weekday_of(of(2026, 11, 25), Lang::En), "Wednesday");
    }
}
