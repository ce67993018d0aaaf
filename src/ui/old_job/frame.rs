//! What stands around a step of any job: pan, place in the work, drawing, standing notes, STOP.

use leptos::prelude::*;

use super::notes::notes;
use crate::domain::facts::run::{Place, Pump};
use crate::domain::facts::setup::OutBy;
use crate::ui::bench::use_bench;
use crate::ui::cards::use_cards;
use crate::ui::old_frame::empties;
use crate::ui::old_parts::{RunDrawing, Shade, SignKind, StepScreen, StepWords, Vessel};
use crate::words::run::{Say, place_name, pump_name, say};
use crate::words::screens::job;
use crate::words::{Lang, cards, run};

/// The longest pan name that is written as large as a number.
const NUMBER_LIKE: usize = 3;

/// Where the oil is, for the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Where it is.
    pub place: Place,
    /// What the pump does.
    pub pump: Pump,
    /// How dark it is, 1–5.
    pub shade: u8,
}

/// What stands around a step, whatever it asks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Around {
    /// The pan's name, where one pan is meant.
    pub pan: Option<String>,
    /// How oil leaves the pan here.
    pub out_by: OutBy,
    /// Where the oil is.
    pub picture: Option<Picture>,
    /// Said in place of the hazard line: why everything is looked at again.
    pub note: Option<String>,
    /// Small words under a question about the level.
    pub level: Option<String>,
    /// The window a reading must lie in.
    pub window: Option<String>,
}

impl Around {
    /// Around a step that moves no oil.
    #[must_use]
    pub const fn bare(pan: Option<String>) -> Self {
        Self {
            pan,
            out_by: OutBy::Nozzle,
            picture: None,
            note: None,
            level: None,
            window: None,
        }
    }
}

/// The words of one step that are not the same on all.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lines {
    /// The stretch of the work and how far in it.
    pub progress: String,
    /// What to do.
    pub say: String,
    /// What can hurt.
    pub hazard: Option<String>,
    /// What is asked, or more about it.
    pub sub: Option<String>,
}

/// A step's screen.
#[component]
pub fn Step(
    /// What stands around it.
    around: Around,
    /// Its words.
    lines: Lines,
    /// The sign beside the hazard line.
    #[prop(default = SignKind::Warning)]
    hazard_sign: SignKind,
    /// The sign beside the step line.
    #[prop(optional_no_strip)]
    sign: Option<SignKind>,
    /// Between the step line and the answers.
    #[prop(optional_no_strip)]
    middle: Option<AnyView>,
    /// Quiet buttons at the top.
    #[prop(optional_no_strip)]
    aside: Option<AnyView>,
    /// Stops the job.
    on_stop: Callback<()>,
    /// The answers.
    children: Children,
) -> impl IntoView {
    let bench = use_bench();
    let desk = use_cards();
    let lang = bench.lang;
    let Around {
        pan, out_by, picture, ..
    } = around;
    let (number, name) = match pan {
        Some(pan) if pan.chars().count() <= NUMBER_LIKE => (Some(pan), String::new()),
        Some(pan) => (None, run::pan_title(&pan, lang)),
        None => (None, String::new()),
    };
    let words = StepWords {
        pan: number,
        name,
        progress: lines.progress,
        say: lines.say,
        hazard: lines.hazard,
        sub: lines.sub,
        practice: None,
        stop: say(Say::Stop, lang).to_owned(),
        stop_brings: say(Say::StopMakeSafe, lang).to_owned(),
        fire: cards::fire_button(lang).to_owned(),
        burn: cards::burn_button(lang).to_owned(),
    };
    let middle = view! {
        {notes(bench)}
        {middle}
    }
    .into_any();
    view! {
        <StepScreen
            words
            hazard_sign
            sign
            drawing=picture.map(|picture| drawing(picture, out_by, lang))
            middle=Some(middle)
            aside
            empty=empties(bench)
            on_fire=desk.fire()
            on_burn=desk.burn()
            on_stop
        >
            {children()}
        </StepScreen>
    }
}

fn drawing(picture: Picture, out_by: OutBy, lang: Lang) -> AnyView {
    let Picture { place, pump, shade } = picture;
    let vessel = match out_by {
        OutBy::Hand => Vessel::Container,
        OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn => Vessel::Machine,
    };
    let label = format!("{}. {}.", place_name(place, lang), pump_name(pump, lang));
    view! {
        <RunDrawing
            place
            pump
            shade=Shade::new(shade)
            vessel
            label
            pan_words=place_name(place, lang).to_owned()
            vessel_words=job::vessel_name(out_by, lang).to_owned()
        />
    }
    .into_any()
}
