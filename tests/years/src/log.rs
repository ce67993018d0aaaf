//! Ten years of a four-pan shop: the demo's five weeks, played by its guide, once for each five weeks of the ten years.

use std::collections::BTreeMap;

use panward::demo;
use panward::domain::entry::Entry;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::oil::Service;
use panward::domain::facts::{Correct, Correction, Fact};
use panward::domain::ids::{EntryId, JobId, KitchenId, PersonId, RunId};
use panward::domain::time::{Day, Millis};
use panward::domain::units::Minutes;
use panward::store::export::{About, export};
use panward::store::{BadEntry, Loaded, Record, World};

use crate::held::now;

/// Ten years are this many times the demo's five weeks.
const TIMES: i64 = 104;
const BLOCK_MS: i64 = demo::WEEKS * 7 * 24 * Millis::HOUR;

/// The log, ready to be loaded, and the text of its export.
pub struct Years {
    /// What a store would give.
    pub loaded: Loaded,
    /// The export of it.
    pub text: String,
    /// The trading day after the last.
    pub today: Day,
}

/// Writes the log. The same at every call.
///
/// # Errors
/// Why an entry could not become a line.
pub fn ten_years() -> Result<Years, String> {
    let first = Day::spelt("2016-02-09").ok_or("no such day")?;
    let played = now(demo::play(7, first, |_| 0))?;
    let weeks: Vec<Entry> = played.records.into_iter().map(Record::into_entry).collect();
    let mut entries = Vec::new();
    for n in 0..TIMES {
        let mut block: Vec<Entry> = weeks
            .iter()
            .filter(|e| n == 0 || !is_set_up(&e.fact))
            .cloned()
            .collect();
        block.extend(day_jobs(&weeks));
        block.extend(put_right(&weeks));
        block.sort_by_key(|entry| entry.rec);
        shift(&mut block, n);
        entries.append(&mut block);
    }
    let numbered = (1..)
        .zip(entries)
        .map(|(seq, entry)| Record::of(Entry { seq, ..entry }));
    let records: Vec<Record> = numbered
        .collect::<Result<_, BadEntry>>()
        .map_err(|why| why.to_string())?;
    let loaded = Loaded {
        records,
        unreadable: Vec::new(),
    };
    let about = About {
        kitchen: KitchenId(1),
        name: "Ten years".into(),
        world: World::Demo,
        made_at: Millis(0),
    };
    let text = export(&loaded, &about).map_err(|why| why.to_string())?;
    let today = first.plus((TIMES - 1) * demo::WEEKS * 7);
    Ok(Years { loaded, text, today })
}

const fn is_set_up(fact: &Fact) -> bool {
    matches!(
        fact,
        Fact::Kitchen(_) | Fact::Person(_) | Fact::Pan(_) | Fact::Machine(_) | Fact::Instrument(_)
    )
}

/// The light-up and the lock-up of every day that was traded on.
fn day_jobs(weeks: &[Entry]) -> Vec<Entry> {
    let mut days: Vec<Day> = services(weeks).map(|(entry, _)| entry.day(300)).collect();
    days.dedup();
    let mut all = Vec::new();
    for (day, n) in days.into_iter().zip(1..) {
        let (light, lock) = (JobId(2 * n), JobId(2 * n + 1));
        for (job, what, event, minute) in [
            (light, JobKind::LightUp, JobEvent::Opened, 10 * 60),
            (light, JobKind::LightUp, JobEvent::Ended, 10 * 60 + 20),
            (lock, JobKind::LockUp, JobEvent::Opened, 25 * 60),
            (lock, JobKind::LockUp, JobEvent::Ended, 25 * 60 + 15),
        ] {
            let at = day.begins(0, 0).plus(minute * Millis::MINUTE);
            let who = weeks.iter().find_map(|entry| entry.who);
            all.extend(say(weeks, at, who, Fact::Job(Box::new(JobFact::new(job, what, event)))));
        }
    }
    all
}

/// What people get wrong in five weeks: hours typed wrong and a service logged an hour late.
fn put_right(weeks: &[Entry]) -> Vec<Entry> {
    let mut services = services(weeks);
    let (wrong, late) = (services.nth(9), services.nth(20));
    let righted = wrong.and_then(|(entry, service)| {
        let fact = Fact::Service(Service {
            fry: Minutes::new(120)?,
            ..service.clone()
        });
        let correct = Fact::Correct(Correct {
            of: entry.id,
            why: "Typed wrong".into(),
            how: Correction::Amend {
                at: None,
                off_min: None,
                fact: Some(Box::new(fact)),
            },
        });
        say(weeks, entry.rec.plus(9 * Millis::HOUR), entry.who, correct)
    });
    let late = late.and_then(|(entry, service)| {
        let fact = Fact::Service(service.clone());
        let late = say(weeks, entry.rec.plus(Millis::HOUR), entry.who, fact)?;
        Some(Entry { at: entry.at, ..late })
    });
    righted.into_iter().chain(late).collect()
}

fn services(weeks: &[Entry]) -> impl Iterator<Item = (&Entry, &Service)> {
    weeks.iter().filter_map(|entry| match &entry.fact {
        Fact::Service(service) => Some((entry, service)),
        _ => None,
    })
}

fn say(weeks: &[Entry], at: Millis, who: Option<PersonId>, fact: Fact) -> Option<Entry> {
    let like = weeks.first()?.clone();
    Some(Entry {
        at,
        rec: at,
        who,
        fact,
        ..like
    })
}

/// The block as it happened `n` times five weeks later, with ids of its own.
fn shift(block: &mut [Entry], n: i64) {
    let other = |id: u128| id ^ (u128::from(n.unsigned_abs()).wrapping_mul(0x9E37_79B9_7F4A_7C15) & 0xFFFF_FFFF_FFFF);
    let mut ids = BTreeMap::new();
    for (at, entry) in (0..).zip(block) {
        entry.at = entry.at.plus(n * BLOCK_MS);
        entry.rec = entry.rec.plus(n * BLOCK_MS);
        let id = v7(entry.rec, n, at);
        ids.insert(entry.id, id);
        entry.id = id;
        match &mut entry.fact {
            Fact::Run(run) => {
                run.run = RunId(other(run.run.0));
                run.job = JobId(other(run.job.0));
            }
            Fact::Job(job) => job.job = JobId(other(job.job.0)),
            Fact::Correct(correct) => correct.of = ids.get(&correct.of).copied().unwrap_or(correct.of),
            _ => {}
        }
    }
}

/// A UUID v7 of this moment (RFC 9562, section 5.7), its chance taken from its place.
fn v7(rec: Millis, n: i64, at: u64) -> EntryId {
    let place = at + 1 + n.unsigned_abs() * 10_000;
    let chance = u128::from(place.wrapping_mul(0x9E37_79B9_7F4A_7C15) >> 2);
    EntryId(u128::from(rec.0.unsigned_abs()) << 80 | 7 << 76 | 0b10 << 62 | chance)
}
