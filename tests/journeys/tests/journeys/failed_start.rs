//! When the app cannot start, the page itself says how to make safe.

use journeys::{Outcome, copy_of_dist, fault, journey};
use serde_json::json;
use xtask::site::Site;

#[tokio::test]
async fn shows_the_cards_when_the_module_is_missing() -> Outcome {
    journey("module_missing", async |stage| {
        let broken = stage.scratch().join("broken");
        copy_of_dist(&broken)?;
        let files = xtask::finish::walk(&broken)?;
        let Some((_, module)) = files.iter().find(|(name, _)| name.ends_with(".wasm")) else {
            return fault("the release has no module");
        };
        std::fs::remove_file(module)?;
        let site = Site::start(&broken, "/", 0)?;
        stage.phone.open_unready(&site.url()).await?;
        stage.phone.sees("start-fire", "No water").await?;
        stage.phone.sees("start-burn", "20 minutes").await?;
        stage.phone.see("start-again").await?;
        stage.phone.shot("failed-start").await?;
        stage.phone.accessible("the page without the app").await?;
        let faults = stage.phone.faults().await?;
        assert!(!faults.is_empty(), "a missing module is an error on the console");
        assert!(
            !faults.iter().any(|fault| fault.contains("Content Security Policy")),
            "{faults:?}"
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn shows_the_cards_when_scripts_are_off() -> Outcome {
    journey("scripts_off", async |stage| {
        stage
            .phone
            .cdp("Emulation.setScriptExecutionDisabled", json!({ "value": true }))
            .await?;
        stage.phone.open_unready(&stage.site.url()).await?;
        stage.phone.sees("start-fire", "No water").await?;
        stage.phone.sees("start-burn", "20 minutes").await
    })
    .await
}

#[tokio::test]
async fn shows_the_cards_when_the_app_hangs() -> Outcome {
    journey("app_hangs", async |stage| {
        let never = "WebAssembly.instantiateStreaming = WebAssembly.instantiate = () => new Promise(() => {});";
        stage
            .phone
            .cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": never }))
            .await?;
        stage.phone.open_unready(&stage.site.url()).await?;
        stage.phone.sees("start-fire", "No water").await?;
        stage.phone.sees("start-burn", "20 minutes").await
    })
    .await
}

#[tokio::test]
async fn hides_the_cards_once_the_app_runs() -> Outcome {
    journey("cards_hidden", async |stage| {
        stage.open().await?;
        stage.phone.see("screen-first").await?;
        stage.phone.gone("start-fire").await
    })
    .await
}

#[tokio::test]
async fn shows_the_cards_when_the_module_traps() -> Outcome {
    journey("module_traps", async |stage| {
        stage.open().await?;
        // What a panic inside an event handler amounts to: a module that runs into its `unreachable`.
        let trap = "setTimeout(() => new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(
            [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 8, 1, 0, 10, 5, 1, 3, 0, 0, 11]))))";
        stage
            .phone
            .cdp("Runtime.evaluate", json!({ "expression": trap }))
            .await?;
        stage.phone.sees("start-fire", "No water").await?;
        stage.phone.gone("screen-first").await?;
        stage.phone.faults().await?;
        stage.phone.tap("start-again").await?;
        stage.phone.see("screen-first").await.map(drop)
    })
    .await
}
