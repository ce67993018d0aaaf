//! How long ten years of a four-pan shop take to fold, to everything the screens show, and one new entry after them,
//! beside `JSON.parse` of the export of the same log in the same page.
//!
//! The three are taken in turn, so that whatever else the machine does falls on all; only their ratios are gates.

use journeys::{Outcome, Phone, TALL, fault, median, target_dir};
use serde_json::Value;
use std::path::Path;
use std::process::ExitCode;
use std::time::Duration;
use xtask::site::Site;

const ROUNDS: usize = 9;
/// Longest that one step of the page may take; writing the log is the longest.
const PATIENCE: Duration = Duration::from_secs(180);
/// The fold's median over that of `JSON.parse`, at most.
const GATE: f64 = 1.0;
/// The same of one entry more.
const GATE_ONE: f64 = 0.01;

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
    let Some(dir) = std::env::args().nth(1) else {
        return fault("run cargo xtask measure");
    };
    let home = target_dir()
        .join("journeys")
        .join(format!("years-{}", std::process::id()));
    let site = Site::start(Path::new(&dir), "/", 0)?;
    let mut phone = Phone::new(&home, TALL).await?;
    let told = rounds(&mut phone, &site).await;
    phone.close().await?;
    told
}

async fn rounds(phone: &mut Phone, site: &Site) -> Outcome<bool> {
    phone.browser()?.set_script_timeout(PATIENCE).await?;
    phone.open(&site.url()).await?;
    let [entries, bytes] = numbers(&phone.run("return years.write()", &[]).await?)?;
    let mut times = [Vec::new(), Vec::new(), Vec::new()];
    for _ in 0..ROUNDS {
        let round: [f64; 3] = numbers(&phone.run("return years.round()", &[]).await?)?;
        for (times, took) in times.iter_mut().zip(round) {
            times.push(took);
        }
    }
    let [parse, fold, one] = times.map(median);
    println!(
        "ten years of log, {entries} entries, {:.0} MB of export, medians of {ROUNDS}:",
        bytes / 1e6
    );
    println!(
        "  JSON.parse {parse:.0} ms; fold to all views {fold:.0} ms, ratio {:.2} (gate {GATE})",
        fold / parse
    );
    println!(
        "  one new entry to all views {one:.1} ms, ratio {:.4} (gate {GATE_ONE})",
        one / parse
    );
    Ok(fold / parse <= GATE && one / parse <= GATE_ONE)
}

fn numbers<const N: usize>(told: &Value) -> Outcome<[f64; N]> {
    let told = told.as_array().map(|told| told.iter().filter_map(Value::as_f64));
    let told: Vec<f64> = told.into_iter().flatten().collect();
    told.try_into().or_else(|_| fault("the page did not say what it took"))
}
