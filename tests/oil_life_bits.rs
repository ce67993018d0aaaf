//! Native and wasm agree to the bit: the same fills, the same answers, in both builds.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use panward::domain::facts::oil::{Load, Measured};
use panward::domain::facts::setup::AcidLimit;
use panward::domain::fat::Fat;
use panward::domain::heat::cool_down;
use panward::domain::ids::{Dev, EntryId, InstrumentId};
use panward::domain::oil_life::{
    self, Event, FillHistory, Habit, LimitsInForce, Outlook, Shop, Start, TopUps, UsualFry, What,
};
use panward::domain::time::Millis;
use panward::domain::units::{AcidValue, Minutes, Share, Temp, Volume};

#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::wasm_bindgen_test;

/// Three weeks of a pan: frying at several temperatures, top-ups, two instruments, acidity, one part-change.
fn three_weeks(start: Start) -> FillHistory {
    let mut events = Vec::new();
    for day in 1..=21_u32 {
        let pan = Volume::from_ml(24_000).unwrap();
        let at = |hour: u32, what| Event {
            order: (
                Millis(i64::from(day * 24 + hour) * Millis::HOUR),
                Millis(i64::from(day * 24 + hour) * Millis::HOUR),
                Dev(7),
                day * 24 + hour,
            ),
            entry: EntryId(u128::from(day * 24 + hour)),
            what,
        };
        events.push(at(
            1,
            What::Fried {
                fry: Minutes::new(u16::try_from(200 + 13 * (day % 7)).unwrap()).unwrap(),
                temp: Temp::from_dc(i16::try_from(1700 + 10 * (day % 5)).unwrap()),
                load: Load::Normal,
            },
        ));
        let value = match day % 6 {
            0 => Some(Measured::Polar(
                Share::from_cpc(u16::try_from(500 + 60 * day).unwrap()).unwrap(),
            )),
            3 => Some(Measured::Acid(
                AcidValue::from_cav(u16::try_from(30 + 5 * day).unwrap()).unwrap(),
            )),
            _ => None,
        };
        events.extend(value.map(|value| {
            at(
                2,
                What::Read {
                    value,
                    instrument: Some(InstrumentId(u128::from(day % 4))),
                    spread: Share::from_cpc(250),
                },
            )
        }));
        let added = Volume::from_ml(if day == 14 { 8_000 } else { 700 + 20 * day }).unwrap();
        events.push(at(
            3,
            What::Topped {
                fat: Fat::Palm,
                added,
                after: pan,
            },
        ));
    }
    FillHistory::new(Fat::Palm, start, events)
}

fn outlook(history: &FillHistory) -> Outlook {
    let setup = Minutes::new(300).unwrap();
    let limits = LimitsInForce {
        polar: Share::from_cpc(2_500),
        acid: AcidValue::from_cav(250).map(AcidLimit::AcidValue),
    };
    let habit = Habit {
        days: Some(12),
        top_up: TopUps::each(0.03),
        ..Habit::of(UsualFry::learn(setup, []))
    };
    Outlook {
        fry: UsualFry::learn(setup, [240, 290, 310].into_iter().filter_map(Minutes::new)),
        top_up: habit.top_up.in_fill(history),
        temp: Temp::celsius(178),
        ..Outlook::new(limits, habit)
    }
}

fn bits(start: Start) -> Vec<u64> {
    let history = three_weeks(start);
    let outlook = outlook(&history);
    // What an earlier fill taught, so that learning is compared to the bit as well.
    let mut shop = Shop::new();
    shop.learn(&three_weeks(Start::Fresh), &outlook.habit);
    let life = oil_life::of(&history, &outlook, &shop);
    let ffa = life.ffa.unwrap();
    let settles = life.settles_at.unwrap().level;
    let wait = cool_down::wait(178.0, 150.0, 21.5, &[]).unwrap();
    [
        life.polar.low,
        life.polar.median,
        life.polar.high,
        ffa.low,
        ffa.median,
        ffa.high,
        life.chance_over.unwrap(),
        settles.before_top_up,
        settles.after_top_up,
        wait.likely,
    ]
    .map(f64::to_bits)
    .to_vec()
}

fn hex(bits: &[u64]) -> Vec<String> {
    bits.iter().map(|b| format!("{b:016x}")).collect()
}

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn fresh_fill() {
    assert_eq!(hex(&bits(Start::Fresh)), FRESH);
}

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn fill_worn_before_the_log_began() {
    assert_eq!(hex(&bits(Start::Worked { services: 4 })), WORKED);
}

#[cfg_attr(target_arch = "wasm32", wasm_bindgen_test)]
#[cfg_attr(not(target_arch = "wasm32"), test)]
fn fill_of_unknown_age() {
    assert_eq!(hex(&bits(Start::Unknown)), UNKNOWN);
}

const FRESH: [&str; 10] = [
    "402cc92880970e05",
    "403113e3389af9c6",
    "4033cbf9d51295a1",
    "3fd266a9df3caf64",
    "3fe50ab44e0fe99d",
    "3ffaa289ff9ddf38",
    "3fd12f6f2d3a48f4",
    "404276b746dd15b0",
    "4041d77e59f1b004",
    "40406d60d53d02ae",
];
const WORKED: [&str; 10] = [
    "402b3bec7b28252f",
    "403008944e7a54e2",
    "403270bc4916b5dd",
    "3fd27840eafa6649",
    "3fe49dd1e85c5270",
    "3ff8c0e572d432a2",
    "3fce43959e28661c",
    "403fa0a2453a55be",
    "403e998fbb63f212",
    "40406d60d53d02ae",
];
const UNKNOWN: [&str; 10] = [
    "402d5fbfab19025f",
    "40317dbf232f357e",
    "4034615762d0b39c",
    "3fd53fe52c0b0886",
    "3fe50813a4c9aed1",
    "3ff70be2141e48ce",
    "3fca5b3d69b3964c",
    "4043d27aae8d4b68",
    "4043267fa5f43a1a",
    "40406d60d53d02ae",
];
