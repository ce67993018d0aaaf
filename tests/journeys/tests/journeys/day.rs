//! Light-up and lock-up: pans lit one by one, scraps left outdoors with a look that the morning asks about.

use journeys::{Outcome, Phone, Walker, journey, kitchen_with, saw, until};
use panward::domain::facts::setup::OutBy;

const HOUR_MS: i64 = 3_600_000;
const MINUTE_MS: i64 = 60_000;

/// Lights every pan of oil in the range and ends the light-up.
async fn light(phone: &mut Phone, walker: &Walker, pans: &[&str]) -> Outcome {
    for pan in pans {
        phone.press(&format!("light-{pan}")).await?;
        walker.to_step(phone, "pans").await?;
    }
    phone.press("end-light").await.map(drop)
}

#[tokio::test]
async fn a_lock_up_is_left_open_and_looked_at_in_the_morning() -> Outcome {
    journey("lock_up_left_open", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let walker = Walker::new().picks("HL");
        let phone = &mut stage.phone;
        phone.go("lock-up").await?;
        walker.to_step(phone, "lock.scraps").await?;
        phone.press("scraps-warm").await?;
        walker.to_step(phone, "looker").await?;
        phone.press("person-HL").await?;
        phone.press("look-in-30").await?;
        walker.until(phone, |sight| sight.has("screen-today")).await?;

        let left = stage.export().await?;
        let left = left.since(before);
        assert!(saw(left, "scraps", "thin_outdoors"), "{left:?}");
        assert!(
            left.iter().any(|entry| entry["body"]["event"] == "left_open"),
            "{left:?}"
        );

        let phone = &mut stage.phone;
        phone.pass(11 * HOUR_MS).await?;
        phone.reload().await?;
        phone.go("light-up").await?;
        walker.to_step(phone, "light.found").await?;
        walker.until(phone, |sight| !sight.at("light.found")).await?;
        let morning = stage.export().await?;
        assert!(saw(morning.since(before), "found", "cold"));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn another_screen_begins_at_its_top() -> Outcome {
    journey("screen_top", async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        phone.run("scrollTo(0, 150)", &[]).await?;
        phone.press("tab-log").await?;
        phone.see("screen-log").await?;
        until("the log to stand at its top", async || {
            Ok((phone.run("return scrollY", &[]).await? == 0).then_some(()))
        })
        .await
    })
    .await
}

#[tokio::test]
async fn a_lock_up_says_that_scraps_are_still_hot() -> Outcome {
    journey("lock_up_hot", async |stage| {
        stage.demo().await?;
        let walker = Walker::new().picks("HL");
        let phone = &mut stage.phone;
        phone.go("lock-up").await?;
        walker.to_step(phone, "lock.scraps").await?;
        phone.sees("step", "Under 40").await?;
        phone.number("pad-heap_dc", "55").await?;
        phone.sees("step", "Still hot: 55").await?;
        phone.press("scraps-warm").await.map(drop)
    })
    .await
}

#[tokio::test]
async fn a_day_is_locked_up_with_scraps_proven_cold_and_lit_again() -> Outcome {
    journey("lock_up_cold", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let before = stage.export().await?.entries().len();
        let walker = Walker::new();
        let phone = &mut stage.phone;
        phone.go("light-up").await?;
        walker.to_step(phone, "pans").await?;
        light(phone, &walker, &["1", "2"]).await?;
        phone.see("screen-today").await?;

        phone.go("lock-up").await?;
        // Ten minutes must pass between the two readings, whatever else is done meanwhile.
        walker.to_step(phone, "wait").await?;
        phone.pass(9 * MINUTE_MS).await?;
        assert!(phone.settled().await?.at("wait"), "nine minutes are not ten");
        phone.pass(2 * MINUTE_MS).await?;
        until("the second probe to be asked for", async || {
            Ok((!phone.sight().await?.at("wait")).then_some(()))
        })
        .await?;
        walker.until(phone, |sight| sight.has("screen-today")).await?;
        let export = stage.export().await?;
        let new = export.since(before);
        for item in ["heap_dc", "heap_again_dc"] {
            assert!(
                new.iter().any(|entry| entry["body"]["evidence"][item].is_number()),
                "{item}: {new:?}"
            );
        }
        assert!(saw(new, "lid", "in_place") && saw(new, "floor", "dry"));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_starter_lights_the_range_only_beside_somebody_signed_off() -> Outcome {
    journey("light_up_starter", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("light-up").await?;
        let beside = phone.press("person-NS").await?;
        assert!(beside.has("person-HL") && beside.has("person-BO"), "{beside:?}");
        assert!(!beside.has("person-NS") && !beside.has("person-TW"), "{beside:?}");
        let lit = phone.press("person-HL").await?;
        assert!(lit.at("pans"), "{lit:?}");
        let export = stage.export().await?;
        assert!(saw(export.since(before), "sign_off", "supervised"));
        Ok(())
    })
    .await
}
