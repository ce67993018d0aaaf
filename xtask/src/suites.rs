//! `cargo xtask test`: every check as a row of one table, one line and one time each, loud when red.

use crate::build::{Optimise, dist, trunk};
use crate::shell::{Heard, command, quietly};
use crate::size::{CEILING, weigh};
use crate::tools;
use crate::trouble::{Outcome, Trouble};
use std::ffi::OsString;
use std::io::Write as _;
use std::path::PathBuf;
use std::time::{Duration, Instant};

const WASM: &str = "wasm32-unknown-unknown";

/// What a suite does.
enum Work {
    /// `cargo` with these arguments.
    Cargo(&'static [&'static str]),
    /// The release build, without wasm-opt.
    Release,
    /// The size gate on `dist/`.
    Size,
    /// `cargo` with these arguments, once a release build stands in `dist/`.
    OnRelease(&'static [&'static str]),
}

struct Suite {
    name: &'static str,
    about: &'static str,
    work: Work,
}

/// Cheapest first, so that a slip is told early; the order is the order of a run.
const SUITES: &[Suite] = &[
    Suite {
        name: "format",
        about: "rustfmt, the whole workspace",
        work: Work::Cargo(&["fmt", "--all", "--check"]),
    },
    Suite {
        name: "clippy",
        about: "native, all targets, warnings denied",
        work: Work::Cargo(&[
            "clippy",
            "--quiet",
            "--workspace",
            "--all-targets",
            "--",
            "-D",
            "warnings",
        ]),
    },
    Suite {
        name: "clippy-wasm",
        about: "the browser build and its tests, warnings denied",
        work: Work::Cargo(&[
            "clippy", "--quiet", "-p", "panward", "--target", WASM, "--lib", "--bins", "--tests", "--", "-D",
            "warnings",
        ]),
    },
    Suite {
        name: "native",
        about: "domain, store, words, layers, published figures; the chores themselves",
        work: Work::Cargo(&[
            "test",
            "-p",
            "panward",
            "-p",
            "xtask",
            "--features",
            "panward/schema",
            "--no-fail-fast",
        ]),
    },
    Suite {
        name: "backtest",
        about: "oil life beside two baselines and a brute-force grid",
        work: Work::Cargo(&["test", "--profile", "backtest", "-p", "backtest", "--no-fail-fast"]),
    },
    Suite {
        name: "browser",
        about: "wasm-bindgen-test in headless Chromium",
        work: Work::Cargo(&[
            "test",
            "-p",
            "panward",
            "--target",
            WASM,
            "--lib",
            "--tests",
            "--no-fail-fast",
        ]),
    },
    Suite {
        name: "release",
        about: "the site as it ships",
        work: Work::Release,
    },
    Suite {
        name: "size",
        about: "dist/ under brotli",
        work: Work::Size,
    },
    Suite {
        name: "journeys",
        about: "end to end on the release",
        work: Work::OnRelease(&["test", "-p", "journeys", "--lib", "--test", "journeys"]),
    },
    Suite {
        name: "accessibility",
        about: "axe-core on every screen",
        work: Work::OnRelease(&["test", "-p", "journeys", "--test", "accessibility"]),
    },
];

/// What the suites share once everything they need is installed.
struct Bench {
    path: OsString,
    axe: PathBuf,
    /// Whether this run has built the release already.
    built: bool,
}

/// Runs the suites named, or all of them, and stops at the first that fails.
pub fn run(names: &[&str]) -> Outcome {
    let chosen = choose(names)?;
    tools::checkers()?;
    let path = tools::path_with_build_tools()?;
    tools::browser()?;
    let mut bench = Bench {
        path,
        axe: tools::axe()?,
        built: false,
    };
    let start = Instant::now();
    for suite in &chosen {
        bench.run(suite)?;
    }
    println!("all {} green in {}", plural(chosen.len()), told(start.elapsed()));
    Ok(())
}

fn choose(names: &[&str]) -> Outcome<Vec<&'static Suite>> {
    if names.is_empty() {
        return Ok(SUITES.iter().collect());
    }
    let known = SUITES.iter().map(|suite| suite.name).collect::<Vec<_>>().join(", ");
    let find = |name: &&str| {
        let suite = SUITES.iter().find(|suite| suite.name == *name);
        suite.ok_or_else(|| Trouble::new(format!("there is no suite \"{name}\". There are: {known}.")))
    };
    names.iter().map(find).collect()
}

impl Bench {
    fn run(&mut self, suite: &Suite) -> Outcome {
        print!("{:<14}", suite.name);
        let _ = std::io::stdout().flush();
        let start = Instant::now();
        let heard = self.work(&suite.work);
        let time = told(start.elapsed());
        match heard {
            Ok(heard) if heard.ok => {
                println!("ok    {time:>9}  {}", suite.about);
                for line in heard.lines.iter().filter(|line| worth_showing(line, &suite.work)) {
                    println!("              {line}");
                }
                Ok(())
            }
            Ok(heard) => {
                println!("FAIL  {time:>9}  {}", suite.about);
                println!("{}", heard.lines.join("\n"));
                Err(Trouble::new(format!(
                    "RED: {0}. Run it alone: cargo xtask test {0}",
                    suite.name
                )))
            }
            Err(trouble) => {
                println!("FAIL  {time:>9}  {}", suite.about);
                Err(trouble)
            }
        }
    }

    fn work(&mut self, work: &Work) -> Outcome<Heard> {
        match work {
            Work::Cargo(args) => self.cargo(args),
            Work::Release => self.release(),
            Work::Size => {
                let built = self.release()?;
                if !built.ok {
                    return Ok(built);
                }
                let weight = weigh(&dist())?;
                Ok(Heard {
                    ok: weight.total() <= CEILING,
                    lines: weight.lines(),
                })
            }
            Work::OnRelease(args) => {
                let built = self.release()?;
                if built.ok { self.cargo(args) } else { Ok(built) }
            }
        }
    }

    fn cargo(&self, args: &[&str]) -> Outcome<Heard> {
        let mut cargo = command("cargo", args);
        cargo
            .env("PATH", &self.path)
            .env("PANWARD_AXE", &self.axe)
            .env("CARGO_TERM_COLOR", "never");
        quietly(&mut cargo)
    }

    fn release(&mut self) -> Outcome<Heard> {
        if self.built {
            return Ok(Heard {
                ok: true,
                lines: Vec::new(),
            });
        }
        let heard = trunk(&self.path, Optimise::Never)?;
        self.built = heard.ok;
        Ok(heard)
    }
}

/// From a green suite: the counts of its tests, or the weights.
fn worth_showing(line: &str, work: &Work) -> bool {
    match work {
        Work::Cargo(_) | Work::OnRelease(_) => line.starts_with("test result:") && !line.contains("ok. 0 passed"),
        Work::Size => true,
        Work::Release => false,
    }
}

fn told(time: Duration) -> String {
    let secs = time.as_secs_f64();
    if secs < 60.0 {
        format!("{secs:.1} s")
    } else {
        format!("{} min {:02} s", secs as u64 / 60, secs as u64 % 60)
    }
}

fn plural(n: usize) -> String {
    if n == 1 {
        "1 suite".to_owned()
    } else {
        format!("{n} suites")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn suites_run_in_the_order_asked_and_a_wrong_name_lists_the_right_ones() {
        let names = |chosen: Vec<&Suite>| chosen.iter().map(|suite| suite.name).collect::<Vec<_>>();
        assert_eq!(
            choose(&["size", "format"]).map(names).ok(),
            Some(vec!["size", "format"])
        );
        assert_eq!(choose(&[]).map(|all| all.len()).ok(), Some(SUITES.len()));
        let refused = choose(&["speed"])
            .err()
            .map(|trouble| trouble.to_string())
            .unwrap_or_default();
        assert!(refused.contains("native"), "{refused}");
    }
}
