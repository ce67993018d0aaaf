//! A country's own words and measures, from one table: what is written in the words of the United Kingdom, with °C,
//! litres and kilograms, is said in those of the kitchen's country as it is put on the screen.
//!
//! So no sentence is written twice, and none can be forgotten. What the kitchen itself typed is said as it was typed:
//! its names are handed in, and a free text is marked by [`theirs`]. All of the table is common practice, no source.

use std::borrow::Cow;

use crate::domain::measure::{Measure, rounded};

use super::format::{NBSP, decimal};

/// Between the figure and the unit of how far two of them lie apart: 5 °C cooler is 9 °F, not 41.
pub const APART: char = '\u{202f}';
/// Around words of the kitchen's own that a table could change: Unicode's marks for a piece of text to be left alone.
const THEIRS: (char, char) = ('\u{2068}', '\u{2069}');

/// A word of the United Kingdom and the same elsewhere, in the singular; an empty column says the same as here.
struct Row {
    uk: &'static str,
    us: &'static str,
    /// Australia and New Zealand.
    au: &'static str,
}

const fn row(uk: &'static str, us: &'static str, au: &'static str) -> Row {
    Row { uk, us, au }
}

/// Longer words stand before what they begin with.
const TABLE: &[Row] = &[
    row("high-oleic rapeseed", "high-oleic canola", "high-oleic canola"),
    row("rapeseed", "canola", "canola"),
    row("groundnut", "peanut", "peanut"),
    row("maize", "corn", ""),
    row("dripping", "beef tallow", ""),
    row("topped up", "topped off", ""),
    row("top-up", "top-off", ""),
    row("top up", "top off", ""),
    row("under the range", "under the fryer bank", "under the cooker"),
    row("into the range", "into the fryer bank", "into the cooker"),
    row("gas tap", "gas valve", ""),
    row("scrap", "crumb", "crumb"),
    row("frier", "fry cook", "cook"),
    row("torch", "flashlight", ""),
    row("colour", "color", ""),
    row("litre", "gallon", ""),
    row("kilogram", "pound", ""),
    row("pan", "vat", "vat"),
];

/// Whose words are said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Speech {
    /// The United Kingdom's and Ireland's, and everybody else's who has none of their own.
    #[default]
    Uk,
    /// The United States', with their measures.
    Us,
    /// Australia's and New Zealand's.
    Au,
}

/// The words and measures of one kitchen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Local {
    speech: Speech,
    /// Names the kitchen gave that the table would change.
    names: Vec<String>,
}

impl Speech {
    /// That of a country (ISO 3166-1 alpha-2, upper case).
    #[must_use]
    pub fn of(country: &str) -> Self {
        match country {
            "US" => Self::Us,
            "AU" | "NZ" => Self::Au,
            _ => Self::Uk,
        }
    }

    fn column(self, row: &Row) -> &'static str {
        match self {
            Self::Uk => "",
            Self::Us => row.us,
            Self::Au => row.au,
        }
    }
}

impl Local {
    /// Those of a country, for a kitchen with these names.
    #[must_use]
    pub fn of<'a>(country: &str, names: impl Iterator<Item = &'a str>) -> Self {
        let mut local = Self {
            speech: Speech::of(country),
            names: Vec::new(),
        };
        if local.speech != Speech::Uk {
            let changed = names.filter(|name| local.translated(name).is_some());
            let changed = changed.map(str::to_owned).collect();
            local.names = changed;
        }
        local
    }

    /// A text as it is said here.
    #[must_use]
    pub fn said(&self, text: Cow<'static, str>) -> Cow<'static, str> {
        if self.speech == Speech::Uk && !text.contains(THEIRS.0) {
            return text;
        }
        self.translated(&text).map_or(text, Cow::Owned)
    }

    /// The unit a number is typed in, where it is not the one it is written in here.
    #[must_use]
    pub fn typed_in(&self, unit: &str) -> Option<Measure> {
        Measure::from_key(unit).filter(|_| self.speech == Speech::Us)
    }

    /// The text said otherwise; `None` where nothing of it is.
    fn translated(&self, text: &str) -> Option<String> {
        if let Some(measure) = self.typed_in(text) {
            return Some(measure.us_unit().to_owned());
        }
        let mut out = String::new();
        let mut rest = text;
        let mut before = None;
        let mut changed = false;
        while let Some(first) = rest.chars().next() {
            let begins = !before.is_some_and(is_letter);
            let piece = match begins {
                _ if first == THEIRS.0 => Some(left_alone(rest)),
                true => self.piece(rest),
                false => None,
            };
            let taken = match piece {
                Some((taken, said)) => {
                    changed |= rest.get(..taken) != Some(said.as_ref());
                    out.push_str(&said);
                    taken
                }
                None => {
                    out.push(first);
                    first.len_utf8()
                }
            };
            let (done, next) = rest.split_at_checked(taken)?;
            (before, rest) = (done.chars().next_back(), next);
        }
        changed.then_some(out)
    }

    /// What stands at the start of `rest` and is said as one: how much of it, and how.
    fn piece<'a>(&self, rest: &'a str) -> Option<(usize, Cow<'a, str>)> {
        let named = self.names.iter().find(|name| starts_with_word(rest, name));
        if let Some(name) = named {
            return rest.get(..name.len()).map(|name| (name.len(), Cow::Borrowed(name)));
        }
        if figures(rest) > 0 {
            return Some(self.number(rest));
        }
        let measured = "°C";
        if self.speech == Speech::Us && rest.starts_with(measured) {
            return Some((measured.len(), Cow::Borrowed(Measure::Temp.us_unit())));
        }
        TABLE.iter().find_map(|row| self.word(rest, row))
    }

    /// A word of the table, alone or in the plural, written as it was: low, Capital or ALL CAPITALS.
    fn word<'a>(&self, rest: &'a str, row: &Row) -> Option<(usize, Cow<'a, str>)> {
        let here = self.speech.column(row);
        let found = rest.get(..row.uk.len())?;
        if here.is_empty() || !found.eq_ignore_ascii_case(row.uk) {
            return None;
        }
        let after = rest.get(row.uk.len()..)?;
        let plural = after.chars().next().filter(|c| matches!(c, 's' | 'S'));
        let after = plural.map_or(Some(after), |_| after.get(1..))?;
        if after.starts_with(is_letter) {
            return None;
        }
        let mut said = here.to_owned();
        let mut letters = found.chars().filter(char::is_ascii_alphabetic);
        if letters.clone().nth(1).is_some_and(|c| c.is_ascii_uppercase()) {
            said.make_ascii_uppercase();
        } else if letters.next().is_some_and(|c| c.is_ascii_uppercase()) {
            said = super::format::first_up(&said);
        }
        said.extend(plural);
        Some((row.uk.len() + usize::from(plural.is_some()), Cow::Owned(said)))
    }

    /// A number, or two with a dash between, and the unit after it where it is one that is counted otherwise.
    fn number<'a>(&self, rest: &'a str) -> (usize, Cow<'a, str>) {
        let first = figures(rest);
        let dash = rest.get(first..).filter(|more| more.starts_with('–'));
        let second = dash.and_then(|more| more.get('–'.len_utf8()..)).map_or(0, figures);
        let whole = if second == 0 {
            first
        } else {
            first + '–'.len_utf8() + second
        };
        let same = (whole, Cow::Borrowed(rest.get(..whole).unwrap_or_default()));
        let said = rest
            .get(..whole)
            .and_then(|numbers| self.measured(numbers, rest.get(whole..)?));
        said.map_or(same, |(unit, said)| (whole + unit, Cow::Owned(said)))
    }

    /// Numbers with what follows them, where that is such a unit: how much of it is, and both as said here.
    fn measured(&self, numbers: &str, after: &str) -> Option<(usize, String)> {
        let gap = after.chars().next().filter(|c| matches!(*c, NBSP | ' ' | APART))?;
        let after = after.get(gap.len_utf8()..)?;
        let measure = Measure::ALL
            .iter()
            .copied()
            .find(|m| starts_with_word(after, m.key()))?;
        self.typed_in(measure.key())?;
        let convert = |thousandths| match gap {
            APART => measure.difference_to_us(thousandths),
            _ => measure.to_us(thousandths),
        };
        let said: Option<Vec<String>> = numbers
            .split('–')
            .map(|number| Some(shown(convert(thousandths(number)?), measure.us_places())))
            .collect();
        let said = format!("{}{NBSP}{}", said?.join("–"), measure.us_unit());
        Some((gap.len_utf8() + measure.key().len(), said))
    }
}

/// Marks words the kitchen typed, so that they are said as they stand. Only where some table could change them: what is
/// put together elsewhere stays plain.
#[must_use]
pub fn theirs(text: &str) -> Cow<'_, str> {
    let plain = |speech| {
        let local = Local {
            speech,
            names: Vec::new(),
        };
        local.translated(text).is_none()
    };
    if plain(Speech::Us) && plain(Speech::Au) {
        Cow::Borrowed(text)
    } else {
        Cow::Owned(format!("{}{text}{}", THEIRS.0, THEIRS.1))
    }
}

/// A number in our own unit as it stands in a field here; anything else as it is.
#[must_use]
pub fn to_field(own: &str, measure: Measure) -> String {
    thousandths(own).map_or_else(|| own.to_owned(), |n| shown(measure.to_us(n), measure.us_places()))
}

/// What was typed in a field here, in our own unit; anything else as it is.
#[must_use]
pub fn from_field(typed: &str, measure: Measure) -> String {
    thousandths(typed).map_or_else(|| typed.to_owned(), |n| shown(measure.from_us(n), measure.own_places()))
}

fn shown(thousandths: i64, places: u32) -> String {
    decimal(rounded(thousandths, places), places)
}

/// A number as it is typed, with a point or a comma, in thousandths.
fn thousandths(text: &str) -> Option<i64> {
    let text = text.trim();
    let (sign, text) = text.strip_prefix('-').map_or((1, text), |text| (-1, text));
    crate::domain::quick::parts(text, 3).map(|n| sign * i64::from(n))
}

/// How long the number is that a text begins with: figures, and a point with more of them.
fn figures(text: &str) -> usize {
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let sign = usize::from(text.starts_with('-'));
    let whole = text.get(sign..).map_or(0, digits);
    if whole == 0 {
        return 0;
    }
    let rest = text
        .get(sign + whole..)
        .and_then(|rest| rest.strip_prefix('.'))
        .map(digits);
    sign + whole + rest.filter(|rest| *rest > 0).map_or(0, |rest| 1 + rest)
}

/// Whether a word goes on with it: a figure or a letter of the Latin alphabets. The tables of all alphabets would weigh
/// more than all that is said here.
fn is_letter(c: char) -> bool {
    c.is_ascii_alphanumeric() || matches!(c, '\u{c0}'..='\u{24f}')
}

fn starts_with_word(text: &str, word: &str) -> bool {
    let rest = text.strip_prefix(word);
    !word.is_empty() && rest.is_some_and(|rest| !rest.starts_with(is_letter))
}

/// Words the kitchen typed: without their marks, as they stand.
fn left_alone(rest: &str) -> (usize, Cow<'_, str>) {
    let inner = rest.strip_prefix(THEIRS.0).unwrap_or(rest);
    let (inner, end) = match inner.split_once(THEIRS.1) {
        Some((inner, _)) => (inner, THEIRS.1.len_utf8()),
        None => (inner, 0),
    };
    (THEIRS.0.len_utf8() + inner.len() + end, Cow::Borrowed(inner))
}
