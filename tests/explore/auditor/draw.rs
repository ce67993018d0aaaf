//! The draw, judged: whether oil may leave its pan, by whom, and into how warm a machine.

use panward::domain::claim::{ClaimKind, Exposure};
use panward::domain::facts::run::RunFact;
use panward::domain::facts::setup::Route;
use panward::domain::fat::Fat;
use panward::domain::guide::Scene;
use panward::domain::ids::PersonId;
use panward::domain::procedure::Hold;
use panward::domain::time::Now;

use super::lines::{connected_out, holds};
use super::{Auditor, Heater, MINUTE, Verdict, between, ensure, sets};

impl Auditor {
    /// Hold 1, worked out afresh.
    pub(super) fn fit(&self, fact: &RunFact, scene: &Scene) -> bool {
        let person = |id: PersonId| scene.people.iter().map(|(p, _)| p).find(|p| p.person == id);
        let Some(who) = self.who.and_then(person) else {
            return false;
        };
        let of_age = who.adult || fact.route == Route::Cold;
        let beside = self
            .beside
            .and_then(person)
            .is_some_and(|b| b.person != who.person && b.adult && b.may_supervise && b.routes.contains(&fact.route));
        of_age && (who.routes.contains(&fact.route) || beside)
    }

    /// The second line never to be reached: oil leaves a pan only with holds 1 to 9 and a warm machine.
    pub(super) fn may_leave(&self, fact: &RunFact, now: &Now, real: i64, scene: &Scene) -> Verdict {
        let machine = &scene.machine(fact.machine.unwrap()).unwrap().machine;
        let pan = &scene.pans[0].pan;
        let hand = fact.route == Route::Cold;
        let ready: &[Hold] = if hand {
            &[Hold::Person, Hold::Kit, Hold::Floor, Hold::Match]
        } else {
            &[Hold::Person, Hold::Kit, Hold::Floor, Hold::Dry, Hold::Room, Hold::Match]
        };
        for hold in ready {
            ensure(
                self.standing.contains(hold),
                &format!("oil leaves the pan, {} not proved", hold.key()),
            )?;
        }
        ensure(
            self.fit(fact, scene),
            "oil leaves the pan by somebody not fit for it (hold 1)",
        )?;
        ensure(self.label, "oil leaves the pan, label not seen (hold 6)")?;
        for claim in &scene.pans[0].claims {
            let gluten = scene.machines[0].met.has(Exposure::Gluten);
            let unknown = self.strange || scene.machines[0].met.has(Exposure::Unknown);
            let met = unknown || (claim.what == ClaimKind::GlutenFree && gluten);
            ensure(!met, "a claim meets what the machine has met (hold 6)")?;
        }
        ensure(self.heat_off, "oil leaves the pan, heat not seen off (hold 8)")?;
        ensure(self.quiet, "oil leaves the pan, smoke not looked for (hold 8)")?;
        let line = connected_out(machine.out_by);
        ensure(
            holds(&fact.evidence, line),
            "oil leaves the pan, line or container not seen (hold 9)",
        )?;
        let Some((dc, read, read_real)) = self.reading else {
            return Err("oil leaves the pan without a reading (hold 7)".into());
        };
        let apart = ((now.wall.0 - read.wall.0) - (now.mono - read.mono)).abs();
        let known = read.life == now.life && apart <= 2_000 && now.wall.0 >= read.wall.0 && now.mono >= read.mono;
        ensure(known, "oil leaves the pan on a reading of unknown age (hold 7)")?;
        let age = between(&read, now).max(real - read_real);
        ensure(age <= 5 * MINUTE, "oil leaves the pan on an old reading (hold 7)")?;
        let solid = sets(pan.fat);
        if hand {
            ensure(dc <= 400, "emptied by hand above 40 °C (hold 7)")?;
            return ensure(!solid, "a fat that sets, emptied by hand");
        }
        let low = i32::from(machine.low.dc()).max(if pan.fat == Fat::Dripping { 650 } else { 0 });
        let high = i32::from(machine.high.dc()).min(2_000);
        ensure(
            (low..=high).contains(&dc),
            "oil leaves the pan outside the window (hold 7)",
        )?;
        let off_target = (dc - i32::from(machine.target.dc())).abs() > 100;
        ensure(!off_target || self.reason, "off target without a reason (hold 7, soft)")?;
        let growth = if high <= 1_500 {
            111
        } else if high <= 1_800 {
            114
        } else {
            116
        };
        let has = u64::from(machine.tank.ml()) * u64::from(10_000 - machine.free.cpc()) * 100;
        ensure(
            has >= u64::from(pan.full.ml()) * growth * 10_000,
            "the tank does not hold the pan (hold 5)",
        )?;
        ensure(
            self.melted || !scene.machines[0].set_in_line,
            "fat set in the line not seen melted",
        )?;
        if solid && machine.heater_w == 0 {
            return ensure(machine.takes_solid, "solid fat in a machine not made for it");
        }
        ensure(
            !self.may_be_set(scene) || self.warm(now, real),
            "fat may have set in the machine, and it is not warm",
        )
    }

    /// Whether what the pan holds, or what the machine held, sets.
    fn may_be_set(&self, scene: &Scene) -> bool {
        sets(scene.pans[0].pan.fat) || scene.machines[0].last_fat.is_some_and(sets)
    }

    pub(super) fn warm(&self, now: &Now, real: i64) -> bool {
        match self.heater {
            Heater::Cold => false,
            Heater::On {
                credit_ms, real: since, ..
            } => credit_ms + real - since >= 10 * MINUTE,
            Heater::Off { since, real: off_real } => {
                since.life == now.life && between(&since, now).max(real - off_real) <= 20 * MINUTE
            }
        }
    }
}
