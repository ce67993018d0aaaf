//! Buttons: answers and Go on of a run, STOP, Fire and Burn, and the plain button of every other screen.

use leptos::prelude::*;

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

/// A button outside the run, at least 48 px high.
#[component]
pub fn Button(
    /// What it says.
    #[prop(into)]
    label: Signal<String>,
    /// How much it asks for attention.
    #[prop(optional)]
    rank: Rank,
    /// While true it cannot be pressed.
    #[prop(optional, into)]
    asleep: Signal<bool>,
    /// What it does.
    #[prop(into)]
    on_press: Callback<()>,
    /// Its test id.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    let class = match rank {
        Rank::First => "first",
        Rank::Second => "",
        Rank::Plain => "plain",
    };
    view! {
        <button type="button" class=class disabled=asleep data-testid=testid on:click=move |_| on_press.run(())>
            {label}
        </button>
    }
}

/// One answer of a step: 125 px high, 96 px on a small screen. Stands beside another answer, or alone across the screen.
#[component]
pub fn AnswerButton(
    /// What was seen, in the words of the kitchen.
    #[prop(into)]
    label: Signal<String>,
    /// Whether it is the answer given so far, on a hold that waits for Go on as well.
    #[prop(optional, into)]
    chosen: Signal<bool>,
    /// Solid, for the only answer of its screen ("Pump is off"). Never to make one of two answers more tempting.
    #[prop(optional)]
    strong: bool,
    /// Across the whole screen, also when other answers stand there.
    #[prop(optional)]
    whole: bool,
    /// Called when it is pressed and let go inside.
    #[prop(into)]
    on_press: Callback<()>,
    /// Its test id.
    #[prop(into)]
    testid: String,
) -> impl IntoView {
    view! {
        <button
            type="button"
            class="answer"
            class:strong=strong
            class:whole=whole
            aria-pressed=move || chosen.get().then_some("true")
            data-testid=testid
            on:click=move |_| on_press.run(())
        >
            {label}
        </button>
    }
}

/// Go on: gold when awake, dashed while answers are missing. Spans the screen, so that it stands where no answer stood.
#[component]
pub fn GoOn(
    /// What it says.
    #[prop(into)]
    label: Signal<String>,
    /// Whether every answer of the step is given.
    #[prop(into)]
    awake: Signal<bool>,
    /// Called when it is pressed and let go inside.
    #[prop(into)]
    on_press: Callback<()>,
    /// Its test id.
    #[prop(default = "go-on".into(), into)]
    testid: String,
) -> impl IntoView {
    view! {
        <button
            type="button"
            class="answer go whole"
            disabled=move || !awake.get()
            data-testid=testid
            on:click=move |_| on_press.run(())
        >
            {label}
        </button>
    }
}

/// STOP, fixed at the bottom edge of a run: 125 px, the word read at two metres. Never asleep.
#[component]
pub fn StopBar(
    /// The one word, at most five capitals.
    #[prop(into)]
    word: String,
    /// What it brings, small beneath.
    #[prop(into)]
    brings: String,
    /// Called when it is pressed.
    #[prop(into)]
    on_stop: Callback<()>,
    /// Its test id.
    #[prop(default = "stop".into(), into)]
    testid: String,
) -> impl IntoView {
    view! {
        <button type="button" class="stop" data-testid=testid on:click=move |_| on_stop.run(())>
            <span class="stop-word">{word}</span>
            {" "}
            <span>{brings}</span>
        </button>
    }
}

/// Fire and Burn: one touch from every screen, never asleep. Test ids `fire` and `burn`.
#[component]
pub fn Emergency(
    /// The word for fire.
    #[prop(into)]
    fire: String,
    /// The word for burn.
    #[prop(into)]
    burn: String,
    /// Opens the fire card.
    #[prop(into)]
    on_fire: Callback<()>,
    /// Opens the burn card.
    #[prop(into)]
    on_burn: Callback<()>,
) -> impl IntoView {
    view! {
        <div class="emergency">
            <button type="button" data-testid="fire" on:click=move |_| on_fire.run(())>
                {fire}
            </button>
            <button type="button" data-testid="burn" on:click=move |_| on_burn.run(())>
                {burn}
            </button>
        </div>
    }
}
