//! The step tables with one hold cut out everywhere.

use panward::domain::procedure::{Ask, Hold, Step, StepId, Tables};

/// The real tables without a hold: its questions and its checks. Leaks, once a test.
pub fn without(hold: Hold) -> Tables {
    without_at(hold, StepId::ALL)
}

/// The same, but for these steps alone.
pub fn without_at(hold: Hold, at: &[StepId]) -> Tables {
    let cut = |steps: &'static [Step]| -> &'static [Step] {
        let steps: Vec<Step> = steps
            .iter()
            .map(|step| {
                let cut = at.contains(&step.id);
                Step {
                    holds: leak(step.holds.iter().copied().filter(|h| !cut || *h != hold).collect()),
                    asks: leak::<Ask>(
                        step.asks
                            .iter()
                            .copied()
                            .filter(|a| !cut || a.hold != Some(hold))
                            .collect(),
                    ),
                    ..*step
                }
            })
            .collect();
        leak(steps)
    };
    let one = |step: &'static Step| cut(std::slice::from_ref(step)).first().expect("a step");
    let Tables {
        ready,
        nozzle,
        drain,
        built_in,
        hand,
        again,
        again_hand,
        away,
        line_solid,
        leave_set,
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
        line_solid: one(line_solid),
        leave_set: one(leave_set),
    }
}

fn leak<T>(items: Vec<T>) -> &'static [T] {
    Box::leak(items.into_boxed_slice())
}
