//! A first set-up: what stands in its fields already, and how what it does not ask stands, a line each.

use crate::domain::setting_up::{Answers, Field};

use super::forms::{Control, control, label, options};
use super::{Lang, format};

/// What stands in a field of a first set-up until somebody says otherwise: words that most kitchens would type.
#[must_use]
pub const fn proposed(field: Field, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    match field {
        Field::PanMark => Some("Lowest line in its wall"),
        Field::MachineName => Some("Filter machine"),
        Field::Filters => Some("paper"),
        _ => None,
    }
}

/// Over the list of what a first set-up did not ask.
#[must_use]
pub const fn rest_title(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "The rest, as this guide proposes"
}

/// What stands empty among it: "Left empty: Kept for · Usual days".
#[must_use]
pub fn left_empty(fields: &[Field], lang: Lang) -> String {
    let Lang::En = lang;
    let labels: Vec<&str> = fields.iter().map(|field| label(*field, lang)).collect();
    format!("Left empty: {}", labels.join(" · "))
}

/// The button that asks all of it.
#[must_use]
pub const fn ask_the_rest(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Look at the rest"
}

/// How a field stands, in a line: "Hot on a trading day: 5 h"; `None` where nothing was given.
#[must_use]
pub fn stands(field: Field, answers: &Answers, lang: Lang) -> Option<String> {
    let Lang::En = lang;
    let given = answers.get(field);
    let chosen = || {
        let all = options(field, answers.get(Field::PanHeat), lang);
        let words: Vec<String> = all
            .into_iter()
            .filter(|(key, _)| answers.has(field, key))
            .map(|(_, words)| words)
            .collect();
        words
    };
    let said = match control(field, answers.get(Field::AcidUnit)) {
        Control::Words | Control::Time | Control::Day => given.to_owned(),
        Control::Number(unit) if !given.is_empty() => format!("{given}{}{unit}", format::NBSP),
        Control::Number(_) => String::new(),
        Control::Listed | Control::One | Control::Many => {
            let words = chosen();
            if field == Field::TradingDays && words.len() == 7 {
                "every day".to_owned()
            } else {
                words.join(", ")
            }
        }
        Control::Tick if answers.yes(field) => "yes".to_owned(),
        Control::Tick => "no".to_owned(),
    };
    (!said.is_empty()).then(|| format!("{}: {said}", label(field, lang)))
}
