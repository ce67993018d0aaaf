//! The journal's promise on IndexedDB, in a browser; each test has a database of its own.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod store_suite;

use panward::browser::idb::IdbJournal;
use panward::domain::ids::Dev;
use panward::store::{Journal, StoreFault};
use store_suite::note;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

const DEV: Dev = Dev(0xabc);

/// A name no other test has.
fn a_name() -> String {
    format!(
        "panward-test-{:016x}",
        u64::from_le_bytes(panward::browser::clock::random_bytes())
    )
}

async fn fresh() -> IdbJournal {
    IdbJournal::open(&a_name(), DEV).await.expect("opens")
}

#[wasm_bindgen_test]
async fn append_then_load() {
    store_suite::append_then_load(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn order_is_of_cause() {
    store_suite::order_is_of_cause(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn all_or_nothing() {
    store_suite::all_or_nothing(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn a_place_is_taken_once() {
    store_suite::a_place_is_taken_once(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn nothing_is_nothing() {
    store_suite::nothing_is_nothing(&fresh().await).await;
}

#[wasm_bindgen_test]
async fn a_refused_write_leaves_nothing() {
    let name = a_name();
    let journal = IdbJournal::open(&name, DEV).await.expect("opens");
    let spoil = async |journal: &IdbJournal| {
        journal.close();
        StoreFault::Closed
    };
    let reopen = async |_closed| IdbJournal::open(&name, Dev(1)).await.expect("opens again");
    store_suite::a_refused_write_leaves_nothing(journal, spoil, reopen).await;
}

#[wasm_bindgen_test]
async fn a_log_deleted_elsewhere_closes_here_and_a_new_one_has_a_new_name() {
    let name = a_name();
    let here = IdbJournal::open(&name, DEV).await.expect("opens");
    here.append(&[note(DEV, 1, 0)]).await.expect("appends");

    IdbJournal::delete(&name).await.expect("an open log lets go");

    assert_eq!(here.append(&[note(DEV, 2, 1)]).await, Err(StoreFault::Closed));
    let next = IdbJournal::open(&name, Dev(2)).await.expect("opens");
    assert_eq!(next.dev(), Dev(2));
    assert_eq!(next.load().await.expect("loads").records, []);
}

#[wasm_bindgen_test]
async fn two_logs_know_nothing_of_each_other() {
    let (real, demo) = (fresh().await, fresh().await);
    demo.append(&[note(DEV, 1, 0)]).await.expect("appends");
    assert_eq!(real.load().await.expect("loads").records, []);
}
