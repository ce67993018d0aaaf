//! How a stored shape is read from JSON and written to it. A shape is declared once, by `stored!`: from that come its
//! fields, its reader, its writer and its schema.

use std::borrow::Cow;

use crate::store::json::{Fields, Json, Out};

/// Something with a stored form.
pub trait Stored: Sized {
    /// Reads it.
    ///
    /// # Errors
    /// What is wrong with it.
    fn from_json(json: Json<'_>) -> Result<Self, String>;

    /// Writes it.
    fn put(&self, out: &mut Out);

    /// What it is where a field is left out; `None` for what may not be left out.
    fn left_out() -> Option<Self> {
        None
    }

    /// Stands in for it after a fault, so that a shape is read to its end; nobody ever sees it.
    fn blank() -> Self;

    /// Whether its field is left out.
    fn is_left_out(&self) -> bool {
        false
    }
}

/// An object being read field by field. Its first fault is kept to the end and all after it is blank: a way out after
/// each field of each shape, with all that is to be dropped there, would weigh as much as the rest of the store.
pub struct Reading<'a> {
    fields: Fields<'a>,
    fault: Option<String>,
}

impl<'a> Reading<'a> {
    /// Begins.
    ///
    /// # Errors
    /// That it is no object, or uses a name twice.
    pub fn of(json: Json<'a>) -> Result<Self, String> {
        fields(json).map(Self::from)
    }

    /// Takes a field.
    #[inline(never)]
    pub fn take<T: Stored>(&mut self, name: &str) -> T {
        let read = match self.fields.take(name) {
            Some(json) => T::from_json(json).map_err(|why| self.fail(why)).ok(),
            None => T::left_out().or_else(|| {
                self.fail(missing(name));
                None
            }),
        };
        read.unwrap_or_else(T::blank)
    }

    /// The first fault is the one that is told.
    #[inline(never)]
    fn fail(&mut self, why: String) {
        self.fault.get_or_insert(why);
    }

    /// Ends it: nothing may be left.
    ///
    /// # Errors
    /// The first fault; or the field nobody knows, and those that are known.
    pub fn end(self, known: &[&str]) -> Result<(), String> {
        match self.fault {
            Some(why) => Err(why),
            None => end(&self.fields, known),
        }
    }
}

impl<'a> From<Fields<'a>> for Reading<'a> {
    fn from(fields: Fields<'a>) -> Self {
        Self { fields, fault: None }
    }
}

/// Writes a field, unless it is left out.
pub fn put<T: Stored>(out: &mut Out, name: &str, value: &T) {
    if !value.is_left_out() {
        out.name(name);
        value.put(out);
    }
}

#[inline(never)]
fn missing(name: &str) -> String {
    format!("missing field `{name}`")
}

/// The fields of an object.
///
/// # Errors
/// That it is something else, or uses a name twice.
pub fn fields(json: Json<'_>) -> Result<Fields<'_>, String> {
    match json {
        Json::Object(fields) if fields.repeats() => Err("the same name twice in one object".to_owned()),
        Json::Object(fields) => Ok(fields),
        other => Err(odd(&other, "an object")),
    }
}

/// That nothing is left of an object.
///
/// # Errors
/// The field nobody knows, and those that are known.
fn end(fields: &Fields<'_>, known: &[&str]) -> Result<(), String> {
    let Some(name) = fields.left() else {
        return Ok(());
    };
    let known: Vec<String> = known.iter().map(|name| format!("`{name}`")).collect();
    let expected = match known.as_slice() {
        [one, other] => format!("{one} or {other}"),
        _ => format!("one of {}", known.join(", ")),
    };
    Err(format!("unknown field `{name}`, expected {expected}"))
}

/// What stands where something else is expected.
#[must_use]
pub fn odd(json: &Json<'_>, expected: &str) -> String {
    let found = match json {
        Json::Word(word) => format!("string {word:?}"),
        Json::Whole(number) => format!("integer `{number}`"),
        Json::Flag(flag) => format!("boolean `{flag}`"),
        Json::List(_) => "a list".to_owned(),
        Json::Object(_) => "an object".to_owned(),
    };
    match json {
        Json::Word(_) | Json::Whole(_) => format!("invalid value: {found}, expected {expected}"),
        _ => format!("invalid type: {found}, expected {expected}"),
    }
}

/// The word in a value.
///
/// # Errors
/// That it is something else.
pub fn word(json: Json<'_>) -> Result<Cow<'_, str>, String> {
    match json {
        Json::Word(word) => Ok(word),
        other => Err(odd(&other, "a word")),
    }
}

/// The number in a value, which must lie in `least` to `most`.
///
/// # Errors
/// That it is something else, or out of range.
pub fn whole(json: &Json<'_>, least: i64, most: i64, expected: &str) -> Result<i64, String> {
    match json {
        Json::Whole(number) if (least..=most).contains(number) => Ok(*number),
        other => Err(odd(other, expected)),
    }
}

impl Stored for String {
    fn blank() -> Self {
        Self::new()
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        word(json).map(Cow::into_owned)
    }

    fn put(&self, out: &mut Out) {
        out.word(self);
    }
}

impl Stored for bool {
    fn blank() -> Self {
        false
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        match json {
            Json::Flag(flag) => Ok(flag),
            other => Err(odd(&other, "true or false")),
        }
    }

    fn put(&self, out: &mut Out) {
        out.flag(*self);
    }
}

macro_rules! numbers {
    ($($number:ty),+) => {
        $(impl Stored for $number {
            fn blank() -> Self {
                0
            }

            fn from_json(json: Json<'_>) -> Result<Self, String> {
                let number = whole(&json, Self::MIN.into(), Self::MAX.into(), "a whole number in range")?;
                Self::try_from(number).map_err(|_| odd(&json, "a whole number in range"))
            }

            fn put(&self, out: &mut Out) {
                out.whole((*self).into());
            }
        })+
    };
}

numbers!(u8, u16, u32, i16, i64);

impl<T: Stored> Stored for Option<T> {
    fn blank() -> Self {
        None
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        T::from_json(json).map(Some)
    }

    fn put(&self, out: &mut Out) {
        if let Some(value) = self {
            value.put(out);
        }
    }

    fn left_out() -> Option<Self> {
        Some(None)
    }

    fn is_left_out(&self) -> bool {
        self.is_none()
    }
}

impl<T: Stored> Stored for Vec<T> {
    fn blank() -> Self {
        Self::new()
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        match json {
            Json::List(list) => list.into_iter().map(T::from_json).collect(),
            other => Err(odd(&other, "a list")),
        }
    }

    fn put(&self, out: &mut Out) {
        out.open('[');
        self.iter().for_each(|one| one.put(out));
        out.close(']');
    }
}

impl<T: Stored, const N: usize> Stored for [T; N] {
    fn blank() -> Self {
        std::array::from_fn(|_| T::blank())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let list = Vec::from_json(json)?;
        Self::try_from(list).map_err(|list| format!("a list of {}, expected {N}", list.len()))
    }

    fn put(&self, out: &mut Out) {
        out.open('[');
        self.iter().for_each(|one| one.put(out));
        out.close(']');
    }
}

/// A flag or list that is left out where it says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Unless<T>(pub T);

impl<T: Stored + Default + PartialEq> Stored for Unless<T> {
    fn blank() -> Self {
        Self(T::default())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        T::from_json(json).map(Self)
    }

    fn put(&self, out: &mut Out) {
        self.0.put(out);
    }

    fn left_out() -> Option<Self> {
        Some(Self(T::default()))
    }

    fn is_left_out(&self) -> bool {
        self.0 == T::default()
    }
}

/// A value kept as JSON, for who reads it by another's kind.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Verbatim(pub String);

impl Stored for Verbatim {
    fn blank() -> Self {
        Self(String::new())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let mut out = Out::new();
        json.put(&mut out);
        Ok(Self(out.into_text()))
    }

    fn put(&self, out: &mut Out) {
        out.raw(&self.0);
    }
}

/// Declares a stored shape: an object with these fields, in this order, and no others.
macro_rules! stored {
    (
        $(#[$about:meta])*
        $vis:vis struct $name:ident {
            $($(#[$note:meta])* $fvis:vis $field:ident : $kind:ty),+ $(,)?
        }
    ) => {
        #[derive(Debug)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema), serde(deny_unknown_fields))]
        $(#[$about])*
        $vis struct $name {
            $($(#[$note])* $fvis $field: $kind),+
        }

        impl $crate::store::wire::stored::Stored for $name {
            fn from_json(json: $crate::store::json::Json<'_>) -> Result<Self, String> {
                use $crate::store::wire::stored as shape;
                let mut reading = shape::Reading::of(json)?;
                let read = Self {
                    $($field: reading.take(stringify!($field))),+
                };
                reading.end(&[$(stringify!($field)),+]).map(|()| read)
            }

            fn blank() -> Self {
                Self {
                    $($field: $crate::store::wire::stored::Stored::blank()),+
                }
            }

            fn put(&self, out: &mut $crate::store::json::Out) {
                use $crate::store::wire::stored as shape;
                out.open('{');
                $(shape::put(out, stringify!($field), &self.$field);)+
                out.close('}');
            }
        }
    };
}

pub(crate) use stored;
