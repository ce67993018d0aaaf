//! Running other programs: aloud, or quietly with everything they said kept for when they fail.

use crate::trouble::{Outcome, Trouble};
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Arc, Mutex, PoisonError};

/// The project's folder.
#[must_use]
pub fn root() -> PathBuf {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    here.parent().unwrap_or(here).to_path_buf()
}

/// `program args…`, to be run in the project's folder.
#[must_use]
pub fn command(program: &str, args: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(args).current_dir(root());
    command
}

/// Where `program` lies on PATH, if it does.
#[must_use]
pub fn on_path(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|dir| dir.join(program))
        .find(|file| file.is_file())
}

/// What `program args…` says on its standard output, or nothing when it cannot run or fails.
#[must_use]
pub fn answer(program: &Path, args: &[&str]) -> Option<String> {
    let output = Command::new(program).args(args).stderr(Stdio::null()).output().ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Runs `command` with its output on the screen; `otherwise` is the sentence for when it fails.
pub fn aloud(command: &mut Command, otherwise: &str) -> Outcome {
    match command.status() {
        Ok(status) if status.success() => Ok(()),
        Ok(_) => Err(Trouble::new(otherwise)),
        Err(error) => Err(cannot_start(command, &error)),
    }
}

/// How a quiet run ended.
pub struct Heard {
    /// Whether the program reported success.
    pub ok: bool,
    /// Everything it said, both streams as they came.
    pub lines: Vec<String>,
}

/// Runs `command` without showing its output, and returns what it said.
pub fn quietly(command: &mut Command) -> Outcome<Heard> {
    command
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    let mut child = command.spawn().map_err(|error| cannot_start(command, &error))?;
    let lines = Arc::new(Mutex::new(Vec::new()));
    let readers = [
        child.stdout.take().map(|stream| collect(stream, Arc::clone(&lines))),
        child.stderr.take().map(|stream| collect(stream, Arc::clone(&lines))),
    ];
    for reader in readers.into_iter().flatten() {
        // A reader that panicked has lost lines, not the verdict, which is the exit status.
        let _ = reader.join();
    }
    let status = child.wait().map_err(|error| cannot_start(command, &error))?;
    let lines = std::mem::take(&mut *lines.lock().unwrap_or_else(PoisonError::into_inner));
    Ok(Heard {
        ok: status.success(),
        lines,
    })
}

fn collect(stream: impl Read + Send + 'static, into: Arc<Mutex<Vec<String>>>) -> std::thread::JoinHandle<()> {
    std::thread::spawn(move || {
        let mut reader = BufReader::new(stream);
        let mut bytes = Vec::new();
        while matches!(reader.read_until(b'\n', &mut bytes), Ok(n) if n > 0) {
            let line = String::from_utf8_lossy(&bytes).trim_end().to_owned();
            into.lock().unwrap_or_else(PoisonError::into_inner).push(line);
            bytes.clear();
        }
    })
}

/// That `command` could not be started, and why.
#[must_use]
pub fn cannot_start(command: &Command, error: &std::io::Error) -> Trouble {
    let program = command.get_program().to_string_lossy();
    if error.kind() == std::io::ErrorKind::NotFound {
        Trouble::new(format!("{program} is not on PATH. Install it and run this again."))
    } else {
        Trouble::new(format!("{program} cannot be started: {error}."))
    }
}
