//! Limits by country: figures at least two sources seen agree on, and their standing.

use panward::domain::country::{
    OWN_CHOICE_CPC, OilLimit, emergency_number, is_southern, published_limit, starting_limit, with_a_published_limit,
};
use panward::domain::facts::setup::{AcidLimit, LimitBasis};
use panward::domain::limits;
use panward::domain::units::{AcidValue, Share};

/// CV17: the United Kingdom has no statutory number for oil in use (none in the lists of LGC Standards 2017, Bastida &
/// Sánchez-Muniz 2002 or the Istanbul survey), so the limit is the owner's own choice; 175 °C for chips is the
/// acrylamide regulation (2017/2158) and no oil limit.
#[test]
fn cv17_united_kingdom() {
    assert_eq!(published_limit("GB"), None);
    let start = starting_limit("GB");
    assert_eq!(start.basis, LimitBasis::Own);
    assert_eq!(start.source, None);
    assert_eq!(start.limit, OilLimit::Polar(Share::from_cpc(OWN_CHOICE_CPC).unwrap()));
    assert_eq!(limits::CHIPS_BELOW.dc(), 1750);
}

/// LGC Standards 2017, Bastida & Sánchez-Muniz 2002, the Istanbul survey in TURSTEP, FSSAI, Park & Kim 2016: figure
/// and standing of each country's limit on oil in use.
#[test]
fn limits_and_their_standing() {
    let (law, advice) = (LimitBasis::Law, LimitBasis::Recommendation);
    let table = [
        ("FR", 25, law),
        ("ES", 25, law),
        ("IT", 25, law),
        ("BE", 25, law),
        ("DE", 24, advice),
        ("AT", 27, advice),
        ("CN", 27, law),
        ("IN", 25, law),
        ("CZ", 25, law),
        ("BR", 25, advice),
        ("PL", 25, law),
        ("PT", 25, law),
    ];
    for (country, percent, basis) in table {
        let row = published_limit(country).unwrap();
        assert_eq!(
            row.limit,
            OilLimit::Polar(Share::from_cpc(percent * 100).unwrap()),
            "{country}"
        );
        assert_eq!(row.basis, basis, "{country}");
        assert!(row.source.is_some_and(|s| !s.is_empty()), "{country}");
    }
    let korea = published_limit("KR").unwrap();
    let acid = AcidLimit::AcidValue(AcidValue::from_cav(250).unwrap());
    assert_eq!((korea.limit, korea.basis), (OilLimit::Acid(acid), law));
    assert_eq!(with_a_published_limit().count(), table.len() + 1);
}

/// A limit on polymers (Netherlands) is none on anything the log holds; nor is a country nobody has looked up.
#[test]
fn no_row_means_own_choice() {
    for country in ["NL", "US", "AU", "XX", ""] {
        assert_eq!(starting_limit(country).basis, LimitBasis::Own, "{country}");
    }
}

/// Emergency numbers and hemispheres: common knowledge, from memory.
#[test]
fn numbers_and_seasons() {
    let numbers = [
        ("GB", "999"),
        ("US", "911"),
        ("AU", "000"),
        ("NZ", "111"),
        ("DE", "112"),
        ("XX", "112"),
    ];
    for (country, number) in numbers {
        assert_eq!(emergency_number(country), number);
    }
    assert!(is_southern("NZ") && !is_southern("GB"));
}
