//! Every journey, end to end on the release build, one module a subject.

mod claims;
mod clocks;
mod day;
mod evidence;
mod export;
mod failed_start;
mod filter;
mod first_start;
mod glance;
mod holds;
mod night;
mod offline;
mod pan;
mod pan_jobs;
mod resume;
mod rhythm;
mod shots;
mod solid;
mod update;
mod windows;
mod wrong;
