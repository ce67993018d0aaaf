//! The live drawing of a run: pan, hose and machine, with the oil where it is and moving where it moves.

use leptos::prelude::*;

use super::pan_drawing::Shade;
use crate::domain::facts::run::{Place, Pump};

/// What stands beside the pan.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Vessel {
    /// The closed, pumped filter machine.
    #[default]
    Machine,
    /// A dry metal container with a lid, for emptying by hand when cold. No hose is drawn.
    Container,
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

/// Where oil is, and where it goes. `label` says the same in words for who cannot see it.
#[component]
pub fn RunDrawing(
    /// Where the oil is.
    place: Place,
    /// What the pump does.
    pump: Pump,
    /// How dark the oil is.
    shade: Shade,
    /// What stands beside the pan.
    #[prop(optional)]
    vessel: Vessel,
    /// The drawing in one sentence.
    #[prop(into)]
    label: String,
    /// Words under the pan.
    #[prop(optional, into)]
    pan_words: Signal<String>,
    /// Words under the machine or container.
    #[prop(optional, into)]
    vessel_words: Signal<String>,
) -> impl IntoView {
    let (pan_top, vessel_top) = tops(place);
    let pan_oil = pan_top.map(|top| {
        view! {
            <path class="oil" d=format!("M12 {top}H116V104A10 10 0 0 1 106 114H22A10 10 0 0 1 12 104Z") />
            <path class="surface" d=format!("M12 {top}H116") />
        }
    });
    let vessel_oil = vessel_top.map(|top| {
        view! {
            <path class="oil" d=format!("M206 {top}H304V104A10 10 0 0 1 294 114H216A10 10 0 0 1 206 104Z") />
            <path class="surface" d=format!("M206 {top}H304") />
        }
    });
    let beside = match vessel {
        Vessel::Machine => view! {
            <path d="M204 58H306V104A12 12 0 0 1 294 116H216A12 12 0 0 1 204 104Z" />
            <path d="M198 58H312M246 58V50H264V58" />
            <circle cx="224" cy="120" r="3" />
            <circle cx="286" cy="120" r="3" />
        }
        .into_any(),
        Vessel::Container => view! {
            <path d="M206 62V106A10 10 0 0 0 216 116H294A10 10 0 0 0 304 106V62" />
            <path d="M196 62H314M240 62C240 46 270 46 270 62" />
        }
        .into_any(),
    };
    let hose = match (vessel, way(pump)) {
        (Vessel::Container, _) => None,
        (Vessel::Machine, Some(way)) => Some(
            view! {
                <path class="pipe" d=way />
                <path class="pipe-oil" d=way />
                <path class="drops" d=way />
                {match pump {
                    Pump::Drawing => Some(view! { <path d="M150 4L166 12L154 24" /> }),
                    _ => Some(view! { <path d="M154 2L140 12L154 22" /> }),
                }}
            }
            .into_any(),
        ),
        (Vessel::Machine, None) => Some(
            view! {
                <path class="quiet" d="M118 96C150 96 150 76 204 80" />
                {(pump == Pump::Unknown).then(|| view! { <text x="160" y="68" font-size="32">"?"</text> })}
            }
            .into_any(),
        ),
    };
    view! {
        <div class="run-picture">
            <svg
                class=format!("drawing {}", shade.class())
                viewBox="0 -2 320 126"
                role="img"
                aria-label=label
            >
                {pan_oil}
                {vessel_oil}
                <path class:dashed=place == Place::Gone d="M10 40V104A12 12 0 0 0 22 116H106A12 12 0 0 0 118 104V40" />
                {beside}
                {hose}
            </svg>
            <p class="pan-words">{pan_words}</p>
            <p class="vessel-words">{vessel_words}</p>
        </div>
    }
}
