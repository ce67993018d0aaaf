//! The log as `boot.js` read it while the module was still on its way.

use js_sys::{Array, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::Rows;
use super::sys::Database;

#[wasm_bindgen]
extern "C" {
    #[derive(Debug)]
    type Page;
    #[wasm_bindgen(method, getter)]
    fn name(this: &Page) -> String;
    #[wasm_bindgen(method, getter)]
    fn sign(this: &Page) -> Promise;
    #[wasm_bindgen(method)]
    fn rows(this: &Page) -> Promise;
}

/// A log that is being read, or will be.
#[derive(Debug)]
pub struct Ahead {
    /// How many entries it holds.
    pub entries: usize,
    page: Page,
}

impl Ahead {
    /// All of it, once it is there; `None` where it could not be read.
    pub async fn rows(self) -> Option<Rows> {
        let read: Array = JsFuture::from(self.page.rows()).await.ok()?.unchecked_into();
        let [keys, lines] = [1, 2].map(|at| read.get(at).unchecked_into());
        Some((keys, lines))
    }
}

/// The open database, the names of its store and its rows to come, when the page reads this log; once, then never
/// again.
pub async fn take(name: &str) -> Option<(Database, Array, Ahead)> {
    let (global, key) = (js_sys::global(), JsValue::from("panwardAhead"));
    let page: Page = Reflect::get(&global, &key)
        .ok()
        .filter(JsValue::is_object)?
        .unchecked_into();
    Reflect::delete_property(&global, &key).ok()?;
    let read: Array = JsFuture::from(page.sign()).await.ok()?.unchecked_into();
    let db: Database = read.get(0).unchecked_into();
    if page.name() != name {
        db.close();
        return None;
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of rows, which IndexedDB gives as a number"
    )]
    let entries = read.get(2).as_f64()? as usize;
    Some((db, read.get(1).unchecked_into(), Ahead { entries, page }))
}
