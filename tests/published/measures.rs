//! Other countries' measures, as their definitions give them.

use panward::domain::measure::{Measure, rounded};

/// NIST Special Publication 811 (2008), appendix B.8: 1 US gallon = 3.785 412 L, 1 pound = 0.453 592 4 kg; 350 °F is
/// 176.67 °C and 104 °F is 40 °C by its formula t/°C = (t/°F − 32)/1.8. From memory.
#[test]
fn nist_sp_811() {
    assert_eq!(Measure::Litres.from_us(1_000_000), 3_785_412);
    assert_eq!(Measure::Kilograms.from_us(10_000_000), 4_535_924);
    assert_eq!(Measure::Temp.from_us(350_000), 176_667);
    assert_eq!(Measure::Temp.from_us(104_000), 40_000);
    assert_eq!(Measure::Temp.to_us(40_000), 104_000);
    assert_eq!(Measure::Temp.to_us(-40_000), -40_000);
    assert_eq!(rounded(Measure::Litres.to_us(20_000), 2), 528);
}
