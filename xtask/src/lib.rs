//! The project's chores: get the tools, build, serve, test, and finish a release with its list of files.
//!
//! A library as well as a program, so that the journeys serve and finish the site with the very same code.

pub mod backtest;
pub mod build;
pub mod bundle;
pub mod finish;
pub mod glue;
pub mod measure;
pub mod serve;
pub mod shell;
pub mod site;
pub mod size;
pub mod suites;
pub mod tools;
pub mod trouble;
