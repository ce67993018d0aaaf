//! New versions: noticed as they come, taken only when told to.
//!
//! The service worker holds a new version back. [`take`] lets it take over; from then on every window of the app runs
//! old code beside the new worker and hears [`Update::Taken`], upon which each reloads at its own safe moment.

use super::listen;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState};

/// What became of a new version.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Update {
    /// It is on the phone, whole and checked, and waits.
    Waiting,
    /// It was taken, in this window or another: reload when nothing is in hand.
    Taken,
}

/// The word to the worker, as `sw.js` knows it.
const TAKE_OVER: &str = "take over";

fn container() -> Option<ServiceWorkerContainer> {
    let navigator = web_sys::window()?.navigator();
    // Absent on an insecure address, where web-sys would hand out an undefined container.
    js_sys::Reflect::has(&navigator, &"serviceWorker".into())
        .ok()?
        .then(|| navigator.service_worker())
}

async fn registration() -> Option<ServiceWorkerRegistration> {
    let ready = container()?.ready().ok()?;
    JsFuture::from(ready).await.ok()?.dyn_into().ok()
}

/// Calls `tell` whenever a new version has arrived or was taken; at once, if one is waiting already.
pub fn watch(tell: impl Fn(Update) + 'static) {
    let Some(container) = container() else { return };
    let tell = Rc::new(tell);
    // On a first visit the first worker takes charge of a page that is its own version: no news.
    if container.controller().is_some() {
        let taken = Rc::clone(&tell);
        listen::forever(&container, "controllerchange", move || taken(Update::Taken));
    }
    spawn_local(async move {
        let Some(registration) = registration().await else {
            return;
        };
        if registration.waiting().is_some() {
            tell(Update::Waiting);
        }
        let found = registration.clone();
        listen::forever(&registration, "updatefound", move || {
            if let Some(worker) = found.installing() {
                let (tell, arrived) = (Rc::clone(&tell), worker.clone());
                listen::forever(&worker, "statechange", move || {
                    let replaces =
                        web_sys::window().is_some_and(|w| w.navigator().service_worker().controller().is_some());
                    if arrived.state() == ServiceWorkerState::Installed && replaces {
                        tell(Update::Waiting);
                    }
                });
            }
        });
    });
}

/// Looks for a new version now. Without a network nothing happens.
pub fn look() {
    spawn_local(async {
        if let Some(Ok(looking)) = registration().await.map(|registration| registration.update()) {
            let _ = JsFuture::from(looking).await;
        }
    });
}

/// Lets the waiting version take over. `false` when none is waiting.
pub async fn take() -> bool {
    let Some(worker) = registration().await.and_then(|registration| registration.waiting()) else {
        return false;
    };
    worker.post_message(&JsValue::from_str(TAKE_OVER)).is_ok()
}
