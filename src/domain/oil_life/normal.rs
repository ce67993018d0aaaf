//! The normal distribution and mixtures of it, on `libm` alone so that native and wasm agree to the bit.

use core::f64::consts::FRAC_1_SQRT_2;

/// One normal component of a mixture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component {
    /// Share of the mixture, 0–1; all shares sum to 1.
    pub weight: f64,
    /// Mean.
    pub mean: f64,
}

/// Probability that a standard normal lies above `z`.
#[must_use]
pub fn above(z: f64) -> f64 {
    0.5 * libm::erfc(z * FRAC_1_SQRT_2)
}

/// Probability that the mixture, every component with the same standard deviation `sd` > 0, lies at or under `x`.
#[must_use]
pub fn mixture_at_most(components: &[Component], sd: f64, x: f64) -> f64 {
    components
        .iter()
        .map(|c| c.weight * above((c.mean - x) / sd))
        .sum::<f64>()
}

/// The `p` quantile (0 < p < 1) of such a mixture, by bisection to well under a millionth of its width.
///
/// Bisection because it takes the same path for the same numbers, whatever the shape of the mixture.
#[must_use]
pub fn mixture_quantile(components: &[Component], sd: f64, p: f64) -> f64 {
    const HALVINGS: u32 = 42;
    const TAIL_SDS: f64 = 9.0;
    let least = components.iter().map(|c| c.mean).fold(f64::INFINITY, f64::min);
    let most = components.iter().map(|c| c.mean).fold(f64::NEG_INFINITY, f64::max);
    let (mut low, mut high) = (least - TAIL_SDS * sd, most + TAIL_SDS * sd);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if mixture_at_most(components, sd, middle) < p {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}
