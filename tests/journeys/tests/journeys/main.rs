//! Every journey, end to end on the release build, one module a subject.

mod clocks;
mod evidence;
mod failed_start;
mod filter;
mod offline;
mod resume;
mod update;
