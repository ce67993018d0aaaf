//! A sheet over the whole screen, for the Fire and Burn cards and for questions that must be answered alone.

use web_sys::HtmlDialogElement;
use web_sys::wasm_bindgen::JsCast;

use super::sign::{SignKind, sign_picture};
use crate::ui::node::{Act, Element, Node, Reach, Text, el, follow};

/// A modal sheet: what lies beneath cannot be touched or read until it is closed, so Fire and Burn stand in it too.
pub struct Sheet {
    /// Whether it is open, followed.
    pub open: Box<dyn Fn() -> bool>,
    /// Called when it was closed by its button or by the escape key.
    pub on_close: Act,
    /// Its title.
    pub title: Text,
    /// The sign beside the title.
    pub sign: Option<SignKind>,
    /// Fire and Burn, which it lies over; of one of the cards only the other.
    pub emergency: Node,
    /// What its button says.
    pub close: Text,
    /// Its test id; the button's is `testid-close`.
    pub testid: &'static str,
    /// What it holds.
    pub holds: Node,
}

impl Sheet {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self {
            open,
            on_close,
            title,
            sign,
            emergency,
            close,
            testid,
            holds,
        } = self;
        let reach = Reach::new();
        follow(move || show(reach, open()));
        let title_id = format!("{testid}-title");
        let labelled_by = title_id.clone();
        let close = el("button")
            .attr("type", "button")
            .testid(format!("{testid}-close"))
            .on_press(on_close.clone())
            .text(close);
        let top = el("div")
            .class("sheet-top")
            .child(sign.map(sign_picture))
            .child(el("h1").attr("id", title_id).text(title))
            .child(emergency)
            .child(close);
        el("dialog")
            .class("sheet")
            .attr("aria-labelledby", labelled_by)
            .testid(testid)
            .reach(reach)
            .on("cancel", move |_| on_close.run())
            .child(el("div").class("sheet-in").child(top).child(holds))
    }
}

fn show(reach: Reach, open: bool) {
    let Some(dialog) = reach.get().and_then(|found| found.dyn_into::<HtmlDialogElement>().ok()) else {
        return;
    };
    if open == dialog.open() {
        return;
    }
    if !open {
        dialog.close();
    } else if dialog.show_modal().is_err() {
        // A dialog that is not in the page cannot be shown over it; shown in place it still holds its words.
        dialog.set_open(true);
    }
}
