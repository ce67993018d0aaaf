//! Listening to browser events for as long as the page lives.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::EventTarget;

/// Calls `then` on every `event` of `target`, until the page goes.
pub(super) fn forever(target: &EventTarget, event: &str, then: impl Fn() + 'static) {
    let closure = Closure::<dyn Fn()>::new(then);
    // Fails only for a target without a listener list, which is not an EventTarget.
    if target
        .add_event_listener_with_callback(event, closure.as_ref().unchecked_ref())
        .is_ok()
    {
        closure.forget();
    }
}
