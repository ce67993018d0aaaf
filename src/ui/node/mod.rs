//! What a screen draws, as data of one type: built by plain calls, put in the page and brought up to date by one
//! renderer under Leptos's effects.
//!
//! A view of its own type for each screen and nesting made the shipped app twice as heavy as it may be; the figures
//! stand in DEVELOPERS.md, "Where the bytes are". Here every screen is the same small code over and over: a call per
//! element, attribute and touch.

mod act;
mod element;
mod held;
mod said;
mod shown;

use std::borrow::Cow;

pub use act::{Act, Tell};
pub use element::{Element, Words, el, svg};
pub use held::{Held, Reach, follow, worked_out};
pub use said::{speak, typed_in};
pub use shown::{Mounted, mount};

/// Words, drawn as the kitchen's country says them.
pub type Text = Cow<'static, str>;

/// Something drawn.
pub enum Node {
    /// Nothing: keeps the place of what is not there now.
    Nothing,
    /// Words.
    Text(Text),
    /// An element with all it holds.
    Element(Element),
    /// One after the other.
    Several(Vec<Node>),
    /// Drawn again whenever a signal it read has changed.
    Live(Box<dyn Fn() -> Node>),
}

/// Drawn now, and again whenever a signal that `draw` read has changed. What stays the same in the page stays in
/// place: a field keeps its cursor, a list its scroll.
pub fn live<N: Into<Node>>(draw: impl Fn() -> N + 'static) -> Node {
    Node::Live(Box::new(move || draw().into()))
}

/// All of these, one after the other.
pub fn several<N: Into<Node>>(all: impl IntoIterator<Item = N>) -> Node {
    Node::Several(all.into_iter().map(Into::into).collect())
}

/// Nodes of different kinds, one after the other: `nodes![a, b, c]`.
#[macro_export]
macro_rules! nodes {
    ($($node:expr),* $(,)?) => {
        $crate::ui::node::Node::Several(::std::vec![$($crate::ui::node::Node::from($node)),*])
    };
}

impl From<Element> for Node {
    fn from(element: Element) -> Self {
        Self::Element(element)
    }
}

impl From<&'static str> for Node {
    fn from(words: &'static str) -> Self {
        Self::Text(Cow::Borrowed(words))
    }
}

impl From<String> for Node {
    fn from(words: String) -> Self {
        Self::Text(Cow::Owned(words))
    }
}

impl From<Text> for Node {
    fn from(words: Text) -> Self {
        Self::Text(words)
    }
}

impl From<Vec<Self>> for Node {
    fn from(all: Vec<Self>) -> Self {
        Self::Several(all)
    }
}

impl<N: Into<Self>> From<Option<N>> for Node {
    fn from(maybe: Option<N>) -> Self {
        maybe.map_or(Self::Nothing, Into::into)
    }
}
