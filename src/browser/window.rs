//! Which window writes. The first to open a log has it (Web Locks API, W3C); a second shows it, says so, and starts
//! anew with it once the first is gone.

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

use js_sys::{Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::page;

#[wasm_bindgen]
extern "C" {
    type Locks;
    #[wasm_bindgen(method)]
    fn request(this: &Locks, name: &str, held: &JsValue) -> Promise;
}

/// How long a log that another window has is waited for: a page that is being reloaded lets go of its own first.
const GRACE_MS: i32 = 1_000;

thread_local! {
    static CLAIMS: RefCell<Vec<(String, Claim)>> = const { RefCell::new(Vec::new()) };
}

/// This window's claim on a log, for as long as the page lives. Copies are the same claim.
#[derive(Clone, Debug)]
pub struct Claim(Rc<State>);

#[derive(Debug)]
struct State {
    granted: Cell<bool>,
    /// Somebody was told that another window has it.
    told: Cell<bool>,
    /// Settles with the grant, or once it has been waited for.
    settled: Promise,
}

impl Claim {
    /// Claims the log of this name; claimed once, it stays claimed.
    #[must_use]
    pub fn on(name: &str) -> Self {
        let known = CLAIMS.with_borrow(|all| all.iter().find(|(one, _)| one == name).map(|(_, claim)| claim.clone()));
        known.unwrap_or_else(|| {
            let locks = locks();
            let claim = Self(Rc::new_cyclic(|state| State {
                granted: Cell::new(locks.is_none()),
                told: Cell::new(false),
                settled: locks.map_or_else(
                    || Promise::resolve(&JsValue::UNDEFINED),
                    |locks| ask(&locks, name, state),
                ),
            }));
            CLAIMS.with_borrow_mut(|all| all.push((name.to_owned(), claim.clone())));
            claim
        })
    }

    /// Whether this window has the log. Asked of a log another window has, it waits a second for that to let go.
    pub async fn is_mine(&self) -> bool {
        if !self.0.granted.get() {
            // It only ever settles well.
            let _ = JsFuture::from(self.0.settled.clone()).await;
            self.0.told.set(!self.0.granted.get());
        }
        self.0.granted.get()
    }
}

/// Asks the browser, which grants a name to one window at a time; settles then, or after [`GRACE_MS`].
fn ask(locks: &Locks, name: &str, state: &Weak<State>) -> Promise {
    Promise::new(&mut |resolve, _| {
        let (state, settle) = (state.clone(), resolve.clone());
        let held = Closure::once_into_js(move || {
            if let Some(state) = state.upgrade() {
                state.granted.set(true);
                if state.told.get() {
                    page::reload();
                }
            }
            // Nothing can go wrong in settling a promise.
            let _ = settle.call0(&JsValue::UNDEFINED);
            // Never given back while the page lives.
            Promise::new(&mut |_, _| {})
        });
        drop(locks.request(&format!("panward {name}"), &held));
        if let Some(window) = web_sys::window() {
            let _ = window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, GRACE_MS);
        }
    })
}

/// The browser's locks. One that has none leaves it to the store, which never lets two entries into one place.
fn locks() -> Option<Locks> {
    let navigator = web_sys::window()?.navigator();
    let locks = Reflect::get(&navigator, &"locks".into()).ok()?;
    locks.is_object().then(|| locks.unchecked_into())
}
