//! Small things kept beside the log, as JSON under a key: on the phone, or in this tab only.

use gloo_storage::{LocalStorage, SessionStorage, Storage};

use crate::store::json::{self, Out};
use crate::store::wire::stored::Stored;

/// Where a small thing is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shelf {
    /// On the phone, until it is taken away.
    Phone,
    /// In this tab, until it is closed.
    Tab,
}

impl Shelf {
    /// The browser's storage; nothing where it refuses it, which must be asked first: the crate's own way in throws.
    fn storage(self) -> Option<web_sys::Storage> {
        let window = web_sys::window()?;
        match self {
            Self::Phone => window.local_storage().ok().flatten().map(|_| LocalStorage::raw()),
            Self::Tab => window.session_storage().ok().flatten().map(|_| SessionStorage::raw()),
        }
    }

    /// What is kept under a key; nothing where nothing is kept, or something else.
    #[must_use]
    pub fn kept<T: Stored>(self, key: &str) -> Option<T> {
        let text = self.storage()?.get_item(key).ok().flatten()?;
        T::from_json(json::read(&text).ok()?).ok()
    }

    /// Keeps it. Where the browser keeps nothing it is asked again next time, and the log loses nothing.
    pub fn keep<T: Stored>(self, key: &str, what: &T) {
        let mut out = Out::new();
        what.put(&mut out);
        self.put(key, &out.into_text());
    }

    fn put(self, key: &str, text: &str) {
        if let Some(storage) = self.storage() {
            let _ = storage.set_item(key, text);
        }
    }

    /// Takes it away.
    pub fn forget(self, key: &str) {
        if let Some(storage) = self.storage() {
            let _ = storage.remove_item(key);
        }
    }
}
