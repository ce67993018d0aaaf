//! The browser killed on every step of a filter job and started again with the network gone: with a pan in hand the
//! look again comes first, then the very step it was killed on, and every clock goes on from where it began.

use journeys::{Outcome, Sight, Stage, Walker, journey, kitchen_with};
use panward::domain::facts::setup::OutBy;
use panward::domain::procedure::{Block, Step, StepId, Tables};
use std::collections::BTreeSet;

const MINUTE_MS: i64 = 60_000;
/// Steps that are asked in one with the step after them.
const IN_ONE: [StepId; 2] = [StepId::Match, StepId::SampleBack];

/// Where somebody sees the oil who looks again, and the steps that lead back to the one that was killed, itself last.
fn after(step: &str) -> (&'static str, Vec<&str>) {
    match step {
        // A reading of before the kill counts no longer.
        "out.connect" => ("in_pan", vec!["out.oil_temp", step]),
        // The pump is off: what is left in the pan is looked at, and the draw goes on through all its holds.
        "out.draw" => ("split", vec!["out.remainder", "out.oil_temp", "out.connect", step]),
        "out.remainder" | "return.wipe" | "return.rinse" | "return.compare" | "return.give_back" => {
            ("in_machine", vec![step])
        }
        // Oil that moved goes back the safe way, its pump asked for before anything.
        "return.rinsing" => ("in_machine", vec!["return.give_back"]),
        "return.returning" => ("split", vec!["return.give_back", step]),
        // No level of before the kill opens a hold.
        "return.leave" => ("in_pan", vec!["return.level", step]),
        _ => ("in_pan", vec![step]),
    }
}

/// The place the log has it at a step, as the answer that stands first says it.
fn known(step: &str) -> &'static str {
    match step {
        // Begun to move, and not yet seen to be all there.
        "out.draw" | "out.remainder" | "return.rinsing" | "return.returning" | "return.tank" => "split",
        _ => after(step).0,
    }
}

/// Kills the browser, starts it again without network, answers what is asked anew and stands where it stood.
async fn killed(stage: &mut Stage, walker: &Walker, step: &str, in_hand: bool) -> Outcome<Sight> {
    let clock = stage.phone.sight().await?.has("clock");
    stage.kill_and_open().await?;
    let phone = &mut stage.phone;
    phone.see("screen-today").await?;
    let first = phone.press("begin").await?;
    if !in_hand {
        assert!(first.at(step), "killed at {step}, it goes on with {:?}", first.step);
        return Ok(first);
    }
    assert!(
        first.at("again.look") && first.has("answer-pump-off"),
        "killed at {step}, it goes on with {}",
        first.name()
    );
    assert!(!first.has("clock"), "a clock runs for a pump nobody has looked at");
    let (place, way) = after(step);
    let looks = walker.clone().says("place", place);
    let asked = looks.until(phone, |sight| sight.has("answer-place-split")).await?;
    let places = asked.things.iter().find(|thing| thing.id.starts_with("answer-place-"));
    assert_eq!(
        places.map(|thing| thing.id.clone()),
        Some(format!("answer-place-{}", known(step))),
        "killed at {step}, what the log knows does not stand first"
    );
    let mut sight = looks.until(phone, |sight| !sight.at("again.look")).await?;
    // What is asked on the way back, and nothing besides.
    for expected in way {
        assert!(sight.at(expected), "killed at {step}, it goes on with {}", sight.name());
        if sight.at(step) || expected == "return.give_back" {
            break;
        }
        let going_on = if expected == "out.remainder" { "oil" } else { "film" };
        let walker = walker.clone().says("remainder", going_on);
        sight = walker.until(phone, |sight| !sight.at(expected)).await?;
    }
    if clock && sight.at(step) {
        // Another start of the pump: its clock is as old as that.
        phone.sees("clock", "0:0").await?;
    }
    Ok(sight)
}

/// Works a whole job, killed once on each step `on` names; the rest is walked.
async fn killed_on(name: &str, on: impl Fn(&Step) -> bool) -> Outcome {
    journey(name, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        stage.phone.keeps_the_app().await?;
        stage.site.stop();
        let tables = [Tables::REAL.ready, Tables::REAL.nozzle, Tables::REAL.away];
        let wanted: BTreeSet<&str> = tables
            .into_iter()
            .flatten()
            // The label is asked on the same hold as heat off, which gives it its name; nothing has set in this line.
            .filter(|step| !IN_ONE.contains(&step.id) && step.id != StepId::WarmUp && on(step))
            .map(|step| step.id.key())
            .collect();
        let mut left = wanted.clone();
        let walker = Walker::new();
        stage.phone.go("filter").await?;
        stage.phone.press("begin-job").await?;
        let mut begun = false;
        let mut sight = stage.phone.settled().await?;
        while !sight.has("screen-today") && !left.is_empty() {
            let step = sight.step.clone().unwrap_or_default();
            if step == "choose" && !begun {
                for part in ["with-wipe", "with-samples"] {
                    stage.phone.tap(part).await?;
                }
                begun = true;
                sight = stage.phone.press("begin-1").await?;
            } else if step == "choose" {
                sight = stage.phone.press("put-away").await?;
            } else if left.remove(step.as_str()) {
                if sight.has("clock") {
                    stage.phone.pass(MINUTE_MS / 2).await?;
                    stage.phone.sees("clock", "0:3").await?;
                }
                let in_hand = step.starts_with("out.") || step.starts_with("return.");
                sight = killed(stage, &walker, &step, in_hand).await?;
            } else {
                sight = walker.one(&mut stage.phone).await?;
            }
        }
        assert!(left.is_empty(), "never stood on {left:?}");
        println!("{name}: killed on {} steps", wanted.len());
        Ok(())
    })
    .await
}

/// A step at which oil moves.
fn moving(step: &Step) -> bool {
    step.timer.is_some()
}

// Three parts, to be played side by side; between them every step of the tables.
#[tokio::test]
async fn on_every_step_of_ready_and_pump_out() -> Outcome {
    killed_on("resume_out", |step| {
        matches!(step.block, Block::Ready | Block::PumpOut) && !moving(step)
    })
    .await
}

// Killed in its rinse a pan gives its oil back without a second sample, so that step is stood on by another.
#[tokio::test]
async fn on_every_step_of_the_return() -> Outcome {
    killed_on("resume_return", |step| step.block == Block::Return && !moving(step)).await
}

#[tokio::test]
async fn wherever_oil_moves_and_on_every_step_of_putting_away() -> Outcome {
    killed_on("resume_away", |step| {
        moving(step) || !matches!(step.block, Block::Ready | Block::PumpOut | Block::Return)
    })
    .await
}

#[tokio::test]
async fn with_every_wait_counted_from_where_it_began() -> Outcome {
    journey("resume_clocks", async |stage| {
        stage.demo().await?;
        stage.phone.keeps_the_app().await?;
        stage.site.stop();
        let walker = Walker::new().picks("HL").picks("Filter machine");
        stage.phone.go("filter").await?;
        stage.phone.press("begin-job").await?;
        walker.to_step(&mut stage.phone, "choose").await?;
        // Four of the machine's ten minutes, a kill, and somebody who says that the time is right.
        stage.phone.pass(4 * MINUTE_MS).await?;
        stage.phone.sees("warm-up", "5:").await?;
        time_is_right(stage, 0).await?;
        stage.phone.sees("warm-up", "5:").await?;
        // Idle for fifteen minutes before the kill and for twelve after it: as long as it takes to ask for kit again.
        stage.phone.pass(15 * MINUTE_MS).await?;
        stage.phone.sees("warm-up", "Machine warm").await?;
        time_is_right(stage, 12).await?;
        stage.phone.sees("warm-up", "Machine warm").await?;
        let sight = stage.phone.settled().await?;
        assert!(sight.at("ready.kit"), "after 27 idle minutes: {}", sight.name());
        Ok(())
    })
    .await
}

/// A kill, so many minutes, and the question whether the time shown is right, answered with yes.
async fn time_is_right(stage: &mut Stage, minutes: i64) -> Outcome {
    stage.kill_and_open().await?;
    stage.phone.pass(minutes * MINUTE_MS).await?;
    stage.phone.press("begin").await?;
    stage.phone.press("answer-clock-yes").await.map(drop)
}
