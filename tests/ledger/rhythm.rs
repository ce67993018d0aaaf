//! When a pan is due: by days, by sessions, on its own nights; put off once and again; days closed.

use std::num::NonZeroU16;

use panward::domain::facts::Fact;
use panward::domain::facts::closed::{Closed, NotDays};
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::rhythm::{Rhythm, Weekdays};
use panward::domain::facts::run::{Heat, Left, RunEvent};
use panward::domain::ids::JobId;
use panward::domain::ledger::{PutOff, Word};
use panward::domain::quick::open_again;
use panward::domain::time::Day;
use proptest::prelude::*;

use crate::given::*;

fn sessions(every: u16) -> Rhythm {
    Rhythm::Sessions(NonZeroU16::new(every).unwrap())
}

/// Monday 0 to Sunday 6.
fn nights(of: &[usize]) -> Rhythm {
    Rhythm::Weekdays(Weekdays::of(std::array::from_fn(|n| of.contains(&n))).unwrap())
}

/// A filled kitchen whose fish pan is filtered so.
fn filtered(rhythm: Rhythm) -> Log {
    let mut log = Log::filled();
    let mut fish = log.ledger().book.pan(FISH).unwrap().clone();
    fish.rhythm = Some(rhythm);
    log.say(at(0, 9), Fact::Pan(Box::new(fish)));
    log
}

fn lit() -> Fact {
    let mut lit = JobFact::new(JobId(1), JobKind::LightUp, JobEvent::Answered);
    (lit.pan, lit.heat) = (Some(FISH), Some(Heat::On));
    Fact::Job(Box::new(lit))
}

fn closed(from: i64, to: i64) -> Fact {
    Fact::Closed(Closed::between(day(from), day(to), Some("holiday".into())).unwrap())
}

/// What happens to the fish pan: `u` a session, `0` not used, `l` lit, `f` filtered, `n` put off.
fn happens(what: char) -> Fact {
    match what {
        'u' => service(FISH, 120),
        '0' => service(FISH, 0),
        'l' => lit(),
        'f' => noted(FISH, Some(SHARED), Grade::Unguided),
        'n' => noted(FISH, Some(SHARED), Grade::NotDone),
        other => panic!("{other}"),
    }
}

/// Days of the week from Monday on, a word each: what happened an hour after another, and after `>` how it stands: due,
/// filtered, put off (`-`), not yet due (`.`), not used, silent.
#[track_caller]
fn check(rhythm: Rhythm, week: &str) {
    let mut log = filtered(rhythm);
    for (n, one) in (0..).zip(week.split_whitespace()) {
        let (happened, stands) = one.split_once('>').unwrap();
        for (hour, what) in (10..).zip(happened.chars()) {
            log.say(at(n, hour), happens(what));
        }
        let word = match log.ledger().word(FISH, day(n)) {
            Word::Due => "due",
            Word::Filtered(_) => "filtered",
            Word::NotDone => "-",
            Word::NotYetDue => ".",
            Word::NotUsed => "unused",
            Word::Silent => "silent",
        };
        assert_eq!(word, stands, "day {n} of {week}");
    }
}

#[test]
fn a_pan_is_due_by_its_own_rhythm() {
    check(Rhythm::DAILY, "u>due uf>filtered 0>unused fu>filtered u>due");
    check(
        Rhythm::Days(NonZeroU16::new(2).unwrap()),
        "u>. 0>unused u>due uf>filtered u>.",
    );
    // Though the day goes on.
    check(
        sessions(1),
        "u>due uf>filtered ufu>due ufl>due >silent ufl0>filtered u>due",
    );
    check(sessions(2), "u>. uu>due f>filtered uu>due");
    check(sessions(3), "u>. u>. l>due lu>due ufu>filtered u>. u>due");
    check(sessions(2), "uuf>filtered 0>unused u>. >silent u>due");
    // Wednesdays: used before or on it, filtered after it, and not again before the next.
    check(nights(&[2]), "u>. u>. u>due u>due uf>filtered u>. u>. u>. u>. u>due");
    check(nights(&[2]), "u>. uf>filtered 0>unused u>. u>.");
    check(nights(&[0, 4]), "u>due f>filtered u>. u>. u>due f>filtered");
    // A night of its own on which it stood cold stands until it is used.
    check(nights(&[2]), "u>. u>. 0>unused u>due");
}

#[test]
fn a_session_counts_once_lit_and_logged() {
    check(sessions(2), "l>. lu>due");
    check(sessions(2), "lu>. l>due");
    check(sessions(1), "l>due l0>unused");
}

#[test]
fn relit_after_a_filtering_is_no_session_of_its_own() {
    let mut log = filtered(sessions(1));
    log.say(at(0, 14), service(FISH, 120));
    log.run(1, FISH, SHARED, ANN, at(0, 15));
    let mut relit = run(2, FISH, SHARED);
    (relit.event, relit.left) = (RunEvent::Ended, Some(Left::Relit));
    log.say(at(0, 16), Fact::Run(Box::new(relit)));
    assert!(matches!(log.ledger().word(FISH, day(0)), Word::Filtered(_)));
    log.say(at(0, 21), service(FISH, 180));
    assert_eq!(log.ledger().due(day(0)), [FISH], "the tea session is over");
    assert_eq!(log.ledger().unanswered_pans(day(0)), [CHIPS, FISH]);
    assert_eq!(log.ledger().filter_streak(FISH, day(1)), 0);
}

#[test]
fn put_off_after_lunch_says_nothing_of_what_was_filtered_before() {
    check(sessions(1), "un>- unf>filtered ufn>filtered ufun>- unfu>due");
    let mut log = filtered(sessions(1));
    for (hour, what) in [(14, 'u'), (15, 'f'), (21, 'u')] {
        log.say(at(0, hour), happens(what));
    }
    let mut whole = JobFact::new(JobId(1), JobKind::Filter, JobEvent::Noted);
    whole.how = Some(Grade::NotDone);
    log.say(at(0, 22), Fact::Job(Box::new(whole)));
    assert_eq!(log.ledger().word(FISH, day(0)), Word::NotDone);
}

#[test]
fn not_tonight_moves_it_to_the_next_trading_day_and_says_how_often() {
    let mut log = filtered(Rhythm::DAILY);
    let off = |log: &Log, n| log.ledger().put_off(FISH, day(n));
    log.say(at(4, 20), service(FISH, 300));
    assert_eq!(off(&log, 5), None, "nobody said anything");
    log.say(at(4, 22), noted(FISH, None, Grade::NotDone));
    let moved = |night, nights| {
        let why = log_why();
        Some(PutOff { night, why, nights })
    };
    assert_eq!(off(&log, 4), None, "tonight is not moved to tonight");
    assert_eq!(off(&log, 5), moved(day(4), 1));
    log.say(at(5, 20), service(FISH, 300));
    assert_eq!(log.ledger().due(day(5)), [FISH]);
    log.say(at(5, 22), noted(FISH, None, Grade::NotDone));
    // Day 6 is a Sunday, on which this kitchen is closed; then a week away.
    log.say(at(6, 9), closed(7, 13));
    assert_eq!(off(&log, 14), moved(day(5), 2));
    log.say(at(14, 20), service(FISH, 300));
    log.run(1, FISH, SHARED, ANN, at(14, 22));
    assert_eq!(off(&log, 15), None);
}

/// What [`noted`] gives as the reason.
fn log_why() -> Option<String> {
    match noted(FISH, None, Grade::NotDone) {
        Fact::RunNoted(noted) => noted.why,
        other => panic!("{other:?}"),
    }
}

#[test]
fn nothing_is_asked_of_days_closed_and_a_day_worked_all_the_same_counts() {
    let mut log = filtered(Rhythm::DAILY);
    log.say(at(0, 20), service(FISH, 300));
    log.run(1, FISH, SHARED, ANN, at(0, 22));
    log.say(at(0, 22), service(CHIPS, 0));
    let asked = |log: &Log| log.ledger().unanswered_nights(day(6));
    assert_eq!(asked(&log), [1, 2, 3, 4, 5].map(day));
    log.say(at(1, 9), closed(1, 4));
    assert_eq!(asked(&log), [day(5)]);
    assert_eq!(log.ledger().filter_streak(FISH, day(4)), 1);
    let book = log.ledger().book;
    assert!(!book.is_trading_day(day(4)) && book.is_trading_day(day(5)));
    assert_eq!(book.closed_on(day(1)).map(Closed::to), Some(day(4)));
    log.say(at(2, 20), service(FISH, 60));
    assert_eq!(asked(&log), [2, 5].map(day));
    assert_eq!(log.ledger().due(day(2)), [FISH]);
}

#[test]
fn opened_again_the_days_gone_by_stay_closed() {
    let mut log = filtered(Rhythm::DAILY);
    let id = log.say(at(0, 9), closed(1, 10));
    let open = |log: &Log, on| {
        let why = "back early".to_owned();
        open_again(&log.ledger(), id, day(on), why, Some(ANN), now(at(on, 9)))
    };
    assert!(open(&log, 11).is_err(), "they are over");
    let mut early = log.clone();
    early.say(at(4, 9), open(&early, 4).unwrap().fact);
    let trades = |log: &Log| {
        (1..12)
            .map(|n| log.ledger().book.is_trading_day(day(n)))
            .collect::<Vec<_>>()
    };
    // Day 6 is a Sunday.
    let from_4 = [false, false, false, true, true, false, true, true, true, true, true];
    assert_eq!(trades(&early), from_4);
    log.say(at(1, 6), open(&log, 1).unwrap().fact);
    assert_eq!(
        trades(&log),
        [true, true, true, true, true, false, true, true, true, true, true]
    );
    assert!(open(&log, 1).is_err(), "taken back already");
}

#[test]
fn no_days_end_before_they_begin_or_last_more_than_a_year() {
    let between = |from, to| Closed::between(day(from), day(to), None).map(|c| c.has(day(from)));
    assert_eq!(between(3, 3), Ok(true));
    assert_eq!(between(3, 2), Err(NotDays::Turned));
    assert_eq!(between(0, 365), Ok(true));
    assert_eq!(between(0, 366), Err(NotDays::TooMany));
    assert_eq!(Weekdays::of([false; 7]), None);
}

prop_compose! {
    fn rhythm()(pick in 0..3u8, every in 1..4u16, days in prop::array::uniform7(any::<bool>())) -> Rhythm {
        let every = NonZeroU16::new(every).unwrap();
        match (pick, Weekdays::of(days)) {
            (0, _) | (2.., None) => Rhythm::Days(every),
            (1, _) => Rhythm::Sessions(every),
            (_, Some(nights)) => Rhythm::Weekdays(nights),
        }
    }
}

/// Fourteen days, up to four things on each.
fn fortnight() -> impl Strategy<Value = Vec<String>> {
    prop::collection::vec("[u0lfn]{0,4}", 14)
}

fn played(rhythm: Rhythm, days: &[String]) -> Log {
    let mut log = filtered(rhythm);
    for (n, happened) in (0..).zip(days) {
        for (hour, what) in (10..).zip(happened.chars()) {
            log.say(at(n, hour), happens(what));
        }
    }
    log
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn never_due_twice_before_another_use(rhythm in rhythm(), days in fortnight()) {
        let mut log = filtered(rhythm);
        let mut used = false;
        for (n, happened) in (0..).zip(&days) {
            for (hour, what) in (10..).zip(happened.chars()) {
                log.say(at(n, hour), happens(what));
                used = match what {
                    'u' | 'l' => true,
                    'f' => false,
                    _ => used,
                };
                let due = log.ledger().word(FISH, day(n)) == Word::Due;
                prop_assert!(used || !due, "{rhythm:?}, day {n}, {what} of {days:?}");
            }
        }
    }

    #[test]
    fn a_pan_used_on_is_due_in_the_end(rhythm in rhythm(), days in fortnight()) {
        let mut log = played(rhythm, &days);
        let due = |log: &Log, n| log.ledger().word(FISH, day(n)) == Word::Due;
        for n in 14..22 {
            log.say(at(n, 12), service(FISH, 120));
        }
        prop_assert!(due(&log, 21), "a week of use is more than any of these rhythms allows");
    }

    #[test]
    fn days_closed_change_no_word_of_any_day(rhythm in rhythm(), days in fortnight(), from in 0..14i64, more in 0..7i64) {
        let open = played(rhythm, &days);
        let mut shut = open.clone();
        shut.say(at(14, 9), closed(from, from + more));
        let words = |log: &Log| (0..14).map(|n| log.ledger().word(FISH, day(n))).collect::<Vec<_>>();
        prop_assert_eq!(words(&open), words(&shut));
        // What is asked of other days stays; on a day closed only what was worked is.
        let within = |asked: &Day| (day(from)..=day(from + more)).contains(asked);
        let mut expected = open.ledger().unanswered_nights(day(14));
        expected.retain(|asked| !within(asked) || open.ledger().word(FISH, *asked) == Word::Due);
        prop_assert_eq!(shut.ledger().unanswered_nights(day(14)), expected);
    }
}
