//! Oil that is mixed: the rule of mixtures, by hand, and the level a part-changed pan settles at.

use panward::domain::facts::oil::Load;
use panward::domain::fat::Fat;
use panward::domain::ids::{Dev, EntryId};
use panward::domain::oil_life::{Event, FillHistory, Settling, Start, TopUps, What, mixed};
use panward::domain::time::Millis;
use panward::domain::units::{Minutes, Volume};

fn close(computed: f64, by_hand: f64) {
    crate::close(computed, by_hand, 1e-9);
}

/// Own derivation (mass balance of a well-mixed bath): P + f·(C0 − P), f the part of the pan that came in.
#[test]
fn mixing_keeps_the_balance_of_what_is_mixed() {
    // 28 L at 20 %, 7 L of them changed for fresh oil at 5 %: (21·20 + 7·5) / 28.
    close(mixed(20.0, 7.0 / 28.0, 5.0), 16.25);
    // 10 L at 24 % onto 30 L at 8 %: (30·8 + 10·24) / 40; one after the other as both at once.
    close(mixed(8.0, 10.0 / 40.0, 24.0), 12.0);
    // 4 L at 24 % and 6 L at 14 % onto 30 L at 8 %: (240 + 96 + 84) / 40.
    close(mixed(mixed(8.0, 4.0 / 34.0, 24.0), 6.0 / 40.0, 14.0), 10.5);
    close(mixed(mixed(8.0, 6.0 / 36.0, 14.0), 4.0 / 40.0, 24.0), 10.5);
}

fn happened(list: &[What]) -> FillHistory {
    let events = (1_u32..).zip(list).map(|(n, what)| Event {
        order: (Millis(i64::from(n)), Millis(i64::from(n)), Dev(1), n),
        entry: EntryId(u128::from(n)),
        what: *what,
    });
    FillHistory::new(Fat::Rapeseed, Start::Fresh, events.collect())
}

const FRIED: What = What::Fried {
    fry: match Minutes::new(300) {
        Some(fry) => fry,
        None => panic!(),
    },
    temp: None,
    load: Load::Normal,
};

fn ml(ml: u32) -> Volume {
    Volume::from_ml(ml).unwrap()
}

fn topped(added: u32) -> What {
    What::Topped {
        fat: Fat::Rapeseed,
        added: ml(added),
        after: ml(20_000),
    }
}

fn changed(added: u32) -> What {
    What::PartChanged {
        fat: Fat::Rapeseed,
        added: ml(added),
        after: ml(20_000),
    }
}

/// Ten services, each topped up by 5 % of the pan, and two part-changes of 30 %: (10·0.05 + 2·0.30) / 10 = 0.11 of the
/// pan a service. At 0.3 points an hour and five hours it then settles at 5 + 1.5/0.11, just before the fresh oil; by
/// its top-ups alone it would be at 5 + 1.5/0.05 = 35 and over any limit.
#[test]
fn part_changes_count_in_what_is_usual_and_hold_the_level() {
    let mut list: Vec<What> = (0..10).flat_map(|_| [FRIED, topped(1_000)]).collect();
    let untaught = TopUps::default();
    close(untaught.in_fill(&happened(&list)), 0.05);
    list.insert(8, changed(6_000));
    close(untaught.in_fill(&happened(&list)), 0.05);
    list.insert(16, changed(6_000));
    let usual = untaught.in_fill(&happened(&list));
    close(usual, 0.11);
    let settles = Settling::linear(5.0, 0.3 * 5.0, usual).unwrap();
    close(settles.before_top_up, 5.0 + 1.5 / 0.11);
    close(settles.after_top_up, 5.0 + 1.5 * 0.89 / 0.11);
    // What one fill taught is expected of the next from its first day.
    let taught = TopUps::learn([&happened(&list)]);
    close(taught.a_service(), 0.11);
    close(taught.in_fill(&happened(&[])), 0.11);
}
