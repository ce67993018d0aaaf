//! Claims to the minute: lost by a word or by the log itself, restored on evidence, begun for an evening.
//!
//! What restores gluten-free oil: Coeliac UK, *Guidance for fish and chip shops*.

use panward::domain::allergen_sheet::is_open;
use panward::domain::claim::{ClaimKind, Exposure, Exposures};
use panward::domain::entry::Draft;
use panward::domain::facts::job::Grade;
use panward::domain::facts::oil::{Age, ClaimChange, ClaimRestored, Fill, Looked};
use panward::domain::facts::setup::Claim;
use panward::domain::facts::{AllergensChecked, Fact};
use panward::domain::fat::Fat;
use panward::domain::ids::{EntryId, PanId, PersonId};
use panward::domain::ledger::{Because, Ledger};
use panward::domain::quick::{Need, Quick, QuickRefusal, Said, drafts};
use panward::domain::time::Millis;
use proptest::prelude::*;

use crate::given::*;

const GF: ClaimKind = ClaimKind::GlutenFree;

fn lost(pan: PanId) -> ClaimChange {
    ClaimChange {
        pan,
        what: GF,
        why: String::new(),
        basis: None,
    }
}

fn back(pan: PanId, until: Option<Millis>) -> ClaimRestored {
    ClaimRestored {
        pan,
        what: GF,
        why: "cleaned, fresh oil".into(),
        basis: Some("own pan".into()),
        looked: Some(Looked { until }),
    }
}

fn say_as(who: Option<PersonId>, ledger: &Ledger, what: Quick, when: Millis) -> Result<Vec<Draft>, QuickRefusal> {
    let said = Said {
        what,
        who,
        at: None,
        sure: true,
    };
    drafts(ledger, said, now(when))
}

fn say(ledger: &Ledger, what: Quick, when: Millis) -> Result<Vec<Draft>, QuickRefusal> {
    say_as(Some(ANN), ledger, what, when)
}

/// What restoring the chip pan lacks first.
fn lacks(log: &Log, what: ClaimRestored, when: Millis) -> Option<Need> {
    match say(&log.ledger(), Quick::ClaimRestored(what), when) {
        Ok(_) => None,
        Err(QuickRefusal::NotRestored { need, .. }) => Some(need),
        Err(other) => panic!("{other:?}"),
    }
}

fn stands(ledger: &Ledger, n: i64, when: Millis) -> bool {
    !ledger.claims_at(CHIPS, day(n), when).is_empty()
}

#[test]
fn a_loss_holds_from_its_minute_and_a_restoration_from_its_own() {
    let mut log = Log::filled();
    let five_past_one = at(2, 13).plus(5 * Millis::MINUTE);
    let id = log.say(five_past_one, Fact::ClaimLost(lost(CHIPS)));
    log.say(at(2, 16), change(CHIPS));
    log.say(at(2, 17), fill(CHIPS, 30));
    let before = log.ledger();
    assert!(stands(&before, 2, five_past_one.plus(-1)) && !stands(&before, 2, five_past_one));
    assert!(before.claims_standing(CHIPS, day(2)).is_empty() && !before.claims_standing(CHIPS, day(1)).is_empty());
    let told = before.claims_lost(CHIPS, day(3));
    assert_eq!(
        (told.len(), told[0].at, told[0].by, told[0].because, told[0].emptied),
        (1, five_past_one, id, Because::Said, true)
    );
    log.say(at(2, 18), Fact::ClaimRestored(back(CHIPS, None)));
    let after = log.ledger();
    assert!(!stands(&after, 2, at(2, 18).plus(-1)) && stands(&after, 2, at(2, 18)));
    assert!(after.claims_lost(CHIPS, day(2)).is_empty());
}

#[test]
fn a_claim_is_restored_only_with_everything_that_restores_it() {
    let mut log = Log::filled();
    let when = at(2, 18);
    assert_eq!(
        lacks(&log, back(CHIPS, None), when),
        Some(Need::NotStanding),
        "it was never lost"
    );
    log.say(at(2, 12), Fact::ClaimLost(lost(CHIPS)));
    log.run(1, CHIPS, KIT, ANN, at(2, 13));
    assert_eq!(
        lacks(&log, back(CHIPS, None), when),
        Some(Need::Emptied),
        "filtering restores nothing"
    );
    log.say(at(2, 14), change(CHIPS));
    assert_eq!(lacks(&log, back(CHIPS, None), when), Some(Need::FreshOil));
    let mut used = log.clone();
    let old = Fill {
        pan: CHIPS,
        fat: Fat::Rapeseed,
        amount: litres(30),
        batch: None,
        age: Age::Unknown,
    };
    used.say(at(2, 15), Fact::Fill(old));
    assert_eq!(
        lacks(&used, back(CHIPS, None), when),
        Some(Need::FreshOil),
        "whose oil?"
    );
    log.say(at(2, 15), fill(CHIPS, 30));
    let mut shared = log.clone();
    shared.run(2, FISH, SHARED, ANN, at(2, 16));
    shared.run(3, CHIPS, SHARED, ANN, at(2, 17));
    assert_eq!(lacks(&shared, back(CHIPS, None), when), Some(Need::NothingExcluded));
    let unseen = ClaimRestored {
        looked: None,
        ..back(CHIPS, None)
    };
    assert_eq!(lacks(&log, unseen, when), Some(Need::CleanDry));
    let baseless = ClaimRestored {
        basis: Some(" ".into()),
        ..back(CHIPS, None)
    };
    assert_eq!(lacks(&log, baseless, when), Some(Need::Basis));
    assert_eq!(
        lacks(&log, back(CHIPS, Some(at(2, 22))), when),
        Some(Need::Until),
        "set-up has its own end"
    );
    let by = |who| say_as(who, &log.ledger(), Quick::ClaimRestored(back(CHIPS, None)), when);
    assert_eq!(by(None), Err(QuickRefusal::Nobody));
    assert_eq!(by(Some(PersonId(9))), Err(QuickRefusal::Nobody));
    assert_eq!(by(Some(ANN)).unwrap().len(), 1);
}

#[test]
fn a_loss_found_out_later_undoes_what_was_restored_before_it_was_known() {
    let mut log = Log::filled();
    log.say(at(2, 12), Fact::ClaimLost(lost(CHIPS)));
    log.say(at(2, 14), change(CHIPS));
    log.say(at(2, 15), fill(CHIPS, 30));
    log.say(at(2, 16), Fact::ClaimRestored(back(CHIPS, None)));
    assert!(stands(&log.ledger(), 2, at(2, 17)));
    // The piece went in after the fresh oil, and somebody says so in the evening.
    log.say_late(at(2, 15).plus(1), at(2, 20), Fact::ClaimLost(lost(CHIPS)));
    assert!(!stands(&log.ledger(), 2, at(2, 21)));
}

#[test]
fn the_log_loses_a_claim_by_itself_at_the_entry_that_breaks_it() {
    let mut log = Log::filled();
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    assert!(log.ledger().claims_lost(CHIPS, day(0)).is_empty());
    log.run(2, CHIPS, SHARED, ANN, at(0, 23));
    let told = log.ledger().claims_lost(CHIPS, day(0));
    assert_eq!(
        (told[0].what, told[0].at, told[0].because),
        (GF, at(0, 23), Because::Met(Exposure::Gluten))
    );
    let by = log.ledger().line(told[0].by).unwrap().written().clone();
    assert!(matches!(by.fact, Fact::Run(run) if run.pan == CHIPS));

    let mut log = Log::filled();
    let noted = log.say(at(0, 22), noted(CHIPS, None, Grade::Unguided));
    let told = log.ledger().claims_lost(CHIPS, day(0));
    assert_eq!((told[0].by, told[0].because), (noted, Because::Met(Exposure::Unknown)));
    log.say(at(0, 23), void(noted));
    assert!(log.ledger().claims_lost(CHIPS, day(0)).is_empty(), "it did not happen");
}

#[test]
fn lost_stays_lost_however_set_up_is_changed() {
    let mut log = Log::filled();
    let claim = |from| Claim {
        what: GF,
        from: day(from),
        basis: "own pan".into(),
        until: None,
    };
    let set_up = |claims| Fact::Pan(Box::new(pan(CHIPS, "2", Exposures::NONE, claims)));
    log.say(at(1, 12), Fact::ClaimLost(lost(CHIPS)));
    log.say(at(2, 9), set_up(Vec::new()));
    assert!(
        log.ledger().claims_lost(CHIPS, day(2)).is_empty(),
        "nothing is promised"
    );
    log.say(at(3, 9), set_up(vec![claim(3)]));
    assert!(log.ledger().claims_standing(CHIPS, day(3)).is_empty());
    assert_eq!(log.ledger().claims_lost(CHIPS, day(3)).len(), 1);
}

#[test]
fn oil_does_not_forget_what_it_fried_because_set_up_says_so() {
    let mut log = Log::filled();
    let bread = Exposures::of(&[Exposure::Gluten]);
    log.say(
        at(1, 9),
        Fact::Pan(Box::new(pan(FISH, "10", Exposures::NONE, Vec::new()))),
    );
    assert!(log.ledger().pan_exposures(FISH).has(Exposure::Gluten));
    log.say(at(1, 10), change(FISH));
    assert!(log.ledger().pan_exposures(FISH).is_empty());
    log.say(at(1, 11), Fact::Pan(Box::new(pan(FISH, "10", bread, Vec::new()))));
    log.say(
        at(1, 12),
        Fact::Pan(Box::new(pan(FISH, "10", Exposures::NONE, Vec::new()))),
    );
    assert!(log.ledger().pan_exposures(FISH).is_empty(), "no oil was in it");
}

#[test]
fn gluten_free_tonight_on_a_pan_just_emptied_cleaned_and_filled() {
    let mut log = Log::filled();
    let (when, end) = (at(2, 17), at(2, 22));
    let tonight = |log: &Log, until| lacks(log, back(FISH, until), when);
    assert_eq!(tonight(&log, Some(end)), Some(Need::Emptied), "Monday's oil");
    log.say(at(2, 15), change(FISH));
    log.say(at(2, 16), fill(FISH, 40));
    let mut fried = log.clone();
    fried.say(at(2, 16), service(FISH, 30));
    assert_eq!(tonight(&fried, Some(end)), Some(Need::FreshOil));
    let mut shared = log.clone();
    shared.run(1, CHIPS, KIT, ANN, at(2, 16));
    shared.say(at(2, 16), Fact::Move(carried(CHIPS, FISH, 1)));
    assert_eq!(tonight(&shared, Some(end)), Some(Need::FreshOil));
    for wrong in [None, Some(when), Some(when.plus(24 * Millis::HOUR + 1))] {
        assert_eq!(tonight(&log, wrong), Some(Need::Until));
    }
    assert_eq!(tonight(&log, Some(end)), None);
    log.say(when, Fact::ClaimRestored(back(FISH, Some(end))));
    let ledger = log.ledger();
    let at_ = |when| !ledger.claims_at(FISH, day(2), when).is_empty();
    assert!(!at_(when.plus(-1)) && at_(when) && at_(end) && !at_(end.plus(1)));
    let now_ = |when| !ledger.claims_now(FISH, day(2), when).is_empty();
    assert!(now_(end) && !now_(end.plus(1)));
    assert_eq!(ledger.claims_standing(FISH, day(2)).len(), 1);
    assert!(ledger.claims_standing(FISH, day(3)).is_empty());
    // What the shared machine holds breaks it before its end.
    log.run(2, CHIPS, SHARED, ANN, at(2, 18));
    log.say(at(2, 19), Fact::ClaimLost(lost(FISH)));
    assert_eq!(log.ledger().claims_lost(FISH, day(2)).len(), 1);
    assert!(
        log.ledger().claims_lost(FISH, day(3)).is_empty(),
        "nobody promised it for Thursday"
    );
}

#[test]
fn the_sheet_stands_open_until_somebody_goes_through_it_and_again_after_what_changes_it() {
    use panward::domain::allergen_sheet::{sheet, short};
    let mut log = Log::filled();
    let check = |log: &mut Log, when| {
        assert!(is_open(&log.ledger(), day(1)));
        let sheet = short(&sheet(&log.ledger(), day(1)));
        let checked = AllergensChecked { sheet, why: None };
        let drafts = say(&log.ledger(), Quick::AllergensChecked(checked), when).unwrap();
        log.say(when, drafts[0].fact.clone());
        assert!(!is_open(&log.ledger(), day(1)));
    };
    check(&mut log, at(1, 9));
    let other = Fill {
        pan: FISH,
        fat: Fat::Groundnut,
        amount: litres(40),
        batch: None,
        age: Age::Fresh,
    };
    let mut said = pan(FISH, "10", Exposures::of(&[Exposure::Egg]), Vec::new());
    said.name = "fish".into();
    let changes = [
        vec![Fact::ClaimLost(lost(CHIPS))],
        vec![Fact::Move(carried(CHIPS, FISH, 1))],
        vec![change(FISH), Fact::Fill(other)],
        vec![Fact::Pan(Box::new(said))],
        vec![change(FISH), fill(FISH, 40)],
    ];
    for (facts, hour) in changes.into_iter().zip(10..) {
        for fact in facts {
            log.say(at(1, hour), fact);
        }
        check(&mut log, at(1, hour).plus(1));
    }
    log.say(at(1, 20), service(FISH, 100));
    log.say(at(1, 20), top_up(FISH, 2));
    log.say(at(1, 20), change(FISH));
    log.say(at(1, 20), fill(FISH, 40));
    assert!(!is_open(&log.ledger(), day(1)), "a day like any other");
    log.run(1, FISH, KIT, ANN, at(1, 21));
    log.run(2, CHIPS, KIT, ANN, at(1, 21));
    assert!(
        is_open(&log.ledger(), day(1)),
        "the chips met what the fish left in the kit"
    );
    let nobody = AllergensChecked {
        sheet: String::new(),
        why: None,
    };
    let nobody = say_as(None, &log.ledger(), Quick::AllergensChecked(nobody), at(1, 21));
    assert_eq!(nobody, Err(QuickRefusal::Nobody));
}

/// What somebody may do next in the small kitchen.
fn command(pick: u8, n: u32, when: Millis) -> Result<Quick, Fact> {
    let pan_id = if n.is_multiple_of(2) { FISH } else { CHIPS };
    let machine = if n.is_multiple_of(3) { SHARED } else { KIT };
    let fats = [Fat::Rapeseed, Fat::Dripping, Fat::Groundnut];
    let food = [Exposures::NONE, Exposures::of(&[Exposure::Gluten])][n as usize / 2 % 2];
    let listed = |what| Claim {
        what,
        from: day(0),
        basis: "own pan".into(),
        until: None,
    };
    let said = [fill(pan_id, 30), change(pan_id), top_up(pan_id, 2)];
    let [Fact::Fill(mut into), Fact::OilChange(out), Fact::TopUp(mut more)] = said else {
        panic!()
    };
    into.fat = fats[n as usize % 3];
    more.fat = fats[n as usize / 3 % 3];
    let fresh = n.is_multiple_of(4).then(|| Fill {
        age: Age::Unknown,
        ..into.clone()
    });
    let kind = ClaimKind::ALL[n as usize % 3];
    let until = n.is_multiple_of(5).then(|| when.plus(3 * Millis::HOUR));
    Ok(match pick % 12 {
        0 => Quick::Fill(into),
        1 => Quick::OilChange { out, fill: fresh },
        2 => Quick::TopUp(more),
        3 => Quick::Move(if pan_id == FISH {
            carried(FISH, CHIPS, 2)
        } else {
            carried(CHIPS, FISH, 2)
        }),
        4 => Quick::ClaimLost(ClaimChange {
            what: kind,
            ..lost(pan_id)
        }),
        5 | 6 => Quick::ClaimRestored(ClaimRestored {
            what: kind,
            ..back(pan_id, until)
        }),
        7 => return Err(Fact::Run(Box::new(run(1, pan_id, machine)))),
        8 => return Err(cleaned(machine)),
        9 => return Err(noted(pan_id, n.is_multiple_of(4).then_some(machine), Grade::Unguided)),
        10 => {
            let claims = ClaimKind::ALL.iter().filter(|kind| n & (4 << **kind as u32) == 0);
            let claims = claims.copied().map(listed).collect();
            return Err(Fact::Pan(Box::new(pan(pan_id, "x", food, claims))));
        }
        _ => return Err(service(pan_id, (n % 200) as u16)),
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever is accepted: no claim stands beside what it excludes, none is lost but by the entry at that moment, and
    /// none comes back but by a restoration or the end of what was not promised.
    #[test]
    fn no_claim_stands_on_oil_it_excludes(rows in prop::collection::vec((any::<u8>(), 0u32..1000, 1i64..90), 1..60)) {
        let mut log = Log::filled();
        let mut when = at(0, 10);
        let mut ledger = log.ledger();
        for (turn, (pick, n, minutes)) in (1u128..).zip(rows) {
            when = when.plus(minutes * Millis::MINUTE);
            let facts = match command(pick, n, when) {
                Ok(quick) => say(&ledger, quick, when).map(|drafts| drafts.into_iter().map(|d| d.fact).collect()),
                Err(Fact::Run(begun)) => {
                    let at = log.entries.len();
                    log.run(turn, begun.pan, begun.machine.unwrap(), ANN, when);
                    Ok(log.entries.drain(at..).map(|entry| entry.fact).collect())
                }
                Err(fact) => Ok(vec![fact]),
            };
            for fact in facts.unwrap_or_else(|_| Vec::new()) {
                let before = ledger.clone();
                let id: EntryId = log.say(when, fact.clone());
                ledger.push(log.entries.last().unwrap().clone());
                let today = ledger.book.day_of(when, 0);
                for pan in [FISH, CHIPS] {
                    let was: Vec<ClaimKind> = before.claims_standing(pan, today).iter().map(|c| c.what).collect();
                    for claim in ledger.claims_standing(pan, today) {
                        let listed = ledger.book.pan(pan).unwrap().claims_on(today).any(|c| c.what == claim.what);
                        let set = if listed { ledger.pan_exposures(pan) } else { ledger.oil_exposures(pan) };
                        let met = set.iter().find(|e| claim.what.excludes(*e, !claim.basis.is_empty()));
                        // An evening that is over is promised no more, and only kept to refuse by.
                        let over = ledger.evenings(pan).any(|e| e.what == claim.what && e.until < when);
                        prop_assert!(met.is_none() || over, "{:?} beside {:?} after {:?}", claim.what, met, fact);
                        let restored = matches!(&fact, Fact::ClaimRestored(r) if r.pan == pan && r.what == claim.what);
                        let set_up = matches!(&fact, Fact::Pan(_));
                        let was_lost = before.claims_lost(pan, today).iter().any(|l| l.what == claim.what);
                        prop_assert!(!was_lost || restored, "{:?} came back by {:?}", claim.what, fact);
                        prop_assert!(was.contains(&claim.what) || restored || set_up);
                    }
                    for lost in ledger.claims_lost(pan, today) {
                        let known = before.claims_lost(pan, today).iter().any(|l| l == &lost || l.by == lost.by);
                        let set_up = matches!(&fact, Fact::Pan(_));
                        prop_assert!(known || lost.by == id || set_up, "{:?} lost by an entry before {:?}", lost, fact);
                    }
                }
            }
        }
        prop_assert_eq!(&Ledger::replay(&log.entries), &ledger);
    }
}
