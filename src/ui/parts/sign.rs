//! Safety signs in the open language of ISO 3864 and ISO 7010, drawn by us: shape, colour and word together.
//! For people's safety only, never for the quality of oil.

use crate::ui::node::{Element, Words, el, svg};

/// What a sign says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SignKind {
    /// Must: wear heat-proof gloves.
    Gloves,
    /// Must: wear a face shield.
    FaceShield,
    /// Must: wear an apron.
    Apron,
    /// Must: wear closed shoes.
    Shoes,
    /// Must: heat off.
    HeatOff,
    /// Warning, of any kind.
    Warning,
    /// Warning: hot surface or oil.
    Hot,
    /// Warning: slippery floor.
    Slippery,
    /// Warning: it can catch fire.
    Fire,
    /// Must not: water.
    NoWater,
    /// Must not: light.
    NoLighting,
    /// First aid.
    FirstAid,
    /// Fire equipment.
    FireEquipment,
}

/// The ground a sign stands on: its shape and colour.
#[derive(Clone, Copy)]
enum Ground {
    /// Blue circle.
    Must,
    /// Yellow triangle.
    Warn,
    /// Red ring and bar on white.
    MustNot,
    /// Green square.
    Safe,
    /// Red square.
    FireSquare,
}

impl SignKind {
    /// Its ground, and the lines of its glyph in a field of 64 by 64.
    const fn drawn(self) -> (Ground, &'static str) {
        match self {
            Self::Gloves => (
                Ground::Must,
                "M23 50V36L17 28M23 36V18M29 30V13M35 30V13M41 32V17M41 32V42L39 50ZM23 50H39",
            ),
            Self::FaceShield => (
                Ground::Must,
                "M20 24A12 12 0 0 1 44 24M17 24H47M20 24V36C20 46 28 51 32 51S44 46 44 36V24",
            ),
            Self::Apron => (
                Ground::Must,
                "M26 13V24H38V13M26 24C24 30 20 31 18 32V52H46V32C44 31 40 30 38 24M25 39H39",
            ),
            Self::Shoes => (
                Ground::Must,
                "M22 16V36H18V48H48V42C48 38 42 37 38 34L36 30V16ZM18 44H48",
            ),
            Self::HeatOff => (Ground::Must, "M32 14V32M23 20A15 15 0 1 0 41 20"),
            Self::Warning => (Ground::Warn, "M32 24V40M32 48V48.1"),
            Self::Hot => (
                Ground::Warn,
                "M20 50H44M25 43C21 38 29 35 25 29M32 43C28 38 36 34 32 27M39 43C35 38 43 35 39 29",
            ),
            Self::Slippery => (
                Ground::Warn,
                "M34 23V23.1M33 29L28 36L37 40L40 48M28 36L23 34M33 29L40 33M22 51C25 48 28 54 31 51",
            ),
            Self::Fire => (
                Ground::Warn,
                "M32 50C22 50 21 41 27 36C28 40 30 39 30 36C29 31 32 27 34 25C34 31 42 34 41 42C41 47 37 50 32 50Z",
            ),
            Self::NoWater => (
                Ground::MustNot,
                "M32 15C32 15 43 28 43 37A11 11 0 0 1 21 37C21 28 32 15 32 15Z",
            ),
            Self::NoLighting => (
                Ground::MustNot,
                "M32 50C21 50 20 40 26 34C27 39 30 38 30 34C29 27 32 20 35 16C35 26 44 30 43 40C43 46 38 50 32 50Z",
            ),
            Self::FirstAid => (Ground::Safe, "M32 18V46M18 32H46"),
            Self::FireEquipment => (
                Ground::FireSquare,
                "M24 28A8 8 0 0 1 40 28V52H24ZM32 20V14M26 14H38M38 14C46 15 48 22 48 30",
            ),
        }
    }
}

/// The picture of a sign alone; its word must stand beside it.
pub(super) fn sign_picture(kind: SignKind) -> Element {
    let (ground, glyph) = kind.drawn();
    let path = |class: &'static str, d: &'static str| svg("path").class(class).attr("d", d);
    let circle = |class: &'static str, r: &'static str| {
        svg("circle")
            .class(class)
            .attr("cx", "32")
            .attr("cy", "32")
            .attr("r", r)
    };
    let square = |class: &'static str| {
        let at = svg("rect").class(class).attr("x", "1").attr("y", "1").attr("rx", "4");
        at.attr("width", "62").attr("height", "62")
    };
    let picture = svg("svg").attr("viewBox", "0 0 64 64").attr("aria-hidden", "true");
    match ground {
        Ground::Must => picture
            .child(circle("sign-must", "31"))
            .child(path("sign-glyph", glyph)),
        Ground::Warn => picture
            .child(path("sign-warn", "M32 6L61 57H3Z"))
            .child(path("sign-glyph dark", glyph)),
        Ground::MustNot => picture
            .child(circle("sign-ground", "32"))
            .child(path("sign-glyph dark", glyph))
            .child(circle("sign-not", "27"))
            .child(path("sign-not", "M13 13L51 51")),
        Ground::Safe => picture
            .child(square("sign-safe"))
            .child(path("sign-glyph thick", glyph)),
        Ground::FireSquare => picture.child(square("sign-fire")).child(path("sign-glyph", glyph)),
    }
}

/// A safety sign with its word.
pub fn sign(kind: SignKind, word: impl Words) -> Element {
    el("div")
        .class("sign")
        .child(sign_picture(kind))
        .child(el("span").text(word))
}
