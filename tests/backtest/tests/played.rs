//! How rows are played: what is impossible is folded around, what is blank is the usual.
#![allow(clippy::unwrap_used, missing_docs)]

use backtest::file::{HEADER, read};
use backtest::foretell::Foretold;
use backtest::report::{foretell, report, split};
use backtest::row::{Row, fat_named};
use panward::domain::fat::Fat;

fn rows(lines: &[&str]) -> Vec<Row> {
    read(&format!("{}\n{}", HEADER.join(","), lines.join("\n"))).unwrap()
}

fn played(lines: &[&str]) -> Vec<Foretold> {
    let rows = rows(lines);
    let (possible, refused) = split(&rows);
    assert_eq!(refused, 0);
    foretell(&possible)
}

fn last(lines: &[&str]) -> Foretold {
    played(lines).pop().unwrap()
}

fn width(of: &Foretold) -> f64 {
    of.forecast.high - of.forecast.low
}

const WEEK: [&str; 6] = [
    "a,sunflower,24,0,0,,0,5.5,p",
    "a,sunflower,24,1,6,175,1.2,9,p",
    "a,sunflower,24,2,7,178,1.2,,p",
    "a,sunflower,24,3,6,175,0,15.5,p",
    "a,sunflower,24,4,6,176,1.2,,p",
    "a,sunflower,24,5,5,175,1.2,21,p",
];

#[test]
fn what_cannot_have_happened_is_folded_around_and_counted() {
    let without = report(&rows(&WEEK), 25.0);
    assert!(without.ends_with("refused_rows=0\n"));
    for impossible in [
        "a,sunflower,24,3,-0.1,175,1,12,p",
        "a,sunflower,24,3,24.1,175,1,12,p",
        "a,sunflower,24,3,6,99,1,12,p",
        "a,sunflower,24,3,6,251,1,12,p",
        "a,sunflower,24,3,6,175,24.1,12,p",
        "a,sunflower,24,3,6,175,-1,12,p",
        "a,sunflower,24,3,6,175,1,100.1,p",
        "a,sunflower,24,3,6,175,1,-2,p",
        "a,sunflower,0,3,6,175,0,12,p",
        "a,sunflower,-24,3,6,175,0,12,p",
        "a,sunflower,1001,3,6,175,1,12,p",
        "a,sunflower,24,-3,6,175,1,12,p",
    ] {
        for at in 0..=WEEK.len() {
            let mut lines = WEEK.to_vec();
            lines.insert(at, impossible);
            let with = report(&rows(&lines), 25.0);
            assert_eq!(
                with,
                without.replace("refused_rows=0", "refused_rows=1"),
                "{impossible}"
            );
        }
    }
}

#[test]
fn what_is_just_possible_is_kept() {
    for possible in [
        "a,sunflower,24,3,24,250,24,100,p",
        "a,sunflower,24,3,0,100,0,0,p",
        "a,sunflower,1000,3,,,,,",
    ] {
        assert_eq!(split(&rows(&[possible])).1, 0, "{possible}");
    }
}

#[test]
fn nothing_but_impossible_rows_is_still_a_report() {
    let told = report(&rows(&["a,sunflower,24,3,-6,,,12,p"]), 25.0);
    assert_eq!(told.lines().count(), 4, "{told}");
    assert!(
        told.ends_with("discard_half median=NaN mean=NaN n=0 censored=0\nrefused_rows=1\n"),
        "{told}"
    );
}

#[test]
fn blank_hours_are_the_usual_ones_and_less_is_known() {
    let service = |hours: &str| {
        let line = format!("a,sunflower,24,2,{hours},175,0,30,p");
        last(&["a,sunflower,24,0,0,,0,,p", "a,sunflower,24,1,6,175,0,,p", &line])
    };
    let (blank, usual) = (service(""), service("6"));
    assert!(
        (blank.forecast.median - usual.forecast.median).abs() < 0.2,
        "{blank:?} {usual:?}"
    );
    assert!(width(&blank) > width(&usual));
    assert!(service("3").forecast.median < blank.forecast.median);
    assert!(blank.forecast.median < service("9").forecast.median);
    assert!(
        (blank.fry_hours - 12.0).abs() < 1e-9,
        "a line on fry-hours takes them for the usual ones, too"
    );
}

#[test]
fn blank_hours_of_a_fresh_fill_are_none() {
    let fresh = |hours: &str| last(&[&format!("a,sunflower,24,0,{hours},,0,30,p")]);
    assert_eq!(fresh(""), fresh("0"));
}

#[test]
fn a_blank_top_up_is_the_usual_one() {
    let earlier = [
        "a,sunflower,24,0,0,,0,5,p",
        "a,sunflower,24,1,6,175,2.4,9,p",
        "a,sunflower,24,2,6,175,2.4,12,p",
        "a,sunflower,24,3,6,175,2.4,15,p",
        "b,sunflower,24,0,0,,0,5,p",
    ];
    let with = |top_up: &str| {
        let (one, two) = (
            format!("b,sunflower,24,1,6,175,{top_up},,p"),
            format!("b,sunflower,24,2,6,175,{top_up},,p"),
        );
        last(&[&earlier[..], &[&one, &two, "b,sunflower,24,3,6,175,0,12,p"]].concat())
    };
    assert_eq!(with(""), with("2.4"));
    assert!(with("0").forecast.median > with("").forecast.median);
}

#[test]
fn a_blank_top_up_is_none_where_none_was_ever_logged() {
    let with = |top_up: &str| {
        last(&[
            "a,sunflower,24,0,,,,5,p",
            &format!("a,sunflower,24,1,6,175,{top_up},,p"),
            "a,sunflower,24,2,6,175,0,12,p",
        ])
    };
    assert_eq!(with(""), with("0"));
}

#[test]
fn a_blank_temperature_is_175() {
    let at = |degrees: &str| {
        last(&[
            "a,sunflower,24,0,0,,0,5,p",
            &format!("a,sunflower,24,1,6,{degrees},0,9,p"),
        ])
    };
    assert_eq!(at(""), at("175"));
    assert!(at("185").forecast.median > at("").forecast.median);
}

#[test]
fn within_a_row_comes_frying_then_the_reading_then_the_top_up() {
    let first = "a,sunflower,24,0,0,,0,5,p";
    let with = |hours: u8, top_up: u8| last(&[first, &format!("a,sunflower,24,1,{hours},175,{top_up},12,p")]);
    assert!(with(8, 0).forecast.median > with(6, 0).forecast.median);
    assert_eq!(with(6, 0), with(6, 12));
    let next = "a,sunflower,24,2,6,175,0,14,p";
    let after = |top_up: u8| last(&[first, &format!("a,sunflower,24,1,6,175,{top_up},12,p"), next]);
    assert!(after(12).forecast.median < after(0).forecast.median);
}

#[test]
fn instruments_are_told_apart_and_nameless_ones_are_one() {
    // The first reads six points high; the second has shown nothing yet.
    let high = [
        "a,sunflower,24,0,0,,0,11,p",
        "a,sunflower,24,0,0,,0,11,p",
        "a,sunflower,24,0,0,,0,11,p",
    ];
    let next = |tool: &str| {
        last(&[&high[..], &[&format!("a,sunflower,24,0,0,,0,9,{tool}")]].concat())
            .forecast
            .median
    };
    assert!(next("p") > next("q") + 1.0);
    let nameless = high.map(|line| line.trim_end_matches('p'));
    let again = last(&[&nameless[..], &["a,sunflower,24,0,0,,0,9,"]].concat());
    assert!((again.forecast.median - next("p")).abs() < 1e-9);
}

#[test]
fn later_fills_learn_from_earlier_ones() {
    let fast: Vec<String> = (0..6)
        .flat_map(|fill| {
            (0..6).map(move |day| format!("{fill},sunflower,24,{day},{},175,0,{},p", 6 * day.min(1), 5 + 6 * day))
        })
        .collect();
    let mut lines: Vec<&str> = fast.iter().map(String::as_str).collect();
    let next = [
        "z,sunflower,24,0,0,,0,,p",
        "z,sunflower,24,1,6,175,0,,p",
        "z,sunflower,24,2,6,175,0,17,p",
    ];
    let untaught = last(&next);
    lines.extend(next);
    let taught = last(&lines);
    // A point an hour in six fills of this shop, against 0.6 published.
    assert!(
        taught.forecast.median > untaught.forecast.median + 2.0,
        "{taught:?} {untaught:?}"
    );
    assert!(width(&taught) < width(&untaught));
}

#[test]
fn fats_go_by_their_trade_names_and_an_unknown_one_is_a_blend() {
    assert_eq!(fat_named("Palm Olein"), Fat::PalmOlein);
    assert_eq!(fat_named("high-oleic rapeseed"), Fat::HighOleicRapeseed);
    assert_eq!(fat_named("tallow"), Fat::Dripping);
    assert_eq!(fat_named(""), Fat::Blend);
    assert_eq!(fat_named("duck"), Fat::Blend);
}
