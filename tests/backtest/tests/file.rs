//! What a file is refused for, and where the refusal says the slip is.
#![allow(clippy::unwrap_used, clippy::panic, missing_docs)]

use backtest::file::{HEADER, read};
use panward::domain::fat::Fat;

const GOOD: &str = "a,palm,24,0,0,,,7.5,x";

fn file(rows: &[&str]) -> String {
    let mut text = HEADER.join(",");
    for row in rows {
        text.push('\n');
        text.push_str(row);
    }
    text
}

/// Asserts that the text is refused at this line and column for a reason that names `why`.
#[track_caller]
fn refused(text: &str, line: u64, column: usize, why: &str) {
    let refused = read(text).unwrap_err();
    assert_eq!((refused.line, refused.column), (line, column), "{refused}");
    assert!(refused.why.contains(why), "{refused}");
    let told = refused.to_string();
    assert!(told.starts_with(&format!("line {line}, column {column}: ")) && !told.contains('\n'));
}

#[test]
fn a_row_is_read_as_it_stands() {
    let rows = read(&file(&[
        "a, Palm ,24,3,6.5,180,1.25,12.5,probe 1",
        "b,dripping,18,0,,,,,",
    ]))
    .unwrap();
    let [full, blank] = &rows[..] else {
        panic!("two rows, not {}", rows.len());
    };
    assert_eq!((full.line, full.fill.as_str(), full.fat), (2, "a", Fat::Palm));
    assert_eq!((full.volume_l, full.day), (24.0, 3.0));
    assert_eq!((full.fry_hours, full.frying_c), (Some(6.5), Some(180.0)));
    assert_eq!((full.topup_l, full.tpc), (Some(1.25), Some(12.5)));
    assert_eq!(full.instrument, "probe 1");
    assert_eq!((blank.line, blank.fat, blank.volume_l), (3, Fat::Dripping, 18.0));
    assert_eq!((blank.fry_hours, blank.frying_c), (None, None));
    assert_eq!((blank.topup_l, blank.tpc, blank.instrument.as_str()), (None, None, ""));
}

#[test]
fn a_wrong_header_is_refused_at_its_first_slip() {
    refused("day,fat", 1, 1, "the header says day, not fill");
    refused(&file(&[]).replace("tpc", "polar"), 1, 8, "polar, not tpc");
    refused(&file(&[]).replace(",instrument", ""), 1, 9, "nothing, not instrument");
    refused(
        &file(&[]).replace("instrument", "instrument,by"),
        1,
        10,
        "10 columns, not 9",
    );
    refused(
        &file(&[]).replace("volume_l,day", "day,volume_l"),
        1,
        3,
        "day, not volume_l",
    );
    refused(GOOD, 1, 1, "the header says a");
}

#[test]
fn an_empty_file_is_refused() {
    refused("", 1, 1, "empty");
    refused("\n\n", 1, 1, "empty");
}

#[test]
fn a_file_of_a_header_alone_holds_no_rows() {
    assert_eq!(read(&file(&[])), Ok(Vec::new()));
}

#[test]
fn a_wrong_number_of_columns_is_refused_where_it_begins() {
    refused(&file(&[GOOD, "a,palm,24,1,6,,,9"]), 3, 9, "8 columns, not 9");
    refused(&file(&[GOOD, "a,palm"]), 3, 3, "2 columns");
    refused(&file(&["a,palm,24,1,6,,,9,x,y"]), 2, 10, "10 columns");
    refused(&file(&["a,palm,24,1,6,,,9,x,y,z"]), 2, 10, "11 columns");
}

#[test]
fn what_is_no_number_is_refused() {
    refused(&file(&[GOOD, "a,palm,24,1,six,,,9,x"]), 3, 5, "fry_hours is \"six\"");
    refused(&file(&["a,palm,24 l,0,0,,,9,x"]), 2, 3, "volume_l is \"24 l\"");
    refused(&file(&["a,palm,24,0,0,,,\"7,5\",x"]), 2, 8, "tpc is \"7,5\"");
    for word in ["NaN", "nan", "inf", "-inf", "infinity", "1e999"] {
        refused(&file(&[GOOD, GOOD, &format!("a,palm,24,2,6,{word},,9,x")]), 4, 6, word);
    }
}

#[test]
fn a_blank_that_cannot_be_done_without_is_refused() {
    refused(&file(&[",palm,24,0,0,,,7.5,x"]), 2, 1, "fill is blank");
    refused(&file(&["a,palm,,0,0,,,7.5,x"]), 2, 3, "volume_l is blank");
    refused(&file(&[GOOD, "a,palm,24, ,6,,,9,x"]), 3, 4, "day is blank");
}

#[test]
fn the_first_slip_is_the_one_told() {
    refused(&file(&["a,palm,x,y,z,,,,"]), 2, 3, "volume_l");
    refused(&file(&[GOOD, "a,palm,24,1,six,,,9,x", "a,palm"]), 3, 5, "fry_hours");
}

#[test]
fn lines_are_counted_as_an_editor_counts_them() {
    let slip = "a,palm,24,1,six,,,9,x";
    refused(&file(&[GOOD, GOOD, slip]).replace('\n', "\r\n"), 4, 5, "six");
    refused(&file(&["", "", GOOD, "", slip]), 6, 5, "six");
    refused(&file(&["\"a\nb\",palm,24,0,0,,,7.5,x", slip]), 4, 5, "six");
    let good = file(&[GOOD, "", GOOD]).replace('\n', "\r\n");
    let lines: Vec<u64> = read(&good).unwrap().iter().map(|r| r.line).collect();
    assert_eq!(lines, [2, 4]);
}

#[test]
fn a_byte_order_mark_is_no_slip() {
    let marked = format!("\u{feff}{}", file(&[GOOD]));
    assert_eq!(read(&marked), read(&file(&[GOOD])));
    refused(&format!("\u{feff}{}", file(&[GOOD, "a,palm"])), 3, 3, "2 columns");
}

#[test]
fn a_row_that_cannot_have_happened_is_read_and_left_to_the_report() {
    let rows = read(&file(&["a,palm,24,1,-6,,,9,x"])).unwrap();
    assert!(!rows[0].is_possible());
}
