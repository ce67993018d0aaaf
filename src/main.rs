//! Mounts the app in the page; a native build only says how to make one.

fn main() {
    println!("Panward runs in a browser: cargo xtask serve");
}
