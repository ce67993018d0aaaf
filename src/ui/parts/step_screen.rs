//! One step of a run on the wall: pan number, step line, place for a drawing, a clock or a pad, answers, STOP.

use leptos::ev;
use leptos::prelude::{document, on_cleanup, window_event_listener};
use web_sys::HtmlElement;

use super::buttons::stop_bar;
use super::sign::{SignKind, sign_picture};
use crate::ui::node::{Act, Element, Node, Reach, el, follow};

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
    pub stop: &'static str,
    /// What STOP brings.
    pub stop_brings: &'static str,
}

/// The sizes of the step line, largest first; the last is the least a run may use: 42 px at 360 wide, 50 px at 412.
const SIZES: [&str; 5] = ["say say-1", "say say-2", "say say-3", "say", "say say-5"];

/// The id of the further words, which describe the answers also where there is no room to show them.
const SUB: &str = "step-sub";

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
pub struct StepScreen {
    /// Its words.
    pub words: StepWords,
    /// The sign beside the hazard line.
    pub hazard_sign: SignKind,
    /// The sign beside the step line.
    pub sign: Option<SignKind>,
    /// A drawing; takes the room that is left, and goes where there is none.
    pub drawing: Option<Element>,
    /// A clock, a pad or further signs, between the step line and the answers.
    pub middle: Node,
    /// Quiet buttons under Fire and Burn: why, something is wrong.
    pub aside: Option<Node>,
    /// The standing warnings.
    pub empty: Node,
    /// Fire and Burn.
    pub emergency: Element,
    /// One answer over the other instead of side by side.
    pub stacked: bool,
    /// Stops the run.
    pub on_stop: Act,
    /// The screen's test id.
    pub testid: &'static str,
    /// The answers: at most three, Go on counted, Go on last.
    pub answers: Node,
}

impl StepScreen {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let words = self.words;
        let (run, say, drawn) = (Reach::new(), Reach::new(), Reach::new());
        fit_when_drawn(run, say, drawn);
        let practice = words.practice.is_some();
        let aside = self.aside.map(|aside| el("div").class("run-aside").child(aside));
        let place = el("div")
            .class("run-where")
            .child(el("p").class("run-name").text(words.name))
            .child(el("p").class("run-progress").text(words.progress));
        let row = el("div").class("run-top-row").child(place).child(self.emergency);
        let number = words
            .pan
            .map(|pan| el("p").class("pan-number").testid("pan-number").text(pan));
        let top = el("header")
            .class("run-top")
            .child(number)
            .child(el("div").class("run-top-side").child(row).child(aside));
        let hazard = words.hazard.map(|hazard| {
            let picture = sign_picture(self.hazard_sign);
            el("p")
                .class("hazard")
                .child(picture)
                .text(" ")
                .child(el("span").text(hazard))
        });
        let step_line = el("div")
            .class("say-row")
            .child(self.sign.map(sign_picture))
            .child(el("h1").class("say").testid("say").reach(say).text(words.say));
        let answers = el("div")
            .class("answers run-push")
            .attr("role", "group")
            .attr_if("aria-describedby", words.sub.as_ref().map(|_| SUB))
            .class_if("stacked", self.stacked)
            .child(self.answers);
        let main = el("main")
            .class("run-main")
            .child(
                self.drawing
                    .map(|drawing| el("div").class("run-drawing").reach(drawn).child(drawing)),
            )
            .child(hazard)
            .child(step_line)
            .child(words.sub.map(|sub| el("p").class("sub").attr("id", SUB).text(sub)))
            .child(self.middle)
            .child(answers);
        let run = el("div")
            .class("run")
            .class_if("practice", practice)
            .testid(self.testid)
            .reach(run)
            .child(words.practice.map(|band| el("p").class("practice-band").text(band)))
            .child(self.empty)
            .child(top)
            .child(main)
            .child(stop_bar(words.stop, words.stop_brings, self.on_stop));
        el("div").class("night run-ground").child(run)
    }
}

/// Fits the step line once it is in the page, and whenever the page takes another size.
fn fit_when_drawn(run: Reach, say: Reach, drawn: Reach) {
    let refit = move || {
        if let (Some(run), Some(say)) = (run.get(), say.get()) {
            fit(&run, &say, drawn.get().as_ref());
        }
    };
    follow(refit);
    let resized = window_event_listener(ev::resize, move |_| refit());
    on_cleanup(move || resized.remove());
}
