//! The safety holds by name and number, what opens each, and what to do meanwhile.

use crate::domain::procedure::Hold;

use super::Lang;

/// A hold's name.
#[must_use]
pub const fn hold_name(hold: Hold, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match hold {
        Hold::Person => "Signed-off adult",
        Hold::Kit => "Protective kit",
        Hold::Floor => "Floor, way, extinguisher",
        Hold::Dry => "Dry and sound",
        Hold::Room => "Machine empty, with room",
        Hold::Match => "Kept-for matches",
        Hold::Temperature => "Fresh temperature",
        Hold::HeatOff => "Heat off, seen twice",
        Hold::Connected => "Secured before the pump",
        Hold::LookAgain => "Look again",
        Hold::Level => "Level above the mark",
        Hold::Scraps => "Scraps cold",
        Hold::Melt => "All liquid before full heat",
        Hold::WarmUp => "Machine warm",
        Hold::ClearDry => "Pan free of water and tools",
        Hold::Container => "Dry lidded metal container",
        Hold::Lift => "Help with what is heavy",
        Hold::Water => "Water above the mark, watched",
        Hold::Chemical => "Chemical by its maker's sheet",
    }
}

/// A hold's number, 1 to 12. Those that belong to one fat, one route, one job or one moment have none.
#[must_use]
pub const fn hold_number(hold: Hold) -> Option<u8> {
    match hold {
        Hold::Person => Some(1),
        Hold::Kit => Some(2),
        Hold::Floor => Some(3),
        Hold::Dry => Some(4),
        Hold::Room => Some(5),
        Hold::Match => Some(6),
        Hold::Temperature => Some(7),
        Hold::HeatOff => Some(8),
        Hold::Connected => Some(9),
        Hold::LookAgain => Some(10),
        Hold::Level => Some(11),
        Hold::Scraps => Some(12),
        Hold::Melt | Hold::WarmUp | Hold::ClearDry | Hold::Container | Hold::Lift | Hold::Water | Hold::Chemical => {
            None
        }
    }
}

/// The heading of a hold's screen: "Hold 8 · Heat off, seen twice".
#[must_use]
pub fn hold_title(hold: Hold, lang: Lang) -> String {
    let Lang::En = lang;
    let name = hold_name(hold, lang);
    hold_number(hold).map_or_else(|| format!("Hold · {name}"), |n| format!("Hold {n} · {name}"))
}

/// What opens it: nothing else does.
#[must_use]
pub const fn hold_opens(hold: Hold, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match hold {
        Hold::Person => "A signed-off adult at the pans, or a starter beside a named supervisor.",
        Hold::Kit => "Gloves dry, eyes and face covered, apron, sleeves down, closed shoes.",
        Hold::Floor => "Floor dry, way clear, a wet chemical extinguisher in sight.",
        Hold::Dry => "Filter, tank and hose seen dry; lid, hose and lead undamaged.",
        Hold::Room => "The tank seen empty, and big enough for this pan's hot oil.",
        Hold::Match => "A machine that has met nothing this pan is kept free of.",
        Hold::Temperature => "A probe reading inside the window, at most five minutes old.",
        Hold::HeatOff => "Both of this pan's signs seen off.",
        Hold::Connected => "Nozzle or pipe secured, and the drain valve as this machine needs it.",
        Hold::LookAgain => "Heat, pump and the place of the oil, seen again now.",
        Hold::Level => "The oil far enough above the mark to be above it when cold.",
        Hold::Scraps => {
            "Under 40 °C by probe, twice, ten minutes apart and not rising; or thin outdoors on metal with a named look."
        }
        Hold::Melt => "All of the fat stirred and seen liquid.",
        Hold::WarmUp => "The warm-up over, and the heater not off for 20 minutes since.",
        Hold::ClearDry => "No water and no tool in the pan. A film of its own oil may stay.",
        Hold::Container => "A dry metal container with a lid and room for all of it.",
        Hold::Lift => "A container light enough for one, or two people, or a trolley.",
        Hold::Water => "Water above the mark and well below the rim, and somebody who stays.",
        Hold::Chemical => "The maker's sheet read, and what it asks for worn and followed.",
    }
}

/// What to do while it is shut.
#[must_use]
pub const fn hold_meanwhile(hold: Hold, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match hold {
        Hold::Person => "Leave pan and machine as they are. Fetch somebody signed off, or log it as not done.",
        Hold::Kit => "Fetch what is missing, or leave the pan for another day.",
        Hold::Floor => "Dry it, clear it, find it. Then look again.",
        Hold::Dry => "Dry it with paper and time, never with heat. Damaged: out of service.",
        Hold::Room => "Empty the machine first, or use a bigger one. Never fill it and hope.",
        Hold::Match => "Choose another pan or a clean machine. Or the owner ends what this pan is kept for.",
        Hold::Temperature => "The pump stays off until a reading stands.",
        Hold::HeatOff => "Shut the isolator or gas tap. Lid on, stand back, call the engineer.",
        Hold::Connected => "Pump stays off. Secure it, then look again.",
        Hold::LookAgain => "Pump off, heat off, nobody carries oil.",
        Hold::Level => "Heat stays off. Top up with the right fat, then read again.",
        Hold::Scraps => "Spread them thinner and stay. Never inside, locked up, and warm.",
        Hold::Melt => "Lowest heat, lid off, look every five minutes. Crackling: heat off.",
        Hold::WarmUp => "Do other steps while it warms. Never free set fat with a flame or boiling water.",
        Hold::ClearDry => {
            "Heat stays off. Water: stop, wait until the pan is cold by the owner's rule, then dry it. A tool: lift it out with tongs."
        }
        Hold::Container => "The oil stays in the pan, lid on, until there is one.",
        Hold::Lift => "Leave it standing. Fetch help, a trolley or smaller containers.",
        Hold::Water => "Heat off, and see it off. Water goes in cold.",
        Hold::Chemical => "Use water only, or leave it for a day with the sheet to hand.",
    }
}

/// Who can change the limit, and when.
#[must_use]
pub const fn who_can_change(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Nobody can pass this hold. The owner sets its limits in set-up, never during a run."
}
