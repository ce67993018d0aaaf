//! axe-core on every screen, light and dark, at the usual text size and twice that.

use journeys::{Outcome, SMALL, journey_on};

#[tokio::test]
async fn today_is_accessible() -> Outcome {
    journey_on("axe_today", SMALL, async |stage| {
        stage.open().await?;
        for dark in [false, true] {
            for per_cent in [100, 200] {
                stage.phone.set_dark(dark).await?;
                stage.phone.set_text_size(per_cent).await?;
                stage
                    .phone
                    .accessible(&format!("today, dark {dark}, text {per_cent} %"))
                    .await?;
            }
        }
        Ok(())
    })
    .await
}
