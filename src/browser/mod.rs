//! What only a browser can do. Thin: nothing here decides anything.

pub mod idb;
