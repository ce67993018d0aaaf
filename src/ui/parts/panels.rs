//! What lies on the ground of a screen: cards that hold things together, notices that tell one thing.

use super::sign::{SignKind, sign_picture};
use crate::ui::node::{Element, Text, Words, el};

/// A card; its contents are the caller's. Class `night` puts it on the night ground whatever the rest uses: for the job
/// that comes next, or an open run.
pub fn card(testid: impl Words) -> Element {
    el("section").class("card").testid(testid)
}

/// What kind of thing a notice tells.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Tone {
    /// Good to know: an update waits, nothing exported for weeks.
    #[default]
    Quiet,
    /// Something did not work: a refused write.
    Wrong,
    /// Somebody could be hurt: drawn with the warning sign.
    Danger,
}

/// One thing told in a heading and a sentence; what can be done about it comes after as its children.
pub fn notice(tone: Tone, title: impl Words, text: impl Words, testid: &'static str) -> Element {
    told(tone, title.text(), text.text(), testid)
}

#[inline(never)]
fn told(tone: Tone, title: Text, text: Text, testid: &'static str) -> Element {
    let (class, role) = match tone {
        Tone::Quiet => ("notice", "status"),
        Tone::Wrong => ("notice wrong", "alert"),
        Tone::Danger => ("notice danger", "alert"),
    };
    let words = el("div").child(el("h2").text(title)).child(el("p").text(text));
    el("section")
        .class(class)
        .attr("role", role)
        .testid(testid)
        .child((tone == Tone::Danger).then(|| sign_picture(SignKind::Warning)))
        .child(words)
}
