//! Waiting for something to become true, up to a deadline.

use crate::fault::{Fault, Outcome};
use std::time::{Duration, Instant};

/// How long anything may take before a journey gives up. Generous: it is spent only by a failing journey.
pub const PATIENCE: Duration = Duration::from_secs(20);

const BETWEEN_LOOKS: Duration = Duration::from_millis(25);

/// Looks again and again until `look` finds something, and returns it; `what` names it when it never comes.
pub async fn until<T>(what: &str, mut look: impl AsyncFnMut() -> Outcome<Option<T>>) -> Outcome<T> {
    let deadline = Instant::now() + PATIENCE;
    loop {
        if let Some(found) = look().await? {
            return Ok(found);
        }
        if Instant::now() > deadline {
            return Err(Fault(format!("waited {} s in vain: {what}", PATIENCE.as_secs())));
        }
        tokio::time::sleep(BETWEEN_LOOKS).await;
    }
}
