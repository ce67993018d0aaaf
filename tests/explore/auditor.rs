//! A judge that knows nothing of the guide: only the entries, both clocks, true time, and the lines never to be reached.

mod draw;
mod job;
mod lines;

use std::collections::BTreeSet;

use panward::domain::entry::Entry;
use panward::domain::evidence::{Item, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::run::{Heat, Left, Place, Pump, RunEvent, RunFact};
use panward::domain::facts::setup::Route;
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::ids::{MachineId, PersonId};
use panward::domain::procedure::{Hold, StepId};
use panward::domain::time::{Now, PageLife};

use lines::{connected_back, connected_rinse, holds, off};

/// In milliseconds.
pub const MINUTE: i64 = 60_000;

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Trouble {
    None,
    /// Stopped or faulty: nothing but making safe.
    Stopped,
    /// Nothing but the look again.
    Look,
}

/// The machine's heater, in true time.
#[derive(Clone, Copy, Debug)]
pub enum Heater {
    Cold,
    /// On since; `credit_ms` is what a person vouched for, `real` when that was.
    On {
        wall: i64,
        credit_ms: i64,
        real: i64,
        due_wall: i64,
    },
    Off {
        since: Now,
        real: i64,
    },
}

#[derive(Clone, Debug)]
pub struct Auditor {
    pub standing: BTreeSet<Hold>,
    pub who: Option<PersonId>,
    pub beside: Option<PersonId>,
    pub strange: bool,
    pub heater: Heater,
    pub run_open: bool,
    /// Whether oil was ever let out of the pan.
    pub drew: bool,
    pub trouble: Trouble,
    pub faulty: bool,
    pub heat_off: bool,
    pub quiet: bool,
    pub label: bool,
    /// Fat that may have set in the line was seen melted, the machine warm.
    pub melted: bool,
    pub machine: Option<MachineId>,
    /// By which route oil left the pan last.
    pub went: Option<Route>,
    /// The run in hand began with its oil out.
    pub came_out: bool,
    pub reading: Option<(i32, Now, i64)>,
    pub reason: bool,
    pub level: Option<Word>,
    pub place: Place,
    pub pump: Pump,
    pub last: Now,
    pub life: PageLife,
}

pub type Verdict = Result<(), String>;

fn ensure(so: bool, line: &str) -> Verdict {
    if so { Ok(()) } else { Err(line.to_owned()) }
}

/// The fats that set.
pub fn sets(fat: Fat) -> bool {
    matches!(fat, Fat::Palm | Fat::Dripping | Fat::Lard | Fat::Blend)
}

/// The most that either clock says lies between two instants.
pub fn between(then: &Now, now: &Now) -> i64 {
    let page = if then.life == now.life { now.mono - then.mono } else { 0 };
    (now.wall.0 - then.wall.0).abs().max(page)
}

impl Auditor {
    pub fn new(now: &Now) -> Self {
        Self {
            standing: BTreeSet::new(),
            who: None,
            beside: None,
            strange: false,
            heater: Heater::Cold,
            run_open: false,
            drew: false,
            trouble: Trouble::None,
            faulty: false,
            heat_off: false,
            quiet: false,
            label: false,
            melted: false,
            machine: None,
            went: None,
            came_out: false,
            reading: None,
            reason: false,
            level: None,
            place: Place::InPan,
            pump: Pump::Off,
            last: *now,
            life: now.life,
        }
    }

    pub fn oil_out(&self) -> bool {
        self.place != Place::InPan
    }

    /// The page died and lives again.
    pub fn reloaded(&mut self, life: PageLife) {
        self.life = life;
        self.reading = None;
        self.heat_off = false;
        if self.run_open && self.trouble == Trouble::None {
            self.trouble = Trouble::Look;
        }
    }

    /// Judges one entry, written at `now` (`real`: true milliseconds so far), with the reading in it taken at `read`.
    pub fn observe(&mut self, entry: &Entry, now: &Now, real: i64, read: Option<&Now>, scene: &Scene) -> Verdict {
        self.time_passed(now);
        self.last = *now;
        match &entry.fact {
            Fact::Job(fact) => {
                self.job(fact, entry.who, now, real, scene);
                Ok(())
            }
            Fact::Run(fact) => self.run(fact, now, real, read, scene),
            other => Err(format!("a filter job wrote {other:?}")),
        }
    }

    fn time_passed(&mut self, now: &Now) {
        let passed = between(&self.last, now);
        if self.oil_out() {
            if self.run_open && passed >= 5 * MINUTE && self.trouble == Trouble::None {
                self.trouble = Trouble::Look;
            }
        } else {
            let waited = match self.heater {
                Heater::On { due_wall, .. } => (due_wall - self.last.wall.0).max(0),
                Heater::Cold | Heater::Off { .. } => 0,
            };
            if passed - waited >= 20 * MINUTE {
                self.standing.remove(&Hold::Kit);
                self.standing.remove(&Hold::Floor);
            }
        }
    }

    fn run(&mut self, fact: &RunFact, now: &Now, real: i64, read: Option<&Now>, scene: &Scene) -> Verdict {
        let given_up = fact.event == RunEvent::Ended && fact.left == Some(Left::AsWas) && self.place == Place::InPan;
        // Left to set after a fault, with no look at the level: nothing was moved.
        let left_set = fact.event == RunEvent::Ended
            && fact.left == Some(Left::Set)
            && self.faulty
            && self.level.or(fact.evidence.word(Item::Level)).is_none()
            && self.place == Place::InPan;
        let left_out = fact.event == RunEvent::Ended && fact.step == StepId::LeaveOut;
        match (fact.event, self.trouble) {
            (RunEvent::Stopped | RunEvent::Fault | RunEvent::Began, _)
            | (_, Trouble::None)
            | (RunEvent::Resumed, Trouble::Stopped)
            | (RunEvent::Reverified, Trouble::Look) => {}
            (RunEvent::Ended, Trouble::Look) if left_out || left_set => {}
            (RunEvent::Ended, _) if given_up => {}
            (event, trouble) => return Err(format!("{event:?} at {:?} with {trouble:?} (hold 10)", fact.step)),
        }
        let machine = &scene.machine(fact.machine.unwrap()).unwrap().machine;
        let pan = &scene.pans[0].pan;
        let signs = pan.off_signs.map(off);
        let hand = fact.route == Route::Cold;
        if fact.event == RunEvent::Began {
            let out = fact.place != Place::InPan;
            self.run_open = true;
            self.trouble = if out { Trouble::Look } else { Trouble::None };
            self.faulty = out;
            self.came_out = out;
            (self.heat_off, self.quiet, self.label, self.reason) = (false, false, false, false);
            (self.reading, self.level) = (None, None);
        }
        ensure(self.run_open, "an entry of a run that is not open")?;
        if hand {
            ensure(!sets(pan.fat), "a fat that sets, by hand")?;
            let by_machine = self.oil_out() && self.went == Some(Route::Hot);
            ensure(!by_machine, "oil that went out hot, by hand")?;
        }
        self.take_in(fact, now, real, read, &signs);

        let seen = &fact.evidence;
        let work = matches!(fact.event, RunEvent::Answered | RunEvent::Pump | RunEvent::Ended);
        let leaves_pan = (fact.pump == Pump::Drawing && self.pump != Pump::Drawing)
            || (self.place == Place::InPan && fact.place != Place::InPan);
        let pumps = fact.event == RunEvent::Pump && matches!(fact.step, StepId::Connect | StepId::Container);
        if work && (leaves_pan || pumps) {
            self.may_leave(fact, now, real, scene)?;
            (self.drew, self.went) = (true, Some(fact.route));
        }
        let rinses = fact.pump == Pump::Rinsing && self.pump != Pump::Rinsing;
        let returns =
            (fact.pump == Pump::Returning && self.pump != Pump::Returning) || (work && fact.step == StepId::PourBack);
        if work && returns && self.came_out && sets(pan.fat) && machine.heater_w > 0 {
            ensure(
                self.warm(now, real),
                "fat that stood in the machine, and it is not warm",
            )?;
        }
        if work && (rinses || returns) {
            let line = if rinses {
                connected_rinse(machine.out_by)
            } else {
                connected_back(machine.out_by)
            };
            ensure(holds(seen, line), "oil moves with the line not secured (hold 9)")?;
            ensure(
                holds(seen, &signs),
                "oil moves without heat seen off in that entry (hold 8)",
            )?;
            ensure(
                seen.is(Item::PanInside, Word::ClearDry),
                "oil comes to a pan not seen clear and dry",
            )?;
            ensure(
                self.standing.contains(&Hold::Person),
                "oil moves with nobody known (hold 1)",
            )?;
            ensure(self.standing.contains(&Hold::Kit), "oil moves without kit (hold 2)")?;
            ensure(self.fit(fact, scene), "oil moves by somebody not fit for it (hold 1)")?;
        }
        if fact.step == StepId::Wipe && fact.event == RunEvent::Answered {
            ensure(holds(seen, &signs), "wiped without heat seen off (hold 8)")?;
        }
        match fact.event {
            RunEvent::Stopped | RunEvent::Fault => {
                self.trouble = Trouble::Stopped;
                self.heat_off = false;
                if fact.event == RunEvent::Fault {
                    self.faulty = true;
                    for hold in [Hold::Dry, Hold::Room, Hold::Match] {
                        self.standing.remove(&hold);
                    }
                }
            }
            RunEvent::Resumed => self.trouble = Trouble::Look,
            RunEvent::Reverified => {
                ensure(holds(seen, &signs), "looked again without heat seen off (hold 10)")?;
                ensure(
                    hand || seen.is(Item::Pump, Word::Off),
                    "looked again without the pump (hold 10)",
                )?;
                ensure(
                    seen.word(Item::Place).is_some(),
                    "looked again without the oil's place (hold 10)",
                )?;
                let word = seen.word(Item::Place);
                ensure(
                    word == Word::from_key(self.place.key()) || word == seen.word(Item::PlaceAgain),
                    "oil believed elsewhere than the log has it on one look (hold 10)",
                )?;
                let sound = hand || !self.faulty || seen.is(Item::Sound, Word::Whole);
                ensure(sound, "after a fault hose and lid were not seen whole (hold 10)")?;
                self.trouble = Trouble::None;
                (self.heat_off, self.level, self.reading) = (true, None, None);
            }
            RunEvent::Ended => {
                self.run_open = false;
                if fact.place == Place::InPan {
                    ensure(fact.left != Some(Left::OilOut), "oil in the pan, left as out of it")?;
                    if left_set {
                        ensure(sets(pan.fat), "left to set, a fat that does not")?;
                        ensure(holds(seen, &signs), "left to set, heat not seen off")?;
                        let shut = [(Item::Lid, Word::InPlace), (Item::Tag, Word::Hung)];
                        ensure(holds(seen, &shut), "left to set without lid and tag")?;
                    } else if !given_up {
                        ensure(self.level.is_some(), "left without a look at the level (hold 11)")?;
                        let low = self.level == Some(Word::Below);
                        ensure(
                            !low || seen.is(Item::Tag, Word::Hung),
                            "left low without a tag (hold 11)",
                        )?;
                    }
                } else {
                    ensure(fact.left == Some(Left::OilOut), "ended with oil out and not said so")?;
                    ensure(
                        seen.is(Item::Tag, Word::Hung),
                        "ended with oil out and no tag on the pan",
                    )?;
                    ensure(holds(seen, &signs), "left with oil out, heat not seen off")?;
                    ensure(
                        hand || seen.is(Item::Pump, Word::Off),
                        "left with oil out, pump not seen off",
                    )?;
                }
            }
            RunEvent::Began | RunEvent::Answered | RunEvent::Pump => {}
        }
        if matches!(fact.heat, Heat::On | Heat::Low) {
            ensure(fact.place == Place::InPan, "heat on with oil out of the pan")?;
            ensure(
                self.level == Some(Word::Enough),
                "heat on without enough oil seen (hold 11)",
            )?;
        }
        (self.place, self.pump) = (fact.place, fact.pump);
        Ok(())
    }

    fn take_in(&mut self, fact: &RunFact, now: &Now, real: i64, read: Option<&Now>, signs: &[(Item, Word)]) {
        let seen = &fact.evidence;
        if !matches!(fact.event, RunEvent::Fault) && holds(seen, signs) {
            self.heat_off = true;
        }
        self.quiet |= seen.is(Item::Smoke, Word::None);
        self.label |= seen.is(Item::Label, Word::Same);
        if let Some(dc) = seen.number(Item::OilTemp) {
            let read = *read.unwrap_or(now);
            self.reading = Some((dc, read, real - (now.mono - read.mono)));
            self.reason = seen.word(Item::OffTarget).is_some();
        }
        let moved = matches!(
            fact.step,
            StepId::Connect | StepId::Container | StepId::Rinse | StepId::GiveBack | StepId::PourBack
        ) && fact.event == RunEvent::Pump;
        if moved {
            self.level = None;
        }
        if let Some(level) = seen.word(Item::Level) {
            self.level = Some(level);
        }
        if seen.is(Item::Tank, Word::Oil) {
            self.standing.remove(&Hold::Room);
        }
    }
}
