//! The forms of set-up: what each field is called, what helps to fill it in, what its choices say, why it is refused.

use crate::domain::claim::{ClaimKind, Exposure};
use crate::domain::country::{CountryLimit, OilLimit};
use crate::domain::facts::setup::{AcidLimit, FilterKind, HeatKind, LimitBasis, Measures, OffSign, OutBy, Route};
use crate::domain::fat::Fat;
use crate::domain::setting_up::{Fault, Field, LimitSaid, NO, OTHER_COUNTRY, RhythmBy, Subject, YES};
use crate::domain::units::{AcidValue, Share};

use super::screens::{Screen, screen};
use super::{Lang, format, oil, rhythm, setup};

/// What a field is called.
#[must_use]
pub const fn label(field: Field, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match field {
        Field::KitchenName => screen(Screen::KitchenName, lang),
        Field::Country => screen(Screen::Country, lang),
        Field::CountryCode => "Its two-letter code",
        Field::Zone => screen(Screen::Zone, lang),
        Field::DayStart => screen(Screen::DayStart, lang),
        Field::TradingDays => screen(Screen::TradingDays, lang),
        Field::UsualHours => screen(Screen::UsualHours, lang),
        Field::Closing => screen(Screen::Closing, lang),
        Field::QuietFrom => "Quiet hours from",
        Field::QuietTo => "Quiet hours to",
        Field::SecondPerson => "A second person in the building before pumps",
        Field::Emergency => screen(Screen::EmergencyNumber, lang),
        Field::LimitPolar => "Polar compounds, at most",
        Field::LimitAcid => "Acidity, at most",
        Field::AcidUnit => "Acidity is measured as",
        Field::Initials => screen(Screen::Initials, lang),
        Field::Adult => screen(Screen::Adult, lang),
        Field::Routes => screen(Screen::SignedOffFor, lang),
        Field::MaySupervise => screen(Screen::MaySupervise, lang),
        Field::SignedBy => screen(Screen::SignedOffBy, lang),
        Field::Vouched => screen(Screen::VouchForMyself, lang),
        Field::SignedUntil => "The sign-off holds until",
        Field::PanName => screen(Screen::PanName, lang),
        Field::PanFull => screen(Screen::FullLitres, lang),
        Field::PanMin => screen(Screen::MinLitres, lang),
        Field::PanMark => screen(Screen::Mark, lang),
        Field::PanHeat => screen(Screen::HeatedBy, lang),
        Field::OffSigns => screen(Screen::OffSigns, lang),
        Field::PanFat => screen(Screen::Fat, lang),
        Field::Claims => screen(Screen::KeptFor, lang),
        Field::ClaimBasis => "What that rests on",
        Field::Food => screen(Screen::FriedInIt, lang),
        Field::InIt => screen(Screen::InItNow, lang),
        Field::FreshOn => "Fresh on",
        Field::UsualDays => screen(Screen::UsualDays, lang),
        Field::EndSign => screen(Screen::EndSign, lang),
        Field::RhythmBy => "Filtered",
        Field::Rhythm => screen(Screen::Rhythm, lang),
        Field::RhythmSessions => "Filtered every how many sessions",
        Field::RhythmWeekdays => "Its nights",
        Field::InUse => "In use",
        Field::MachineName => screen(Screen::MachineName, lang),
        Field::OutBy => screen(Screen::OutBy, lang),
        Field::Tank => screen(Screen::TankLitres, lang),
        Field::FreeShare => screen(Screen::FreeShare, lang),
        Field::Heater => "Does it have a heater?",
        Field::HeaterWatts => screen(Screen::Heater, lang),
        Field::TakesSolid => screen(Screen::TakesSolid, lang),
        Field::FilterKind => screen(Screen::FilterKind, lang),
        Field::WindowLow => "Lowest oil temperature",
        Field::WindowHigh => "Highest oil temperature",
        Field::Target => screen(Screen::Target, lang),
        Field::RinseMax => screen(Screen::RinseMax, lang),
        Field::RinseMin => screen(Screen::RinseMin, lang),
        Field::Filters => screen(Screen::FilterOrder, lang),
        Field::Powder => "Filter powder, each run",
        Field::SwitchOff => "Switch: pump off",
        Field::SwitchDraw => "Switch: oil out of the pan",
        Field::SwitchReturn => "Switch: oil back into the pan",
        Field::HeldKnown => screen(Screen::HasHeld, lang),
        Field::Held => "It has met",
        Field::InstrumentName => screen(Screen::MachineName, lang),
        Field::Measures => screen(Screen::Measures, lang),
        Field::Spread => "Its spread, if you know it",
    }
}

/// What helps to fill a field in.
#[must_use]
pub const fn hint(field: Field, lang: Lang) -> Option<&'static str> {
    let Lang::En = lang;
    match field {
        Field::CountryCode => Some("Two letters, as at the end of its web addresses."),
        Field::Zone => Some("As this phone has it. Area and city, with a stroke between."),
        Field::DayStart => Some("Work after midnight still counts for the day before, until this hour."),
        Field::UsualHours => Some("How long a pan stands hot. Each service can say otherwise later."),
        Field::Closing | Field::QuietTo | Field::UsualDays | Field::EndSign | Field::SignedUntil => {
            Some(screen(Screen::Optional, lang))
        }
        Field::QuietFrom => Some("Between them only safety sounds. May stay empty."),
        Field::Emergency => Some("It stands on the Fire and Burn cards. Check it for where you are."),
        Field::LimitPolar => Some("May stay empty if acidity has a limit."),
        Field::LimitAcid => Some("Only if you measure it. May stay empty."),
        Field::Adult => Some("Nobody under eighteen works with hot oil here."),
        Field::Routes => Some("Any or none: touch a tick to take it away. A starter is signed off for nothing yet."),
        Field::Vouched => Some(screen(Screen::VouchText, lang)),
        Field::PanFull => Some("Oil at 20 °C. Hot oil stands about a tenth higher."),
        Field::PanMin => Some("From the pan's own manual, as oil at 20 °C."),
        Field::PanMark => Some(screen(Screen::MarkHelp, lang)),
        Field::OffSigns => Some(setup::off_signs_text(lang)),
        Field::Claims => Some("Choose none unless the pan, its oil and its machine can all keep it."),
        Field::ClaimBasis => Some("In your words: own pan, own machine, a certificate."),
        Field::Rhythm => Some("Empty means every day it is used."),
        Field::RhythmSessions => Some("A session is each lunch, tea or night you log. One means after each."),
        Field::RhythmWeekdays => Some("A night that was missed stands until the pan is filtered."),
        Field::Tank => Some("All it holds, from its plate or manual."),
        Field::FreeShare => Some("Room kept free above the oil. 10 % is a default of this guide."),
        Field::Heater => Some("A heater keeps pump and hose warm for solid fat."),
        Field::HeaterWatts => Some("From its plate."),
        Field::WindowLow => Some(screen(Screen::WindowHelp, lang)),
        Field::Target => Some("About 150 °C is common practice."),
        Field::RinseMax => Some("30 s at most is common practice."),
        Field::RinseMin => Some("From its manual."),
        Field::Filters => Some("Your own words, with commas between: mesh, paper."),
        Field::Powder => {
            Some("Grams to a litre of oil. Only a powder that takes colour and acid out of it. Empty for none.")
        }
        Field::SwitchOff => Some(screen(Screen::SwitchWordsHelp, lang)),
        Field::HeldKnown => Some("Not known closes it to pans that are kept for something."),
        Field::Spread => Some("Half of its readings lie closer than two thirds of this. May stay empty."),
        Field::KitchenName
        | Field::Country
        | Field::TradingDays
        | Field::AcidUnit
        | Field::Initials
        | Field::MaySupervise
        | Field::SignedBy
        | Field::PanName
        | Field::PanHeat
        | Field::PanFat
        | Field::Food
        | Field::InIt
        | Field::FreshOn
        | Field::RhythmBy
        | Field::InUse
        | Field::MachineName
        | Field::OutBy
        | Field::TakesSolid
        | Field::FilterKind
        | Field::WindowHigh
        | Field::SwitchDraw
        | Field::SwitchReturn
        | Field::Held
        | Field::InstrumentName
        | Field::Measures
        | Field::SecondPerson => None,
    }
}

/// How a field is answered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Control {
    /// A line of words.
    Words,
    /// A number and its unit.
    Number(&'static str),
    /// A time of day.
    Time,
    /// A day.
    Day,
    /// One of a long list.
    Listed,
    /// One among a few.
    One,
    /// Any among a few.
    Many,
    /// Yes or not ticked.
    Tick,
}

/// How a field is answered; `acid_unit` is the answer to [`Field::AcidUnit`].
#[must_use]
pub fn control(field: Field, acid_unit: &str) -> Control {
    match field {
        Field::Country => Control::Listed,
        Field::DayStart | Field::Closing | Field::QuietFrom | Field::QuietTo => Control::Time,
        Field::FreshOn | Field::SignedUntil => Control::Day,
        Field::UsualHours => Control::Number("h"),
        Field::LimitPolar | Field::FreeShare | Field::Spread => Control::Number("%"),
        Field::LimitAcid if acid_unit == Measures::Ffa.key() => Control::Number("%"),
        Field::LimitAcid => Control::Number("mg/g"),
        Field::PanFull | Field::PanMin | Field::Tank => Control::Number("L"),
        Field::WindowLow | Field::WindowHigh | Field::Target => Control::Number("°C"),
        Field::RinseMax | Field::RinseMin => Control::Number("s"),
        Field::HeaterWatts => Control::Number("W"),
        Field::Powder => Control::Number("g/L"),
        Field::UsualDays | Field::Rhythm => Control::Number("days"),
        Field::RhythmSessions => Control::Number("sessions"),
        Field::TradingDays
        | Field::Routes
        | Field::OffSigns
        | Field::Claims
        | Field::Food
        | Field::RhythmWeekdays
        | Field::Held => Control::Many,
        Field::AcidUnit
        | Field::Adult
        | Field::SignedBy
        | Field::PanHeat
        | Field::PanFat
        | Field::InIt
        | Field::RhythmBy
        | Field::OutBy
        | Field::Heater
        | Field::FilterKind
        | Field::HeldKnown
        | Field::Measures => Control::One,
        Field::MaySupervise | Field::Vouched | Field::InUse | Field::TakesSolid | Field::SecondPerson => Control::Tick,
        Field::KitchenName
        | Field::CountryCode
        | Field::Zone
        | Field::Emergency
        | Field::Initials
        | Field::PanName
        | Field::PanMark
        | Field::ClaimBasis
        | Field::EndSign
        | Field::MachineName
        | Field::Filters
        | Field::SwitchOff
        | Field::SwitchDraw
        | Field::SwitchReturn
        | Field::InstrumentName => Control::Words,
    }
}

fn all<T: Copy>(
    keys: &[T],
    key: impl Fn(T) -> &'static str,
    name: impl Fn(T) -> &'static str,
) -> Vec<(String, String)> {
    keys.iter().map(|k| (key(*k).to_owned(), name(*k).to_owned())).collect()
}

fn said(options: &[(&str, &str)]) -> Vec<(String, String)> {
    let own = |(k, w): &(&str, &str)| ((*k).to_owned(), (*w).to_owned());
    options.iter().map(own).collect()
}

/// The choices of a field: key and words; none where it is typed or a person. `heat` answers [`Field::PanHeat`].
#[must_use]
pub fn options(field: Field, heat: &str, lang: Lang) -> Vec<(String, String)> {
    let Lang::En = lang;
    match field {
        Field::Country => {
            let mut all = said(setup::COUNTRIES);
            all.push((OTHER_COUNTRY.to_owned(), setup::other_country(lang).to_owned()));
            all
        }
        Field::TradingDays | Field::RhythmWeekdays => (0..)
            .map(|n: usize| n.to_string())
            .zip(setup::weekdays(lang).map(str::to_owned))
            .collect(),
        Field::AcidUnit => said(&[
            (Measures::Acid.key(), "Acid value, mg/g"),
            (Measures::Ffa.key(), "Free fatty acids, %"),
        ]),
        Field::Adult | Field::Heater => said(&[(YES, "Yes"), (NO, "No")]),
        Field::Routes => all(Route::ALL, Route::key, |route| route_name(route, lang)),
        Field::PanHeat => all(HeatKind::ALL, HeatKind::key, |h| setup::heat_kind_name(h, lang)),
        Field::OffSigns => {
            let signs = HeatKind::from_key(heat).map_or(OffSign::ALL, setup::off_sign_choices);
            all(signs, OffSign::key, |s| setup::off_sign_name(s, lang))
        }
        Field::PanFat => all(Fat::ALL, Fat::key, |fat| oil::fat_name(fat, lang)),
        Field::Claims => all(ClaimKind::ALL, ClaimKind::key, |c| setup::claim_name(c, lang)),
        Field::Food | Field::Held => all(Exposure::ALL, Exposure::key, |e| setup::exposure_name(e, lang)),
        Field::InIt => said(&[
            ("fresh", screen(Screen::InItFresh, lang)),
            ("since", screen(Screen::InItSince, lang)),
            ("unknown", screen(Screen::InItUnknown, lang)),
            ("nothing", screen(Screen::InItNothing, lang)),
        ]),
        Field::RhythmBy => all(RhythmBy::ALL, RhythmBy::key, |by| rhythm::by_name(by, lang)),
        Field::OutBy => all(OutBy::ALL, OutBy::key, |o| setup::out_by_name(o, lang)),
        Field::FilterKind => all(FilterKind::ALL, FilterKind::key, |f| setup::filter_kind_name(f, lang)),
        Field::HeldKnown => said(&[("known", "I know"), ("unknown", "Not known")]),
        Field::Measures => all(Measures::ALL, Measures::key, |m| setup::measures_name(m, lang)),
        _ => Vec::new(),
    }
}

/// A route, as an owner signs somebody off for it.
#[must_use]
pub const fn route_name(route: Route, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match route {
        Route::Hot => "Hot, by machine",
        Route::Cold => "Cold, by hand",
    }
}

/// Who signed oneself off.
#[must_use]
pub const fn myself(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Myself"
}

/// Why a field is refused, in one or two sentences.
#[must_use]
pub fn fault(field: Field, why: Fault, lang: Lang) -> String {
    let Lang::En = lang;
    match why {
        Fault::Missing if matches!(control(field, ""), Control::One | Control::Many | Control::Listed) => {
            "Choose one.".to_owned()
        }
        Fault::Missing => "This is still empty.".to_owned(),
        Fault::TooLong { most } => format!("At most {most} letters."),
        Fault::NotANumber => "Type a number, such as 42 or 33.5.".to_owned(),
        Fault::NotATime => "Type a time, such as 05:00.".to_owned(),
        Fault::NotADay => "Choose a day.".to_owned(),
        Fault::OutOfRange { least, most } => match control(field, "") {
            Control::Number(unit @ ("°C" | "L")) => {
                format!("From {least}{0}{unit} to {most}{0}{unit}.", format::NBSP)
            }
            _ => format!("From {least} to {most}."),
        },
        Fault::OutOfHours { from, to } => format!(
            "From {} to {}.",
            format::minute_of_day(i64::from(from)),
            format::minute_of_day(i64::from(to))
        ),
        Fault::NotACountry => "Type the two letters of its code.".to_owned(),
        Fault::NameTaken => "Another one has this name. Two alike would be taken for each other.".to_owned(),
        Fault::MinNotUnderFull => "This must be less than the pan holds.".to_owned(),
        Fault::NotTwo => "Choose two.".to_owned(),
        Fault::SameKind => {
            "These two show the same thing. Choose one from the control and one from flame, light or supply.".to_owned()
        }
        Fault::NotOnThisHeat => "A pan with this heat has no such thing. Choose again.".to_owned(),
        Fault::DayAhead => "That day has not come yet.".to_owned(),
        Fault::TooLongAgo => "That is over two years ago. Choose oil of unknown age.".to_owned(),
        Fault::BreaksClaim { claim, met } => format!(
            "{} cannot be kept: this pan meets {}.",
            setup::claim_name(claim, lang),
            setup::exposure_name(met, lang).to_ascii_lowercase()
        ),
        Fault::UnderFresh { fat, fresh } => format!(
            "Fresh {} holds about {} already: the limit would be passed from the first minute.",
            oil::fat_name(fat, lang).to_ascii_lowercase(),
            format::percent(fresh)
        ),
        Fault::NotLiquid { fat, from } => format!(
            "{} runs through a pump only from {}.",
            oil::fat_name(fat, lang),
            format::temp(from)
        ),
        Fault::WindowTurned => "This must be above the lowest.".to_owned(),
        Fault::OutsideWindow => "This must lie between lowest and highest.".to_owned(),
        Fault::UnderAge => "Not under eighteen.".to_owned(),
        Fault::NobodySigned => "Somebody must stand for this sign-off.".to_owned(),
        Fault::NotAlone => "Somebody else here can sign you off: choose them.".to_owned(),
    }
}

/// A zone this phone does not know.
#[must_use]
pub const fn unknown_zone(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "This phone knows no such zone. Write it like Europe/London."
}

/// The title over a page of a form.
#[must_use]
pub const fn page_title(first: Field, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match first {
        Field::KitchenName => "Your kitchen",
        Field::TradingDays => "Days and hours",
        Field::DayStart => "When a day begins",
        Field::LimitPolar => screen(Screen::OilLimit, lang),
        Field::Initials => "Who works here?",
        Field::PanName => "A pan",
        Field::PanHeat => "How is it heated?",
        Field::PanFat => "Fat and food",
        Field::Claims => "Is it kept for something?",
        Field::InIt | Field::UsualDays => "Its oil",
        Field::OutBy => "A filter machine or hand kit",
        Field::WindowLow => "From its manual",
        Field::Filters | Field::Powder => "Its filters",
        Field::SwitchOff => "Words on its switch",
        Field::HeldKnown => "What it has met",
        Field::InstrumentName => "An instrument",
        _ => screen(Screen::SetUp, lang),
    }
}

/// What a form is about.
#[must_use]
pub const fn subject(subject: Subject, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match subject {
        Subject::Kitchen => "Kitchen",
        Subject::Person => screen(Screen::People, lang),
        Subject::Pan => screen(Screen::Pans, lang),
        Subject::Machine => screen(Screen::Machines, lang),
        Subject::Instrument => screen(Screen::Instruments, lang),
    }
}

/// The button that adds one more.
#[must_use]
pub const fn add(subject: Subject, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match subject {
        Subject::Kitchen => "Change the kitchen",
        Subject::Person => "Add a person",
        Subject::Pan => "Add a pan",
        Subject::Machine => "Add a machine",
        Subject::Instrument => "Add an instrument",
    }
}

/// How far first set-up has come in the form of one thing: "Kitchen, 2 of 4".
#[must_use]
pub fn page_of(subject: Subject, page: usize, of: usize, lang: Lang) -> String {
    let Lang::En = lang;
    let name = match subject {
        Subject::Kitchen => "Kitchen",
        Subject::Person => "You",
        Subject::Pan => "First pan",
        Subject::Machine => "Filter machine",
        Subject::Instrument => "Instrument",
    };
    format!("{name}, {page} of {of}")
}

/// Said when a kitchen is ready to work with.
#[must_use]
pub const fn ready(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Everything so far is saved. Add more now, or later in the office."
}

/// A set-up without a machine.
#[must_use]
pub const fn no_machine_text(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Without a machine or hand kit the guide cannot filter. Everything else works."
}

/// What the limits rest on, with source; and what is published where the owner chose otherwise.
#[must_use]
pub fn limit_text(said: LimitSaid, lang: Lang) -> String {
    let Lang::En = lang;
    match (said.basis, said.source, said.published) {
        (LimitBasis::Own, _, Some(published)) => format!(
            "Your own choice. In this country: {} ({}). Source: {}.",
            limit(published, lang),
            setup::limit_basis_name(published.basis, lang),
            published.source.unwrap_or_default()
        ),
        (LimitBasis::Own, _, None) => setup::limit_basis_text(LimitBasis::Own, lang).to_owned(),
        (basis, Some(source), _) => format!("{} Source: {source}.", setup::limit_basis_text(basis, lang)),
        (basis, None, _) => setup::limit_basis_text(basis, lang).to_owned(),
    }
}

fn limit(limit: CountryLimit, lang: Lang) -> String {
    let (polar, acid) = match limit.limit {
        OilLimit::Polar(share) => (Some(share), None),
        OilLimit::Acid(acid) => (None, Some(acid)),
    };
    limits(polar, acid, lang)
}

/// The limits in force, in a line: "25 % polar compounds".
#[must_use]
pub fn limits(polar: Option<Share>, acid: Option<AcidLimit>, lang: Lang) -> String {
    let Lang::En = lang;
    let polar = polar.map(|share| format!("{} polar compounds", format::percent(share)));
    let acid = acid.map(|limit| match limit {
        AcidLimit::Ffa(share) => format!("{} free fatty acids", format::percent(share)),
        AcidLimit::AcidValue(value) => acid_value(value),
    });
    let said: Vec<String> = polar.into_iter().chain(acid).collect();
    format::list(&said, lang)
}

fn acid_value(value: AcidValue) -> String {
    format!("acid value {}", format::acid_value(value))
}
