//! Commands are orders and may be refused; what they lead to is drafted here and believed only once written.

use super::answers::answers;
use super::command::Command;
use super::effects::{event_of, job_fact, move_oil, run_draft};
use super::gate::Gate;
use super::refusal::Refusal;
use super::scene::MachineNow;
use super::scene::Scene;
use super::state::{FilterJob, MachineKept, PanNowKept, Phase, ReadTemp, Run, Warm};
use super::{Guide, holds};
use crate::domain::entry::Draft;
use crate::domain::evidence::{Evidence, Item, Seen, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact};
use crate::domain::facts::run::{Contents, Form, Heat, Left, Limits, Place, Plan, Pump, RunEvent};
use crate::domain::facts::setup::{Machine, OutBy, Route};
use crate::domain::facts::trouble::TroubleKind;
use crate::domain::ids::{PanId, RunId};
use crate::domain::procedure::{Act, Hold, Step, StepId};
use crate::domain::time::{Millis, Now};
use crate::domain::units::Temp;
use crate::domain::wait::{Standing, Wait};

impl Guide {
    /// What an order leads to, or why it is refused. Nothing has happened until the drafts are written and applied.
    ///
    /// # Errors
    /// A [`Refusal`] with what its sentence needs; the state is unchanged.
    pub fn decide(&self, scene: &Scene, command: &Command, now: &Now) -> Result<Vec<Draft>, Refusal> {
        if let Command::Open(id) = command {
            return match self.job() {
                None => Ok(vec![Draft::now(None, job_fact(*id, JobEvent::Opened, |_| {}))]),
                Some(_) => Err(Refusal::JobOpen),
            };
        }
        let job = self.job().ok_or(Refusal::NoJob)?;
        let on_job = |event, fill: &dyn Fn(&mut JobFact)| vec![Draft::now(job.who, job_fact(job.job, event, fill))];
        match command {
            Command::Open(_) => Err(Refusal::JobOpen),
            Command::Who { person, supervisor } => {
                let word = match &job.run {
                    Some(run) => holds::person(scene, *person, *supervisor, run.route)?,
                    None => holds::person_here(scene, job.machine, *person, *supervisor)?,
                };
                let fact = job_fact(job.job, JobEvent::Proved, |f| {
                    f.step = Some(StepId::Who);
                    f.hold = Some(Hold::Person);
                    f.supervisor = supervisor.filter(|_| word == Word::Supervised);
                    f.evidence = Evidence::new().with(Item::SignOff, word);
                    if scene.asks_second() {
                        f.evidence.put(Item::Second, Seen::Is(Word::Seen));
                    }
                });
                Ok(vec![Draft::now(Some(*person), fact)])
            }
            Command::Machine { machine, used_since } => {
                let route = route_of(&scene.machine(*machine).ok_or(Refusal::NoSuchMachine)?.machine);
                if scene.is_down(*machine) {
                    let what = TroubleKind::MachineDown;
                    return Err(Refusal::Trouble { what });
                }
                if job.run.is_some() && job.machine != Some(*machine) {
                    return Err(Refusal::RunOpen);
                }
                // Said here, with a machine to choose anew, and not first at the pan.
                if let Some(who) = job.who.filter(|_| job.run.is_none()) {
                    holds::person(scene, who, job.supervisor, route)?;
                }
                if !matches!(used_since, Word::No | Word::Yes | Word::NotKnown) {
                    return Err(Refusal::NotSo {
                        item: Item::UsedSince,
                        word: Some(*used_since),
                    });
                }
                Ok(on_job(JobEvent::Proved, &|f| {
                    f.step = Some(StepId::Machine);
                    f.hold = Some(Hold::Match);
                    f.machine = Some(*machine);
                    f.evidence = Evidence::new().with(Item::UsedSince, *used_since);
                }))
            }
            Command::Heater(on) => {
                // A warm-up belongs to a machine: before one is named there is nothing to warm.
                job.machine.ok_or(Refusal::NoSuchMachine)?;
                let event = if *on { JobEvent::HeaterOn } else { JobEvent::HeaterOff };
                let wait = Wait::begin(warm_up_ms(scene), now);
                Ok(on_job(event, &|f| {
                    f.machine = job.machine;
                    f.step = Some(StepId::WarmUp);
                    f.evidence = Evidence::new().with(Item::Heater, if *on { Word::On } else { Word::Off });
                    f.deadline = on.then(|| wait.due());
                }))
            }
            Command::TimeIs(right) => match job.warm {
                Warm::On(wait) if wait.standing(now) == Standing::AskTime => Ok(on_job(JobEvent::Answered, &|f| {
                    f.step = Some(StepId::WarmUp);
                    f.evidence = Evidence::new().with(Item::Clock, if *right { Word::Yes } else { Word::No });
                })),
                Warm::On(_) | Warm::Cold | Warm::Off(_) => Err(Refusal::OtherStep { now_at: None }),
            },
            Command::Broke(hold) => Ok(on_job(JobEvent::Broken, &|f| f.hold = Some(*hold))),
            Command::Begin { run, pan, form, plan } => self.begin(scene, job, (*run, *pan), *form, *plan, now),
            Command::PutAway | Command::End if job.run.is_some() => Err(Refusal::RunOpen),
            Command::PutAway => Ok(on_job(JobEvent::Away, &|_| {})),
            // With no pan begun nobody is asked to put the machine away, where its heater is seen off.
            Command::End if job.done.is_empty() && matches!(job.warm, Warm::On(_)) => Err(Refusal::HeaterOn),
            Command::End if job.done.is_empty() => Ok(on_job(JobEvent::Ended, &|_| {})),
            Command::End => Err(Refusal::OtherStep {
                now_at: Some(StepId::AwayLine),
            }),
            Command::Answer { step, evidence, read } => self.answer(scene, job, *step, evidence, *read, now),
            Command::Stop => {
                let run = job.run.as_ref().ok_or(Refusal::NothingToStop)?;
                Ok(vec![run_draft(self, job, run, RunEvent::Stopped, |_| {})])
            }
            Command::Fault(fault) => {
                let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
                Ok(vec![run_draft(self, job, run, RunEvent::Fault, |f| {
                    f.fault = Some(*fault)
                })])
            }
            Command::MadeSafe => {
                let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
                if run.phase != Phase::Stopped {
                    return Err(Refusal::NothingToStop);
                }
                Ok(vec![run_draft(self, job, run, RunEvent::Resumed, |_| {})])
            }
            Command::LeaveOut(evidence) => self.leave_out(job, evidence),
            Command::LeaveSet(evidence) => self.leave_set(job, evidence),
            Command::GiveUp => {
                let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
                if run.drawn || run.place != Place::InPan {
                    return Err(Refusal::OilOut);
                }
                Ok(vec![run_draft(self, job, run, RunEvent::Ended, |f| {
                    f.left = Some(Left::AsWas)
                })])
            }
        }
    }

    fn begin(
        &self,
        scene: &Scene,
        job: &FilterJob,
        (run, pan): (RunId, PanId),
        form: Form,
        plan: Plan,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        if job.run.is_some() {
            return Err(Refusal::RunOpen);
        }
        let own = scene.pan(pan);
        let pan_now = own.or_else(|| scene.bare(pan)).ok_or(Refusal::NoSuchPan)?;
        let comes_back = pan_now.place != Place::InPan;
        let barred = match pan_now.contents {
            Contents::Oil | Contents::SetFat => false,
            Contents::EmptyWet | Contents::EmptyDry => !comes_back,
            Contents::CleaningWater => true,
        };
        if barred {
            let contents = pan_now.contents;
            return Err(Refusal::NoOilInIt { contents });
        }
        if job.away > 0 && !comes_back {
            return Err(Refusal::OtherStep {
                now_at: self.gate(now).map(|g| g.id()),
            });
        }
        let machine = scene
            .machine(job.machine.ok_or(Refusal::NoSuchMachine)?)
            .ok_or(Refusal::NoSuchMachine)?;
        let route = route_of(&machine.machine);
        holds::route_fits(scene, machine.machine.machine, route)?;
        if own.is_none() {
            holds::takes_parked(job, pan_now, machine, now)?;
        } else if let Some(parked) = machine.holds.first().filter(|_| !comes_back) {
            // Hold 5, by what the log knows: a tank that holds oil has no room for a pan, whatever was seen of it.
            return Err(Refusal::MachineHolds { pan: parked.pan });
        }
        if let Some(what) = scene.stops_draw(pan, machine.machine.machine).filter(|_| !comes_back) {
            return Err(Refusal::Trouble { what });
        }
        let mut supervised = false;
        for hold in self.tables().ready.iter().flat_map(|s| s.holds) {
            // Oil that stands outside its pan is never refused its way back.
            let needed = !comes_back || matches!(hold, Hold::Person | Hold::Kit | Hold::Match);
            if needed && job.lacks(*hold, now) {
                return Err(Refusal::ReadyFirst { hold: *hold });
            }
            if *hold == Hold::Person {
                let who = job.who.ok_or(Refusal::ReadyFirst { hold: Hold::Person })?;
                supervised = holds::person(scene, who, job.supervisor, route)? == Word::Supervised;
            }
        }
        // Oil comes back the way it went.
        let holds_it = |m: &MachineNow| m.holds.iter().any(|parked| parked.pan == pan);
        let elsewhere = own.is_some() && comes_back && !holds_it(machine) && scene.machines.iter().any(holds_it);
        let by_hand = route == Route::Cold;
        if elsewhere
            || comes_back && pan_now.went.is_some_and(|went| went != route)
            || (pan_now.place == Place::InContainer && !by_hand)
            || (pan_now.place == Place::InMachine && by_hand)
        {
            return Err(Refusal::WrongMachine);
        }
        let fat = pan_now.pan.fat;
        // Set fat is neither drained nor poured, whichever way it goes.
        if by_hand && fat.is_set_at_40c() {
            return Err(Refusal::SetAtForty);
        }
        let held = job.held.or(machine.last_fat);
        let practised = job.who.is_some_and(|who| scene.is_practised(who)) && !supervised;
        if form == Form::Short && (!practised || job.fault || held != Some(fat)) {
            return Err(Refusal::NoShortForm);
        }
        let begun = Run {
            run,
            pan: PanNowKept {
                pan: pan_now.pan.clone(),
                claims: pan_now.claims.clone(),
            },
            machine: MachineKept(machine.machine.clone()),
            route,
            form,
            plan: Plan {
                rinse: plan.rinse && route == Route::Hot,
                ..plan
            },
            limits: limits(&machine.machine, fat, route),
            at: 0,
            phase: if comes_back { Phase::LookAgain } else { Phase::Asking },
            place: pan_now.place,
            contents: if comes_back { Contents::EmptyWet } else { Contents::Oil },
            pump: Pump::Off,
            heat: Heat::Unknown,
            reading: None,
            came_out: comes_back,
            drawn: comes_back,
            returned: false,
            fault: false,
            stopped: false,
            troubled: false,
            level: None,
            looked: Evidence::new(),
            drew_ms: Some(0),
            moving_since: None,
        };
        let mut drafts = Vec::new();
        if job.held.is_some_and(|h| h != fat) && !comes_back {
            for hold in [Hold::Dry, Hold::Room, Hold::Match] {
                drafts.push(Draft::now(
                    job.who,
                    job_fact(job.job, JobEvent::Broken, |f| f.hold = Some(hold)),
                ));
            }
        }
        drafts.push(run_draft(self, job, &begun, RunEvent::Began, |_| {}));
        Ok(drafts)
    }

    fn answer(
        &self,
        scene: &Scene,
        job: &FilterJob,
        step: StepId,
        evidence: &Evidence,
        read: Option<Now>,
        now: &Now,
    ) -> Result<Vec<Draft>, Refusal> {
        if job.run.as_ref().is_some_and(|r| r.phase == Phase::Stopped) {
            return Err(Refusal::MakeSafeFirst);
        }
        let gate = self.gate(now).ok_or(Refusal::OtherStep { now_at: None })?;
        if gate.id() != step {
            return Err(Refusal::OtherStep {
                now_at: Some(gate.id()),
            });
        }
        stopped_by_trouble(scene, job, &gate, evidence)?;
        let checked = answers(&gate, job.run.as_ref(), evidence)?;
        let ready = self.tables().ready.iter().find(|s| s.id == step);
        let between = job.run.is_some() && step == self.tables().line_solid.id;
        let away = self.tables().away.iter().position(|s| s.id == step);
        if let Some(ready) = ready {
            if matches!(step, StepId::Who | StepId::Machine) {
                return Err(Refusal::OtherStep { now_at: Some(step) });
            }
            let hold = ready.holds.first().copied();
            let machine = job.machine.and_then(|id| scene.machine(id));
            if hold == Some(Hold::WarmUp) && machine.is_some_and(|m| m.machine.heater.is_there()) {
                holds::warm(job, now)?;
            }
            let event = if hold.is_some() {
                JobEvent::Proved
            } else {
                JobEvent::Answered
            };
            return Ok(vec![Draft::now(
                job.who,
                job_fact(job.job, event, |f| {
                    f.step = Some(step);
                    f.hold = hold;
                    f.machine = job.machine;
                    f.evidence = checked.evidence.clone();
                }),
            )]);
        }
        if let Some(index) = away {
            let answered = job_fact(job.job, JobEvent::Answered, |f| {
                f.step = Some(step);
                f.machine = job.machine;
                f.evidence = checked.evidence.clone();
            });
            let mut drafts = vec![Draft::now(job.who, answered)];
            if !between && index + 1 == self.tables().away.len() {
                drafts.push(Draft::now(job.who, job_fact(job.job, JobEvent::Ended, |_| {})));
            }
            return Ok(drafts);
        }
        let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
        if let Some(fault) = checked.fault {
            return Ok(vec![run_draft(self, job, run, RunEvent::Fault, |f| {
                f.fault = Some(fault);
                f.evidence = checked.evidence.clone();
            })]);
        }
        let stale_at = match checked.evidence.number(Item::OilTemp) {
            Some(dc) => Some(stale_at(dc, read, now)?),
            None => None,
        };
        for hold in &gate.holds {
            holds::check(*hold, &gate, &checked.evidence, job, run, scene, now)?;
        }
        let event = event_of(&gate);
        let mut draft = run_draft(self, job, run, event, |f| {
            f.step = step;
            f.deadline = stale_at;
            move_oil(&gate, &checked.evidence, run, f);
            f.evidence = checked.evidence.clone();
        });
        if let Fact::Run(fact) = &mut draft.fact
            && fact.event == RunEvent::Ended
            && fact.place != Place::InPan
        {
            // Some of the oil is still in the machine: it goes back first, and the pan is not left yet.
            (fact.event, fact.step, fact.left, fact.heat) = (RunEvent::Answered, StepId::Level, None, run.heat);
        }
        Ok(vec![draft])
    }

    fn leave_out(&self, job: &FilterJob, evidence: &Evidence) -> Result<Vec<Draft>, Refusal> {
        let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
        if run.place == Place::InPan {
            return Err(Refusal::OilInPan);
        }
        if run.phase == Phase::Stopped {
            return Err(Refusal::MakeSafeFirst);
        }
        let gate = self.leave_out_gate().ok_or(Refusal::NoRun)?;
        let checked = answers(&gate, Some(run), evidence)?;
        Ok(vec![run_draft(self, job, run, RunEvent::Ended, |f| {
            f.step = StepId::LeaveOut;
            f.pump = Pump::Off;
            f.heat = Heat::OffSeen;
            f.evidence = checked.evidence.clone();
            f.left = Some(Left::OilOut);
        })])
    }

    fn leave_set(&self, job: &FilterJob, evidence: &Evidence) -> Result<Vec<Draft>, Refusal> {
        let run = job.run.as_ref().ok_or(Refusal::NoRun)?;
        if run.phase == Phase::Stopped {
            return Err(Refusal::MakeSafeFirst);
        }
        let gate = self.leave_set_gate().ok_or(Refusal::OtherStep { now_at: None })?;
        let checked = answers(&gate, Some(run), evidence)?;
        Ok(vec![run_draft(self, job, run, RunEvent::Ended, |f| {
            f.step = gate.id();
            f.contents = Contents::SetFat;
            f.pump = Pump::Off;
            f.heat = Heat::OffSeen;
            f.evidence = checked.evidence.clone();
            f.left = Some(Left::Set);
        })])
    }
}

/// The route a machine does.
pub(super) fn route_of(machine: &Machine) -> Route {
    if machine.out_by == OutBy::Hand {
        Route::Cold
    } else {
        Route::Hot
    }
}

/// A trouble that stands lets no oil out and no heat on; oil that is out goes its way back.
fn stopped_by_trouble(scene: &Scene, job: &FilterJob, gate: &Gate, seen: &Evidence) -> Result<(), Refusal> {
    let Some(run) = &job.run else { return Ok(()) };
    let pan = run.pan.pan.pan;
    let draws = |s: &&Step| matches!(s.act, Act::StartDraw | Act::StartHand);
    let draw = gate.steps.iter().any(draws);
    let stops = draw.then(|| scene.stops_draw(pan, run.machine.0.machine)).flatten();
    let heat = seen.is(Item::Left, Word::Relit);
    let stops = stops.or_else(|| heat.then(|| scene.stops_heat(pan)).flatten());
    stops.map_or(Ok(()), |what| Err(Refusal::Trouble { what }))
}

/// When a reading taken at `read` goes stale. One whose age nobody knows is stale already.
fn stale_at(dc: i32, read: Option<Now>, now: &Now) -> Result<Millis, Refusal> {
    let temp = i16::try_from(dc).ok().and_then(Temp::from_dc);
    let (temp, read) = temp.zip(read).ok_or(Refusal::ReadingTooOld)?;
    let reading = ReadTemp::taken(temp, &read);
    if reading.counts(now) {
        Ok(reading.fresh.due())
    } else {
        Err(Refusal::ReadingTooOld)
    }
}

/// Warm-up of the machine in milliseconds: 15 minutes in the local winter half-year, 10 in summer (10–15 minutes is
/// common practice, no source).
#[must_use]
pub(super) const fn warm_up_ms(scene: &Scene) -> i64 {
    if scene.winter {
        15 * Millis::MINUTE
    } else {
        10 * Millis::MINUTE
    }
}

fn limits(machine: &Machine, fat: crate::domain::fat::Fat, route: Route) -> Limits {
    match route {
        Route::Hot => Limits {
            low: machine.low.max(fat.pumpable_at()),
            high: machine.high.min(holds::NEVER_ABOVE),
            target: machine.target,
            rinse_max_s: machine.rinse_max_s,
            rinse_min_s: machine.rinse_min_s,
        },
        Route::Cold => Limits {
            low: Temp::MIN,
            high: holds::BY_HAND_MAX,
            target: holds::BY_HAND_MAX,
            rinse_max_s: None,
            rinse_min_s: None,
        },
    }
}
