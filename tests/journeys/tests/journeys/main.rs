//! Every journey, end to end on the release build, one module a subject.

mod clocks;
mod failed_start;
mod offline;
mod update;
