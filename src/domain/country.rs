//! What a kitchen's country brings: the limits on frying oil in use, the emergency number, the hemisphere.
//!
//! A row is here only where at least two sources seen agree on its figure, for oil in use and a quantity the log
//! holds (not polymers, not fresh oil). The statutes themselves were not read, only the compilations named: the owner
//! is told so, and may choose another limit.

use super::facts::setup::{AcidLimit, LimitBasis};
use super::units::{AcidValue, Share};

/// A limit on oil in use: a maximum, so that over it means change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OilLimit {
    /// Polar compounds, % m/m.
    Polar(Share),
    /// Acidity.
    Acid(AcidLimit),
}

/// A limit to begin with, and what to call it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountryLimit {
    /// The limit.
    pub limit: OilLimit,
    /// Law, recommendation, or the owner's own choice.
    pub basis: LimitBasis,
    /// Who was seen to say so; nobody for the owner's own choice.
    pub source: Option<&'static str>,
}

/// The owner's own choice is prefilled with this, in hundredths of a percent of polar compounds: the figure most
/// limits carry. A convention of control bodies, not a line between healthy and harmful.
pub const OWN_CHOICE_CPC: u16 = 2_500;

enum Figure {
    PolarCpc(u16),
    AcidCav(u16),
}

struct Row {
    country: &'static str,
    figure: Figure,
    basis: LimitBasis,
    source: &'static str,
}

const fn polar(country: &'static str, cpc: u16, basis: LimitBasis, source: &'static str) -> Row {
    Row {
        country,
        figure: Figure::PolarCpc(cpc),
        basis,
        source,
    }
}

const LGC: &str = "LGC Standards, proficiency testing note on polar compounds in frying oil, 2017";
const LGC_AND_BASTIDA: &str = "LGC Standards 2017; Bastida & Sánchez-Muniz, JAOCS 79 (2002)";

const ROWS: &[Row] = &[
    polar("FR", 2_500, LimitBasis::Law, LGC_AND_BASTIDA),
    polar("ES", 2_500, LimitBasis::Law, LGC_AND_BASTIDA),
    polar("IT", 2_500, LimitBasis::Law, LGC_AND_BASTIDA),
    polar(
        "BE",
        2_500,
        LimitBasis::Law,
        "Bastida & Sánchez-Muniz, JAOCS 79 (2002); Istanbul survey in TURSTEP",
    ),
    polar(
        "DE",
        2_400,
        LimitBasis::Recommendation,
        "German Society for Fat Science (DGF), as in LGC Standards 2017 and the Istanbul survey in TURSTEP",
    ),
    polar(
        "AT",
        2_700,
        LimitBasis::Recommendation,
        "Austrian food code, as in the Istanbul survey in TURSTEP; Bastida & Sánchez-Muniz 2002 give 20–27",
    ),
    polar(
        "CN",
        2_700,
        LimitBasis::Law,
        "Sci. Technol. Cereals Oils Foods (2022) 20220106; Istanbul survey in TURSTEP",
    ),
    polar(
        "IN",
        2_500,
        LimitBasis::Law,
        "FSSAI, page on reusing oil; FSS (Prohibition and Restrictions on Sales) Third Amendment Regulations 2020",
    ),
    polar(
        "CZ",
        2_500,
        LimitBasis::Law,
        "Bastida & Sánchez-Muniz, JAOCS 79 (2002), and one later compilation",
    ),
    polar("BR", 2_500, LimitBasis::Recommendation, LGC),
    polar("PL", 2_500, LimitBasis::Law, LGC),
    polar(
        "PT",
        2_500,
        LimitBasis::Law,
        "Istanbul survey in TURSTEP, and one other compilation",
    ),
    Row {
        country: "KR",
        figure: Figure::AcidCav(250),
        basis: LimitBasis::Law,
        source: "Korea Food Codex (foods other than animal products), as in Park & Kim 2016 and Park et al. 2020",
    },
];

impl Row {
    fn limit(&self) -> Option<CountryLimit> {
        let limit = match self.figure {
            Figure::PolarCpc(cpc) => OilLimit::Polar(Share::from_cpc(cpc)?),
            Figure::AcidCav(cav) => OilLimit::Acid(AcidLimit::AcidValue(AcidValue::from_cav(cav)?)),
        };
        Some(CountryLimit {
            limit,
            basis: self.basis,
            source: Some(self.source),
        })
    }
}

/// The published limit of a country (ISO 3166-1 alpha-2, upper case); `None` where no row is known, the United
/// Kingdom among them: it has no statutory number for polar compounds or acidity of oil in use.
#[must_use]
pub fn published_limit(country: &str) -> Option<CountryLimit> {
    ROWS.iter().find(|r| r.country == country).and_then(Row::limit)
}

/// The limit a new kitchen starts with: its country's, or the owner's own choice prefilled with 25 % polar compounds.
#[must_use]
pub fn starting_limit(country: &str) -> CountryLimit {
    published_limit(country).unwrap_or_else(|| CountryLimit {
        limit: OilLimit::Polar(Share::from_cpc(OWN_CHOICE_CPC).unwrap_or(Share::MAX)),
        basis: LimitBasis::Own,
        source: None,
    })
}

/// The countries with a row, in table order.
pub fn with_a_published_limit() -> impl Iterator<Item = &'static str> {
    ROWS.iter().map(|r| r.country)
}

/// The number the fire and burn cards begin with, for the owner to check: the one for fire where a country has
/// several. From memory, every one; 112 for the rest, which mobile networks carry almost everywhere.
#[must_use]
pub fn emergency_number(country: &str) -> &'static str {
    match country {
        "GB" | "IE" | "GG" | "JE" | "IM" | "HK" | "MY" => "999",
        "US" | "CA" | "MX" => "911",
        "AU" => "000",
        "NZ" => "111",
        "CN" | "JP" | "KR" | "TW" => "119",
        "BR" => "193",
        _ => "112",
    }
}

/// Whether chips there are fried under [`super::limits::CHIPS_BELOW`] by law: Commission Regulation (EU) 2017/2158, a
/// text with EEA relevance, and as kept in the United Kingdom. Who belongs to them is from memory.
#[must_use]
pub fn keeps_chips_cooler(country: &str) -> bool {
    const THERE: &str = "GB AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK IS LI NO";
    THERE.split(' ').any(|code| code == country)
}

/// Whether most of a country lies south of the equator, where winter is April to September.
#[must_use]
pub fn is_southern(country: &str) -> bool {
    matches!(
        country,
        "AU" | "NZ"
            | "ZA"
            | "NA"
            | "BW"
            | "ZW"
            | "ZM"
            | "MZ"
            | "MW"
            | "AO"
            | "TZ"
            | "MG"
            | "MU"
            | "LS"
            | "SZ"
            | "AR"
            | "BO"
            | "BR"
            | "CL"
            | "PE"
            | "PY"
            | "UY"
            | "ID"
            | "PG"
            | "FJ"
            | "FK"
    )
}
