//! The browser killed on every step of a run and started again with the network gone: look again first, then the very
//! step it was killed on.

use journeys::{Outcome, Sight, Stage, Walker, journey, kitchen_with};
use panward::domain::facts::setup::OutBy;
use panward::domain::procedure::{StepId, Tables};
use std::collections::BTreeSet;

/// Where the oil is while a step is asked: what somebody sees who looks again.
fn place_at(step: &str) -> &'static str {
    match step {
        "out.remainder" | "return.wipe" | "return.rinse" | "return.sample" | "return.give_back" => "in_machine",
        _ => "in_pan",
    }
}

/// Kills the browser, starts it again without network and answers what is asked anew; returns what stands then.
async fn killed(stage: &mut Stage, walker: &Walker, at: &str, in_hand: bool) -> Outcome<Sight> {
    stage.kill_and_open().await?;
    let phone = &mut stage.phone;
    phone.see("screen-today").await?;
    phone.press("begin").await?;
    let first = phone.settled().await?;
    assert!(
        first.step.is_some(),
        "killed at {at}, the app did not come back to its job: {first:?}"
    );
    if in_hand {
        assert!(
            first.at("again.look"),
            "killed at {at}, the guide goes on with {:?}",
            first.step
        );
        assert!(
            first.has("answer-pump-off"),
            "killed at {at}, the pump is not asked about"
        );
    }
    let walker = walker.clone().says("place", place_at(at));
    let there = walker.until(phone, |sight| sight.at(at)).await?;
    assert!(!first.at("again.look") || !there.at("again.look"));
    Ok(there)
}

#[tokio::test]
async fn on_every_step_of_a_filter_job() -> Outcome {
    journey("resume_everywhere", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        stage.phone.keeps_the_app().await?;
        stage.site.stop();
        let phone = &mut stage.phone;
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        let walker = Walker::new();
        let mut visited = BTreeSet::new();
        let mut sight = phone.settled().await?;
        let mut begun = false;
        while !sight.has("screen-today") {
            let step = sight.step.clone().unwrap_or_default();
            if step == "choose" {
                let on = if begun { "put-away" } else { "begin-1" };
                if !begun {
                    for part in ["with-wipe", "with-samples"] {
                        stage.phone.tap(part).await?;
                    }
                }
                begun = true;
                sight = stage.phone.press(on).await?;
                continue;
            }
            // While oil moves the look again leads to its safe way back: told by its own journey.
            let moving = ["out.draw", "return.rinsing", "return.returning"].contains(&step.as_str());
            if visited.insert(step.clone()) && !moving {
                let in_hand = step.starts_with("out.") || step.starts_with("return.");
                sight = killed(stage, &walker, &step, in_hand).await?;
                continue;
            }
            sight = walker.one(&mut stage.phone).await?;
        }
        let tables = [Tables::REAL.ready, Tables::REAL.nozzle, Tables::REAL.away];
        let missed: Vec<_> = tables
            .into_iter()
            .flatten()
            // The match is asked on the same hold as heat off, which gives it its name.
            .filter(|step| step.id != StepId::Match && !visited.contains(step.id.key()))
            .map(|step| step.id.key())
            .collect();
        assert!(missed.is_empty(), "never stood on {missed:?}");
        Ok(())
    })
    .await
}
