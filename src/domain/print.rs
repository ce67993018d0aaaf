//! Fingerprints: whether something is made of the same entries as before, without looking at all of them.

use super::time::Day;

/// A fingerprint of whatever was put into it, in that order. What has the same print is taken for the same; two that
/// differ share one by a chance of one in 2^64. Never stored: another build may count otherwise.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Print(u64);

impl Print {
    /// Of nothing.
    pub const NONE: Self = Self(0);

    /// This and one number more.
    #[must_use]
    #[inline(never)]
    pub const fn with(self, number: u64) -> Self {
        // The finish of SplitMix64 (Steele, Lea, Flood 2014; constants from memory).
        let z = (self.0 ^ number).wrapping_add(0x9E37_79B9_7F4A_7C15);
        let z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        Self(z ^ (z >> 31))
    }

    /// This and one id more.
    #[must_use]
    #[inline(never)]
    pub const fn with_id(self, id: u128) -> Self {
        #[expect(clippy::cast_possible_truncation, reason = "both halves are taken")]
        let low = id as u64;
        self.with((id >> 64) as u64).with(low)
    }

    /// This and one day more.
    #[must_use]
    pub fn with_day(self, day: Day) -> Self {
        self.with(day.begins(0, 0).0.cast_unsigned())
    }

    /// This and another print.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        self.with(other.0)
    }
}
