//! The calls of the Indexed Database API (W3C) that the journal needs, and how their outcomes become ours.

use js_sys::{Array, Function, JsString, Object, Promise, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

use crate::store::StoreFault;

#[wasm_bindgen]
extern "C" {
    pub type Factory;
    #[wasm_bindgen(method, catch)]
    pub fn open(this: &Factory, name: &str, version: u32) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = deleteDatabase)]
    pub fn delete(this: &Factory, name: &str) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch)]
    pub fn databases(this: &Factory) -> Result<Promise, JsValue>;

    pub type Request;
    #[wasm_bindgen(method, getter)]
    pub fn result(this: &Request) -> JsValue;
    #[wasm_bindgen(method, getter)]
    pub fn error(this: &Request) -> JsValue;
    #[wasm_bindgen(method, setter, js_name = onsuccess)]
    pub fn on_success(this: &Request, then: &Function);
    #[wasm_bindgen(method, setter, js_name = onerror)]
    pub fn on_error(this: &Request, then: &Function);
    #[wasm_bindgen(method, setter, js_name = onblocked)]
    pub fn on_blocked(this: &Request, then: &Function);
    #[wasm_bindgen(method, setter, js_name = onupgradeneeded)]
    pub fn on_upgrade(this: &Request, then: &Function);

    #[derive(Debug)]
    pub type Database;
    #[wasm_bindgen(method, catch, js_name = createObjectStore)]
    pub fn create_store(this: &Database, name: &str) -> Result<Store, JsValue>;
    #[wasm_bindgen(method, catch)]
    pub fn transaction(this: &Database, store: &str, mode: &str, options: &Object) -> Result<Transaction, JsValue>;
    #[wasm_bindgen(method)]
    pub fn close(this: &Database);
    #[wasm_bindgen(method, getter, js_name = close)]
    pub fn close_function(this: &Database) -> Function;
    #[wasm_bindgen(method, setter, js_name = onversionchange)]
    pub fn on_version_change(this: &Database, then: &Function);

    pub type Transaction;
    #[wasm_bindgen(method, catch, js_name = objectStore)]
    pub fn store(this: &Transaction, name: &str) -> Result<Store, JsValue>;
    #[wasm_bindgen(method, getter, js_name = error)]
    pub fn fault(this: &Transaction) -> JsValue;
    #[wasm_bindgen(method, catch)]
    pub fn abort(this: &Transaction) -> Result<(), JsValue>;
    #[wasm_bindgen(method, setter, js_name = oncomplete)]
    pub fn on_complete(this: &Transaction, then: &Function);
    #[wasm_bindgen(method, setter, js_name = onabort)]
    pub fn on_abort(this: &Transaction, then: &Function);

    pub type Store;
    #[wasm_bindgen(method, catch)]
    pub fn add(this: &Store, value: &JsValue, key: &JsValue) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getAll)]
    pub fn get_all(this: &Store) -> Result<Request, JsValue>;
    #[wasm_bindgen(method, catch, js_name = getAllKeys)]
    pub fn get_all_keys(this: &Store) -> Result<Request, JsValue>;

    type TextEncoder;
    #[wasm_bindgen(constructor)]
    fn new() -> TextEncoder;
    #[wasm_bindgen(method)]
    fn encode(this: &TextEncoder, text: &JsString) -> Uint8Array;
}

/// All values of an array, a line each, brought over in one piece: one crossing from the page to the module, not one
/// for each of thousands of lines.
pub fn joined(values: &Array) -> Option<String> {
    let bytes = TextEncoder::new().encode(&values.join("\n"));
    String::from_utf8(bytes.to_vec()).ok()
}

/// The browser's IndexedDB.
pub fn factory() -> Result<Factory, StoreFault> {
    match Reflect::get(&js_sys::global(), &"indexedDB".into()) {
        Ok(factory) if factory.is_object() => Ok(factory.unchecked_into()),
        Ok(_) | Err(_) => Err(StoreFault::Blocked),
    }
}

/// Listens to a request from now on; the promise settles with it.
pub fn listen(request: &Request) -> Promise {
    Promise::new(&mut |resolve, reject| {
        request.on_success(&resolve);
        request.on_error(&reject);
    })
}

/// What a request gives, once `heard` (see [`listen`]) says it is there.
pub async fn outcome(request: &Request, heard: Promise) -> Result<JsValue, StoreFault> {
    match JsFuture::from(heard).await {
        Ok(_) => Ok(request.result()),
        Err(_) => Err(fault(&request.error())),
    }
}

/// The fault a thrown or reported exception stands for, by its name (W3C Indexed Database API, exceptions).
pub fn fault(exception: &JsValue) -> StoreFault {
    let name = Reflect::get(exception, &"name".into())
        .ok()
        .and_then(|name| name.as_string());
    match name.as_deref() {
        Some("QuotaExceededError") => StoreFault::Full,
        Some("SecurityError" | "NotAllowedError") => StoreFault::Blocked,
        Some("InvalidStateError") => StoreFault::Closed,
        Some("ConstraintError") => StoreFault::Taken,
        Some(name) => StoreFault::Failed { why: name.to_owned() },
        // A transaction aborted without an exception: the browser took the database away.
        None => StoreFault::Closed,
    }
}
