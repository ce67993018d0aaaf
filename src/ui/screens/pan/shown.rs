//! Everything the page of a pan shows, gathered from the ledger and put in words.

use crate::domain::facts::Fact;
use crate::domain::facts::oil::Measured;
use crate::domain::ids::{EntryId, PanId};
use crate::domain::ledger::{Filtered, Happened, Ledger, PanFill};
use crate::domain::oil_life::{Because, Grounds, OilLife, Role};
use crate::domain::time::Day;
use crate::kitchen::forecast::Forecast;
use crate::kitchen::oil::line;
use crate::kitchen::{life, today};
use crate::words::{Lang, facts, format, oil, pan as said_of, setup};

/// Filterings listed.
const RUNS_SHOWN: usize = 5;

/// Everything the page shows of a pan.
#[derive(Clone, PartialEq)]
pub struct Shown {
    pub pan: today::PanToday,
    pub life: Option<OilLife>,
    /// Days used in a row that it was filtered.
    pub streak: u32,
    pub forecast: Option<Forecast>,
    pub limit: Option<f64>,
    /// What the numbers rest on: the words, and the entry where it is one.
    pub numbers: Vec<(String, Option<EntryId>)>,
    pub entries: Vec<(String, Option<EntryId>)>,
    pub runs: Vec<String>,
    pub fresh_on: Option<Day>,
}

pub fn look(ledger: &Ledger, pan: PanId, day: Day, lang: Lang) -> Option<Shown> {
    let (shown, life) = today::of_pan(ledger, pan, day)?;
    let because = life.as_ref().map(|l| l.because.as_slice()).unwrap_or_default();
    let said: Vec<_> = because
        .iter()
        .filter_map(|b| Some((*b, told(ledger, *b, lang)?)))
        .collect();
    let (entries, numbers): (Vec<_>, Vec<_>) = said.into_iter().rev().partition(|(b, _)| {
        matches!(
            b,
            Because::Entry {
                role: Role::Wear | Role::Dilution | Role::Powder,
                ..
            }
        )
    });
    let linked = |(because, text): (Because, String)| match because {
        Because::Entry { entry, .. } => (text, Some(entry)),
        Because::FreshValue { .. }
        | Because::PublishedRate(_)
        | Because::UsualDays(_)
        | Because::UnloggedServices(_)
        | Because::GuessedHours(_)
        | Because::Rate { .. }
        | Because::Taught { .. }
        | Because::Powder { .. }
        | Because::Instrument { .. }
        | Because::UnknownAge => (text, None),
    };
    let filtered = ledger.fill(pan).into_iter().flat_map(|fill| fill.events.iter().rev());
    let filtered = filtered.filter_map(|event| match event.what {
        Happened::Filtered(how) => Some(said_of::filtered_on(
            event.day,
            matches!(how, Filtered::Guided(_)),
            lang,
        )),
        _ => None,
    });
    Some(Shown {
        forecast: (*line(ledger, pan, day)).clone(),
        limit: life::limits(ledger.book.kitchen.as_ref()).polar.map(|l| l.percent()),
        numbers: numbers.into_iter().map(linked).collect(),
        entries: entries.into_iter().map(linked).collect(),
        runs: filtered.take(RUNS_SHOWN).collect(),
        fresh_on: ledger.fill(pan).and_then(PanFill::fresh_on),
        pan: shown,
        life,
        streak: ledger.filter_streak(pan, day),
    })
}

/// One reason in words.
fn told(ledger: &Ledger, because: Because, lang: Lang) -> Option<String> {
    Some(match because {
        Because::Entry { entry, role } => {
            let written = ledger.line(entry)?.standing()?;
            let day = ledger.book.day_of(written.at, written.off_min);
            let did = said(&written.fact, lang).unwrap_or_else(|| said_of::role(role, lang).to_owned());
            said_of::because_entry(day, facts::fact_name(&written.fact, lang), &did, lang)
        }
        Because::FreshValue { fat, quantity, grounds } => match grounds {
            Grounds::Published(source) => said_of::fresh_value(oil::fat_name(fat, lang), quantity, source, lang),
            Grounds::Assumed => oil::fresh_value_assumed(lang).to_owned(),
        },
        Because::PublishedRate(quantity) => said_of::published_rate(quantity, lang),
        Because::UsualDays(days) => said_of::your_usual(days, lang),
        Because::UnloggedServices(services) => said_of::unlogged(services, lang),
        Because::GuessedHours(services) => said_of::guessed_hours(services, lang),
        Because::Rate { per_hour, heat, temp } => said_of::rate(per_hour, heat, temp, lang),
        Because::Taught { fills, per_hour } => said_of::taught(fills, per_hour, lang),
        Because::Powder { at_most, acidity } => said_of::powder(at_most, acidity, lang),
        Because::Instrument {
            instrument,
            spread,
            off,
        } => {
            let tool = instrument.and_then(|id| ledger.book.instrument(id));
            said_of::instrument(tool.map(|tool| tool.name.as_str()), spread, off, lang)
        }
        Because::UnknownAge => said_of::unknown_age(lang).to_owned(),
    })
}

/// What an entry counted or measured.
fn said(fact: &Fact, lang: Lang) -> Option<String> {
    match fact {
        Fact::Service(service) => Some(format::hours(service.fry, lang)),
        Fact::TopUp(top_up) => Some(format::amount(top_up.amount, lang)),
        Fact::PartChange(change) => Some(format::amount(change.fresh, lang)),
        Fact::Reading(reading) => match reading.value {
            Measured::Polar(share) | Measured::Ffa(share) => Some(format::percent(share)),
            Measured::Acid(value) => Some(format::acid_value(value)),
            Measured::Temp(temp) | Measured::Smoke(temp) => Some(format::temp(temp)),
        },
        Fact::Sign(sign) => Some(setup::sign_name(sign.sign, lang).to_owned()),
        _ => None,
    }
}
