//! The morning after: what nobody wrote down is asked for, in two touches.

use journeys::{Outcome, journey, kitchen_with};
use panward::domain::facts::setup::OutBy;

const HOUR_MS: i64 = 3_600_000;

#[tokio::test]
async fn yesterday_was_done_without_the_guide() -> Outcome {
    journey("yesterday_unguided", async |stage| {
        stage.kitchen(&kitchen_with(OutBy::Nozzle).await?).await?;
        let before = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        phone.pass(11 * HOUR_MS).await?;
        phone.go("today").await?;
        phone.see("night-question").await?;
        phone.forget_touches();
        phone.press("last-night").await?;
        phone.press("night-all-unguided").await?;
        assert_eq!(phone.forget_touches(), 2);
        phone.go("today").await?;
        phone.gone("night-question").await?;

        let export = stage.export().await?;
        let noted: Vec<_> = export
            .since(before)
            .iter()
            .filter(|entry| entry["body"]["how"] == "unguided")
            .collect();
        assert_eq!(noted.len(), 2, "a word for each pan: {:?}", export.since(before));
        for entry in noted {
            let at = entry["at"].as_str().unwrap_or_default();
            assert!(
                at.starts_with("2026-06-10") || at.starts_with("2026-06-11T0"),
                "dated {at}"
            );
            assert!(entry["body"]["evidence"].is_null(), "an unguided record proves no hold");
        }
        Ok(())
    })
    .await
}
