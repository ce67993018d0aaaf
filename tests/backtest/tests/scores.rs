//! The scores, each worked by hand on a few rows.
#![allow(clippy::unwrap_used, missing_docs)]

use backtest::foretell::Foretold;
use backtest::row::Row;
use backtest::score::{Errors, change_day, discards, half_of, mean, median};
use panward::domain::fat::Fat;
use panward::domain::oil_life::Estimate;

fn close(computed: f64, by_hand: f64) {
    assert!(
        (computed - by_hand).abs() < 1e-9,
        "computed {computed}, by hand {by_hand}"
    );
}

/// A reading of `truth` after `fry_hours`, foretold as 10 within 8–12.
fn foretold(fill: &str, fry_hours: f64, truth: f64) -> Foretold {
    Foretold {
        fill: fill.to_owned(),
        day: 0.0,
        forecast: Estimate {
            low: 8.0,
            median: 10.0,
            high: 12.0,
        },
        truth,
        fry_hours,
    }
}

fn row(day: f64, tpc: Option<f64>) -> Row {
    Row {
        line: 0,
        fill: "a".to_owned(),
        fat: Fat::Sunflower,
        volume_l: 24.0,
        day,
        fry_hours: Some(if day > 0.0 { 6.0 } else { 0.0 }),
        frying_c: None,
        topup_l: Some(0.0),
        tpc,
        instrument: String::new(),
    }
}

/// Rows of consecutive days, from day 0.
fn days(readings: &[Option<f64>]) -> Vec<Row> {
    let mut day = -1.0;
    let next = |tpc: &Option<f64>| {
        day += 1.0;
        row(day, *tpc)
    };
    readings.iter().map(next).collect()
}

fn change_of(readings: &[Option<f64>], limit: f64) -> Option<f64> {
    let rows = days(readings);
    change_day(&rows.iter().collect::<Vec<_>>(), limit)
}

#[test]
fn all_methods_are_scored_on_the_readings_with_two_before_them_in_their_fill() {
    // Of fill a the third and fourth; of fill b none; a and b take turns.
    let all = [
        foretold("a", 0.0, 5.0),
        foretold("b", 0.0, 90.0),
        foretold("a", 10.0, 9.0),
        foretold("b", 10.0, 10.0),
        foretold("a", 20.0, 11.0),
        foretold("a", 30.0, 20.0),
    ];
    let errors = Errors::of(&all);
    assert_eq!(errors.n, 2);
    // |10 − 11| and |10 − 20|.
    close(errors.ours, 5.5);
    // |9 − 11| and |11 − 20|.
    close(errors.last, 5.5);
    // 5 + 0.4 · 20 = 13 against 11; through (0, 5), (10, 9), (20, 11) it is 16/3 + 0.3 h: 14⅓ against 20.
    close(errors.line, f64::midpoint(2.0, 20.0 - (16.0 / 3.0 + 9.0)));
    // 11 lies inside 8–12, 20 does not.
    close(errors.coverage, 50.0);
    close(errors.gain(), 100.0 * (1.0 - 5.5 / f64::midpoint(2.0, 17.0 / 3.0)));
}

#[test]
fn the_line_through_readings_of_the_same_hours_is_their_mean() {
    let all = [
        foretold("a", 6.0, 5.0),
        foretold("a", 6.0, 9.0),
        foretold("a", 6.0, 8.0),
    ];
    close(Errors::of(&all).line, 1.0);
}

#[test]
fn the_ends_of_the_interval_are_inside_it() {
    let at = |truth| {
        let all = [
            foretold("a", 0.0, 5.0),
            foretold("a", 6.0, 9.0),
            foretold("a", 9.0, truth),
        ];
        Errors::of(&all).coverage
    };
    close(at(8.0), 100.0);
    close(at(12.0), 100.0);
    close(at(12.1), 0.0);
}

#[test]
fn with_nothing_to_score_there_is_no_number() {
    let errors = Errors::of(&[foretold("a", 0.0, 5.0), foretold("a", 6.0, 9.0)]);
    assert_eq!(errors.n, 0);
    assert!(errors.ours.is_nan() && errors.coverage.is_nan());
}

#[test]
fn change_is_due_at_the_first_row_whose_next_two_readings_average_over_the_limit() {
    let fill = [
        Some(5.0),
        None,
        Some(12.0),
        None,
        Some(24.0),
        None,
        Some(27.0),
        Some(30.0),
    ];
    // After day 2 come 24 and 27: 25.5. After day 1 come 12 and 24.
    assert_eq!(change_of(&fill, 25.0), Some(2.0));
    assert_eq!(
        change_of(&fill, 25.5),
        Some(4.0),
        "an average at the limit is not over it"
    );
    assert_eq!(change_of(&fill, 18.5), Some(2.0));
    assert_eq!(change_of(&fill, 17.9), Some(0.0));
    assert_eq!(change_of(&fill, 28.5), None, "nothing is known after the last two");
}

#[test]
fn a_rows_own_reading_does_not_count_towards_its_change() {
    assert_eq!(
        change_of(&[Some(5.0), Some(60.0), Some(20.0), Some(29.0), Some(20.0)], 25.0),
        Some(0.0)
    );
    assert_eq!(change_of(&[Some(60.0), Some(20.0), Some(20.0), Some(29.0)], 25.0), None);
    assert_eq!(change_of(&[Some(60.0), Some(20.0), Some(31.0)], 25.0), Some(0.0));
}

#[test]
fn one_reading_after_it_is_too_few() {
    assert_eq!(change_of(&[Some(5.0), Some(60.0)], 25.0), None);
    assert_eq!(change_of(&[], 25.0), None);
}

#[test]
fn half_life_is_the_last_row_at_or_before_half_of_the_change_day() {
    let rows = [row(0.0, None), row(1.0, None), row(4.0, None), row(6.0, None)];
    let rows: Vec<&Row> = rows.iter().collect();
    assert_eq!(half_of(&rows, 8.0), Some(2));
    assert_eq!(half_of(&rows, 7.9), Some(1));
    assert_eq!(half_of(&rows, 0.0), Some(0));
    assert_eq!(half_of(&rows[1..], 1.0), None);
}

#[test]
fn a_fill_never_over_is_censored_and_one_over_is_scored() {
    let mut rows = days(&[Some(5.0), Some(8.0), Some(11.0), Some(14.0), Some(17.0), Some(20.0)]);
    let never = discards(&rows, 25.0);
    assert_eq!((never.off.len(), never.censored), (0, 1));
    // Three points a day, to the day: change is due on day 3, before 17 and 20. Half of it is day 1.
    let over = discards(&rows, 18.0);
    assert_eq!((over.off.len(), over.censored), (1, 0));
    assert!(over.off[0] <= 2.0, "{over:?}");
    // What is read after half life moves only the day the forecast is held against.
    rows[5].tpc = Some(90.0);
    let after_17 = discards(&rows, 40.0);
    rows[4].tpc = Some(30.0);
    assert_eq!(discards(&rows, 40.0), after_17);
}

#[test]
fn median_and_mean_of_days_off() {
    close(median(&[3.0, 1.0, 2.0]), 2.0);
    close(median(&[4.0, 1.0, 2.0, 3.0]), 2.5);
    close(mean(&[4.0, 1.0, 2.0, 3.0]), 2.5);
    assert!(median(&[]).is_nan() && mean(&[]).is_nan());
}
