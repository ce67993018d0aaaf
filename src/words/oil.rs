//! How an oil's life is told: days left first, the word second, the score third; and what filtering did.

use crate::domain::fat::Fat;

use super::Lang;
use super::format;

/// The word for oil past its limit or with a sign that means change.
#[must_use]
pub const fn change_now(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Change now"
}

/// The word for oil with two days left at worst.
#[must_use]
pub const fn plan_change(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Plan the change"
}

/// The word for oil with five days left at worst.
#[must_use]
pub const fn keep_an_eye(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Keep an eye"
}

/// The word for oil that has barely aged.
#[must_use]
pub const fn fresh(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Fresh"
}

/// The word for all other oil.
#[must_use]
pub const fn good(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Good"
}

/// Days left as a range: "3–5 days", "1 day", "under a day".
#[must_use]
pub fn days_left(low: u32, high: u32, lang: Lang) -> String {
    let Lang::En = lang;
    match (low, high) {
        (_, 0) => "under a day".to_owned(),
        (1, 1) => format!("1{}day", format::NBSP),
        _ => format!("{}{}days", format::range(low, high), format::NBSP),
    }
}

/// Days left whose far end nobody can tell: "from 12 days".
#[must_use]
pub fn days_left_from(low: u32, lang: Lang) -> String {
    let Lang::En = lang;
    format!("from {}", format::count(low, "day", "days"))
}

/// More than 60 days: with this top-up the oil levels off under its limit.
#[must_use]
pub const fn not_at_this_top_up(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "not at this top-up"
}

/// Where it levels off: "settles at 18 %". `level` is already a number with its unit.
#[must_use]
pub fn settles_at(level: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("settles at {level}")
}

/// The owner's own count, until the log knows better: "your usual 9 days, today is day 4".
#[must_use]
pub fn usual_days(days: u32, today: u32, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "your usual {}, today is day{}{today}",
        format::count(days, "day", "days"),
        format::NBSP
    )
}

/// No reading in this fill.
#[must_use]
pub const fn from_usual_days(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "from usual days and priors"
}

/// What [`from_usual_days`] means, on a touch.
#[must_use]
pub const fn from_usual_days_why(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "This oil has no reading yet. The days come from your usual days and from published figures. One reading narrows them."
}

/// No limit in force, so no score.
#[must_use]
pub const fn choose_limit(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "choose a limit"
}

/// No oil in the pan, so no score.
#[must_use]
pub const fn no_oil(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "no oil in it"
}

/// The score: "score 46".
#[must_use]
pub fn score(score: u8, lang: Lang) -> String {
    let Lang::En = lang;
    format!("score {score}")
}

/// The score with its 80 % interval: "score 46, likely 38–55".
#[must_use]
pub fn score_between(score: u8, low: u8, high: u8, lang: Lang) -> String {
    let Lang::En = lang;
    format!(
        "score {score}, likely {}",
        format::range(u32::from(low), u32::from(high))
    )
}

/// What the score is.
#[must_use]
pub const fn score_why(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "100 is fresh, 0 is at your limit. It measures what heat and air have made of the oil."
}

/// The chance that the next service ends over the limit: "30 % chance of over, next service".
#[must_use]
pub fn chance_over(percent: u8, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{percent}{}% chance of being over after the next service", format::NBSP)
}

/// What the run just finished did: "Crumb out. Filtered 4 days in a row."
#[must_use]
pub fn filtering_did(days_in_a_row: u32, lang: Lang) -> String {
    let Lang::En = lang;
    let row = match days_in_a_row {
        0 | 1 => "Filtered today.".to_owned(),
        n => format!("Filtered {n} days in a row."),
    };
    format!("Crumb out. {row} The score measures what filtering cannot take out.")
}

/// Why the number stays where it was.
#[must_use]
pub const fn filtering_why(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Filtering takes crumb out before it burns: cleaner taste, less smoke, slower wear. What heat and air have already \
     made of the oil is dissolved in it and goes through any filter. Only fresh oil thins that."
}

/// A change sign overrules the number: "Change now: smoke at frying temperature".
#[must_use]
pub fn change_because(sign: &str, lang: Lang) -> String {
    let Lang::En = lang;
    format!("{}: {sign}", change_now(lang))
}

/// Where the change signs come from.
#[must_use]
pub const fn change_sign_source(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Centre for Food Safety, Hong Kong, 2019/2020: change on off smell, smoke or foam"
}

/// No published fresh value for this fat.
#[must_use]
pub const fn fresh_value_assumed(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "No published fresh value for this fat: 5 ± 2 % is assumed."
}

/// The forecast's caveat.
#[must_use]
pub const fn forecast_caveat(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "A forecast, never a verdict on food. Smoke, lasting foam or an off smell: change, whatever the number says."
}

/// The fat's name.
#[must_use]
pub const fn fat_name(fat: Fat, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match fat {
        Fat::Rapeseed => "Rapeseed",
        Fat::HighOleicRapeseed => "High-oleic rapeseed",
        Fat::Sunflower => "Sunflower",
        Fat::Soya => "Soya",
        Fat::Cottonseed => "Cottonseed",
        Fat::Maize => "Maize",
        Fat::Groundnut => "Groundnut",
        Fat::PalmOlein => "Palm olein",
        Fat::Palm => "Palm",
        Fat::Dripping => "Dripping",
        Fat::Lard => "Lard",
        Fat::Blend => "Blend",
    }
}

/// What must be known about a fat when it is chosen; `None` where nothing must.
#[must_use]
pub const fn fat_note(fat: Fat, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    match fat {
        Fat::Groundnut => Some("Peanut: declare it, refined too. Change your allergen sheet."),
        Fat::Dripping => {
            Some("From beef: neither vegetarian nor, without a basis, halal. Sets; needs warm-up and melt.")
        }
        Fat::Lard => Some("From pork: neither vegetarian nor halal. Sets; needs warm-up and melt."),
        Fat::Palm => Some("Sets when cold; needs warm-up and melt."),
        Fat::Blend => Some("Treated as solid and as unknown to every promise. Read its label."),
        Fat::Soya => Some("Fully refined soya oil need not be declared; other soya oil must be. Read its label."),
        Fat::Rapeseed | Fat::HighOleicRapeseed | Fat::Sunflower | Fat::Cottonseed | Fat::Maize | Fat::PalmOlein => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(s: &str) -> String {
        s.replace(format::NBSP, " ")
    }

    #[test]
    fn days_left_read_as_a_frier_says_them() {
        assert_eq!(plain(&days_left(3, 5, Lang::En)), "3–5 days");
        assert_eq!(plain(&days_left(1, 1, Lang::En)), "1 day");
        assert_eq!(plain(&days_left(4, 4, Lang::En)), "4 days");
        assert_eq!(plain(&days_left(0, 0, Lang::En)), "under a day");
        assert_eq!(plain(&days_left(0, 2, Lang::En)), "0–2 days");
        assert_eq!(plain(&days_left_from(12, Lang::En)), "from 12 days");
        assert_eq!(plain(&usual_days(9, 4, Lang::En)), "your usual 9 days, today is day 4");
        assert_eq!(settles_at("18 %", Lang::En), "settles at 18 %");
    }

    #[test]
    fn a_finished_run_hears_what_it_did_and_why_the_number_stands() {
        let said = filtering_did(4, Lang::En);
        assert_eq!(
            said,
            "Crumb out. Filtered 4 days in a row. The score measures what filtering cannot take out."
        );
        assert!(filtering_did(1, Lang::En).starts_with("Crumb out. Filtered today."));
    }
}
