//! What lies on the ground of a screen: cards that hold things together, notices that tell one thing.

use leptos::prelude::*;

use super::sign::{SignKind, sign_picture};

/// A card. Its contents are the caller's.
#[component]
pub fn Card(
    /// On the night ground whatever the rest uses: for the job that comes next, or an open run.
    #[prop(optional)]
    night: bool,
    /// Its test id.
    #[prop(into)]
    testid: String,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    view! {
        <section class="card" class:night=night data-testid=testid>
            {children()}
        </section>
    }
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

/// One thing told in a heading and a sentence, with what can be done about it.
#[component]
pub fn Notice(
    /// What kind of thing.
    #[prop(optional)]
    tone: Tone,
    /// What happened.
    #[prop(into)]
    title: String,
    /// What is safe and what to do.
    #[prop(into)]
    text: String,
    /// Its test id.
    #[prop(into)]
    testid: String,
    /// Its buttons.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let (class, role) = match tone {
        Tone::Quiet => ("notice", "status"),
        Tone::Wrong => ("notice wrong", "alert"),
        Tone::Danger => ("notice danger", "alert"),
    };
    view! {
        <section class=class role=role data-testid=testid>
            {(tone == Tone::Danger).then(|| sign_picture(SignKind::Warning))}
            <div>
                <h2>{title}</h2>
                <p>{text}</p>
            </div>
            {children.map(|children| children())}
        </section>
    }
}
