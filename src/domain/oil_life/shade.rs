//! Which of the five oil colours a fill is drawn in.

/// The oil token, 1 (fresh) to 5 (spent), for polar compounds of `polar_percent` against `limit_percent`.
///
/// An even split from nothing to the limit, ours alone: a drawing in the colour oil has, never a lamp, and always
/// with a number and a word beside it. A limit that is no number above 0 gives 3.
#[must_use]
pub fn oil_shade(polar_percent: f64, limit_percent: f64) -> u8 {
    let share = polar_percent / limit_percent;
    if limit_percent.is_nan() || limit_percent <= 0.0 || share.is_nan() {
        3
    } else if share < 0.2 {
        1
    } else if share < 0.4 {
        2
    } else if share < 0.6 {
        3
    } else if share < 0.8 {
        4
    } else {
        5
    }
}
