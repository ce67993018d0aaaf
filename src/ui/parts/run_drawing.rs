//! The live drawing of a run: pan, hose and machine, with the oil where it is and moving where it moves.

use super::pan_drawing::Shade;
use crate::domain::facts::run::{Place, Pump};
use crate::ui::node::{Element, Node, Text, Words, el, several, svg};

/// What stands beside the pan.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Vessel {
    /// The closed, pumped filter machine.
    #[default]
    Machine,
    /// A dry metal container with a lid, for emptying by hand when cold. No hose is drawn.
    Container,
    /// The pan stands by itself.
    Nothing,
}

/// Tops of the oil in pan and machine, in the drawing's units; `None` is empty.
const fn tops(place: Place) -> (Option<u16>, Option<u16>) {
    match place {
        Place::InPan => (Some(66), None),
        Place::Split => (Some(94), Some(92)),
        Place::InMachine | Place::InContainer => (None, Some(72)),
        Place::Gone => (None, None),
    }
}

/// The hose's way while oil moves, drawn in the direction of the flow.
const fn way(pump: Pump) -> Option<&'static str> {
    match pump {
        Pump::Drawing => Some("M92 108C92 -14 168 -6 226 58"),
        Pump::Returning | Pump::Rinsing => Some("M226 58C168 -6 92 -14 92 88"),
        Pump::Off | Pump::Unknown => None,
    }
}

/// Where oil is, and where it goes.
pub struct RunDrawing {
    /// Where the oil is.
    pub place: Place,
    /// What the pump does.
    pub pump: Pump,
    /// How dark the oil is.
    pub shade: Shade,
    /// What stands beside the pan.
    pub vessel: Vessel,
    /// The drawing in one sentence, for who cannot see it.
    pub label: Text,
    /// Words under the pan.
    pub pan_words: Text,
    /// Words under the machine or container.
    pub vessel_words: Text,
}

impl RunDrawing {
    /// Draws it.
    #[must_use]
    pub fn draw(self) -> Element {
        let (pan_top, vessel_top) = tops(self.place);
        let alone = self.vessel == Vessel::Nothing;
        let vessel_top = vessel_top.filter(|_| !alone);
        let pan_oil = pan_top.map(|top| oil("M12 ", top, "H116", "V104A10 10 0 0 1 106 114H22A10 10 0 0 1 12 104Z"));
        let vessel_oil = vessel_top.map(|top| {
            oil(
                "M206 ",
                top,
                "H304",
                "V104A10 10 0 0 1 294 114H216A10 10 0 0 1 206 104Z",
            )
        });
        let pan = path("", "M10 40V104A12 12 0 0 0 22 116H106A12 12 0 0 0 118 104V40");
        let picture = svg("svg")
            .class("drawing")
            .class(self.shade.class())
            .attr("viewBox", if alone { "6 34 116 88" } else { "0 -2 320 126" })
            .attr("role", "img")
            .attr("aria-label", self.label)
            .child(pan_oil)
            .child(vessel_oil)
            .child(pan.class_if("dashed", self.place == Place::Gone))
            .child(beside(self.vessel))
            .child(hose(self.vessel, self.pump));
        el("div")
            .class("run-picture")
            .class_if("alone", alone)
            .child(picture)
            .child(el("p").class("pan-words").text(self.pan_words))
            .child((!alone).then(|| el("p").class("vessel-words").text(self.vessel_words)))
    }
}

fn path(class: &'static str, d: impl Words) -> Element {
    svg("path")
        .attr_if("class", Some(class).filter(|class| !class.is_empty()))
        .attr("d", d)
}

/// Oil up to `top`, and its surface.
fn oil(from: &str, top: u16, across: &str, round: &str) -> Node {
    let surface = format!("{from}{top}{across}");
    several([path("oil", format!("{surface}{round}")), path("surface", surface)])
}

fn beside(vessel: Vessel) -> Node {
    let wheel = |cx: &'static str| svg("circle").attr("cx", cx).attr("cy", "120").attr("r", "3");
    match vessel {
        Vessel::Machine => several([
            path("", "M204 58H306V104A12 12 0 0 1 294 116H216A12 12 0 0 1 204 104Z"),
            path("", "M198 58H312M246 58V50H264V58"),
            wheel("224"),
            wheel("286"),
        ]),
        Vessel::Nothing => Node::Nothing,
        Vessel::Container => several([
            path("", "M206 62V106A10 10 0 0 0 216 116H294A10 10 0 0 0 304 106V62"),
            path("", "M196 62H314M240 62C240 46 270 46 270 62"),
        ]),
    }
}

fn hose(vessel: Vessel, pump: Pump) -> Node {
    if vessel != Vessel::Machine {
        return Node::Nothing;
    }
    let Some(way) = way(pump) else {
        let quiet = path("quiet", "M118 96C150 96 150 76 204 80");
        let asked = (pump == Pump::Unknown).then(|| {
            let at = svg("text").attr("x", "160").attr("y", "68").attr("font-size", "32");
            at.text("?")
        });
        return several([Some(quiet), asked]);
    };
    let arrow = match pump {
        Pump::Drawing => "M150 4L166 12L154 24",
        Pump::Off | Pump::Unknown | Pump::Returning | Pump::Rinsing => "M154 2L140 12L154 22",
    };
    several([
        path("pipe", way),
        path("pipe-oil", way),
        path("drops", way),
        path("", arrow),
    ])
}
