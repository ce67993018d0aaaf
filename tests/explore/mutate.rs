//! The step tables with one hold cut out everywhere.

use panward::domain::procedure::{Ask, Hold, Step, Tables};

/// The real tables without a hold: its questions and its checks. Leaks, once a test.
pub fn without(hold: Hold) -> Tables {
    let cut = |steps: &'static [Step]| -> &'static [Step] {
        let steps: Vec<Step> = steps
            .iter()
            .map(|step| Step {
                holds: leak(step.holds.iter().copied().filter(|h| *h != hold).collect()),
                asks: leak::<Ask>(step.asks.iter().copied().filter(|a| a.hold != Some(hold)).collect()),
                ..*step
            })
            .collect();
        leak(steps)
    };
    let Tables {
        ready,
        nozzle,
        drain,
        built_in,
        hand,
        again,
        again_hand,
        away,
    } = Tables::REAL;
    Tables {
        ready: cut(ready),
        nozzle: cut(nozzle),
        drain: cut(drain),
        built_in: cut(built_in),
        hand: cut(hand),
        again: cut(again),
        again_hand: cut(again_hand),
        away: cut(away),
    }
}

fn leak<T>(items: Vec<T>) -> &'static [T] {
    Box::leak(items.into_boxed_slice())
}
