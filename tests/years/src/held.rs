//! A journal that holds a decoded log once, as a store that was just read: nothing is read or written while it is timed.

use std::cell::RefCell;
use std::future::Future;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

use panward::domain::ids::Dev;
use panward::store::{Journal, Loaded, Record, StoreFault};

/// The journal.
pub struct Held(pub RefCell<Loaded>);

impl Journal for Held {
    fn dev(&self) -> Dev {
        Dev(0)
    }

    async fn append(&self, _: &[Record]) -> Result<(), StoreFault> {
        Ok(())
    }

    async fn load(&self) -> Result<Loaded, StoreFault> {
        Ok(self.0.take())
    }
}

/// The answer of something that never waits.
///
/// # Errors
/// Its own, or that it waited.
pub fn now<T, E: ToString>(answer: impl Future<Output = Result<T, E>>) -> Result<T, String> {
    match pin!(answer).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(value) => value.map_err(|why| why.to_string()),
        Poll::Pending => Err("a journal in memory waited".to_owned()),
    }
}
