//! Oil change and boil-out: a pan of dripping from old to fresh, a boil-out through a power cut, oil pumped out hot and
//! let out of the machine cold.

use journeys::{Outcome, Phone, Walker, journey, kitchen_with, saw};
use panward::domain::facts::setup::OutBy;

const MINUTE_MS: i64 = 60_000;
const HOUR_MS: i64 = 60 * MINUTE_MS;

/// How much, counted in a unit, and the reason where one is asked.
async fn counts(phone: &mut Phone, unit: &str, pack: Option<&str>, number: &str) -> Outcome {
    if phone.look("add-reason-0").await?.is_some() {
        phone.tap("add-reason-0").await?;
    }
    phone.tap(&format!("add-unit-{unit}")).await?;
    if let Some(pack) = pack {
        phone.enter("add-pack-size", pack).await?;
        phone.tap("add-pack-keep").await?;
    }
    phone.number("add-pad", number).await.map(drop)
}

#[tokio::test]
async fn the_oil_of_a_dripping_pan_is_changed_and_melted_in_the_light_up() -> Outcome {
    journey("oil_change", async |stage| {
        stage.demo().await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-3").await?;
        let walker = Walker::new()
            .picks("HL")
            .says("out_way", "cut_out")
            .types("oil_dc", "25");
        phone.go(&pan).await?;
        phone.press("pan-oil_change").await?;
        let ways = walker.to_step(phone, "change.how").await?;
        assert!(!ways.has("answer-out_way-by_hand"), "set at 40 °C: {ways:?}");
        phone.sees("step", "By hand is closed").await?;
        walker.to_step(phone, "count").await?;
        // Nothing typed is lost by a reload: heat and pan are looked at, and the same step is asked again.
        phone.tap("add-unit-block").await?;
        phone.reload().await?;
        let again = walker.clone().says("pan_holds", "oil");
        again.to_step(phone, "again.look").await?;
        let counted = again.to_step(phone, "count").await?;
        let block = counted.things.iter().find(|thing| thing.id == "add-unit-block");
        assert!(block.is_some_and(|thing| thing.chosen), "{counted:?}");
        counts(phone, "block", Some("12.5"), "2").await?;
        walker.to_step(phone, "change.fat").await?;
        phone.sees("pan-empty", "EMPTY").await?;
        phone.press("fat-own").await?;
        walker.to_step(phone, "count").await?;
        counts(phone, "block", None, "2").await?;
        phone.sees("say", "The oil change is complete").await?;
        phone.gone("pan-empty").await?;

        let export = stage.export().await?;
        let new = export.since(before);
        for kind in ["oil_change", "fill"] {
            assert!(new.iter().any(|entry| entry["kind"] == kind), "no {kind}: {new:?}");
        }
        assert!(
            saw(new, "by_hand", "in_container") && saw(new, "pan_inside", "dry"),
            "{new:?}"
        );
        assert!(
            saw(new, "packing", "packed") && saw(new, "stored", "drip_tray"),
            "{new:?}"
        );

        let phone = &mut stage.phone;
        phone.go("light-up").await?;
        walker.to_step(phone, "pans").await?;
        phone.press("light-3").await?;
        let set = walker.clone().says("melt", "solid");
        set.to_step(phone, "light.melt_low").await.map(drop)
    })
    .await
}

#[tokio::test]
async fn a_power_cut_in_a_boil_out_looks_at_heat_and_water_before_it_goes_on() -> Outcome {
    journey("boil_out_power_cut", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        stage.phone.keeps_the_app().await?;
        stage.site.stop();
        let phone = &mut stage.phone;
        let walker = Walker::new();
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-empty").await?;
        phone.tap("add-save").await?;
        phone.press("pan-boil_out").await?;
        walker.to_step(phone, "boil").await?;
        phone.pass(2 * MINUTE_MS).await?;
        phone.sees("clock", "2:0").await?;

        stage.kill_and_open().await?;
        let phone = &mut stage.phone;
        phone.sees("pan-empty", "WATER").await?;
        phone.sees("next", "Boil-out, pan 1").await?;
        let first = phone.press("begin").await?;
        assert!(first.at("again.look") && !first.has("clock"), "{}", first.name());
        let looks = walker.clone().says("pan_holds", "water");
        let cools = looks.until(phone, |sight| !sight.at("again.look")).await?;
        assert!(
            cools.at("boil.cool"),
            "after a look with the heat off: {}",
            cools.name()
        );
        let hot = walker.clone().types("water_dc", "70");
        hot.to_step(phone, "refused").await?;
        phone.press("refusal-back").await?;
        walker.to_step(phone, "done").await?;
        phone.sees("pan-empty", "EMPTY").await?;

        phone.go("light-up").await?;
        walker.to_step(phone, "pans").await?;
        phone.sees("light-1", "do not light").await
    })
    .await
}

#[tokio::test]
async fn a_boil_left_alone_calls_and_is_made_safe() -> Outcome {
    journey("boil_out_silent", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let phone = &mut stage.phone;
        let walker = Walker::new();
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-empty").await?;
        phone.tap("add-save").await?;
        phone.press("pan-boil_out").await?;
        walker.to_step(phone, "boil").await?;
        // The look is due: every screen says so.
        phone.go("today").await?;
        phone.pass(5 * MINUTE_MS + 1_000).await?;
        phone.sees("pan-empty", "LOOK NOW").await?;
        phone.press("begin").await?;
        let rising = walker.clone().says("foam", "rising");
        let off = rising.until(phone, |sight| sight.at("again.look")).await?;
        assert!(off.has("go-on"), "{off:?}");
        // Heat seen off, cooling; five silent minutes past a look are a stop of their own.
        let cool = walker.until(phone, |sight| sight.at("boil.cool")).await?;
        assert!(cool.has("heat-again"));
        phone.press("heat-again").await?;
        walker.to_step(phone, "boil").await?;
        phone.pass(11 * MINUTE_MS).await?;
        let sight = journeys::until("heat to be asked for", async || {
            let sight = phone.settled().await?;
            Ok(sight.at("again.look").then_some(sight))
        })
        .await?;
        assert!(!sight.has("clock"));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn oil_pumped_out_hot_waits_in_the_machine_and_is_let_out_cold() -> Outcome {
    journey("waste_cold", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.go("today").await?;
        let pan = phone.address_of("pan-1").await?;
        let walker = Walker::new().says("out_way", "pumped");
        phone.go(&pan).await?;
        phone.press("pan-oil_change").await?;
        walker.to_step(phone, "pump").await?;
        phone.press("to-filter").await?;
        phone.press("begin-job").await?;
        walker.to_step(phone, "choose").await?;
        phone.press("begin-1").await?;
        walker.to_step(phone, "return.give_back").await?;
        phone.press("stop").await?;
        phone.press("safe-now").await?;
        phone.press("leave-out").await?;
        walker.until(phone, |sight| !sight.at("again.leave_out")).await?;

        phone.go(&pan).await?;
        phone.press("pan-oil_change").await?;
        walker.to_step(phone, "count").await?;
        counts(phone, "l", None, "40").await?;
        walker.to_step(phone, "pan.exit").await?;
        phone.go("today").await?;
        phone.sees("waste", "hot oil inside").await?;
        phone.press("waste-1").await?;
        let hot = walker.clone().types("oil_dc", "90");
        hot.to_step(phone, "refused").await?;
        phone.press("refusal-back").await?;
        phone.pass(10 * HOUR_MS).await?;
        let cold = walker.clone().types("oil_dc", "25");
        cold.until(phone, |sight| sight.has("screen-today")).await?;
        phone.gone("waste").await?;

        let export = stage.export().await?;
        let new = export.since(before);
        assert!(
            saw(new, "machine_tag", "hung") && saw(new, "stored", "drip_tray"),
            "{new:?}"
        );
        Ok(())
    })
    .await
}
