//! What stands on an answer's button: the thing and the state it was seen in, "Flame out", never "done".
//!
//! Every item with every word has a label, since a record from a newer app may pair what this one never asks. The
//! label is the item's noun and the word's state; where English wants it otherwise, the pair has its own line.

use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::setup::OutBy;
use crate::domain::units::Temp;

use super::local::theirs;
use super::{Lang, format};

/// The label of the answer `word` to `item`: one to four short words, at most 28 characters.
#[must_use]
pub fn label(item: Item, word: Word, lang: Lang) -> String {
    let Lang::En = lang;
    match own(item, word) {
        Some(own) => own.to_owned(),
        None => format!("{} {}", noun(item, lang), state(word)),
    }
}

/// The label as part of a sentence: "knob at off".
#[must_use]
pub fn phrase(item: Item, word: Word, lang: Lang) -> String {
    let mut label = label(item, word, lang);
    if let Some(first) = label.get_mut(..1) {
        first.make_ascii_lowercase();
    }
    label
}

/// Several things seen at one place as one answer: "Knob at off, flame out, no smoke".
#[must_use]
pub fn together(seen: &[(Item, Word)], lang: Lang) -> String {
    let Some(((item, word), rest)) = seen.split_first() else {
        return String::new();
    };
    let rest = rest
        .iter()
        .map(|(item, word)| format!(", {}", phrase(*item, *word, lang)));
    std::iter::once(label(*item, *word, lang)).chain(rest).collect()
}

/// One piece of evidence as the log shows it: "Flame out", "Oil at 152 °C".
#[must_use]
pub fn seen(item: Item, seen: &Seen, lang: Lang) -> String {
    let Lang::En = lang;
    match seen {
        Seen::Is(word) => label(item, *word, lang),
        Seen::Words(words) => format!("{}: {}", noun(item, lang), theirs(words)),
        Seen::Number(n) => {
            let temp = i16::try_from(*n).ok().and_then(Temp::from_dc);
            let value = match (item, temp) {
                (Item::Load, _) => format!("{} kg", (n + 500) / 1000),
                (_, Some(temp)) => format::temp(temp),
                (_, None) => n.to_string(),
            };
            format!("{} at {value}", noun(item, lang))
        }
    }
}

/// All evidence of one answer, a piece each.
#[must_use]
pub fn all_seen(evidence: &Evidence, lang: Lang) -> Vec<String> {
    evidence.iter().map(|(item, value)| seen(*item, value, lang)).collect()
}

/// The end button of a step at which oil moves, pressed after the hand has stopped it.
#[must_use]
pub const fn moving_ends(out_by: OutBy, returning: bool, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match (out_by, returning) {
        (OutBy::Nozzle, _) | (OutBy::Drain | OutBy::BuiltIn, true) => "Pump is off",
        (OutBy::Drain | OutBy::BuiltIn, false) => "Flow has stopped",
        (OutBy::Hand, false) => "All in, lid is on",
        (OutBy::Hand, true) => "All is poured back",
    }
}

/// What an item is called at the start of a label.
#[must_use]
pub const fn noun(item: Item, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match item {
        Item::Knob => "Knob",
        Item::Flame => "Flame",
        Item::Light => "Light",
        Item::Thermostat => "Thermostat",
        Item::Isolator => "Isolator",
        Item::GasTap => "Gas tap",
        Item::Plug => "Plug",
        Item::SignOff => "Sign-off",
        Item::Gloves => "Gloves",
        Item::Face => "Face cover",
        Item::Apron => "Apron",
        Item::Sleeves => "Sleeves",
        Item::Shoes => "Shoes",
        Item::Floor => "Floor",
        Item::Way => "Way",
        Item::Extinguisher => "Extinguisher",
        Item::UsedSince => "Used since",
        Item::Filter => "Filter",
        Item::TankInside => "Tank inside",
        Item::Hose => "Hose",
        Item::Sound => "Lid and hose",
        Item::Tank => "Tank",
        Item::Heard => "Test sound",
        Item::Heater => "Heater",
        Item::Label => "Label",
        Item::Smoke => "Smoke",
        Item::Walls => "Walls",
        Item::Skimmings => "Scraps",
        Item::Sample => "Sample",
        Item::OilTemp | Item::ByHand | Item::Place | Item::PlaceAgain | Item::Warming => "Oil",
        Item::OffTarget => "Off target",
        Item::Nozzle => "Nozzle",
        Item::Pipe => "Pipe",
        Item::TankPlace => "Tank place",
        Item::Valve => "Valve",
        Item::Pump => "Pump",
        Item::Remainder => "The rest",
        Item::PanInside => "Pan inside",
        Item::Container => "Container",
        Item::Room => "Room",
        Item::Level => "Level",
        Item::Left => "Pan",
        Item::Compared => "Sample after",
        Item::Tag => "Tag",
        Item::Lid => "Lid",
        Item::MachinePlug => "Machine plug",
        Item::Line => "Line",
        Item::SpentFilter => "Spent filter",
        Item::Cloths => "Cloths",
        Item::Machine => "Machine",
        Item::Fan => "Fan",
        Item::InPan => "In the pan",
        Item::Crust => "Crust",
        Item::Melt => "Fat",
        Item::HeatSetting => "Heat",
        Item::Heap => "Heap",
        Item::HeapAgain => "Heap again",
        Item::Scraps | Item::Wetted => "Scraps",
        Item::Pans => "Pans",
        Item::Found => "Scraps",
        Item::Clock => "Clock",
        Item::Words => "Words",
        Item::Second => "Second person",
        Item::Carried => "Hot oil",
        Item::UnderOil => "Under the oil",
        Item::Pests => "Pests",
        Item::Smell => "Smell",
        Item::Probe => "Probe",
        Item::OutWay => "Way out",
        Item::Supply => "Supply",
        Item::Carry => "Carried",
        Item::Load => "Heaviest",
        Item::WasteLabel => "Waste label",
        Item::Stored => "Waste",
        Item::MachineTag => "Machine tag",
        Item::Cleaned => "Pan",
        Item::PanHolds => "Pan",
        Item::FreshFat => "Fresh in",
        Item::AllergenSheet => "Sheet",
        Item::StripClean => "Machine",
        Item::Blocks => "Blocks",
        Item::Packing => "Blocks",
        Item::Sheet => "Maker's sheet",
        Item::Chemical => "Chemical",
        Item::WaterLevel | Item::Foam | Item::WaterTemp | Item::DrainedTo => "Water",
        Item::Attended => "Somebody",
        Item::Rinse => "Rinse",
    }
}

/// What a word adds to the noun.
const fn state(word: Word) -> &'static str {
    match word {
        Word::Off => "off",
        Word::On => "on",
        Word::Out => "out",
        Word::Lit => "lit",
        Word::Low => "at lowest",
        Word::Shut => "shut",
        Word::Open => "open",
        Word::Signed => "signed off",
        Word::Supervised => "supervised",
        Word::Vouched => "vouched for",
        Word::Worn => "on",
        Word::Missing => "missing",
        Word::Dry => "dry",
        Word::Wet => "wet",
        Word::Clear => "clear",
        Word::Blocked => "blocked",
        Word::Seen => "seen",
        Word::Yes => "yes",
        Word::No => "no",
        Word::NotKnown => "not known",
        Word::Whole => "undamaged",
        Word::Damaged => "damaged",
        Word::Empty => "empty",
        Word::Oil => "has oil",
        Word::Same => "the same",
        Word::Different => "different",
        Word::None => "none",
        Word::Smoking => "smoking",
        Word::Scraped => "scraped",
        Word::ForCold => "for cold clean",
        Word::OnTray => "on flat tray",
        Word::NoTray => "without tray",
        Word::Taken => "taken",
        Word::InCorner => "low in corner",
        Word::Clamped => "clamped low",
        Word::Loose => "loose",
        Word::Locked => "locked on",
        Word::InPlace => "in place",
        Word::Running => "running",
        Word::Film => "a film",
        Word::Slow => "slow",
        Word::ClearDry => "clear and dry",
        Word::MetalDry => "metal, dry",
        Word::Unfit => "unfit",
        Word::Enough => "enough",
        Word::Short => "short",
        Word::Below => "below mark",
        Word::JustAbove => "just above",
        Word::Relit => "lit again",
        Word::Set => "left to set",
        Word::Better => "better",
        Word::Worse => "worse",
        Word::InPan => "in the pan",
        Word::Split => "in both",
        Word::InMachine => "in machine",
        Word::InContainer => "in container",
        Word::Gone => "gone",
        Word::Hung => "hung",
        Word::RunEmpty => "run empty",
        Word::InBin => "in metal bin",
        Word::Ready => "ready",
        Word::NeedsDrying => "needs drying",
        Word::OutOfService => "out of use",
        Word::Crackling => "crackling",
        Word::Quiet => "quiet",
        Word::Solid => "solid",
        Word::AllLiquid => "all liquid",
        Word::PartLiquid => "part liquid",
        Word::Cold => "cold",
        Word::Warm => "still warm",
        Word::ThinOutdoors => "thin, outdoors",
        Word::Burnt => "burnt",
        Word::NoTime => "no time",
        Word::FatNeeds => "fat needs it",
        Word::MachineNeeds => "machine needs",
        Word::Pumped => "pumped hot",
        Word::ByHand => "by hand, cold",
        Word::CutOut => "cut out cold",
        Word::Isolated => "shut off",
        Word::TwoPeople => "by two people",
        Word::Trolley => "on a trolley",
        Word::Alone => "by one alone",
        Word::OwnTin => "own empty tin",
        Word::DripTray => "on drip tray",
        Word::NearDrain => "near a drain",
        Word::Wiped => "wiped",
        Word::BoilOut => "boiled out",
        Word::Water => "has water",
        Word::Redone => "made new",
        Word::Old => "as it was",
        Word::StripCleaned => "strip-cleaned",
        Word::ToClean => "to be cleaned",
        Word::CutSmall => "cut small",
        Word::Packed => "packed tight",
        Word::Bridging => "on bare tubes",
        Word::Read => "read",
        Word::AsSheet => "as sheet says",
        Word::Mixed => "mixed",
        Word::InBand => "above the mark",
        Word::High => "near the rim",
        Word::Rising => "rising",
        Word::Here => "stays here",
        Word::Leaving => "must go",
        Word::Clean => "clean",
        Word::Cloudy => "cloudy",
    }
}

/// The pairs that English says otherwise.
const fn own(item: Item, word: Word) -> Option<&'static str> {
    Some(match (item, word) {
        (Item::Knob, Word::Off) => "Knob at off",
        (Item::Knob, Word::On) => "Knob at on",
        (Item::Light, Word::Lit) => "Light on",
        (Item::Thermostat, Word::Off) => "Thermostat at zero",
        (Item::Thermostat, Word::Clear) => "Bulb clear of crust",
        (Item::Thermostat, Word::Blocked) => "Crust over the bulb",
        (Item::Thermostat, Word::On) => "Thermostat turned up",
        (Item::Plug | Item::MachinePlug, Word::Out) => "Plug out",
        (Item::Plug | Item::MachinePlug, Word::On | Word::InPlace) => "Plug in the wall",
        (Item::SignOff, Word::Signed) => "Signed-off adult",
        (Item::SignOff, Word::Supervised) => "Beside a supervisor",
        (Item::SignOff, Word::Vouched) => "Owner, alone, vouches",
        (Item::SignOff, Word::No | Word::Missing) => "Nobody signed off",
        (Item::Gloves, Word::Worn) => "Dry gloves to hand",
        (Item::Face, Word::Worn) => "Eyes and face covered",
        (Item::Sleeves, Word::Worn) => "Sleeves down",
        (Item::Sleeves, Word::Missing) => "Sleeves up or short",
        (Item::Shoes, Word::Worn) => "Closed shoes, good grip",
        (Item::Shoes, Word::Missing) => "Open or soft shoes",
        (Item::Floor, Word::Oil) => "Oil on the floor",
        (Item::Way, Word::Blocked) => "Something in the way",
        (Item::Extinguisher, Word::Seen) => "Extinguisher in sight",
        (Item::UsedSince, Word::No) => "Nobody used it",
        (Item::UsedSince, Word::Yes) => "Somebody used it",
        (Item::UsedSince, Word::NotKnown) => "Nobody knows",
        (Item::Filter, Word::InPlace) => "Filter fitted, dry",
        (Item::Sound, Word::Whole) => "All undamaged",
        (Item::Sound, Word::Damaged) => "Something damaged",
        (Item::Heard, Word::Yes) => "Sound heard",
        (Item::Heard, Word::No) => "No sound heard",
        (Item::Label, Word::Same) => "Label says the same",
        (Item::Label, Word::Different) => "Label says another",
        (Item::Smoke, Word::None) => "No smoke",
        (Item::Smoke, Word::Smoking) => "Oil is smoking",
        (Item::Walls, Word::ForCold) => "Left for the cold clean",
        (Item::Skimmings, Word::None) => "No scraps to skim",
        (Item::Skimmings, Word::NoTray) => "No flat tray here",
        (Item::Skimmings, Word::OnTray) => "Scraps thin on the tray",
        (Item::Sample, Word::None) => "No sample",
        (Item::OffTarget, Word::NoTime) => "It will come down too late",
        (Item::OffTarget, Word::FatNeeds) => "This fat needs it",
        (Item::OffTarget, Word::MachineNeeds) => "This machine needs it",
        (Item::TankPlace, Word::InPlace) => "Tank in its place",
        (Item::TankPlace, Word::Loose | Word::Missing) => "Tank out of its place",
        (Item::Valve, Word::Shut) => "Drain valve shut",
        (Item::Valve, Word::Open) => "Drain valve open",
        (Item::Remainder, Word::None | Word::Empty) => "Pan empty",
        (Item::Remainder, Word::Film) => "A film at most",
        (Item::Remainder, Word::Oil) => "More than a film",
        (Item::Remainder, Word::Slow) => "It came slowly",
        (Item::PanInside, Word::ClearDry) => "Pan free of water and tools",
        (Item::PanInside, Word::Wet) => "Water in the pan",
        (Item::PanInside, Word::Blocked) => "Something in the pan",
        (Item::Container, Word::MetalDry) => "Metal, dry, with a lid",
        (Item::Container, Word::Unfit) => "Plastic, open or wet",
        (Item::Room, Word::Enough) => "Room for all of it",
        (Item::Room, Word::Short) => "Too small",
        (Item::ByHand, Word::InContainer) => "All in the container",
        (Item::Level, Word::Enough | Word::Clear) => "Well above the mark",
        (Item::Level, Word::JustAbove) => "Just above the mark",
        (Item::Level, Word::Below) => "Below the mark",
        (Item::Left, Word::Relit) => "Lit again",
        (Item::Left, Word::Off) => "Left off, lid on",
        (Item::Left, Word::Set) => "Left to set, lid on",
        (Item::Compared, Word::Better) => "Clearer",
        (Item::Compared, Word::Same) => "The same",
        (Item::Compared, Word::Worse) => "Cloudier",
        (Item::Compared, Word::None) => "No second sample",
        (Item::Place | Item::PlaceAgain, Word::Split) => "Some in pan, some out",
        (Item::Place | Item::PlaceAgain, Word::InMachine) => "Oil in the machine",
        (Item::Place | Item::PlaceAgain, Word::InContainer) => "Oil in the container",
        (Item::Place | Item::PlaceAgain, Word::Gone) => "Spilt or taken away",
        (Item::Tag, Word::Hung) => "Tag on the control",
        (Item::Tag, Word::None | Word::Missing) => "No tag",
        (Item::Lid, Word::Off) => "Lid off, set aside",
        (Item::Line, Word::RunEmpty) => "Line empty, drained back",
        (Item::Line, Word::AllLiquid) => "Melted, warm all along",
        (Item::Line, Word::Solid) => "Line still set",
        (Item::Line, Word::Oil) => "Oil still in the line",
        (Item::SpentFilter, Word::OnTray) => "Filter flat on the tray",
        (Item::SpentFilter, Word::NoTray) => "No flat tray here",
        (Item::SpentFilter, Word::InMachine | Word::InPlace) => "Left in, machine tagged",
        (Item::Cloths, Word::InBin) => "Cloths in the metal bin",
        (Item::Cloths, Word::None) => "No cloths used",
        (Item::Machine, Word::Ready) => "Dry, built, ready",
        (Item::Machine, Word::Oil) => "Oil inside, tagged",
        (Item::Fan, Word::On) => "Fan running",
        (Item::Fan, Word::Off) => "Fan still",
        (Item::InPan, Word::None | Word::Clear) => "No tool in the pan",
        (Item::InPan, Word::Blocked) => "Tool or cloth in the pan",
        (Item::Crust, Word::Open) => "Crust open over the heat",
        (Item::Crust, Word::Solid) => "Crust still closed",
        (Item::Crust, Word::None) => "No crust",
        (Item::Melt, Word::AllLiquid) => "All liquid, stirred",
        (Item::Melt, Word::PartLiquid) => "Some still solid",
        (Item::Melt, Word::Solid) => "Mostly solid",
        (Item::HeatSetting, Word::Low) => "Lowest or melt setting",
        (Item::Wetted, Word::Wet) => "Wetted, quiet",
        (Item::Wetted, Word::Crackling) => "They still spit",
        (Item::Wetted, Word::Dry) => "Still dry",
        (Item::InPan, Word::InPlace) => "Blocks small, packed close",
        (Item::InPan, Word::Loose) => "Blocks across bare tubes",
        (Item::InPan, Word::Gone) => "Blocks all melted in",
        (Item::InPan, Word::Wet) => "Water on it",
        (Item::Scraps, Word::ThinOutdoors) => "Thin on metal, outdoors",
        (Item::Scraps, Word::None) => "No scraps today",
        (Item::Scraps, Word::Warm) => "In a heap, still warm",
        (Item::Pans, Word::Off) => "All off, lids on",
        (Item::Pans, Word::On) => "One still on",
        (Item::Found, Word::None) => "Nothing left out",
        (Item::Carried, Word::None) => "Nobody carries oil",
        (Item::Carried, Word::Oil) => "Somebody carries oil",
        (Item::UnderOil, Word::Dry) => "No water under the oil",
        (Item::UnderOil, Word::Wet) => "Water under the oil",
        (Item::Pests, Word::None) => "No tracks of pests",
        (Item::Pests, Word::Seen) => "Tracks of pests",
        (Item::Smell, Word::Clear) => "Smells as it should",
        (Item::Smell, Word::Different) => "Smells rancid or odd",
        (Item::Probe, Word::Same) => "Probe right in ice water",
        (Item::Probe, Word::Different) => "Probe off in ice water",
        (Item::Second, Word::Seen) => "Somebody else is here",
        (Item::Second, Word::Missing) => "Nobody else is here",
        (Item::Clock, Word::Yes) => "Yes, that is the time",
        (Item::Clock, Word::No) => "No, another time",
        (Item::OutWay, Word::Pumped) => "Pumped hot by the machine",
        (Item::OutWay, Word::ByHand) => "By hand, 40 °C or under",
        (Item::OutWay, Word::CutOut) => "Cut out, set and cold",
        (Item::Supply, Word::Isolated) => "Gas or power shut off",
        (Item::Supply, Word::On) => "Can still be turned on",
        (Item::Container, Word::OwnTin) => "Its own empty tin, with lid",
        (Item::ByHand, Word::Split) => "Some is still in the pan",
        (Item::WasteLabel, Word::Seen) => "Labelled: waste oil",
        (Item::WasteLabel, Word::Missing) => "No label yet",
        (Item::MachineTag, Word::Hung) => "Tagged: hot oil inside",
        (Item::PanHolds, Word::Empty) => "Pan empty",
        (Item::AllergenSheet, Word::Redone) => "Allergen sheet made new",
        (Item::AllergenSheet, Word::Old) => "Still the old fat on it",
        (Item::StripClean, Word::ToClean) => "Tagged, to be cleaned",
        (Item::Blocks, Word::Whole) => "Whole blocks",
        (Item::Packing, Word::Packed) => "Packed against the surface",
        (Item::Packing, Word::Bridging) => "Bridging bare tubes",
        (Item::Chemical, Word::AsSheet) => "In cold water, by the sheet",
        (Item::Chemical, Word::None) => "Water only, none used",
        (Item::Chemical, Word::Mixed) => "Mixed with another",
        (Item::WaterLevel, Word::InBand) => "Above mark, below the rim",
        (Item::WaterLevel, Word::Below) => "Below the mark",
        (Item::Foam, Word::Quiet) => "Quiet, no foam rising",
        (Item::Foam, Word::Rising) => "Foam rising",
        (Item::DrainedTo, Word::AsSheet) => "Where the sheet says",
        (Item::DrainedTo, Word::NotKnown) => "Nobody knows where",
        (Item::Rinse, Word::Clean) => "Rinsed until clean",
        (Item::Rinse, Word::Cloudy) => "Still cloudy or slippery",
        (Item::PanInside, Word::Dry) => "Dry all over",
        _ => return None,
    })
}
