//! Which states count as one.

use std::hash::{DefaultHasher, Hash, Hasher};

use panward::domain::guide::Warm;
use panward::domain::procedure::{Hold, StepId};
use panward::domain::time::Now;
use panward::domain::wait::{Standing, Wait};

use crate::auditor::{Heater, MINUTE, between};
use crate::node::Node;

/// How far an age is from a deadline.
fn bucket(age: i64, due: i64) -> u8 {
    match age - due {
        _ if age < 0 => 0,
        ..-1 => 1,
        -1 => 2,
        0 => 3,
        1 => 4,
        _ => 5,
    }
}

fn stands(wait: &Wait, now: &Now) -> (u8, bool) {
    let bucket = match wait.standing(now) {
        Standing::Running { left_ms: 1 } => 1,
        Standing::Running { .. } => 0,
        Standing::Over { since_ms: 0 } => 2,
        Standing::Over { .. } => 3,
        Standing::AskTime => 4,
    };
    (bucket, wait.is_within(now))
}

/// What two states must share to count as one: everything that can still matter, and of times only the side of
/// their deadline they are on. Once the oil is out for good, what only mattered to the draw no longer does.
pub fn key(node: &Node) -> u64 {
    let mut h = DefaultHasher::new();
    let now = &node.now;
    let aud = &node.aud;
    (node.waited, node.runs.min(2), node.scene.pans[0].place).hash(&mut h);
    let last = between(&aud.last, now);
    (bucket(last, 5 * MINUTE), bucket(last, 20 * MINUTE)).hash(&mut h);
    (
        aud.who,
        aud.beside,
        aud.run_open,
        aud.trouble,
        aud.faulty,
        aud.level,
        aud.place,
        aud.pump,
        aud.went,
        aud.came_out,
    )
        .hash(&mut h);
    let Some(job) = node.guide.job() else {
        return h.finish();
    };
    if node.over() {
        // Nothing of the pan matters any more, only how far the putting away is.
        let mut h = DefaultHasher::new();
        (aud.place, aud.run_open, job.done.is_empty(), job.away).hash(&mut h);
        return h.finish();
    }
    let run = job.run.as_ref();
    // What stood in the machine waits for its heater on its way back, too.
    if run.is_some_and(|run| run.came_out) || aud.came_out {
        heater_key(node, &mut h);
    }
    (job.who, job.supervisor, job.machine, job.done.len().min(2), job.away).hash(&mut h);
    (run.is_none() && job.sound_checked).hash(&mut h);
    let may_still_draw = run.is_none_or(|run| {
        let steps = node.guide.run_steps(run);
        let over = steps
            .iter()
            .position(|s| matches!(s.id, StepId::Remainder | StepId::EmptyByHand));
        over.is_none_or(|over| run.at <= over)
    });
    for hold in [Hold::Person, Hold::Kit, Hold::Match, Hold::Floor, Hold::Dry, Hold::Room] {
        if may_still_draw || matches!(hold, Hold::Person | Hold::Kit | Hold::Match) {
            (aud.standing.contains(&hold), job.stands(hold, now)).hash(&mut h);
        }
    }
    if may_still_draw {
        draw_key(node, &mut h);
    }
    if let Some(run) = run {
        (run.at, run.phase, run.place, run.contents, run.pump, run.heat, run.form).hash(&mut h);
        (
            run.drawn,
            run.fault,
            run.came_out,
            run.stopped,
            run.level,
            run.silent(&job.touched, now),
        )
            .hash(&mut h);
    }
    h.finish()
}

/// What only matters while a draw may still come.
fn draw_key(node: &Node, h: &mut DefaultHasher) {
    let now = &node.now;
    let aud = &node.aud;
    (aud.strange, aud.heat_off, aud.quiet, aud.label).hash(h);
    let reading = aud.reading.map(|(dc, read, real)| {
        let apart = (now.wall.0 - read.wall.0) - (now.mono - read.mono);
        let age = bucket(between(&read, now).max(node.real - real), 5 * MINUTE);
        (dc < 390, dc > 1_800, age, apart.signum(), apart.abs() > 2_000)
    });
    reading.hash(h);
    (aud.melted, aud.machine).hash(h);
    heater_key(node, h);
    let Some(job) = node.guide.job() else { return };
    (job.held, job.strange, job.is_idle(now)).hash(h);
    job.run.as_ref().and_then(|r| r.reading).map(|r| r.counts(now)).hash(h);
}

/// The machine's warm-up, as both know it.
fn heater_key(node: &Node, h: &mut DefaultHasher) {
    let (now, aud) = (&node.now, &node.aud);
    match aud.heater {
        Heater::Cold => 0.hash(h),
        Heater::On { credit_ms, real, .. } => (1, bucket(credit_ms + node.real - real, 10 * MINUTE)).hash(h),
        Heater::Off { since, real } => (2, bucket(between(&since, now).max(node.real - real), 20 * MINUTE)).hash(h),
    }
    let Some(job) = node.guide.job() else { return };
    match job.warm {
        Warm::Cold => 0.hash(h),
        Warm::On(wait) => (1, stands(&wait, now), bucket(-wait.due().since(now.wall), 20 * MINUTE)).hash(h),
        Warm::Off(wait) => (2, stands(&wait, now)).hash(h),
    }
}
