//! The numbers we compute, held against numbers others published. Each check names its source beside it.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod cais17;
mod claims;
mod cooling;
mod country;
mod expansion;
mod lifting;
mod measures;
mod moves;
mod oil_life;
mod oil_quality;
mod thresholds;

/// Asserts that two numbers differ by at most `tolerance`.
#[track_caller]
fn close(computed: f64, published: f64, tolerance: f64) {
    assert!(
        (computed - published).abs() <= tolerance,
        "computed {computed}, published {published} ± {tolerance}"
    );
}
