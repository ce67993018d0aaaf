//! Waits by the two-clock rule: over only when both clocks agree, or when a person has vouched for the time.
//!
//! The wall clock can be moved; the page's own clock may stand still in sleep and dies with the page. Where they
//! differ by more than [`TOLERANCE_MS`], or the page died, the guide shows the time it takes it to be and asks.

use super::time::{Millis, Now, PageLife};

/// How far the two clocks may drift apart before a person is asked.
pub const TOLERANCE_MS: i64 = 2_000;

/// A minimum wait. It can be lengthened by any trouble with the clocks, shortened by none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Wait {
    /// How long it takes in all.
    duration_ms: i64,
    /// What is already counted, up to the anchor.
    credited_ms: i64,
    /// Wall clock at the anchor.
    wall: Millis,
    /// Page clock at the anchor; none when the wait was read back from the log.
    page: Option<(PageLife, i64)>,
}

/// What a wait comes to at one instant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Still running; milliseconds left, at least 1.
    Running {
        /// Milliseconds left.
        left_ms: i64,
    },
    /// Over; milliseconds since it ended.
    Over {
        /// Milliseconds since.
        since_ms: i64,
    },
    /// The clocks disagree, or the page died: a person must say whether the time shown is right.
    AskTime,
}

impl Wait {
    /// A wait that begins now, in this page life.
    #[must_use]
    pub const fn begin(duration_ms: i64, now: &Now) -> Self {
        Self {
            duration_ms,
            credited_ms: 0,
            wall: now.wall,
            page: Some((now.life, now.mono)),
        }
    }

    /// A wait read back from the log, which only knows the wall clock.
    #[must_use]
    pub const fn recalled(duration_ms: i64, began: Millis) -> Self {
        Self {
            duration_ms,
            credited_ms: 0,
            wall: began,
            page: None,
        }
    }

    /// How long it takes in all, in milliseconds.
    #[must_use]
    pub const fn duration_ms(&self) -> i64 {
        self.duration_ms
    }

    /// When the wall clock will call it over.
    #[must_use]
    pub const fn due(&self) -> Millis {
        self.wall.plus(self.duration_ms - self.credited_ms)
    }

    /// Where it stands.
    #[must_use]
    pub fn standing(&self, now: &Now) -> Standing {
        let Some(elapsed) = self.agreed_ms(now) else {
            return Standing::AskTime;
        };
        let left_ms = self.duration_ms - self.credited_ms - elapsed;
        if left_ms > 0 {
            Standing::Running { left_ms }
        } else {
            Standing::Over { since_ms: -left_ms }
        }
    }

    /// Whether it is over beyond doubt.
    #[must_use]
    pub fn is_over(&self, now: &Now) -> bool {
        matches!(self.standing(now), Standing::Over { .. })
    }

    /// Whether no more than its duration has passed, by both clocks and without doubt: for things that go stale,
    /// where the clock that ran further is the one to believe.
    #[must_use]
    pub fn is_within(&self, now: &Now) -> bool {
        self.agreed_ms(now).is_some()
            && (0..=self.duration_ms - self.credited_ms).contains(&self.longest_ms(now))
            && now.wall.since(self.wall) >= 0
    }

    /// The most that either clock says has passed; a clock put back counts as far as it was put back.
    #[must_use]
    pub fn longest_ms(&self, now: &Now) -> i64 {
        let by_page = match self.page {
            Some((life, mono)) if life == now.life => now.mono.saturating_sub(mono),
            Some(_) | None => 0,
        };
        now.wall.since(self.wall).abs().max(by_page)
    }

    /// Milliseconds counted by now, if the clocks agree on them.
    #[must_use]
    pub fn elapsed_ms(&self, now: &Now) -> Option<i64> {
        Some(self.credited_ms + self.agreed_ms(now)?)
    }

    /// Somebody looked at the time shown. Right: the wall clock is trusted up to here. Wrong: it starts again.
    #[must_use]
    pub fn after_asking(&self, time_is_right: bool, now: &Now) -> Self {
        let counted = if time_is_right {
            self.credited_ms + now.wall.since(self.wall).max(0)
        } else {
            0
        };
        Self {
            credited_ms: counted,
            ..Self::begin(self.duration_ms, now)
        }
    }

    /// What both clocks say has passed since the anchor; the lesser of the two.
    fn agreed_ms(&self, now: &Now) -> Option<i64> {
        let (life, mono) = self.page?;
        let by_page = now.mono.saturating_sub(mono);
        let by_wall = now.wall.since(self.wall);
        let apart = by_wall.saturating_sub(by_page).abs();
        (life == now.life && apart <= TOLERANCE_MS && by_page >= 0).then(|| by_wall.min(by_page).max(0))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn at(wall: i64, mono: i64, life: u64) -> Now {
        Now {
            wall: Millis(wall),
            mono,
            life: PageLife(life),
            off_min: 0,
        }
    }

    #[test]
    fn is_over_at_the_deadline_and_not_before() {
        let wait = Wait::begin(600_000, &at(0, 0, 1));
        assert_eq!(
            wait.standing(&at(599_999, 599_999, 1)),
            Standing::Running { left_ms: 1 }
        );
        assert_eq!(wait.standing(&at(600_000, 600_000, 1)), Standing::Over { since_ms: 0 });
        assert_eq!(
            wait.standing(&at(600_000, 599_999, 1)),
            Standing::Running { left_ms: 1 }
        );
    }

    #[test]
    fn asks_when_the_clocks_part_by_more_than_two_seconds_or_the_page_died() {
        let wait = Wait::begin(600_000, &at(0, 0, 1));
        assert!(wait.is_over(&at(602_000, 600_000, 1)));
        assert_eq!(wait.standing(&at(602_001, 600_000, 1)), Standing::AskTime);
        assert_eq!(wait.standing(&at(600_000, 602_001, 1)), Standing::AskTime);
        assert_eq!(wait.standing(&at(700_000, 700_000, 2)), Standing::AskTime);
        assert_eq!(
            Wait::recalled(600_000, Millis(0)).standing(&at(700_000, 5, 1)),
            Standing::AskTime
        );
    }

    #[test]
    fn yes_trusts_the_wall_and_no_starts_again() {
        let wait = Wait::recalled(600_000, Millis(0));
        let asked = at(400_000, 10, 7);
        assert_eq!(
            wait.after_asking(true, &asked).standing(&at(400_000, 10, 7)),
            Standing::Running { left_ms: 200_000 }
        );
        assert_eq!(
            wait.after_asking(false, &asked).standing(&asked),
            Standing::Running { left_ms: 600_000 }
        );
        assert_eq!(wait.after_asking(true, &asked).due(), Millis(600_000));
    }

    #[test]
    fn a_clock_put_back_never_credits_time() {
        let wait = Wait::recalled(600_000, Millis(1_000_000));
        let back = at(0, 0, 2);
        assert_eq!(
            wait.after_asking(true, &back).standing(&back),
            Standing::Running { left_ms: 600_000 }
        );
    }
}
