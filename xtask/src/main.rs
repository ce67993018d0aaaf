//! `cargo xtask <chore>`: reads the command line, runs one chore, tells a failure in one sentence.

use std::process::ExitCode;
use xtask::trouble::{Outcome, Trouble};
use xtask::{backtest, build, finish, measure, serve, suites};

const USAGE: &str = "\
cargo xtask serve [--port N]   install what is missing, build, serve on this machine and print the address
cargo xtask build              leave the site in dist/
cargo xtask test [SUITE...]    run every check, or only the suites named
cargo xtask measure            time the start beside a bare counter's, and ten years of log beside JSON.parse
cargo xtask backtest FILE.csv [--limit 25]
                               foretell each reading of a shop's log, and score the forecasts";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = args.iter().map(String::as_str).collect();
    match chore(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("xtask: {trouble}");
            ExitCode::FAILURE
        }
    }
}

fn chore(words: &[&str]) -> Outcome {
    if cfg!(windows) {
        return Err(Trouble::new(
            "this works on Linux and macOS. On Windows, run it inside WSL.",
        ));
    }
    match words {
        ["serve"] => serve::serve(None),
        ["serve", "--port", port] => match port.parse() {
            Ok(port) => serve::serve(Some(port)),
            Err(_) => Err(Trouble::new(format!(
                "{port} is not a port: give a number from 1 to 65535."
            ))),
        },
        ["build"] => build::build(build::Optimise::IfFound),
        ["test", suites @ ..] => suites::run(suites),
        ["measure"] => measure::measure(),
        ["backtest", rest @ ..] => backtest::backtest(rest),
        ["finish"] => finish::finish_stage(),
        ["help" | "--help" | "-h"] => {
            println!("{USAGE}");
            Ok(())
        }
        [] => Err(Trouble::new(format!("say which chore to run:\n{USAGE}"))),
        other => Err(Trouble::new(format!(
            "there is no chore \"{}\". There are:\n{USAGE}",
            other.join(" ")
        ))),
    }
}
