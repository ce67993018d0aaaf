//! A whole filter job, two pans in each form: the touches it costs, and the evidence it leaves in the export.

use crate::evidence::{holds_left_their_evidence, of_the_job, runs};
use journeys::{Outcome, SMALL, Sight, Stage, Walker, journey, journey_on, kitchen_with, saw, times_seen};
use panward::domain::facts::setup::OutBy;

/// Touches a clean job may cost: the project's own design.
const TO_FIRST_INSTRUCTION: u32 = 2;
const READY: u32 = 24;
const PAN_LONG: u32 = 32;
const PAN_SHORT: u32 = 14;
const PUT_AWAY: u32 = 12;

fn choosing(sight: &Sight) -> bool {
    sight.at("choose")
}

/// From Today to the first instruction, and through Ready until a pan is to be chosen.
async fn ready(stage: &mut Stage, walker: &Walker) -> Outcome {
    let phone = &mut stage.phone;
    phone.go("today").await?;
    phone.forget_touches();
    phone.press("job-filter").await?;
    phone.press("begin-job").await?;
    let first = phone.forget_touches();
    assert!(
        first <= TO_FIRST_INSTRUCTION,
        "{first} touches to the first instruction"
    );
    walker.until(phone, choosing).await?;
    let ready = phone.forget_touches();
    println!("Ready {ready}");
    assert!(ready <= READY, "Ready takes {ready} touches, {READY} at most");
    Ok(())
}

/// One pan, begun and left; its touches are counted from the one that begins it.
async fn pan(stage: &mut Stage, walker: &Walker, pan: &str, most: u32) -> Outcome {
    let phone = &mut stage.phone;
    phone.forget_touches();
    phone.press(&format!("begin-{pan}")).await?;
    walker.until(phone, choosing).await?;
    let touches = phone.forget_touches();
    println!("pan {pan}: {touches}");
    assert!(touches <= most, "pan {pan} takes {touches} touches, {most} at most");
    Ok(())
}

/// Asks for everything the next pan can have: it is rinsed unless told otherwise.
async fn everything(stage: &mut Stage) -> Outcome {
    for part in ["with-wipe", "with-samples"] {
        stage.phone.tap(part).await?;
    }
    Ok(())
}

async fn put_away(stage: &mut Stage, walker: &Walker) -> Outcome {
    let phone = &mut stage.phone;
    phone.forget_touches();
    phone.press("put-away").await?;
    walker.until(phone, |sight| sight.has("screen-today")).await?;
    let touches = phone.forget_touches();
    println!("put away {touches}");
    assert!(
        touches <= PUT_AWAY,
        "putting away takes {touches} touches, {PUT_AWAY} at most"
    );
    Ok(())
}

/// Every run of a finished job with the job's own entries holds what the holds ask for; `parts` of rinse and wipe, each
/// with a look at heat of its own, were in it.
async fn evidence(stage: &mut Stage, before: usize, out_by: OutBy, form: &str, parts: usize) -> Outcome {
    let export = stage.export().await?;
    let new = export.since(before);
    let job = of_the_job(new);
    let runs: Vec<_> = runs(new)
        .into_iter()
        .filter(|run| run.first().is_some_and(|first| first["body"]["form"] == form))
        .collect();
    assert_eq!(runs.len(), 2, "two runs in the {form} form");
    for run in runs {
        let all: Vec<_> = job.iter().chain(&run).cloned().collect();
        holds_left_their_evidence(&all, out_by)?;
        let off = run
            .iter()
            .filter(|entry| entry["body"]["evidence"]["knob"] == "off" && entry["body"]["evidence"]["flame"] == "out")
            .count();
        assert_eq!(
            off,
            2 + parts,
            "heat is looked at before the draw, a wipe, a rinse and the return"
        );
    }
    assert_eq!(times_seen(&job, "line", "run_empty"), 1);
    assert!(
        saw(&job, "machine_plug", "out") && saw(&job, "spent_filter", "on_tray"),
        "{job:?}"
    );
    Ok(())
}

#[tokio::test]
async fn two_pans_in_the_long_form() -> Outcome {
    journey("filter_long", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let before = stage.export().await?.entries().len();
        let walker = Walker::new();
        ready(stage, &walker).await?;
        for name in ["1", "2"] {
            everything(stage).await?;
            pan(stage, &walker, name, PAN_LONG).await?;
            stage.phone.see("run-done").await?;
        }
        put_away(stage, &walker).await?;
        evidence(stage, before, OutBy::Nozzle, "long", 2).await?;
        let export = stage.export().await?;
        let sampled = times_seen(export.since(before), "sample", "taken");
        assert_eq!(sampled, 4, "two samples of each pan");
        assert_eq!(times_seen(export.since(before), "compared", "better"), 2);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn two_pans_in_the_short_form() -> Outcome {
    journey("filter_short", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let walker = Walker::new().picks("BO").picks("Filter machine");
        ready(stage, &walker).await?;
        // The last night ended with dripping: the machine warms first, and the first pan of another fat takes the long
        // form.
        stage.phone.pass(10 * 60_000).await?;
        walker.until(&mut stage.phone, |sight| sight.at("choose")).await?;
        pan(stage, &walker, "1", PAN_LONG).await?;
        for name in ["2", "1"] {
            // The rinse is offered ticked; the promise for the short form is one without.
            stage.phone.tap("with-rinse").await?;
            pan(stage, &walker, name, PAN_SHORT).await?;
        }
        put_away(stage, &walker).await?;
        evidence(stage, before, OutBy::Nozzle, "short", 0).await
    })
    .await
}

#[tokio::test]
async fn a_machine_the_oil_is_drained_to() -> Outcome {
    journey("filter_drain", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Drain).await?).await?;
        let before = stage.export().await?.entries().len();
        let walker = Walker::at(OutBy::Drain);
        ready(stage, &walker).await?;
        for name in ["1", "2"] {
            everything(stage).await?;
            pan(stage, &walker, name, PAN_LONG).await?;
        }
        put_away(stage, &walker).await?;
        evidence(stage, before, OutBy::Drain, "long", 2).await
    })
    .await
}

#[tokio::test]
async fn stop_on_a_refusal_makes_safe_at_once() -> Outcome {
    journey("stop_on_a_refusal", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let walker = Walker::new();
        ready(stage, &walker).await?;
        let phone = &mut stage.phone;
        phone.press("begin-1").await?;
        walker.clone().types("oil_dc", "60").to_step(phone, "refused").await?;
        let stopped = phone.press("stop").await?;
        assert!(stopped.at("stopped") && stopped.has("make-safe"), "{stopped:?}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_smallest_screen_shows_what_the_label_is_compared_with() -> Outcome {
    journey_on("label_small", SMALL, async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let walker = Walker::new();
        ready(stage, &walker).await?;
        let asked = stage.phone.press("begin-1").await?;
        assert!(asked.has("answer-label-same"), "{asked:?}");
        stage.phone.sees("step", "Pan 1: Rapeseed").await
    })
    .await
}
