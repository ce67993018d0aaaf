//! The temperatures that decide, as their sources give them.

use panward::domain::fat::Fat;
use panward::domain::limits;
use panward::domain::units::Temp;

/// HSE Catering Information Sheet 17: by hand only at or under 40 °C; most enclosed systems need at least 100 °C.
#[test]
fn hse_cais_17() {
    assert_eq!(limits::MANUAL_MAX.dc(), 400);
    assert_eq!(limits::WINDOW_LOW_DEFAULT.dc(), 1000);
}

/// Commission Regulation (EU) 2017/2158, Annex II Part A: chips are fried below 175 °C.
#[test]
fn chips_below_175() {
    assert_eq!(limits::CHIPS_BELOW, Temp::celsius(175));
}

/// Dover District Council, *Safe use of deep fat fryers*: never above 200 °C. No window we offer reaches it.
#[test]
fn never_above_200() {
    assert_eq!(limits::NEVER_ABOVE.dc(), 2000);
    assert!(limits::WINDOW_HIGH_DEFAULT < limits::NEVER_ABOVE);
    assert!(limits::TARGET_DEFAULT > limits::WINDOW_LOW_DEFAULT);
    assert!(limits::TARGET_DEFAULT < limits::WINDOW_HIGH_DEFAULT);
}

/// The hot window we offer lies above what keeps each fat liquid (discharge temperatures of Codex CXC 36-1987, from
/// memory), and no fat that is set at 40 °C is liquid enough to be emptied there.
#[test]
fn fats_and_routes() {
    for fat in Fat::ALL {
        assert!(fat.pumpable_at() < limits::WINDOW_LOW_DEFAULT, "{fat:?}");
        assert_eq!(fat.is_set_at_40c(), fat.pumpable_at() > limits::MANUAL_MAX, "{fat:?}");
    }
}
