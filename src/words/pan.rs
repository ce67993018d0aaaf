//! What one pan's page says: the level believed, the line it took and will take, and what the numbers rest on.

use crate::domain::oil_life::{Quantity, REFERENCE_TEMP, Role};
use crate::domain::time::Day;
use crate::domain::units::{Minutes, Temp, Volume};

use super::{Lang, dates, format};

/// The fat and how old its oil is: "Rapeseed · fresh 8 Nov".
#[must_use]
pub fn pan_eyebrow(fat: &str, fresh_on: Option<Day>, lang: Lang) -> String {
    let Lang::En = lang;
    match fresh_on {
        Some(day) => format!("{fat} · fresh {}", dates::short(day, lang)),
        None => fat.to_owned(),
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

/// A range to the whole percent: "12–18 %".
#[must_use]
pub fn percents(low: f64, high: f64) -> String {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "percent of a mass, between 0 and 100"
    )]
    let whole = |percent: f64| percent.round() as u32;
    format!("{}{}%", format::range(whole(low), whole(high)), format::NBSP)
}

/// What may be behind a reading far from what was expected.
#[must_use]
pub const fn ask_of_reading(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Same pan? Probe clean? Oil changed and not logged?"
}

/// Above readings in the log that do not fit, with [`ask_of_reading`].
#[must_use]
pub const fn does_not_fit(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "A reading does not fit this oil"
}

/// What becomes of it.
#[must_use]
pub const fn kept_all_the_same(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "It is kept, and counts for less. If it is wrong, put it right in the log."
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
        Role::Reading(_) => "measured",
        Role::ChangeSign => "a sign that means change",
        Role::Powder => "filter powder took a little out",
        Role::OtherSign => "a sign, without a number",
    }
}

/// What fresh oil holds, and who says so.
#[must_use]
pub fn fresh_value(fat: &str, of: Quantity, source: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Fresh {}: {} from {source}",
        fat.to_ascii_lowercase(),
        quantity(of, lang).to_ascii_lowercase()
    )
}

/// The published spread of rates.
#[must_use]
pub fn published_rate(of: Quantity, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "How fast {} grow: the spread of published frying trials",
        quantity(of, lang).to_ascii_lowercase()
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

/// What is taken to be ahead: usual hours hot, and usual fresh oil after each service.
#[must_use]
pub fn ahead(fry: Minutes, top_up: Volume, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "Ahead, as usual: {} hot a service, {} fresh oil after it",
        format::hours(fry, lang),
        format::litres(top_up)
    )
}

/// The limit on a quantity.
#[must_use]
pub fn limit(of: Quantity, at: f64, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "The limit chosen for {}: {}",
        quantity(of, lang).to_lowercase(),
        percent(at)
    )
}

/// What figures rest on besides what is listed under them.
#[must_use]
pub const fn and_the_level(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "The level above, and all behind it"
}

/// What the chance of being over rests on.
#[must_use]
pub const fn as_days_left(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Rests on what days left rests on."
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

/// Services whose hours nobody logged.
#[must_use]
pub fn guessed_hours(services: u16, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "{} with no hours in the log, taken as usual ones. Log them and this gets surer",
        format::count(services.into(), "service", "services")
    )
}

/// No top-up of this pan was ever logged.
#[must_use]
pub const fn guessed_top_ups(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Top-ups are not known yet: one twentieth of the pan a service is taken. Log them and this gets surer"
}

/// How fast this oil wears.
#[must_use]
pub fn rate(per_hour: f64, heat: f64, temp: Temp, lang: Lang) -> String {
    let Lang::En = lang;
    let times = hundredths(heat);
    let heat = if times == hundredths(1.0) {
        String::new()
    } else {
        format!(", and {times} times that at your {}", format::temp(temp))
    };
    format!(
        "This oil gains about {} an hour at {}{heat} (wear and heat: Mba et al. 2016, Li et al. 2020)",
        points(per_hour),
        format::temp(REFERENCE_TEMP)
    )
}

/// What finished fills taught.
#[must_use]
pub fn taught(fills: u16, per_hour: f64, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "{} here taught that such oil gains about {} an hour",
        format::count(fills.into(), "finished fill", "finished fills"),
        points(per_hour)
    )
}

/// What filter powder does, and what tells nothing after it.
#[must_use]
pub fn powder(at_most: f64, acidity: bool, lang: Lang) -> String {
    let Lang::En = lang;
    let acids = if acidity {
        ". Of free fatty acids it takes anything up to nine tenths (Lin et al. 1998): they tell little of wear after it"
    } else {
        ""
    };
    format!(
        "Filter powder: takes out at most {} a run (Yates & Caldwell 1993), and the colour with it: dark or light \
         tells nothing after it{acids}",
        points(at_most)
    )
}

/// Points an instrument is off by under which it is not worth a word: no kitchen reads one closer.
const OFF_LEAST: f64 = 0.5;

/// How far an instrument is trusted.
#[must_use]
pub fn instrument(name: Option<&str>, spread: f64, off: f64, lang: Lang) -> String {
    let Lang::En = lang;
    let name = name.unwrap_or("Your instrument");
    let tends = if off >= OFF_LEAST {
        format!(", and shows about {} too much", hundredths(off))
    } else if off <= -OFF_LEAST {
        format!(", and shows about {} too little", hundredths(-off))
    } else {
        String::new()
    };
    format!(
        "{name}: a reading is within {} two times in three{tends}",
        points(spread)
    )
}

/// Points to the hundredth: "1 point", "0.4 points".
fn points(value: f64) -> String {
    let number = hundredths(value);
    let unit = if number == hundredths(1.0) { "point" } else { "points" };
    format!("{number} {unit}")
}

/// A number to its hundredths.
fn hundredths(value: f64) -> String {
    #[expect(clippy::cast_possible_truncation, reason = "rates, factors and points, all small")]
    format::decimal((value * 100.0).round() as i64, 2)
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
    format!("change {}", dates::short(day, lang))
}

/// At the edge of the drawing, where the day to change lies past it.
#[must_use]
pub fn change_past_mark(day: Day, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}, not drawn", change_mark(day, lang))
}

/// How a pan was filtered on a day: "24 Nov, with the guide".
#[must_use]
pub fn filtered_on(day: Day, guided: bool, lang: Lang) -> String {
    let Lang::En = lang;
    let how = if guided { "with the guide" } else { "without the guide" };
    format!("{}, {how}", dates::short(day, lang))
}

/// An entry in a list of reasons: "17 Nov · Reading · a reading says so".
#[must_use]
pub fn because_entry(day: Day, name: &str, did: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} · {name}: {did}", dates::short(day, lang))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn powder_is_said_with_its_ceiling_and_its_source() {
        let polar = powder(0.4, false, Lang::En);
        assert!(polar.starts_with("Filter powder: takes out at most 0.4 points a run (Yates & Caldwell 1993)"));
        let both = powder(0.4, true, Lang::En);
        assert!(both.starts_with(&polar) && both.contains("free fatty acids"));
    }

    #[test]
    fn heat_that_changes_nothing_is_not_said() {
        let told = |heat| rate(1.0, heat, Temp::celsius(170), Lang::En).replace(format::NBSP, " ");
        assert!(told(0.96).contains("about 1 point an hour at 175 °C, and 0.96 times that at your 170 °C ("));
        assert!(told(1.004).contains("about 1 point an hour at 175 °C ("));
    }

    #[test]
    fn what_an_instrument_is_off_by_is_said_from_half_a_point() {
        let told = |spread, off| instrument(None, spread, off, Lang::En);
        assert_eq!(
            told(1.0, -0.49),
            "Your instrument: a reading is within 1 point two times in three"
        );
        assert!(told(1.5, -0.5).ends_with("within 1.5 points two times in three, and shows about 0.5 too little"));
        assert!(told(1.5, 0.5).ends_with("shows about 0.5 too much"));
    }

    #[test]
    fn percent_is_rounded_to_the_tenth() {
        assert_eq!(percent(15.46).replace(format::NBSP, " "), "15.5 %");
        assert_eq!(percent(25.0).replace(format::NBSP, " "), "25 %");
    }
}
