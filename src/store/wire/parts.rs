//! Stored shapes that several bodies share.

use std::borrow::Cow;

use super::scalar::{AsText, Text, Whole};
use super::stored::{Stored, fields, odd, stored, word};
use crate::domain::claim::{Exposure, Exposures};
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::setup::Held;
use crate::domain::units::{Amount, Typed, Unit, Volume};
use crate::store::json::{Json, Out};

/// A JSON object whose names are data: kept in their order, each name once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pairs<K, V>(pub Vec<(K, V)>);

/// A value that can be the name of another.
pub trait Name: Sized {
    /// The name.
    fn name(&self) -> Cow<'_, str>;

    /// What a name stands for.
    fn named(name: &str) -> Result<Self, String>;
}

impl Name for String {
    fn name(&self) -> Cow<'_, str> {
        Cow::Borrowed(self)
    }

    fn named(name: &str) -> Result<Self, String> {
        Ok(name.to_owned())
    }
}

impl<T: AsText> Name for Text<T> {
    fn name(&self) -> Cow<'_, str> {
        self.0.write()
    }

    fn named(name: &str) -> Result<Self, String> {
        Self::from_json(Json::Word(name.into()))
    }
}

impl<K: Name, V: Stored> Stored for Pairs<K, V> {
    fn blank() -> Self {
        Self(Vec::new())
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        let pair = |(name, value): (Cow<'_, str>, Json<'_>)| Ok((K::named(&name)?, V::from_json(value)?));
        fields(json)?.into_pairs().map(pair).collect::<Result<_, _>>().map(Self)
    }

    fn put(&self, out: &mut Out) {
        out.open('{');
        for (name, value) in &self.0 {
            out.name(&name.name());
            value.put(out);
        }
        out.close('}');
    }
}

/// What an item of evidence was answered with: a word or a whole number.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(untagged))]
pub enum Answer {
    /// An answer's key, or somebody's own words.
    Word(String),
    /// A number in the unit the item's key ends with.
    Number(i32),
}

impl Stored for Answer {
    fn blank() -> Self {
        Self::Number(0)
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        match json {
            Json::Word(word) => Ok(Self::Word(word.into_owned())),
            Json::Whole(number) => i32::try_from(number)
                .map(Self::Number)
                .map_err(|_| "a number out of range".to_owned()),
            other => Err(odd(&other, "a word or a whole number")),
        }
    }

    fn put(&self, out: &mut Out) {
        match self {
            Self::Word(word) => out.word(word),
            Self::Number(number) => out.whole((*number).into()),
        }
    }
}

/// What was seen: item to answer.
pub type Seens = Pairs<Text<Item>, Answer>;

/// Evidence as stored.
pub fn write_evidence(evidence: &Evidence) -> Seens {
    let answer = |seen: &Seen| match seen {
        Seen::Is(word) => Answer::Word(word.key().to_owned()),
        Seen::Number(number) => Answer::Number(*number),
        Seen::Words(words) => Answer::Word(words.clone()),
    };
    Pairs(
        evidence
            .iter()
            .map(|(item, seen)| (Text(*item), answer(seen)))
            .collect(),
    )
}

/// Stored evidence, each item answered in its own way: by number, in free words, or by a known answer.
pub fn read_evidence(stored: Seens) -> Result<Evidence, String> {
    let seen = |(Text(item), answer): (Text<Item>, Answer)| match answer {
        Answer::Number(number) if item.is_number() => Ok((item, Seen::Number(number))),
        Answer::Word(words) if item.is_words() => Ok((item, Seen::Words(words))),
        Answer::Word(word) if !item.is_number() => match Word::from_key(&word) {
            Some(word) => Ok((item, Seen::Is(word))),
            None => Err(format!("{} was answered with an unknown word, {word:?}", item.key())),
        },
        Answer::Number(_) | Answer::Word(_) => Err(format!("{} was answered in the wrong way", item.key())),
    };
    stored.0.into_iter().map(seen).collect()
}

stored! {
    /// A quantity as it was typed.
    pub struct TypedV1 {
        thousandths: u32,
        unit: Text<Unit>,
    }
}

/// An amount as its two stored fields: millilitres at 20 °C, and what was typed.
pub const fn write_amount(amount: Amount) -> (Whole<Volume>, TypedV1) {
    let Typed { thousandths, unit } = amount.typed;
    let typed = TypedV1 {
        thousandths,
        unit: Text(unit),
    };
    (Whole(amount.volume), typed)
}

/// An amount from its two stored fields.
pub const fn read_amount(Whole(volume): Whole<Volume>, typed: TypedV1) -> Amount {
    let TypedV1 {
        thousandths,
        unit: Text(unit),
    } = typed;
    Amount {
        volume,
        typed: Typed { thousandths, unit },
    }
}

/// A set of exposures, in declaration order.
pub fn write_exposures(set: Exposures) -> Vec<Text<Exposure>> {
    set.iter().map(Text).collect()
}

/// A stored set of exposures.
pub fn read_exposures(stored: &[Text<Exposure>]) -> Exposures {
    stored
        .iter()
        .fold(Exposures::NONE, |set, Text(exposure)| set.with(*exposure))
}

/// What a machine had met when it was set up: a list, or the one word `unknown`.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(untagged))]
pub enum HeldV1 {
    /// These and nothing else.
    Known(Vec<Text<Exposure>>),
    /// Nobody knows.
    Unknown(Unknown),
}

/// The word `unknown`.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum Unknown {
    /// It is not known.
    Unknown,
}

impl From<Held> for HeldV1 {
    fn from(held: Held) -> Self {
        match held {
            Held::Known(set) => Self::Known(write_exposures(set)),
            Held::Unknown => Self::Unknown(Unknown::Unknown),
        }
    }
}

impl From<HeldV1> for Held {
    fn from(held: HeldV1) -> Self {
        match held {
            HeldV1::Known(list) => Self::Known(read_exposures(&list)),
            HeldV1::Unknown(Unknown::Unknown) => Self::Unknown,
        }
    }
}

impl Stored for HeldV1 {
    fn blank() -> Self {
        Self::Unknown(Unknown::Unknown)
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        match json {
            Json::List(_) => Vec::from_json(json).map(Self::Known),
            json => match word(json)?.as_ref() {
                "unknown" => Ok(Self::Unknown(Unknown::Unknown)),
                _ => Err("neither a list of exposures nor \"unknown\"".to_owned()),
            },
        }
    }

    fn put(&self, out: &mut Out) {
        match self {
            Self::Known(list) => list.put(out),
            Self::Unknown(Unknown::Unknown) => out.word("unknown"),
        }
    }
}
