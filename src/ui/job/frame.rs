//! What stands around a step of any job: pan, place in the work, drawing, standing notes, STOP.

use super::notes::notes;
use crate::domain::facts::run::{Contents, Place, Pump};
use crate::domain::facts::setup::OutBy;
use crate::nodes;
use crate::ui::bench::Bench;
use crate::ui::cards::use_cards;
use crate::ui::frame::empties;
use crate::ui::node::{Act, Element, Node};
use crate::ui::parts::{RunDrawing, Shade, SignKind, StepScreen, StepWords, Vessel};
use crate::words::run::{Say, place_name, pump_name, say};
use crate::words::screens::{care, job};
use crate::words::{Lang, run};

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
    /// What is in the pan, where it is drawn by itself.
    pub alone: Option<Contents>,
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
    /// What the owner calls what is touched or looked at here.
    pub own: Option<String>,
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
            own: None,
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
pub struct Step {
    /// What stands around it.
    pub around: Around,
    /// Its words.
    pub lines: Lines,
    /// The sign beside the hazard line.
    pub hazard_sign: SignKind,
    /// The sign beside the step line.
    pub sign: Option<SignKind>,
    /// Between the step line and the answers.
    pub middle: Node,
    /// Quiet buttons at the top.
    pub aside: Option<Node>,
    /// Stops the job.
    pub on_stop: Act,
    /// The answers.
    pub answers: Node,
}

impl Step {
    /// A step that asks with words alone.
    #[must_use]
    pub fn new(around: Around, lines: Lines, on_stop: Act, answers: impl Into<Node>) -> Self {
        Self {
            around,
            lines,
            hazard_sign: SignKind::Warning,
            sign: None,
            middle: Node::Nothing,
            aside: None,
            on_stop,
            answers: answers.into(),
        }
    }

    /// Draws it. `key` tells this question from the one before: on another everything is new, so that no press begun
    /// on the old one lands on it.
    #[must_use]
    pub fn draw(self, bench: Bench, key: String) -> Element {
        let lang = bench.lang;
        let Around {
            pan, out_by, picture, ..
        } = self.around;
        let (number, name) = match pan {
            Some(pan) if pan.chars().count() <= NUMBER_LIKE => (Some(pan), String::new()),
            Some(pan) => (None, run::pan_title(&pan, lang)),
            None => (None, String::new()),
        };
        // Beside a pan's number there is no room for a third: Trouble stands aside there.
        let emergency = if number.is_none() && name.is_empty() {
            use_cards().three_buttons(lang)
        } else {
            use_cards().buttons(lang)
        };
        let words = StepWords {
            pan: number,
            name,
            progress: self.lines.progress,
            say: self.lines.say,
            hazard: self.lines.hazard,
            sub: self.lines.sub,
            practice: None,
            stop: say(Say::Stop, lang),
            stop_brings: say(Say::StopMakeSafe, lang),
        };
        let screen = StepScreen {
            words,
            hazard_sign: self.hazard_sign,
            sign: self.sign,
            drawing: picture.map(|picture| drawing(picture, out_by, lang)),
            middle: nodes![notes(bench), self.middle],
            aside: self.aside,
            empty: empties(bench),
            emergency,
            stacked: false,
            on_stop: self.on_stop,
            testid: "step",
            answers: self.answers,
        };
        screen.draw().key(key)
    }
}

fn drawing(picture: Picture, out_by: OutBy, lang: Lang) -> Element {
    let Picture {
        place,
        pump,
        shade,
        alone,
    } = picture;
    if let Some(contents) = alone {
        let leaving = place != Place::InPan;
        let words = care::contents_name(contents, leaving, lang);
        let (place, shade) = match contents {
            Contents::Oil | Contents::SetFat if leaving => (Place::Split, Shade::new(shade)),
            Contents::Oil | Contents::SetFat => (Place::InPan, Shade::new(shade)),
            Contents::CleaningWater => (Place::InPan, Shade::WATER),
            Contents::EmptyWet | Contents::EmptyDry => (Place::InMachine, Shade::new(shade)),
        };
        let picture = RunDrawing {
            place,
            pump,
            shade,
            vessel: Vessel::Nothing,
            label: words.into(),
            pan_words: words.into(),
            vessel_words: "".into(),
        };
        return picture.draw();
    }
    let vessel = match out_by {
        OutBy::Hand => Vessel::Container,
        OutBy::Nozzle | OutBy::Drain | OutBy::BuiltIn => Vessel::Machine,
    };
    let picture = RunDrawing {
        place,
        pump,
        shade: Shade::new(shade),
        vessel,
        label: format!("{}. {}.", place_name(place, lang), pump_name(pump, lang)).into(),
        pan_words: place_name(place, lang).into(),
        vessel_words: job::vessel_name(out_by, lang).into(),
    };
    picture.draw()
}
