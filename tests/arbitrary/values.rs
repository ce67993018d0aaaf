//! Arbitrary values that facts are made of: words, ids, moments, measures, evidence.

use panward::domain::claim::{Exposure, Exposures};
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::ids::{MachineId, PanId, PersonId};
use panward::domain::time::{Day, Millis};
use panward::domain::units::{AcidValue, Amount, Minutes, Share, Temp, Typed, Unit, Volume};
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;

pub(super) fn words() -> impl Strategy<Value = String> {
    prop_oneof!["[a-z ]{0,12}", any::<String>()]
}

pub(super) fn person() -> impl Strategy<Value = PersonId> {
    any::<u128>().prop_map(PersonId)
}

pub(super) fn pan() -> impl Strategy<Value = PanId> {
    any::<u128>().prop_map(PanId)
}

pub(super) fn machine() -> impl Strategy<Value = MachineId> {
    any::<u128>().prop_map(MachineId)
}

/// Any moment from 1970 to 2100.
pub(super) fn moment() -> impl Strategy<Value = Millis> {
    (0..4_102_444_800_000_i64).prop_map(Millis)
}

pub(super) fn day() -> impl Strategy<Value = Day> {
    moment().prop_map(|at| Day::of(at, 0, 0))
}

pub(super) fn volume() -> impl Strategy<Value = Volume> {
    (0..=Volume::MAX.ml()).prop_map(|ml| Volume::from_ml(ml).expect("in range"))
}

pub(super) fn temp() -> impl Strategy<Value = Temp> {
    (Temp::MIN.dc()..=Temp::MAX.dc()).prop_map(|dc| Temp::from_dc(dc).expect("in range"))
}

pub(super) fn share() -> impl Strategy<Value = Share> {
    (0..=10_000_u16).prop_map(|cpc| Share::from_cpc(cpc).expect("in range"))
}

pub(super) fn acid() -> impl Strategy<Value = AcidValue> {
    (0..=5_000_u16).prop_map(|cav| AcidValue::from_cav(cav).expect("in range"))
}

pub(super) fn minutes() -> impl Strategy<Value = Minutes> {
    (0..=1_440_u16).prop_map(|min| Minutes::new(min).expect("in range"))
}

pub(super) fn amount() -> impl Strategy<Value = Amount> {
    (volume(), any::<u32>(), select(Unit::ALL)).prop_map(|(volume, thousandths, unit)| Amount {
        volume,
        typed: Typed { thousandths, unit },
    })
}

pub(super) fn exposures() -> impl Strategy<Value = Exposures> {
    vec(select(Exposure::ALL), 0..5).prop_map(|list| Exposures::of(&list))
}

pub(super) fn evidence() -> impl Strategy<Value = Evidence> {
    let one = (select(Item::ALL), select(Word::ALL), any::<i32>(), words()).prop_map(|(item, word, number, words)| {
        let seen = if item.is_number() {
            Seen::Number(number)
        } else if item.is_words() {
            Seen::Words(words)
        } else {
            Seen::Is(word)
        };
        (item, seen)
    });
    vec(one, 0..6).prop_map(|list| list.into_iter().collect())
}
