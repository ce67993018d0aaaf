//! Arbitrary facts of the work: jobs, filter runs, what was noted of them afterwards.

use panward::domain::facts::closed::Closed;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::pan_job::PanJob;
use panward::domain::facts::run::{Contents, Fault, Form, Heat, Left, Limits, Place, Plan, Pump, RunEvent, RunFact};
use panward::domain::facts::setup::Route;
use panward::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use panward::domain::facts::{Fact, MachineCleaned, Practised, RunNoted};
use panward::domain::ids::{JobId, RunId};
use panward::domain::procedure::{Hold, StepId};
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::select;

use super::values::{day, evidence, exposures, machine, moment, pan, person, temp, words};

pub(super) fn job() -> impl Strategy<Value = Fact> {
    let first = (
        any::<u128>(),
        select(JobKind::ALL),
        select(JobEvent::ALL),
        of(select(Grade::ALL)),
        of(words()),
    );
    let second = (
        of(machine()),
        of(pan()),
        of(select(StepId::ALL)),
        of(select(Hold::ALL)),
        of(person()),
    );
    let third = (
        evidence(),
        of(select(Heat::ALL)),
        of(select(Contents::ALL)),
        of(moment()),
        of(moment()),
        of(person()),
    );
    (first, second, third).prop_map(|(a, b, c)| {
        Fact::Job(Box::new(JobFact {
            job: JobId(a.0),
            what: a.1,
            event: a.2,
            how: a.3,
            why: a.4,
            machine: b.0,
            pan: b.1,
            step: b.2,
            hold: b.3,
            supervisor: b.4,
            evidence: c.0,
            heat: c.1,
            contents: c.2,
            deadline: c.3,
            next_look: c.4,
            looker: c.5,
        }))
    })
}

pub(super) fn run() -> impl Strategy<Value = Fact> {
    let plan = any::<[bool; 3]>().prop_map(|[samples, wipe, rinse]| Plan { samples, wipe, rinse });
    let limits = (temp(), temp(), temp(), of(any::<u16>()), of(any::<u16>())).prop_map(|f| Limits {
        low: f.0,
        high: f.1,
        target: f.2,
        rinse_max_s: f.3,
        rinse_min_s: f.4,
    });
    let first = (
        any::<u128>(),
        any::<u128>(),
        pan(),
        of(machine()),
        select(Route::ALL),
        select(Form::ALL),
        plan,
    );
    let second = (
        of(person()),
        select(RunEvent::ALL),
        select(StepId::ALL),
        of(select(Fault::ALL)),
        evidence(),
    );
    let third = (
        select(Place::ALL),
        select(Contents::ALL),
        select(Pump::ALL),
        select(Heat::ALL),
    );
    (first, second, third, of(moment()), of(select(Left::ALL)), limits).prop_map(|(a, b, c, deadline, left, limits)| {
        Fact::Run(Box::new(RunFact {
            run: RunId(a.0),
            job: JobId(a.1),
            pan: a.2,
            machine: a.3,
            route: a.4,
            form: a.5,
            plan: a.6,
            supervisor: b.0,
            event: b.1,
            step: b.2,
            fault: b.3,
            evidence: b.4,
            place: c.0,
            contents: c.1,
            pump: c.2,
            heat: c.3,
            deadline,
            left,
            limits,
        }))
    })
}

pub(super) fn others() -> impl Strategy<Value = Fact> {
    prop_oneof![
        (pan(), of(machine()), select(Grade::ALL), of(words()))
            .prop_map(|(pan, machine, how, why)| Fact::RunNoted(RunNoted { pan, machine, how, why })),
        (machine(), words(), person()).prop_map(|(machine, how, by)| Fact::MachineCleaned(MachineCleaned {
            machine,
            how,
            by
        })),
        (
            select(TroubleKind::ALL),
            select(TroubleEvent::ALL),
            of(pan()),
            of(machine()),
            evidence(),
            of(words())
        )
            .prop_map(|f| Fact::Trouble(Box::new(TroubleFact {
                what: f.0,
                event: f.1,
                pan: f.2,
                machine: f.3,
                evidence: f.4,
                text: f.5,
            }))),
        (person(), any::<u128>(), words()).prop_map(|(person, run, result)| Fact::Practised(Practised {
            person,
            run: RunId(run),
            result
        })),
        (pan(), pan(), exposures(), day()).prop_map(|(pan, of, food, day)| Fact::PanJob(PanJob { pan, of, food, day })),
        (day(), 0..Closed::MOST, of(words()))
            .prop_map(|(from, n, why)| Fact::Closed(Closed::between(from, from.plus(n), why).expect("days"))),
    ]
}
