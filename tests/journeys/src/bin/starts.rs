//! How long Today takes to start from the demo's stored five weeks, beside a bare counter: same worker, no server, a
//! slow processor.
//!
//! The two are started in turn, so that whatever else the machine does falls on both; only their ratio is a gate.

use journeys::{Outcome, Phone, TALL, fault, target_dir};
use serde_json::json;
use std::path::Path;
use std::process::ExitCode;
use xtask::site::Site;

const ROUNDS: usize = 9;
/// Times slower than this machine, as lighthouse does for a mid-range phone.
const THROTTLE: u32 = 4;
/// The app's median over the counter's, at most.
const GATE: f64 = 2.0;
const GOAL_MS: f64 = 500.0;

/// Promises the moment at which the page says that it is painted and answers. Nobody asks a page how far it is while
/// it starts: asking is work, too, and falls on the slower of two starts more often.
const NOTE: &str = "window.__ready = new Promise((tell) => new MutationObserver(() => {
        if (document.documentElement?.dataset.ready !== undefined) tell(performance.now());
    }).observe(document, { subtree: true, attributes: true, attributeFilter: ['data-ready'] }));";
const WHEN_READY: &str = "window.__ready.then(arguments[0])";

/// How far the start had come, and when.
const MARKS: &str = "return performance.getEntries()
        .filter((it) => it.entryType === 'mark' || it.entryType === 'paint' || /wasm$|[^t]\\.js$/.test(it.name))
        .map((it) => [Math.round(it.responseEnd ?? it.startTime), it.name.split('/').pop()])
        .sort((a, b) => a[0] - b[0]).map((it) => it.join(' ')).join(', ')";

#[tokio::main(flavor = "current_thread")]
async fn main() -> ExitCode {
    match measure().await {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(fault) => {
            eprintln!("{fault}");
            ExitCode::FAILURE
        }
    }
}

async fn measure() -> Outcome<bool> {
    let Some(bare) = std::env::args().nth(1) else {
        return fault("run cargo xtask measure");
    };
    let home = target_dir()
        .join("journeys")
        .join(format!("starts-{}", std::process::id()));
    let mut phone = Phone::new(&home, TALL).await?;
    let told = rounds(&mut phone, Path::new(&bare)).await;
    phone.close().await?;
    told
}

async fn rounds(phone: &mut Phone, bare: &Path) -> Outcome<bool> {
    phone
        .cdp("Page.addScriptToEvaluateOnNewDocument", json!({ "source": NOTE }))
        .await?;
    let mut sites = [Site::start(&xtask::build::dist(), "/", 0)?, Site::start(bare, "/", 0)?];
    for (site, is_app) in sites.iter_mut().zip([true, false]) {
        phone.open(&site.url()).await?;
        if is_app {
            phone.tap("start-demo").await?;
            phone.see("pan-4").await?;
        }
        phone.keeps_the_app().await?;
        site.stop();
    }
    phone
        .cdp("Emulation.setCPUThrottlingRate", json!({ "rate": THROTTLE }))
        .await?;
    let mut times = [Vec::new(), Vec::new()];
    let mut way = Vec::new();
    for _ in 0..ROUNDS {
        // A start that shows something else than what is measured would be a fast one.
        for ((site, shows), times) in sites.iter().zip(["days-4", "count"]).zip(&mut times) {
            phone.open_unready("about:blank").await?;
            phone.open_unready(&site.url()).await?;
            let ready = phone.run_async(WHEN_READY).await?;
            phone.see(shows).await?;
            times.push(ready.as_f64().unwrap_or(f64::NAN));
            if shows == "days-4" {
                way.push(phone.run(MARKS, &[]).await?);
            }
        }
    }
    let [app, counter] = times.map(median);
    let ratio = app / counter;
    if let Some(marks) = way.last().and_then(serde_json::Value::as_str) {
        println!("the last start by its marks, in ms: {marks}");
    }
    println!("start of Today from five weeks of log, server gone, {THROTTLE}x throttled, medians of {ROUNDS}:");
    println!("  app {app:.0} ms (goal {GOAL_MS:.0}), bare counter {counter:.0} ms, ratio {ratio:.2} (gate {GATE})");
    Ok(ratio <= GATE)
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times.get(times.len() / 2).copied().unwrap_or(f64::NAN)
}
