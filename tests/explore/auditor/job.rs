//! What the entries of a job prove and break, and how long its heater has been on.

use panward::domain::evidence::{Item, Word};
use panward::domain::facts::job::{JobEvent, JobFact};
use panward::domain::guide::Scene;
use panward::domain::ids::PersonId;
use panward::domain::procedure::{Hold, StepId};
use panward::domain::time::Now;

use super::lines::{READY_EVIDENCE, holds};
use super::{Auditor, Heater, MINUTE};

impl Auditor {
    pub(super) fn job(&mut self, fact: &JobFact, who: Option<PersonId>, now: &Now, real: i64, scene: &Scene) {
        // A summer kitchen: ten minutes.
        let whole = 10 * MINUTE;
        match fact.event {
            JobEvent::Proved => match fact.hold {
                Some(Hold::Person) if fact.evidence.word(Item::SignOff).is_some() => {
                    if self.who != who {
                        self.standing.remove(&Hold::Kit);
                    }
                    (self.who, self.beside) = (who, fact.supervisor);
                    self.standing.insert(Hold::Person);
                }
                Some(Hold::Match) => {
                    if self.machine != fact.machine {
                        // Another machine: nothing of it is seen yet, and its heater is another one.
                        self.standing.remove(&Hold::Dry);
                        self.standing.remove(&Hold::Room);
                        (self.heater, self.melted) = (Heater::Cold, false);
                    }
                    self.machine = fact.machine;
                    self.strange = !fact.evidence.is(Item::UsedSince, Word::No);
                    self.standing.insert(Hold::Match);
                }
                Some(Hold::WarmUp) => {
                    let seen = holds(
                        &fact.evidence,
                        &[(Item::Line, Word::AllLiquid), (Item::Sound, Word::Whole)],
                    );
                    let heated = scene.machines[0].machine.heater_w > 0;
                    self.melted = seen && (!heated || self.warm(now, real));
                }
                Some(hold) => {
                    let table = READY_EVIDENCE.iter().find(|(h, _)| *h == hold);
                    if table.is_some_and(|(_, wanted)| holds(&fact.evidence, wanted)) {
                        self.standing.insert(hold);
                    }
                }
                None => {}
            },
            JobEvent::Broken => {
                if let Some(hold) = fact.hold {
                    self.standing.remove(&hold);
                }
            }
            JobEvent::HeaterOn => {
                self.heater = Heater::On {
                    wall: now.wall.0,
                    credit_ms: 0,
                    real,
                    due_wall: now.wall.0 + whole,
                };
            }
            JobEvent::HeaterOff => {
                self.heater = match self.heater {
                    Heater::On {
                        credit_ms, real: since, ..
                    } if credit_ms + real - since >= whole => Heater::Off { since: *now, real },
                    Heater::On { .. } | Heater::Cold => Heater::Cold,
                    off @ Heater::Off { .. } => off,
                };
            }
            JobEvent::Answered if fact.step == Some(StepId::WarmUp) => {
                if let Heater::On { wall, credit_ms, .. } = self.heater {
                    let credit_ms = if fact.evidence.is(Item::Clock, Word::Yes) {
                        credit_ms + (now.wall.0 - wall).max(0)
                    } else {
                        0
                    };
                    let due_wall = now.wall.0 + whole - credit_ms;
                    self.heater = Heater::On {
                        wall: now.wall.0,
                        credit_ms,
                        real,
                        due_wall,
                    };
                }
            }
            JobEvent::Opened
            | JobEvent::Answered
            | JobEvent::Away
            | JobEvent::LeftOpen
            | JobEvent::Looked
            | JobEvent::Ended
            | JobEvent::Noted => {}
        }
    }
}
