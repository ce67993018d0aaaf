//! Around every screen but a run: title, Fire and Burn, the standing warning, the tabs.

use super::sign::{SignKind, sign_picture};
use crate::ui::node::{Element, Node, Tell, el, several};

/// One tab of the bottom bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tab {
    /// Its key, handed back when it is pressed; its test id is `tab-key`.
    pub key: &'static str,
    /// What it says.
    pub words: &'static str,
}

/// The standing warnings, one line for each pan whose oil is out: "PAN 2 EMPTY, DO NOT LIGHT". Nothing is drawn when
/// there is none.
pub fn empty_banners(lines: Vec<String>) -> Node {
    banners(lines, "pan-empty", SignKind::NoLighting)
}

/// What is wrong and not over: "Power cut: look again before anything".
pub fn wrong_banners(lines: Vec<String>) -> Node {
    banners(lines, "wrong-stands", SignKind::Warning)
}

fn banners(lines: Vec<String>, testid: &'static str, sign: SignKind) -> Node {
    several(lines.into_iter().map(|line| {
        el("div")
            .class("empty-banner")
            .attr("role", "status")
            .testid(testid)
            .child(sign_picture(sign))
            .child(el("span").text(line))
    }))
}

/// The frame of a screen: what stands above and below what it holds.
pub struct Shell {
    /// The screen's title.
    pub title: Node,
    /// A small line above the title, where there is one.
    pub eyebrow: Node,
    /// Fire and Burn.
    pub emergency: Element,
    /// The standing warnings.
    pub empty: Node,
    /// The tabs; none before the set-up.
    pub tabs: Vec<Tab>,
    /// What the row of tabs is called, for who cannot see it.
    pub tabs_label: &'static str,
    /// The key of the tab that is shown.
    pub current: &'static str,
    /// Called with a tab's key.
    pub on_tab: Tell<&'static str>,
    /// What the screen holds.
    pub holds: Node,
}

impl Shell {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let Self { current, on_tab, .. } = self;
        let any = !self.tabs.is_empty();
        let tabs = self.tabs.into_iter().map(|Tab { key, words }| {
            let on_tab = on_tab.clone();
            el("button")
                .attr("type", "button")
                .attr_if("aria-current", (current == key).then_some("page"))
                .testid(format!("tab-{key}"))
                .on("click", move |_| on_tab.run(key))
                .text(words)
        });
        let bar = el("nav")
            .class("tabs")
            .attr("aria-label", self.tabs_label)
            .children(tabs);
        let words = el("div")
            .class("top-words")
            .child(self.eyebrow)
            .child(el("h1").child(self.title));
        el("div")
            .class("shell")
            .child(self.empty)
            .child(el("header").class("top").child(words).child(self.emergency))
            .child(el("main").class("body").child(self.holds))
            .child(any.then_some(bar))
    }
}
