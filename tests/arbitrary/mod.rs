//! Arbitrary entries of every kind, for property tests.

mod oil;
mod setup;
mod values;
mod work;

use panward::domain::entry::Entry;
use panward::domain::facts::{Correct, Correction, Fact};
use panward::domain::ids::{Dev, EntryId, KitchenId};
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;

use oil::about_oil;
use setup::about_setup;
use values::{moment, person, words};
use work::{job, others, run};

/// The one kitchen all arbitrary entries belong to.
pub const KITCHEN: KitchenId = KitchenId(0x1234);

fn plain_fact() -> BoxedStrategy<Fact> {
    prop_oneof![2 => about_setup(), 4 => about_oil(), 1 => job(), 1 => run(), 1 => others()].boxed()
}

/// A fact of any kind this app can write.
pub fn fact() -> impl Strategy<Value = Fact> {
    let amend = (of(moment()), of(-720..=840_i16), of(plain_fact()))
        .prop_filter("amends something", |(at, off, fact)| {
            at.is_some() || off.is_some() || fact.is_some()
        })
        .prop_map(|(at, off_min, fact)| Correction::Amend {
            at,
            off_min,
            fact: fact.map(Box::new),
        });
    let correct = (any::<u128>(), words(), prop_oneof![Just(Correction::Void), amend]).prop_map(|(of, why, how)| {
        Fact::Correct(Correct {
            of: EntryId(of),
            why,
            how,
        })
    });
    prop_oneof![9 => plain_fact(), 1 => correct]
}

/// The UUID v7 made of any bits.
pub fn v7(bits: u128) -> EntryId {
    EntryId(bits & !(0xf << 76) & !(0b11 << 62) | 7 << 76 | 0b10 << 62)
}

/// An entry of any kind this app can write, from one of three stores.
pub fn entry() -> impl Strategy<Value = Entry> {
    let envelope = (
        any::<u128>(),
        0..3_u64,
        1..=u32::MAX,
        moment(),
        moment(),
        of(moment()),
        -720..=840_i16,
        of(person()),
    );
    (envelope, fact()).prop_map(|(e, fact)| Entry {
        id: v7(e.0),
        dev: Dev(e.1),
        seq: e.2,
        at: e.3,
        rec: e.4,
        clk: e.5.filter(|clk| *clk != e.4),
        off_min: e.6,
        who: e.7,
        fact,
    })
}

/// A log: entries with their own ids and places, in any order of arrival.
pub fn log() -> impl Strategy<Value = Vec<Entry>> {
    vec(entry(), 0..24).prop_map(|mut entries| {
        entries.sort_by_key(|e| e.id);
        entries.dedup_by_key(|e| e.id);
        entries.sort_by_key(|e| (e.dev, e.seq));
        entries.dedup_by_key(|e| (e.dev, e.seq));
        entries
    })
}
