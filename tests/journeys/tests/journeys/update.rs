//! A new version waits until it is told to take over, and a broken one never does.

use journeys::{EVENING, Outcome, copy_of_dist, fault, journey, kitchen_with, until};
use panward::domain::facts::setup::OutBy;
use serde_json::json;
use std::path::Path;
use xtask::site::Site;

const CACHES: &str = "const done = arguments[0]; caches.keys().then((names) => done(names));";
const LOOK: &str = "const done = arguments[0];
    navigator.serviceWorker.ready.then((it) => it.update()).then(() => done(true), () => done(false));";
const WAITING: &str = "const done = arguments[0];
    navigator.serviceWorker.getRegistration().then((it) => done(Boolean(it.waiting)));";
const SETTLED: &str = "const done = arguments[0];
    navigator.serviceWorker.getRegistration().then((it) => done(!it.installing && !it.waiting));";

/// Makes the release in `dir` another version: a comment more in a stylesheet.
fn change(dir: &Path) -> Outcome {
    let files = xtask::finish::walk(dir)?;
    let Some((_, page)) = files.iter().find(|(name, _)| name.ends_with("boot.js")) else {
        return fault("the release has no boot.js");
    };
    let old = std::fs::read_to_string(page)?;
    std::fs::write(page, old + "\n// another version\n")?;
    xtask::finish::finish(dir)?;
    Ok(())
}

#[tokio::test]
async fn waits_for_the_word_and_keeps_the_old_version_until_then() -> Outcome {
    journey("update_waits", async |stage| {
        let dir = stage.scratch().join("site");
        copy_of_dist(&dir)?;
        let site = Site::start(&dir, "/", 0)?;
        let phone = &mut stage.phone;
        phone.open(&site.url()).await?;
        phone.keeps_the_app().await?;
        let first = phone.run_async(CACHES).await?;

        change(&dir)?;
        phone.run_async(LOOK).await?;
        until("a waiting worker", async || {
            Ok((phone.run_async(WAITING).await? == true).then_some(()))
        })
        .await?;
        phone.reload().await?;
        assert_eq!(phone.run_async(WAITING).await?, true, "a reload is not the word");
        let both = phone.run_async(CACHES).await?;
        assert_eq!(both.as_array().map(Vec::len), Some(2), "{both}");

        let word = "navigator.serviceWorker.getRegistration().then((it) => it.waiting.postMessage('take over'))";
        phone.run(word, &[]).await?;
        let second = until("one version left", async || {
            let names = phone.run_async(CACHES).await?;
            Ok((names.as_array().map(Vec::len) == Some(1)).then_some(names))
        })
        .await?;
        assert_ne!(first, second);
        phone.reload().await
    })
    .await
}

#[tokio::test]
async fn never_keeps_half_a_version() -> Outcome {
    journey("update_broken", async |stage| {
        let dir = stage.scratch().join("site");
        copy_of_dist(&dir)?;
        let site = Site::start(&dir, "/", 0)?;
        let phone = &mut stage.phone;
        phone.open(&site.url()).await?;
        phone.keeps_the_app().await?;
        let first = phone.run_async(CACHES).await?;

        change(&dir)?;
        // Altered after its digest was taken, as by a host that rewrites files or a transfer cut short.
        std::fs::write(dir.join("boot.js"), "// not what was promised")?;
        phone.run_async(LOOK).await?;
        until("the broken version given up", async || {
            Ok((phone.run_async(SETTLED).await? == true).then_some(()))
        })
        .await?;
        assert_eq!(phone.run_async(CACHES).await?, first);
        phone.reload().await?;
        phone.see("screen-first").await?;
        let faults = phone.faults().await?;
        assert!(
            faults.iter().all(|fault| fault.contains("integrity")),
            "{}",
            json!(faults)
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn waits_while_a_job_is_open_and_is_taken_on_a_touch() -> Outcome {
    journey("update_waits_for_the_job", async |stage| {
        let dir = stage.scratch().join("site");
        copy_of_dist(&dir)?;
        let site = Site::start(&dir, "/", 0)?;
        let file = stage.scratch().join("kitchen.json");
        std::fs::write(&file, kitchen_with(OutBy::Nozzle).await?)?;
        let phone = &mut stage.phone;
        phone.set_wall_to(EVENING).await?;
        phone.open(&site.url()).await?;
        phone.keeps_the_app().await?;
        phone.pick_file("import-file", &file).await?;
        phone.tap("import-go-on").await?;
        phone.see("pan-1").await?;
        phone.go("filter").await?;
        phone.press("begin-job").await?;

        change(&dir)?;
        phone.run_async(LOOK).await?;
        until("a waiting worker", async || {
            Ok((phone.run_async(WAITING).await? == true).then_some(()))
        })
        .await?;
        phone.go("today").await?;
        phone.see("update").await?;
        assert!(
            !phone.settled().await?.awake("take-update"),
            "offered while a job is open"
        );

        phone.go("filter").await?;
        phone.press("stop").await?;
        phone.press("end-job").await?;
        phone.go("today").await?;
        let first = phone.run_async(CACHES).await?;
        assert_eq!(phone.run_async(WAITING).await?, true, "taken before anybody touched it");
        phone.tap("take-update").await?;
        until("one version left, the new one", async || {
            let names = phone.run_async(CACHES).await?;
            Ok((names.as_array().map(Vec::len) == Some(1) && names != first).then_some(()))
        })
        .await?;
        phone.see("pan-1").await.map(drop)
    })
    .await
}
