//! Newton's law of cooling, against worked examples, and everything it must refuse to answer.

use crate::close;
use panward::domain::fat::Fat;
use panward::domain::heat::cool_down::{Cooling, DEFAULT_RATE, fitted_rate, rate_of_two, time_until, wait};
use panward::domain::heat::warm_up::{self, is_expired, is_winter_half_year, minutes};
use panward::domain::time::Millis;

/// OpenStax, *Precalculus*, Newton's law of cooling: a cheesecake at 165 °F in 35 °F, 150 °F after ten minutes, 70 °F
/// after 107 (106.68 with the constant rounded as printed).
#[test]
fn the_textbook_cheesecake() {
    let k = rate_of_two(165.0, 150.0, 35.0, 10.0).unwrap();
    close(k, 0.012_260, 1e-6);
    close(time_until(165.0, 70.0, 35.0, k).unwrap(), 107.03, 0.01);
    close(time_until(165.0, 70.0, 35.0, 0.0123).unwrap(), 106.68, 0.01);
}

/// The warming twin printed beside it: 40 °F into 70 °F, 45 °F after an hour, 60 °F after about six.
#[test]
fn the_textbook_warming() {
    let k = rate_of_two(40.0, 45.0, 70.0, 1.0).unwrap();
    close(k, 0.182_322, 1e-6);
    close(time_until(40.0, 60.0, 70.0, k).unwrap(), 6.026, 0.001);
}

/// HSE CAIS 17: 6–7 h to cool; end points of 180 and 40 °C in air at 20 °C are assumed.
#[test]
fn six_and_a_half_hours() {
    let k = rate_of_two(180.0, 40.0, 20.0, 390.0).unwrap();
    close(k, 0.005_331_9, 1e-7);
    for (from, published) in [(180.0, 38.94), (170.0, 26.84), (185.0, 44.71)] {
        close(time_until(from, 150.0, 20.0, k).unwrap(), published, 0.01);
    }
    assert!((DEFAULT_RATE.slow..=DEFAULT_RATE.quick).contains(&k));
}

/// Two readings and four (synthetic): two-point constant, least squares, and what a degree of error does.
#[test]
fn a_pan_of_ones_own() {
    let k = rate_of_two(180.0, 170.0, 25.0, 10.0).unwrap();
    close(k, 0.006_669_1, 1e-6);
    close(time_until(180.0, 150.0, 25.0, k).unwrap(), 32.25, 0.01);
    close(time_until(170.0, 150.0, 25.0, k).unwrap(), 22.25, 0.01);
    let reading = |at_min, temp| Cooling { at_min, temp };
    let four = [
        reading(0.0, 180.0),
        reading(10.0, 170.0),
        reading(20.0, 160.6),
        reading(30.0, 151.9),
    ];
    close(fitted_rate(&four, 25.0).unwrap(), 0.006_671_0, 1e-6);
    close(fitted_rate(&four[..2], 25.0).unwrap(), k, 1e-12);
    let own = wait(151.9, 150.0, 25.0, &four).unwrap();
    close(own.likely, time_until(151.9, 150.0, 25.0, 0.006_671_0).unwrap(), 0.01);
    // Two readings ten degrees apart are too few: the default speaks.
    let shy = wait(170.0, 150.0, 25.0, &four[..2]).unwrap();
    close(
        shy.likely,
        time_until(170.0, 150.0, 25.0, DEFAULT_RATE.usual).unwrap(),
        1e-9,
    );
    assert!(shy.soonest < shy.likely && shy.likely < shy.latest);
}

/// Guards: no answer, rather than nothing or infinity.
#[test]
fn no_answer_where_there_is_none() {
    assert_eq!(rate_of_two(180.0, 170.0, 170.0, 10.0), None, "ambient reached");
    assert_eq!(rate_of_two(180.0, 170.0, 175.0, 10.0), None, "ambient between");
    assert_eq!(rate_of_two(170.0, 170.0, 20.0, 10.0), None, "did not cool");
    assert_eq!(rate_of_two(170.0, 180.0, 20.0, 10.0), None, "warmed");
    assert_eq!(rate_of_two(180.0, 170.0, 20.0, 0.0), None, "no time went by");
    assert_eq!(rate_of_two(f64::NAN, 170.0, 20.0, 10.0), None);
    assert_eq!(time_until(180.0, 20.0, 20.0, 0.006), None, "never quite ambient");
    assert_eq!(time_until(180.0, 10.0, 20.0, 0.006), None, "never under ambient");
    assert_eq!(time_until(140.0, 150.0, 20.0, 0.006), None, "behind already");
    assert_eq!(time_until(180.0, 150.0, 20.0, 0.0), None, "does not cool");
    let flat = [Cooling {
        at_min: 5.0,
        temp: 100.0,
    }; 3];
    assert_eq!(fitted_rate(&flat, 20.0), None, "one moment only");
    assert_eq!(fitted_rate(&flat[..1], 20.0), None);
    assert_eq!(fitted_rate(&[], 20.0), None);
    assert_eq!(wait(150.0, 150.0, 20.0, &[]), None, "there already");
    assert_eq!(wait(10.0, 15.0, 20.0, &[]), None, "warming is not cooling");
}

/// Warm-up: 10–15 minutes is common practice, no source; never under 10 for a fat that sets.
#[test]
fn warm_up_by_fat_and_season() {
    for fat in Fat::ALL {
        let (summer, winter) = (minutes(*fat, false), minutes(*fat, true));
        assert_eq!(
            (summer, winter),
            if fat.is_solid() { (10, 15) } else { (0, 0) },
            "{fat:?}"
        );
    }
    assert!(is_winter_half_year(1, false) && !is_winter_half_year(7, false));
    assert!(!is_winter_half_year(1, true) && is_winter_half_year(7, true));
    assert_eq!((1..=12).filter(|m| is_winter_half_year(*m, true)).count(), 6);
}

/// A finished warm-up lasts 20 minutes from heater off (the project's own line), and never across a clock that moved.
#[test]
fn warm_up_expires() {
    let off = Millis(1_000_000);
    let last = off.plus(i64::from(warm_up::EXPIRES_MIN) * Millis::MINUTE);
    assert!(!is_expired(None, last.plus(Millis::HOUR)));
    assert!(!is_expired(Some(off), off));
    assert!(!is_expired(Some(off), last.plus(-1)));
    assert!(is_expired(Some(off), last));
    assert!(is_expired(Some(off), off.plus(-1)));
}
