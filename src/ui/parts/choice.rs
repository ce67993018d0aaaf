//! A choice of one among a few, as a row of buttons. Nothing is chosen beforehand unless the caller says so.

use crate::ui::node::{Element, Tell, Text, el};

/// One among a few. Each option's test id is `testid-key`.
pub struct Choice {
    /// What is asked.
    pub legend: Text,
    /// The options: key and words.
    pub options: Vec<(String, String)>,
    /// The key chosen, if any.
    pub chosen: Option<String>,
    /// Called with the key pressed.
    pub on_choose: Tell<String>,
    /// The error in words, if any.
    pub error: Option<String>,
    /// Its test id, the stem of its options'.
    pub testid: Text,
}

impl Choice {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            legend,
            options,
            chosen,
            on_choose,
            error,
            testid,
        } = self;
        let buttons = options.into_iter().map(|(key, words)| {
            let on_choose = on_choose.clone();
            let is_chosen = chosen.as_ref() == Some(&key);
            el("button")
                .attr("type", "button")
                .attr("aria-pressed", if is_chosen { "true" } else { "false" })
                .testid(format!("{testid}-{key}"))
                .on("click", move |_| on_choose.run(key.clone()))
                .text(words)
        });
        el("fieldset")
            .class("choice field")
            .child(el("legend").text(legend))
            .child(el("div").class("choice-row").children(buttons))
            .child(super::field::error_line(error))
            .testid(testid)
    }
}
