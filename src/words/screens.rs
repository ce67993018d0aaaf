//! Sentences that belong to one screen, and to nothing in the domain.

pub mod job;
