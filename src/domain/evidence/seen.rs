//! Answers kept beside what they answer, each item at most once.

use super::{Item, Word};

/// How an item is answered.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Seen {
    /// By what it was seen to be.
    Is(Word),
    /// By a number, in the unit the item's key ends with.
    Number(i32),
    /// In somebody's own words.
    Words(String),
}

/// Items and what they were seen to be, each at most once, in item order.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Evidence {
    items: Vec<(Item, Seen)>,
}

impl Evidence {
    /// Nothing seen yet.
    #[must_use]
    pub const fn new() -> Self {
        Self { items: Vec::new() }
    }

    /// This evidence and one more item; a second answer to the same item replaces the first.
    pub fn put(&mut self, item: Item, seen: Seen) {
        match self.items.binary_search_by_key(&item, |(i, _)| *i) {
            Ok(found) => {
                if let Some(slot) = self.items.get_mut(found) {
                    slot.1 = seen;
                }
            }
            Err(place) => self.items.insert(place, (item, seen)),
        }
    }

    /// The same, by value.
    #[must_use]
    pub fn with(mut self, item: Item, word: Word) -> Self {
        self.put(item, Seen::Is(word));
        self
    }

    /// Everything in `other` put on top of this.
    pub fn take_in(&mut self, other: &Self) {
        for (item, seen) in &other.items {
            self.put(*item, seen.clone());
        }
    }

    /// What an item was seen to be.
    #[must_use]
    pub fn get(&self, item: Item) -> Option<&Seen> {
        self.items.iter().find(|(i, _)| *i == item).map(|(_, s)| s)
    }

    /// The word an item was answered with.
    #[must_use]
    pub fn word(&self, item: Item) -> Option<Word> {
        match self.get(item) {
            Some(Seen::Is(word)) => Some(*word),
            Some(Seen::Number(_) | Seen::Words(_)) | None => None,
        }
    }

    /// The number an item was answered with.
    #[must_use]
    pub fn number(&self, item: Item) -> Option<i32> {
        match self.get(item) {
            Some(Seen::Number(n)) => Some(*n),
            Some(Seen::Is(_) | Seen::Words(_)) | None => None,
        }
    }

    /// Whether an item was seen to be just this.
    #[must_use]
    pub fn is(&self, item: Item, word: Word) -> bool {
        self.word(item) == Some(word)
    }

    /// The items with their answers.
    pub fn iter(&self) -> impl Iterator<Item = &(Item, Seen)> {
        self.items.iter()
    }

    /// Whether nothing was seen.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.items.is_empty()
    }
}

impl FromIterator<(Item, Seen)> for Evidence {
    fn from_iter<T: IntoIterator<Item = (Item, Seen)>>(iter: T) -> Self {
        let mut evidence = Self::new();
        for (item, seen) in iter {
            evidence.put(item, seen);
        }
        evidence
    }
}
