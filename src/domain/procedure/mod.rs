//! The procedure as data: steps, what each asks, which hold its answers open, and what going on sets in motion.
//!
//! Nothing here decides anything; [`super::guide`] interprets these tables.

mod away;
mod boil;
mod change;
mod cold;
mod day;
mod hot;
mod light;
mod lock;
mod pan;
mod ready;
mod tables;

pub use day::DayTables;
pub use pan::PanTables;
pub use tables::Tables;

use super::evidence::{Item, Word};
use super::facts::run::Fault;
use super::keyed::keyed;

keyed! {
    /// A safety hold: a condition met on evidence before the work goes on. None can be skipped.
    pub enum Hold {
        /// 1. A signed-off adult, or a starter beside a named supervisor.
        Person = "person",
        /// 2. Protective kit.
        Kit = "kit",
        /// 3. Floor dry, way clear, extinguisher seen.
        Floor = "floor",
        /// 4. Filter, tank and hose dry and sound.
        Dry = "dry",
        /// 5. Machine empty and large enough.
        Room = "room",
        /// 6. No claim meets an exposure of the machine.
        Match = "match",
        /// 7. A fresh reading inside the window.
        Temperature = "temperature",
        /// 8. Heat off, seen in two ways.
        HeatOff = "heat_off",
        /// 9. Nozzle or pipe secured, valve as the machine needs it.
        Connected = "connected",
        /// 10. After a fault or an interruption: safe, then looked at again.
        LookAgain = "look_again",
        /// 11. Level above the minimum, and enough to be so when cold.
        Level = "level",
        /// 12. Scraps, filters and cloths cold, or thin outdoors with a named look.
        Scraps = "scraps",
        /// Set fat: low heat until all of it is seen liquid.
        Melt = "melt",
        /// Solid fat: the machine's warm-up over and not expired.
        WarmUp = "warm_up",
        /// Rinse and return: nothing in the pan, and dry.
        ClearDry = "clear_dry",
        /// Cold route: a dry lidded metal container with room.
        Container = "container",
        /// What is lifted weighs no more than one person lifts, or there is help.
        Lift = "lift",
        /// Boil-out: water above the mark and somebody there.
        Water = "water",
        /// Boil-out: the chemical by its maker's sheet.
        Chemical = "chemical",
    }
}

keyed! {
    /// A named stretch of the work.
    pub enum Block {
        /// Person, kit, floor, machine.
        Ready = "ready",
        /// Oil out of the pan.
        PumpOut = "pump_out",
        /// Oil back into it.
        Return = "return",
        /// The machine and the leavings.
        PutAway = "put_away",
        /// The start of the day.
        LightUp = "light_up",
        /// The end of the day.
        LockUp = "lock_up",
        /// Old oil out, fresh in.
        OilChange = "oil_change",
        /// A pan boiled clean.
        BoilOut = "boil_out",
    }
}

keyed! {
    /// What can hurt somebody at a step.
    pub enum Hazard {
        /// A trip or an untrained hand beside hot oil.
        Person = "person",
        /// Splash on skin.
        Splash = "splash",
        /// Slip.
        Slip = "slip",
        /// Somebody eats what they must not.
        Allergen = "allergen",
        /// Water flashing to steam under oil.
        Steam = "steam",
        /// Oil over the rim.
        Overflow = "overflow",
        /// Fat set in pump or hose.
        SetInLine = "set_in_line",
        /// Oil too hot or too thick.
        WrongTemp = "wrong_temp",
        /// Fire on the bare wall of a pan.
        BareHeat = "bare_heat",
        /// Leaning over hot oil.
        Leaning = "leaning",
        /// Scraps that heat themselves.
        SelfHeating = "self_heating",
        /// A vessel of hot oil in the hand.
        Carrying = "carrying",
        /// A nozzle that jumps.
        Jump = "jump",
        /// Hands near a hot wall.
        HotWall = "hot_wall",
        /// Oil onto the floor through an open valve.
        OpenValve = "open_valve",
        /// Live or hot machine opened.
        Live = "live",
        /// Melted fat trapped under a crust.
        Crust = "crust",
        /// Nobody hears the alarm.
        Unheard = "unheard",
        /// A strained back.
        Lifting = "lifting",
        /// Fumes and burns of a cleaning chemical.
        Chemical = "chemical",
        /// Hot water over the rim.
        BoilOver = "boil_over",
        /// Oil in a drain or on the ground.
        Drain = "drain",
    }
}

/// What a screen's answer leads to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// As it must be.
    Good,
    /// Not yet: put it right and answer again. Nothing goes on.
    NotYet,
    /// Something is wrong: the fault branch.
    Fault(Fault),
    /// Not finished: back to the start of this movement of oil and once more.
    Again,
}

/// One answer a look can give.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// What is seen.
    pub word: Word,
    /// What that means.
    pub verdict: Verdict,
}

/// How a question is put.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// Look, and say which of up to three.
    Look(&'static [Answer]),
    /// One of the two signs the owner named for this pan (0 or 1).
    OffSign(usize),
    /// A probe reading in tenths of a degree Celsius.
    Probe,
    /// Why the oil is off its target; asked only when it is.
    OffTarget(&'static [Answer]),
    /// The tag on the pan's control; asked only when the level is below the mark or oil is out.
    TagIfLow(&'static [Answer]),
    /// Where the oil is, once more; asked only when it was said to be elsewhere than the log has it.
    IfElsewhere(&'static [Answer]),
    /// Who is at the pans, and who stands beside a starter.
    Person,
    /// Which machine.
    Machine,
}

/// A question, and the item its answer becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ask {
    /// What is looked at. For [`How::OffSign`] the pan's own sign takes its place.
    pub item: Item,
    /// How it is put.
    pub how: How,
    /// The hold its answer is evidence for.
    pub hold: Option<Hold>,
    /// In the short form, questions of one stop that share a number are one answer (at most three, at one place);
    /// 0 stands alone.
    pub together: u8,
    /// Whether the long form does the same, once this pan's run has seen each of them so: a look given already, at
    /// something that stands as it was left. Never for what the work itself changes, as the inside of a pan.
    pub still: bool,
}

/// What going on from a step sets in motion.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Act {
    /// Nothing.
    Nothing,
    /// Oil begins to leave the pan by pump or drain.
    StartDraw,
    /// It has stopped.
    EndDraw,
    /// Oil goes round to rinse.
    StartRinse,
    /// It has stopped.
    EndRinse,
    /// Oil begins to come back.
    StartReturn,
    /// It has stopped.
    EndReturn,
    /// Oil leaves by hand into the container.
    StartHand,
    /// All of it is there, lid on.
    EndHand,
    /// Oil is poured back.
    StartPour,
    /// All of it is back.
    EndPour,
    /// The run ends as answered.
    Leave,
}

/// Where the short form stops.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stop {
    /// Before the pump starts.
    BeforePump,
    /// Before the wipe.
    BeforeWipe,
    /// Before a rinse.
    BeforeRinse,
    /// Before the return.
    BeforeReturn,
    /// Before leaving the pan.
    BeforeLeaving,
    /// A step that is never grouped: it stands between stops.
    Alone,
}

/// A clock that belongs to a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Timer {
    /// Counts up against what is expected; an alarm sounds at one and a half times the longest.
    Expect {
        /// Usual shortest, seconds.
        from_s: u16,
        /// Usual longest, seconds.
        to_s: u16,
    },
    /// The rinse, by the machine's own limits.
    Rinse,
}

/// Which optional part a step belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Always there.
    Always,
    /// Only when samples are asked for.
    Samples,
    /// Only when the pan is wiped hot.
    Wipe,
    /// Only when the pan is rinsed.
    Rinse,
}

/// One step. Its sentence, its hazard line and its why are kept in words, by `id` and `hazard`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// Its id, which is also its text key.
    pub id: StepId,
    /// The stretch it belongs to.
    pub block: Block,
    /// What can hurt somebody.
    pub hazard: Hazard,
    /// The holds checked before going on; empty for a step that may be passed as it is answered. What each hold
    /// checks beyond its own answers is in `guide::holds`.
    pub holds: &'static [Hold],
    /// What it asks, in order.
    pub asks: &'static [Ask],
    /// What going on sets in motion.
    pub act: Act,
    /// Its clock.
    pub timer: Option<Timer>,
    /// Where the short form groups it.
    pub stop: Stop,
    /// When it is there at all.
    pub part: Part,
    /// Asked in one with the step before it, in both forms.
    pub joins: bool,
}

keyed! {
    /// Every step of every job, by id.
    pub enum StepId {
        /// Who is at the pans.
        Who = "ready.who",
        /// What they wear.
        Kit = "ready.kit",
        /// Where they stand.
        Floor = "ready.floor",
        /// Which machine, and who used it.
        Machine = "ready.machine",
        /// Filter built, dry and sound.
        Dry = "ready.dry",
        /// Tank empty.
        Empty = "ready.empty",
        /// The test sound.
        SoundCheck = "ready.sound",
        /// The machine's heater on, for solid fat.
        WarmUp = "ready.warm_up",
        /// This pan, this fat.
        Match = "out.match",
        /// Heat off.
        HeatOff = "out.heat_off",
        /// Scrape the walls.
        Scrape = "out.scrape",
        /// Skim.
        Skim = "out.skim",
        /// A sample before.
        SampleOut = "out.sample",
        /// The reading that counts.
        OilTemp = "out.oil_temp",
        /// Nozzle or pipe, and valve.
        Connect = "out.connect",
        /// Oil leaving.
        Draw = "out.draw",
        /// What is left.
        Remainder = "out.remainder",
        /// The container, on the cold route.
        Container = "out.container",
        /// Emptying by hand.
        EmptyByHand = "out.by_hand",
        /// Before the wipe.
        Wipe = "return.wipe",
        /// Before the rinse.
        Rinse = "return.rinse",
        /// Rinsing.
        Rinsing = "return.rinsing",
        /// A sample after.
        SampleBack = "return.sample",
        /// Before the return.
        GiveBack = "return.give_back",
        /// Oil coming back.
        Returning = "return.returning",
        /// Before pouring back, on the cold route.
        PourBack = "return.pour_back",
        /// Pouring back.
        Pouring = "return.pouring",
        /// What is left in the tank.
        Tank = "return.tank",
        /// The level.
        Level = "return.level",
        /// How the pan is left.
        Leave = "return.leave",
        /// The two samples.
        Compare = "return.compare",
        /// After a stop, a fault or an interruption.
        LookAgain = "again.look",
        /// Leaving with oil out of the pan.
        LeaveOut = "again.leave_out",
        /// Machine off and unplugged.
        AwayOff = "away.off",
        /// Line run empty.
        AwayLine = "away.line",
        /// Spent filter out.
        AwayFilter = "away.filter",
        /// Cloths.
        AwayCloths = "away.cloths",
        /// Floor.
        AwayFloor = "away.floor",
        /// How the machine is left.
        AwayMachine = "away.machine",
        /// Before lighting a pan.
        LightLook = "light.look",
        /// Its level now.
        LightLevel = "light.level",
        /// Heat on.
        LightOn = "light.on",
        /// Low heat on set fat.
        MeltLow = "light.melt_low",
        /// A look at the melt.
        MeltLook = "light.melt_look",
        /// Full heat once all is liquid.
        MeltFull = "light.melt_full",
        /// What the morning found of scraps left out.
        Found = "light.found",
        /// Scraps, filters and cloths, first probe.
        Scraps = "lock.scraps",
        /// The second probe, ten minutes on.
        ScrapsAgain = "lock.scraps_again",
        /// Still warm: thin, outdoors.
        ScrapsOut = "lock.scraps_out",
        /// Floor.
        LockFloor = "lock.floor",
        /// Pans off and lidded.
        LockPans = "lock.pans",
        /// How the oil leaves for good.
        ChangeHow = "change.how",
        /// Heat of set fat shut off for the cutting.
        Isolate = "change.isolate",
        /// Set fat cut out.
        CutOut = "change.cut_out",
        /// Old oil shut in the machine.
        InMachine = "change.in_machine",
        /// It leaves the machine, cold.
        LetOut = "change.let_out",
        /// Waste sealed and put by.
        Waste = "change.waste",
        /// How the empty pan is cleaned.
        Clean = "pan.clean",
        /// Wiped, dry, valve shut.
        Exit = "pan.exit",
        /// The pan is left as it stands.
        LeavePan = "pan.leave",
        /// Which fat goes in.
        FreshFat = "change.fat",
        /// Another fat than before.
        ChangeOver = "change.over",
        /// Before oil is poured in.
        FreshIn = "change.pour",
        /// Before blocks are packed in.
        PackIn = "change.pack",
        /// The level of what went in.
        FreshLevel = "change.level",
        /// Before the water.
        BoilEmpty = "boil.empty",
        /// Water in.
        BoilWater = "boil.water",
        /// Chemical in.
        BoilChemical = "boil.chemical",
        /// Low heat.
        BoilHeat = "boil.heat",
        /// A look at the boil.
        BoilLook = "boil.look",
        /// Cool enough to drain.
        BoilCool = "boil.cool",
        /// Drained.
        BoilDrain = "boil.drain",
        /// Scrubbed and rinsed.
        BoilRinse = "boil.rinse",
    }
}
