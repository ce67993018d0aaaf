//! A counter and nothing else: the least a Leptos page can be, to measure the start of the app against.

#[cfg(target_arch = "wasm32")]
fn main() {
    use leptos::prelude::*;
    use panward::browser::page;

    let Some(place) = page::app_element() else { return };
    let counter = || {
        let (count, set_count) = signal(0);
        Effect::new(|_| page::set_ready());
        view! { <button data-testid="count" on:click=move |_| set_count.update(|count| *count += 1)>{count}</button> }
    };
    mount_to(place, counter).forget();
    page::set_running();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("a measure for browsers: cargo xtask measure");
}
