//! The helper's card: a second person's place, one job and one shout at each step, for who may not run hot oil.
//!
//! A helper watches, keeps people off, fetches help. No line sends them to hot oil, and no job has them touch what
//! holds it; `tests/helper.rs` sees to it. All of it is a project default; that helpers keep their distance rests on the
//! cases named at `Hazard::Person` and on OSHA, Young Worker Safety in Restaurants.

use crate::domain::procedure::StepId;

use super::Lang;

/// What a helper is told at a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Helper {
    /// Where to stand.
    pub place: &'static str,
    /// What to do.
    pub job: &'static str,
    /// What to shout, and when.
    pub shout: &'static str,
}

const DOOR: &str = "By the door, two metres back.";
const SWITCH_OFF: &str = "By the main switch, two metres back.";
const COUNTER: &str = "At the counter side, way clear.";
const WORKTOP: &str = "At the worktop, away from the range.";
const STOP: &str = "Anything odd: shout STOP.";
const PEOPLE: &str = "Somebody comes: shout STAND BACK.";
const FLAME: &str = "Flame or smoke: shout FIRE.";

const fn helper(place: &'static str, job: &'static str, shout: &'static str) -> Helper {
    Helper { place, job, shout }
}

/// Nobody passes while oil moves.
const WHILE_IT_MOVES: Helper = helper(SWITCH_OFF, "Keep everybody back. Watch the floor.", STOP);
/// Oil lies open or hot.
const WHILE_IT_IS_HOT: Helper = helper(DOOR, "Keep everybody back from the range.", PEOPLE);

/// The helper's card at a step.
#[must_use]
pub const fn card(step: StepId, lang: Lang) -> Helper {
    let Lang::En = lang;
    match step {
        StepId::Who => helper(WORKTOP, "Say your name and your age.", STOP),
        StepId::Kit => helper(
            WORKTOP,
            "Look them over, head to shoes.",
            "Something missing: shout WAIT.",
        ),
        StepId::Floor => helper(COUNTER, "Move boxes and bags off the way.", "Wet floor: shout FLOOR."),
        StepId::Machine => helper(WORKTOP, "Read out what was fried today.", STOP),
        StepId::Dry => helper(WORKTOP, "Bring dry paper.", "A drop of water: shout WET."),
        StepId::Empty => helper(WORKTOP, "Point the torch where they say.", STOP),
        StepId::SoundCheck => helper(COUNTER, "Listen for the test sound.", "Heard: shout YES."),
        StepId::WarmUp => helper(DOOR, "Read the kitchen clock, and say it.", STOP),
        StepId::Match => helper(WORKTOP, "Read this screen out loud.", "Not the same: shout WAIT."),
        StepId::HeatOff => helper(DOOR, "Look whether the flame is out.", FLAME),
        StepId::Scrape
        | StepId::Skim
        | StepId::SampleOut
        | StepId::OilTemp
        | StepId::Wipe
        | StepId::SampleBack
        | StepId::Remainder
        | StepId::Tank
        | StepId::Level => WHILE_IT_IS_HOT,
        StepId::Connect | StepId::Rinse | StepId::GiveBack => helper(
            SWITCH_OFF,
            "Keep everybody back. Look at the floor.",
            "Wet floor: shout FLOOR.",
        ),
        StepId::Draw | StepId::Returning => WHILE_IT_MOVES,
        StepId::Rinsing => helper(SWITCH_OFF, "Count the seconds out loud.", STOP),
        StepId::Container => helper(WORKTOP, "Keep the door open, the way clear.", STOP),
        StepId::EmptyByHand | StepId::PourBack | StepId::Pouring => {
            helper(DOOR, "Walk ahead, open doors, keep people back.", STOP)
        }
        StepId::Leave => helper(DOOR, "Look whether the flame is as they say.", FLAME),
        StepId::Compare => helper(WORKTOP, "Switch the bright light on.", STOP),
        StepId::LookAgain => helper(SWITCH_OFF, "Stand still. Say what you saw happen.", STOP),
        StepId::LeaveOut => helper(
            WORKTOP,
            "Write the tag, and hand it over.",
            "Somebody lights it: shout STOP.",
        ),
        StepId::AwayOff => helper(DOOR, "Look whether the plug is out.", "Plug still in: shout PLUG."),
        StepId::AwayLine | StepId::AwayFilter => WHILE_IT_IS_HOT,
        StepId::AwayCloths => helper(COUNTER, "Keep paper and card away.", FLAME),
        StepId::AwayFloor => helper(COUNTER, "Keep people off till it is dry.", "Wet floor: shout FLOOR."),
        StepId::AwayMachine => helper(COUNTER, "Clear the place where it parks.", STOP),
        StepId::LightLook | StepId::LightLevel => helper(DOOR, "Read out any tag you see.", "A tag: shout TAG."),
        StepId::LightOn | StepId::MeltLow | StepId::MeltLook | StepId::MeltFull => helper(
            DOOR,
            "Listen for crackling. Keep people back.",
            "Crackling or smoke: shout OFF.",
        ),
        StepId::Found => helper(DOOR, "Look from outside, nothing more.", FLAME),
        StepId::Scraps | StepId::ScrapsAgain | StepId::ScrapsOut => {
            helper(DOOR, "Read the clock out. Keep card away.", FLAME)
        }
        StepId::LockFloor => helper(COUNTER, "Keep people off till it is dry.", "Wet floor: shout FLOOR."),
        StepId::LockPans => helper(DOOR, "Count the controls at off, out loud.", "One still on: shout ON."),
        StepId::ChangeHow => helper(WORKTOP, "Read this screen out loud.", STOP),
        StepId::Isolate => helper(DOOR, "Look whether the light is out.", "Light on: shout OFF."),
        StepId::CutOut | StepId::PackIn => helper(
            DOOR,
            "Look at the floor. Keep people back.",
            "Fat on the floor: shout FLOOR.",
        ),
        StepId::InMachine => helper(
            WORKTOP,
            "Write the tag, and hand it over.",
            "Somebody opens it: shout STOP.",
        ),
        StepId::LetOut | StepId::FreshIn => helper(DOOR, "Keep the door open, the way clear.", STOP),
        StepId::Waste => helper(COUNTER, "Write the label, and hand it over.", "No lid: shout LID."),
        StepId::Clean | StepId::Exit => helper(WORKTOP, "Bring dry paper.", "A drop of water: shout WET."),
        StepId::LeavePan => helper(
            WORKTOP,
            "Write the tag, and hand it over.",
            "Somebody lights it: shout STOP.",
        ),
        StepId::FreshFat | StepId::ChangeOver => helper(
            WORKTOP,
            "Read the label on the tin out loud.",
            "Not the same: shout WAIT.",
        ),
        StepId::FreshLevel => WHILE_IT_IS_HOT,
        StepId::BoilEmpty | StepId::BoilWater => {
            helper(WORKTOP, "Point the torch where they say.", "Oil to be seen: shout OIL.")
        }
        StepId::BoilChemical => helper(
            DOOR,
            "Read the maker's sheet out loud.",
            "On skin or in eyes: shout WATER.",
        ),
        StepId::BoilHeat | StepId::BoilLook => {
            helper(DOOR, "Watch for foam. Keep people back.", "Foam rising: shout OFF.")
        }
        StepId::BoilCool => WHILE_IT_IS_HOT,
        StepId::BoilDrain | StepId::BoilRinse => {
            helper(COUNTER, "Keep people off the wet floor.", "Wet floor: shout FLOOR.")
        }
    }
}

/// What the card is called.
#[must_use]
pub const fn title(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Helper"
}

/// What stands before place, job and shout.
#[must_use]
pub const fn heads(lang: Lang) -> [&'static str; 3] {
    let Lang::En = lang;
    ["Your place", "Your one job", "Shout"]
}
