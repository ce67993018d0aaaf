//! After one visit the app works with the server gone, for ever, after the browser's death too.

use journeys::{Outcome, journey};

#[tokio::test]
async fn starts_with_the_server_gone_and_the_browser_killed() -> Outcome {
    journey("starts_with_the_server_gone", async |stage| {
        stage.open_then_offline().await?;
        stage.phone.reload().await?;
        for _ in 0..2 {
            stage.kill_and_open().await?;
            stage.phone.see("screen-first").await?;
        }
        stage.phone.shot("offline-start").await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn asks_its_own_server_and_nobody_else() -> Outcome {
    journey("asks_its_own_server", async |stage| {
        stage.open().await?;
        stage.phone.keeps_the_app().await?;
        let own = stage.site.url();
        let foreign = "return performance.getEntriesByType('resource').map((it) => it.name)
            .filter((name) => !name.startsWith(arguments[0]) && !name.startsWith('data:'))";
        let foreign = stage.phone.run(foreign, &[own.into()]).await?;
        assert_eq!(foreign, serde_json::json!([]));
        let asked = stage.site.asked();
        assert!(asked.iter().any(|path| path.ends_with(".wasm")), "{asked:?}");
        assert!(asked.iter().all(|path| path.starts_with("/any/folder/")), "{asked:?}");
        Ok(())
    })
    .await
}
