//! Pictures of the main screens, to be looked at: `target/shots/`. The README's comes from here.

use journeys::{Outcome, Phone, SMALL, Screen, TALL, Walker, journey};

/// The owner's desk.
const WIDE: Screen = Screen {
    width: 1280,
    height: 800,
};

#[tokio::test]
async fn of_the_main_screens() -> Outcome {
    journey("shots", async |stage| {
        stage.evening().await?;
        stage.phone.shot("first").await?;
        stage.demo().await?;
        let phone = &mut stage.phone;
        let pan = phone.address_of("pan-1").await?;
        // Later than the usual closing, when the filter job is what is next.
        let today = phone.shot("today").await?;
        assert!(std::fs::metadata(today)?.len() > 5_000, "an empty picture");
        for address in ["today", &pan, "log", "office"] {
            phone.go(address).await?;
            phone.settled().await?;
            let name = address.split('/').next().unwrap_or_default();
            everywhere(phone, name).await?;
        }
        let walker = Walker::new().picks("HL").picks("Filter machine");
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        walker.until(phone, |sight| sight.at("choose")).await?;
        phone.shot("filter-choose").await?;
        // The machine held dripping last: it warms first.
        phone.pass(10 * 60_000).await?;
        walker.until(phone, |sight| sight.at("choose")).await?;
        phone.press("begin-1").await?;
        for step in ["out.connect", "out.draw", "return.give_back", "return.returning"] {
            walker.to_step(phone, step).await?;
            for (size, screen) in [("412x915", TALL), ("360x640", SMALL)] {
                phone.fit(screen).await?;
                phone.shot(&format!("filter-{step}-{size}")).await?;
            }
            phone.fit(TALL).await?;
        }
        Ok(())
    })
    .await
}

/// The screen as it stands on every phone and ground, and with large text.
async fn everywhere(phone: &mut Phone, name: &str) -> Outcome {
    for (size, screen) in [("412x915", TALL), ("360x640", SMALL), ("1280x800", WIDE)] {
        phone.fit(screen).await?;
        for (ground, dark) in [("light", false), ("dark", true)] {
            phone.set_dark(dark).await?;
            phone.shot(&format!("{name}-{size}-{ground}")).await?;
        }
    }
    phone.set_dark(false).await?;
    phone.fit(TALL).await?;
    phone.set_text_size(200).await?;
    phone.shot(&format!("{name}-412x915-text-200")).await?;
    phone.set_text_size(100).await
}

#[tokio::test]
async fn of_a_boil_out_and_an_oil_change() -> Outcome {
    journey("care_shots", async |stage| {
        stage.demo().await?;
        let phone = &mut stage.phone;
        let walker = Walker::new()
            .picks("HL")
            .says("out_way", "cut_out")
            .types("oil_dc", "25");
        let pan = phone.address_of("pan-1").await?;
        let other = phone.address_of("pan-3").await?;
        phone.go(&pan.replacen("pan/", "add/", 1)).await?;
        phone.tap("add-kind-oil_change").await?;
        everywhere(phone, "care-add").await?;
        phone.tap("add-reason-0").await?;
        phone.tap("add-after-empty").await?;
        phone.tap("add-save").await?;
        phone.see("pan-is-empty").await?;
        phone.press("pan-boil_out").await?;
        walker.to_step(phone, "boil").await?;
        everywhere(phone, "care-boil").await?;
        phone.press("look-now").await?;
        everywhere(phone, "care-boil-look").await?;
        phone.go(&other).await?;
        phone.press("pan-oil_change").await?;
        walker.to_step(phone, "out.container").await?;
        everywhere(phone, "care-container").await?;
        walker.to_step(phone, "count").await?;
        everywhere(phone, "care-count").await?;
        phone.tap("add-reason-0").await?;
        phone.number("add-pad", "30").await?;
        phone.settled().await?;
        for (address, name) in [
            ("today", "care-today"),
            (pan.as_str(), "care-pan-water"),
            (other.as_str(), "care-pan"),
        ] {
            phone.go(address).await?;
            phone.settled().await?;
            everywhere(phone, name).await?;
        }
        Ok(())
    })
    .await
}
