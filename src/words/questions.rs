//! The short question for each thing that is looked at or measured: it asks what is seen, without a negative.

use crate::domain::evidence::Item;
use crate::domain::procedure::StepId;

use super::Lang;

/// The question `item` is asked with at `step`.
#[must_use]
pub const fn question(step: StepId, item: Item, lang: Lang) -> &'static str {
    let Lang::En = lang;
    match (step, item) {
        (StepId::Machine, Item::Machine) => "Which machine?",
        (StepId::OilTemp, Item::Smoke) => "What comes off the oil now?",
        (StepId::Remainder, Item::Pump) => "What did the pump do?",
        (StepId::GiveBack | StepId::PourBack, Item::Valve) => "Where is the drain valve's handle?",
        (StepId::LookAgain | StepId::WarmUp, Item::Sound) => "How do hose and lid look now?",
        (StepId::Tank, Item::Tank) => "What is left in the tank?",
        (StepId::MeltLow, Item::InPan) => "How do the fresh blocks lie?",
        (StepId::MeltLow | StepId::MeltLook, Item::Thermostat) => "What lies over the bulb?",
        (StepId::LightLook, Item::Tag) => "What hangs on the control?",
        (StepId::LightLook, Item::Lid) => "Where is the lid?",
        (StepId::LightLevel, Item::Level) => "Where is the oil, against the mark, now?",
        (StepId::Exit, Item::PanInside) => "What does dry paper show inside?",
        (StepId::ScrapsAgain, Item::HeapAgain) => "What does the probe read, ten minutes on?",
        _ => of_item(item),
    }
}

/// The question over several things seen at one place, answered in one; `again` where each was seen so before.
#[must_use]
pub const fn of_group(again: bool, lang: Lang) -> &'static str {
    let Lang::En = lang;
    if again {
        "Is all of this still so?"
    } else {
        "Is all of this so?"
    }
}

/// The question an item is asked with when the step says nothing more particular.
const fn of_item(item: Item) -> &'static str {
    match item {
        Item::Knob => "Where does the knob point?",
        Item::Flame => "What does the flame do?",
        Item::Light => "What does the heating light do?",
        Item::Thermostat => "Where does the thermostat stand?",
        Item::Isolator => "Where is the isolator?",
        Item::GasTap => "How does the gas tap lie?",
        Item::Plug => "Where is the plug?",
        Item::SignOff => "Who stands for this run?",
        Item::Gloves => "What are your gloves like?",
        Item::Face => "What covers eyes and face?",
        Item::Apron => "What about the apron?",
        Item::Sleeves => "Where are your sleeves?",
        Item::Shoes => "What is on your feet?",
        Item::Floor => "What is the floor like?",
        Item::Way => "What lies on the way to the bin?",
        Item::Extinguisher => "Where does the wet chemical stand?",
        Item::UsedSince => "Was it used without the guide?",
        Item::Filter => "What is the filter like?",
        Item::TankInside => "What does dry paper show in the tank?",
        Item::Hose => "What is the hose like inside?",
        Item::Sound => "What are lid, hose and lead like?",
        Item::Tank => "What is in the tank?",
        Item::Heard => "What did you hear?",
        Item::Heater => "What does the machine's heater do?",
        Item::Label => "What does the pan's label say?",
        Item::Smoke => "What comes off the oil?",
        Item::Walls => "What are the pan's walls like?",
        Item::Skimmings => "Where are the scraps?",
        Item::Sample => "Where is the sample?",
        Item::OilTemp => "What does the probe read?",
        Item::OffTarget => "Why pump off target?",
        Item::Nozzle => "Where is the nozzle?",
        Item::Pipe => "How does the pipe sit?",
        Item::TankPlace => "Where is the tank?",
        Item::Valve => "How is the drain valve?",
        Item::Pump => "What does the pump do?",
        Item::Remainder => "What is left in the pan?",
        Item::PanInside => "Is any water or tool in the pan?",
        Item::Container => "What is the container like?",
        Item::Room => "How much room has it?",
        Item::ByHand => "Where did the oil go?",
        Item::Level => "Where is the oil, against the mark?",
        Item::Left => "How do you leave the pan?",
        Item::Compared => "How is the second, beside the first?",
        Item::Place => "Where is the oil?",
        Item::PlaceAgain => "The log says otherwise. Where is the oil?",
        Item::Tag => "Where is the tag?",
        Item::Lid => "Where is the lid?",
        Item::MachinePlug => "Where is the machine's plug?",
        Item::Line => "What is in hose and line?",
        Item::SpentFilter => "Where is the spent filter?",
        Item::Cloths => "Where are the cloths?",
        Item::Machine => "How is the machine left?",
        Item::Fan => "What does the fan do?",
        Item::InPan => "What lies in the pan?",
        Item::Warming => "What does it sound like?",
        Item::Crust => "How is the crust?",
        Item::Melt => "How much is liquid?",
        Item::HeatSetting => "Where is the heat set?",
        Item::Heap => "What does the probe read in the heap?",
        Item::HeapAgain => "What does the probe read now?",
        Item::Scraps => "Where do the scraps lie?",
        Item::Wetted => "Are the scraps wet all over?",
        Item::Pans => "How are the pans?",
        Item::Found => "What did you find?",
        Item::Clock => "Is this the right time?",
        Item::Words => "In your own words?",
        Item::Second => "Who else is in the building?",
        Item::Carried => "Who carries oil now?",
        Item::UnderOil => "What stands under the oil?",
        Item::Pests => "What tracks are there?",
        Item::Smell => "What does the oil smell of?",
        Item::Probe => "What does ice water read?",
        Item::OutWay => "How does the old oil leave?",
        Item::Supply => "Can the heat be turned on?",
        Item::Carry => "Who or what carries it?",
        Item::Load => "How heavy is the heaviest?",
        Item::WasteLabel => "What does its label say?",
        Item::Stored => "Where does it stand?",
        Item::MachineTag => "What hangs on the machine?",
        Item::Cleaned => "How is the pan cleaned?",
        Item::PanHolds => "What is in the pan now?",
        Item::FreshFat => "Which fat goes in?",
        Item::AllergenSheet => "What does the allergen sheet say?",
        Item::StripClean => "How is the filter machine?",
        Item::Blocks => "How are the blocks cut?",
        Item::Packing => "How do the blocks lie?",
        Item::Sheet => "Where is the maker's sheet?",
        Item::Chemical => "How did the chemical go in?",
        Item::WaterLevel => "Where is the water, against the mark?",
        Item::Foam => "What does the water do?",
        Item::Attended => "Who stays beside it?",
        Item::WaterTemp => "What does the probe read?",
        Item::DrainedTo => "Where did the water go?",
        Item::Rinse => "What is the rinse water like?",
    }
}
