//! One step of a run on the wall: pan number, step line, place for a drawing, a clock or a pad, answers, STOP.

use leptos::{ev, html, prelude::*};
use web_sys::HtmlElement;

use super::buttons::{Emergency, StopBar};
use super::shell::EmptyBanners;
use super::sign::{SignKind, sign_picture};

/// The words of a step, chosen by the caller.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StepWords {
    /// The pan's number, read at two metres; `None` where no one pan is meant.
    pub pan: Option<String>,
    /// The pan's name, or the block's where no pan is meant.
    pub name: String,
    /// The block and how far: "Pump out, 3 of 8".
    pub progress: String,
    /// What to do, at most eight words.
    pub say: String,
    /// What can hurt, standing before the act.
    pub hazard: Option<String>,
    /// Further words, small.
    pub sub: Option<String>,
    /// The band of a practice run; `None` in a real one.
    pub practice: Option<String>,
    /// The word STOP.
    pub stop: String,
    /// What STOP brings.
    pub stop_brings: String,
    /// The word for fire.
    pub fire: String,
    /// The word for burn.
    pub burn: String,
}

/// The sizes of the step line, largest first; the last is the least a run may use: 42 px at 360 wide, 50 px at 412.
const SIZES: [&str; 5] = ["say say-1", "say say-2", "say say-3", "say", "say say-5"];

/// The least height, in px, at which the drawing still shows where the oil is.
const DRAWING_SHOWS: i32 = 84;

/// Gives the step line the largest size that breaks no word, scrolls nothing and leaves the drawing its room; where no
/// size does all three, the drawing gives way first.
fn fit(run: &HtmlElement, say: &HtmlElement, drawing: Option<&HtmlElement>) {
    let fits = || {
        let page = document().document_element().map_or(0, |page| page.client_height());
        say.scroll_width() <= say.client_width() && run.offset_height() <= page
    };
    let shows = || drawing.is_none_or(|drawing| drawing.client_height() >= DRAWING_SHOWS);
    let try_each = |good: &dyn Fn() -> bool| {
        SIZES.iter().any(|size| {
            say.set_class_name(size);
            good()
        })
    };
    if !try_each(&|| fits() && shows()) {
        try_each(&fits);
    }
}

/// A step's screen. It fits 412 by 915 and 360 by 640 without scrolling; with text at 200 % it may scroll, and STOP
/// stays where it is.
#[component]
pub fn StepScreen(
    /// Its words.
    words: StepWords,
    /// The sign beside the hazard line.
    #[prop(default = SignKind::Warning)]
    hazard_sign: SignKind,
    /// The sign beside the step line.
    #[prop(optional_no_strip)]
    sign: Option<SignKind>,
    /// A drawing; takes the room that is left, and goes where there is none.
    #[prop(optional_no_strip)]
    drawing: Option<AnyView>,
    /// A clock, a pad or further signs, between the step line and the answers.
    #[prop(optional_no_strip)]
    middle: Option<AnyView>,
    /// Quiet buttons under Fire and Burn: why, something is wrong.
    #[prop(optional_no_strip)]
    aside: Option<AnyView>,
    /// The standing warnings.
    #[prop(into)]
    empty: Signal<Vec<String>>,
    /// One answer over the other instead of side by side.
    #[prop(optional)]
    stacked: bool,
    /// Opens the fire card.
    #[prop(into)]
    on_fire: Callback<()>,
    /// Opens the burn card.
    #[prop(into)]
    on_burn: Callback<()>,
    /// Stops the run.
    #[prop(into)]
    on_stop: Callback<()>,
    /// The screen's test id.
    #[prop(default = "step".into(), into)]
    testid: String,
    /// The answers: at most three, Go on counted, Go on last.
    children: Children,
) -> impl IntoView {
    let (run, say, drawn) = (
        NodeRef::<html::Div>::new(),
        NodeRef::<html::H1>::new(),
        NodeRef::<html::Div>::new(),
    );
    let refit = move || {
        if let (Some(run), Some(say)) = (run.get(), say.get()) {
            fit(&run, &say, drawn.get().as_deref());
        }
    };
    Effect::new(move || {
        empty.track();
        refit();
    });
    let resized = window_event_listener(ev::resize, move |_| untrack(refit));
    on_cleanup(move || resized.remove());
    let practice = words.practice.is_some();
    view! {
        <div class="night run-ground">
            <div class="run" node_ref=run class:practice=practice data-testid=testid>
                {words.practice.map(|band| view! { <p class="practice-band">{band}</p> })}
                <EmptyBanners lines=empty />
                <header class="run-top">
                    {words.pan.map(|pan| view! { <p class="pan-number" data-testid="pan-number">{pan}</p> })}
                    <div class="run-top-side">
                        <div class="run-top-row">
                            <div class="run-where">
                                <p class="run-name">{words.name}</p>
                                <p class="run-progress">{words.progress}</p>
                            </div>
                            <Emergency fire=words.fire burn=words.burn on_fire=on_fire on_burn=on_burn />
                        </div>
                        {aside.map(|aside| view! { <div class="run-aside">{aside}</div> })}
                    </div>
                </header>
                <main class="run-main">
                    {drawing.map(|drawing| view! { <div class="run-drawing" node_ref=drawn>{drawing}</div> })}
                    {words
                        .hazard
                        .map(|hazard| {
                            view! {
                                <p class="hazard">
                                    {sign_picture(hazard_sign)} <span>{hazard}</span>
                                </p>
                            }
                        })}
                    <div class="say-row">
                        {sign.map(sign_picture)}
                        <h1 class="say" node_ref=say data-testid="say">
                            {words.say}
                        </h1>
                    </div>
                    {words.sub.map(|sub| view! { <p class="sub">{sub}</p> })}
                    {middle}
                    <div class="answers run-push" class:stacked=stacked>
                        {children()}
                    </div>
                </main>
                <StopBar word=words.stop brings=words.stop_brings on_stop=on_stop />
            </div>
        </div>
    }
}
