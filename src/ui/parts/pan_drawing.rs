//! A pan: an open vessel with its oil in the colour oil has as it ages, and its number.

use crate::ui::node::{Element, Words, svg};

/// How dark oil is drawn, 1 fresh to 5 spent. A look only: a number and a word always stand beside it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shade(u8);

impl Shade {
    /// No oil at all: cleaning water.
    pub const WATER: Self = Self(5);

    /// The shade nearest to `step`, which is taken as 1 to 5.
    #[must_use]
    pub const fn new(step: u8) -> Self {
        match step {
            0 | 1 => Self(0),
            2..=4 => Self(step - 1),
            _ => Self(4),
        }
    }

    /// The class that colours what is drawn inside it.
    pub(super) const fn class(self) -> &'static str {
        match self.0 {
            0 => "oil-1",
            1 => "oil-2",
            2 => "oil-3",
            3 => "oil-4",
            4 => "oil-5",
            _ => "water",
        }
    }

    /// The class of text that stands on this oil.
    pub(super) const fn text_class(self) -> &'static str {
        if self.0 < 3 { "on-light" } else { "on-dark" }
    }
}

/// Inner floor and height of the pan in the drawing's units.
const FLOOR: u16 = 55;
const DEPTH: u16 = 46;

/// A pan, in a list or large, full to `level` percent of what is drawn, 0 being empty. Hidden from screen readers: the
/// words beside it say the same.
pub fn pan_drawing(shade: Shade, level: u8, number: impl Words) -> Element {
    let height = u16::from(level.min(100)) * DEPTH / 100;
    let top = FLOOR - height;
    let path = |d: String| svg("path").attr("d", d);
    let picture = svg("svg")
        .class("drawing")
        .class(shade.class())
        .attr("viewBox", "0 0 96 62")
        .attr("aria-hidden", "true");
    let picture = if height > 4 {
        picture
            .child(path(format!("M8 {top}H88V47A8 8 0 0 1 80 {FLOOR}H16A8 8 0 0 1 8 47Z")).class("oil"))
            .child(path(format!("M8 {top}H88")).class("surface"))
    } else {
        picture
    };
    // The number stands in the oil where that is deep enough to carry it, else in the empty pan above it.
    let (text_class, baseline) = if height >= 26 {
        (Some(shade.text_class()), top + height / 2 + 8)
    } else {
        (None, 30)
    };
    let words = svg("text")
        .attr_if("class", text_class)
        .attr("x", "48")
        .attr("font-size", "24");
    picture
        .child(svg("path").attr("d", "M6 4V49A10 10 0 0 0 16 58H80A10 10 0 0 0 90 49V4"))
        .child(words.attr("y", baseline.to_string()).text(number))
}
