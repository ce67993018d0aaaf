//! How long Today takes to start from the demo's stored five weeks, beside a bare counter: same worker, no server, a
//! slow processor.
//!
//! The two are started in turn, so that whatever else the machine does falls on both; only their ratio is a gate.

use journeys::{Outcome, Phone, TALL, fault, median, target_dir};
use serde_json::{Value, json};
use std::path::Path;
use std::process::ExitCode;
use xtask::site::Site;

/// The folder both are served from, so that the site has pages beside it.
const BASE: &str = "/app/";
/// How long each page stands before the measured starts: a browser keeps what it compiled of a module only after some
/// seconds, and a phone on the wall has stood there for days.
const STANDS_MS: u32 = 6_000;
const ROUNDS: usize = 9;
/// Times slower than this machine, as lighthouse does for a mid-range phone.
const THROTTLE: u32 = 4;
/// The app's median over the counter's, at most.
const GATE: f64 = 2.0;
const GOAL_MS: f64 = 500.0;

/// Starts the page in a window of its own, waits for its mark that it is painted and answers, and closes it again:
/// `[ready in ms, whether it shows what is called SHOWS, the marks on the way]`. It stands for STANDS ms at least.
///
/// Nobody watches that window: the driver has the one it drives report every node that is put in it, and asks it again
/// and again how far it is. On a slow processor that is a good part of a start, and more of the richer page's.
const START: &str = "const tell = arguments[0];
    const page = window.open('/app/', '_blank', 'popup,width=412,height=915');
    const marks = () => page.performance.getEntries()
        .filter((it) => it.entryType === 'mark' || it.entryType === 'paint' || /wasm$|[^t]\\.js$/.test(it.name))
        .map((it) => [Math.round(it.responseEnd ?? it.startTime), it.name.split('/').pop()])
        .sort((a, b) => a[0] - b[0]).map((it) => it.join(' ')).join(', ');
    const look = () => {
        const ready = page.performance.getEntriesByName('ready')[0];
        if (!ready) return setTimeout(look, 500);
        if (page.performance.now() < STANDS) return setTimeout(look, 500);
        tell([ready.startTime, !!page.document.querySelector(`[data-testid='SHOWS']`), marks()]);
        page.close();
    };
    setTimeout(look, 500);";

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
    let mut beside = Vec::new();
    for (dir, shows) in [(xtask::build::dist().as_path(), "days-4"), (bare, "count")] {
        let mut site = Site::start(dir, BASE, 0)?;
        let (_, window) = phone.new_window().await?;
        phone.open(&site.url()).await?;
        if shows == "days-4" {
            phone.tap("start-demo").await?;
        }
        phone.see(shows).await?;
        phone.keeps_the_app().await?;
        // A page of the same site that is none of its worker's: its window has the same processor.
        phone.open_unready(site.url().trim_end_matches(BASE)).await?;
        site.stop();
        for _ in 0..2 {
            start_beside(phone, shows, STANDS_MS).await?;
        }
        phone
            .cdp("Emulation.setCPUThrottlingRate", json!({ "rate": THROTTLE }))
            .await?;
        beside.push((window, shows));
    }
    let mut times = [Vec::new(), Vec::new()];
    let mut way = Vec::new();
    for _ in 0..ROUNDS {
        for ((window, shows), times) in beside.iter().zip(&mut times) {
            phone.to_window(window).await?;
            let [ready, shown, marks] = start_beside(phone, shows, 0).await?;
            // A start that shows something else than what is measured would be a fast one.
            if shown != true {
                return fault(format!("the page that says it is ready does not show {shows}"));
            }
            times.push(ready.as_f64().unwrap_or(f64::NAN));
            if *shows == "days-4" {
                way.push(marks);
            }
        }
    }
    let [app, counter] = times.map(median);
    let ratio = app / counter;
    if let Some(marks) = way.last().and_then(Value::as_str) {
        println!("the last start by its marks, in ms: {marks}");
    }
    println!("start of Today from five weeks of log, server gone, {THROTTLE}x throttled, medians of {ROUNDS}:");
    println!("  app {app:.0} ms (goal {GOAL_MS:.0}), bare counter {counter:.0} ms, ratio {ratio:.2} (gate {GATE})");
    Ok(ratio <= GATE)
}

async fn start_beside(phone: &Phone, shows: &str, stands_ms: u32) -> Outcome<[Value; 3]> {
    let script = START.replace("SHOWS", shows).replace("STANDS", &stands_ms.to_string());
    let told = phone.run_async(&script).await?;
    let told = told
        .as_array()
        .and_then(|told| <[Value; 3]>::try_from(told.clone()).ok());
    told.map_or_else(|| fault("the page beside did not say how it started"), Ok)
}
