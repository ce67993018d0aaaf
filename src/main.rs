//! Mounts the app in the page; a native build only says how to make one.

#[cfg(target_arch = "wasm32")]
fn main() {
    panward::browser::page::passed("module-runs");
    panward::browser::page::fail_on_panic();
    panward::ui::mount();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("Panward runs in a browser: cargo xtask serve");
}
