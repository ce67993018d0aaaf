//! Why each step is there, and where that comes from. What has no published source says so.

use crate::domain::procedure::StepId;

use super::Lang;

/// A reason and its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Why {
    /// One or two sentences.
    pub reason: &'static str,
    /// Who says so; see [`CUSTOM`] and [`OWN_RULE`] for what nobody published.
    pub source: &'static str,
}

/// The source of a habit of the trade.
pub const CUSTOM: &str = "Common practice, no source";
/// The source of a rule this project made.
pub const OWN_RULE: &str = "This guide's own rule, no source";

const CAIS17: &str = "HSE Catering Information Sheet 17";
const CAIS17_RULE: &str = "HSE Catering Information Sheet 17; the way of asking is this guide's own rule";
const TOKYO: &str = "Tokyo Fire Department; Madison Fire Department, 2019, by press report";
const CLOTHS: &str = "Devon & Somerset Fire and Rescue, 2017; Lancashire Fire and Rescue, 2024";
const STEAM: &str = "Steam's volume from memory; HSE Catering Information Sheet 17 for the dry vessel, second-hand";
const EXPANSION: &str = "Noureddini et al., 1992 (densities to 110 °C), drawn on above that";
const BARE: &str = "Common practice; agrees with OSHA and Dover District Council on the oil level";

/// Why a step is there.
#[must_use]
pub const fn why(step: StepId, lang: Lang) -> Why {
    let Lang::En = lang;
    let (reason, source) = match step {
        StepId::Who => (
            "New workers and hurry are the named factors in fryer burns. Only trained people run the machine, and nobody under 18.",
            "HSE Catering Information Sheet 17; OSHA restaurant eTool; NIOSH case summary (under 18)",
        ),
        StepId::Kit => (
            "A wet glove lets the heat straight through, and cloth shoes keep hot oil on the skin.",
            "HSE Catering Information Sheet 17; OSHA restaurant eTool",
        ),
        StepId::Floor => (
            "The worst burns on record began with a trip or a slip. The extinguisher helps only if you know where it hangs.",
            "HSE Catering Information Sheet 17; court cases in New South Wales, 2017, and Victoria, 2023",
        ),
        StepId::Machine => (
            "What the machine has met goes into the next pan. Filtering takes out crumbs, never allergens.",
            "Coeliac UK, guidance for fish and chip shops",
        ),
        StepId::Dry => (
            "A spoonful of water under hot oil becomes over a thousand times its volume of steam.",
            STEAM,
        ),
        StepId::Empty => (
            "Hot oil takes 10 to 13 % more room than cold. A tank that already holds oil runs over.",
            EXPANSION,
        ),
        StepId::SoundCheck => (
            "Kitchens are loud. If the sound is lost here, the screen must be watched instead.",
            OWN_RULE,
        ),
        StepId::WarmUp => (
            "Solid fat sets in a cold pump or hose. What sets there must never be freed with a flame or boiling water.",
            CUSTOM,
        ),
        StepId::Match => (
            "A pan kept gluten-free, vegetarian or halal loses that to whatever the machine has met.",
            "Coeliac UK, guidance for fish and chip shops; trading standards, take-away guide, 2015",
        ),
        StepId::HeatOff => (
            "A burner on a bare or half-empty pan sets its film of oil alight. One sign can mislead; two of different kinds seldom do.",
            BARE,
        ),
        StepId::Scrape => (
            "Carbon left on the wall is washed into clean oil as it comes back.",
            CUSTOM,
        ),
        StepId::Skim => (
            "Heaped scraps have caught fire two to ten hours later, with nobody there. Spread thin, they lose their heat.",
            TOKYO,
        ),
        StepId::SampleOut => (
            "Before and after can be judged only at the same depth, warmth and light.",
            CUSTOM,
        ),
        StepId::OilTemp => (
            "Oil heats in minutes and takes hours to cool, so feel and time mislead. The machine's manual gives the window.",
            "HSE Catering Information Sheet 17 (6–7 minutes, 6–7 hours; 40 °C by hand); five minutes is this guide's own rule",
        ),
        StepId::Connect => ("The first seconds of pumping are when a hose moves.", CUSTOM),
        StepId::Draw => (
            "An enclosed machine keeps you out of reach of hot oil, as long as it stays closed and somebody watches.",
            CAIS17,
        ),
        StepId::Remainder => (
            "The last cup holds most of the dirt, and a pan that came slowly has set fat or a full filter.",
            CUSTOM,
        ),
        StepId::Container => (
            "Plastic softens and water spits. A dry metal vessel with a lid holds even what is warmer than it looks.",
            "HSE Catering Information Sheet 17, as a caterer's handbook restates it",
        ),
        StepId::EmptyByHand => (
            "By hand only at 40 °C or under: then a spill is a mess and not a burn.",
            CAIS17,
        ),
        StepId::Wipe => (
            "The wall is still about as hot as the oil was. Gloves are made for seconds of contact, and a film of oil burns if the heat comes on.",
            BARE,
        ),
        StepId::Rinse => (
            "Whatever lies in the pan goes round with the oil, and water in it turns to steam.",
            STEAM,
        ),
        StepId::Rinsing => (
            "A single-pass filter is already loaded: longer looks busy and cleans nothing. A recirculating one has its own least time.",
            CUSTOM,
        ),
        StepId::SampleBack => (
            "A cup under a pump's outlet is the worst-placed hand in the job.",
            OWN_RULE,
        ),
        StepId::GiveBack => (
            "An open valve here is the biggest spill there can be, and water in the pan throws the oil out.",
            "Common practice; HSE Catering Information Sheet 17 for the dry pan, second-hand",
        ),
        StepId::Returning => (
            "The level tells when it is enough; the clock only tells when it is slow.",
            CUSTOM,
        ),
        StepId::PourBack => (
            "Nothing may be left in the pan to float, burn or spit once it is heated.",
            CAIS17,
        ),
        StepId::Pouring => (
            "A full drum or container is heavy enough to hurt a back, and a lost grip empties it on the floor.",
            CAIS17,
        ),
        StepId::Tank => (
            "Oil left in the machine counts: the next pan may not fit on top of it.",
            OWN_RULE,
        ),
        StepId::Level => (
            "The thermostat reads only oil that covers it. Hot oil stands higher than it will when cold.",
            "OSHA and Dover District Council on the level; Noureddini et al., 1992, on expansion",
        ),
        StepId::Leave => (
            "The next person lights what you leave. It must be plain what that is.",
            OWN_RULE,
        ),
        StepId::Compare => (
            "Hotter oil looks paler. Filtering takes out crumbs; it cannot take back what heat and air have done.",
            CUSTOM,
        ),
        StepId::LookAgain => (
            "An interruption is where a list most often breaks: things moved while nobody looked.",
            "Degani & Wiener, NASA CR-177549, 1990",
        ),
        StepId::LeaveOut => (
            "Nobody looks at a phone while lighting a pan. The tag hangs where the hand goes.",
            OWN_RULE,
        ),
        StepId::AwayOff => ("The housing is opened next. It must be dead before that.", CAIS17),
        StepId::AwayLine => (
            "What stands in the hose sets there, and decides tomorrow's warm-up.",
            CUSTOM,
        ),
        StepId::AwayFilter => ("A folded filter full of hot crumbs is a heap with a wrapper.", TOKYO),
        StepId::AwayCloths => (
            "Oily cloths heat themselves, even hours after a wash and a warm dryer.",
            CLOTHS,
        ),
        StepId::AwayFloor => (
            "Spills are cleaned at once and the floor round the pans is left fully clean and dry. A wet mop spreads oil.",
            "HSE Catering Information Sheet 17; HSE, Stop slips in kitchens",
        ),
        StepId::AwayMachine => ("Tomorrow's burst of steam is today's damp tank.", OWN_RULE),
        StepId::LightLook => (
            "Water, a tool or a lid left in the pan, or an open valve, shows only once it is hot.",
            CAIS17_RULE,
        ),
        StepId::LightLevel => (
            "Oil shrinks by about 9 % from 150 °C to a cold morning. A pan just above its mark at night can stand below it now.",
            "Noureddini et al., 1992, drawn on above 110 °C",
        ),
        StepId::LightOn => (
            "Oil heats in six to seven minutes. Switch a pan off whenever nobody attends it.",
            CAIS17,
        ),
        StepId::MeltLow => (
            "Fat shrinks off the hot surface as it sets, and a block can bridge bare tubes. Full heat burns the film in the gap while the bulb still reads cold.",
            CUSTOM,
        ),
        StepId::MeltLook => (
            "Melted fat trapped under a crust bursts through. Water in it crackles first.",
            CUSTOM,
        ),
        StepId::MeltFull => (
            "Full heat on a pan part solid burns what is melted and throws what is not.",
            CUSTOM,
        ),
        StepId::Found => (
            "A look that was owed is only worth something if somebody says what it found.",
            OWN_RULE,
        ),
        StepId::Scraps => (
            "A heap keeps its heat inside: smoke came after about two hours, fire three to ten hours on. Only a probe in its middle tells.",
            "Tokyo Fire Department, by a fire-prevention site; Madison Fire Department, 2019, by press report; 40 °C is this guide's own rule",
        ),
        StepId::ScrapsAgain => (
            "A heap that heats itself may pass through 40 °C on its way up. A second reading shows which way it goes.",
            OWN_RULE,
        ),
        StepId::ScrapsOut => (
            "Thin and flat, the heat leaves. Outdoors on metal, a fire finds nothing else to burn.",
            "Tokyo and Shimokita fire departments; outdoors on metal is this guide's own rule",
        ),
        StepId::LockFloor => (
            "Slips and trips hurt more kitchen staff than anything else.",
            "HSE Catering Information Sheet 6",
        ),
        StepId::ChangeHow => (
            "Carried hot oil has burnt more people than any other part of this work. Pumped or cold, nobody carries it.",
            CAIS17,
        ),
        StepId::Isolate => (
            "Hands and tools stand in the pan. A burner lit by mistake is met at arm's length.",
            OWN_RULE,
        ),
        StepId::CutOut => (
            "Fat set at 40 °C does not drain. Cut out cold, nobody carries it hot.",
            CUSTOM,
        ),
        StepId::InMachine => (
            "Oil stays hot for hours, and a closed machine looks cold.",
            "HSE Catering Information Sheet 17 (6–7 hours to cool)",
        ),
        StepId::LetOut => (
            "Plastic drums soften with hot oil, and a cold-looking tank can hold burning oil.",
            CAIS17_RULE,
        ),
        StepId::Waste => (
            "Waste oil stands where nothing falls into it and nothing runs from it. It never goes to a drain.",
            CAIS17,
        ),
        StepId::Clean => ("A film of oil on a bare wall burns if the heat comes on.", BARE),
        StepId::Exit => (
            "Water under fresh oil turns to steam at light-up, and an open valve empties the pan onto the floor.",
            STEAM,
        ),
        StepId::LeavePan => ("Somebody else may come to light it.", OWN_RULE),
        StepId::FreshFat => (
            "Fat is an ingredient: it carries allergens and animal origin to all that is fried in it.",
            "Reg. (EU) 1169/2011 Annex II, from memory",
        ),
        StepId::ChangeOver => (
            "The old fat stays in the machine and on the sheet until somebody takes it out.",
            OWN_RULE,
        ),
        StepId::FreshIn => (
            "A full drum is heavier than most people should lift from the floor alone.",
            "HSE manual handling guideline figures, from memory; HSE Catering Information Sheet 17",
        ),
        StepId::PackIn => (
            "A bare tube under a bridge of fat glows before anybody sees it.",
            CUSTOM,
        ),
        StepId::FreshLevel => ("A pan lit with too little in it bares its hot wall.", BARE),
        StepId::BoilEmpty => (
            "Water put onto oil boils under it when the heat comes on, and throws it out.",
            STEAM,
        ),
        StepId::BoilWater => (
            "Above the mark keeps the hot wall covered; well below the rim leaves room for foam.",
            OWN_RULE,
        ),
        StepId::BoilChemical => (
            "Cleaners in hot water boil up, and two mixed can give off poison.",
            CAIS17_RULE,
        ),
        StepId::BoilHeat => (
            "A boil-out left alone boils dry or over.",
            "From memory; HSE Catering Information Sheet 17 for fumes and boiling over",
        ),
        StepId::BoilLook => ("Water boils away and foam climbs in minutes.", OWN_RULE),
        StepId::BoilCool => ("Hot cleaner burns like hot oil, and drains splash.", OWN_RULE),
        StepId::BoilDrain => ("What a drain may take differs from place to place.", OWN_RULE),
        StepId::BoilRinse => (
            "Cleaner left in a pan goes into the food and breaks fresh oil down.",
            CAIS17_RULE,
        ),
        StepId::LockPans => (
            "A pan left on with nobody there is how a range catches fire.",
            "HSE Catering Information Sheet 17; Dover District Council",
        ),
    };
    Why { reason, source }
}
