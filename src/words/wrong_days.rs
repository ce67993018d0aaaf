//! Days that go wrong: what each is called, what its card says and who says so, and the word that stands till it is over.
//!
//! First things first on every card: what moves oil, what heats it, the oil where it lies, then the people.

use crate::domain::facts::trouble::{TroubleEvent, TroubleKind};

use super::Lang;
use super::whys::{CUSTOM, OWN_RULE};

/// What to do, and who says so.
pub type Line = (&'static str, &'static str);

const CAIS17: &str = "HSE Catering Information Sheet 17";
const VICTORIA: &str = "WorkSafe Victoria, 2023: hot oil carried in open pots, a trip, skin grafts";
const SLIPS: &str = "HSE, Stop slips in kitchens";
const SMOKE: &str = "Bedfordshire Fire and Rescue Service";
const MEMORY: &str = "From memory: the cut-out of the fryer standards resets by hand";

/// What it is called.
#[must_use]
pub const fn name(what: TroubleKind, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        TroubleKind::PowerCut => "Power cut",
        TroubleKind::MachineDown => "Filter machine down",
        TroubleKind::CutOut => "Over-heat cut-out tripped",
        TroubleKind::Spill => "Oil on the floor",
        TroubleKind::Smoke => "A pan smokes",
        TroubleKind::Alone => "I am alone here",
        TroubleKind::CounterOpens => "Counter opens mid-job",
        TroubleKind::Shut => "Shut for days",
    }
}

/// What it says where it stops something.
#[must_use]
pub const fn refused(what: TroubleKind, lang: Lang) -> &'static str {
    match what {
        TroubleKind::MachineDown => "Machine down. Tonight: not filtered",
        TroubleKind::PowerCut
        | TroubleKind::CutOut
        | TroubleKind::Spill
        | TroubleKind::Smoke
        | TroubleKind::Alone
        | TroubleKind::CounterOpens
        | TroubleKind::Shut => name(what, lang),
    }
}

/// The word that stands on every screen until it is over. `about` is the pan or machine, where one is meant.
#[must_use]
pub fn standing(what: TroubleKind, about: &str, lang: Lang) -> String {
    let Lang::En = lang;
    match what {
        TroubleKind::PowerCut => "Power cut: look again before anything".to_owned(),
        TroubleKind::MachineDown => format!("{about} down: not filtered with it, nobody carries oil"),
        TroubleKind::CutOut => format!("Pan {about}: cut-out tripped, heat off until mended"),
        TroubleKind::Spill => "Oil on the floor: pump and heat off".to_owned(),
        TroubleKind::Smoke => format!("Pan {about} smokes: heat off, stand back"),
        TroubleKind::Alone => "Alone here: the machine stays off".to_owned(),
        TroubleKind::CounterOpens => "Counter open: oil home, no new pan".to_owned(),
        TroubleKind::Shut => "Shut: look at every pan before heat".to_owned(),
    }
}

/// The same on a screen that has room for one, with how many more there are.
#[must_use]
pub fn banner(what: TroubleKind, about: &str, more: usize, lang: Lang) -> String {
    let said = standing(what, about, lang);
    match more {
        0 => said,
        more => format!("{said}. And {more} more"),
    }
}

/// What its card says while it lasts.
#[must_use]
pub const fn card(what: TroubleKind, lang: Lang) -> &'static [Line] {
    let Lang::En = lang;
    match what {
        TroubleKind::PowerCut => &[
            (
                "Pump, fan and gas valve are off together. They may start by themselves when power returns.",
                CUSTOM,
            ),
            ("Torch, never a flame. Stand back from the oil.", OWN_RULE),
            (
                "Pump switch off. Every pan's control off. Machine's plug out.",
                OWN_RULE,
            ),
            ("Gas tap shut. Without the fan no burner runs.", OWN_RULE),
            ("Nozzle and hose stay where they are. Lids on the pans.", OWN_RULE),
            ("Tag each pan with oil out, and the machine: hot oil inside.", OWN_RULE),
            ("Nobody carries oil in the dark.", VICTORIA),
        ],
        TroubleKind::MachineDown => &[
            (
                "Never carry hot oil because the machine is down. Not one pot.",
                VICTORIA,
            ),
            (
                "Pump off, heat off, plug out. Hose and nozzle stay where they are.",
                OWN_RULE,
            ),
            ("Oil in the machine stays in the closed machine. Tag it.", OWN_RULE),
            ("Set fat: leave it in its pan to set, lid on, tag on.", OWN_RULE),
            (
                "Liquid oil: fry on in it, or empty by hand at 40 °C or under, by probe.",
                CAIS17,
            ),
            ("Tonight: not filtered. Say so; that is an honest log.", OWN_RULE),
        ],
        TroubleKind::CutOut => &[
            ("Do not reset it: the thermostat may have failed.", MEMORY),
            ("Heat off at the control, then isolator or gas tap.", OWN_RULE),
            ("Lid on, if you need not reach over the pan. Tag on.", OWN_RULE),
            ("Call the engineer. That pan stays off till then.", CAIS17),
        ],
        TroubleKind::Spill => &[
            ("Pump off. Heat off.", OWN_RULE),
            ("Keep everybody off it. A cone does not keep people out.", SLIPS),
            ("Hot oil on the floor: stand off till it is cold.", OWN_RULE),
            ("Soak it up with absorbent. Do not wet-mop: that spreads it.", SLIPS),
            ("The floor must be fully clean and dry again.", CAIS17),
        ],
        TroubleKind::Smoke => &[
            (
                "Heat off, if you need not reach over the pan. Else the isolator or gas tap.",
                SMOKE,
            ),
            ("Stand back. Fire card ready. Nobody leans over it.", OWN_RULE),
            ("Add nothing. Move nothing. Let it cool.", SMOKE),
            ("Flames: press Fire.", OWN_RULE),
        ],
        TroubleKind::Alone => &[
            ("A second person in the building before any pump.", OWN_RULE),
            ("The machine stays off. Oil stays in its pans, lids on.", OWN_RULE),
            (
                "Oil already out: bring it home, phone in your pocket, doors open.",
                OWN_RULE,
            ),
            (
                "Tonight: not filtered. First thing tomorrow, with somebody there.",
                OWN_RULE,
            ),
        ],
        TroubleKind::CounterOpens => &[
            ("Begin no new pan.", OWN_RULE),
            (
                "Finish: bring the oil that is out back into its pan. Level, drain valve, tag.",
                OWN_RULE,
            ),
            ("Leave: wipe, rinse, samples, scraping.", OWN_RULE),
            (
                "Machine off, plug out, parked with its lid on, out of the way.",
                OWN_RULE,
            ),
            (
                "Nobody serves from a pan in the job. Nobody passes behind you.",
                OWN_RULE,
            ),
        ],
        TroubleKind::Shut => &[
            ("Heat off and gas tap shut at every pan. Plugs out.", CAIS17),
            ("Lids on, once the oil is cold: warm oil under a lid sweats.", CUSTOM),
            ("Scraps, filters and cloths out, cold. Floor dry.", OWN_RULE),
            ("Machine empty, dry and open to the air.", CUSTOM),
            ("Waste oil closed and locked. Pest traps set.", CUSTOM),
        ],
    }
}

/// What to do once it is over, before anything else.
#[must_use]
pub const fn over(what: TroubleKind, lang: Lang) -> &'static [Line] {
    let Lang::En = lang;
    match what {
        TroubleKind::PowerCut => &[
            ("Controls stay off till you have looked at each.", OWN_RULE),
            ("Fan first, then gas, then one pan at a time.", CUSTOM),
            (
                "Set fat in the line: warm the machine again before any pump. Never a flame.",
                CUSTOM,
            ),
        ],
        TroubleKind::MachineDown => &[(
            "Who mended it? It is looked at dry and empty before the next pan.",
            OWN_RULE,
        )],
        TroubleKind::CutOut => &[("Which engineer looked at it, and reset it?", OWN_RULE)],
        TroubleKind::Spill => &[("Wipe with dry paper: it comes up clean.", OWN_RULE)],
        TroubleKind::Smoke => &[("Probe it before you heat it again.", OWN_RULE)],
        TroubleKind::Alone => &[(
            "They know where the extinguisher stands and how to call for help.",
            OWN_RULE,
        )],
        TroubleKind::CounterOpens => &[("Look again at floor and way before you go on.", OWN_RULE)],
        TroubleKind::Shut => &[
            (
                "Water sinks under oil that stood: draw a little from the drain, cold, and look.",
                CUSTOM,
            ),
            ("Probe in ice water: it reads 0 °C.", CUSTOM),
            ("First heat slowly, somebody beside it. Crackling: heat off.", CUSTOM),
            ("Extinguisher: look at the date of its service.", OWN_RULE),
        ],
    }
}

/// Words of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Say {
    /// The button that opens it.
    Open,
    /// Its title.
    Title,
    /// Says that it is so.
    ItIsSo,
    /// Says that what makes it safe was seen.
    SafeSeen,
    /// Says that it is over.
    ItIsOver,
    /// Over what to look at now.
    MakeSafe,
    /// Over what to look at in the end.
    WhenOver,
    /// Who mended it.
    MendedBy,
    /// Back to the list.
    Others,
    /// In the log already.
    Stands,
    /// The machine is down and the job is due.
    NotTonight,
    /// Over the pans or machines it can be said of.
    Which,
    /// Go on, with somebody else in the building.
    NotAlone,
}

impl Say {
    /// Every one.
    pub const ALL: [Self; 13] = [
        Self::Open,
        Self::Title,
        Self::ItIsSo,
        Self::SafeSeen,
        Self::ItIsOver,
        Self::MakeSafe,
        Self::WhenOver,
        Self::MendedBy,
        Self::Others,
        Self::Stands,
        Self::NotTonight,
        Self::Which,
        Self::NotAlone,
    ];
}

/// The words of a [`Say`].
#[must_use]
pub const fn say(what: Say, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match what {
        Say::Open => "Trouble",
        Say::Title => "Trouble",
        Say::ItIsSo => "It is so: log it",
        Say::SafeSeen => "All seen: log it",
        Say::ItIsOver => "It is over: log it",
        Say::MakeSafe => "See it safe",
        Say::WhenOver => "When it is over",
        Say::MendedBy => "Mended by",
        Say::Others => "Something else",
        Say::Stands => "In the log, not over",
        Say::NotTonight => "A machine is down. With it, tonight: not filtered. Nobody carries oil.",
        Say::Which => "Which one?",
        Say::NotAlone => "Go on: somebody else is in the building",
    }
}

/// What was said of it, for the log.
#[must_use]
pub const fn event(event: TroubleEvent, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match event {
        TroubleEvent::Began => "began",
        TroubleEvent::Looked => "seen safe",
        TroubleEvent::Over => "over",
    }
}
