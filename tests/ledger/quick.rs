//! Quick entries: written, refused, doubted once, taken back.

use panward::domain::claim::{ClaimKind, Exposure};
use panward::domain::entry::Draft;
use panward::domain::facts::Fact;
use panward::domain::facts::job::Grade;
use panward::domain::facts::oil::Vessel;
use panward::domain::facts::run::Place;
use panward::domain::facts::{RunNoted, oil};
use panward::domain::fat::Fat;
use panward::domain::ids::PanId;
use panward::domain::ledger::Ledger;
use panward::domain::quick::{Amendment, Doubt, Quick, QuickRefusal, Said, amend, drafts, take_back};
use panward::domain::time::Millis;

use crate::given::*;

fn say(ledger: &Ledger, what: Quick) -> Result<Vec<Draft>, QuickRefusal> {
    drafts(
        ledger,
        Said {
            what,
            who: Some(ANN),
            at: None,
            sure: false,
        },
        now(at(2, 12)),
    )
}

fn top(pan: PanId, l: u32) -> oil::TopUp {
    oil::TopUp {
        pan,
        fat: Fat::Rapeseed,
        amount: litres(l),
        batch: None,
    }
}

#[test]
fn a_plain_entry_is_written_as_said() {
    let ledger = Log::filled().ledger();
    let drafts = say(&ledger, Quick::TopUp(top(FISH, 4))).unwrap();
    assert_eq!(drafts, [Draft::now(Some(ANN), top_up(FISH, 4))]);
}

#[test]
fn a_whole_change_writes_both_halves_in_order() {
    let ledger = Log::filled().ledger();
    let (Fact::OilChange(out), Fact::Fill(fill)) = (change(FISH), fill(FISH, 40)) else {
        panic!()
    };
    let drafts = say(
        &ledger,
        Quick::OilChange {
            out: out.clone(),
            fill: Some(fill.clone()),
        },
    )
    .unwrap_err();
    // The guide saw no dry pan: it is said to be filled without it.
    assert_eq!(drafts, QuickRefusal::Doubt(Doubt::NotSeenDry { kept: None }));
    let said = Said {
        what: Quick::OilChange {
            out: out.clone(),
            fill: Some(fill.clone()),
        },
        who: None,
        at: None,
        sure: true,
    };
    let drafts = panward::domain::quick::drafts(&ledger, said, now(at(1, 12))).unwrap();
    assert!(matches!(drafts[0].fact, Fact::OilChange(_)) && matches!(drafts[1].fact, Fact::Fill(_)));
    assert_eq!(
        say(&ledger, Quick::Fill(fill)),
        Err(QuickRefusal::StillOil { pan: FISH })
    );
}

#[test]
fn what_cannot_be_is_refused() {
    let ledger = Log::filled().ledger();
    let refused = |what| say(&ledger, what).unwrap_err();
    let gone = PanId(99);
    assert_eq!(
        refused(Quick::TopUp(top(gone, 4))),
        QuickRefusal::NoSuchPan { pan: gone }
    );
    let full = litres(40).volume;
    assert_eq!(
        refused(Quick::TopUp(top(FISH, 41))),
        QuickRefusal::TooMuch { pan: FISH, full }
    );
    assert_eq!(refused(Quick::TopUp(top(FISH, 0))), QuickRefusal::NothingTyped);
    assert_eq!(refused(Quick::Reading(polar(FISH, 6_000))), QuickRefusal::Impossible);
    assert_eq!(
        refused(Quick::Move(carried(FISH, FISH, 5))),
        QuickRefusal::SamePan { pan: FISH }
    );
    let why = None;
    let noted = RunNoted {
        pan: FISH,
        machine: None,
        how: Grade::NotDone,
        why,
    };
    assert_eq!(refused(Quick::RunNoted(noted)), QuickRefusal::NothingTyped);
    let dry = Log::kitchen().ledger();
    assert_eq!(
        say(&dry, Quick::TopUp(top(FISH, 4))),
        Err(QuickRefusal::NoOil { pan: FISH })
    );
}

#[test]
fn oil_is_not_added_to_a_pan_whose_own_is_out() {
    let mut log = Log::filled();
    let mut out = run(1, FISH, SHARED);
    out.place = Place::InMachine;
    log.say(at(1, 22), Fact::Run(Box::new(out)));
    let ledger = log.ledger();
    let refusal = QuickRefusal::OilOut { pan: FISH };
    assert_eq!(say(&ledger, Quick::TopUp(top(FISH, 4))), Err(refusal));
    let (Fact::OilChange(out), Fact::Fill(fill)) = (change(FISH), fill(FISH, 40)) else {
        panic!()
    };
    let whole = Quick::OilChange { out, fill: Some(fill) };
    assert_eq!(say(&ledger, whole), Err(refusal), "the run could still bring it back");
}

#[test]
fn oil_that_breaks_a_claim_is_refused() {
    let ledger = Log::filled().ledger();
    let (claim, exposure) = (ClaimKind::GlutenFree, Exposure::Gluten);
    let met = QuickRefusal::MoveMeets {
        pan: CHIPS,
        claim,
        exposure,
        from: Vessel::Pan(FISH),
    };
    assert_eq!(say(&ledger, Quick::Move(carried(FISH, CHIPS, 5))), Err(met));
    assert!(say(&ledger, Quick::Move(carried(CHIPS, FISH, 5))).is_ok());
}

#[test]
fn an_unusual_number_is_asked_about_once() {
    let mut log = Log::filled();
    log.say(at(1, 20), Fact::Reading(polar(FISH, 2_000)));
    log.say(at(1, 20), service(FISH, 300));
    let ledger = log.ledger();
    let Fact::Service(again) = service(FISH, 200) else {
        panic!()
    };
    for (what, doubt) in [
        (Quick::Reading(polar(FISH, 3_600)), Some(Doubt::High)),
        (Quick::Reading(polar(FISH, 1_600)), Some(Doubt::Fell)),
        (Quick::Reading(polar(FISH, 1_800)), None),
        (Quick::TopUp(top(FISH, 21)), Some(Doubt::BigTopUp)),
        (
            Quick::TopUp(oil::TopUp {
                fat: Fat::Sunflower,
                ..top(FISH, 2)
            }),
            Some(Doubt::OtherFat { kept: Fat::Rapeseed }),
        ),
    ] {
        let got = say(&ledger, what.clone()).err();
        assert_eq!(got, doubt.map(QuickRefusal::Doubt));
        let sure = Said {
            what,
            who: None,
            at: None,
            sure: true,
        };
        assert!(drafts(&ledger, sure, now(at(2, 12))).is_ok());
    }
    let said = Said {
        what: Quick::Service(again),
        who: None,
        at: Some(at(1, 21)),
        sure: false,
    };
    let refusal = QuickRefusal::Doubt(Doubt::SecondService);
    assert_eq!(drafts(&ledger, said, now(at(2, 12))), Err(refusal));
}

#[test]
fn the_last_entry_is_taken_back_for_ten_seconds() {
    let mut log = Log::filled();
    let id = log.say(at(1, 20), top_up(FISH, 4));
    let ledger = log.ledger();
    let back = |ms| take_back(&ledger, &[id], "a slip", Some(ANN), now(at(1, 20).plus(ms)));
    assert_eq!(back(10_000), Ok(vec![Draft::now(Some(ANN), void(id))]));
    let wordless = take_back(&ledger, &[id], " ", Some(ANN), now(at(1, 20)));
    assert_eq!(wordless, Err(QuickRefusal::NothingTyped));
    assert_eq!(back(10_001), Err(QuickRefusal::TooLate));
    assert_eq!(
        back(-Millis::SECOND),
        Err(QuickRefusal::TooLate),
        "a clock set back buys no time"
    );
}

#[test]
fn an_amendment_keeps_the_kind_and_says_something() {
    let mut log = Log::filled();
    let id = log.say(at(1, 20), top_up(FISH, 4));
    let ledger = log.ledger();
    let put = |fact| {
        amend(
            &ledger,
            id,
            Amendment {
                why: String::from("a slip"),
                at: None,
                fact: Some(fact),
            },
            None,
            now(at(1, 21)),
        )
    };
    assert_eq!(put(top_up(FISH, 3)), Ok(Draft::now(None, says(id, top_up(FISH, 3)))));
    assert_eq!(put(top_up(FISH, 4)), Err(QuickRefusal::NothingTyped));
    assert_eq!(put(service(FISH, 300)), Err(QuickRefusal::OtherKind { of: id }));
}
