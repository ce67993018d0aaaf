//! The cards that are one touch from every screen: fire and burn.
//!
//! `public/index.html` carries the fire and burn cards too, for a start that failed: change them together.

use super::Lang;

/// One line of a card and where it comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// What to do.
    pub text: String,
    /// Who says so.
    pub source: &'static str,
}

fn line(text: impl Into<String>, source: &'static str) -> Line {
    Line {
        text: text.into(),
        source,
    }
}

/// The number to call before anybody has set one up: it works in the UK, Ireland and the EU.
pub const DEFAULT_EMERGENCY_NUMBER: &str = "112";

/// The fire card.
#[must_use]
pub fn fire_card(emergency_number: &str, lang: Lang) -> Vec<Line> {
    let Lang::En = lang;
    vec![
        line(
            "Heat off only if you need not reach over the pan. Else the isolator or gas tap.",
            "Bedfordshire and Cornwall fire and rescue services",
        ),
        line(
            "No water. Do not move the pan.",
            "OSHA restaurant eTool; Bedfordshire Fire and Rescue Service",
        ),
        line(
            "Shout. Everyone out. Close the doors.",
            "Bedfordshire and West Sussex fire and rescue services",
        ),
        line(
            "Trained only: pull the fixed system, or wet chemical, with the exit behind you.",
            "OSHA restaurant eTool; Dover District Council",
        ),
        line(
            format!("Call {emergency_number} from outside. Leave this phone."),
            "Bedfordshire Fire and Rescue Service",
        ),
        line("Nobody goes back in.", "West Sussex Fire and Rescue Service"),
    ]
}

/// Smoke but no flame: the line above the fire card's own.
#[must_use]
pub const fn smoke_line(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Smoke, no flame: heat off, stand back, add nothing, let it cool."
}

/// The burn card; it opens at once, asks nothing, and its clock counts up to 20 minutes.
#[must_use]
pub fn burn_card(emergency_number: &str, lang: Lang) -> Vec<Line> {
    let Lang::En = lang;
    vec![
        line(
            "Get clear of the oil. Heat and pump off only if that is safe.",
            "ANZCOR Guideline 9.1.3",
        ),
        line(
            "Cool running water, 20 minutes, now. Up to three hours later it still helps.",
            "NHS, Burns and scalds; ANZCOR Guideline 9.1.3",
        ),
        line(
            format!(
                "Call {emergency_number} while it cools: white or charred skin, face, hands, feet or groin, all round a limb, or bigger \
                 than the person's hand."
            ),
            "St John Ambulance Cymru; NHS Greater Glasgow and Clyde",
        ),
        line(
            "Off with oily clothes, rings, watch. Leave what is stuck.",
            "NHS, Burns and scalds; Victorian Adult Burns Service",
        ),
        line(
            "No ice, cream, butter or oil. Leave blisters whole.",
            "NHS, Burns and scalds; North Bristol NHS Trust",
        ),
        line(
            "Keep the rest of the person warm.",
            "NHS, Burns and scalds; ANZCOR Guideline 9.1.3",
        ),
        line(
            "Then cling film laid along it, never wrapped round. Hand: a clean plastic bag. Face: nothing.",
            "NHS, Burns and scalds; North Bristol NHS Trust",
        ),
        line(
            "Oil in the eye: rinse at once, keep rinsing.",
            "Common first aid, no source: ask when you call",
        ),
        line(
            "Deep burns may not hurt. Smoke breathed in: hospital.",
            "NHS Greater Glasgow and Clyde",
        ),
    ]
}

/// Under the burn card's clock.
#[must_use]
pub const fn burn_clock_label(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "under cool running water"
}

/// When its clock has passed 20 minutes.
#[must_use]
pub const fn burn_clock_over(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "20 minutes reached. Cover it, keep them warm, get help."
}

/// What a card's button says.
#[must_use]
pub const fn fire_button(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Fire"
}

/// What a card's button says.
#[must_use]
pub const fn burn_button(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Burn"
}

/// What closes a card and goes back to where one was.
#[must_use]
pub const fn close_card(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Back to where I was"
}
