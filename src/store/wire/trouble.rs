//! Body of a day that goes wrong, version 1.

use super::body::Body;
use super::parts::{Seens, read_evidence, write_evidence};
use super::scalar::Text;
use super::stored::stored;
use crate::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use crate::domain::ids::{MachineId, PanId};

stored! {
    /// A day that goes wrong.
    pub struct TroubleV1 {
        what: Text<TroubleKind>,
        event: Text<TroubleEvent>,
        pan: Option<Text<PanId>>,
        machine: Option<Text<MachineId>>,
        evidence: Seens,
        text: Option<String>,
    }
}

impl Body for TroubleV1 {
    type Fact = TroubleFact;

    fn write(fact: &TroubleFact) -> Self {
        Self {
            what: Text(fact.what),
            event: Text(fact.event),
            pan: fact.pan.map(Text),
            machine: fact.machine.map(Text),
            evidence: write_evidence(&fact.evidence),
            text: fact.text.clone(),
        }
    }

    fn read(self) -> Result<TroubleFact, String> {
        Ok(TroubleFact {
            what: self.what.0,
            event: self.event.0,
            pan: self.pan.map(|v| v.0),
            machine: self.machine.map(|v| v.0),
            evidence: read_evidence(self.evidence)?,
            text: self.text,
        })
    }
}
