//! Arbitrary facts about the oil in the pans: fills, changes, services, readings, signs, claims.

use panward::domain::claim::ClaimKind;
use panward::domain::facts::oil::Vessel;
use panward::domain::facts::{AllergensChecked, Fact, oil};
use panward::domain::fat::Fat;
use panward::domain::ids::{InstrumentId, PanId};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

use super::values::{acid, amount, day, machine, minutes, moment, pan, share, temp, words};

/// A fact about oil of any kind.
pub(super) fn about_oil() -> impl Strategy<Value = Fact> {
    let age = prop_oneof![
        Just(oil::Age::Fresh),
        day().prop_map(oil::Age::Since),
        Just(oil::Age::Unknown)
    ];
    let value = prop_oneof![
        share().prop_map(oil::Measured::Polar),
        share().prop_map(oil::Measured::Ffa),
        acid().prop_map(oil::Measured::Acid),
        temp().prop_map(oil::Measured::Temp),
        temp().prop_map(oil::Measured::Smoke),
    ];
    let claim = || {
        (pan(), select(ClaimKind::ALL), words(), of(words())).prop_map(|(pan, what, why, basis)| oil::ClaimChange {
            pan,
            what,
            why,
            basis,
        })
    };
    prop_oneof![
        (pan(), select(Fat::ALL), amount(), of(words()), age).prop_map(|(pan, fat, amount, batch, age)| Fact::Fill(
            oil::Fill {
                pan,
                fat,
                amount,
                batch,
                age
            }
        )),
        (pan(), select(Fat::ALL), amount(), of(words())).prop_map(|(pan, fat, amount, batch)| Fact::TopUp(
            oil::TopUp {
                pan,
                fat,
                amount,
                batch
            }
        )),
        (pan(), amount(), amount()).prop_map(|(pan, out, fresh)| Fact::PartChange(oil::PartChange { pan, out, fresh })),
        (pan(), machine(), 0..3_u8, amount(), amount()).prop_map(|(id, machine, way, out, arrived)| {
            let (pan, machine) = (Vessel::Pan(id), Vessel::Machine(machine));
            let (from, to) = match way {
                0 => (pan, Vessel::Pan(PanId(id.0 ^ 1))),
                1 => (pan, machine),
                _ => (machine, pan),
            };
            Fact::Move(oil::Move { from, to, out, arrived })
        }),
        (pan(), amount(), words(), of(temp()), of(words())).prop_map(|(pan, amount, reason, temp, container)| {
            Fact::OilChange(oil::OilChange {
                pan,
                amount,
                reason,
                temp,
                container,
            })
        }),
        (pan(), minutes(), select(oil::Load::ALL), of(temp()), of(any::<u32>())).prop_map(
            |(pan, fry, load, temp, food_g)| Fact::Service(oil::Service {
                pan,
                fry,
                load,
                temp,
                food_g
            })
        ),
        (pan(), value, of(any::<u128>()), of(temp())).prop_map(|(pan, value, instrument, oil)| {
            Fact::Reading(oil::Reading {
                pan,
                value,
                instrument: instrument.map(InstrumentId),
                oil,
            })
        }),
        (of(pan()), select(oil::SignKind::ALL), of(words())).prop_map(|(pan, sign, text)| Fact::Sign(oil::Sign {
            pan,
            sign,
            text
        })),
        (of(pan()), words()).prop_map(|(pan, text)| Fact::Note(oil::Note { pan, text })),
        claim().prop_map(Fact::ClaimLost),
        (claim(), of(of(moment()))).prop_map(|(change, until)| Fact::ClaimRestored(oil::ClaimRestored {
            pan: change.pan,
            what: change.what,
            why: change.why,
            basis: change.basis,
            looked: until.map(|until| oil::Looked { until }),
        })),
        (words(), of(words())).prop_map(|(sheet, why)| Fact::AllergensChecked(AllergensChecked { sheet, why })),
    ]
}
