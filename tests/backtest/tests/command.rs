//! The command itself: what it prints, what it says when it cannot, and how it ends.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

use std::fmt::Write as _;
use std::path::PathBuf;
use std::process::Command;

use backtest::file::HEADER;

/// A file of these rows under a name of its own, in the folder the tests may write to.
fn written(name: &str, rows: &[&str]) -> PathBuf {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    let mut text = HEADER.join(",");
    for row in rows {
        write!(text, "\n{row}").unwrap();
    }
    std::fs::write(&path, text).unwrap();
    path
}

/// Whether it went well, what it printed, what it complained of.
fn run(args: &[&str]) -> (bool, String, String) {
    let output = Command::new(env!("CARGO_BIN_EXE_backtest"))
        .args(args)
        .output()
        .unwrap();
    (
        output.status.success(),
        String::from_utf8(output.stdout).unwrap(),
        String::from_utf8(output.stderr).unwrap(),
    )
}

/// Asserts a refusal of one sentence on one line, without a backtrace and without a report.
#[track_caller]
fn complains(args: &[&str], of: &str) {
    let (well, printed, complaint) = run(args);
    assert!(!well && printed.is_empty(), "{printed}");
    assert_eq!(complaint.lines().count(), 1, "{complaint}");
    assert!(complaint.contains(of) && !complaint.contains("panicked"), "{complaint}");
}

/// The value of `key=` on a line of words.
fn value<'a>(line: &'a str, key: &str) -> &'a str {
    let found = line
        .split(' ')
        .find_map(|word| word.strip_prefix(key)?.strip_prefix('='));
    found.unwrap_or_else(|| panic!("no {key} in {line:?}"))
}

const FILL: [&str; 6] = [
    "a,rapeseed,24,0,0,,0,5.5,p",
    "a,rapeseed,24,1,6,175,1,,p",
    "a,rapeseed,24,2,6,,1,12.5,p",
    "a,rapeseed,24,3,-6,175,1,40,p",
    "a,rapeseed,24,4,,,,17,p",
    "a,rapeseed,24,5,6,178,0,20.5,p",
];

#[test]
fn each_reading_has_a_line_and_the_sums_are_the_last_four() {
    let path = written("fill.csv", &FILL);
    let (well, printed, complaint) = run(&[path.to_str().unwrap()]);
    assert!(well && complaint.is_empty(), "{complaint}");
    let lines: Vec<&str> = printed.lines().collect();
    let [readings @ .., mae, coverage, discard, refused] = &lines[..] else {
        panic!("{printed}");
    };
    let told: Vec<_> = readings
        .iter()
        .map(|l| (value(l, "fill"), value(l, "day"), value(l, "truth")))
        .collect();
    assert_eq!(
        told,
        [
            ("a", "0", "5.5"),
            ("a", "2", "12.5"),
            ("a", "4", "17"),
            ("a", "5", "20.5")
        ]
    );
    for line in readings {
        let forecast: f64 = value(line, "forecast").parse().unwrap();
        let (low, high) = value(line, "interval").split_once("..").unwrap();
        let (low, high): (f64, f64) = (low.parse().unwrap(), high.parse().unwrap());
        assert!(low < forecast && forecast < high, "{line}");
    }
    // The two readings with two before them: 17 after 12.5, 20.5 after 17.
    assert!(mae.starts_with("mae ours="), "{mae}");
    assert_eq!((value(mae, "last"), value(mae, "n")), ("4.000", "2"));
    assert!(
        coverage.starts_with("coverage80=") && value(coverage, "n") == "2",
        "{coverage}"
    );
    assert!(discard.starts_with("discard_half median="), "{discard}");
    assert_eq!((value(discard, "n"), value(discard, "censored")), ("0", "1"));
    assert_eq!(*refused, "refused_rows=1");
}

#[test]
fn the_limit_is_asked_of_the_change_day_alone() {
    let path = written("limit.csv", &FILL);
    let path = path.to_str().unwrap();
    let (_, usual, _) = run(&[path]);
    let (_, said, _) = run(&[path, "--limit", "25"]);
    assert_eq!(usual, said);
    let (well, lower, _) = run(&["--limit", "14", path]);
    assert!(well);
    let apart: Vec<_> = usual.lines().zip(lower.lines()).filter(|(a, b)| a != b).collect();
    let [(_, discard)] = apart[..] else {
        panic!("{apart:?}");
    };
    assert_eq!((value(discard, "n"), value(discard, "censored")), ("1", "0"));
}

#[test]
fn a_command_that_cannot_be_done_says_so_in_one_sentence() {
    let good = written("good.csv", &FILL);
    let good = good.to_str().unwrap();
    complains(&[], "backtest FILE.csv");
    complains(&["--limit"], "backtest FILE.csv");
    complains(&[good, "--limit"], "backtest FILE.csv");
    complains(&[good, "24"], "backtest FILE.csv");
    for limit in ["0", "100", "-3", "NaN", "much"] {
        complains(&[good, "--limit", limit], "over 0 and under 100");
    }
    complains(&[good, "--limit", "5"], "line 2 holds 5 %");
    complains(&["nowhere/at/all.csv"], "nowhere/at/all.csv could not be read");
    let slip = written("slip.csv", &["a,rapeseed,24,0,none,,,,p"]);
    complains(&[slip.to_str().unwrap()], "line 2, column 5: fry_hours is \"none\"");
}
