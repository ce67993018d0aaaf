//! Panward: guides the filter run of a fish-and-chip kitchen and keeps each pan's oil life.
//!
//! Layers, outermost first; an arrow may not be followed backwards:
//!
//! ```text
//! main -> ui -> { browser | demo -> kitchen | words } -> store -> domain -> no web crate, no clock
//! ```

#[cfg(target_arch = "wasm32")]
pub mod browser;
pub mod demo;
pub mod domain;
pub mod kitchen;
pub mod store;
#[cfg(target_arch = "wasm32")]
pub mod ui;
pub mod words;
