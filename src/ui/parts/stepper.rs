//! A value that is turned up and down by steps.

use crate::ui::node::{Element, Tell, Text, el};

/// A value between two buttons. Their test ids are `testid-less` and `testid-more`, the value's is `testid`.
pub struct Stepper {
    /// What is turned.
    pub label: Text,
    /// Where it stands.
    pub value: String,
    /// What each button does, for who cannot see its sign: down, then up.
    pub names: [String; 2],
    /// Whether it can be turned on: down, then up.
    pub turns: [bool; 2],
    /// Called with whether it is turned up.
    pub on_turn: Tell<bool>,
    /// Its test id.
    pub testid: &'static str,
}

impl Stepper {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            label,
            value,
            names: [less, more],
            turns,
            on_turn,
            testid,
        } = self;
        let key = |up: bool, name: String| {
            let on_turn = on_turn.clone();
            let (sign, end) = if up { ("+", "more") } else { ("\u{2212}", "less") };
            el("button")
                .attr("type", "button")
                .attr("aria-label", name)
                .testid(format!("{testid}-{end}"))
                .flag("disabled", !turns[usize::from(up)])
                .on("click", move |_| on_turn.run(up))
                .text(sign)
        };
        el("div")
            .class("stepper")
            .child(el("span").text(label))
            .child(key(false, less))
            .child(el("output").testid(testid).text(value))
            .child(key(true, more))
    }
}
