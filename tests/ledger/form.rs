//! The quick-entry form: how many touches each kind costs, what is prefilled, what a reload keeps, what is typed anew.

use panward::domain::facts::Fact;
use panward::domain::facts::oil::{Load, Measured, Vessel};
use panward::domain::facts::setup::{Instrument, Measures};
use panward::domain::fat::Fat;
use panward::domain::ids::InstrumentId;
use panward::domain::ledger::Ledger;
use panward::domain::quick::{
    Doubt, Form, Gap, Kind, Other, Quick, QuickRefusal, Retype, Said, Slot, drafts, moment, parts, retype, retyped,
};
use panward::domain::time::Millis;
use panward::domain::units::{Share, Unit, Volume};
use panward::domain::volume::Packs;

use crate::given::*;

/// A finger-down on the quick-entry screen.
enum Touch {
    /// One of the kinds.
    Kind(Kind),
    /// One of a few.
    Pick(Slot, String),
    /// The number with its accept, which saves: together one number.
    Number(&'static str),
    /// The number as it is prefilled, with its accept.
    AsOffered,
    /// Words typed, no touch of the screen.
    Typed(&'static str),
    /// The button that saves where there is no number.
    Save,
    /// The button that says the pan was not used.
    NotUsed,
}

fn pick(slot: Slot, key: &str) -> Touch {
    Touch::Pick(slot, key.to_owned())
}

/// Plays the touches: what was said, touches beside the number, numbers.
fn play(ledger: &Ledger, touches: Vec<Touch>) -> (Said, usize, usize) {
    let (mut form, mut said, mut count, mut numbers) = (None, None, 0, 0);
    let none = |_| 0;
    for touch in touches {
        count += 1;
        match touch {
            Touch::Kind(kind) => {
                let offered = Kind::offered(ledger, CHIPS, day(1));
                assert!(offered.contains(&kind), "{kind:?} is not among {offered:?}");
                form = Some(Form::open(ledger, CHIPS, kind, day(1)));
            }
            Touch::Pick(slot, key) => {
                let form = form.as_mut().unwrap();
                form.set(slot, &key);
                assert_eq!(form.get(slot), key);
            }
            Touch::Typed(words) => {
                form.as_mut().unwrap().set(Slot::Words, words);
                count -= 1;
            }
            Touch::Number(_) | Touch::AsOffered => {
                let form = form.as_mut().unwrap();
                if let Touch::Number(text) = touch {
                    form.set(Slot::Number, text);
                }
                assert!(form.asks_number());
                said = Some(form.said(ledger, Packs::default(), Some(ANN), none).unwrap());
                (count, numbers) = (count - 1, numbers + 1);
            }
            Touch::Save => {
                let form = form.as_ref().unwrap();
                assert!(!form.asks_number());
                said = Some(form.said(ledger, Packs::default(), Some(ANN), none).unwrap());
            }
            Touch::NotUsed => said = Some(form.as_ref().unwrap().not_used(Some(ANN), none).unwrap()),
        }
    }
    (said.unwrap(), count, numbers)
}

#[test]
fn every_kind_is_logged_in_four_touches_and_a_number() {
    let filled = Log::filled().ledger();
    let empty = Log::kitchen().ledger();
    let to = format!("{:032x}", FISH.0);
    let cases = vec![
        (
            &filled,
            vec![Touch::Kind(Kind::TopUp), pick(Slot::Unit, "kg"), Touch::Number("2.5")],
        ),
        (
            &filled,
            vec![Touch::Kind(Kind::Service), pick(Slot::Load, "heavy"), Touch::AsOffered],
        ),
        (&filled, vec![Touch::Kind(Kind::Service), Touch::NotUsed]),
        (
            &filled,
            vec![
                Touch::Kind(Kind::Reading),
                pick(Slot::Gauge, "temp"),
                Touch::Number("171"),
            ],
        ),
        (
            &filled,
            vec![Touch::Kind(Kind::Sign), pick(Slot::Sign, "foam"), Touch::Save],
        ),
        (
            &filled,
            vec![Touch::Kind(Kind::PartChange), pick(Slot::Unit, "l"), Touch::Number("9")],
        ),
        (
            &filled,
            vec![
                Touch::Kind(Kind::OilChange),
                pick(Slot::Words, "at its end"),
                pick(Slot::After, "fresh"),
                Touch::AsOffered,
            ],
        ),
        (
            &filled,
            vec![
                Touch::Kind(Kind::OilChange),
                pick(Slot::Words, "at its end"),
                pick(Slot::After, "empty"),
                Touch::Save,
            ],
        ),
        (
            &empty,
            vec![Touch::Kind(Kind::Fill), pick(Slot::Age, "unknown"), Touch::AsOffered],
        ),
        (
            &filled,
            vec![
                Touch::Kind(Kind::Move),
                pick(Slot::To, &to),
                pick(Slot::Unit, "l"),
                Touch::Number("3"),
            ],
        ),
        (
            &filled,
            vec![Touch::Kind(Kind::Note), Touch::Typed("lid is bent"), Touch::Save],
        ),
        (
            &filled,
            vec![
                Touch::Kind(Kind::ClaimLost),
                pick(Slot::Claim, "gluten_free"),
                pick(Slot::Words, "shared oil"),
                Touch::Save,
            ],
        ),
    ];
    let mut kinds = Vec::new();
    for (ledger, touches) in cases {
        if let Some(Touch::Kind(kind)) = touches.first() {
            kinds.push(*kind);
        }
        let (said, count, numbers) = play(ledger, touches);
        assert!(
            count <= 4 && numbers <= 1,
            "{count} touches, {numbers} numbers: {said:?}"
        );
        let written = drafts(ledger, said, now(at(1, 12)));
        // Fresh oil into a pan the guide saw no gate of is asked about once.
        let dry = matches!(written, Err(QuickRefusal::Doubt(Doubt::NotSeenDry { .. })));
        assert!(written.is_ok() || dry, "{written:?}");
    }
    assert!(
        Kind::ALL.iter().all(|kind| kinds.contains(kind)),
        "a kind is not counted"
    );
}

#[test]
fn what_is_likeliest_stands_there_before_anything_is_typed() {
    let mut log = Log::filled();
    log.say(
        at(0, 9),
        Fact::Instrument(Instrument {
            instrument: InstrumentId(7),
            name: "probe".into(),
            measures: Measures::Polar,
            spread: None,
        }),
    );
    let open = |log: &Log, kind| Form::open(&log.ledger(), FISH, kind, day(1));
    assert_eq!(open(&log, Kind::Service).number, "5", "the usual hours");
    assert_eq!(open(&log, Kind::OilChange).number, "40", "the pan full");
    assert_eq!(open(&log, Kind::TopUp).unit, Unit::Litres);
    let gauge = open(&log, Kind::Reading).gauge.unwrap();
    assert_eq!(gauge.with, Some(InstrumentId(7)), "the instrument that is set up");
    let chips = Some(Other::Into(Vessel::Pan(CHIPS)));
    assert_eq!(open(&log, Kind::Move).to, chips, "the only other pan");

    let Fact::TopUp(mut by_weight) = top_up(FISH, 2) else {
        panic!()
    };
    by_weight.amount.typed.unit = Unit::Kilograms;
    log.say(at(1, 9), Fact::TopUp(by_weight));
    assert_eq!(open(&log, Kind::TopUp).unit, Unit::Kilograms, "as it was counted last");
}

#[test]
fn a_reload_keeps_what_was_typed() {
    let ledger = Log::filled().ledger();
    let mut typed = Form::open(&ledger, CHIPS, Kind::TopUp, day(1));
    for (slot, text) in [
        (Slot::Number, "1.5"),
        (Slot::Unit, "block"),
        (Slot::Fat, "palm"),
        (Slot::Load, "quiet"),
        (Slot::Sign, "dark"),
        (Slot::Words, "späť"),
        (Slot::Date, "2026-01-05"),
        (Slot::Time, "21:47"),
    ] {
        typed.set(slot, text);
    }
    let mut back = Form::open(&ledger, CHIPS, Kind::TopUp, day(1));
    assert_ne!(back, typed);
    back.put_back(&typed.pairs());
    assert_eq!(back, typed);
    back.set(Slot::Unit, "bucket");
    assert_eq!(back, typed, "a key nobody knows changes nothing");
}

#[test]
fn a_gap_is_named_and_nothing_is_said() {
    let ledger = Log::filled().ledger();
    let mut form = Form::open(&ledger, FISH, Kind::TopUp, day(1));
    let said = |form: &Form, packs| form.said(&ledger, packs, None, |_| 0).map(|said| said.what);
    assert_eq!(said(&form, Packs::default()), Err(Gap::Number));
    form.set(Slot::Number, "0.5");
    form.set(Slot::Unit, "block");
    form.set(Slot::Fat, "dripping");
    assert_eq!(said(&form, Packs::default()), Err(Gap::Block));
    let packs = Packs {
        block_g: Some(12_500),
        drum: None,
        bag: None,
    };
    let Ok(Quick::TopUp(half)) = said(&form, packs) else {
        panic!()
    };
    assert_eq!((half.fat, half.amount.typed.thousandths), (Fat::Dripping, 500));
    // 6,250 g of dripping at 0.9102 kg/L, the density in the volume tables.
    assert_eq!(half.amount.volume, Volume::from_ml(6_867).unwrap());
    form.set(Slot::Date, "2026-01-05");
    assert_eq!(said(&form, packs), Err(Gap::When), "a day without its time");
    form.set(Slot::Time, "21:47");
    assert!(said(&form, packs).is_ok());
}

#[test]
fn numbers_and_moments_are_read_as_they_are_typed() {
    assert_eq!(parts("12.5", 3), Some(12_500));
    assert_eq!(parts("0,5", 3), Some(500));
    assert_eq!(parts(".5", 1), Some(5));
    assert_eq!(parts("7.", 2), Some(700));
    assert_eq!(parts("18.549", 2), Some(1_854));
    for bad in ["", ".", "-3", "1e3", "99999999999"] {
        assert_eq!(parts(bad, 2), None, "{bad:?}");
    }
    let written = day(0).begins(60, 21 * 60 + 47);
    assert_eq!(moment("2026-01-05", "21:47", |_| 60), Some(written));
    assert_eq!(
        moment("2026-01-05", "21:47:30", |_| 60),
        Some(written),
        "seconds are dropped"
    );
    assert_eq!(moment("2026-13-05", "21:47", |_| 0), None);
    // Summer time begins on 29 March 2026 at 01:00 UTC in the United Kingdom.
    let begins = panward::domain::time::Day::from_date(chrono::NaiveDate::from_ymd_opt(2026, 3, 29).unwrap());
    let change = begins.begins(0, 60);
    let off = |at: Millis| if at < change { 0 } else { 60 };
    assert_eq!(
        moment("2026-03-29", "00:30", off),
        Some(change.plus(-30 * Millis::MINUTE))
    );
    assert_eq!(
        moment("2026-03-29", "02:30", off),
        Some(change.plus(30 * Millis::MINUTE))
    );
}

#[test]
fn a_figure_typed_anew_takes_its_volume_with_it() {
    let mut half = litres(6);
    half.typed.unit = Unit::Block;
    half.typed.thousandths = 500;
    let Fact::TopUp(mut top) = top_up(FISH, 4) else {
        panic!()
    };
    top.amount = half;
    let fact = Fact::TopUp(top);
    assert_eq!(retype(&fact), Some(Retype::Amount(Unit::Block, "0.5".into())));
    assert_eq!(retyped(&fact, "0.5"), Ok(None), "nothing changed");
    let Ok(Some(Fact::TopUp(whole))) = retyped(&fact, "1") else {
        panic!()
    };
    assert_eq!(whole.amount.volume, litres(12).volume);
    assert_eq!(retyped(&fact, "x"), Err(Gap::Number));

    let Ok(Some(Fact::Move(both))) = retyped(&Fact::Move(carried(FISH, CHIPS, 5)), "7") else {
        panic!()
    };
    assert_eq!((both.out, both.arrived), (litres(7), litres(7)));

    let Ok(Some(Fact::Reading(read))) = retyped(&Fact::Reading(polar(FISH, 1_850)), "20") else {
        panic!()
    };
    assert_eq!(read.value, Measured::Polar(Share::from_cpc(2_000).unwrap()));
    let Ok(Some(Fact::Service(long))) = retyped(&service(FISH, 300), "5.5") else {
        panic!()
    };
    assert_eq!((long.fry.get(), long.load), (330, Load::Normal));
    assert_eq!(retype(&change(FISH)), Some(Retype::Amount(Unit::Litres, "30".into())));
}
