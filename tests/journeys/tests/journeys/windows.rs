//! One window writes; a second shows what is there, says so, and takes over when the first is gone.

use journeys::{Outcome, journey};

#[tokio::test]
async fn a_second_window_only_shows_until_the_first_is_gone() -> Outcome {
    journey("second_window", async |stage| {
        stage.demo().await?;
        let entries = stage.export().await?.entries().len();
        let phone = &mut stage.phone;
        let (first, second) = phone.new_window().await?;
        phone.open(&stage.site.url()).await?;
        phone.sees("second-window", "only shows").await?;
        phone.see("days-1").await?;
        phone.go("filter").await?;
        phone.tap("begin-job").await?;
        phone.sees("trouble", "Nothing of this was saved").await?;
        phone.tap("trouble-leave").await?;
        phone.go("today").await?;
        phone.shot("second-window").await?;
        // What the first window works in is not deleted from here.
        phone.tap("leave-demo").await?;
        phone.tap("leave-demo-yes").await?;
        phone.sees("demo-elsewhere", "Another window").await?;

        phone.to_window(&first).await?;
        phone.gone("second-window").await?;
        assert_eq!(stage.export().await?.entries().len(), entries);
        let phone = &mut stage.phone;
        phone.browser()?.close_window().await?;
        phone.to_window(&second).await?;
        phone.gone("second-window").await?;
        phone.go("filter").await?;
        phone.press("begin-job").await?;
        assert_eq!(stage.export().await?.entries().len(), entries + 1);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_reload_is_no_second_window() -> Outcome {
    journey("no_second_window", async |stage| {
        stage.demo().await?;
        for _ in 0..3 {
            stage.phone.reload().await?;
        }
        let waited = "const tell = arguments[0];
            navigator.locks.query().then(({ held, pending }) => tell([held.length, pending.length]))";
        assert_eq!(stage.phone.run_async(waited).await?, serde_json::json!([1, 0]));
        stage.phone.gone("second-window").await
    })
    .await
}
