//! The page around the app: where it is mounted, and what it tells the world about its state.
//!
//! `html[data-app]` is `running` once the app stands in the page and `failed` once it has died; the page's own
//! make-safe lines and cards show by it. `html[data-ready]` is there while a screen is painted and answers.

use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{Document, HtmlElement};

fn document() -> Option<Document> {
    web_sys::window()?.document()
}

fn root() -> Option<HtmlElement> {
    document()?.document_element()?.dyn_into().ok()
}

/// The element the app is mounted in.
#[must_use]
pub fn app_element() -> Option<HtmlElement> {
    document()?.get_element_by_id("app")?.dyn_into().ok()
}

fn mark(name: &str, value: &str) {
    if let Some(root) = root() {
        // Fails only on a name with a hyphen before a small letter; ours are plain words.
        let _ = root.dataset().set(name, value);
    }
}

/// Hides what the page carries for a failed start.
pub fn set_running() {
    mark("app", "running");
}

/// Says that the screen is painted and answers, once the frame now being made has been shown.
pub fn set_ready() {
    passed("drawn");
    after_paint(|| {
        passed("ready");
        mark("ready", "");
    });
}

/// Says that the screen is being exchanged or does not answer yet.
pub fn set_unready() {
    if let Some(root) = root() {
        root.dataset().delete("ready");
    }
}

/// Offers the screen to a printer.
pub fn print() {
    if let Some(window) = web_sys::window() {
        // Refused only where the browser has no printing, and then nothing happens.
        let _ = window.print();
    }
}

/// Shows the page from its top.
pub fn to_top() {
    if let Some(window) = web_sys::window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Calls `then` when the frame now being made is on the screen: at the start of the frame after it.
pub fn after_paint(then: impl FnOnce() + 'static) {
    next_frame(move || next_frame(then));
}

/// Waits until the frame now being made is on the screen and everybody else who waited for it has been told.
pub async fn painted() {
    let shown = js_sys::Promise::new(&mut |resolve, _| {
        after_paint(move || {
            if let Some(window) = web_sys::window() {
                let _ = window.set_timeout_with_callback(&resolve);
            }
        });
    });
    let _ = wasm_bindgen_futures::JsFuture::from(shown).await;
}

/// Presses what a test id names, as a touch would.
pub fn press(testid: &str) {
    let named = document().and_then(|page| page.query_selector(&format!("[data-testid='{testid}']")).ok().flatten());
    if let Some(element) = named.and_then(|element| element.dyn_into::<HtmlElement>().ok()) {
        element.click();
    }
}

fn next_frame(then: impl FnOnce() + 'static) {
    if let Some(window) = web_sys::window() {
        let _ = window.request_animation_frame(Closure::once_into_js(then).unchecked_ref());
    }
}

/// Notes in the browser's own timeline that the start has come this far, for `cargo xtask measure`.
pub fn passed(mark: &str) {
    if let Some(clock) = web_sys::window().and_then(|window| window.performance()) {
        // Nothing but a measure depends on it.
        let _ = clock.mark(mark);
    }
}

/// The name of the app's own module, which changes with every build.
#[must_use]
pub fn build() -> String {
    let tag = document().and_then(|page| page.query_selector("script[data-wasm]").ok().flatten());
    tag.and_then(|tag| tag.get_attribute("data-wasm")).unwrap_or_default()
}

/// Starts the page anew, from the version of the app that is in charge now.
pub fn reload() {
    if let Some(window) = web_sys::window() {
        let _ = window.location().reload();
    }
}

/// From now on a panic is written to the console and ends in a trap, on which `boot.js` shows the make-safe lines.
pub fn fail_on_panic() {
    console_error_panic_hook::set_once();
}
