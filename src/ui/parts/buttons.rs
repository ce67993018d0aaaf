//! Buttons: answers and Go on of a run, STOP, Fire and Burn, and the plain button of every other screen.

use leptos::prelude::Callback;

use crate::ui::node::{Element, Text, el};

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
pub fn button(
    rank: Rank,
    label: impl Into<Text>,
    testid: impl Into<Text>,
    on_press: impl Into<Callback<()>>,
) -> Element {
    let class = match rank {
        Rank::First => Some("first"),
        Rank::Second => None,
        Rank::Plain => Some("plain"),
    };
    pressed(testid.into(), on_press.into())
        .attr_if("class", class)
        .text(label)
}

/// One answer of a step: 125 px high, 96 px on a small screen. Stands beside another answer, or alone across the screen.
/// `chosen` on a hold that waits for Go on as well. Class `strong` is solid, for the only answer of its screen ("Pump is
/// off"), never to make one of two more tempting; class `whole` goes across the screen, also beside other answers.
pub fn answer_button(
    label: impl Into<Text>,
    chosen: bool,
    testid: impl Into<Text>,
    on_press: impl Into<Callback<()>>,
) -> Element {
    pressed(testid.into(), on_press.into())
        .class("answer")
        .attr_if("aria-pressed", chosen.then_some("true"))
        .text(label)
}

/// Go on: gold when awake, dashed while answers are missing. Spans the screen, so that it stands where no answer stood.
pub fn go_on(label: impl Into<Text>, awake: bool, on_press: impl Into<Callback<()>>) -> Element {
    pressed("go-on".into(), on_press.into())
        .class("answer go whole")
        .flag("disabled", !awake)
        .text(label)
}

/// STOP, fixed at the bottom edge of a run: 125 px, the word read at two metres. Never asleep. `brings` says small
/// beneath what it brings.
pub fn stop_bar(word: impl Into<Text>, brings: impl Into<Text>, on_stop: impl Into<Callback<()>>) -> Element {
    pressed("stop".into(), on_stop.into())
        .class("stop")
        .child(el("span").class("stop-word").text(word))
        .text(" ")
        .child(el("span").text(brings))
}

/// Fire and Burn: one touch from every screen, never asleep. Test ids `fire` and `burn`.
pub fn emergency(words: [&'static str; 2], on_fire: Callback<()>, on_burn: Callback<()>) -> Element {
    let [fire, burn] = words;
    el("div")
        .class("emergency")
        .child(pressed("fire".into(), on_fire).text(fire))
        .child(pressed("burn".into(), on_burn).text(burn))
}

#[inline(never)]
fn pressed(testid: Text, on_press: Callback<()>) -> Element {
    el("button").attr("type", "button").testid(testid).on_press(on_press)
}
