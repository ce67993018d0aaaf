//! The normal distribution and mixtures of it, on `libm` alone so that native and wasm agree to the bit.

use core::f64::consts::FRAC_1_SQRT_2;

/// 1/√(2π).
const FRAC_1_SQRT_2PI: f64 = 0.398_942_280_401_432_7;

/// One normal component of a mixture.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component {
    /// Share of the mixture, 0–1; all shares sum to 1.
    pub weight: f64,
    /// Mean.
    pub mean: f64,
}

/// Beyond this many standard deviations a tail holds under 1e-10 and is taken for nothing: most of the work saved.
const TAIL_SDS: f64 = 6.5;

/// Probability that a standard normal lies above `z`; 0 or 1 beyond 6.5.
#[must_use]
pub fn above(z: f64) -> f64 {
    if z > TAIL_SDS {
        0.0
    } else if z < -TAIL_SDS {
        1.0
    } else {
        0.5 * libm::erfc(z * FRAC_1_SQRT_2)
    }
}

/// Probability that the mixture, every component with the same standard deviation `sd` > 0, lies at or under `x`.
fn at_most(components: &[Component], sd: f64, x: f64) -> f64 {
    let part = |c: &Component| c.weight * above((c.mean - x) / sd);
    components.iter().map(part).sum()
}

/// Density of the mixture at `x`.
fn density(components: &[Component], sd: f64, x: f64) -> f64 {
    let part = |c: &Component| {
        let z = (c.mean - x) / sd;
        if z.abs() > TAIL_SDS {
            0.0
        } else {
            c.weight * libm::exp(-0.5 * z * z)
        }
    };
    FRAC_1_SQRT_2PI / sd * components.iter().map(part).sum::<f64>()
}

/// The `p` quantile (0 < p < 1) of such a mixture, to well under a millionth of its standard deviation.
///
/// Newton's steps inside a bracket that only shrinks, halving it where a step would leave it: the same path for the
/// same numbers, whatever the mixture's shape.
#[must_use]
pub fn mixture_quantile(components: &[Component], sd: f64, p: f64) -> f64 {
    const MOST_LOOKS: u32 = 60;
    const CLOSE_SDS: f64 = 1e-9;
    let least = components.iter().map(|c| c.mean).fold(f64::INFINITY, f64::min);
    let most = components.iter().map(|c| c.mean).fold(f64::NEG_INFINITY, f64::max);
    let (mut low, mut high) = (least - TAIL_SDS * sd, most + TAIL_SDS * sd);
    let mut x = components.iter().map(|c| c.weight * c.mean).sum::<f64>();
    for _ in 0..MOST_LOOKS {
        let miss = at_most(components, sd, x) - p;
        if miss < 0.0 {
            low = x;
        } else {
            high = x;
        }
        let step = x - miss / density(components, sd, x);
        // Also false where the density is nothing and the step no number.
        let inside = step > low && step < high;
        let next = if inside { step } else { 0.5 * (low + high) };
        let moved = (next - x).abs();
        x = next;
        if moved < CLOSE_SDS * sd {
            break;
        }
    }
    x
}

/// Normals with one spread.
pub struct Mixture {
    /// The normals.
    pub components: Vec<Component>,
    /// Their standard deviation, over 0.
    pub sd: f64,
}

impl Mixture {
    /// The quantile `p` (0 < p < 1).
    #[must_use]
    pub fn quantile(&self, p: f64) -> f64 {
        mixture_quantile(&self.components, self.sd, p)
    }

    /// The median.
    #[must_use]
    pub fn median(&self) -> f64 {
        self.quantile(0.5)
    }

    /// How likely it is to be at least as far out as `x`, to either side.
    #[must_use]
    pub fn tails(&self, x: f64) -> f64 {
        let over: f64 = self
            .components
            .iter()
            .map(|c| c.weight * above((x - c.mean) / self.sd))
            .sum();
        2.0 * over.min(1.0 - over)
    }
}
