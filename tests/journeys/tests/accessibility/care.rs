//! Every step of oil change and boil-out, and the pages beside them, with a picture of each.

use journeys::{Look, Outcome, Phone, SMALL, Sight, TALL, Walker, journey_on, no_complaints};
use std::collections::BTreeSet;

/// Looks closely at a page that is not a step, and takes its picture on both phones.
async fn inspect_page(phone: &mut Phone, name: &str, all: &mut Vec<String>) -> Outcome {
    all.extend(phone.complaints(name, Look::STEP).await?);
    shoot(phone, name).await
}

async fn shoot(phone: &mut Phone, name: &str) -> Outcome {
    for (screen, wide) in [(SMALL, 360), (TALL, 412)] {
        phone.fit(screen).await?;
        phone.shot(&format!("care-{name}-{wide}")).await?;
    }
    Ok(())
}

/// The same as [`inspect`], with a picture of each sight.
async fn inspect_and_shoot(
    phone: &mut Phone,
    walker: &Walker,
    (seen, all): (&mut BTreeSet<String>, &mut Vec<String>),
    there: impl Fn(&Sight) -> bool,
) -> Outcome<Sight> {
    walker
        .walk(phone, there, async |phone, sight| {
            let name = sight.name();
            if seen.insert(name.clone()) {
                inspect_page(phone, &name, all).await?;
            }
            Ok(())
        })
        .await
}

#[tokio::test]
async fn every_step_of_an_oil_change_keeps_its_promises() -> Outcome {
    journey_on("every_step_of_an_oil_change", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new()
            .picks("HL")
            .says("out_way", "cut_out")
            .types("oil_dc", "25");
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        let pan = phone.address_of("pan-3").await?;
        phone.go(&pan).await?;
        phone.press("pan-oil_change").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.how")).await?;
        phone.press("stop").await?;
        inspect_page(phone, "oil-change-stopped", &mut all).await?;
        phone.press("somebody-else").await?;
        inspect_page(phone, "oil-change-who", &mut all).await?;
        phone.press("person-HL").await?;
        let hot = walker.clone().types("oil_dc", "90").says("carry", "alone");
        inspect_and_shoot(phone, &hot, (&mut seen, &mut all), |sight| sight.at("refused")).await?;
        phone.press("refusal-back").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("out.container")).await?;
        let alone = walker.clone().says("carry", "alone");
        inspect_and_shoot(phone, &alone, (&mut seen, &mut all), |sight| sight.at("load")).await?;
        phone.number("pad-load", "9").await?;
        inspect_page(phone, "too-heavy", &mut all).await?;
        phone.press("refusal-back").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("count")).await?;
        phone.tap("add-reason-0").await?;
        phone.number("add-pad", "30").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.fat")).await?;
        phone.tap("other-fats").await?;
        inspect_page(phone, "other-fats", &mut all).await?;
        phone.press("fat-palm").await?;
        let over = inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("change.pack")).await?;
        assert!(over.has("other-fat"), "{over:?}");
        phone.press("other-fat").await?;
        phone.press("fat-own").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("count")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}

#[tokio::test]
async fn every_step_of_a_boil_out_keeps_its_promises() -> Outcome {
    journey_on("every_step_of_a_boil_out", TALL, async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new().picks("HL");
        let (mut seen, mut all) = (BTreeSet::new(), Vec::new());
        let pan = phone.address_of("pan-1").await?;
        phone.go(&pan).await?;
        phone.press("pan-boil_out").await?;
        phone.press("person-HL").await?;
        inspect_page(phone, "boil-out-over-oil", &mut all).await?;
        phone.press("refusal-back").await?;
        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-empty").await?;
        phone.tap("add-save").await?;
        phone.see("pan-is-empty").await?;
        phone.press("pan-boil_out").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.press("look-now").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.pass(6 * 60_000).await?;
        phone.sees("pan-empty", "LOOK NOW").await?;
        phone.sees("boil-clock", "late").await?;
        inspect_page(phone, "boil-look-due", &mut all).await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil")).await?;
        phone.press("heat-off").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("boil.cool")).await?;
        phone.press("heat-again").await?;
        inspect_page(phone, "heat-again", &mut all).await?;
        phone.press("leave-off").await?;
        phone.press("stop").await?;
        inspect_page(phone, "boil-out-stopped", &mut all).await?;
        phone.press("leave-pan").await?;
        inspect_page(phone, "boil-out-leave", &mut all).await?;
        phone.press("stop").await?;
        phone.press("back").await?;
        phone.go("today").await?;
        phone.press("begin").await?;
        inspect_and_shoot(phone, &walker, (&mut seen, &mut all), |sight| sight.at("done")).await?;
        println!("{} sights", seen.len());
        no_complaints(&all)
    })
    .await
}
