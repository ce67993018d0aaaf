//! Ten years of log: natively a table of where the time goes, in the browser the steps that `cargo xtask measure` times.

mod held;
mod log;
#[cfg(target_arch = "wasm32")]
mod page;
#[cfg(not(target_arch = "wasm32"))]
mod table;
mod timed;
mod views;

#[cfg(not(target_arch = "wasm32"))]
fn main() -> Result<(), String> {
    table::print()
}

#[cfg(target_arch = "wasm32")]
fn main() {}
