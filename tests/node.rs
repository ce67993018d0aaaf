//! The renderer in a real page: what stays the same stays in place, what changed is changed, what is gone is gone.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::{Owner, document, on_cleanup};
use leptos::task::tick;
use panward::nodes;
use panward::ui::node::{Held, Mounted, Node, Reach, Tell, el, follow, live, mount, several, svg, worked_out};
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::wasm_bindgen::JsCast;
use web_sys::{HtmlElement, HtmlInputElement};

wasm_bindgen_test_configure!(run_in_browser);

/// Draws into a fresh element of the page.
fn drawn(draw: impl FnOnce() -> Node + 'static) -> (HtmlElement, Mounted) {
    let place: HtmlElement = document().create_element("div").unwrap().unchecked_into();
    document().body().unwrap().append_child(&place).unwrap();
    let mounted = mount(&place, draw);
    (place, mounted)
}

fn found<E: JsCast>(place: &HtmlElement, testid: &str) -> E {
    let found = place.query_selector(&format!("[data-testid='{testid}']")).unwrap();
    found
        .unwrap_or_else(|| panic!("no {testid}: {}", place.inner_html()))
        .unchecked_into()
}

fn words(place: &HtmlElement) -> String {
    place.text_content().unwrap_or_default()
}

/// A value made outside a screen, for as long as the test runs.
fn held<T: 'static>(value: T) -> Held<T> {
    let owner = Owner::new();
    let held = owner.with(|| Held::new(value));
    std::mem::forget(owner);
    held
}

#[wasm_bindgen_test]
async fn an_element_that_stays_is_changed_in_place() {
    let on = held(false);
    let (place, _keep) = drawn(move || {
        live(move || {
            let on = on.get();
            el("p")
                .testid("it")
                .class("a")
                .class_if("b", on)
                .flag("hidden", on)
                .text(if on { "yes" } else { "no" })
        })
    });
    let before: HtmlElement = found(&place, "it");
    assert_eq!((before.class_name().as_str(), words(&place).as_str()), ("a", "no"));
    on.set(true);
    tick().await;
    let after: HtmlElement = found(&place, "it");
    assert!(before.is_same_node(Some(&after)));
    assert_eq!((after.class_name().as_str(), words(&place).as_str()), ("a b", "yes"));
    assert!(after.has_attribute("hidden"));
    on.set(false);
    tick().await;
    assert!(!after.has_attribute("hidden"));
}

#[wasm_bindgen_test]
async fn another_key_is_another_element_and_nothing_pressed_on_the_old_one_reaches_the_new() {
    let n = held(1);
    let pressed = held(Vec::new());
    let (place, _keep) = drawn(move || {
        live(move || {
            let n = n.get();
            el("button")
                .testid("it")
                .key(n.to_string())
                .on("click", move |_| pressed.update(|all| all.push(n)))
        })
    });
    let before: HtmlElement = found(&place, "it");
    n.set(2);
    tick().await;
    let after: HtmlElement = found(&place, "it");
    assert!(!before.is_same_node(Some(&after)));
    before.click();
    after.click();
    assert_eq!(pressed.get_untracked(), [2]);
}

#[wasm_bindgen_test]
async fn the_touch_of_a_button_that_stays_does_what_was_drawn_last() {
    let n = held(1);
    let pressed = held(Vec::new());
    let (place, _keep) = drawn(move || {
        live(move || {
            let n = n.get();
            el("button")
                .testid("it")
                .on("click", move |_| pressed.update(|all| all.push(n)))
        })
    });
    let button: HtmlElement = found(&place, "it");
    n.set(2);
    tick().await;
    button.click();
    assert_eq!(pressed.get_untracked(), [2]);
}

#[wasm_bindgen_test]
async fn a_list_grows_shrinks_and_keeps_its_place_between_its_neighbours() {
    let list = held(vec!["b"]);
    let (place, _keep) = drawn(move || {
        nodes![
            "a",
            live(move || several(list.get())),
            live(move || list.with(|list| (list.len() > 3).then_some("!"))),
            "z",
        ]
    });
    assert_eq!(words(&place), "abz");
    for (next, shown) in [
        (vec!["b", "c", "d"], "abcdz"),
        (vec![], "az"),
        (vec!["c"], "acz"),
        (vec!["1", "2", "3", "4"], "a1234!z"),
        (vec!["4"], "a4z"),
    ] {
        list.set(next);
        tick().await;
        assert_eq!(words(&place), shown);
    }
}

#[wasm_bindgen_test]
async fn one_kind_of_node_takes_the_place_of_another_wherever_it_stands() {
    let n = held(0);
    let (place, _keep) = drawn(move || {
        let changing = live(move || match n.get() {
            0 => Node::Nothing,
            1 => "words".into(),
            2 => el("b").text("bold").into(),
            3 => several(["one", "two"]),
            4 => live(|| live(|| "deep")),
            5 => el("i").text("slanted").into(),
            _ => svg("svg").child(svg("title").text("drawn")).into(),
        });
        nodes!["<", changing, ">"]
    });
    let shown = ["<>", "<words>", "<bold>", "<onetwo>", "<deep>", "<slanted>", "<drawn>"];
    for (from, to) in (0..7).flat_map(|from| (0..7).map(move |to| (from, to))) {
        n.set(from);
        tick().await;
        assert_eq!(words(&place), shown[from], "before {to}");
        n.set(to);
        tick().await;
        assert_eq!(words(&place), shown[to], "after {from}");
    }
}

#[wasm_bindgen_test]
async fn what_is_drawn_inside_follows_on_its_own_and_ends_with_what_drew_it() {
    let (outer, inner, ended) = (held(0), held(0), held(0));
    let (drawn_outer, drawn_inner) = (Rc::new(Cell::new(0)), Rc::new(Cell::new(0)));
    let (outers, inners) = (Rc::clone(&drawn_outer), Rc::clone(&drawn_inner));
    let (place, keep) = drawn(move || {
        live(move || {
            outers.set(outers.get() + 1);
            let n = outer.get();
            let inners = Rc::clone(&inners);
            on_cleanup(move || ended.update(|times| *times += 1));
            let inside = live(move || {
                inners.set(inners.get() + 1);
                format!("{n}.{}", inner.get())
            });
            el("p").child(inside)
        })
    });
    inner.set(1);
    tick().await;
    assert_eq!(
        (drawn_outer.get(), drawn_inner.get(), words(&place).as_str()),
        (1, 2, "0.1")
    );
    outer.set(5);
    tick().await;
    assert_eq!(
        (drawn_outer.get(), drawn_inner.get(), words(&place).as_str()),
        (2, 3, "5.1")
    );
    inner.set(2);
    tick().await;
    assert_eq!(
        (drawn_outer.get(), drawn_inner.get(), words(&place).as_str()),
        (2, 4, "5.2")
    );
    assert_eq!(ended.get_untracked(), 1);
    drop(keep);
    assert_eq!((ended.get_untracked(), words(&place).as_str()), (2, ""));
}

#[wasm_bindgen_test]
async fn a_field_keeps_its_cursor_and_its_words_while_everything_around_is_drawn_again() {
    let typed = held(String::new());
    let (place, _keep) = drawn(move || {
        live(move || {
            let typed_now = typed.get();
            let told = (typed_now.len() > 3).then(|| el("b").text("long"));
            let field = el("input")
                .testid("field")
                .value(typed_now)
                .on_typed(Tell::new(move |words| typed.set(words)));
            el("label").child(told).child(field)
        })
    });
    let field: HtmlInputElement = found(&place, "field");
    field.focus().unwrap();
    for words in ["a", "ab", "abcd"] {
        field.set_value(words);
        let event = web_sys::Event::new("input").unwrap();
        field.dispatch_event(&event).unwrap();
        tick().await;
    }
    assert_eq!(typed.get_untracked(), "abcd");
    assert!(found::<HtmlElement>(&place, "field").is_same_node(document().active_element().as_deref()));
    typed.set("set".to_owned());
    tick().await;
    assert_eq!(field.value(), "set");
}

#[wasm_bindgen_test]
async fn a_value_worked_out_draws_again_only_where_it_came_out_differently() {
    let n = held(1);
    let draws = Rc::new(Cell::new(0));
    let counted = Rc::clone(&draws);
    let (place, _keep) = drawn(move || {
        let even = worked_out(move || n.get() % 2 == 0);
        live(move || {
            counted.set(counted.get() + 1);
            if even.get() { "even" } else { "odd" }
        })
    });
    for (next, shown, times) in [(3, "odd", 1), (4, "even", 2), (6, "even", 2), (7, "odd", 3)] {
        n.set(next);
        tick().await;
        tick().await;
        assert_eq!((words(&place).as_str(), draws.get()), (shown, times), "{next}");
    }
}

#[wasm_bindgen_test]
async fn a_handle_reaches_the_element_once_it_is_in_the_page() {
    let seen = held(String::new());
    let (_place, _keep) = drawn(move || {
        let reach = Reach::new();
        assert!(reach.get().is_none());
        follow(move || seen.set(reach.get().map(|it| it.tag_name()).unwrap_or_default()));
        el("main").reach(reach).into()
    });
    tick().await;
    assert_eq!(seen.get_untracked(), "MAIN");
}
