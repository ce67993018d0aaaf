//! What was seen, in answer to what was asked. Evidence holds a state ("flame": "out"), never "done".

mod seen;

pub use seen::{Evidence, Seen};

use super::keyed::keyed;

keyed! {
    /// A thing that is looked at or measured.
    pub enum Item {
        /// The pan's control knob.
        Knob = "knob",
        /// The pan's burner flame.
        Flame = "flame",
        /// The pan's heating light.
        Light = "light",
        /// The pan's thermostat.
        Thermostat = "thermostat",
        /// The pan's isolator.
        Isolator = "isolator",
        /// The pan's gas tap.
        GasTap = "gas_tap",
        /// The pan's plug.
        Plug = "plug",
        /// The person at the pans signed off, or vouched for by themselves in a one-person kitchen.
        SignOff = "sign_off",
        /// Dry heat-proof gloves.
        Gloves = "gloves",
        /// Eye or face protection.
        Face = "face",
        /// Apron.
        Apron = "apron",
        /// Sleeves down.
        Sleeves = "sleeves",
        /// Closed slip-resistant shoes.
        Shoes = "shoes",
        /// The floor.
        Floor = "floor",
        /// The way from pan to machine to bin.
        Way = "way",
        /// The extinguisher.
        Extinguisher = "extinguisher",
        /// Whether the machine ran without the guide since its last entry.
        UsedSince = "used_since",
        /// The filter and its seat.
        Filter = "filter",
        /// The inside of the tank, wiped with dry paper.
        TankInside = "tank_inside",
        /// The hose.
        Hose = "hose",
        /// Lid, hose and lead, for damage.
        Sound = "sound",
        /// What is in the tank.
        Tank = "tank",
        /// The test sound.
        Heard = "heard",
        /// The machine's heater.
        Heater = "heater",
        /// The label on the pan against what the guide says is in it.
        Label = "label",
        /// Smoke off the oil.
        Smoke = "smoke",
        /// The pan's walls.
        Walls = "walls",
        /// The skimmings.
        Skimmings = "skimmings",
        /// A sample of the oil.
        Sample = "sample",
        /// Temperature of the oil by probe, tenths of a degree Celsius.
        OilTemp = "oil_dc",
        /// Why the oil is off its target.
        OffTarget = "off_target",
        /// The nozzle.
        Nozzle = "nozzle",
        /// The pipe to the machine.
        Pipe = "pipe",
        /// The tank's place under the pan or in its drawer.
        TankPlace = "tank_place",
        /// The pan's drain valve.
        Valve = "valve",
        /// The pump.
        Pump = "pump",
        /// What is left in the pan.
        Remainder = "remainder",
        /// The pan's inside before oil returns.
        PanInside = "pan_inside",
        /// The lidded metal container.
        Container = "container",
        /// Room in that container.
        Room = "room",
        /// Oil moved by hand.
        ByHand = "by_hand",
        /// The oil level against the pan's own mark.
        Level = "level",
        /// How the pan is left.
        Left = "left",
        /// The two samples side by side.
        Compared = "compared",
        /// Where the oil is.
        Place = "place",
        /// Where the oil is, looked at once more because the log had it elsewhere.
        PlaceAgain = "place_again",
        /// The tag on the pan's control.
        Tag = "tag",
        /// The lid.
        Lid = "lid",
        /// The machine's plug.
        MachinePlug = "machine_plug",
        /// Hose and line after the last pan.
        Line = "line",
        /// The spent filter.
        SpentFilter = "spent_filter",
        /// Cloths and wipes.
        Cloths = "cloths",
        /// How the machine is left for the next run.
        Machine = "machine",
        /// Extraction fan.
        Fan = "fan",
        /// What lies in the pan.
        InPan = "in_pan",
        /// What the oil does as it warms.
        Warming = "warming",
        /// The crust over the hot surface.
        Crust = "crust",
        /// How much of the fat is liquid.
        Melt = "melt",
        /// The heat setting.
        HeatSetting = "heat_setting",
        /// First probe reading in the middle of the heap, tenths of a degree Celsius.
        Heap = "heap_dc",
        /// Second probe reading, ten minutes on, tenths of a degree Celsius.
        HeapAgain = "heap_again_dc",
        /// Where warm scraps lie.
        Scraps = "scraps",
        /// Whether warm scraps were wetted, once they no longer spat.
        Wetted = "wetted",
        /// All pans of the range.
        Pans = "pans",
        /// What the morning found of scraps left out.
        Found = "found",
        /// Whether the wall clock is right.
        Clock = "clock",
        /// In words.
        Words = "words",
        /// Somebody else in the building.
        Second = "second",
        /// Oil in somebody's hands.
        Carried = "carried",
        /// Water under oil that stood for days.
        UnderOil = "under_oil",
        /// Tracks or droppings of pests.
        Pests = "pests",
        /// What oil that stood for days smells of.
        Smell = "smell",
        /// The probe in ice water.
        Probe = "probe",
        /// How the oil leaves a pan that is changed.
        OutWay = "out_way",
        /// The pan's heat, shut where nobody can turn it on by mistake.
        Supply = "supply",
        /// Who or what carries a full container.
        Carry = "carry",
        /// What the heaviest container to lift weighs, grams.
        Load = "load_g",
        /// The label on a container of waste oil.
        WasteLabel = "waste_label",
        /// Where waste oil is kept.
        Stored = "stored",
        /// The tag "hot oil inside" on the machine.
        MachineTag = "machine_tag",
        /// How the pan is cleaned.
        Cleaned = "cleaned",
        /// What is in the pan, looked at again.
        PanHolds = "pan_holds",
        /// The fat that goes in, by its key.
        FreshFat = "fresh_fat",
        /// The allergen sheet, for another fat.
        AllergenSheet = "allergen_sheet",
        /// The machine after another fat.
        StripClean = "strip_clean",
        /// Blocks of solid fat.
        Blocks = "blocks",
        /// How blocks lie on the hot surface.
        Packing = "packing",
        /// The maker's sheet of the cleaning chemical.
        Sheet = "sheet",
        /// The cleaning chemical.
        Chemical = "chemical",
        /// The cleaning water against mark and rim.
        WaterLevel = "water_level",
        /// What the cleaning water does.
        Foam = "foam",
        /// Who stays beside the heated water.
        Attended = "attended",
        /// Temperature of the cleaning water by probe, tenths of a degree Celsius.
        WaterTemp = "water_dc",
        /// Where the cleaning water went.
        DrainedTo = "drained_to",
        /// The rinse.
        Rinse = "rinse",
    }
}

keyed! {
    /// What a thing was seen to be.
    pub enum Word {
        /// At off.
        Off = "off",
        /// On, or at on.
        On = "on",
        /// Out (flame, light, plug).
        Out = "out",
        /// Lit.
        Lit = "lit",
        /// At its lowest or melt setting.
        Low = "low",
        /// Shut.
        Shut = "shut",
        /// Open.
        Open = "open",
        /// Signed off.
        Signed = "signed",
        /// Beside a named supervisor.
        Supervised = "supervised",
        /// Vouched for by themselves, alone in the kitchen.
        Vouched = "vouched",
        /// On and fit.
        Worn = "worn",
        /// Missing.
        Missing = "missing",
        /// Dry.
        Dry = "dry",
        /// Wet.
        Wet = "wet",
        /// Clear.
        Clear = "clear",
        /// Something in the way.
        Blocked = "blocked",
        /// Seen where it belongs.
        Seen = "seen",
        /// Yes.
        Yes = "yes",
        /// No.
        No = "no",
        /// Nobody knows.
        NotKnown = "not_known",
        /// Undamaged.
        Whole = "whole",
        /// Damaged.
        Damaged = "damaged",
        /// Empty.
        Empty = "empty",
        /// Oil in it.
        Oil = "oil",
        /// The same as the guide says.
        Same = "same",
        /// Not the same.
        Different = "different",
        /// None to be seen.
        None = "none",
        /// Smoking.
        Smoking = "smoking",
        /// Scraped.
        Scraped = "scraped",
        /// Left for the cold clean.
        ForCold = "for_cold",
        /// Thin on the flat metal tray.
        OnTray = "on_tray",
        /// No tray found.
        NoTray = "no_tray",
        /// Taken.
        Taken = "taken",
        /// Held in the corner at the bottom.
        InCorner = "in_corner",
        /// Clamped low against the wall.
        Clamped = "clamped",
        /// Loose.
        Loose = "loose",
        /// Locked on.
        Locked = "locked",
        /// In its place.
        InPlace = "in_place",
        /// Running.
        Running = "running",
        /// A film at most.
        Film = "film",
        /// It came slowly.
        Slow = "slow",
        /// Nothing in it, and dry.
        ClearDry = "clear_dry",
        /// A lidded metal one, dry.
        MetalDry = "metal_dry",
        /// Plastic, open, or wet.
        Unfit = "unfit",
        /// Room for all of it.
        Enough = "enough",
        /// Not enough.
        Short = "short",
        /// Below the mark.
        Below = "below",
        /// Above the mark, but not by enough for cold oil.
        JustAbove = "just_above",
        /// Lit again.
        Relit = "relit",
        /// Left to set.
        Set = "set",
        /// Better.
        Better = "better",
        /// Worse.
        Worse = "worse",
        /// In the pan.
        InPan = "in_pan",
        /// Some in the pan, some in the machine.
        Split = "split",
        /// In the machine.
        InMachine = "in_machine",
        /// In the lidded metal container.
        InContainer = "in_container",
        /// Gone: spilt or taken away.
        Gone = "gone",
        /// Hung on the control.
        Hung = "hung",
        /// Run empty and drained back.
        RunEmpty = "run_empty",
        /// In the metal bin with its lid.
        InBin = "in_bin",
        /// Ready for the next run.
        Ready = "ready",
        /// Must dry first.
        NeedsDrying = "needs_drying",
        /// Not to be used.
        OutOfService = "out_of_service",
        /// Crackling or spitting: water.
        Crackling = "crackling",
        /// Quiet.
        Quiet = "quiet",
        /// Solid over the hot surface.
        Solid = "solid",
        /// All liquid, stirred and seen.
        AllLiquid = "all_liquid",
        /// Part liquid.
        PartLiquid = "part_liquid",
        /// Cold.
        Cold = "cold",
        /// Still warm.
        Warm = "warm",
        /// Thin on open metal outdoors, clear of walls and anything that burns.
        ThinOutdoors = "thin_outdoors",
        /// Burnt or burning.
        Burnt = "burnt",
        /// It is a hot evening, or the oil will not come down in time.
        NoTime = "no_time",
        /// The fat needs it.
        FatNeeds = "fat_needs",
        /// The machine runs better so.
        MachineNeeds = "machine_needs",
        /// Pumped hot into the closed machine.
        Pumped = "pumped",
        /// By hand, cold.
        ByHand = "by_hand",
        /// Cut out, set and cold.
        CutOut = "cut_out",
        /// Shut off where nobody turns it on by mistake.
        Isolated = "isolated",
        /// Two people.
        TwoPeople = "two_people",
        /// A trolley.
        Trolley = "trolley",
        /// One person alone.
        Alone = "alone",
        /// The fat's own empty tin, dry, with its lid.
        OwnTin = "own_tin",
        /// On a drip tray, shut, away from drains.
        DripTray = "drip_tray",
        /// Near a drain.
        NearDrain = "near_drain",
        /// Wiped.
        Wiped = "wiped",
        /// Boiled out.
        BoilOut = "boil_out",
        /// Water.
        Water = "water",
        /// Brought up to date.
        Redone = "redone",
        /// As it was before.
        Old = "old",
        /// Taken apart and cleaned.
        StripCleaned = "strip_cleaned",
        /// Tagged, to be taken apart and cleaned before it is used.
        ToClean = "to_clean",
        /// Cut small.
        CutSmall = "cut_small",
        /// Packed against the surface.
        Packed = "packed",
        /// Bridging bare tubes.
        Bridging = "bridging",
        /// Read.
        Read = "read",
        /// As the maker's sheet says.
        AsSheet = "as_sheet",
        /// Mixed with another.
        Mixed = "mixed",
        /// Above the mark and well below the rim.
        InBand = "in_band",
        /// Too near the rim.
        High = "high",
        /// Rising.
        Rising = "rising",
        /// Here, and staying.
        Here = "here",
        /// About to leave.
        Leaving = "leaving",
        /// Clean, as often as the sheet says.
        Clean = "clean",
        /// Still cloudy or slippery.
        Cloudy = "cloudy",
    }
}

impl Item {
    /// Whether the item is answered by a number (in the unit its key ends with).
    #[must_use]
    pub const fn is_number(self) -> bool {
        matches!(
            self,
            Self::OilTemp | Self::Heap | Self::HeapAgain | Self::WaterTemp | Self::Load
        )
    }

    /// Whether the item is answered in free words.
    #[must_use]
    pub const fn is_words(self) -> bool {
        matches!(self, Self::Words | Self::FreshFat)
    }
}
