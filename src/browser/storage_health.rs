//! How safe the phone keeps the log: whether it promised not to clear it, and how much room there is.

use js_sys::{Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{StorageEstimate, StorageManager};

/// Bytes used and bytes allowed, as the browser guesses them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Room {
    /// Bytes in use.
    pub used: u64,
    /// Bytes this site may use.
    pub allowed: u64,
}

/// The storage manager, where this browser has one: an insecure address or an old browser has none.
fn manager() -> Option<StorageManager> {
    let navigator = web_sys::window()?.navigator();
    let storage = Reflect::get(&navigator, &"storage".into()).ok()?;
    (!storage.is_undefined()).then(|| storage.unchecked_into())
}

/// Calls a method of the manager if it is there; older browsers have only some of them.
async fn call(method: &str) -> Option<JsValue> {
    let manager = manager()?;
    let function: Function = Reflect::get(&manager, &method.into()).ok()?.dyn_into().ok()?;
    let promise: js_sys::Promise = function.call0(&manager).ok()?.dyn_into().ok()?;
    JsFuture::from(promise).await.ok()
}

/// Asks the phone never to clear the log by itself. `None`: this browser cannot promise anything.
pub async fn persist() -> Option<bool> {
    call("persist").await?.as_bool()
}

/// Whether it has promised.
pub async fn persisted() -> Option<bool> {
    call("persisted").await?.as_bool()
}

/// How much room there is.
pub async fn room() -> Option<Room> {
    let estimate: StorageEstimate = call("estimate").await?.unchecked_into();
    let bytes = |value: Option<f64>| value.map(|bytes| bytes as u64);
    Some(Room {
        used: bytes(estimate.get_usage())?,
        allowed: bytes(estimate.get_quota())?,
    })
}
