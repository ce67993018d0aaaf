//! `backtest FILE.csv [--limit 25]`: reads the command line and prints the report.

use std::io::{ErrorKind, Write as _};
use std::process::ExitCode;

use backtest::row::Row;
use panward::domain::oil_life::LimitsInForce;
use panward::domain::units::Share;

const USAGE: &str = "say which file to play: backtest FILE.csv [--limit 25]";
const USUAL_LIMIT: f64 = 25.0;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    match run(&args).and_then(|report| tell(&report)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

fn run(args: &[&str]) -> Result<String, String> {
    let (path, limit) = match args {
        [path] if !path.starts_with("--") => (path, USUAL_LIMIT),
        [path, "--limit", written] | ["--limit", written, path] => (path, limit(written)?),
        _ => return Err(USAGE.to_owned()),
    };
    let text = std::fs::read_to_string(path).map_err(|error| format!("{path} could not be read: {error}"))?;
    let rows = backtest::file::read(&text).map_err(|refused| format!("{path} is refused: {refused}"))?;
    over_fresh(&rows, limit)?;
    Ok(backtest::report::report(&rows, limit))
}

fn limit(written: &str) -> Result<f64, String> {
    let number = written.trim_end_matches('%').parse().ok();
    number
        .filter(|limit| *limit > 0.0 && *limit < 100.0)
        .ok_or_else(|| format!("the limit is a number of percent over 0 and under 100, not {written:?}"))
}

/// Refuses a limit that oil of the file's fats would be over from the first minute.
fn over_fresh(rows: &[Row], limit: f64) -> Result<(), String> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "0–100 % in hundredths"
    )]
    let polar = Share::from_cpc((limit * 100.0).round() as u16);
    let limits = LimitsInForce { polar, acid: None };
    for row in rows {
        limits.check(row.fat).map_err(|under| {
            let (line, fresh) = (row.line, under.fresh_percent);
            format!("{limit} % is no limit: the fresh oil of line {line} holds {fresh} %")
        })?;
    }
    Ok(())
}

/// Prints the report; whoever reads it may stop early.
fn tell(report: &str) -> Result<(), String> {
    let mut out = std::io::stdout().lock();
    match out.write_all(report.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Err(format!("the report could not be written: {error}")),
        Ok(()) | Err(_) => Ok(()),
    }
}
