//! Not written.
