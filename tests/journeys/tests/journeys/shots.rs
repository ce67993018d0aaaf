//! Pictures of the main screens, to be looked at: `target/shots/`. The README's comes from here.

use journeys::{Outcome, SMALL, Screen, TALL, Walker, journey};

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
            phone.set_text_size(100).await?;
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
