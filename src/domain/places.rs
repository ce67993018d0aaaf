//! Where things stand in a list, by their id: one look-up for however many there are, whatever order their ids have.

use std::collections::HashMap;
use std::hash::{BuildHasherDefault, Hasher};

/// Places in a list, by id.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Places(HashMap<u128, usize, BuildHasherDefault<Folded>>);

impl Places {
    /// No places yet, and room for `many`.
    #[must_use]
    pub fn with_room(many: usize) -> Self {
        Self(HashMap::with_capacity_and_hasher(many, BuildHasherDefault::default()))
    }

    /// The place of an id.
    #[must_use]
    pub fn get(&self, id: u128) -> Option<usize> {
        self.0.get(&id).copied()
    }

    /// Gives an id a place; whether it had none before. The first stays.
    pub fn add(&mut self, id: u128, place: usize) -> bool {
        let kept = *self.0.entry(id).or_insert(place);
        kept == place
    }
}

/// Ids are mostly chance already: both halves folded over each other and stirred once spread them well. No secret is in
/// it, so that the same log takes the same steps everywhere.
#[derive(Clone, Copy, Debug, Default)]
struct Folded(u64);

/// 2^64 over the golden ratio, odd: the usual multiplier for spreading (Knuth, TAOCP 3, 6.4).
const SPREAD: u64 = 0x9E37_79B9_7F4A_7C15;

impl Hasher for Folded {
    fn finish(&self) -> u64 {
        self.0
    }

    fn write(&mut self, bytes: &[u8]) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(SPREAD);
        }
    }

    fn write_u128(&mut self, id: u128) {
        #[expect(clippy::cast_possible_truncation, reason = "both halves are taken")]
        let folded = (id ^ (id >> 64)) as u64;
        let stirred = folded.wrapping_mul(SPREAD);
        self.0 = stirred ^ (stirred >> 32);
    }
}
