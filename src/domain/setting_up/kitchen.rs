//! The kitchen's form: name, country, days and hours, the number to call, and the limit with what it rests on.

use super::read::{LINE_MOST, NAME_MOST, Reader, as_number, as_time, as_weekdays, weekdays};
use super::{Answers, Around, Fault, Field, NO, OTHER_COUNTRY, Wrong};
use crate::domain::country::{CountryLimit, OilLimit, emergency_number, published_limit, starting_limit};
use crate::domain::facts::Fact;
use crate::domain::facts::setup::{AcidLimit, Kitchen, LimitBasis, Measures, Span};
use crate::domain::fat::Fat;
use crate::domain::ids::KitchenId;
use crate::domain::ledger::Book;
use crate::domain::oil_life::{self, LimitsInForce};
use crate::domain::units::{AcidValue, Minutes, Share};

/// The earliest and the latest minute a trading day may begin: 03:00 and 11:00.
const DAY_START: (u16, u16) = (180, 660);

/// What the limits now typed rest on, and who was seen to say so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LimitSaid {
    /// Law, recommendation or the owner's own choice.
    pub basis: LimitBasis,
    /// The source, for anything but an own choice.
    pub source: Option<&'static str>,
    /// What is published for the country, where the owner chose otherwise.
    pub published: Option<CountryLimit>,
}

/// The country a phone in this zone most likely stands in, as in `zone1970.tab` of the IANA time zone database; empty
/// where that would be a guess.
fn country_of(zone: &str) -> &'static str {
    match zone {
        "Europe/London" | "Europe/Belfast" => "GB",
        "Europe/Dublin" => "IE",
        "Europe/Vienna" => "AT",
        "Europe/Brussels" => "BE",
        "Europe/Prague" => "CZ",
        "Europe/Paris" => "FR",
        "Europe/Berlin" => "DE",
        "Europe/Rome" => "IT",
        "Europe/Amsterdam" => "NL",
        "Europe/Warsaw" => "PL",
        "Europe/Lisbon" => "PT",
        "Europe/Madrid" => "ES",
        "Asia/Kolkata" | "Asia/Calcutta" => "IN",
        "Asia/Seoul" => "KR",
        "Asia/Shanghai" => "CN",
        "America/Sao_Paulo" => "BR",
        "America/New_York" | "America/Chicago" | "America/Denver" | "America/Los_Angeles" => "US",
        "Pacific/Auckland" => "NZ",
        _ if zone.starts_with("Australia/") => "AU",
        _ => "",
    }
}

pub(super) fn blank(zone: &str) -> Answers {
    let mut answers = Answers::default()
        .with(Field::Zone, zone)
        .with(
            Field::DayStart,
            as_time(Minutes::new(Book::DAY_START_MIN).unwrap_or_default()),
        )
        .with(Field::TradingDays, "0,1,2,3,4,5,6")
        .with(Field::UsualHours, "5")
        .with(Field::AcidUnit, Measures::Acid.key());
    answers.tick(Field::SecondPerson, true);
    change_country(&mut answers, Field::Country, country_of(zone));
    answers
}

pub(super) fn of(kitchen: &Kitchen) -> Answers {
    let mut answers = Answers::default()
        .with(Field::KitchenName, &*kitchen.name)
        .with(Field::Country, &*kitchen.country)
        .with(Field::Zone, &*kitchen.zone)
        .with(
            Field::DayStart,
            as_time(Minutes::new(kitchen.day_start_min).unwrap_or_default()),
        )
        .with(Field::TradingDays, as_weekdays(kitchen.trading_days))
        .with(Field::UsualHours, as_hours(kitchen.fry_min))
        .with(Field::Closing, kitchen.closing_min.map(as_time).unwrap_or_default())
        .with(
            Field::QuietFrom,
            kitchen.quiet.map(|q| as_time(q.from_min)).unwrap_or_default(),
        )
        .with(
            Field::QuietTo,
            kitchen.quiet.map(|q| as_time(q.to_min)).unwrap_or_default(),
        )
        .with(Field::Emergency, &*kitchen.emergency_number)
        .with(Field::AcidUnit, Measures::Acid.key());
    answers.tick(Field::SecondPerson, kitchen.second_person);
    put_limits(&mut answers, kitchen.polar_limit, kitchen.acid_limit);
    answers
}

fn as_hours(minutes: Minutes) -> String {
    // To the hundredth of an hour, which is finer than the minute it is read back to.
    as_number((u32::from(minutes.get()) * 100 + 30) / 60, 2)
}

fn put_limits(answers: &mut Answers, polar: Option<Share>, acid: Option<AcidLimit>) {
    answers.put(
        Field::LimitPolar,
        polar.map(|s| as_number(u32::from(s.cpc()), 2)).unwrap_or_default(),
    );
    let (typed, unit) = match acid {
        Some(AcidLimit::Ffa(share)) => (as_number(u32::from(share.cpc()), 2), Measures::Ffa),
        Some(AcidLimit::AcidValue(value)) => (as_number(u32::from(value.cav()), 2), Measures::Acid),
        None => (String::new(), Measures::Acid),
    };
    answers.put(Field::LimitAcid, typed);
    answers.put(Field::AcidUnit, unit.key());
}

/// The country answered (ISO 3166-1 alpha-2, upper case); empty while none is.
#[must_use]
pub fn country(answers: &Answers) -> String {
    match answers.get(Field::Country) {
        OTHER_COUNTRY => answers.get(Field::CountryCode).trim().to_ascii_uppercase(),
        code => code.to_owned(),
    }
}

/// Another country brings its own number and limit, unless the owner had put in something else.
pub(super) fn change_country(answers: &mut Answers, field: Field, value: &str) {
    let before = country(answers);
    let number_stood = answers.get(Field::Emergency);
    let own_number = !number_stood.is_empty() && number_stood != emergency_number(&before);
    let own_limit = !untouched_limits(answers, &before);
    answers.put(field, value);
    let now = country(answers);
    if !own_number {
        answers.put(Field::Emergency, emergency_number(&now));
    }
    if !own_limit {
        let (polar, acid) = parts(starting_limit(&now));
        put_limits(answers, polar, acid);
    }
}

const fn parts(limit: CountryLimit) -> (Option<Share>, Option<AcidLimit>) {
    match limit.limit {
        OilLimit::Polar(share) => (Some(share), None),
        OilLimit::Acid(acid) => (None, Some(acid)),
    }
}

fn untouched_limits(answers: &Answers, country: &str) -> bool {
    let nothing = answers.get(Field::LimitPolar).is_empty() && answers.get(Field::LimitAcid).is_empty();
    nothing || {
        let (polar, acid) = typed_limits(answers, &mut Vec::new());
        (polar, acid) == parts(starting_limit(country))
    }
}

fn typed_limits(answers: &Answers, wrongs: &mut Vec<Wrong>) -> (Option<Share>, Option<AcidLimit>) {
    let mut read = Reader { answers, wrongs };
    let polar = read.hundredths_if_any(Field::LimitPolar, 1, 60).flatten();
    let acid = read.hundredths_if_any(Field::LimitAcid, 0, 20).flatten();
    let acid = acid.and_then(|hundredths| match Measures::from_key(answers.get(Field::AcidUnit)) {
        Some(Measures::Ffa) => Share::from_cpc(hundredths).map(AcidLimit::Ffa),
        Some(Measures::Acid | Measures::Polar | Measures::Temp) | None => {
            AcidValue::from_cav(hundredths).map(AcidLimit::AcidValue)
        }
    });
    (polar.and_then(Share::from_cpc), acid)
}

/// What the limits in these answers rest on: what is published for the country as long as they are just that, else the
/// owner's own choice.
#[must_use]
pub fn limit_said(answers: &Answers) -> LimitSaid {
    let typed = typed_limits(answers, &mut Vec::new());
    let published = published_limit(&country(answers));
    match published {
        Some(limit) if parts(limit) == typed => LimitSaid {
            basis: limit.basis,
            source: limit.source,
            published: None,
        },
        Some(_) | None => LimitSaid {
            basis: LimitBasis::Own,
            source: None,
            published,
        },
    }
}

pub(super) fn pages(answers: &Answers) -> Vec<Vec<Field>> {
    let mut first = vec![Field::KitchenName, Field::Country];
    if answers.get(Field::Country) == OTHER_COUNTRY {
        first.push(Field::CountryCode);
    }
    first.push(Field::Emergency);
    let mut limits = vec![Field::LimitPolar, Field::LimitAcid];
    if !answers.get(Field::LimitAcid).is_empty() {
        limits.push(Field::AcidUnit);
    }
    vec![
        first,
        vec![Field::TradingDays, Field::UsualHours, Field::Closing],
        vec![
            Field::DayStart,
            Field::QuietFrom,
            Field::QuietTo,
            Field::Zone,
            Field::SecondPerson,
        ],
        limits,
    ]
}

/// What a first set-up asks: the name, where it is with the number to call there, and the limit, which is a choice
/// somebody makes. Acidity comes with it where it has a limit, or where nothing else has one.
pub(super) fn first(answers: &Answers) -> Vec<Vec<Field>> {
    let mut page = vec![
        Field::KitchenName,
        Field::Country,
        Field::CountryCode,
        Field::Emergency,
        Field::LimitPolar,
    ];
    if answers.get(Field::LimitPolar).is_empty() || !answers.get(Field::LimitAcid).is_empty() {
        page.extend([Field::LimitAcid, Field::AcidUnit]);
    }
    vec![page]
}

pub(super) fn check(id: KitchenId, answers: &Answers, around: Around, wrongs: &mut Vec<Wrong>) -> Option<Vec<Fact>> {
    let mut read = Reader { answers, wrongs };
    let name = read.words(Field::KitchenName, NAME_MOST);
    let code = country(answers);
    let known = code.len() == 2 && code.bytes().all(|b| b.is_ascii_uppercase());
    if code.is_empty() && answers.get(Field::Country) != OTHER_COUNTRY {
        read.refuse::<()>(Field::Country, Fault::Missing);
    } else if !known {
        read.refuse::<()>(Field::CountryCode, Fault::NotACountry);
    }
    let emergency = read.words(Field::Emergency, NAME_MOST);
    let fry = read.hours(Field::UsualHours, 24);
    let closing = read.time_if_any(Field::Closing);
    let day_start = day_start(&mut read);
    let zone = read.words(Field::Zone, LINE_MOST);
    let quiet = quiet(&mut read);
    let trading_days = weekdays(answers, Field::TradingDays);
    if trading_days == [false; 7] {
        read.refuse::<()>(Field::TradingDays, Fault::Missing);
    }
    let (polar_limit, acid_limit) = typed_limits(answers, read.wrongs);
    if polar_limit.is_none() && acid_limit.is_none() && answers.get(Field::LimitPolar).is_empty() {
        read.refuse::<()>(Field::LimitPolar, Fault::Missing);
    }
    let in_force = LimitsInForce {
        polar: polar_limit,
        acid: acid_limit,
    };
    for pan in around.book.pans.values().filter(|p| p.in_use) {
        if let Some(wrong) = limits_fit(in_force, pan.fat) {
            read.wrongs.push(wrong);
            break;
        }
    }
    Some(vec![Fact::Kitchen(Box::new(Kitchen {
        kitchen: id,
        name: name?,
        country: code,
        zone: zone?,
        day_start_min: day_start?.get(),
        trading_days,
        fry_min: fry?,
        closing_min: closing?,
        quiet: quiet?,
        emergency_number: emergency?,
        polar_limit,
        acid_limit,
        limit_basis: limit_said(answers).basis,
        languages: around
            .book
            .kitchen
            .as_ref()
            .map_or_else(|| vec!["en".to_owned()], |k| k.languages.clone()),
        // On until the owner says otherwise.
        second_person: answers.get(Field::SecondPerson) != NO,
    }))])
}

fn day_start(read: &mut Reader) -> Option<Minutes> {
    let (from, to) = DAY_START;
    let start = read.time(Field::DayStart)?;
    if (from..=to).contains(&start.get()) {
        Some(start)
    } else {
        read.refuse(Field::DayStart, Fault::OutOfHours { from, to })
    }
}

fn quiet(read: &mut Reader) -> Option<Option<Span>> {
    match (read.time_if_any(Field::QuietFrom)?, read.time_if_any(Field::QuietTo)?) {
        (Some(from_min), Some(to_min)) => Some(Some(Span { from_min, to_min })),
        (None, None) => Some(None),
        (Some(_), None) => read.refuse(Field::QuietTo, Fault::Missing),
        (None, Some(_)) => read.refuse(Field::QuietFrom, Fault::Missing),
    }
}

/// The limit that a fat is over when it is fresh; `None` when both make sense.
pub(super) fn limits_fit(limits: LimitsInForce, fat: Fat) -> Option<Wrong> {
    limits.check(fat).err()?;
    let polar = LimitsInForce { acid: None, ..limits };
    let (field, fresh) = if polar.check(fat).is_err() {
        (Field::LimitPolar, oil_life::fresh_polar(fat).mean)
    } else {
        (Field::LimitAcid, oil_life::fresh_ffa(fat).mean)
    };
    // A mean of a few percent: no rounding or range to lose.
    let fresh = Share::from_cpc((fresh * 100.0 + 0.5) as u16).unwrap_or(Share::MAX);
    Some(Wrong {
        field,
        why: Fault::UnderFresh { fat, fresh },
    })
}
