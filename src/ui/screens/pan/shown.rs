//! Everything the page of a pan shows, gathered from the ledger and put in words.

use std::rc::Rc;

use crate::domain::country::keeps_chips_cooler;
use crate::domain::facts::Fact;
use crate::domain::facts::oil::Measured;
use crate::domain::ids::{EntryId, KitchenId, PanId};
use crate::domain::ledger::{Filtered, Happened, Ledger, PanFill};
use crate::domain::oil_life::{Because, Grounds, OilLife, Trial};
use crate::domain::time::Day;
use crate::domain::units::{Minutes, Share, Volume};
use crate::kitchen::forecast::Forecast;
use crate::kitchen::what_if::{self, Advice};
use crate::kitchen::{life, oil, today};
use crate::words::oil::{fat_name, fresh_value_assumed};
use crate::words::{Lang, facts, format, pan as said_of, setup};

/// Filterings listed.
const RUNS_SHOWN: usize = 5;

/// Everything the page shows of a pan.
#[derive(Clone, PartialEq)]
pub struct Shown {
    pub pan: today::PanToday,
    pub life: Rc<Option<OilLife>>,
    /// Days used in a row that it was filtered.
    pub streak: u32,
    pub forecast: Rc<Option<Forecast>>,
    pub limit: Option<f64>,
    /// What the numbers rest on, in words, newest entry first.
    pub because: Vec<(Because, String)>,
    /// Readings that do not fit.
    pub contradicting: Vec<(EntryId, String)>,
    /// What would help.
    pub advice: Rc<Advice>,
    /// The instrument to measure next with.
    pub with: Option<String>,
    /// Where what is tried begins.
    pub trial: Option<Trial>,
    /// What the pan holds when full.
    pub full: Volume,
    /// Whether chips are fried cooler here by law.
    pub chips_law: bool,
    /// Whether the log knows how hot this pan fries; otherwise its usual heat is guessed.
    pub heat_logged: bool,
    /// The kitchen, where its limit is chosen.
    pub kitchen: Option<KitchenId>,
    pub runs: Vec<String>,
    pub fresh_on: Option<Day>,
    pub today: Day,
}

pub fn look(ledger: &Ledger, pan: PanId, day: Day, lang: Lang) -> Option<Shown> {
    let (shown, life) = today::of_pan(ledger, pan, day)?;
    let because = (*life).as_ref().map(|l| l.because.as_slice()).unwrap_or_default();
    let said: Vec<_> = because
        .iter()
        .filter_map(|b| Some((*b, told(ledger, pan, *b, lang)?)))
        .collect();
    let contradicting = (*life).as_ref().map(|l| l.contradicting.as_slice()).unwrap_or_default();
    let contradicting = contradicting.iter().filter_map(|entry| {
        let words = said.iter().find_map(|(because, words)| match because {
            Because::Entry { entry: its, .. } if its == entry => Some(words.clone()),
            _ => None,
        });
        Some((*entry, words?))
    });
    let contradicting = contradicting.collect();
    let advice = oil::advice(ledger, pan, day);
    let with = advice.measure.and_then(|measure| measure.with);
    let kitchen = ledger.book.kitchen.as_ref();
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
        forecast: oil::line(ledger, pan, day),
        limit: life::limits(kitchen).polar.map(Share::percent),
        because: said.into_iter().rev().collect(),
        contradicting,
        with: with.and_then(|id| Some(ledger.book.instrument(id)?.name.clone())),
        advice,
        trial: what_if::trial(ledger, pan, day),
        full: ledger.book.pan(pan)?.full,
        chips_law: kitchen.is_some_and(|k| keeps_chips_cooler(&k.country)),
        heat_logged: what_if::heat_is_logged(ledger, pan),
        kitchen: kitchen.map(|k| k.kitchen),
        runs: filtered.take(RUNS_SHOWN).collect(),
        today: day,
        fresh_on: ledger.fill(pan).and_then(PanFill::fresh_on),
        pan: shown,
        life,
        streak: ledger.filter_streak(pan, day),
    })
}

/// One reason in words.
fn told(ledger: &Ledger, pan: PanId, because: Because, lang: Lang) -> Option<String> {
    Some(match because {
        Because::Entry { entry, role } => {
            let written = ledger.line(entry)?.standing()?;
            let day = ledger.book.day_of(written.at, written.off_min);
            let did = said(&written.fact, lang).unwrap_or_else(|| said_of::role(role, lang).to_owned());
            said_of::because_entry(day, facts::fact_name(&written.fact, lang), &did, lang)
        }
        Because::FreshValue { fat, quantity, grounds } => match grounds {
            Grounds::Published(source) => said_of::fresh_value(fat_name(fat, lang), quantity, source, lang),
            Grounds::Assumed => fresh_value_assumed(lang).to_owned(),
        },
        Because::PublishedRate(quantity) => said_of::published_rate(quantity, lang),
        Because::UsualDays(days) => said_of::your_usual(days, lang),
        Because::UnloggedServices(services) => said_of::unlogged(services, lang),
        Because::GuessedHours(services) => said_of::guessed_hours(services, lang),
        Because::GuessedTopUps => said_of::guessed_top_ups(lang).to_owned(),
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
        Because::Ahead { fry_h, top_up } => {
            let full = f64::from(ledger.book.pan(pan)?.full.ml());
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "minutes of a day, part of a pan"
            )]
            let (minutes, ml) = ((fry_h * 60.0).round() as u16, (full * top_up).round() as u32);
            said_of::ahead(Minutes::new(minutes)?, Volume::from_ml(ml)?, lang)
        }
        Because::Limit(quantity, at) => said_of::limit(quantity, at, lang),
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
