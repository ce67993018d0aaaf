//! The program that steers the browser.

use crate::fault::{Outcome, fault};
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

/// A running chromedriver; it ends with this value.
pub(crate) struct Driver {
    child: Child,
    port: u16,
}

impl Driver {
    /// Starts one on a free port of its own choosing.
    pub(crate) fn start() -> Outcome<Self> {
        let child = Command::new("chromedriver")
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn();
        let Ok(mut child) = child else {
            return fault("chromedriver cannot be started: cargo xtask test installs it");
        };
        let stdout = child.stdout.take();
        let mut driver = Self { child, port: 0 };
        // It says "... started successfully on port N." once it listens.
        for line in stdout.into_iter().flat_map(|out| BufReader::new(out).lines()) {
            let line = line?;
            let port = line
                .rsplit_once("on port ")
                .and_then(|(_, rest)| rest.trim_end_matches('.').parse().ok());
            if let (true, Some(port)) = (line.contains("started successfully"), port) {
                driver.port = port;
                return Ok(driver);
            }
        }
        fault("chromedriver ended before it was ready")
    }

    pub(crate) fn url(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // It may have ended by itself, which is what is wanted.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
