//! Keeping the screen lit while a job is open, and saying so when the phone refuses.
//!
//! The browser lets go of the lock whenever the page is hidden; it is asked for again when the page is back.

use super::listen;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::VisibilityState;

/// Whether the screen stays lit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WakeState {
    /// Nobody asked for it.
    Off,
    /// It stays lit.
    Held,
    /// The phone said no, as with a low battery: it will go dark by itself.
    Refused,
    /// This browser cannot keep a screen lit.
    Unsupported,
}

// web-sys has these behind a build flag of its own; these few lines spare every build the flag.
#[wasm_bindgen]
extern "C" {
    type WakeNavigator;
    #[wasm_bindgen(method, getter, js_name = wakeLock)]
    fn wake_lock(this: &WakeNavigator) -> Option<WakeLock>;

    #[derive(Clone)]
    type WakeLock;
    #[wasm_bindgen(method, catch)]
    fn request(this: &WakeLock, kind: &str) -> Result<js_sys::Promise, JsValue>;

    #[derive(Clone)]
    #[wasm_bindgen(extends = web_sys::EventTarget)]
    type Sentinel;
    #[wasm_bindgen(method, getter)]
    fn released(this: &Sentinel) -> bool;
    #[wasm_bindgen(method)]
    fn release(this: &Sentinel) -> js_sys::Promise;
}

/// The wish for a lit screen, and what came of it.
#[derive(Clone)]
pub struct Wake(Rc<Inner>);

struct Inner {
    lock: Option<WakeLock>,
    held: RefCell<Held>,
    tell: Box<dyn Fn(WakeState)>,
}

#[derive(Default)]
struct Held {
    wanted: bool,
    asking: bool,
    sentinel: Option<Sentinel>,
}

impl Wake {
    /// Looks whether this browser can; `tell` hears every change of state.
    pub fn new(tell: impl Fn(WakeState) + 'static) -> Self {
        let navigator = web_sys::window().map(|window| window.navigator());
        let lock = navigator.and_then(|navigator| navigator.unchecked_into::<WakeNavigator>().wake_lock());
        let wake = Self(Rc::new(Inner {
            lock,
            held: RefCell::default(),
            tell: Box::new(tell),
        }));
        if let Some(document) = web_sys::window().and_then(|window| window.document()) {
            let back = wake.clone();
            listen::forever(&document, "visibilitychange", move || back.ask());
        }
        wake
    }

    /// Wants the screen lit from now on. Called from a touch, where the phone insists on one.
    pub fn want(&self) {
        self.0.held.borrow_mut().wanted = true;
        self.ask();
    }

    /// Lets the screen go dark again.
    pub fn let_go(&self) {
        let sentinel = {
            let mut held = self.0.held.borrow_mut();
            held.wanted = false;
            held.sentinel.take()
        };
        if let Some(sentinel) = sentinel {
            // It answers when it is done, and nobody waits for it.
            let _ = sentinel.release();
        }
        (self.0.tell)(WakeState::Off);
    }

    fn ask(&self) {
        {
            let held = self.0.held.borrow();
            let has = held.sentinel.as_ref().is_some_and(|sentinel| !sentinel.released());
            if !held.wanted || held.asking || has || !visible() {
                return;
            }
        }
        let Some(lock) = self.0.lock.clone() else {
            (self.0.tell)(WakeState::Unsupported);
            return;
        };
        self.0.held.borrow_mut().asking = true;
        let wake = self.clone();
        spawn_local(async move {
            let answer = match lock.request("screen") {
                Ok(promise) => JsFuture::from(promise).await,
                Err(refusal) => Err(refusal),
            };
            wake.answered(answer.map(JsCast::unchecked_into));
        });
    }

    fn answered(&self, answer: Result<Sentinel, JsValue>) {
        let wanted = {
            let mut held = self.0.held.borrow_mut();
            held.asking = false;
            held.wanted
        };
        match answer {
            // Let go of while the phone was still thinking.
            Ok(sentinel) if !wanted => drop(sentinel.release()),
            Ok(sentinel) => {
                let wake = self.clone();
                listen::forever(&sentinel, "release", move || wake.lost());
                self.0.held.borrow_mut().sentinel = Some(sentinel);
                (self.0.tell)(WakeState::Held);
            }
            Err(_) if wanted => (self.0.tell)(WakeState::Refused),
            Err(_) => {}
        }
    }

    /// The phone took the lock back: hidden, it will be asked again; seen, it is a refusal.
    fn lost(&self) {
        let wanted = self.0.held.borrow().wanted;
        if wanted && visible() {
            (self.0.tell)(WakeState::Refused);
        }
    }
}

fn visible() -> bool {
    let document = web_sys::window().and_then(|window| window.document());
    document.is_some_and(|document| document.visibility_state() == VisibilityState::Visible)
}
