//! Bodies of the kinds that say how the work was done, version 1.

use super::body::Body;
use super::parts::{Seens, read_evidence, write_evidence};
use super::scalar::{Text, Whole};
use super::stored::{Stored, Unless, odd, stored, word};
use crate::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Fault, Form, Heat, Left, Limits, Place, Plan, Pump, RunEvent, RunFact};
use crate::domain::facts::setup::Route;
use crate::domain::facts::{MachineCleaned, Practised, RunNoted};
use crate::domain::ids::{JobId, MachineId, PanId, PersonId, RunId};
use crate::domain::procedure::{Hold, StepId};
use crate::domain::time::Millis;
use crate::domain::units::Temp;
use crate::store::json::{Json, Out};

stored! {
    /// Something in a light-up, filter job or lock-up.
    pub struct JobV1 {
        job: Text<JobId>,
        what: Text<JobKind>,
        event: Text<JobEvent>,
        how: Option<Text<Grade>>,
        why: Option<String>,
        machine: Option<Text<MachineId>>,
        pan: Option<Text<PanId>>,
        step: Option<Text<StepId>>,
        hold: Option<Text<Hold>>,
        supervisor: Option<Text<PersonId>>,
        evidence: Seens,
        heat: Option<Text<Heat>>,
        contents: Option<Text<Contents>>,
        deadline: Option<Text<Millis>>,
        next_look: Option<Text<Millis>>,
        looker: Option<Text<PersonId>>,
    }
}

impl Body for JobV1 {
    type Fact = JobFact;

    fn write(fact: &JobFact) -> Self {
        Self {
            job: Text(fact.job),
            what: Text(fact.what),
            event: Text(fact.event),
            how: fact.how.map(Text),
            why: fact.why.clone(),
            machine: fact.machine.map(Text),
            pan: fact.pan.map(Text),
            step: fact.step.map(Text),
            hold: fact.hold.map(Text),
            supervisor: fact.supervisor.map(Text),
            evidence: write_evidence(&fact.evidence),
            heat: fact.heat.map(Text),
            contents: fact.contents.map(Text),
            deadline: fact.deadline.map(Text),
            next_look: fact.next_look.map(Text),
            looker: fact.looker.map(Text),
        }
    }

    fn read(self) -> Result<JobFact, String> {
        Ok(JobFact {
            job: self.job.0,
            what: self.what.0,
            event: self.event.0,
            how: self.how.map(|v| v.0),
            why: self.why,
            machine: self.machine.map(|v| v.0),
            pan: self.pan.map(|v| v.0),
            step: self.step.map(|v| v.0),
            hold: self.hold.map(|v| v.0),
            supervisor: self.supervisor.map(|v| v.0),
            evidence: read_evidence(self.evidence)?,
            heat: self.heat.map(|v| v.0),
            contents: self.contents.map(|v| v.0),
            deadline: self.deadline.map(|v| v.0),
            next_look: self.next_look.map(|v| v.0),
            looker: self.looker.map(|v| v.0),
        })
    }
}

/// An optional part of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), serde(rename_all = "snake_case"))]
pub enum PartV1 {
    /// Samples before and after.
    Samples,
    /// Wipe the pan hot.
    Wipe,
    /// Rinse the pan.
    Rinse,
}

impl Stored for PartV1 {
    fn blank() -> Self {
        Self::Samples
    }

    fn from_json(json: Json<'_>) -> Result<Self, String> {
        match word(json)?.as_ref() {
            "samples" => Ok(Self::Samples),
            "wipe" => Ok(Self::Wipe),
            "rinse" => Ok(Self::Rinse),
            other => Err(odd(&Json::Word(other.into()), "samples, wipe or rinse")),
        }
    }

    fn put(&self, out: &mut Out) {
        out.word(match self {
            Self::Samples => "samples",
            Self::Wipe => "wipe",
            Self::Rinse => "rinse",
        });
    }
}

fn write_plan(plan: Plan) -> Vec<PartV1> {
    let parts = [
        (plan.samples, PartV1::Samples),
        (plan.wipe, PartV1::Wipe),
        (plan.rinse, PartV1::Rinse),
    ];
    parts
        .into_iter()
        .filter(|(has, _)| *has)
        .map(|(_, part)| part)
        .collect()
}

fn read_plan(parts: &[PartV1]) -> Plan {
    let has = |part| parts.contains(&part);
    Plan {
        samples: has(PartV1::Samples),
        wipe: has(PartV1::Wipe),
        rinse: has(PartV1::Rinse),
    }
}

stored! {
    /// The limits a run was held to.
    pub struct LimitsV1 {
        low_dc: Whole<Temp>,
        high_dc: Whole<Temp>,
        target_dc: Whole<Temp>,
        rinse_max_s: Option<u16>,
        rinse_min_s: Option<u16>,
    }
}

impl From<Limits> for LimitsV1 {
    fn from(limits: Limits) -> Self {
        Self {
            low_dc: Whole(limits.low),
            high_dc: Whole(limits.high),
            target_dc: Whole(limits.target),
            rinse_max_s: limits.rinse_max_s,
            rinse_min_s: limits.rinse_min_s,
        }
    }
}

impl From<LimitsV1> for Limits {
    fn from(limits: LimitsV1) -> Self {
        Self {
            low: limits.low_dc.0,
            high: limits.high_dc.0,
            target: limits.target_dc.0,
            rinse_max_s: limits.rinse_max_s,
            rinse_min_s: limits.rinse_min_s,
        }
    }
}

stored! {
    /// Something in one pan's run, and the state it leaves.
    pub struct RunV1 {
        run: Text<RunId>,
        job: Text<JobId>,
        pan: Text<PanId>,
        machine: Option<Text<MachineId>>,
        route: Text<Route>,
        form: Text<Form>,
        #[cfg_attr(feature = "schema", serde(default))]
        plan: Unless<Vec<PartV1>>,
        supervisor: Option<Text<PersonId>>,
        event: Text<RunEvent>,
        step: Text<StepId>,
        fault: Option<Text<Fault>>,
        evidence: Seens,
        place: Text<Place>,
        contents: Text<Contents>,
        pump: Text<Pump>,
        heat: Text<Heat>,
        deadline: Option<Text<Millis>>,
        left: Option<Text<Left>>,
        limits: LimitsV1,
    }
}

impl Body for RunV1 {
    type Fact = RunFact;

    fn write(fact: &RunFact) -> Self {
        Self {
            run: Text(fact.run),
            job: Text(fact.job),
            pan: Text(fact.pan),
            machine: fact.machine.map(Text),
            route: Text(fact.route),
            form: Text(fact.form),
            plan: Unless(write_plan(fact.plan)),
            supervisor: fact.supervisor.map(Text),
            event: Text(fact.event),
            step: Text(fact.step),
            fault: fact.fault.map(Text),
            evidence: write_evidence(&fact.evidence),
            place: Text(fact.place),
            contents: Text(fact.contents),
            pump: Text(fact.pump),
            heat: Text(fact.heat),
            deadline: fact.deadline.map(Text),
            left: fact.left.map(Text),
            limits: fact.limits.into(),
        }
    }

    fn read(self) -> Result<RunFact, String> {
        Ok(RunFact {
            run: self.run.0,
            job: self.job.0,
            pan: self.pan.0,
            machine: self.machine.map(|v| v.0),
            route: self.route.0,
            form: self.form.0,
            plan: read_plan(&self.plan.0),
            supervisor: self.supervisor.map(|v| v.0),
            event: self.event.0,
            step: self.step.0,
            fault: self.fault.map(|v| v.0),
            evidence: read_evidence(self.evidence)?,
            place: self.place.0,
            contents: self.contents.0,
            pump: self.pump.0,
            heat: self.heat.0,
            deadline: self.deadline.map(|v| v.0),
            left: self.left.map(|v| v.0),
            limits: self.limits.into(),
        })
    }
}

stored! {
    /// A run done without the guide, or not done.
    pub struct RunNotedV1 {
        pan: Text<PanId>,
        machine: Option<Text<MachineId>>,
        how: Text<Grade>,
        why: Option<String>,
    }
}

impl Body for RunNotedV1 {
    type Fact = RunNoted;

    fn write(fact: &RunNoted) -> Self {
        Self {
            pan: Text(fact.pan),
            machine: fact.machine.map(Text),
            how: Text(fact.how),
            why: fact.why.clone(),
        }
    }

    fn read(self) -> Result<RunNoted, String> {
        Ok(RunNoted {
            pan: self.pan.0,
            machine: self.machine.map(|v| v.0),
            how: self.how.0,
            why: self.why,
        })
    }
}

stored! {
    /// A machine taken apart and cleaned.
    pub struct MachineCleanedV1 {
        machine: Text<MachineId>,
        how: String,
        by: Text<PersonId>,
    }
}

impl Body for MachineCleanedV1 {
    type Fact = MachineCleaned;

    fn write(fact: &MachineCleaned) -> Self {
        Self {
            machine: Text(fact.machine),
            how: fact.how.clone(),
            by: Text(fact.by),
        }
    }

    fn read(self) -> Result<MachineCleaned, String> {
        Ok(MachineCleaned {
            machine: self.machine.0,
            how: self.how,
            by: self.by.0,
        })
    }
}

stored! {
    /// A practice run that was counted for a person.
    pub struct PractisedV1 {
        person: Text<PersonId>,
        run: Text<RunId>,
        result: String,
    }
}

impl Body for PractisedV1 {
    type Fact = Practised;

    fn write(fact: &Practised) -> Self {
        Self {
            person: Text(fact.person),
            run: Text(fact.run),
            result: fact.result.clone(),
        }
    }

    fn read(self) -> Result<Practised, String> {
        Ok(Practised {
            person: self.person.0,
            run: self.run.0,
            result: self.result,
        })
    }
}
