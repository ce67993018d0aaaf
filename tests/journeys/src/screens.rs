//! Every screen of the app by its address, checked against the app's own list so that none is forgotten.

use crate::fault::{Outcome, fault};

/// A screen: its name in the app's list, and the head of its address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Known {
    /// The variant of the app's own list.
    pub variant: &'static str,
    /// The head of its address, which is also the end of its test id `screen-…`.
    pub head: &'static str,
    /// What follows in the address.
    pub rest: Rest,
}

/// What follows the head of an address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rest {
    /// Nothing.
    Nothing,
    /// A pan's id.
    Pan,
    /// What is set up, and its id.
    Thing,
}

const fn known(variant: &'static str, head: &'static str) -> Known {
    Known {
        variant,
        head,
        rest: Rest::Nothing,
    }
}

/// Every screen.
pub const SCREENS: &[Known] = &[
    known("First", "first"),
    known("Today", "today"),
    Known {
        rest: Rest::Pan,
        ..known("Pan", "pan")
    },
    known("Log", "log"),
    Known {
        rest: Rest::Pan,
        ..known("Add", "add")
    },
    Known {
        rest: Rest::Pan,
        ..known("KeptFor", "kept")
    },
    known("Filter", "filter"),
    known("LightUp", "light-up"),
    known("LockUp", "lock-up"),
    Known {
        rest: Rest::Pan,
        ..known("OilChange", "oil-change")
    },
    Known {
        rest: Rest::Pan,
        ..known("BoilOut", "boil-out")
    },
    Known {
        rest: Rest::Pan,
        ..known("Waste", "waste")
    },
    known("LastNight", "last-night"),
    known("Allergens", "allergens"),
    known("Office", "office"),
    known("SetUp", "set-up"),
    Known {
        rest: Rest::Thing,
        ..known("Edit", "edit")
    },
];

/// Fails when the app has a screen that [`SCREENS`] has not, or the other way round.
pub fn none_forgotten() -> Outcome {
    let source = std::fs::read_to_string(xtask::shell::root().join("src/ui/screen.rs"))?;
    let listed = variants(&source);
    let known: Vec<&str> = SCREENS.iter().map(|screen| screen.variant).collect();
    if listed == known {
        Ok(())
    } else {
        fault(format!("the app's screens are {listed:?}, the journeys know {known:?}"))
    }
}

/// The variants of `pub enum Screen` in its source.
fn variants(source: &str) -> Vec<&str> {
    let body = source.split_once("pub enum Screen {").map_or("", |(_, rest)| rest);
    body.lines()
        .map(str::trim)
        .take_while(|line| *line != "}")
        .filter(|line| line.starts_with(|c: char| c.is_ascii_uppercase()))
        .filter_map(|line| line.split(['(', ',']).next())
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_screen_is_noticed() {
        assert_eq!(
            variants("pub enum Screen {\n    /// One.\n    Today,\n    /// Two.\n    Pan(PanId),\n}\nFirst,"),
            ["Today", "Pan"]
        );
    }
}
