//! Every journey, end to end on the release build, one module a subject.

mod failed_start;
mod offline;
mod update;
