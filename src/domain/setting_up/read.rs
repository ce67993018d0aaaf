//! Reads one field: the value, or the fault noted beside it.

use super::{Answers, Fault, Field, Wrong};
use crate::domain::time::Day;
use crate::domain::units::{Minutes, Share, Temp, Volume};

/// The most letters of a name, and of a line of words.
pub(super) const NAME_MOST: usize = 40;
pub(super) const LINE_MOST: usize = 120;

/// Reads fields and keeps what is wrong with them.
pub(super) struct Reader<'a> {
    pub(super) answers: &'a Answers,
    pub(super) wrongs: &'a mut Vec<Wrong>,
}

impl Reader<'_> {
    /// Notes a fault. Gives nothing, so that a check can end with it.
    pub(super) fn refuse<T>(&mut self, field: Field, why: Fault) -> Option<T> {
        self.wrongs.push(Wrong { field, why });
        None
    }

    /// Words that must be there.
    pub(super) fn words(&mut self, field: Field, most: usize) -> Option<String> {
        match self.words_if_any(field, most) {
            Some(None) => self.refuse(field, Fault::Missing),
            Some(Some(words)) => Some(words),
            None => None,
        }
    }

    /// Words that may be missing.
    pub(super) fn words_if_any(&mut self, field: Field, most: usize) -> Option<Option<String>> {
        let words = self.answers.get(field).trim();
        if words.chars().count() > most {
            return self.refuse(field, Fault::TooLong { most });
        }
        Some((!words.is_empty()).then(|| words.to_owned()))
    }

    /// A number in thousandths, from `least` to `most` whole ones; `None` inside for a field left empty.
    fn thousandths(&mut self, field: Field, least: u32, most: u32) -> Option<Option<u32>> {
        let typed = self.answers.get(field).trim();
        if typed.is_empty() {
            return Some(None);
        }
        let Some(value) = thousandths(typed) else {
            return self.refuse(field, Fault::NotANumber);
        };
        if value < u64::from(least) * 1000 || value > u64::from(most) * 1000 {
            return self.refuse(field, Fault::OutOfRange { least, most });
        }
        match u32::try_from(value) {
            Ok(value) => Some(Some(value)),
            Err(_) => self.refuse(field, Fault::OutOfRange { least, most }),
        }
    }

    fn must<T>(&mut self, field: Field, read: Option<Option<T>>) -> Option<T> {
        match read {
            Some(None) => self.refuse(field, Fault::Missing),
            Some(value) => value,
            None => None,
        }
    }

    /// A whole number that may be missing.
    pub(super) fn whole_if_any(&mut self, field: Field, least: u32, most: u32) -> Option<Option<u16>> {
        match self.thousandths(field, least, most)? {
            None => Some(None),
            Some(value) if value % 1000 != 0 => self.refuse(field, Fault::NotANumber),
            Some(value) => Some(u16::try_from(value / 1000).ok()),
        }
    }

    /// A whole number that must be there.
    pub(super) fn whole(&mut self, field: Field, least: u32, most: u32) -> Option<u16> {
        let read = self.whole_if_any(field, least, most);
        self.must(field, read)
    }

    /// Litres that must be there.
    pub(super) fn litres(&mut self, field: Field, least: u32, most: u32) -> Option<Volume> {
        let read = self.thousandths(field, least, most);
        Volume::from_ml(self.must(field, read)?)
    }

    /// Hundredths of the field's unit, which may be missing.
    pub(super) fn hundredths_if_any(&mut self, field: Field, least: u32, most: u32) -> Option<Option<u16>> {
        let read = self.thousandths(field, least, most)?;
        Some(read.and_then(|value| u16::try_from((value + 5) / 10).ok()))
    }

    /// A percentage that must be there.
    pub(super) fn percent(&mut self, field: Field, least: u32, most: u32) -> Option<Share> {
        let read = self.hundredths_if_any(field, least, most);
        Share::from_cpc(self.must(field, read)?)
    }

    /// A temperature that must be there, in °C.
    pub(super) fn temp(&mut self, field: Field, least: u32, most: u32) -> Option<Temp> {
        let read = self.thousandths(field, least, most);
        let tenths = (self.must(field, read)? + 50) / 100;
        Temp::from_dc(i16::try_from(tenths).ok()?)
    }

    /// Hours, as minutes, that must be there.
    pub(super) fn hours(&mut self, field: Field, most: u32) -> Option<Minutes> {
        let read = self.thousandths(field, 0, most);
        let minutes = (u64::from(self.must(field, read)?) * 60 + 500) / 1000;
        Minutes::new(u16::try_from(minutes).ok()?)
    }

    /// A time of day that may be missing.
    pub(super) fn time_if_any(&mut self, field: Field) -> Option<Option<Minutes>> {
        let typed = self.answers.get(field).trim();
        if typed.is_empty() {
            return Some(None);
        }
        match minute_of_day(typed) {
            Some(minute) => Some(Some(minute)),
            None => self.refuse(field, Fault::NotATime),
        }
    }

    /// A time of day that must be there.
    pub(super) fn time(&mut self, field: Field) -> Option<Minutes> {
        let read = self.time_if_any(field);
        self.must(field, read)
    }

    /// A day that may be missing.
    pub(super) fn day_if_any(&mut self, field: Field) -> Option<Option<Day>> {
        let typed = self.answers.get(field).trim();
        if typed.is_empty() {
            return Some(None);
        }
        match Day::spelt(typed) {
            Some(day) => Some(Some(day)),
            None => self.refuse(field, Fault::NotADay),
        }
    }

    /// A choice that must be made; `read` is the enum's own `from_key`.
    pub(super) fn one<T>(&mut self, field: Field, read: impl Fn(&str) -> Option<T>) -> Option<T> {
        match read(self.answers.get(field)) {
            Some(value) => Some(value),
            None => self.refuse(field, Fault::Missing),
        }
    }

    /// A set, perhaps of none; keys nobody knows are left out.
    pub(super) fn set<T>(&self, field: Field, read: impl Fn(&str) -> Option<T>) -> Vec<T> {
        self.answers.set(field).filter_map(read).collect()
    }
}

/// A number as typed, with a comma or a point, in thousandths; `None` for anything else.
fn thousandths(typed: &str) -> Option<u64> {
    let (whole, part) = typed.split_once(['.', ',']).unwrap_or((typed, ""));
    let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() && part.is_empty() || whole.len() > 7 || part.len() > 3 || !digits(whole) || !digits(part) {
        return None;
    }
    let whole: u64 = if whole.is_empty() { 0 } else { whole.parse().ok()? };
    let part: u64 = format!("{part:0<3}").parse().ok()?;
    Some(whole * 1000 + part)
}

/// `5:00` or `05:00` as a minute of the day.
fn minute_of_day(typed: &str) -> Option<Minutes> {
    let (hour, minute) = typed.split_once(':')?;
    // A browser may hand over seconds too.
    let minute = minute.split_once(':').map_or(minute, |(minute, _)| minute);
    let (hour, minute): (u16, u16) = (hour.parse().ok()?, minute.parse().ok()?);
    (hour < 24 && minute < 60).then(|| Minutes::new(hour * 60 + minute))?
}

/// A minute of the day as a time field shows it.
pub(super) fn as_time(minute: Minutes) -> String {
    let minute = minute.get() % 1440;
    format!("{:02}:{:02}", minute / 60, minute % 60)
}

/// Parts of ten to the `places` as typed: (1250, 3) is `1.25`.
pub(super) fn as_number(parts: u32, places: usize) -> String {
    let scale = 10_u32.pow(u32::try_from(places).unwrap_or(0));
    let rest = format!("{:0places$}", parts % scale);
    let rest = rest.trim_end_matches('0');
    if rest.is_empty() {
        (parts / scale).to_string()
    } else {
        format!("{}.{rest}", parts / scale)
    }
}

/// Keys of a set as one answer.
pub(super) fn as_set<'a>(keys: impl IntoIterator<Item = &'a str>) -> String {
    keys.into_iter().collect::<Vec<_>>().join(",")
}

/// Which days of the week a set names, Monday 0 to Sunday 6.
pub(super) fn weekdays(answers: &Answers, field: Field) -> [bool; 7] {
    ["0", "1", "2", "3", "4", "5", "6"].map(|key| answers.has(field, key))
}

/// Days of the week as such a set.
pub(super) fn as_weekdays(days: [bool; 7]) -> String {
    let keys = days.iter().zip(["0", "1", "2", "3", "4", "5", "6"]);
    as_set(keys.filter(|(on, _)| **on).map(|(_, key)| key))
}
