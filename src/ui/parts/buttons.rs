//! Buttons: answers and Go on of a run, STOP, Fire and Burn, and the plain button of every other screen.

use crate::ui::node::{Act, Element, Text, Words, el};

/// How much a button asks for attention.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Rank {
    /// Gold and wide: the one next thing to do. At most one a screen.
    First,
    /// One of several equal ways on.
    #[default]
    Second,
    /// A quiet way aside, drawn as underlined words.
    Plain,
}

/// A button outside the run, at least 48 px high. Asleep with `.flag("disabled", true)`.
pub fn button(rank: Rank, label: impl Words, testid: impl Words, on_press: impl Into<Act>) -> Element {
    ranked(rank, label.text(), testid.text(), on_press.into())
}

#[inline(never)]
fn ranked(rank: Rank, label: Text, testid: Text, on_press: Act) -> Element {
    let class = match rank {
        Rank::First => Some("first"),
        Rank::Second => None,
        Rank::Plain => Some("plain"),
    };
    pressed(testid, on_press).attr_if("class", class).text(label)
}

/// One answer of a step: 125 px high, 96 px on a small screen. Stands beside another answer, or alone across the screen.
/// `chosen` on a hold that waits for Go on as well. Class `strong` is solid, for the only answer of its screen ("Pump is
/// off"), never to make one of two more tempting; class `whole` goes across the screen, also beside other answers.
pub fn answer_button(label: impl Words, chosen: bool, testid: impl Words, on_press: impl Into<Act>) -> Element {
    answered(label.text(), chosen, testid.text(), on_press.into())
}

#[inline(never)]
fn answered(label: Text, chosen: bool, testid: Text, on_press: Act) -> Element {
    pressed(testid, on_press)
        .class("answer")
        .attr_if("aria-pressed", chosen.then_some("true"))
        .text(label)
}

/// Go on: gold when awake, dashed while answers are missing. Spans the screen, so that it stands where no answer stood.
pub fn go_on(label: impl Words, awake: bool, on_press: impl Into<Act>) -> Element {
    pressed("go-on".into(), on_press.into())
        .class("answer go whole")
        .flag("disabled", !awake)
        .text(label)
}

/// STOP, fixed at the bottom edge of a run: 125 px, the word read at two metres. Never asleep. `brings` says small
/// beneath what it brings.
pub fn stop_bar(word: &'static str, brings: &'static str, on_stop: Act) -> Element {
    pressed("stop".into(), on_stop)
        .class("stop")
        .child(el("span").class("stop-word").text(word))
        .text(" ")
        .child(el("span").text(brings))
}

/// Fire and Burn: one touch from every screen, never asleep. Test ids `fire` and `burn`.
pub fn emergency(words: [&'static str; 2], on_fire: Act, on_burn: Act) -> Element {
    let [fire, burn] = words;
    el("div")
        .class("emergency")
        .child(pressed("fire".into(), on_fire).text(fire))
        .child(pressed("burn".into(), on_burn).text(burn))
}

#[inline(never)]
fn pressed(testid: Text, on_press: Act) -> Element {
    el("button").attr("type", "button").testid(testid).on_press(on_press)
}
