//! `backtest FILE.csv [--limit 25]`: reads the command line and prints the report.

use std::process::ExitCode;

const USAGE: &str = "backtest FILE.csv [--limit 25]";
const USUAL_LIMIT: f64 = 25.0;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    match run(&args) {
        Ok(report) => {
            print!("{report}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

fn run(args: &[&str]) -> Result<String, String> {
    let (path, limit) = match args {
        [path] | [path, "--limit"] if path.starts_with("--") => return Err(USAGE.to_owned()),
        [path] => (path, USUAL_LIMIT),
        [path, "--limit", limit] | ["--limit", limit, path] => {
            let limit = limit
                .trim_end_matches('%')
                .parse()
                .ok()
                .filter(|l| *l > 0.0 && *l < 100.0);
            (
                path,
                limit.ok_or("the limit is a number of percent over 0 and under 100")?,
            )
        }
        _ => return Err(USAGE.to_owned()),
    };
    let text = std::fs::read_to_string(path).map_err(|error| format!("{path} could not be read: {error}"))?;
    let rows = backtest::file::read(&text).map_err(|refused| format!("{path} is refused: {refused}"))?;
    Ok(backtest::report::report(&rows, limit))
}
