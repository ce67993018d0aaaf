//! Believing what was written. Applying cannot fail: it has already happened.

use super::state::{FilterJob, MachineKept, PanNowKept, Phase, ReadTemp, Run, Warm};
use super::{Guide, Scene, WARM_EXPIRY_MS};
use crate::domain::entry::Entry;
use crate::domain::evidence::{Evidence, Item, Word};
use crate::domain::facts::Fact;
use crate::domain::facts::job::{JobEvent, JobFact, JobKind};
use crate::domain::facts::run::{Fault, Form, Heat, Left, Place, Pump, RunEvent, RunFact};
use crate::domain::facts::trouble::{TroubleEvent, TroubleFact, TroubleKind};
use crate::domain::ids::{MachineId, PersonId};
use crate::domain::procedure::{Act, Hold, StepId};
use crate::domain::time::{Millis, Now, PageLife};
use crate::domain::trouble;
use crate::domain::units::Temp;
use crate::domain::wait::Wait;

impl Guide {
    /// Takes in an entry. `lived` is the instant it was written, when that was in this page life; an entry read back
    /// from the log has none, and leaves pump and heat unknown until somebody looks.
    pub fn apply(&mut self, entry: &Entry, scene: &Scene, lived: Option<&Now>) {
        if let Fact::Job(fact) = &entry.fact
            && fact.what == JobKind::Filter
        {
            self.apply_job(fact, entry, scene, lived);
        } else if let Fact::Run(fact) = &entry.fact {
            self.apply_run(fact, entry.rec, scene, lived);
        } else if let Fact::Trouble(fact) = &entry.fact {
            self.apply_trouble(fact);
        }
    }

    /// A trouble that begins is an interruption: nobody knows what pump and heat do until everything is looked at again.
    fn apply_trouble(&mut self, fact: &TroubleFact) {
        let Some(job) = self.job.as_mut().filter(|_| fact.event == TroubleEvent::Began) else {
            return;
        };
        let at = job.run.as_ref().map(|run| run.pan.pan.pan);
        if trouble::concerns(None, fact.machine, None, job.machine) {
            for hold in trouble::row(fact.what).breaks {
                job.proved.remove(hold);
            }
        }
        if fact.what == TroubleKind::PowerCut {
            // The machine went cold with the power: its fat may have set.
            job.warm = Warm::Cold;
        }
        if !trouble::concerns(fact.pan, fact.machine, at, job.machine) {
            return;
        }
        if let Some(run) = job.run.as_mut() {
            (run.pump, run.heat) = (Pump::Unknown, Heat::Unknown);
            (run.troubled, run.stopped, run.form) = (true, true, Form::Long);
            run.looked = Evidence::new();
            if run.phase == Phase::Asking {
                run.phase = Phase::LookAgain;
            }
        }
    }

    fn apply_job(&mut self, fact: &JobFact, entry: &Entry, scene: &Scene, lived: Option<&Now>) {
        let touched = mark(entry.rec, lived);
        if fact.event == JobEvent::Opened {
            self.job = Some(FilterJob::opened(fact.job, touched));
            return;
        }
        let Some(job) = self.job.as_mut().filter(|j| j.job == fact.job) else {
            return;
        };
        settle(job, entry.rec, lived);
        job.touched = touched;
        match fact.event {
            JobEvent::Proved => prove(job, fact, entry, scene),
            JobEvent::Broken => {
                if let Some(hold) = fact.hold {
                    job.proved.remove(&hold);
                }
            }
            JobEvent::Answered if fact.step == Some(StepId::SoundCheck) => job.sound_checked = true,
            JobEvent::Answered if fact.step == Some(StepId::WarmUp) => {
                let right = fact.evidence.is(Item::Clock, Word::Yes);
                job.warm = match (job.warm, lived) {
                    (Warm::On(wait), Some(now)) => Warm::On(wait.after_asking(right, now)),
                    // It began again then; an earlier beginning must not come back with a reload.
                    (Warm::On(wait), None) if !right => Warm::On(Wait::recalled(wait.duration_ms(), entry.rec)),
                    (as_it_was, _) => as_it_was,
                };
            }
            JobEvent::Answered => {
                if fact.step == Some(StepId::AwayOff) {
                    // Heater off and plug out: nothing warms any more, and nothing counts down.
                    job.warm = Warm::Cold;
                }
                if let Some(line) = fact.evidence.word(Item::Line) {
                    job.line = Some(line);
                }
                let away = self.tables.away.iter().any(|s| Some(s.id) == fact.step);
                job.away += usize::from(away && job.run.is_none());
            }
            JobEvent::Away => job.away = job.away.max(1),
            JobEvent::HeaterOn => {
                let whole = super::decide::warm_up_ms(scene);
                job.warm = Warm::On(lived.map_or(Wait::recalled(whole, entry.rec), |now| Wait::begin(whole, now)));
            }
            JobEvent::HeaterOff => {
                job.warm = match lived {
                    Some(now) => {
                        let over = matches!(job.warm, Warm::On(wait) if wait.is_over(now));
                        job.warm.heater_off(over, now)
                    }
                    // Read back: nobody can say how warm it was.
                    None => Warm::Off(Wait::recalled(WARM_EXPIRY_MS, entry.rec)),
                };
            }
            JobEvent::Ended => self.job = None,
            JobEvent::Opened | JobEvent::LeftOpen | JobEvent::Looked | JobEvent::Noted => {}
        }
    }

    fn apply_run(&mut self, fact: &RunFact, rec: Millis, scene: &Scene, lived: Option<&Now>) {
        let tables = self.tables;
        let Some(job) = self.job.as_mut().filter(|j| j.job == fact.job) else {
            return;
        };
        settle(job, rec, lived);
        job.touched = mark(rec, lived);
        if fact.event == RunEvent::Began {
            if job.away > 0 {
                // Oil that stands outside its pan may come back while the machine is being put away.
                job.away = 0;
                job.proved.remove(&Hold::Dry);
                job.proved.remove(&Hold::Room);
            }
            job.run = begun(fact, scene);
            if let Some(run) = job.run.as_mut() {
                run.at = if run.drawn {
                    way_back(&Self::new(tables), run)
                } else {
                    0
                };
                recall(run, lived);
            }
            return;
        }
        let Some(mut run) = job.run.take().filter(|r| r.run == fact.run) else {
            return;
        };
        (run.place, run.contents, run.pump, run.heat) = (fact.place, fact.contents, fact.pump, fact.heat);
        run.drawn |= fact.place != Place::InPan;
        if matches!(fact.event, RunEvent::Stopped | RunEvent::Fault | RunEvent::Reverified) {
            // Nothing is taken as it was: each look is asked by itself again.
            run.looked = Evidence::new();
        }
        match fact.event {
            RunEvent::Began => {}
            RunEvent::Answered | RunEvent::Pump => {
                take_evidence(&mut run, fact, rec, lived);
                if fact.evidence.is(Item::Tank, Word::Oil) {
                    job.proved.remove(&Hold::Room);
                }
                Self::new(tables).advance(&mut run, fact, rec, lived);
            }
            RunEvent::Stopped => (run.phase, run.troubled, run.stopped) = (Phase::Stopped, true, true),
            RunEvent::Fault => {
                (run.phase, run.troubled, run.fault) = (Phase::Stopped, true, true);
                run.form = Form::Long;
                job.fault = true;
                if matches!(fact.fault, Some(Fault::Spill | Fault::Leak)) {
                    job.proved.remove(&Hold::Floor);
                }
                for hold in [Hold::Dry, Hold::Room, Hold::Match] {
                    job.proved.remove(&hold);
                }
            }
            RunEvent::Resumed => run.phase = Phase::LookAgain,
            RunEvent::Reverified => {
                run.phase = Phase::Asking;
                run.troubled = true;
                run.reading = None;
                run.level = None;
                run.drew_ms = None;
                run.moving_since = None;
                run.at = Self::new(tables).goes_on_at(&run);
                run.stopped = false;
            }
            RunEvent::Ended => {
                if fact.evidence.is(Item::Tank, Word::Oil) {
                    job.proved.remove(&Hold::Room);
                }
                if run.drawn {
                    job.held = Some(run.pan.pan.fat);
                    job.line = None;
                    job.done.push((fact.pan, fact.left.unwrap_or(Left::Off)));
                }
                return;
            }
        }
        recall(&mut run, lived);
        job.run = Some(run);
    }

    /// Moves the run past the gate that was answered, or back where an answer said so.
    fn advance(&self, run: &mut Run, fact: &RunFact, rec: Millis, lived: Option<&Now>) {
        let steps = self.run_steps(run);
        let Some(done) = steps.iter().position(|s| s.id == fact.step) else {
            return;
        };
        run.at = done + 1;
        let act = steps.get(done).map_or(Act::Nothing, |s| s.act);
        let moves = matches!(
            act,
            Act::StartDraw | Act::StartRinse | Act::StartReturn | Act::StartHand | Act::StartPour
        );
        if act == Act::EndDraw {
            let since = run.moving_since.map(|began| rec.since(began.due()).max(0));
            run.drew_ms = run.drew_ms.zip(since).map(|(before, now)| before + now);
        }
        run.moving_since = moves.then(|| mark(rec, lived));
        if moves {
            run.level = None;
        }
        run.returned |= matches!(act, Act::EndReturn | Act::EndPour);
        if fact.evidence.is(Item::Remainder, Word::Oil) {
            run.at = self.index_of(run, &[StepId::Connect]);
        }
        // Some of it is still in the machine and the pan stands low: it goes back too.
        if run.place == Place::Split && fact.evidence.is(Item::Level, Word::Below) {
            run.at = way_back(self, run);
        }
    }

    /// Where the run goes on once heat, pump and oil were looked at again. One that was only interrupted stands where
    /// it stood; one that was stopped or went wrong begins its pan anew, or gives the oil back.
    fn goes_on_at(&self, run: &Run) -> usize {
        let as_it_was = !run.fault && !run.stopped;
        let step = self.run_steps(run).get(run.at).map(|s| s.id);
        match (run.place, run.drawn) {
            (Place::InPan, false) if as_it_was => run.at,
            (Place::InPan, false) => 0,
            (Place::InPan, true) => {
                // The level must be seen again before the pan is left.
                let (first, level) = (
                    self.index_of(run, &[StepId::Tank, StepId::Level]),
                    self.index_of(run, &[StepId::Level]),
                );
                if as_it_was { run.at.clamp(first, level) } else { first }
            }
            (Place::InMachine | Place::InContainer, _) if self.rests_on_the_way_back(run) => run.at,
            // What is left in the pan is looked at; where that is oil, every hold of the draw is asked before it goes on.
            (Place::Split | Place::InMachine, _)
                if as_it_was && matches!(step, Some(StepId::Draw | StepId::Remainder)) =>
            {
                self.index_of(run, &[StepId::Remainder])
            }
            _ => way_back(self, run),
        }
    }

    /// Whether the run stands, with all its oil away and nothing wrong with the machine, at a step that asks every
    /// hold of its own before oil moves: then it stands there still after the look again.
    fn rests_on_the_way_back(&self, run: &Run) -> bool {
        let step = self.run_steps(run).get(run.at).map(|s| s.id);
        let rests = [
            StepId::Wipe,
            StepId::Rinse,
            StepId::SampleBack,
            StepId::Compare,
            StepId::GiveBack,
            StepId::PourBack,
        ];
        !run.fault && step.is_some_and(|id| rests.contains(&id))
    }

    fn index_of(&self, run: &Run, ids: &[StepId]) -> usize {
        self.run_steps(run)
            .iter()
            .position(|s| ids.contains(&s.id))
            .unwrap_or(0)
    }
}

fn way_back(guide: &Guide, run: &Run) -> usize {
    guide.index_of(run, &[StepId::GiveBack, StepId::PourBack])
}

fn begun(fact: &RunFact, scene: &Scene) -> Option<Run> {
    let pan = scene.pan(fact.pan).or_else(|| scene.bare(fact.pan))?;
    let machine = scene.machine(fact.machine?)?;
    Some(Run {
        run: fact.run,
        pan: PanNowKept {
            pan: pan.pan.clone(),
            claims: pan.claims.clone(),
        },
        machine: MachineKept(machine.machine.clone()),
        route: fact.route,
        form: fact.form,
        plan: fact.plan,
        limits: fact.limits,
        at: 0,
        // Oil left out is an interruption: everything is looked at before it comes back.
        phase: if fact.place == Place::InPan {
            Phase::Asking
        } else {
            Phase::LookAgain
        },
        place: fact.place,
        contents: fact.contents,
        pump: fact.pump,
        heat: fact.heat,
        reading: None,
        came_out: fact.place != Place::InPan,
        drawn: fact.place != Place::InPan,
        returned: false,
        fault: false,
        stopped: false,
        troubled: false,
        level: None,
        looked: Evidence::new(),
        drew_ms: Some(0),
        moving_since: None,
    })
}

fn take_evidence(run: &mut Run, fact: &RunFact, rec: Millis, lived: Option<&Now>) {
    if let Some(temp) = fact
        .evidence
        .number(Item::OilTemp)
        .and_then(|dc| Temp::from_dc(i16::try_from(dc).ok()?))
    {
        // The entry says when the reading goes stale: it may be older than the entry.
        let read_at = fact.deadline.map_or(rec, |due| due.plus(-super::READING_FRESH_MS));
        let recalled = ReadTemp {
            temp,
            fresh: Wait::recalled(super::READING_FRESH_MS, read_at),
        };
        run.reading = Some(lived.map_or(recalled, |now| {
            let age_ms = now.wall.since(read_at).max(0);
            let then = Now {
                wall: read_at,
                mono: now.mono - age_ms,
                ..*now
            };
            ReadTemp::taken(temp, &then)
        }));
    }
    if let Some(level) = fact.evidence.word(Item::Level) {
        run.level = Some(level);
    }
    run.looked.take_in(&fact.evidence);
}

/// A restart sets pump and heat to unknown until seen, and asks for the look before anything else.
fn recall(run: &mut Run, lived: Option<&Now>) {
    if lived.is_none() {
        run.pump = Pump::Unknown;
        run.heat = Heat::Unknown;
        if run.phase == Phase::Asking {
            run.phase = Phase::LookAgain;
        }
    }
}

/// A wait of no length: a mark of when something was, on both clocks.
const fn mark(rec: Millis, lived: Option<&Now>) -> Wait {
    match lived {
        Some(now) => Wait::begin(0, now),
        None => Wait::recalled(0, rec),
    }
}

/// What the time since the last answer did, before this answer hides it: idleness breaks floor and kit, silence with
/// oil out asks for the look again whatever else is answered first.
fn settle(job: &mut FilterJob, rec: Millis, lived: Option<&Now>) {
    let now = lived.copied().unwrap_or(Now {
        wall: rec,
        mono: 0,
        life: PageLife(0),
        off_min: 0,
    });
    if job.is_idle(&now) {
        job.proved.remove(&Hold::Kit);
        job.proved.remove(&Hold::Floor);
    }
    let touched = job.touched;
    if let Some(run) = job.run.as_mut()
        && run.phase == Phase::Asking
        && run.silent(&touched, &now)
    {
        run.phase = Phase::LookAgain;
    }
}

fn prove(job: &mut FilterJob, fact: &JobFact, entry: &Entry, scene: &Scene) {
    let Some(hold) = fact.hold else { return };
    match hold {
        Hold::Person => {
            if job.who != entry.who {
                job.proved.remove(&Hold::Kit);
                // A new person goes through the long form, and has seen nothing yet.
                if let Some(run) = job.run.as_mut() {
                    run.form = Form::Long;
                    run.looked = Evidence::new();
                }
            }
            job.who = entry.who;
            job.supervisor = fact.supervisor;
            job.practised = fact.supervisor.is_none() && entry.who.is_some_and(|who| scene.is_practised(who));
            job.kept_ready &= job.machine.is_some_and(|id| was_left_by(scene, id, job.who));
        }
        Hold::Match => {
            if job.machine != fact.machine {
                job.proved.remove(&Hold::Dry);
                job.proved.remove(&Hold::Room);
                job.warm = Warm::Cold;
                job.held = None;
                job.line = None;
                job.proved.remove(&Hold::WarmUp);
                let machine = fact.machine.and_then(|id| scene.machine(id));
                job.set_in_line = machine.is_some_and(|m| m.set_in_line);
            }
            job.machine = fact.machine;
            job.strange = !fact.evidence.is(Item::UsedSince, Word::No);
            job.kept_ready = !job.strange && fact.machine.is_some_and(|id| was_left_by(scene, id, job.who));
        }
        Hold::Kit
        | Hold::Floor
        | Hold::Dry
        | Hold::Room
        | Hold::Temperature
        | Hold::HeatOff
        | Hold::Connected
        | Hold::LookAgain
        | Hold::Level
        | Hold::Scraps
        | Hold::Melt
        | Hold::WarmUp
        | Hold::ClearDry
        | Hold::Container
        | Hold::Lift
        | Hold::Water
        | Hold::Chemical => {}
    }
    job.proved.add(hold);
}

/// Whether this person put that machine away ready.
fn was_left_by(scene: &Scene, machine: MachineId, who: Option<PersonId>) -> bool {
    who.is_some() && scene.machine(machine).is_some_and(|m| m.left_ready_by == who)
}
