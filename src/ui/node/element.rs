//! An element as a screen describes it, before it is in the page.

use std::borrow::Cow;
use std::rc::Rc;

use leptos::prelude::{Callable, Callback};
use web_sys::Event;
use web_sys::wasm_bindgen::JsCast;

use super::held::Reach;
use super::{Node, Text};

/// What an element does when something happens to it.
pub(super) type Hears = Rc<dyn Fn(&Event)>;

/// What the person may change in the page itself, so that it is compared with the page, not with what was drawn last.
#[derive(Clone, Debug)]
pub(super) enum Typed {
    /// The words in a field.
    Value(Text),
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

impl Element {
    /// An attribute. Not for `value` and `checked` of a field ([`Element::value`], [`Element::ticked`]), nor for
    /// `style`, which the page's policy forbids.
    #[must_use]
    pub fn attr(self, name: &'static str, value: impl Into<Text>) -> Self {
        self.put(name, value.into())
    }

    /// An attribute, where there is a value for it.
    #[must_use]
    pub fn attr_if(self, name: &'static str, value: Option<impl Into<Text>>) -> Self {
        match value {
            Some(value) => self.put(name, value.into()),
            None => self,
        }
    }

    /// An attribute that is there or not, such as `disabled`.
    #[must_use]
    pub fn flag(self, name: &'static str, on: bool) -> Self {
        if on { self.put(name, Cow::Borrowed("")) } else { self }
    }

    #[inline(never)]
    fn put(mut self, name: &'static str, value: Text) -> Self {
        self.0.attributes.push((name, value));
        self
    }

    /// One more class, or several with spaces between.
    #[must_use]
    pub fn class(self, class: impl Into<Text>) -> Self {
        self.classed(class.into())
    }

    /// One more class where `on`.
    #[must_use]
    pub fn class_if(self, class: &'static str, on: bool) -> Self {
        if on { self.classed(Cow::Borrowed(class)) } else { self }
    }

    #[inline(never)]
    fn classed(mut self, class: Text) -> Self {
        match self.0.attributes.iter_mut().find(|(name, _)| *name == "class") {
            Some((_, classes)) => {
                let classes = classes.to_mut();
                classes.push(' ');
                classes.push_str(&class);
            }
            None => self.0.attributes.push(("class", class)),
        }
        self
    }

    /// The name a test finds it by.
    #[must_use]
    pub fn testid(self, testid: impl Into<Text>) -> Self {
        self.put("data-testid", testid.into())
    }

    /// What it is, apart from others in the same place: with another key it is a new element, never the old one changed.
    #[must_use]
    pub fn key(mut self, key: impl Into<Text>) -> Self {
        self.0.key = Some(key.into());
        self
    }

    /// The words in a field.
    #[must_use]
    pub fn value(mut self, value: impl Into<Text>) -> Self {
        self.0.typed = Some(Typed::Value(value.into()));
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
        self.hear(event, Rc::new(does))
    }

    #[inline(never)]
    fn hear(mut self, event: &'static str, does: Hears) -> Self {
        self.0.hears.push((event, does));
        self
    }

    /// What it does when it is pressed and let go inside.
    #[must_use]
    pub fn on_press(self, does: impl Into<Callback<()>>) -> Self {
        self.pressed(does.into())
    }

    #[inline(never)]
    fn pressed(self, does: Callback<()>) -> Self {
        self.hear("click", Rc::new(move |_| does.run(())))
    }

    /// Called with the words in the field at each change.
    #[must_use]
    pub fn on_typed(self, does: impl Into<Callback<String>>) -> Self {
        self.typed("input", does.into())
    }

    /// Called with the words in the field, or the option chosen, once the change is done.
    #[must_use]
    pub fn on_change(self, does: impl Into<Callback<String>>) -> Self {
        self.typed("change", does.into())
    }

    #[inline(never)]
    fn typed(self, event: &'static str, does: Callback<String>) -> Self {
        self.hear(event, Rc::new(move |event| does.run(value_of(event))))
    }

    /// Called with whether the box is ticked now.
    #[must_use]
    pub fn on_ticked(self, does: impl Into<Callback<bool>>) -> Self {
        let does = does.into();
        self.hear("change", Rc::new(move |event| does.run(is_ticked(event))))
    }

    /// Something in it, after what is in it already.
    #[must_use]
    pub fn child(self, node: impl Into<Node>) -> Self {
        self.hold(node.into())
    }

    /// Words in it.
    #[must_use]
    pub fn text(self, words: impl Into<Text>) -> Self {
        self.hold(Node::Text(words.into()))
    }

    #[inline(never)]
    fn hold(mut self, node: Node) -> Self {
        self.0.kids.push(node);
        self
    }

    /// All of these in it.
    #[must_use]
    pub fn children<N: Into<Node>>(mut self, nodes: impl IntoIterator<Item = N>) -> Self {
        self.0.kids.extend(nodes.into_iter().map(Into::into));
        self
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
