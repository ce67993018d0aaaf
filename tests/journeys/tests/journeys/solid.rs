//! Solid fat: a machine that will not start beside a dripping pan, and a line that was not run empty.

use journeys::{Look, Outcome, Phone, TALL, Walker, journey_on, no_complaints};

const MINUTE_MS: i64 = 60_000;
const LOOK: Look = Look {
    axe: false,
    ..Look::STEP
};

async fn choose(phone: &mut Phone, walker: &Walker) -> Outcome {
    phone.go("filter").await?;
    phone.press("begin-job").await?;
    walker.to_step(phone, "choose").await.map(drop)
}

#[tokio::test]
async fn dripping_beside_a_dead_machine_is_left_to_set_and_tagged() -> Outcome {
    journey_on("left_to_set", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL").picks("Filter machine");
        choose(phone, &walker).await?;
        phone.press("begin-3").await?;
        phone.press("something-wrong").await?;
        phone.press("fault-will_not_start").await?;
        phone.sees("make-safe", "Tonight: not filtered").await?;
        phone.sees("make-safe", "no way out by hand").await?;
        let mut all = phone.complaints("will not start", LOOK).await?;
        phone.shot("solid-fault").await?;
        phone.press("safe-now").await?;
        phone.press("leave-set").await?;
        all.extend(phone.complaints("leave to set", LOOK).await?);
        phone.shot("solid-leave-set").await?;
        walker.until(phone, |sight| !sight.at("return.leave")).await?;
        let log = stage.export().await?;
        let ended = log.entries().iter().rev().find(|entry| entry["kind"] == "run");
        let ended = ended.map(|entry| entry["body"].clone()).unwrap_or_default();
        assert_eq!(ended["left"], "set", "{ended}");
        assert_eq!(ended["contents"], "set_fat", "{ended}");
        assert_eq!(ended["evidence"]["lid"], "in_place", "{ended}");
        assert_eq!(ended["evidence"]["tag"], "hung", "{ended}");
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn a_line_not_run_empty_is_melted_before_the_next_use() -> Outcome {
    journey_on("set_in_line", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL").picks("Filter machine");
        choose(phone, &walker).await?;
        phone.pass(10 * MINUTE_MS).await?;
        phone.press("begin-3").await?;
        walker.clone().says("left", "set").to_step(phone, "choose").await?;
        phone.press("put-away").await?;
        let mut all = phone.complaints("the line after dripping", LOOK).await?;
        let left = walker.clone().says("line", "oil");
        left.until(phone, |sight| sight.has("screen-today")).await?;

        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.to_step(phone, "ready.warm_up").await?;
        phone.sees("step", "Set in line: melt before use.").await?;
        all.extend(phone.complaints("set in line", LOOK).await?);
        phone.shot("solid-heater").await?;
        phone.press("heater-on").await?;
        let asked = walker.to_step(phone, "ready.warm_up").await?;
        assert!(
            asked.has("answer-line-all_liquid") && asked.has("answer-line-solid"),
            "{asked:?}"
        );
        all.extend(phone.complaints("the line's melt", LOOK).await?);
        phone.shot("solid-line").await?;
        // Seen melted too soon: the machine's own time is not over.
        walker.to_step(phone, "refused").await?;
        phone.press("refusal-back").await?;
        phone.pass(10 * MINUTE_MS).await?;
        walker.to_step(phone, "choose").await?;
        no_complaints(&all)
    })
    .await
}
