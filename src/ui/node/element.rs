//! An element as a screen describes it, before it is in the page.

use std::borrow::Cow;
use std::rc::Rc;

use web_sys::Event;
use web_sys::wasm_bindgen::JsCast;

use super::act::{Act, Tell};
use super::held::Reach;
use super::said::{is_spoken, said};
use super::{Node, Text};
use crate::domain::measure::Measure;

/// What an element does when something happens to it.
pub(super) type Hears = Rc<dyn Fn(&Event)>;

/// What the person may change in the page itself, so that it is compared with the page, not with what was drawn last.
#[derive(Clone, Debug)]
pub(super) enum Typed {
    /// The words in a field, and the measure a number is typed in, where that is not our own.
    Value(Text, Option<Measure>),
    /// Whether a box is ticked.
    Ticked(bool),
}

/// An element. Every call adds to it; the order of calls is the order in the page.
pub struct Element(pub(super) Box<Parts>);

pub(super) struct Parts {
    pub tag: &'static str,
    pub svg: bool,
    pub key: Option<Text>,
    pub attributes: Vec<(&'static str, Text)>,
    pub typed: Option<Typed>,
    pub hears: Vec<(&'static str, Hears)>,
    pub kids: Vec<Node>,
    pub reach: Option<Reach>,
}

/// An HTML element.
#[must_use]
pub fn el(tag: &'static str) -> Element {
    bare(tag, false)
}

/// An element of a drawing: `svg` itself and everything in it.
#[must_use]
pub fn svg(tag: &'static str) -> Element {
    bare(tag, true)
}

#[inline(never)]
fn bare(tag: &'static str, svg: bool) -> Element {
    Element(Box::new(Parts {
        tag,
        svg,
        key: None,
        attributes: Vec::new(),
        typed: None,
        hears: Vec::new(),
        kids: Vec::new(),
        reach: None,
    }))
}

/// What can be words of an element. Each kind has its own compiled way in, so that a call costs the app no more than
/// its arguments: there are thousands of them.
pub trait Words: Sized {
    /// These words.
    fn text(self) -> Text;

    /// Puts them on an attribute.
    #[inline(never)]
    fn on_attribute(self, element: Element, name: &'static str) -> Element {
        put(element, name, self.text())
    }

    /// Adds them to the classes.
    #[inline(never)]
    fn on_class(self, element: Element) -> Element {
        classed(element, &self.text())
    }

    /// Puts them inside.
    #[inline(never)]
    fn inside(self, element: Element) -> Element {
        hold(element, Node::Text(self.text()))
    }
}

impl Words for &'static str {
    fn text(self) -> Text {
        Cow::Borrowed(self)
    }
}

impl Words for String {
    fn text(self) -> Text {
        Cow::Owned(self)
    }
}

impl Words for Text {
    fn text(self) -> Text {
        self
    }
}

#[inline(never)]
fn put(mut element: Element, name: &'static str, value: Text) -> Element {
    let value = if is_spoken(name) { said(value) } else { value };
    element.0.attributes.push((name, value));
    element
}

#[inline(never)]
fn classed(mut element: Element, class: &str) -> Element {
    match element.0.attributes.iter_mut().find(|(name, _)| *name == "class") {
        Some((_, classes)) => {
            let classes = classes.to_mut();
            classes.push(' ');
            classes.push_str(class);
        }
        None => element.0.attributes.push(("class", Cow::Owned(class.to_owned()))),
    }
    element
}

#[inline(never)]
fn hold(mut element: Element, node: Node) -> Element {
    element.0.kids.push(node);
    element
}

#[inline(never)]
fn hear(mut element: Element, event: &'static str, does: Hears) -> Element {
    element.0.hears.push((event, does));
    element
}

impl Element {
    /// An attribute. Not for `value` and `checked` of a field ([`Element::value`], [`Element::ticked`]), nor for
    /// `style`, which the page's policy forbids.
    #[must_use]
    pub fn attr(self, name: &'static str, value: impl Words) -> Self {
        value.on_attribute(self, name)
    }

    /// An attribute, where there is a value for it.
    #[must_use]
    pub fn attr_if(self, name: &'static str, value: Option<impl Words>) -> Self {
        match value {
            Some(value) => value.on_attribute(self, name),
            None => self,
        }
    }

    /// An attribute that is there or not, such as `disabled`.
    #[must_use]
    #[inline(never)]
    pub fn flag(self, name: &'static str, on: bool) -> Self {
        if on { self.attr(name, "") } else { self }
    }

    /// One more class, or several with spaces between.
    #[must_use]
    pub fn class(self, class: impl Words) -> Self {
        class.on_class(self)
    }

    /// One more class where `on`.
    #[must_use]
    #[inline(never)]
    pub fn class_if(self, class: &'static str, on: bool) -> Self {
        if on { self.class(class) } else { self }
    }

    /// The name a test finds it by.
    #[must_use]
    pub fn testid(self, testid: impl Words) -> Self {
        testid.on_attribute(self, "data-testid")
    }

    /// What it is, apart from others in the same place: with another key it is a new element, never the old one changed.
    #[must_use]
    pub fn key(mut self, key: impl Words) -> Self {
        self.0.key = Some(key.text());
        self
    }

    /// The words in a field.
    #[must_use]
    pub fn value(self, value: impl Words) -> Self {
        self.value_in(value, None)
    }

    /// The number in a field, which is typed in another measure than our own.
    #[must_use]
    pub fn value_in(mut self, value: impl Words, measure: Option<Measure>) -> Self {
        self.0.typed = Some(Typed::Value(value.text(), measure));
        self
    }

    /// Whether a box is ticked.
    #[must_use]
    pub fn ticked(mut self, on: bool) -> Self {
        self.0.typed = Some(Typed::Ticked(on));
        self
    }

    /// A handle on it, once it is in the page.
    #[must_use]
    pub fn reach(mut self, reach: Reach) -> Self {
        self.0.reach = Some(reach);
        self
    }

    /// What it does at an event.
    #[must_use]
    pub fn on(self, event: &'static str, does: impl Fn(&Event) + 'static) -> Self {
        hear(self, event, Rc::new(does))
    }

    /// What it does when it is pressed and let go inside.
    #[must_use]
    pub fn on_press(self, does: impl Into<Act>) -> Self {
        self.pressed(does.into())
    }

    #[inline(never)]
    fn pressed(self, does: Act) -> Self {
        hear(self, "click", Rc::new(move |_| does.run()))
    }

    /// Called with the words in the field at each change.
    #[must_use]
    #[inline(never)]
    pub fn on_typed(self, does: Tell<String>) -> Self {
        hear(self, "input", Rc::new(move |event| does.run(value_of(event))))
    }

    /// Called with the words in the field, or the option chosen, once the change is done.
    #[must_use]
    #[inline(never)]
    pub fn on_change(self, does: Tell<String>) -> Self {
        hear(self, "change", Rc::new(move |event| does.run(value_of(event))))
    }

    /// Called with whether the box is ticked now.
    #[must_use]
    #[inline(never)]
    pub fn on_ticked(self, does: Tell<bool>) -> Self {
        hear(self, "change", Rc::new(move |event| does.run(is_ticked(event))))
    }

    /// Something in it, after what is in it already.
    #[must_use]
    pub fn child(self, node: impl Into<Node>) -> Self {
        hold(self, node.into())
    }

    /// Words in it.
    #[must_use]
    pub fn text(self, words: impl Words) -> Self {
        words.inside(self)
    }

    /// All of these in it.
    #[must_use]
    pub fn children<N: Into<Node>>(self, nodes: impl IntoIterator<Item = N>) -> Self {
        nodes.into_iter().fold(self, |element, node| hold(element, node.into()))
    }
}

fn value_of(event: &Event) -> String {
    let Some(target) = event.target() else {
        return String::new();
    };
    match target.dyn_ref::<web_sys::HtmlInputElement>() {
        Some(input) => input.value(),
        None => target
            .dyn_ref::<web_sys::HtmlSelectElement>()
            .map(web_sys::HtmlSelectElement::value)
            .or_else(|| {
                target
                    .dyn_ref::<web_sys::HtmlTextAreaElement>()
                    .map(web_sys::HtmlTextAreaElement::value)
            })
            .unwrap_or_default(),
    }
}

fn is_ticked(event: &Event) -> bool {
    let target = event.target();
    let input = target
        .as_ref()
        .and_then(|target| target.dyn_ref::<web_sys::HtmlInputElement>());
    input.is_some_and(web_sys::HtmlInputElement::checked)
}
