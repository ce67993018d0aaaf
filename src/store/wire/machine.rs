//! The body of a filter machine or hand kit: version 1, version 2 where a powder is used with it, version 3 where it has a
//! heater whose watts are not known. What needs neither is still written as version 1, so that an older app reads it.

use super::body::Body;
use super::parts::{HeldV1, Pairs};
use super::scalar::{Text, Whole};
use super::stored::{Unless, stored};
use crate::domain::facts::setup::{FilterKind, Heater, Machine, OutBy};
use crate::domain::ids::MachineId;
use crate::domain::units::{Dose, Share, Temp, Volume};

stored! {
    /// A filter machine or hand kit, whole.
    pub struct MachineV1 {
        machine: Text<MachineId>,
        name: String,
        out_by: Text<OutBy>,
        tank_ml: Whole<Volume>,
        free_cpc: Whole<Share>,
        heater_w: u32,
        #[cfg_attr(feature = "schema", serde(default))]
        takes_solid: Unless<bool>,
        filter: Text<FilterKind>,
        low_dc: Whole<Temp>,
        high_dc: Whole<Temp>,
        target_dc: Whole<Temp>,
        rinse_max_s: Option<u16>,
        rinse_min_s: Option<u16>,
        filters: Vec<String>,
        words: Pairs<String, String>,
        exposures: HeldV1,
    }
}

impl Body for MachineV1 {
    type Fact = Machine;

    fn write(fact: &Machine) -> Self {
        Self {
            machine: Text(fact.machine),
            name: fact.name.clone(),
            out_by: Text(fact.out_by),
            tank_ml: Whole(fact.tank),
            free_cpc: Whole(fact.free),
            heater_w: fact.heater.watts().unwrap_or(0),
            takes_solid: Unless(fact.takes_solid),
            filter: Text(fact.filter),
            low_dc: Whole(fact.low),
            high_dc: Whole(fact.high),
            target_dc: Whole(fact.target),
            rinse_max_s: fact.rinse_max_s,
            rinse_min_s: fact.rinse_min_s,
            filters: fact.filters.clone(),
            words: Pairs(fact.words.clone()),
            exposures: fact.held.into(),
        }
    }

    fn read(self) -> Result<Machine, String> {
        if self.high_dc.0.dc() > 2_000 {
            return Err("high_dc lies above 200 °C".into());
        }
        if self.low_dc.0 > self.high_dc.0 {
            return Err("low_dc lies above high_dc".into());
        }
        Ok(Machine {
            machine: self.machine.0,
            name: self.name,
            out_by: self.out_by.0,
            tank: self.tank_ml.0,
            free: self.free_cpc.0,
            heater: Heater::of_watts(self.heater_w),
            takes_solid: self.takes_solid.0,
            filter: self.filter.0,
            low: self.low_dc.0,
            high: self.high_dc.0,
            target: self.target_dc.0,
            rinse_max_s: self.rinse_max_s,
            rinse_min_s: self.rinse_min_s,
            filters: self.filters,
            powder: None,
            words: self.words.0,
            held: self.exposures.into(),
        })
    }
}

stored! {
    /// A filter machine or hand kit with which a powder is used, whole: version 1 and the powder.
    pub struct MachineV2 {
        machine: Text<MachineId>,
        name: String,
        out_by: Text<OutBy>,
        tank_ml: Whole<Volume>,
        free_cpc: Whole<Share>,
        heater_w: u32,
        #[cfg_attr(feature = "schema", serde(default))]
        takes_solid: Unless<bool>,
        filter: Text<FilterKind>,
        low_dc: Whole<Temp>,
        high_dc: Whole<Temp>,
        target_dc: Whole<Temp>,
        rinse_max_s: Option<u16>,
        rinse_min_s: Option<u16>,
        filters: Vec<String>,
        powder_g_per_l: Option<Whole<Dose>>,
        words: Pairs<String, String>,
        exposures: HeldV1,
    }
}

impl Body for MachineV2 {
    type Fact = Machine;

    fn write(fact: &Machine) -> Self {
        let plain = MachineV1::write(fact);
        Self {
            machine: plain.machine,
            name: plain.name,
            out_by: plain.out_by,
            tank_ml: plain.tank_ml,
            free_cpc: plain.free_cpc,
            heater_w: plain.heater_w,
            takes_solid: plain.takes_solid,
            filter: plain.filter,
            low_dc: plain.low_dc,
            high_dc: plain.high_dc,
            target_dc: plain.target_dc,
            rinse_max_s: plain.rinse_max_s,
            rinse_min_s: plain.rinse_min_s,
            filters: plain.filters,
            powder_g_per_l: fact.powder.map(Whole),
            words: plain.words,
            exposures: plain.exposures,
        }
    }

    fn read(self) -> Result<Machine, String> {
        let plain = MachineV1 {
            machine: self.machine,
            name: self.name,
            out_by: self.out_by,
            tank_ml: self.tank_ml,
            free_cpc: self.free_cpc,
            heater_w: self.heater_w,
            takes_solid: self.takes_solid,
            filter: self.filter,
            low_dc: self.low_dc,
            high_dc: self.high_dc,
            target_dc: self.target_dc,
            rinse_max_s: self.rinse_max_s,
            rinse_min_s: self.rinse_min_s,
            filters: self.filters,
            words: self.words,
            exposures: self.exposures,
        };
        Ok(Machine {
            powder: self.powder_g_per_l.map(|dose| dose.0),
            ..plain.read()?
        })
    }
}

stored! {
    /// A filter machine with a heater whose watts are not known, whole: version 2 without them.
    pub struct MachineV3 {
        machine: Text<MachineId>,
        name: String,
        out_by: Text<OutBy>,
        tank_ml: Whole<Volume>,
        free_cpc: Whole<Share>,
        #[cfg_attr(feature = "schema", serde(default))]
        takes_solid: Unless<bool>,
        filter: Text<FilterKind>,
        low_dc: Whole<Temp>,
        high_dc: Whole<Temp>,
        target_dc: Whole<Temp>,
        rinse_max_s: Option<u16>,
        rinse_min_s: Option<u16>,
        filters: Vec<String>,
        powder_g_per_l: Option<Whole<Dose>>,
        words: Pairs<String, String>,
        exposures: HeldV1,
    }
}

impl Body for MachineV3 {
    type Fact = Machine;

    fn write(fact: &Machine) -> Self {
        let plain = MachineV2::write(fact);
        Self {
            machine: plain.machine,
            name: plain.name,
            out_by: plain.out_by,
            tank_ml: plain.tank_ml,
            free_cpc: plain.free_cpc,
            takes_solid: plain.takes_solid,
            filter: plain.filter,
            low_dc: plain.low_dc,
            high_dc: plain.high_dc,
            target_dc: plain.target_dc,
            rinse_max_s: plain.rinse_max_s,
            rinse_min_s: plain.rinse_min_s,
            filters: plain.filters,
            powder_g_per_l: plain.powder_g_per_l,
            words: plain.words,
            exposures: plain.exposures,
        }
    }

    fn read(self) -> Result<Machine, String> {
        let plain = MachineV2 {
            machine: self.machine,
            name: self.name,
            out_by: self.out_by,
            tank_ml: self.tank_ml,
            free_cpc: self.free_cpc,
            heater_w: 0,
            takes_solid: self.takes_solid,
            filter: self.filter,
            low_dc: self.low_dc,
            high_dc: self.high_dc,
            target_dc: self.target_dc,
            rinse_max_s: self.rinse_max_s,
            rinse_min_s: self.rinse_min_s,
            filters: self.filters,
            powder_g_per_l: self.powder_g_per_l,
            words: self.words,
            exposures: self.exposures,
        };
        Ok(Machine {
            heater: Heater::NotKnown,
            ..plain.read()?
        })
    }
}
