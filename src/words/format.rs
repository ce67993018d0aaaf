//! Numbers, units, times and lists as text. No help from the browser, so native tests see what the screen shows.

use crate::domain::time::Millis;
use crate::domain::units::{AcidValue, Amount, Minutes, Share, Temp, Typed, Unit, Volume};

use super::Lang;

/// Keeps a number and its unit on one line.
pub const NBSP: char = '\u{a0}';
/// Between the ends of a range.
const EN_DASH: char = '–';

/// A running clock: `11:20`, from one hour `1:02:03`. A time already past counts as zero here; see [`over`].
#[must_use]
pub fn clock(seconds: i64) -> String {
    let s = seconds.max(0);
    let (h, m, s) = (s / 3600, s / 60 % 60, s % 60);
    if h > 0 {
        format!("{h}:{m:02}:{s:02}")
    } else {
        format!("{m}:{s:02}")
    }
}

/// A limit overrun: `+0:08`.
#[must_use]
pub fn over(seconds: i64) -> String {
    format!("+{}", clock(seconds))
}

/// With its first letter as a sentence begins. Only letters from A to Z change, here and wherever words of ours are put
/// into a sentence: the tables of all alphabets' capitals would weigh 10 KiB in the shipped app.
#[must_use]
pub fn first_up(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}

/// With its first letter as in the middle of a sentence.
#[must_use]
pub fn first_low(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    text
}

/// A wait counted up to its target: `11:20 of 15:00`.
#[must_use]
pub fn clock_of(seconds: i64, target: i64, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{} of {}", clock(seconds), clock(target))
}

/// The time of day at a moment, 24 hours: `21:47`. `off_min` is the zone's offset at that moment.
#[must_use]
pub fn time_of_day(at: Millis, off_min: i16) -> String {
    let minute = at.0.div_euclid(Millis::MINUTE) + i64::from(off_min);
    minute_of_day(minute.rem_euclid(1440))
}

/// A minute of the day as a time: 1307 is `21:47`. 1440 is shown as `24:00`.
#[must_use]
pub fn minute_of_day(minute: i64) -> String {
    format!("{:02}:{:02}", minute / 60, minute % 60)
}

/// A length of time in words, to the second: `3 min 10 s`, `2 h 5 min`, `8 s`. Seconds go above an hour.
#[must_use]
pub fn length(seconds: i64, lang: Lang) -> String {
    let Lang::En = lang;
    let s = seconds.max(0);
    let (h, m, s) = (s / 3600, s / 60 % 60, s % 60);
    let parts: &[(i64, &str)] = if h > 0 {
        &[(h, "h"), (m, "min")]
    } else {
        &[(m, "min"), (s, "s")]
    };
    let said: Vec<String> = parts
        .iter()
        .filter(|(n, _)| *n > 0)
        .map(|(n, unit)| format!("{n}{NBSP}{unit}"))
        .collect();
    if said.is_empty() {
        format!("0{NBSP}s")
    } else {
        said.join(" ")
    }
}

/// Minutes as hours: `5 h`, `5 h 30 min`.
#[must_use]
pub fn hours(minutes: Minutes, lang: Lang) -> String {
    length(i64::from(minutes.get()) * 60, lang)
}

/// A decimal number from whole parts of 10^`places`, without trailing zeros: (1250, 3) is `1.25`.
#[must_use]
pub fn decimal(parts: i64, places: u32) -> String {
    let scale = 10_i64.pow(places.min(9));
    let sign = if parts < 0 { "-" } else { "" };
    let whole = parts.abs() / scale;
    let rest = format!("{:0width$}", parts.abs() % scale, width = places as usize);
    let rest = rest.trim_end_matches('0');
    if rest.is_empty() {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{rest}")
    }
}

/// A temperature to the whole degree where it is one, else to the tenth: `152 °C`, `39.5 °C`.
#[must_use]
pub fn temp(t: Temp) -> String {
    format!("{}{NBSP}°C", decimal(i64::from(t.dc()), 1))
}

/// A temperature range: `100–180 °C`.
#[must_use]
pub fn temp_range(low: Temp, high: Temp) -> String {
    format!("{}{EN_DASH}{}", decimal(i64::from(low.dc()), 1), temp(high))
}

/// A volume in litres, to the tenth: `1.2 L`.
#[must_use]
pub fn litres(v: Volume) -> String {
    format!("{}{NBSP}L", decimal((i64::from(v.ml()) + 50) / 100, 1))
}

/// A share in percent, to the tenth: `18.5 %`.
#[must_use]
pub fn percent(share: Share) -> String {
    format!("{}{NBSP}%", decimal((i64::from(share.cpc()) + 5) / 10, 1))
}

/// An acid value: `2.5 mg/g`.
#[must_use]
pub fn acid_value(value: AcidValue) -> String {
    format!("{}{NBSP}mg/g", decimal(i64::from(value.cav()), 2))
}

/// Two whole numbers as a range, one number when they are the same: `3–5`.
#[must_use]
pub fn range(low: u32, high: u32) -> String {
    if low == high {
        low.to_string()
    } else {
        format!("{low}{EN_DASH}{high}")
    }
}

/// A number and what is counted: `1 day`, `4 days`.
#[must_use]
pub fn count(n: u32, one: &str, many: &str) -> String {
    format!("{n}{NBSP}{}", if n == 1 { one } else { many })
}

/// An ordinal: `1st`, `2nd`, `11th`.
#[must_use]
pub fn ordinal(n: u32, lang: Lang) -> String {
    let Lang::En = lang;
    let end = match (n % 10, n % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    };
    format!("{n}{end}")
}

/// A quantity as it was typed, in the trade's words: `half a block`, `1½ drums`, `2.5 L`.
#[must_use]
pub fn typed(typed: Typed, lang: Lang) -> String {
    let Lang::En = lang;
    let number = decimal(i64::from(typed.thousandths), 3);
    let (one, many) = match typed.unit {
        Unit::Litres => return format!("{number}{NBSP}L"),
        Unit::Kilograms => return format!("{number}{NBSP}kg"),
        Unit::Block => ("block", "blocks"),
        Unit::Drum => ("drum", "drums"),
        Unit::Bag => ("bag", "bags"),
    };
    let (whole, rest) = (typed.thousandths / 1000, typed.thousandths % 1000);
    let part = match rest {
        0 => "",
        250 => "¼",
        500 => "½",
        750 => "¾",
        _ => return format!("{number}{NBSP}{many}"),
    };
    match (whole, rest) {
        (0, 250) => format!("a quarter of a {one}"),
        (0, 500) => format!("half a {one}"),
        (0, 750) => format!("three quarters of a {one}"),
        (1, 0) => format!("1{NBSP}{one}"),
        _ => format!("{whole}{part}{NBSP}{many}"),
    }
}

/// An amount as typed, with its litres beside it when it was counted otherwise: `half a block (6.9 L)`.
#[must_use]
pub fn amount(amount: Amount, lang: Lang) -> String {
    let as_typed = typed(amount.typed, lang);
    match amount.typed.unit {
        Unit::Litres => as_typed,
        Unit::Kilograms | Unit::Block | Unit::Drum | Unit::Bag => format!("{as_typed} ({})", litres(amount.volume)),
    }
}

/// A list in words: `1`, `1 and 3`, `1, 2 and 4`.
#[must_use]
pub fn list(items: &[String], lang: Lang) -> String {
    let Lang::En = lang;
    match items {
        [] => String::new(),
        [only] => only.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    const EN: Lang = Lang::En;

    /// Plain spaces, so that the expectations below can be read.
    fn plain(s: &str) -> String {
        s.replace(NBSP, " ")
    }

    #[test]
    fn clocks_read_like_clocks() {
        assert_eq!(clock(680), "11:20");
        assert_eq!(clock(3723), "1:02:03");
        assert_eq!(clock(-4), "0:00");
        assert_eq!(over(8), "+0:08");
        assert_eq!(clock_of(680, 900, EN), "11:20 of 15:00");
        assert_eq!(minute_of_day(1307), "21:47");
        assert_eq!(time_of_day(Millis(0), 60), "01:00");
        assert_eq!(time_of_day(Millis(0), -60), "23:00");
        assert_eq!(plain(&length(190, EN)), "3 min 10 s");
        assert_eq!(plain(&length(7500, EN)), "2 h 5 min");
        assert_eq!(plain(&length(120, EN)), "2 min");
        assert_eq!(plain(&length(0, EN)), "0 s");
    }

    #[test]
    fn numbers_lose_no_digit_and_gain_none() {
        assert_eq!(decimal(1250, 3), "1.25");
        assert_eq!(decimal(1005, 3), "1.005");
        assert_eq!(decimal(-395, 1), "-39.5");
        assert_eq!(decimal(0, 2), "0");
        assert_eq!(plain(&temp(Temp::celsius(152))), "152 °C");
        assert_eq!(plain(&temp(Temp::from_dc(395).unwrap())), "39.5 °C");
        assert_eq!(plain(&temp_range(Temp::celsius(100), Temp::celsius(180))), "100–180 °C");
        assert_eq!(plain(&litres(Volume::from_ml(1_249).unwrap())), "1.2 L");
        assert_eq!(plain(&percent(Share::from_cpc(1_850).unwrap())), "18.5 %");
        assert_eq!(plain(&acid_value(AcidValue::from_cav(250).unwrap())), "2.5 mg/g");
    }

    #[test]
    fn half_a_block_stays_half_a_block() {
        let said = |thousandths, unit| plain(&typed(Typed { thousandths, unit }, EN));
        assert_eq!(said(500, Unit::Block), "half a block");
        assert_eq!(said(250, Unit::Drum), "a quarter of a drum");
        assert_eq!(said(1000, Unit::Block), "1 block");
        assert_eq!(said(1500, Unit::Block), "1½ blocks");
        assert_eq!(said(2000, Unit::Drum), "2 drums");
        assert_eq!(said(1200, Unit::Drum), "1.2 drums");
        assert_eq!(said(2500, Unit::Litres), "2.5 L");
        assert_eq!(said(0, Unit::Block), "0 blocks");
        let half = Amount {
            volume: Volume::from_ml(6_900).unwrap(),
            typed: Typed {
                thousandths: 500,
                unit: Unit::Block,
            },
        };
        assert_eq!(plain(&amount(half, EN)), "half a block (6.9 L)");
    }

    #[test]
    fn only_the_first_letter_changes_its_case() {
        assert_eq!(
            (first_up("pan 2 Low").as_str(), first_up("").as_str()),
            ("Pan 2 Low", "")
        );
        assert_eq!(
            (first_low("Beef Fat").as_str(), first_low("°C").as_str()),
            ("beef Fat", "°C")
        );
    }

    #[test]
    fn counts_ranges_and_lists_read_aloud() {
        assert_eq!(plain(&count(1, "day", "days")), "1 day");
        assert_eq!(plain(&count(0, "day", "days")), "0 days");
        assert_eq!(range(3, 5), "3–5");
        assert_eq!(range(4, 4), "4");
        let said: Vec<String> = [1, 2, 3, 4, 11, 12, 13, 21, 112]
            .iter()
            .map(|n| ordinal(*n, EN))
            .collect();
        assert_eq!(
            said,
            ["1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "112th"]
        );
        let pans = |n: &[&str]| list(&n.iter().map(ToString::to_string).collect::<Vec<_>>(), EN);
        assert_eq!(pans(&["1", "2", "4"]), "1, 2 and 4");
        assert_eq!(pans(&["1", "3"]), "1 and 3");
        assert_eq!(pans(&[]), "");
    }
}
