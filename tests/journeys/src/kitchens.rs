//! Kitchens made ready beforehand: written by the app's own kitchen to a log in memory, handed over as an export.

use crate::fault::{Outcome, fault};
use panward::demo::demo_drafts;
use panward::domain::facts::Fact;
use panward::domain::facts::setup::OutBy;
use panward::domain::ids::{Dev, KitchenId};
use panward::domain::time::{Day, Millis, Now, PageLife};
use panward::kitchen::{Kitchen, Order, Outside};
use panward::store::export::{About, export};
use panward::store::{Journal, MemoryJournal, World};

/// When the journeys play: a Wednesday in June 2026, half past nine in the evening in London.
pub const EVENING: i64 = 1_781_123_400_000;
/// Minutes London is ahead of UTC then.
const OFF_MIN: i16 = 60;
const HOUR_MS: i64 = 3_600_000;

/// A real kitchen as an export: one signed-off owner, two pans of fresh oil, one machine by which oil leaves as told,
/// used by nobody yet.
pub async fn kitchen_with(out_by: OutBy) -> Outcome<String> {
    let at = EVENING - 12 * HOUR_MS;
    let now = Now {
        wall: Millis(at),
        mono: 0,
        life: PageLife(1),
        off_min: OFF_MIN,
    };
    let mut chance = 0_u8;
    let outside = Outside {
        off_min: Box::new(|_| OFF_MIN),
        random: Box::new(move || {
            chance = chance.wrapping_add(1);
            [chance; 10]
        }),
    };
    let journal = MemoryJournal::new(Dev(7));
    let mut kitchen = match Kitchen::open(journal.clone(), outside, &now).await {
        Ok(kitchen) => kitchen,
        Err(why) => return fault(why.to_string()),
    };
    let demo = demo_drafts(1, Day::of(Millis(at), OFF_MIN, 300), |_| OFF_MIN);
    let [first, second, ..] = demo.cast.pans;
    let mine = |fact: &Fact| match fact {
        Fact::Kitchen(_) => true,
        Fact::Person(person) => person.person == demo.cast.people[0],
        Fact::Pan(pan) => [first, second].contains(&pan.pan),
        Fact::Machine(machine) => machine.machine == demo.cast.machine,
        Fact::Fill(fill) => [first, second].contains(&fill.pan),
        _ => false,
    };
    let mut fills = Vec::new();
    let mut drafts = Vec::new();
    for mut draft in demo.drafts.into_iter().map(|d| d.draft).filter(|d| mine(&d.fact)) {
        match &mut draft.fact {
            Fact::Machine(machine) => machine.out_by = out_by,
            // The first fill of each pan: the demo changes its oil later.
            Fact::Fill(fill) if fills.contains(&fill.pan) => continue,
            Fact::Fill(fill) => fills.push(fill.pan),
            _ => {}
        }
        drafts.push(draft);
    }
    if let Err(why) = kitchen.send(Order::Write(drafts), &now).await {
        return fault(format!("the kitchen cannot be made ready: {why}"));
    }
    let about = About {
        kitchen: KitchenId(1),
        name: "Journeys".to_owned(),
        world: World::Real,
        made_at: Millis(at),
    };
    let about = About {
        kitchen: kitchen
            .ledger()
            .book
            .kitchen
            .as_ref()
            .map_or(about.kitchen, |k| k.kitchen),
        ..about
    };
    Ok(export(&journal.load().await?, &about)?)
}
