//! Stored shapes that several bodies share.

use std::fmt;
use std::marker::PhantomData;

use serde::de::{Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::scalar::{Text, Whole};
use crate::domain::claim::{Exposure, Exposures};
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::setup::Held;
use crate::domain::units::{Amount, Typed, Unit, Volume};

/// A JSON object whose names are data: kept in their order, each name once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pairs<K, V>(pub Vec<(K, V)>);

impl<K: Serialize, V: Serialize> Serialize for Pairs<K, V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, value)| (name, value)))
    }
}

impl<'de, K: Deserialize<'de> + PartialEq, V: Deserialize<'de>> Deserialize<'de> for Pairs<K, V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(PairsVisitor(PhantomData))
    }
}

struct PairsVisitor<K, V>(PhantomData<(K, V)>);

impl<'de, K: Deserialize<'de> + PartialEq, V: Deserialize<'de>> Visitor<'de> for PairsVisitor<K, V> {
    type Value = Pairs<K, V>;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut pairs: Vec<(K, V)> = Vec::new();
        while let Some((name, value)) = map.next_entry()? {
            if pairs.iter().any(|(known, _)| *known == name) {
                return Err(Error::custom("the same name twice in one object"));
            }
            pairs.push((name, value));
        }
        Ok(Pairs(pairs))
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

impl Serialize for Answer {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Word(word) => serializer.serialize_str(word),
            Self::Number(number) => serializer.serialize_i32(*number),
        }
    }
}

impl<'de> Deserialize<'de> for Answer {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(AnswerVisitor)
    }
}

struct AnswerVisitor;

impl Visitor<'_> for AnswerVisitor {
    type Value = Answer;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a word or a whole number")
    }

    fn visit_str<E: Error>(self, word: &str) -> Result<Answer, E> {
        Ok(Answer::Word(word.to_owned()))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Answer, E> {
        i32::try_from(number)
            .map(Answer::Number)
            .map_err(|_| E::custom("a number out of range"))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Answer, E> {
        i32::try_from(number)
            .map(Answer::Number)
            .map_err(|_| E::custom("a number out of range"))
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

/// A quantity as it was typed.
#[derive(Clone, Copy, Debug, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TypedV1 {
    thousandths: u32,
    unit: Text<Unit>,
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
#[derive(Clone, Copy, Debug, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
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

impl Serialize for HeldV1 {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Known(list) => list.serialize(serializer),
            Self::Unknown(word) => word.serialize(serializer),
        }
    }
}

impl<'de> Deserialize<'de> for HeldV1 {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(HeldVisitor)
    }
}

struct HeldVisitor;

impl<'de> Visitor<'de> for HeldVisitor {
    type Value = HeldV1;

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a list of exposures, or \"unknown\"")
    }

    fn visit_str<E: Error>(self, word: &str) -> Result<HeldV1, E> {
        match word {
            "unknown" => Ok(HeldV1::Unknown(Unknown::Unknown)),
            _ => Err(E::custom("neither a list of exposures nor \"unknown\"")),
        }
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<HeldV1, A::Error> {
        let mut known = Vec::new();
        while let Some(exposure) = list.next_element()? {
            known.push(exposure);
        }
        Ok(HeldV1::Known(known))
    }
}
