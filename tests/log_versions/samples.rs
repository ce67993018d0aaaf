//! The frozen samples, and lines of them.

pub const LOG_V1: &str = include_str!("../fixtures/log_v1.json");
pub const LOG_V2: &str = include_str!("../fixtures/log_v2.json");
pub const LOG_V5: &str = include_str!("../fixtures/log_v5.json");
pub const LOG_V3: &str = include_str!("../fixtures/log_v3.json");
pub const LOG_V4: &str = include_str!("../fixtures/log_v4.json");
pub const LOG_V6: &str = include_str!("../fixtures/log_v6.json");
pub const LOG_V7: &str = include_str!("../fixtures/log_v7.json");
pub const LOG_V8: &str = include_str!("../fixtures/log_v8.json");
pub const NEWER: &str = include_str!("../fixtures/newer.json");

pub fn kind_of(line: &str) -> &str {
    line.split("\"kind\":\"")
        .nth(1)
        .and_then(|rest| rest.split('"').next())
        .expect("a kind")
}

pub fn first(kind: &str) -> &'static str {
    first_of(LOG_V1, kind)
}

pub fn first_of(log: &'static str, kind: &str) -> &'static str {
    let line = log
        .lines()
        .find(|l| l.starts_with("{\"id\"") && kind_of(l) == kind)
        .expect("the kind is there");
    line.strip_suffix(',').unwrap_or(line)
}
