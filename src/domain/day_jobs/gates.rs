//! What is asked now, as gates of the guide's own kind.

use super::state::{LightPan, ScrapsAre, Stage};
use super::{DayJobs, Owed, Refusal};
use crate::domain::evidence::Word;
use crate::domain::facts::run::{Contents, Place};
use crate::domain::facts::setup::Pan;
use crate::domain::fat::Fat;
use crate::domain::guide::gate::{Gate, Question, grouped, single};
use crate::domain::guide::scene::PanNow;
use crate::domain::guide::{self, Scene};
use crate::domain::ids::PanId;
use crate::domain::procedure::Step;
use crate::domain::time::Now;
use crate::domain::wait::Standing;

/// A gate of the lock-up, and the pan it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LockAsk {
    /// The gate.
    pub gate: Gate,
    /// The pan, for [`crate::domain::procedure::StepId::LockPans`].
    pub pan: Option<PanId>,
}

impl DayJobs {
    /// A look owed that the open light-up has not asked about yet.
    #[must_use]
    pub fn found_first(&self) -> Option<&Owed> {
        let light = self.state.light.as_ref()?;
        self.state.owed.iter().find(|o| o.asked_by != Some(light.job))
    }

    /// What a look at scraps left outdoors asks.
    #[must_use]
    pub fn found_gate(&self) -> Gate {
        gather(&[self.tables.found], None)
    }

    /// What is asked of a pan in the light-up now; nothing once it is lit.
    ///
    /// # Errors
    /// No light-up open, scraps to be looked at first, no such pan, or a pan that must not be lit.
    pub fn light_gate(&self, scene: &Scene, pan: PanId, now: &Now) -> Result<Option<Gate>, Refusal> {
        let light = self.state.light.as_ref().ok_or(guide::Refusal::NoJob)?;
        let pan_now = scene.pan(pan).ok_or(guide::Refusal::NoSuchPan)?;
        let begun = light.pans.get(&pan);
        // Whatever else is owed, heat under a pan is seen to first.
        if begun.is_none_or(|p| !p.is_half_lit()) {
            if self.found_first().is_some() {
                return Err(Refusal::FoundFirst);
            }
            if pan_now.contents == Contents::CleaningWater {
                return Err(Refusal::WaterInPan);
            }
            if stands_empty(pan_now) {
                return Err(Refusal::PanEmpty);
            }
            if self.state.in_run.contains(&pan) {
                return Err(Refusal::PanInRun);
            }
            if self.state.in_job.contains(&pan) {
                return Err(Refusal::PanInJob);
            }
            if let Some(what) = scene.stops_heat(pan) {
                return Err(guide::Refusal::Trouble { what }.into());
            }
        }
        let set_up = Some(&pan_now.pan);
        let stage = begun.map_or(Stage::Look, |p| safe_stage(p, pan_now, now));
        let tables = &self.tables;
        Ok(match stage {
            Stage::Look | Stage::LeftLow => {
                let look = if may_be_set(pan_now) {
                    tables.look_solid
                } else {
                    tables.look
                };
                Some(gather(&[look, tables.level], set_up))
            }
            Stage::LowTag => Some(gather(&[tables.low_tag], set_up)),
            Stage::MeltLow => {
                let low = if pan_now.blocks {
                    tables.melt_blocks
                } else {
                    tables.melt_low
                };
                Some(gather(&[low], set_up))
            }
            Stage::Melting => Some(gather(&[tables.melt_look], set_up)),
            Stage::MeltFull => Some(gather(&[tables.melt_full], set_up)),
            Stage::On => Some(gather(&[tables.on], set_up)),
            Stage::MakeSafe => {
                let low = begun.is_some_and(|p| p.level == Some(Word::Below)) || stands_empty(pan_now);
                Some(gather(&[if low { tables.off_tagged } else { tables.off }], set_up))
            }
            Stage::Lit => None,
        })
    }

    /// Everything the lock-up still asks, the next thing first: other steps run beside the ten minutes.
    #[must_use]
    pub fn lock_asks(&self, scene: &Scene, now: &Now) -> Vec<LockAsk> {
        let Some(lock) = &self.state.lock else {
            return Vec::new();
        };
        let tables = &self.tables;
        let alone = |step| LockAsk {
            gate: gather(&[step], None),
            pan: None,
        };
        let mut asks = Vec::new();
        let running = matches!(lock.wait.map(|w| w.standing(now)), Some(Standing::Running { .. }));
        if lock.scraps.is_none() && !running {
            asks.push(alone(if lock.wait.is_some() {
                tables.scraps_again
            } else {
                tables.scraps
            }));
        }
        if !lock.floor {
            asks.push(alone(tables.floor));
        }
        for pan in scene.pans.iter().filter(|p| !lock.pans.contains(&p.pan.pan)) {
            let step = if stands_empty(pan) {
                tables.pans_tagged
            } else {
                tables.pans
            };
            asks.push(LockAsk {
                gate: gather(&[step], Some(&pan.pan)),
                pan: Some(pan.pan.pan),
            });
        }
        if lock.scraps.is_none() && running {
            asks.push(alone(tables.scraps_again));
        }
        asks
    }

    /// What "no scraps tonight" asks; nothing once hold 12 is proved, or where there must be some.
    #[must_use]
    pub fn no_scraps_gate(&self) -> Option<Gate> {
        let lock = self.state.lock.as_ref()?;
        let may_be_none = lock.scraps.is_none() && !lock.probed && !self.state.worked;
        may_be_none.then(|| gather(&[self.tables.no_scraps], None))
    }

    /// What "still warm" asks, beside a name and a time; nothing once they were proved cold.
    #[must_use]
    pub fn scraps_out_gate(&self) -> Option<Gate> {
        let lock = self.state.lock.as_ref()?;
        let open = matches!(lock.scraps, None | Some(ScrapsAre::Out { .. }));
        open.then(|| gather(&[self.tables.scraps_out], None))
    }
}

/// The stage, save that a pan whose oil went away while heat was under it is made safe first.
pub(super) fn safe_stage(pan: &LightPan, pan_now: &PanNow, now: &Now) -> Stage {
    if pan.is_half_lit() && stands_empty(pan_now) {
        Stage::MakeSafe
    } else {
        pan.stage_at(now)
    }
}

/// Whether a pan must not be lit: oil out of it, or none in it.
pub(super) fn stands_empty(pan: &PanNow) -> bool {
    let filled = match pan.contents {
        Contents::Oil | Contents::SetFat => true,
        Contents::CleaningWater | Contents::EmptyWet | Contents::EmptyDry => false,
    };
    pan.place != Place::InPan || !filled
}

/// Whether its fat can have set: the solid fats, what was left to set, and palm olein, whose slip point reaches 24 °C
/// (PORAM standard specifications) and which a cold kitchen turns solid.
fn may_be_set(pan: &PanNow) -> bool {
    pan.pan.fat.is_solid() || pan.pan.fat == Fat::PalmOlein || pan.contents == Contents::SetFat
}

/// One gate of some steps; what is seen at one place is named in one answer.
fn gather(steps: &[&'static Step], pan: Option<&Pan>) -> Gate {
    let mut holds = Vec::new();
    let mut plain: Vec<(u8, Question)> = Vec::new();
    for step in steps {
        let asked = single(step, pan);
        plain.extend(step.asks.iter().map(|a| a.together).zip(asked.questions));
        for hold in asked.holds {
            if !holds.contains(&hold) {
                holds.push(hold);
            }
        }
    }
    Gate {
        steps: steps.to_vec(),
        questions: grouped(plain),
        holds,
    }
}
