//! What is in the page now, and how it is brought up to date with what is drawn next.

use std::cell::{OnceCell, RefCell};
use std::rc::Rc;

use leptos::mount::{UnmountHandle, mount_to};
use leptos::prelude::{RenderEffect, document};
use web_sys::wasm_bindgen::JsCast;
use web_sys::wasm_bindgen::closure::Closure;
use web_sys::{Comment, Event, HtmlElement, HtmlInputElement};

use super::element::{Element, Hears, Parts, Typed};
use super::said::said;
use super::{Node, Text};
use crate::words::local::{from_field, to_field};

const SVG: &str = "http://www.w3.org/2000/svg";

/// A node in the page. Every one of them has at least one place in it, if only an empty comment, so that what comes
/// next knows where it belongs.
pub(super) enum Shown {
    Nothing(web_sys::Node),
    Text(web_sys::Node, Text),
    Element(Box<ShownElement>),
    /// Its nodes, and the comment that ends them.
    Several(Vec<Shown>, web_sys::Node),
    Live(RenderEffect<Shown>),
}

pub(super) struct ShownElement {
    at: web_sys::Element,
    tag: &'static str,
    key: Option<Text>,
    attributes: Vec<(&'static str, Text)>,
    hears: Vec<Heard>,
    kids: Vec<Shown>,
}

/// One event heard: what it does now, and the listener the page calls.
struct Heard {
    event: &'static str,
    does: Rc<RefCell<Hears>>,
    _listener: Closure<dyn FnMut(Event)>,
}

fn comment() -> web_sys::Node {
    document().create_comment("").into()
}

/// A node the page made by itself for a name it knows cannot be refused.
fn create(parts: &Parts) -> web_sys::Element {
    let made = if parts.svg {
        document().create_element_ns(Some(SVG), parts.tag)
    } else {
        document().create_element(parts.tag)
    };
    made.unwrap_or_else(|_| {
        document()
            .create_element("div")
            .unwrap_or_else(|_| unreachable_element())
    })
}

#[expect(
    clippy::panic,
    reason = "a page that makes no element shows what it carries itself instead"
)]
fn unreachable_element() -> web_sys::Element {
    panic!("the page makes no elements")
}

fn hear(at: &web_sys::Element, event: &'static str, does: Hears) -> Heard {
    let does = Rc::new(RefCell::new(does));
    let now = Rc::clone(&does);
    let listener = Closure::<dyn FnMut(Event)>::new(move |event: Event| {
        let does = Rc::clone(&now.borrow());
        does(&event);
    });
    // A listener on an element just made is never refused.
    let _ = at.add_event_listener_with_callback(event, listener.as_ref().unchecked_ref());
    Heard {
        event,
        does,
        _listener: listener,
    }
}

fn put_attribute(at: &web_sys::Element, name: &str, value: &str) {
    // Names are written in the code, and the page takes any value.
    let _ = at.set_attribute(name, value);
}

fn put_typed(at: &web_sys::Element, typed: &Typed) {
    let Some(input) = at.dyn_ref::<HtmlInputElement>() else {
        return;
    };
    match typed {
        Typed::Value(value, None) => {
            if input.value() != **value {
                input.set_value(value);
            }
        }
        Typed::Value(value, Some(measure)) => {
            // What comes to the same value stays as it is being typed.
            let (stands, here) = (input.value(), to_field(value, *measure));
            if stands != here && from_field(&stands, *measure) != **value {
                input.set_value(&here);
            }
        }
        Typed::Ticked(on) => input.set_checked(*on),
    }
}

fn insert(parent: &web_sys::Node, node: &web_sys::Node, before: Option<&web_sys::Node>) {
    // Refused only where `before` has left `parent`: then what is drawn next puts it right.
    let _ = parent.insert_before(node, before);
}

fn remove(node: &web_sys::Node) {
    if let Some(parent) = node.parent_node() {
        let _ = parent.remove_child(node);
    }
}

/// Makes a node of the page, not yet in it.
fn build(node: Node) -> Shown {
    match node {
        Node::Nothing => Shown::Nothing(comment()),
        Node::Text(words) => {
            let words = said(words);
            Shown::Text(document().create_text_node(&words).into(), words)
        }
        Node::Element(Element(parts)) => build_element(*parts),
        Node::Several(nodes) => Shown::Several(nodes.into_iter().map(build).collect(), comment()),
        Node::Live(draw) => Shown::Live(enliven(draw, None)),
    }
}

fn build_element(parts: Parts) -> Shown {
    let at = create(&parts);
    for (name, value) in &parts.attributes {
        put_attribute(&at, name, value);
    }
    let kids: Vec<Shown> = parts.kids.into_iter().map(build).collect();
    for kid in &kids {
        kid.insert(&at, None);
    }
    if let Some(typed) = &parts.typed {
        put_typed(&at, typed);
    }
    if let Some(reach) = parts.reach
        && let Some(element) = at.dyn_ref::<HtmlElement>()
    {
        reach.put(element.clone());
    }
    let hears = parts.hears.into_iter().map(|(event, does)| hear(&at, event, does));
    Shown::Element(Box::new(ShownElement {
        hears: hears.collect(),
        at,
        tag: parts.tag,
        key: parts.key,
        attributes: parts.attributes,
        kids,
    }))
}

fn enliven(draw: Box<dyn Fn() -> Node>, before: Option<Shown>) -> RenderEffect<Shown> {
    RenderEffect::new_with_value(
        move |before| {
            let node = draw();
            match before {
                Some(mut shown) => {
                    shown.update(node);
                    shown
                }
                None => build(node),
            }
        },
        before,
    )
}

impl Shown {
    /// Puts it into `parent`, before `before` or last.
    fn insert(&self, parent: &web_sys::Node, before: Option<&web_sys::Node>) {
        match self {
            Self::Nothing(at) | Self::Text(at, _) => insert(parent, at, before),
            Self::Element(element) => insert(parent, &element.at, before),
            Self::Several(all, end) => {
                for one in all {
                    one.insert(parent, before);
                }
                insert(parent, end, before);
            }
            Self::Live(effect) => {
                effect.with_value_mut(|shown| shown.insert(parent, before));
            }
        }
    }

    fn remove(&self) {
        match self {
            Self::Nothing(at) | Self::Text(at, _) => remove(at),
            Self::Element(element) => remove(&element.at),
            Self::Several(all, end) => {
                for one in all {
                    one.remove();
                }
                remove(end);
            }
            Self::Live(effect) => {
                effect.with_value_mut(|shown| shown.remove());
            }
        }
    }

    /// The first of its nodes in the page.
    fn first(&self) -> Option<web_sys::Node> {
        match self {
            Self::Nothing(at) | Self::Text(at, _) => Some(at.clone()),
            Self::Element(element) => Some(element.at.clone().into()),
            Self::Several(all, end) => all.first().map_or_else(|| Some(end.clone()), Self::first),
            Self::Live(effect) => effect.with_value_mut(|shown| shown.first()).flatten(),
        }
    }

    /// Brings what is in the page up to date with `node`, changing only what differs.
    fn update(&mut self, node: Node) {
        match (self, node) {
            (Self::Nothing(_), Node::Nothing) => {}
            (Self::Text(at, words), Node::Text(next)) => {
                let next = said(next);
                if *words != next {
                    at.set_node_value(Some(&next));
                    *words = next;
                }
            }
            (Self::Element(element), Node::Element(Element(parts))) if element.is_same(&parts) => {
                element.update(*parts)
            }
            (Self::Several(all, end), Node::Several(nodes)) => {
                if let Some(parent) = end.parent_node() {
                    update_all(all, nodes, &parent, Some(end));
                }
            }
            (Self::Live(effect), Node::Live(draw)) => *effect = enliven(draw, effect.take_value()),
            (shown, node) => {
                let next = build(node);
                if let Some(first) = shown.first()
                    && let Some(parent) = first.parent_node()
                {
                    next.insert(&parent, Some(&first));
                }
                shown.remove();
                *shown = next;
            }
        }
    }
}

fn update_all(shown: &mut Vec<Shown>, nodes: Vec<Node>, parent: &web_sys::Node, end: Option<&web_sys::Node>) {
    for gone in shown.drain(nodes.len().min(shown.len())..) {
        gone.remove();
    }
    let known = shown.len();
    for (n, node) in nodes.into_iter().enumerate() {
        if n < known {
            shown[n].update(node);
        } else {
            let next = build(node);
            next.insert(parent, end);
            shown.push(next);
        }
    }
}

impl ShownElement {
    /// Whether it can become `parts` by changes: the same element, hearing the same events.
    fn is_same(&self, parts: &Parts) -> bool {
        self.tag == parts.tag
            && self.key == parts.key
            && self.hears.len() == parts.hears.len()
            && self
                .hears
                .iter()
                .zip(&parts.hears)
                .all(|(heard, (event, _))| heard.event == *event)
    }

    fn update(&mut self, parts: Parts) {
        for (name, _) in &self.attributes {
            if !parts.attributes.iter().any(|(next, _)| next == name) {
                // Taking away what is there is never refused.
                let _ = self.at.remove_attribute(name);
            }
        }
        for (name, value) in &parts.attributes {
            if !self.attributes.iter().any(|(now, held)| now == name && held == value) {
                put_attribute(&self.at, name, value);
            }
        }
        self.attributes = parts.attributes;
        update_all(&mut self.kids, parts.kids, &self.at, None);
        if let Some(typed) = &parts.typed {
            put_typed(&self.at, typed);
        }
        for (heard, (_, does)) in self.hears.iter().zip(parts.hears) {
            *heard.does.borrow_mut() = does;
        }
        if let Some(reach) = parts.reach
            && let Some(element) = self.at.dyn_ref::<HtmlElement>()
        {
            reach.put(element.clone());
        }
    }
}

/// What [`mount`] put in the page; taken out of it again when this is dropped.
pub struct Mounted {
    shown: Rc<Shown>,
    _root: UnmountHandle<Comment>,
}

impl Mounted {
    /// Leaves it in the page for as long as the page stands.
    pub fn forget(self) {
        std::mem::forget(self);
    }
}

impl Drop for Mounted {
    fn drop(&mut self) {
        self.shown.remove();
    }
}

/// Draws into `place`, after what is there, under an owner of Leptos's.
pub fn mount<N: Into<Node>>(place: &HtmlElement, draw: impl FnOnce() -> N + 'static) -> Mounted {
    let made = Rc::new(OnceCell::new());
    let slot = Rc::clone(&made);
    let root = mount_to(place.clone(), move || {
        // It runs once: nothing stands in the slot yet.
        let _ = slot.set(Rc::new(build(draw().into())));
    });
    let shown = Rc::clone(made.get_or_init(|| Rc::new(Shown::Nothing(comment()))));
    shown.insert(place, None);
    Mounted { shown, _root: root }
}
