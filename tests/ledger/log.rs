//! What the log screen shows: trading days newest first, runs folded, a page at a time.

use panward::domain::facts::Fact;
use panward::domain::facts::job::{JobEvent, JobFact, JobKind};
use panward::domain::facts::run::Left;
use panward::domain::ids::{EntryId, JobId};
use panward::kitchen::log::{FoldOf, LogItem, days, place};

use crate::given::*;

#[test]
fn a_day_reaches_past_midnight_and_a_run_is_one_item() {
    let mut log = Log::filled();
    log.say(at(1, 12), top_up(FISH, 2));
    log.run(1, FISH, SHARED, ANN, at(1, 26));
    log.say(at(2, 12), service(CHIPS, 300));
    let ledger = log.ledger();
    let (shown, more) = days(&ledger, None, 60);
    assert!(!more);
    assert_eq!(
        shown.iter().map(|d| d.day).collect::<Vec<_>>(),
        [day(2), day(1), day(0)]
    );
    let LogItem::Fold(run) = &shown[1].items[0] else {
        panic!()
    };
    assert_eq!((run.left, run.lines.len(), run.pan), (Some(Left::Off), 5, Some(FISH)));
    assert!(
        run.lines.windows(2).all(|two| two[0].id < two[1].id),
        "in the order they happened"
    );
    assert_eq!(shown[1].items.len(), 2, "02:00 belongs to the day before");
}

#[test]
fn a_page_holds_what_it_may_and_says_that_there_is_more() {
    let mut log = Log::filled();
    for n in 0..9 {
        log.say(at(1, 10 + n), top_up(FISH, 1));
    }
    let ledger = log.ledger();
    let (shown, more) = days(&ledger, Some(FISH), 4);
    assert!(more);
    assert_eq!(shown.iter().map(|d| d.items.len()).sum::<usize>(), 4);
    let (all, more) = days(&ledger, Some(FISH), 60);
    assert!(!more);
    let about = |item: &LogItem<'_>| matches!(item, LogItem::Line(line) if matches!(line.fact, Fact::TopUp(_) | Fact::Fill(_) | Fact::Pan(_)));
    assert!(all.iter().flat_map(|d| &d.items).all(about), "only this pan's lines");
    assert_eq!(
        all.iter().map(|d| d.items.len()).sum::<usize>(),
        11,
        "set up, filled, nine top-ups"
    );
}

#[test]
fn an_entry_is_found_in_its_item_at_the_place_where_it_is_shown() {
    let mut log = Log::filled();
    log.say(at(1, 12), top_up(FISH, 2));
    log.run(1, FISH, SHARED, ANN, at(1, 26));
    log.say(at(2, 12), service(CHIPS, 300));
    let ledger = log.ledger();
    let (shown, _) = days(&ledger, None, usize::MAX);
    let items: Vec<_> = shown.iter().flat_map(|day| &day.items).collect();
    let mut found = 0;
    for (before, item) in items.iter().enumerate() {
        let lines = match item {
            LogItem::Line(line) => std::slice::from_ref(line),
            LogItem::Fold(fold) => &fold.lines,
        };
        for line in lines {
            assert_eq!(place(&ledger, line.id), Some((before, item.key())), "{line:?}");
            found += 1;
        }
    }
    assert!(found > items.len(), "a run among them");
    assert_eq!(place(&ledger, EntryId(u128::MAX)), None, "an entry nobody wrote");
}

#[test]
fn a_filter_job_that_filtered_nothing_says_so_once_it_is_over() {
    let mut log = Log::filled();
    log.run(1, FISH, SHARED, ANN, at(1, 26));
    let job = |job, event| Fact::Job(Box::new(JobFact::new(JobId(job), JobKind::Filter, event)));
    log.say(at(1, 27), job(1, JobEvent::Opened));
    log.say(at(1, 28), job(1, JobEvent::Ended));
    log.say(at(2, 20), job(2, JobEvent::Opened));
    let told = |log: &Log| {
        let ledger = log.ledger();
        let (shown, _) = days(&ledger, None, 60);
        let items = shown.into_iter().flat_map(|day| day.items);
        let mut told: Vec<(FoldOf, bool, bool)> = items
            .filter_map(|item| match item {
                LogItem::Fold(fold) if fold.job.is_some() => Some((fold.of, fold.over, fold.nothing_filtered)),
                LogItem::Fold(_) | LogItem::Line(_) => None,
            })
            .collect();
        told.reverse();
        told
    };
    let first = (FoldOf::Job(JobId(1)), true, false);
    assert_eq!(told(&log), [first, (FoldOf::Job(JobId(2)), false, false)]);
    log.say(at(2, 21), job(2, JobEvent::Ended));
    assert_eq!(told(&log), [first, (FoldOf::Job(JobId(2)), true, true)]);
}
