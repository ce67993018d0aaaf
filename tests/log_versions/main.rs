//! Every stored form that was ever shipped still reads, and is still written byte for byte.
//!
//! `fixtures/log_v1.json` and its later fellows are frozen: they were made without this app's code and are never edited
//! again. A new version of a body gets its own file beside them.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

#[path = "../arbitrary/mod.rs"]
mod arbitrary;
mod nonsense;
mod samples;

use std::collections::BTreeSet;
use std::num::NonZeroU16;

use nonsense::check_of;
use panward::domain::evidence::Item;
use panward::domain::facts::rhythm::{Rhythm, Weekdays};
use panward::domain::facts::setup::Heater;
use panward::domain::facts::trouble::TroubleKind;
use panward::domain::facts::{Correction, Fact};
use panward::domain::ledger::Ledger;
use panward::domain::time::Millis;
use panward::domain::units::Dose;
use panward::store::import::import;
use panward::store::record::{decode, encode};
use panward::store::{BadEntry, Loaded, Odd, Record, World};
use proptest::prelude::*;
use samples::*;

#[test]
fn every_version_reads_and_is_written_the_same() {
    for sample in [LOG_V1, LOG_V2, LOG_V3, LOG_V4, LOG_V5, LOG_V6, LOG_V7, LOG_V8] {
        let log = import(sample, World::Real, 0).expect("the frozen sample reads");
        for record in &log.records {
            assert!(!matches!(record.entry().fact, Fact::Newer(_)), "{}", record.line());
            assert_eq!(encode(record.entry()).as_deref(), Ok(record.line()));
        }
    }
}

#[test]
fn version_2_of_a_machine_names_its_powder_and_version_1_had_none() {
    let powders = |sample| {
        let log = import(sample, World::Real, 0).expect("the frozen sample reads");
        let ledger = Ledger::of(log.records.iter().map(|record| record.entry().clone()).collect());
        let powders = ledger.book.machines.values().map(|machine| machine.powder);
        powders.collect::<Vec<_>>()
    };
    assert_eq!(powders(LOG_V1), [None, None]);
    // The first as it was put right.
    assert_eq!(powders(LOG_V2), [100, 1].map(Dose::from_g_per_l));
}

#[test]
fn version_3_of_a_machine_has_a_heater_of_unknown_watts_with_a_powder_or_without() {
    let log = import(LOG_V8, World::Real, 0).expect("the frozen sample reads");
    let said = |record: &Record| match &record.entry().fact {
        Fact::Machine(machine) => Some((machine.heater, machine.powder)),
        _ => None,
    };
    let said: Vec<_> = log.records.iter().filter_map(said).collect();
    assert_eq!(
        said,
        [Dose::from_g_per_l(18), None].map(|dose| (Heater::NotKnown, dose))
    );
}

#[test]
fn version_2_of_a_job_is_a_pans_own_and_version_1_every_other() {
    let lines = LOG_V7
        .lines()
        .filter(|l| l.starts_with("{\"id\"") && kind_of(l) == "job");
    for line in lines {
        let line = line.trim_end_matches(',');
        let Fact::Job(job) = decode(line).unwrap().fact else {
            panic!("not a job")
        };
        let (v, other) = if job.what.is_of_pan() { (2, 1) } else { (1, 2) };
        assert!(line.contains(&format!("\"v\":{v}")), "{line}");
        let why = decode(&line.replacen(&format!("\"v\":{v}"), &format!("\"v\":{other}"), 1));
        let what = job.what.key();
        assert!(
            why.expect_err("the other version")
                .to_string()
                .contains(&format!("what is {what}")),
            "{line}"
        );
    }
}

#[test]
fn version_2_of_a_claim_restored_says_what_was_seen_and_version_1_did_not() {
    let looked = |sample| {
        let log = import(sample, World::Real, 0).expect("the frozen sample reads");
        let facts = log.records.iter().map(|record| record.entry().fact.clone());
        let looked = facts.filter_map(|fact| match fact {
            Fact::ClaimRestored(restored) => Some(restored.looked.map(|looked| looked.until)),
            _ => None,
        });
        looked.collect::<Vec<_>>()
    };
    assert_eq!(looked(LOG_V1), [None]);
    assert_eq!(looked(LOG_V3), [Some(None), Some(Some(Millis(1_780_522_200_000)))]);
}

#[test]
fn version_2_of_a_pan_names_its_sessions_or_nights_and_version_1_its_days() {
    let rhythms = |sample| {
        let log = import(sample, World::Real, 0).expect("the frozen sample reads");
        let ledger = Ledger::of(log.records.iter().map(|record| record.entry().clone()).collect());
        let rhythms = ledger.book.pans.values().map(|pan| pan.rhythm);
        rhythms.collect::<Vec<_>>()
    };
    let every = |n| NonZeroU16::new(n).unwrap();
    assert_eq!(rhythms(LOG_V1), [Some(Rhythm::Days(every(1))), None]);
    // The second as it was put right.
    let nights = Weekdays::of([false, false, false, true, false, false, true]).unwrap();
    let new = [
        Rhythm::Sessions(every(1)),
        Rhythm::Weekdays(nights),
        Rhythm::Sessions(every(60)),
    ];
    assert_eq!(rhythms(LOG_V4), new.map(Some));
    // An older app wrote no such number; read, it means what it meant.
    let never = first("pan").replace("\"rhythm\":1,", "\"rhythm\":0,");
    assert!(matches!(decode(&never).unwrap().fact, Fact::Pan(pan) if pan.rhythm.is_none()));
}

#[test]
fn version_1_holds_every_kind() {
    let kinds: BTreeSet<_> = LOG_V1
        .lines()
        .filter(|l| l.starts_with("{\"id\""))
        .map(kind_of)
        .collect();
    let all = "claim_lost claim_restored correct fill instrument job kitchen machine machine_cleaned move note \
               oil_change pan part_change person practised reading run run_noted service sign topup";
    assert_eq!(kinds, all.split(' ').collect());
}

#[test]
fn version_1_says_what_it_said() {
    let entry = decode(first("fill")).unwrap();
    let Fact::Fill(fill) = &entry.fact else {
        panic!("not a fill")
    };
    assert_eq!(fill.amount.volume.ml(), 17_500);
    assert_eq!(
        (entry.off_min, entry.rec.since(entry.at)),
        (60, 4 * 24 * Millis::HOUR + 9 * Millis::MINUTE + 1)
    );
    let looks = LOG_V1.lines().find(|l| l.contains("\"heap_dc\":512")).unwrap();
    let Fact::Job(job) = decode(looks.trim_end_matches(',')).unwrap().fact else {
        panic!("not a job")
    };
    assert_eq!(
        (job.evidence.number(Item::Heap), job.evidence.number(Item::HeapAgain)),
        (Some(512), Some(498))
    );
    let amended = LOG_V1.lines().find(|l| l.contains("\"why\":\"wrong amount\"")).unwrap();
    let Fact::Correct(correct) = decode(amended.trim_end_matches(',')).unwrap().fact else {
        panic!("not a correction")
    };
    let Correction::Amend {
        at: None,
        off_min: None,
        fact: Some(fact),
    } = correct.how
    else {
        panic!("not a body")
    };
    assert!(matches!(*fact, Fact::Fill(fill) if fill.amount.volume.ml() == 18_000));
}

#[test]
fn what_a_newer_app_wrote_is_kept_as_it_came() {
    let log = import(NEWER, World::Real, 0).expect("reads");
    let newer: Vec<_> = log
        .records
        .iter()
        .filter_map(|r| match &r.entry().fact {
            Fact::Newer(newer) => Some((newer.kind.as_str(), newer.v, NEWER.contains(r.line()))),
            _ => None,
        })
        .collect();
    assert_eq!(
        newer,
        [("smoke_point_card", 1, true), ("note", 2, true), ("correct", 1, true)]
    );
    let entry = log.records.last().unwrap().entry();
    assert!(
        matches!(encode(entry), Err(BadEntry::Unwritable(_))),
        "only its own bytes can say it"
    );
}

/// One change to a sound line, and what is said of it.
#[track_caller]
#[test]
fn a_trouble_says_what_it_said_and_a_kitchen_whether_one_may_be_alone() {
    let folded = |sample| {
        let log = import(sample, World::Real, 0).expect("the frozen sample reads");
        Ledger::of(log.records.iter().map(|record| record.entry().clone()).collect())
    };
    let rule = |ledger: &Ledger| ledger.book.kitchen.as_ref().map(|k| k.second_person);
    assert_eq!(rule(&folded(LOG_V1)), Some(true), "on, where nobody said otherwise");
    let ledger = folded(LOG_V5);
    assert_eq!(rule(&ledger), Some(false));
    let standing: Vec<_> = ledger.troubles().iter().map(|t| (t.what, t.looked)).collect();
    assert_eq!(
        standing,
        [(TroubleKind::PowerCut, true)],
        "what never began is not over"
    );
    check_of(
        LOG_V5,
        "trouble",
        "\"power_cut\"",
        "\"flood\"",
        "broken body of trouble version 1: invalid value: string \"flood\", expected a trouble",
    );
}

#[test]
fn an_entry_past_the_calendar_cannot_be_written() {
    let mut entry = decode(first("note")).unwrap();
    entry.rec = Millis(i64::MAX);
    assert!(matches!(Record::of(entry.clone()), Err(BadEntry::Unwritable(_))));
    entry.rec = Millis(253_402_300_800_000); // 10000-01-01T00:00:00Z
    assert!(matches!(Record::of(entry), Err(BadEntry::Unwritable(_))));
}

proptest! {
    #[test]
    fn any_entry_comes_back_as_itself(entry in arbitrary::entry()) {
        let line = encode(&entry).expect("writes");
        prop_assert_eq!(line.lines().count(), 1);
        let back = decode(&line).expect("reads");
        prop_assert_eq!(&back, &entry);
        prop_assert_eq!(encode(&back).expect("writes again"), line);
    }

    #[test]
    fn order_does_not_depend_on_arrival(log in arbitrary::log().prop_flat_map(|log| (Just(log.clone()), Just(log).prop_shuffle()))) {
        let rows = |entries: Vec<panward::domain::entry::Entry>| {
            let row = |e: panward::domain::entry::Entry| (e.dev, e.seq, encode(&e).expect("writes"));
            Loaded::from_rows(entries.into_iter().map(row))
        };
        let (sorted, shuffled) = log;
        prop_assert_eq!(rows(sorted), rows(shuffled));
    }

    #[test]
    fn no_line_makes_the_reader_fall_over(line in any::<String>(), cut in 0..200_usize) {
        let _ = decode(&line);
        let sound = first("run");
        let cut = sound.char_indices().map(|(at, _)| at).nth(cut).unwrap_or(0);
        prop_assert!(decode(&sound[..cut]).is_err());
    }
}
