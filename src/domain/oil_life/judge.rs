//! From what is believed to what is said: score and word, in the exact terms of the project.

use super::answer::{DaysLeft, Estimate, Score, Word};
use super::quantity::Quantity;

/// A quantity with a limit in force, and what is believed of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Criterion {
    pub quantity: Quantity,
    pub limit: f64,
    pub fresh: f64,
    pub now: Estimate,
}

/// What is left of the room between fresh and limit, 0–1; 0 where there is none.
fn life(level: f64, fresh: f64, limit: f64) -> f64 {
    if fresh >= limit {
        0.0
    } else {
        ((limit - level) / (limit - fresh)).clamp(0.0, 1.0)
    }
}

/// floor(100 · min life), but 1 where that is 0 while every level is under its limit.
fn points(criteria: &[Criterion], level: impl Fn(&Estimate) -> f64) -> u8 {
    // Far above what bisection leaves and far below what a reading can tell: oil at its fresh value is 100, not 99.
    const ROUNDING: f64 = 1e-7;
    let least = criteria
        .iter()
        .map(|c| life(level(&c.now), c.fresh, c.limit))
        .fold(1.0, f64::min);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 0 and 100 by construction"
    )]
    let floor = (100.0 * least + ROUNDING).floor() as u8;
    let all_under = criteria.iter().all(|c| level(&c.now) < c.limit);
    if floor == 0 && all_under { 1 } else { floor }
}

/// The score; `None` with no limit in force.
pub(super) fn score(criteria: &[Criterion]) -> Option<Score> {
    let worst = criteria.iter().min_by(|a, b| {
        let left = |c: &Criterion| life(c.now.median, c.fresh, c.limit);
        left(a).total_cmp(&left(b))
    })?;
    Some(Score {
        low: points(criteria, |e| e.high),
        now: points(criteria, |e| e.median),
        high: points(criteria, |e| e.low),
        limited_by: worst.quantity,
    })
}

/// The first word that fits; without a limit only a change sign gives one.
pub(super) fn word(
    change_sign: bool,
    criteria: &[Criterion],
    score: Option<Score>,
    days: Option<DaysLeft>,
    chance_over: Option<f64>,
) -> Option<Word> {
    const PLAN_DAYS: u8 = 2;
    const EYE_DAYS: u8 = 5;
    const FRESH_SCORE: u8 = 85;
    let reached = criteria.iter().any(|c| c.now.median >= c.limit);
    if change_sign || reached || chance_over.is_some_and(|c| c >= 0.5) {
        return Some(Word::ChangeNow);
    }
    let (score, days) = (score?, days?);
    let within = |most: u8| days.low.is_some_and(|d| d <= most);
    Some(if within(PLAN_DAYS) {
        Word::PlanTheChange
    } else if within(EYE_DAYS) {
        Word::KeepAnEye
    } else if score.now >= FRESH_SCORE {
        Word::Fresh
    } else {
        Word::Good
    })
}
