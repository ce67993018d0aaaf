//! A small seeded generator, so that one seed makes one demo kitchen on every machine.

/// SplitMix64 (Steele, Lea, Flood 2014; constants from memory): good enough to invent a kitchen, nothing more.
#[derive(Clone, Debug)]
pub(super) struct Rng(u64);

impl Rng {
    pub(super) const fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub(super) const fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// A number from `low` to `high`, both included; `low` when the span is empty.
    pub(super) fn between(&mut self, low: i64, high: i64) -> i64 {
        let span = u64::try_from(high.saturating_sub(low)).unwrap_or(0).saturating_add(1);
        low.saturating_add(i64::try_from(self.next() % span).unwrap_or(0))
    }

    /// An id in the shape of a random UUID (version 4).
    pub(super) fn id(&mut self) -> u128 {
        let bits = (u128::from(self.next()) << 64) | u128::from(self.next());
        (bits & !(0xF << 76) & !(0x3 << 62)) | (0x4 << 76) | (0x2 << 62)
    }
}
