//! What a pan's page says of what could be done otherwise: what is tried, what would help, when to measure, what to log.

use crate::domain::oil_life::{Knob, Lacking, Lever};
use crate::domain::time::Day;
use crate::domain::units::{Temp, Volume};

use super::{Lang, dates, format, local};

/// Lines that carry nothing of the oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Say {
    /// The section in which things are tried.
    WhatIf,
    /// What trying does not do.
    OnlyTried,
    /// Before the figures as they are.
    Now,
    /// Before the figures tried.
    Tried,
    /// Ends the trial.
    AsItIs,
    /// Chips and heat, where the law speaks of them and a heat it speaks against is tried.
    ChipsLaw,
    /// The same where that heat is the usual one.
    ChipsLawUsual,
    /// Heading over what would help.
    Helps,
    /// Nothing would help by as much as half a day.
    NothingHelps,
    /// Why then.
    WhyThen,
    /// No reading would change anything.
    NoReading,
    /// The way to where a limit is chosen.
    ChooseLimit,
}

impl Say {
    /// Every line.
    pub const ALL: [Self; 12] = [
        Self::WhatIf,
        Self::OnlyTried,
        Self::Now,
        Self::Tried,
        Self::AsItIs,
        Self::ChipsLaw,
        Self::ChipsLawUsual,
        Self::Helps,
        Self::NothingHelps,
        Self::WhyThen,
        Self::NoReading,
        Self::ChooseLimit,
    ];
}

/// The words of a [`Say`].
#[must_use]
pub const fn say(what: Say, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Say::WhatIf => "What if…",
        Say::OnlyTried => "Only tried here. Nothing is logged.",
        Say::Now => "Now",
        Say::Tried => "Tried",
        Say::AsItIs => "Back to as it is",
        Say::ChipsLaw => "By law chips are fried below 175 °C: European Regulation 2017/2158.",
        Say::ChipsLawUsual => {
            "By law chips are fried below 175 °C; you fry at or over it: European Regulation 2017/2158."
        }
        Say::Helps => "What would make it last",
        Say::NothingHelps => "Nothing usual would bring as much as half a day.",
        Say::WhyThen => "That evening a reading is likeliest to change what you do.",
        Say::NoReading => "No reading in the next two weeks would change what you do.",
        Say::ChooseLimit => "Choose a limit",
    }
}

/// What a knob turns.
#[must_use]
pub const fn knob_name(knob: Knob, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match knob {
        Knob::Temp => "Frying at",
        Knob::Hours => "Hot a service",
        Knob::TopUp => "Fresh oil a day",
        Knob::PartChange => "Part-change now",
    }
}

/// Turning a knob down or up, for who cannot see "−" and "+".
#[must_use]
pub fn turn(knob: Knob, up: bool, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: {}", knob_name(knob, lang), if up { "more" } else { "less" })
}

/// Where a knob stands: tenths of a degree, minutes or millilitres in words.
#[must_use]
pub fn knob_at(knob: Knob, at: i32, lang: Lang) -> String {
    let Lang::En = lang;
    let litres = || format::litres(Volume::from_ml(at.unsigned_abs()).unwrap_or(Volume::NONE));
    match knob {
        Knob::Temp => i16::try_from(at)
            .ok()
            .and_then(Temp::from_dc)
            .map_or_else(String::new, format::temp),
        Knob::Hours => format::length(i64::from(at) * 60, lang),
        Knob::TopUp => litres(),
        Knob::PartChange if at == 0 => "none".to_owned(),
        Knob::PartChange => litres(),
    }
}

/// What a lever would bring: "5 °C cooler: about 1 day more". `full` is what the pan holds.
#[must_use]
pub fn lever(lever: Lever, days: f64, full: Volume, lang: Lang) -> String {
    let Lang::En = lang;
    let what = match lever {
        Lever::Heat => format!("5{}°C cooler", local::APART),
        Lever::Hours => "Half an hour less hot a service".to_owned(),
        Lever::TopUp => {
            let litres = format::decimal(rounded(full.litres() * Lever::MORE_SHARE * 10.0), 1);
            format!("{litres}{}L more fresh oil a day", format::NBSP)
        }
        Lever::IdleHours => "Quiet hours hot cut by half".to_owned(),
    };
    let brings = if days < 0.75 {
        "half a day".to_owned()
    } else {
        format::count(u32::try_from(rounded(days)).unwrap_or(0).max(1), "day", "days")
    };
    format!("{what}: about {brings} more.")
}

/// The day to change, as it is or as tried; `None` is none within the 60 services that are foreseen.
#[must_use]
pub fn change_about(change: Option<Day>, today: Day, lang: Lang) -> String {
    let Lang::En = lang;
    match change {
        None => "change: not within 60 services".to_owned(),
        Some(day) if day <= today => "change today".to_owned(),
        Some(day) => format!("change about {}", dates::date(day, lang)),
    }
}

/// What limits the oil most: what the first lever is about.
#[must_use]
pub const fn limits_most(lever: Lever, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match lever {
        Lever::Heat => "Heat limits it most.",
        Lever::Hours => "Hours hot limit it most.",
        Lever::TopUp => "Too little fresh oil limits it most.",
        Lever::IdleHours => "Hours hot with little to fry limit it most.",
    }
}

/// When to measure next: "Measure next: after Friday's service, with the tester."
#[must_use]
pub fn measure(after: Day, today: Day, with: Option<&str>, lang: Lang) -> String {
    let Lang::En = lang;
    let with = with.map_or_else(String::new, |name| format!(", with {name}"));
    match after.since(today) {
        ..=0 => format!("Measure next: tonight{with}."),
        1..=6 => format!(
            "Measure next: after {}'s service{with}.",
            dates::weekday_of(after, lang)
        ),
        _ => format!("Measure next: after the service of {}{with}.", dates::day(after, lang)),
    }
}

/// In place of [`measure`], after a reading that does not fit.
#[must_use]
pub fn measure_again(with: Option<&str>, lang: Lang) -> String {
    let Lang::En = lang;
    let with = with.map_or_else(String::new, |name| format!(", with {name}"));
    format!("Read it again now{with}: the last reading does not fit.")
}

/// What to log, for a better answer.
#[must_use]
pub const fn lacking(what: Lacking, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Lacking::Limit => "No limit is chosen, so there is no score.",
        Lacking::Hours => "Log the hours hot of each service: some are guessed.",
        Lacking::Reading => "Log a reading: none of this oil is logged yet.",
        Lacking::FreshValue => "Log a reading soon: how worn this oil was at first is not known.",
    }
}

fn rounded(value: f64) -> i64 {
    #[expect(clippy::cast_possible_truncation, reason = "litres of a pan, days of an oil")]
    let whole = value.round() as i64;
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(text: &str) -> String {
        text.replace([format::NBSP, local::APART], " ")
    }

    #[test]
    fn what_helps_is_told_in_whole_days_and_half_a_day() {
        let told = |of, days| {
            plain(&lever(
                of,
                days,
                Volume::from_ml(42_000).unwrap_or(Volume::NONE),
                Lang::En,
            ))
        };
        assert_eq!(told(Lever::Heat, 0.6), "5 °C cooler: about half a day more.");
        assert_eq!(told(Lever::Heat, 1.2), "5 °C cooler: about 1 day more.");
        assert_eq!(
            told(Lever::TopUp, 2.6),
            "0.8 L more fresh oil a day: about 3 days more."
        );
    }

    #[test]
    fn the_next_reading_is_named_by_its_evening() {
        let today = Day::of(crate::domain::time::Millis(0), 0, 0);
        let told = |days| plain(&measure(today.plus(days), today, Some("the tester"), Lang::En));
        assert_eq!(told(0), "Measure next: tonight, with the tester.");
        assert_eq!(told(1), "Measure next: after Friday's service, with the tester.");
        assert_eq!(
            measure_again(Some("the tester"), Lang::En),
            "Read it again now, with the tester: the last reading does not fit."
        );
        assert!(told(9).starts_with("Measure next: after the service of Saturday 10 January"));
    }

    #[test]
    fn the_day_to_change_is_named_or_said_to_be_past_what_is_foreseen() {
        let today = Day::of(crate::domain::time::Millis(0), 0, 0);
        let told = |change| plain(&change_about(change, today, Lang::En));
        assert_eq!(told(Some(today.plus(9))), "change about 10 January");
        assert_eq!(told(Some(today)), "change today");
        assert_eq!(told(None), "change: not within 60 services");
    }

    #[test]
    fn knobs_say_where_they_stand() {
        assert_eq!(plain(&knob_at(Knob::Temp, 1_750, Lang::En)), "175 °C");
        assert_eq!(plain(&knob_at(Knob::Hours, 315, Lang::En)), "5 h 15 min");
        assert_eq!(plain(&knob_at(Knob::TopUp, 2_500, Lang::En)), "2.5 L");
        assert_eq!(knob_at(Knob::PartChange, 0, Lang::En), "none");
    }
}
