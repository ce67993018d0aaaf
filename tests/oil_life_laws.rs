//! The laws every estimator of oil life must keep, whatever the history.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::domain::facts::oil::{Load, Measured, SignKind};
use panward::domain::facts::setup::AcidLimit;
use panward::domain::fat::Fat;
use panward::domain::ids::{Dev, EntryId, InstrumentId};
use panward::domain::oil_life::{
    self, Because, Event, FillHistory, Habit, LimitsInForce, OilLife, Outlook, POWDER_HOLDS, Quantity, Shop, Start,
    TopUps, UsualFry, What, Word, adsorbed_at_most,
};
use panward::domain::time::Millis;
use panward::domain::units::{Minutes, Share, Temp, Volume};
use proptest::prelude::*;

/// Rounding of the bisection behind a quantile, in points.
const ROUNDING: f64 = 1e-7;

fn event(at: i64, what: What) -> Event {
    Event {
        order: (Millis(at), Millis(at), Dev(1), u32::try_from(at).unwrap()),
        entry: EntryId(u128::try_from(at).unwrap()),
        what,
    }
}

fn numbered(list: &[What]) -> Vec<Event> {
    (1..).zip(list).map(|(at, what)| event(at, *what)).collect()
}

fn share(percent: f64) -> Share {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "test data")]
    Share::from_cpc((percent * 100.0).round().clamp(0.0, 10_000.0) as u16).unwrap()
}

fn polar(percent: f64) -> What {
    What::Read {
        value: Measured::Polar(share(percent)),
        instrument: Some(InstrumentId(1)),
        spread: None,
    }
}

fn fried(minutes: u16) -> What {
    What::Fried {
        fry: Minutes::new(minutes).unwrap(),
        temp: None,
        load: Load::Normal,
    }
}

fn topped(ml: u32) -> What {
    What::Topped {
        fat: Fat::Sunflower,
        added: Volume::from_ml(ml).unwrap(),
        after: Volume::from_ml(20_000).unwrap(),
    }
}

/// A pan whose oil usually lasts some days.
fn habit(days: u16) -> Habit {
    Habit {
        days: Some(days),
        top_up: TopUps::each(0.03),
        ..Habit::of(UsualFry { mean_h: 6.0, sd_h: 1.0 })
    }
}

fn outlook() -> Outlook {
    let limits = LimitsInForce {
        polar: Some(share(25.0)),
        acid: Some(AcidLimit::Ffa(share(1.5))),
    };
    Outlook {
        day_of_fill: 4,
        ..Outlook::new(limits, habit(9))
    }
}

/// The outlook with polar compounds alone under a limit.
fn polar_only() -> Outlook {
    Outlook {
        limits: LimitsInForce {
            polar: Some(share(25.0)),
            acid: None,
        },
        ..outlook()
    }
}

/// A shop that has learnt from a fill of these events; one of two, so that the laws hold before and after learning.
fn shop(taught: &[What]) -> Shop {
    let mut shop = Shop::new();
    if !taught.is_empty() {
        shop.learn(
            &FillHistory::new(Fat::Sunflower, Start::Fresh, numbered(taught)),
            &habit(9),
        );
    }
    shop
}

fn judged_by_polar(start: Start, list: &[What]) -> OilLife {
    oil_life::of(
        &FillHistory::new(Fat::Sunflower, start, numbered(list)),
        &polar_only(),
        &Shop::new(),
    )
}

fn judged(start: Start, list: &[What]) -> OilLife {
    judged_in(&Shop::new(), start, list)
}

fn judged_in(shop: &Shop, start: Start, list: &[What]) -> OilLife {
    oil_life::of(
        &FillHistory::new(Fat::Sunflower, start, numbered(list)),
        &outlook(),
        shop,
    )
}

/// As a ledger would ask: usual hours and top-up learnt from the fill itself.
fn judged_as_learnt(shop: &Shop, start: Start, list: &[What]) -> OilLife {
    let history = FillHistory::new(Fat::Sunflower, start, numbered(list));
    let worked = history.events().iter().filter_map(|e| match e.what {
        What::Fried { fry, .. } => Some(fry),
        _ => None,
    });
    let ahead = Outlook {
        fry: UsualFry::learn(Minutes::new(360).unwrap(), worked),
        top_up: TopUps::each(0.03).in_fill(&history),
        ..outlook()
    };
    oil_life::of(&history, &ahead, shop)
}

fn widths(life: &OilLife) -> [f64; 2] {
    let ffa = life.ffa.unwrap();
    [life.polar.high - life.polar.low, ffa.high - ffa.low]
}

prop_compose! {
    fn frying()(minutes in 0_u16..720, temp in proptest::option::of(160_i16..200), heavy: bool) -> What {
        What::Fried {
            fry: Minutes::new(minutes).unwrap(),
            temp: temp.map(Temp::celsius),
            load: if heavy { Load::Heavy } else { Load::Quiet },
        }
    }
}

prop_compose! {
    fn reading()(percent in 3.0_f64..35.0, acid: bool, instrument in 1_u128..3, spread in proptest::option::of(0.5_f64..5.0)) -> What {
        What::Read {
            value: if acid { Measured::Ffa(share(percent / 20.0)) } else { Measured::Polar(share(percent)) },
            instrument: Some(InstrumentId(instrument)),
            spread: spread.map(|s| share(if acid { s / 20.0 } else { s })),
        }
    }
}

fn anything() -> impl Strategy<Value = What> {
    prop_oneof![
        4 => frying(),
        2 => reading(),
        2 => (0_u32..18_000).prop_map(topped),
        1 => Just(What::Filtered),
        1 => powder(),
        1 => Just(What::Sign(SignKind::Dark)),
    ]
}

fn powder() -> impl Strategy<Value = What> {
    (0_u16..1_200).prop_map(|cpc| What::Adsorbed {
        dose: Share::from_cpc(cpc).unwrap(),
    })
}

fn starts() -> impl Strategy<Value = Start> {
    prop_oneof![
        Just(Start::Fresh),
        (1_u16..12).prop_map(|services| Start::Worked { services }),
        Just(Start::Unknown)
    ]
}

fn histories() -> impl Strategy<Value = Vec<What>> {
    proptest::collection::vec(anything(), 0..25)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn hours_without_a_reading_never_narrow(taught in histories(), start in starts(), list in histories(), more in frying()) {
        let shop = shop(&taught);
        let before = widths(&judged_in(&shop, start, &list));
        let after = widths(&judged_in(&shop, start, &[list, vec![more]].concat()));
        for (b, a) in before.into_iter().zip(after) {
            prop_assert!(a >= b - ROUNDING, "{b} became {a}");
        }
    }

    #[test]
    fn a_reading_that_agrees_never_widens(
        taught in histories(),
        start in starts(),
        list in histories(),
        spread in proptest::option::of(0.5_f64..5.0),
        acid: bool,
        instrument in 1_u128..4,
    ) {
        let shop = shop(&taught);
        let before = judged_in(&shop, start, &list);
        let history = FillHistory::new(Fat::Sunflower, start, numbered(&list));
        let tool = Some(InstrumentId(instrument));
        let foretold = oil_life::reading_ahead(&history, &outlook().habit, &shop, tool, spread.map(share));
        let agrees = if acid { before.ffa.unwrap().median } else { foretold.median };
        let value = if acid { Measured::Ffa(share(agrees)) } else { Measured::Polar(share(agrees)) };
        let read = What::Read { value, instrument: Some(InstrumentId(instrument)), spread: spread.map(share) };
        let after = judged_in(&shop, start, &[list, vec![read]].concat());
        for (b, a) in widths(&before).into_iter().zip(widths(&after)) {
            prop_assert!(a <= b + 1e-3, "{b} became {a}");
        }
    }

    #[test]
    fn more_hours_after_the_last_reading_never_raise_a_score(taught in histories(), start in starts(), list in histories(), more in frying()) {
        let shop = shop(&taught);
        let before = judged_as_learnt(&shop, start, &list).score.unwrap();
        let after = judged_as_learnt(&shop, start, &[list, vec![more]].concat()).score.unwrap();
        prop_assert!(after.now <= before.now, "{before:?} became {after:?}");
    }

    #[test]
    fn a_top_up_fresher_than_the_oil_never_lowers_a_score(taught in histories(), start in starts(), list in histories(), ml in 1_u32..10_000) {
        let shop = shop(&taught);
        let before = judged_as_learnt(&shop, start, &list);
        prop_assume!(before.polar.median > 8.0 && before.ffa.unwrap().median > 0.4);
        let after = judged_as_learnt(&shop, start, &[list, vec![topped(ml)]].concat());
        prop_assert!(after.score.unwrap().now >= before.score.unwrap().now, "{before:?} became {after:?}");
    }

    #[test]
    fn a_higher_limit_never_shortens_life(
        start in starts(), list in histories(), low in 9.0_f64..30.0, step in 0.0_f64..5.0,
    ) {
        let history = FillHistory::new(Fat::Sunflower, start, numbered(&list));
        let under = |percent: f64| {
            let limits = LimitsInForce { polar: Some(share(percent)), acid: None };
            oil_life::of(&history, &Outlook { limits, ..outlook() }, &Shop::new())
        };
        let (strict, loose) = (under(low), under(low + step));
        prop_assert!(loose.score.unwrap().now >= strict.score.unwrap().now);
        prop_assert!(loose.chance_over.unwrap() <= strict.chance_over.unwrap());
        let (strict_days, loose_days) = (strict.days_left.unwrap(), loose.days_left.unwrap());
        let over = oil_life::MOST_DAYS + 1;
        for (s, l) in [
            (strict_days.low, loose_days.low),
            (strict_days.median, loose_days.median),
            (strict_days.high, loose_days.high),
        ] {
            prop_assert!(l.unwrap_or(over) >= s.unwrap_or(over));
        }
        prop_assert!(loose.word != Some(Word::ChangeNow) || strict.word == Some(Word::ChangeNow));
    }

    #[test]
    fn a_filter_run_leaves_every_output_bit_equal(start in starts(), list in histories(), at in any::<prop::sample::Index>()) {
        let without = numbered(&list);
        let mut with = without.clone();
        // Half-way in order between two others: same entries, same moments, one filter run more.
        let place = at.index(list.len() + 1);
        let mut run = event(1, What::Filtered);
        let moment = Millis(i64::try_from(place).unwrap());
        run.order = (moment, moment, Dev(2), 1);
        with.push(run);
        let judge = |events| oil_life::of(&FillHistory::new(Fat::Sunflower, start, events), &outlook(), &Shop::new());
        prop_assert_eq!(judge(with), judge(without));
    }

    #[test]
    fn a_powder_takes_out_something_up_to_what_it_holds(
        taught in histories(), start in starts(), list in histories(), run in powder(),
    ) {
        let shop = shop(&taught);
        let before = judged_in(&shop, start, &list);
        let after = judged_in(&shop, start, &[list, vec![run]].concat());
        let What::Adsorbed { dose } = run else { panic!("{run:?}") };
        let most = adsorbed_at_most(dose, POWDER_HOLDS);
        let ends = |life: &OilLife| [life.polar.low, life.polar.median, life.polar.high];
        for (b, a) in ends(&before).into_iter().zip(ends(&after)) {
            prop_assert!(a <= b + ROUNDING, "{b} rose to {a}");
            prop_assert!(a >= b - most - ROUNDING, "{b} fell to {a}, by more than {most}");
        }
        let (before, after) = (before.ffa.unwrap(), after.ffa.unwrap());
        for (b, a) in [(before.low, after.low), (before.median, after.median), (before.high, after.high)] {
            prop_assert!(a <= b + ROUNDING, "{b} rose to {a}");
            prop_assert!(a >= 0.1 * b - ROUNDING, "{b} fell to {a}, by more than nine tenths");
        }
    }

    #[test]
    fn a_powder_never_makes_oil_fresher_than_fresh(
        hours in proptest::collection::vec(frying(), 0..5), runs in proptest::collection::vec(powder(), 1..20),
    ) {
        let before = judged(Start::Fresh, &hours);
        let after = judged(Start::Fresh, &[hours, runs].concat());
        let fresh = oil_life::fresh_polar(Fat::Sunflower).mean;
        prop_assert!(after.polar.median >= before.polar.median.min(fresh) - ROUNDING, "{}", after.polar.median);
    }

    #[test]
    fn arrival_order_changes_no_bit(start in starts(), list in histories(), shuffled in any::<prop::sample::Index>()) {
        let events = numbered(&list);
        let mut turned = events.clone();
        turned.reverse();
        if !turned.is_empty() {
            let by = shuffled.index(turned.len());
            turned.rotate_left(by);
        }
        let judge = |events| oil_life::of(&FillHistory::new(Fat::Sunflower, start, events), &outlook(), &Shop::new());
        prop_assert_eq!(judge(turned), judge(events));
    }

    #[test]
    fn every_answer_is_a_number_in_its_range(start in starts(), list in histories()) {
        let life = judged(start, &list);
        let score = life.score.unwrap();
        prop_assert!(score.low <= score.now && score.now <= score.high && score.high <= 100);
        let chance = life.chance_over.unwrap();
        prop_assert!((0.0..=1.0 + 1e-12).contains(&chance));
        let days = life.days_left.unwrap();
        let over = oil_life::MOST_DAYS + 1;
        prop_assert!(days.low.unwrap_or(over) <= days.median.unwrap_or(over));
        prop_assert!(days.median.unwrap_or(over) <= days.high.unwrap_or(over));
        prop_assert!(life.polar.low <= life.polar.median && life.polar.median <= life.polar.high);
        prop_assert!(life.polar.high.is_finite());
    }
}

#[test]
fn fresh_oil_scores_a_hundred_and_says_it_has_no_reading() {
    assert_eq!(judged(Start::Fresh, &[]).score.unwrap().now, 100);
    let slow = Outlook::new(polar_only().limits, habit(15));
    let life = oil_life::of(
        &FillHistory::new(Fat::Sunflower, Start::Fresh, Vec::new()),
        &slow,
        &Shop::new(),
    );
    assert_eq!(life.score.unwrap().now, 100);
    assert_eq!(life.word, Some(Word::Fresh));
    assert_eq!(life.basis, oil_life::Basis::UsualDaysAndPriors);
    assert_eq!(life.usual.unwrap().days, 15);
}

#[test]
fn no_limit_no_score() {
    let blind = Outlook {
        limits: LimitsInForce::default(),
        ..outlook()
    };
    let history = FillHistory::new(Fat::Sunflower, Start::Fresh, numbered(&[fried(600)]));
    let life = oil_life::of(&history, &blind, &Shop::new());
    assert_eq!((life.score, life.days_left, life.word), (None, None, None));
    let smoking = FillHistory::new(Fat::Sunflower, Start::Fresh, numbered(&[What::Sign(SignKind::Smoke)]));
    assert_eq!(oil_life::of(&smoking, &blind, &Shop::new()).word, Some(Word::ChangeNow));
}

#[test]
fn a_change_sign_means_change_and_leaves_the_score_alone() {
    let list = [fried(300), polar(8.0)];
    let quiet = judged(Start::Fresh, &list);
    let smoking = judged(
        Start::Fresh,
        &[list.to_vec(), vec![What::Sign(SignKind::Smoke)]].concat(),
    );
    assert_eq!(smoking.word, Some(Word::ChangeNow));
    assert_eq!(smoking.score, quiet.score);
    assert_ne!(quiet.word, Some(Word::ChangeNow));
}

const TWO_PERCENT: What = What::Adsorbed {
    dose: Share::from_cpc(200).unwrap(),
};

/// CV12: 2 % of a powder that holds 200 mg a gram takes out at most 0.4 points (Yates & Caldwell, JAOCS 70 (1993)
/// 507–511), and half of it is expected of a run.
#[test]
fn two_percent_of_powder_takes_out_at_most_four_tenths_of_a_point() {
    let list = [fried(900), fried(900)];
    let dosed = [&list[..], &[TWO_PERCENT]].concat();
    let (before, after) = (judged(Start::Fresh, &list), judged(Start::Fresh, &dosed));
    let said = after.because.iter().find_map(|because| match because {
        Because::Powder { at_most, acidity } => Some((*at_most, *acidity)),
        _ => None,
    });
    assert_eq!(said, Some((0.4, true)));
    let fell = before.polar.median - after.polar.median;
    assert!((fell - 0.2).abs() < 0.01, "{fell}");
    assert!(before.because.iter().all(|b| !matches!(b, Because::Powder { .. })));
}

#[test]
fn dark_oil_hints_at_nothing_once_a_powder_took_the_colour_out() {
    let sign = |kind| What::Sign(kind);
    let list = [fried(600), TWO_PERCENT, fried(600)];
    let with = |more: What| judged(Start::Fresh, &[&list[..], &[more]].concat()).chance_over;
    let plain = judged(Start::Fresh, &list).chance_over;
    assert_eq!(with(sign(SignKind::Dark)), plain);
    assert!(with(sign(SignKind::Gum)) > plain, "gum is no colour");
    let [first, powder, last] = list;
    let while_it_told = judged(Start::Fresh, &[first, sign(SignKind::Dark), powder, last]);
    assert!(while_it_told.chance_over > plain, "it had its colour then");
}

#[test]
fn under_the_limit_by_a_hair_is_one_not_nothing() {
    let mut seen = [false; 2];
    for minutes in (0..=1440).step_by(4) {
        let list = [fried(1440), fried(minutes), fried(minutes)];
        let life = judged_by_polar(Start::Fresh, &list);
        let score = life.score.unwrap().now;
        assert_eq!(
            score == 0,
            life.polar.median >= 25.0,
            "{score} at {}",
            life.polar.median
        );
        seen[usize::from(score == 0)] = true;
    }
    assert_eq!(seen, [true, true]);
}

#[test]
fn readings_teach_the_rate_and_narrow_the_days() {
    let day = [fried(360), topped(600)];
    let mut list = Vec::new();
    for n in 1..=6 {
        list.extend(day);
        list.push(polar(5.0 + 2.2 * f64::from(n)));
    }
    let read = judged_by_polar(Start::Fresh, &list);
    let unread: Vec<What> = list
        .iter()
        .copied()
        .filter(|w| !matches!(w, What::Read { .. }))
        .collect();
    let guessed = judged_by_polar(Start::Fresh, &unread);
    assert_eq!(read.basis, oil_life::Basis::Readings);
    let spread = |life: &OilLife| life.polar.high - life.polar.low;
    assert!(spread(&read) < spread(&guessed));
    assert!(
        read.polar.median < guessed.polar.median,
        "rising by 2.2 a day is slower than usual here"
    );
    assert!(read.days_left.unwrap().median > guessed.days_left.unwrap().median);
    assert_eq!(read.usual, None);
    assert_eq!(read.score.unwrap().limited_by, Quantity::Polar);
}

#[test]
fn a_slow_pan_with_much_fresh_oil_is_told_where_it_settles() {
    let often = Habit {
        top_up: TopUps::each(0.2),
        fry: UsualFry { mean_h: 4.0, sd_h: 0.5 },
        ..habit(60)
    };
    let often = Outlook::new(polar_only().limits, often);
    let life = oil_life::of(
        &FillHistory::new(Fat::Sunflower, Start::Fresh, Vec::new()),
        &often,
        &Shop::new(),
    );
    assert_eq!(life.days_left.unwrap().median, None);
    let settles = life.settles_at.unwrap();
    assert!(settles.level.before_top_up < 25.0 && settles.level.after_top_up < settles.level.before_top_up);
}

#[test]
fn impossible_top_ups_are_folded_around_and_counted() {
    let life = judged(Start::Fresh, &[fried(300), topped(20_001)]);
    assert_eq!(life.folded_around, 1);
    assert_eq!(life.polar, judged(Start::Fresh, &[fried(300)]).polar);
}

#[test]
fn a_limit_at_or_under_fresh_oil_is_refused() {
    let limits = |percent| LimitsInForce {
        polar: Some(share(percent)),
        acid: None,
    };
    assert!(limits(5.09).check(Fat::Sunflower).is_err());
    assert!(limits(5.1).check(Fat::Sunflower).is_ok());
    assert!(limits(7.0).check(Fat::Palm).is_err());
}
