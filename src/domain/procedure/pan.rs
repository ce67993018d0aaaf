//! The steps of oil change and boil-out as one value: tests explore them with a table that lacks one hold.

use super::{Step, boil, change};

/// The steps the jobs about one pan run by.
#[derive(Clone, Copy, Debug)]
pub struct PanTables {
    /// Who does it.
    pub who: &'static Step,
    /// What they wear.
    pub kit: &'static Step,
    /// The same with a chemical.
    pub chemical_kit: &'static Step,
    /// Where they stand.
    pub floor: &'static Step,
    /// After an interruption.
    pub again: &'static Step,
    /// Left as it stands.
    pub leave: &'static Step,
    /// How the oil leaves.
    pub how: &'static Step,
    /// Heat off.
    pub heat_off: &'static Step,
    /// Heat off and shut, for set fat.
    pub isolate: &'static Step,
    /// The oil's temperature.
    pub temp: &'static Step,
    /// What it goes into.
    pub container: &'static Step,
    /// Drained by hand.
    pub drain: &'static Step,
    /// Cut out.
    pub cut_out: &'static Step,
    /// Shut in the machine.
    pub in_machine: &'static Step,
    /// Out of the machine, cold.
    pub let_out: &'static Step,
    /// Waste put by.
    pub waste: &'static Step,
    /// How the pan is cleaned.
    pub clean: &'static Step,
    /// Wiped, dry, valve shut.
    pub exit: &'static Step,
    /// Another fat.
    pub change_over: &'static Step,
    /// Before pouring.
    pub pour: &'static Step,
    /// Before packing.
    pub pack: &'static Step,
    /// The level.
    pub level: &'static Step,
    /// Before the water.
    pub boil_empty: &'static Step,
    /// Water in.
    pub boil_water: &'static Step,
    /// Chemical in.
    pub boil_chemical: &'static Step,
    /// Low heat.
    pub boil_heat: &'static Step,
    /// One look.
    pub boil_look: &'static Step,
    /// Heat off.
    pub boil_off: &'static Step,
    /// Its temperature.
    pub boil_cool: &'static Step,
    /// Drained.
    pub boil_drain: &'static Step,
    /// Scrubbed and rinsed.
    pub boil_rinse: &'static Step,
}

impl PanTables {
    /// The tables as they are.
    pub const REAL: Self = Self {
        who: &change::WHO,
        kit: &change::KIT,
        chemical_kit: &boil::CHEMICAL_KIT,
        floor: &change::FLOOR,
        again: &change::AGAIN,
        leave: &change::LEAVE,
        how: &change::HOW,
        heat_off: &change::HEAT_OFF,
        isolate: &change::ISOLATE,
        temp: &change::TEMP,
        container: &change::CONTAINER,
        drain: &change::DRAIN,
        cut_out: &change::CUT_OUT,
        in_machine: &change::IN_MACHINE,
        let_out: &change::LET_OUT,
        waste: &change::WASTE,
        clean: &change::CLEAN,
        exit: &change::EXIT,
        change_over: &change::CHANGE_OVER,
        pour: &change::POUR,
        pack: &change::PACK,
        level: &change::LEVEL,
        boil_empty: &boil::EMPTY,
        boil_water: &boil::WATER_IN,
        boil_chemical: &boil::CHEMICAL,
        boil_heat: &boil::HEAT,
        boil_look: &boil::LOOK,
        boil_off: &boil::OFF,
        boil_cool: &boil::COOL,
        boil_drain: &boil::DRAIN,
        boil_rinse: &boil::RINSE,
    };

    /// The same tables with every step changed by `change`.
    #[must_use]
    pub fn each(self, change: impl Fn(&'static Step) -> &'static Step) -> Self {
        Self {
            who: change(self.who),
            kit: change(self.kit),
            chemical_kit: change(self.chemical_kit),
            floor: change(self.floor),
            again: change(self.again),
            leave: change(self.leave),
            how: change(self.how),
            heat_off: change(self.heat_off),
            isolate: change(self.isolate),
            temp: change(self.temp),
            container: change(self.container),
            drain: change(self.drain),
            cut_out: change(self.cut_out),
            in_machine: change(self.in_machine),
            let_out: change(self.let_out),
            waste: change(self.waste),
            clean: change(self.clean),
            exit: change(self.exit),
            change_over: change(self.change_over),
            pour: change(self.pour),
            pack: change(self.pack),
            level: change(self.level),
            boil_empty: change(self.boil_empty),
            boil_water: change(self.boil_water),
            boil_chemical: change(self.boil_chemical),
            boil_heat: change(self.boil_heat),
            boil_look: change(self.boil_look),
            boil_off: change(self.boil_off),
            boil_cool: change(self.boil_cool),
            boil_drain: change(self.boil_drain),
            boil_rinse: change(self.boil_rinse),
        }
    }
}
