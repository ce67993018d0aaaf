//! The body of a move: version 1 from pan to pan, version 2 into a machine or out of it. An older app reads all of the
//! first, and keeps the second as newer.

use super::body::Body;
use super::parts::{TypedV1, read_amount, write_amount};
use super::scalar::{Text, Whole};
use super::stored::stored;
use crate::domain::facts::oil::{Move, Parking, Vessel};
use crate::domain::ids::{MachineId, PanId};
use crate::domain::units::Volume;

stored! {
    /// Oil from one pan into another.
    pub struct MoveV1 {
        from: Text<PanId>,
        to: Text<PanId>,
        out_ml: Whole<Volume>,
        out_typed: TypedV1,
        in_ml: Whole<Volume>,
        in_typed: TypedV1,
    }
}

impl Body for MoveV1 {
    type Fact = Move;

    fn write(fact: &Move) -> Self {
        let (out_ml, out_typed) = write_amount(fact.out);
        let (in_ml, in_typed) = write_amount(fact.arrived);
        // Only ever asked of a move from pan to pan.
        let pan = |vessel: Vessel| Text(vessel.pan().unwrap_or(PanId(0)));
        Self {
            from: pan(fact.from),
            to: pan(fact.to),
            out_ml,
            out_typed,
            in_ml,
            in_typed,
        }
    }

    fn read(self) -> Result<Move, String> {
        let out = read_amount(self.out_ml, self.out_typed);
        let arrived = read_amount(self.in_ml, self.in_typed);
        if self.from == self.to {
            return Err("oil moved from a pan into itself".into());
        }
        Ok(Move {
            from: Vessel::Pan(self.from.0),
            to: Vessel::Pan(self.to.0),
            out,
            arrived,
        })
    }
}

stored! {
    /// Oil parked in a machine, or brought back out of it into a pan.
    pub struct MoveV2 {
        pan: Text<PanId>,
        machine: Text<MachineId>,
        to: Text<Parking>,
        out_ml: Whole<Volume>,
        out_typed: TypedV1,
        in_ml: Whole<Volume>,
        in_typed: TypedV1,
    }
}

impl Body for MoveV2 {
    type Fact = Move;

    fn write(fact: &Move) -> Self {
        let (out_ml, out_typed) = write_amount(fact.out);
        let (in_ml, in_typed) = write_amount(fact.arrived);
        let ends = [fact.from, fact.to];
        let to = if fact.to.machine().is_some() {
            Parking::Machine
        } else {
            Parking::Pan
        };
        // Only ever asked of a move between a pan and a machine.
        Self {
            pan: Text(ends.iter().find_map(|end| end.pan()).unwrap_or(PanId(0))),
            machine: Text(ends.iter().find_map(|end| end.machine()).unwrap_or(MachineId(0))),
            to: Text(to),
            out_ml,
            out_typed,
            in_ml,
            in_typed,
        }
    }

    fn read(self) -> Result<Move, String> {
        let (pan, machine) = (Vessel::Pan(self.pan.0), Vessel::Machine(self.machine.0));
        let (from, to) = match self.to.0 {
            Parking::Machine => (pan, machine),
            Parking::Pan => (machine, pan),
        };
        let out = read_amount(self.out_ml, self.out_typed);
        let arrived = read_amount(self.in_ml, self.in_typed);
        Ok(Move { from, to, out, arrived })
    }
}
