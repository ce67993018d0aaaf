//! Given the rate, and readings of known spread, the estimator is a Kalman filter: held, step by step, to statsmodels'.

use std::error::Error;

use serde_json::Value;

use super::*;
use crate::domain::facts::oil::Load;
use crate::domain::ids::Dev;
use crate::domain::oil_life::history::Incoming;
use crate::domain::time::Millis;
use crate::domain::units::{Minutes, Share, Temp, Volume};

/// Made by `tests/published/kalman_vectors.py`, which names the version.
const VECTORS: &str = include_str!("../../../../tests/fixtures/kalman.json");
/// How far apart two ways to the same number may end, in points or their squares.
const ROUNDING: f64 = 1e-9;

type Outcome<T> = Result<T, Box<dyn Error>>;

fn number(of: &Value, name: &str) -> Outcome<f64> {
    of[name].as_f64().ok_or_else(|| format!("{name} in {of}").into())
}

fn whole<T: TryFrom<i64>>(of: &Value, name: &str) -> Outcome<T> {
    let found = of[name].as_i64().and_then(|n| T::try_from(n).ok());
    found.ok_or_else(|| format!("{name} in {of}").into())
}

fn numbers(of: &Value) -> Outcome<Vec<f64>> {
    let list = of.as_array().ok_or_else(|| format!("{of} is no list"))?;
    let each = list.iter().map(|n| n.as_f64().ok_or_else(|| format!("{n}").into()));
    each.collect()
}

fn what(event: &Value) -> Outcome<What> {
    let temp = event["temp_dc"]
        .as_i64()
        .and_then(|dc| Temp::from_dc(dc.try_into().ok()?));
    let share = |name| -> Outcome<Share> { Ok(Share::from_cpc(whole(event, name)?).ok_or("a share")?) };
    let volume = |name| -> Outcome<Volume> { Ok(Volume::from_ml(whole(event, name)?).ok_or("a volume")?) };
    Ok(match event["kind"].as_str() {
        Some("fried") => What::Fried {
            fry: Minutes::new(whole(event, "minutes")?).ok_or("minutes")?,
            temp,
            load: Load::Normal,
        },
        Some("unlogged") => What::Unlogged {
            temp: Some(temp.unwrap_or(super::super::kinetics::REFERENCE_TEMP)),
        },
        Some("topped") => What::Topped {
            fat: Fat::Sunflower,
            added: volume("ml")?,
            after: volume("after_ml")?,
        },
        Some("moved_in") => What::MovedIn {
            oil: Incoming {
                polar: (number(event, "percent")?, number(event, "sd")?),
                ffa: (0.0, 0.0),
            },
            added: volume("ml")?,
            after: volume("after_ml")?,
        },
        Some("read") => What::Read {
            value: Measured::Polar(share("cpc")?),
            instrument: Some(InstrumentId(whole(event, "instrument")?)),
            spread: Some(share("spread_cpc")?),
        },
        _ => return Err(format!("no such event: {event}").into()),
    })
}

/// A belief as a case begins: one rate, and of the rest what the case says. A rate that drifts is not linear, so none
/// does.
fn begun(case: &Value, history: &FillHistory, habit: &Habit, shop: &Shop) -> Outcome<Belief> {
    let straying = Straying {
        level_per_hour: number(case, "straying")?,
        rate_per_hour: 0.0,
    };
    let mut belief = Belief::begin(Quantity::Polar, history, habit, shop, straying);
    for tool in 1..=2 {
        belief.place_of(Some(InstrumentId(tool)));
    }
    let at = places();
    let mut mean = vec![0.0; belief.cov.len()];
    for (place, value) in at.iter().zip(numbers(&case["mean"])?) {
        mean[*place] = value;
    }
    for ((a, b), value) in triangle().zip(numbers(&case["cov"])?) {
        belief.cov.set(at[a], at[b], value);
    }
    belief.fresh_percent = mean[FRESH];
    belief.nodes = vec![Node {
        rate: number(case, "rate")?,
        weight: 1.0,
        mean,
    }];
    belief.hints = vec![1.0];
    Ok(belief)
}

/// Where the vectors' five quantities stand in a belief.
const fn places() -> [usize; 5] {
    [LEVEL, FRESH, CONSTANTS, CONSTANTS + 1, CONSTANTS + 2]
}

/// The places of a lower triangle, row by row.
fn triangle() -> impl Iterator<Item = (usize, usize)> {
    (0..places().len()).flat_map(|a| (0..=a).map(move |b| (a, b)))
}

#[test]
fn every_step_is_the_published_kalman_filters() -> Outcome<()> {
    let vectors: Value = serde_json::from_str(VECTORS)?;
    let shop = Shop::new();
    let history = FillHistory::new(Fat::Sunflower, Start::Fresh, Vec::new());
    let mut readings = [0; 2];
    for (case, readings) in vectors["cases"].as_array().ok_or("cases")?.iter().zip(&mut readings) {
        let habit = Habit::of(UsualFry {
            mean_h: number(case, "usual_h")?,
            sd_h: number(case, "usual_sd_h")?,
        });
        let mut belief = begun(case, &history, &habit, &shop)?;
        for (n, step) in (1_u32..).zip(case["steps"].as_array().ok_or("steps")?) {
            let event = Event {
                order: (Millis(i64::from(n)), Millis(i64::from(n)), Dev(1), n),
                entry: EntryId(u128::from(n)),
                what: what(&step["event"])?,
            };
            belief.apply(&history, &habit, &shop, &event);
            let at = places();
            for (place, theirs) in at.iter().zip(numbers(&step["mean"])?) {
                let ours = belief.nodes[0].mean[*place];
                assert!(
                    (ours - theirs).abs() < ROUNDING,
                    "step {n}, mean of {place}: {ours}, not {theirs}"
                );
            }
            for ((a, b), theirs) in triangle().zip(numbers(&step["cov"])?) {
                let ours = belief.cov.get(at[a], at[b]);
                assert!(
                    (ours - theirs).abs() < ROUNDING,
                    "step {n}, cov of {a} and {b}: {ours}, not {theirs}"
                );
            }
        }
        *readings = usize::from(belief.readings);
        assert_eq!(
            belief.contradicting,
            [],
            "vectors stay where readings are taken as they are"
        );
    }
    assert!(readings.iter().all(|n| *n >= 15), "{readings:?}");
    Ok(())
}
