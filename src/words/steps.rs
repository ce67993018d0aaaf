//! What each step says: the line read across the kitchen, the small words under it, and its name in the log.

use crate::domain::facts::setup::OutBy;
use crate::domain::procedure::{Block, StepId};

use super::Lang;

/// The line read from across the kitchen: at most eight words, what to do or look at, whatever the machine.
#[must_use]
pub const fn step_line(step: StepId, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match step {
        StepId::Who => "Say who is at the pans.",
        StepId::Kit => "Look at your kit, piece by piece.",
        StepId::Floor => "Look at floor, extinguisher and way.",
        StepId::Machine => "Choose the filter machine.",
        StepId::Dry => "Look inside: filter, tank and hose dry.",
        StepId::Empty => "Look into the tank: empty.",
        StepId::SoundCheck => "Listen for the test sound.",
        StepId::WarmUp => "See hose and line melted through.",
        StepId::Match => "Compare the pan's label with this screen.",
        StepId::HeatOff => "Turn the heat off. Look twice.",
        StepId::Scrape => "Scrape the walls above the oil.",
        StepId::Skim => "Skim the scraps onto the flat tray.",
        StepId::SampleOut => "Take a small sample with the ladle.",
        StepId::OilTemp => "Stir, then probe the middle.",
        StepId::Connect => "Connect the machine. See it secure.",
        StepId::Draw => "Start the pump. Watch the oil leave.",
        StepId::Remainder => "Look at what is left in the pan.",
        StepId::Container => "Look at the lidded metal container.",
        StepId::EmptyByHand => "Drain it slowly into the container.",
        StepId::Wipe => "See the heat off again, then wipe.",
        StepId::Rinse => "Look again before the rinse.",
        StepId::Rinsing => "Start the pump. Rinse. Stop in time.",
        StepId::SampleBack => "Take a sample with the ladle.",
        StepId::GiveBack => "Look again before the oil comes back.",
        StepId::Returning => "Start the pump. Watch the level.",
        StepId::PourBack => "Look again before you pour.",
        StepId::Pouring => "Pour back slowly, two people.",
        StepId::Tank => "Look into the tank again.",
        StepId::Level => "Read the level at the mark.",
        StepId::Leave => "Say how the pan is left.",
        StepId::Compare => "Take another sample. Compare both.",
        StepId::LookAgain => "Look again: heat, pump and oil.",
        StepId::LeaveOut => "Hang the tag on the pan's control.",
        StepId::AwayOff => "Switch the machine off. Pull the plug.",
        StepId::AwayLine => "Run the line empty.",
        StepId::AwayFilter => "Lift the filter onto the flat tray.",
        StepId::AwayCloths => "Put cloths in the lidded metal bin.",
        StepId::AwayFloor => "Look at the floor. Wipe it dry.",
        StepId::AwayMachine => "Say how the machine is left.",
        StepId::LightLook => "Look before you light this pan.",
        StepId::LightLevel => "Read the level at the mark now.",
        StepId::LightOn => "Turn the heat on. Stay with it.",
        StepId::MeltLow => "Set the lowest heat. Open the crust.",
        StepId::MeltLook => "Look at the melt.",
        StepId::MeltFull => "Stir. See all of it liquid.",
        StepId::Found => "Look at the scraps left outside.",
        StepId::Scraps => "Probe the middle of the heap.",
        StepId::ScrapsAgain => "Probe the heap again.",
        StepId::ScrapsOut => "Spread the scraps thin, outdoors, on metal.",
        StepId::LockFloor => "Look at the floor. Make it dry.",
        StepId::LockPans => "Look along the pans: off and lidded.",
        StepId::ChangeHow => "Say how the old oil leaves.",
        StepId::Isolate => "Shut the heat off for the cutting.",
        StepId::CutOut => "Lift the set fat out in pieces.",
        StepId::InMachine => "Shut the machine. Hang its tag.",
        StepId::LetOut => "Probe the machine's oil.",
        StepId::Waste => "Put lid and label on the waste.",
        StepId::Clean => "See the heat off, then wipe.",
        StepId::Exit => "Look inside: wiped, dry, valve shut.",
        StepId::LeavePan => "Look twice: heat off, tag hung.",
        StepId::FreshFat => "Choose the fat that goes in.",
        StepId::ChangeOver => "Put the allergen sheet right first.",
        StepId::FreshIn => "Look at the valve, then pour.",
        StepId::PackIn => "Put the blocks in small and tight.",
        StepId::FreshLevel => "Read the level of the fresh oil.",
        StepId::BoilEmpty => "Look into the pan: empty, heat off.",
        StepId::BoilWater => "Pour cold water in, above the mark.",
        StepId::BoilChemical => "Put the chemical into cold water.",
        StepId::BoilHeat => "Set the lowest heat. Stay with it.",
        StepId::BoilLook => "Look at the boil.",
        StepId::BoilCool => "Probe the water.",
        StepId::BoilDrain => "Drain it where the sheet says.",
        StepId::BoilRinse => "See it scrubbed cold, then rinsed.",
    }
}

/// The same for one kind of machine: steps at which the hands do another thing say so, the others are [`step_line`].
#[must_use]
pub const fn step_line_for(step: StepId, out_by: OutBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match (step, out_by) {
        (StepId::Connect, OutBy::Nozzle) => "Secure the nozzle low in the corner.",
        (StepId::Connect, OutBy::Drain) => "Lock the pipe on, tank underneath.",
        (StepId::Connect, OutBy::BuiltIn) => "See the tank home under the range.",
        (StepId::Draw, OutBy::Drain | OutBy::BuiltIn) => "Open the valve. Watch the oil leave.",
        (StepId::GiveBack, OutBy::Drain | OutBy::BuiltIn) => "Shut the valve. Look again.",
        (StepId::Dry, OutBy::Hand) => "Look inside: strainer and container dry.",
        (StepId::Empty | StepId::Tank, OutBy::Hand) => "Look into the container.",
        (StepId::Machine, OutBy::Hand) => "Choose the hand kit.",
        (StepId::AwayMachine, OutBy::Hand) => "Say how the hand kit is left.",
        _ => step_line(step, lang),
    }
}

/// The small words under the line, for somebody standing at the screen.
#[must_use]
pub const fn step_detail(step: StepId, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match step {
        StepId::Who => {
            "A signed-off adult, or a starter beside a named supervisor. Under 18: never with hot oil. Wrong name later? STOP, then Another person."
        }
        StepId::Kit => "Answer before the gloves go on. Gloves dry, sleeves down, shoes closed.",
        StepId::Floor => {
            "From pan to machine to bin: dry and clear. The extinguisher in sight is wet chemical, the kind for burning oil."
        }
        StepId::Machine => "Say whether anybody used it without the guide.",
        StepId::Dry => {
            "Wipe inside with dry paper and look at the paper. The machine's manual says which way the filter goes."
        }
        StepId::Empty => "No oil left from another pan. Lid shut when you have looked.",
        StepId::SoundCheck => "This is the sound for danger. If you cannot hear it, watch the screen.",
        StepId::WarmUp => "Fat sets in a cold pump. Warm it as its manual says; never a flame, never boiling water.",
        StepId::Match => "This pan, this fat, this promise. Read the label on the pan itself.",
        StepId::HeatOff => "Smoke? Stand back, touch nothing over the pan, open the Fire card.",
        StepId::Scrape => "Dry long-handled metal scraper. Stand to the side; lean over nothing.",
        StepId::Skim => "A thin layer under the fan. Never a bin, bag, bucket or colander.",
        StepId::SampleOut => "Dry, heat-proof, small. Set it on the tray beside the pan.",
        StepId::OilTemp => "This reading counts for five minutes. Clean, dry probe, half way down.",
        StepId::Connect => "Nobody else within reach. Hose without kinks. Know where the switch is before you start.",
        StepId::Draw => "Stop it when it draws air. One hand stays near the switch. Face away from the pan.",
        StepId::Remainder => "A film can stay. More than that: draw again in short bursts.",
        StepId::Container => "Clean, dry, metal, with handles and a lid. Room for all of it.",
        StepId::EmptyByHand => {
            "Only at 40 °C or under. At most two thirds full. Lid on before anybody moves it; two people move it."
        }
        StepId::Wipe => "Long handle or tongs, never a gloved hand in the pan. Too hot? Leave it for the cold clean.",
        StepId::Rinse => "No water and no tool in the pan, heat off, everything connected.",
        StepId::Rinsing => "The clock counts. On a single-pass filter stop at the latest when it sounds.",
        StepId::SampleBack => "From the pan, never from under the nozzle.",
        StepId::GiveBack => "Cloths and scraper out, no water in the pan, drain valve shut, heat off.",
        StepId::Returning => "About a minute. Watch the level, not the clock. Stop at the mark.",
        StepId::PourBack => "Cloths and scraper out, no water in the pan, drain valve shut, heat off.",
        StepId::Pouring => "Help for anything heavy. Low and close to the pan. No splash.",
        StepId::Tank => "Oil left inside stays inside: lid shut, and it says so.",
        StepId::Level => "Hot oil stands higher than cold. The screen says how far above the mark is enough.",
        StepId::Leave => "Lit again: stay five minutes. Off: lid on. To set: lid on and the melt tag.",
        StepId::Compare => "Never from under the nozzle. Same glass, same depth, same warmth, one light.",
        StepId::LookAgain => "Nothing is taken as it was. Say what you see now.",
        StepId::LeaveOut => {
            "The tag hangs on the control, where a hand would light it. Tag the machine: hot oil inside."
        }
        StepId::AwayOff => "Heater too. The hose drains back first.",
        StepId::AwayLine => {
            "Before the fat sets in it. Let the hose drain back into the tank. Cannot? Say so: it is melted before use."
        }
        StepId::AwayFilter => "Gloves on, tray under it, opened out flat, clear of cloths and cardboard.",
        StepId::AwayCloths => "Oily cloths heat themselves. Lid on, or straight to the hot wash.",
        StepId::AwayFloor => "Soak up small spills with dry absorbent, never a wet mop.",
        StepId::AwayMachine => "The next run believes what you say here.",
        StepId::LightLook => "Fan on, lid off, no tool in it, drain valve shut, no tag.",
        StepId::LightLevel => "Cold oil stands about 9 % lower than at 150 °C. Below the mark: top up first.",
        StepId::LightOn => {
            "By the maker's lighting instructions. Foam, crackle or spitting is water: heat off, stand back."
        }
        StepId::MeltLow => {
            "Stay with it, lid off. Clear the crust over hot surface and bulb. Fresh blocks: small, packed close, never across bare tubes."
        }
        StepId::MeltLook => "Every five minutes, lid off. Crackling is water: heat off, stand back.",
        StepId::MeltFull => "Full heat only when nothing solid is left under the spoon.",
        StepId::Found => "Say what the look found. Burnt scraps go to the owner today.",
        StepId::Scraps => "Scraps, filters and cloths. Under 40 °C, then once more in ten minutes.",
        StepId::ScrapsAgain => "Same place, ten minutes on: still under 40 °C, and no warmer.",
        StepId::ScrapsOut => {
            "Clear of walls and anything that burns. Wet them once they no longer spit. Name who looks next."
        }
        StepId::LockFloor => "Soak up, then dry. Never a wet mop on oil.",
        StepId::LockPans => "Every pan: heat off, lid on. A pan with oil out carries its tag.",
        StepId::ChangeHow => "Hot only by pump, shut in the machine. By hand only at 40 °C or under.",
        StepId::Isolate => "Knob, flame, and the tap or isolator where nobody turns it on by mistake.",
        StepId::CutOut => "Blunt scraper, no force on bulb or tubes. Into the lidded metal container.",
        StepId::InMachine => "Lid shut, tag on the machine: hot oil inside. Tag on the pan's control: empty.",
        StepId::LetOut => "Only at 40 °C or under. Into a dry lidded container, at most two thirds full.",
        StepId::Waste => "On a drip tray, away from drains. Never down a drain; a registered collector takes it.",
        StepId::Clean => "The wall may still be hot. Too hot to wipe: leave it tagged and come back.",
        StepId::Exit => "Dry paper shows water. The handle of the drain valve points shut.",
        StepId::LeavePan => "The pan is left as it stands, and says so itself.",
        StepId::FreshFat => "Another fat than before changes what may be promised of this pan.",
        StepId::ChangeOver => {
            "Sheet and signs name the new fat. The filter machine is strip-cleaned before this pan uses it."
        }
        StepId::FreshIn => "Two people or a trolley for a full drum. Slowly, and stop at the mark.",
        StepId::PackIn => "Cut small, against the hot surface. Never across bare tubes.",
        StepId::FreshLevel => "High enough: tag off, left for the light-up. Below: the tag stays.",
        StepId::BoilEmpty => "A film may stay. Valve shut, tag hung, fan running.",
        StepId::BoilWater => "Well below the rim: it rises as it boils.",
        StepId::BoilChemical => {
            "How much, how long, what to wear: the maker's sheet. Never two together, never into hot water."
        }
        StepId::BoilHeat => "Only with water above the mark and somebody who stays.",
        StepId::BoilLook => "Every five minutes. Foam, crackle, low water, or you must go: heat off.",
        StepId::BoilCool => "At 40 °C or under. Or heat it again, with the water above the mark.",
        StepId::BoilDrain => "The maker's sheet and local rules say where. With the kit still on.",
        StepId::BoilRinse => "As often as the sheet says, until the water stays clear.",
    }
}

/// The same for one kind of machine, as [`step_line_for`] is to [`step_line`].
#[must_use]
pub const fn step_detail_for(step: StepId, out_by: OutBy, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match (step, out_by) {
        (StepId::Draw, OutBy::Drain | OutBy::BuiltIn) => {
            "Open it slowly. Stand clear of pipe and valve, face away. Press when the flow has stopped."
        }
        (StepId::Connect, OutBy::Drain) => {
            "Nobody else within reach. Wheels braked. The valve stays shut until you go on."
        }
        (StepId::Connect, OutBy::BuiltIn) => "Nobody else within reach. The valve stays shut until you go on.",
        (StepId::Rinse, OutBy::Drain | OutBy::BuiltIn) => {
            "No water and no tool in the pan, heat off. The valve stands open, so that the oil runs through."
        }
        _ => step_detail(step, lang),
    }
}

/// The step's short name, for the log and for the place in a list.
#[must_use]
pub const fn step_title(step: StepId, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match step {
        StepId::Who => "Person",
        StepId::Kit => "Kit",
        StepId::Floor => "Floor and way",
        StepId::Machine => "Filter machine",
        StepId::Dry => "Dry and sound",
        StepId::Empty => "Tank empty",
        StepId::SoundCheck => "Sound check",
        StepId::WarmUp => "Warm-up",
        StepId::Match => "Fat and label",
        StepId::HeatOff => "Heat off",
        StepId::Scrape => "Scrape",
        StepId::Skim => "Skim",
        StepId::SampleOut => "Sample before",
        StepId::OilTemp => "Oil temperature",
        StepId::Connect => "Connect",
        StepId::Draw => "Pump out",
        StepId::Remainder => "The rest",
        StepId::Container => "Container",
        StepId::EmptyByHand => "Empty by hand",
        StepId::Wipe => "Wipe",
        StepId::Rinse => "Before the rinse",
        StepId::Rinsing => "Rinse",
        StepId::SampleBack => "Sample after",
        StepId::GiveBack => "Before the return",
        StepId::Returning => "Return",
        StepId::PourBack => "Before pouring",
        StepId::Pouring => "Pour back",
        StepId::Tank => "Tank after",
        StepId::Level => "Level",
        StepId::Leave => "How it is left",
        StepId::Compare => "Samples compared",
        StepId::LookAgain => "Look again",
        StepId::LeaveOut => "Left with oil out",
        StepId::AwayOff => "Machine off",
        StepId::AwayLine => "Line empty",
        StepId::AwayFilter => "Filter out",
        StepId::AwayCloths => "Cloths",
        StepId::AwayFloor => "Floor after",
        StepId::AwayMachine => "Machine parked",
        StepId::LightLook => "Before lighting",
        StepId::LightLevel => "Level now",
        StepId::LightOn => "Heat on",
        StepId::MeltLow => "Low heat",
        StepId::MeltLook => "Melt look",
        StepId::MeltFull => "All liquid",
        StepId::Found => "Scraps this morning",
        StepId::Scraps => "Scraps, first probe",
        StepId::ScrapsAgain => "Scraps, second probe",
        StepId::ScrapsOut => "Scraps outdoors",
        StepId::LockFloor => "Floor at closing",
        StepId::LockPans => "Pans at closing",
        StepId::ChangeHow => "How it leaves",
        StepId::Isolate => "Heat shut off",
        StepId::CutOut => "Cut out",
        StepId::InMachine => "Shut in the machine",
        StepId::LetOut => "Let out cold",
        StepId::Waste => "Waste put by",
        StepId::Clean => "Cleaning",
        StepId::Exit => "Wiped and dry",
        StepId::LeavePan => "Left as it stands",
        StepId::FreshFat => "Fat chosen",
        StepId::ChangeOver => "Another fat",
        StepId::FreshIn => "Before the fresh oil",
        StepId::PackIn => "Blocks packed",
        StepId::FreshLevel => "Fresh level",
        StepId::BoilEmpty => "Before the water",
        StepId::BoilWater => "Water in",
        StepId::BoilChemical => "Chemical in",
        StepId::BoilHeat => "Low heat on",
        StepId::BoilLook => "Boil look",
        StepId::BoilCool => "Water cooled",
        StepId::BoilDrain => "Drained",
        StepId::BoilRinse => "Scrubbed and rinsed",
    }
}

/// The name of a stretch of the work.
#[must_use]
pub const fn block_name(block: Block, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match block {
        Block::Ready => "Ready",
        Block::PumpOut => "Pump out",
        Block::Return => "Return",
        Block::PutAway => "Put away",
        Block::LightUp => "Light-up",
        Block::LockUp => "Lock-up",
        Block::OilChange => "Oil change",
        Block::BoilOut => "Boil-out",
    }
}

/// The line that closes a stretch of the work.
#[must_use]
pub const fn block_complete(block: Block, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match block {
        Block::Ready => "Ready is complete. Pumping out may begin.",
        Block::PumpOut => "The oil is out. Heat stays off.",
        Block::Return => "This pan is complete.",
        Block::PutAway => "All is put away. Scraps are still watched.",
        Block::LightUp => "This pan is lit. Stay with it.",
        Block::LockUp => "Lock-up is complete. Good night.",
        Block::OilChange => "The oil change is complete. Heat stays off until light-up.",
        Block::BoilOut => "The pan is clean, dry and empty. Heat stays off.",
    }
}

/// What is done at once where something means heat off, and seen before anything else.
#[must_use]
pub const fn heat_off_now(lang: Lang) -> &'static str {
    let Lang::En = lang;
    "Turn the heat OFF now. Stand back."
}
