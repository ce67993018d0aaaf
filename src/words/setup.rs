//! The names and explanations set-up offers: fats' promises, exposures, machines, signs of off, limits, countries.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::facts::oil::{Load, SignKind};
use crate::domain::facts::setup::{FilterKind, HeatKind, LimitBasis, Measures, OffSign, OutBy};
use crate::domain::units::Unit;

use super::Lang;

/// What a pan is kept for. On screen a claim is "kept for": a claim sounds like insurance.
#[must_use]
pub const fn claim_name(claim: ClaimKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match claim {
        ClaimKind::GlutenFree => "Gluten-free",
        ClaimKind::Vegetarian => "Vegetarian",
        ClaimKind::Halal => "Halal",
    }
}

/// What a promise asks of the pan, its oil and the machine.
#[must_use]
pub const fn claim_asks(claim: ClaimKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match claim {
        ClaimKind::GlutenFree => {
            "At most 20 mg/kg gluten. Own clean oil; filtering does not make shared oil gluten-free. Its own kit: never the shared machine."
        }
        ClaimKind::Vegetarian => "Neither meat, fish nor seafood has met this oil. Its own kit, or one that met none.",
        ClaimKind::Halal => {
            "No pork; meat and animal fat only on the basis you give. Its own kit, or one that met none."
        }
    }
}

/// Something a pan or a machine has met.
#[must_use]
pub const fn exposure_name(exposure: Exposure, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match exposure {
        Exposure::Gluten => "Wheat or batter",
        Exposure::Fish => "Fish",
        Exposure::Crustacean => "Prawns, scampi, crab",
        Exposure::Meat => "Meat",
        Exposure::Pork => "Pork",
        Exposure::Milk => "Milk",
        Exposure::Egg => "Egg",
        Exposure::Peanut => "Peanut",
        Exposure::AnimalFat => "Dripping or lard",
        Exposure::Soya => "Soya",
        Exposure::Unknown => "Not known",
    }
}

/// How oil leaves the pan.
#[must_use]
pub const fn out_by_name(out_by: OutBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match out_by {
        OutBy::Nozzle => "Lifted by a nozzle",
        OutBy::Drain => "Drained to a portable machine",
        OutBy::BuiltIn => "Built into the range",
        OutBy::Hand => "Hand kit",
    }
}

/// The same, so that an owner knows which theirs is.
#[must_use]
pub const fn out_by_text(out_by: OutBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match out_by {
        OutBy::Nozzle => "A pump lifts the oil out from above and gives it back the same way.",
        OutBy::Drain => "A pipe locks onto the pan's valve; oil drains into the closed tank and is pumped back.",
        OutBy::BuiltIn => "Oil drains into a closed tank under the range and is pumped back.",
        OutBy::Hand => "Strainer and lidded metal container. Only at 40 °C or under.",
    }
}

/// How a filter is used up.
#[must_use]
pub const fn filter_kind_name(kind: FilterKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match kind {
        FilterKind::Single => "Oil passes once: the rinse is kept short",
        FilterKind::Recirculating => "Oil goes round: the rinse has a least time",
    }
}

/// What heats a pan.
#[must_use]
pub const fn heat_kind_name(heat: HeatKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match heat {
        HeatKind::Gas => "Gas",
        HeatKind::Electric => "Electric",
    }
}

/// One of the two things that show that the heat is off.
#[must_use]
pub const fn off_sign_name(sign: OffSign, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match sign {
        OffSign::Knob => "Knob at off",
        OffSign::Flame => "Burner flame out",
        OffSign::Light => "Heating light out",
        OffSign::Thermostat => "Thermostat at zero",
        OffSign::Isolator => "Isolator off",
        OffSign::GasTap => "Gas tap shut",
        OffSign::Plug => "Plug out",
    }
}

/// The choices for a pan of this kind, likeliest first.
#[must_use]
pub const fn off_sign_choices(heat: HeatKind) -> &'static [OffSign] {
    match heat {
        HeatKind::Gas => &[
            OffSign::Knob,
            OffSign::Flame,
            OffSign::GasTap,
            OffSign::Thermostat,
            OffSign::Light,
            OffSign::Isolator,
        ],
        HeatKind::Electric => &[
            OffSign::Knob,
            OffSign::Light,
            OffSign::Isolator,
            OffSign::Thermostat,
            OffSign::Plug,
        ],
    }
}

/// What set-up says over those choices.
#[must_use]
pub const fn off_signs_text(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Which two things show you that this pan's heat is off? Choose two of different kinds, both easy to see."
}

/// How busy a service was.
#[must_use]
pub const fn load_name(load: Load, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match load {
        Load::Quiet => "Quiet",
        Load::Normal => "Normal",
        Load::Heavy => "Heavy",
    }
}

/// A sign of the oil.
#[must_use]
pub const fn sign_name(sign: SignKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match sign {
        SignKind::Smoke => "Smoke at frying heat",
        SignKind::Foam => "Foam that stays",
        SignKind::Smell => "Off smell",
        SignKind::Dark => "Dark oil",
        SignKind::Gum => "Gum on the walls",
        SignKind::Carbon => "Carbon on the walls",
        SignKind::Greasy => "Greasy or soggy food",
        SignKind::Slow => "Slow to come up to heat",
    }
}

/// What an instrument measures.
#[must_use]
pub const fn measures_name(measures: Measures, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match measures {
        Measures::Polar => "Polar compounds, %",
        Measures::Ffa => "Free fatty acids, %",
        Measures::Acid => "Acid value, mg/g",
        Measures::Temp => "Temperature, °C",
    }
}

/// What a quantity is counted in.
#[must_use]
pub const fn unit_name(unit: Unit, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match unit {
        Unit::Litres => "litres",
        Unit::Kilograms => "kg",
        Unit::Block => "blocks",
        Unit::Drum => "drums",
        Unit::Bag => "bags",
    }
}

/// What a limit rests on, in a word.
#[must_use]
pub const fn limit_basis_name(basis: LimitBasis, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match basis {
        LimitBasis::Law => "law",
        LimitBasis::Recommendation => "recommendation",
        LimitBasis::Own => "your own choice",
    }
}

/// The same in a sentence.
#[must_use]
pub const fn limit_basis_text(basis: LimitBasis, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match basis {
        LimitBasis::Law => {
            "A statute of this country, as the sources named here give it. Look it up before you rely on it."
        }
        LimitBasis::Recommendation => "A recommendation in this country, with no force of law.",
        LimitBasis::Own => "No limit in law is known for this country. This one is your own choice; 25 % is offered.",
    }
}

/// The days of the week, Monday first, short.
#[must_use]
pub const fn weekdays(lang: Lang) -> [&'static str; 7] {
    let Lang::En = lang;
    ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]
}

/// A country by its ISO 3166-1 code: those whose limits were looked up, and those whose trade words we know.
#[must_use]
pub fn country_name(code: &str, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    COUNTRIES
        .iter()
        .find(|(known, _)| *known == code)
        .map(|(_, name)| *name)
}

/// What is shown for every other country.
#[must_use]
pub const fn other_country(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Another country"
}

/// The countries offered, in the order of the list.
pub const COUNTRIES: &[(&str, &str)] = &[
    ("GB", "United Kingdom"),
    ("IE", "Ireland"),
    ("AU", "Australia"),
    ("AT", "Austria"),
    ("BE", "Belgium"),
    ("BR", "Brazil"),
    ("CN", "China"),
    ("CZ", "Czech Republic"),
    ("FR", "France"),
    ("DE", "Germany"),
    ("IN", "India"),
    ("IT", "Italy"),
    ("KR", "Korea"),
    ("NL", "Netherlands"),
    ("NZ", "New Zealand"),
    ("PL", "Poland"),
    ("PT", "Portugal"),
    ("ES", "Spain"),
    ("US", "United States"),
];
