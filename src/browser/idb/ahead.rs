//! The log as `boot.js` read it while the module was still on its way.

use js_sys::{Array, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use super::Rows;
use super::sys::Database;

#[wasm_bindgen]
extern "C" {
    type Ahead;
    #[wasm_bindgen(method, getter)]
    fn name(this: &Ahead) -> String;
    #[wasm_bindgen(method, getter)]
    fn rows(this: &Ahead) -> Promise;
}

/// The open database, the names of its store and its rows, when the page read this log; once, then never again.
pub async fn take(name: &str) -> Option<(Database, Array, Rows)> {
    let (page, key) = (js_sys::global(), JsValue::from("panwardAhead"));
    let ahead: Ahead = Reflect::get(&page, &key)
        .ok()
        .filter(JsValue::is_object)?
        .unchecked_into();
    Reflect::delete_property(&page, &key).ok()?;
    let read: Array = JsFuture::from(ahead.rows()).await.ok()?.unchecked_into();
    let db: Database = read.get(0).unchecked_into();
    if ahead.name() != name {
        db.close();
        return None;
    }
    let [names, keys, lines] = [1, 2, 3].map(|at| read.get(at).unchecked_into());
    Some((db, names, (keys, lines)))
}
