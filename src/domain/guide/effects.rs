//! Where going on from a gate leaves oil, pump and heat, and how a run's entry is drafted.

use super::Guide;
use super::answers::is_off_sign;
use super::gate::Gate;
use super::state::{FilterJob, Run};
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Contents, Heat, Left, Place, Pump, RunEvent, RunFact};
use crate::domain::ids::JobId;
use crate::domain::procedure::{Act, Hold, StepId};

pub(super) fn job_fact(job: JobId, event: JobEvent, fill: impl Fn(&mut JobFact)) -> Fact {
    let mut fact = JobFact::new(job, JobKind::Filter, event);
    fill(&mut fact);
    Fact::Job(Box::new(fact))
}

/// A run's entry with the state as it is; `fill` puts what changes.
pub(super) fn run_draft(
    guide: &Guide,
    job: &FilterJob,
    run: &Run,
    event: RunEvent,
    fill: impl FnOnce(&mut RunFact),
) -> Draft {
    let at = guide.run_steps(run).get(run.at).map_or(StepId::Leave, |s| s.id);
    let mut fact = RunFact {
        run: run.run,
        job: job.job,
        pan: run.pan.pan.pan,
        machine: Some(run.machine.0.machine),
        route: run.route,
        form: run.form,
        plan: run.plan,
        supervisor: job.supervisor,
        event,
        step: at,
        fault: None,
        evidence: Evidence::new(),
        place: run.place,
        contents: run.contents,
        pump: run.pump,
        heat: run.heat,
        deadline: None,
        left: None,
        limits: run.limits,
    };
    fill(&mut fact);
    Draft::now(job.who, Fact::Run(Box::new(fact)))
}

pub(super) fn event_of(gate: &Gate) -> RunEvent {
    if gate.id() == StepId::LookAgain {
        RunEvent::Reverified
    } else if gate.steps.iter().any(|s| s.act == Act::Leave) {
        RunEvent::Ended
    } else if gate.steps.iter().any(|s| s.act != Act::Nothing) {
        RunEvent::Pump
    } else {
        RunEvent::Answered
    }
}

/// Where going on from this gate leaves oil, pump and heat.
pub(super) fn move_oil(gate: &Gate, seen: &Evidence, run: &Run, f: &mut RunFact) {
    if gate.holds.contains(&Hold::HeatOff) && gate.looks().iter().any(|(_, item, _)| is_off_sign(*item)) {
        f.heat = Heat::OffSeen;
    }
    for (item, word) in seen.iter().filter_map(|(i, s)| match s {
        Seen::Is(w) => Some((*i, *w)),
        Seen::Number(_) | Seen::Words(_) => None,
    }) {
        match (item, word) {
            (Item::Remainder, Word::Film) => (f.place, f.contents) = (Place::InMachine, Contents::EmptyWet),
            (Item::PanInside, Word::ClearDry) => f.contents = Contents::EmptyDry,
            (Item::Tank, Word::Empty) if gate.id() != StepId::Empty => f.place = Place::InPan,
            (Item::Level, Word::Enough | Word::JustAbove) => f.place = Place::InPan,
            (Item::Place, word) => look_again(word, f),
            _ => {}
        }
    }
    for step in &gate.steps {
        match step.act {
            Act::Nothing => {}
            Act::StartDraw => (f.place, f.contents, f.pump) = (Place::Split, Contents::Oil, Pump::Drawing),
            Act::EndDraw => f.pump = Pump::Off,
            Act::StartRinse => (f.place, f.contents, f.pump) = (Place::Split, Contents::EmptyWet, Pump::Rinsing),
            Act::EndRinse => (f.place, f.pump) = (Place::InMachine, Pump::Off),
            Act::StartReturn => (f.place, f.contents, f.pump) = (Place::Split, Contents::Oil, Pump::Returning),
            Act::EndReturn => f.pump = Pump::Off,
            Act::StartHand => (f.place, f.contents) = (Place::Split, Contents::Oil),
            Act::EndHand => (f.place, f.contents) = (Place::InContainer, Contents::EmptyWet),
            Act::StartPour => (f.place, f.contents) = (Place::Split, Contents::Oil),
            Act::EndPour => f.place = Place::InPan,
            Act::Leave => leave(seen, run, f),
        }
    }
}

fn leave(seen: &Evidence, run: &Run, f: &mut RunFact) {
    match seen.word(Item::Left) {
        Some(Word::Relit) => (f.left, f.heat) = (Some(Left::Relit), Heat::On),
        Some(Word::Set) => (f.left, f.contents, f.heat) = (Some(Left::Set), Contents::SetFat, Heat::OffSeen),
        _ => (f.left, f.heat) = (Some(Left::Off), run.heat),
    }
}

fn look_again(word: Word, f: &mut RunFact) {
    f.pump = Pump::Off;
    f.heat = Heat::OffSeen;
    (f.place, f.contents) = if word == Word::InPan {
        (Place::InPan, Contents::Oil)
    } else if word == Word::InMachine {
        (Place::InMachine, Contents::EmptyWet)
    } else if word == Word::InContainer {
        (Place::InContainer, Contents::EmptyWet)
    } else {
        (Place::Split, Contents::Oil)
    };
}
