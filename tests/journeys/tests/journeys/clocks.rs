//! The harness itself: moved clocks stay moved across reloads, and another window has them too.

use journeys::{Outcome, journey};

const HOUR_MS: i64 = 3_600_000;
const CLOCKS: &str = "return [Date.now(), new Date().getTime(), performance.timeOrigin + performance.now()]";

async fn read(phone: &journeys::Phone) -> Outcome<[f64; 3]> {
    Ok(serde_json::from_value(phone.run(CLOCKS, &[]).await?)?)
}

#[tokio::test]
async fn moved_clocks_stay_moved() -> Outcome {
    journey("moved_clocks", async |stage| {
        stage.open().await?;
        let phone = &mut stage.phone;
        let [wall, _, mono] = read(phone).await?;
        phone.pass(HOUR_MS).await?;
        phone.set_wall_by(-3 * HOUR_MS).await?;
        phone.reload().await?;
        let (old, new) = phone.new_window().await?;
        for window in [&new, &old] {
            phone.to_window(window).await?;
            let [now, constructed, now_mono] = read(phone).await?;
            let hours = |ms: f64| (ms / HOUR_MS as f64).round();
            assert_eq!((hours(now - wall), hours(constructed - wall)), (-2.0, -2.0));
            assert_eq!(hours(now_mono - mono), 1.0);
        }
        Ok(())
    })
    .await
}

/// The burn card's clock goes on through a reload and a short look at something else; a burn after an earlier one is
/// cooled anew.
#[tokio::test]
async fn a_later_burn_is_cooled_from_the_start() -> Outcome {
    journey("later_burn", async |stage| {
        stage.evening().await?;
        let phone = &mut stage.phone;
        phone.tap("burn").await?;
        phone.sees("burn-clock", "0:0").await?;
        phone.pass(5 * 60_000).await?;
        phone.sees("burn-clock", "5:").await?;
        phone.reload().await?;
        phone.tap("burn").await?;
        phone.sees("burn-clock", "5:").await?;
        phone.tap("card-burn-close").await?;
        phone.tap("burn").await?;
        phone.sees("burn-clock", "5:").await?;
        phone.tap("card-burn-close").await?;
        phone.pass(2 * 60_000).await?;
        phone.tap("burn").await?;
        phone.sees("burn-clock", "0:0").await
    })
    .await
}
