//! Light-up with something wrong: no heat goes on under it, and heat that was on is seen off first.

use panward::domain::day_jobs::{Command, DayJobs, Refusal};
use panward::domain::entry::Draft;
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::JobKind;
use panward::domain::facts::run::{Form, Heat};
use panward::domain::facts::setup::OutBy;
use panward::domain::facts::trouble::TroubleKind;
use panward::domain::fat::Fat;
use panward::domain::guide;
use panward::domain::ids::JobId;
use panward::domain::procedure::{DayTables, StepId, Verdict};
use panward::domain::time::{Millis, Now};
use panward::domain::trouble::Standing;
use proptest::prelude::*;
use proptest::sample::select;

use super::world::{MACHINE, NONE, OWNER, PAN, World, stamp, start, world};
use super::{begins, stops};

const LIGHT: JobId = JobId(7);

struct Morning {
    world: World,
    day: DayJobs,
    now: Now,
    seq: u32,
    stands: Option<TroubleKind>,
    lit: bool,
}

impl Morning {
    fn new(fat: Fat) -> Self {
        let mut morning = Self {
            world: world(OutBy::Nozzle, fat, Form::Long, NONE),
            day: DayJobs::new(DayTables::REAL),
            now: start(),
            seq: 0,
            stands: None,
            lit: false,
        };
        let open = Command::Open {
            job: LIGHT,
            what: JobKind::LightUp,
            who: OWNER,
            supervisor: None,
        };
        morning.order(&open).unwrap();
        morning
    }

    fn write(&mut self, draft: Draft) {
        self.seq += 1;
        let entry = stamp(draft, self.seq, &self.now);
        if let Fact::Job(job) = &entry.fact
            && matches!(job.heat, Some(Heat::On | Heat::Low))
        {
            let stopped = self.stands.is_some_and(|what| stops(what).1);
            assert!(!stopped, "heat on at {:?} under {:?}", job.step, self.stands);
            self.lit |= job.step == Some(StepId::LightOn);
        }
        self.day.apply(&entry, Some(&self.now));
    }

    fn order(&mut self, command: &Command) -> Result<(), Refusal> {
        self.now.wall = Millis(self.now.wall.0 + 1_000);
        self.now.mono += 1_000;
        let drafts = self.day.decide(&self.world.scene, command, &self.now)?;
        drafts.into_iter().for_each(|draft| self.write(draft));
        Ok(())
    }

    /// The pan's gate, answered as it must be; a fat that sets is found set first.
    fn answer(&mut self, set: bool) -> Option<Result<(), Refusal>> {
        let gate = match self.day.light_gate(&self.world.scene, PAN, &self.now) {
            Ok(gate) => gate?,
            Err(why) => return Some(Err(why)),
        };
        let mut evidence = Evidence::new();
        for (step, item, answers) in gate.looks() {
            let solid = set && step == StepId::LightLook && item == Item::Melt;
            let melted = answers.iter().find(|a| a.word == Word::AllLiquid).map(|a| a.word);
            let good = melted.or_else(|| answers.iter().find(|a| a.verdict == Verdict::Good).map(|a| a.word))?;
            evidence.put(item, Seen::Is(if solid { Word::Solid } else { good }));
        }
        let step = gate.id();
        Some(self.order(&Command::Light {
            pan: PAN,
            step,
            evidence,
        }))
    }

    fn heat(&self) -> Option<Heat> {
        Some(self.day.state().light.as_ref()?.pans.get(&PAN)?.heat)
    }

    fn trouble(&mut self, what: TroubleKind) {
        let fact = begins(what, PAN, MACHINE);
        self.stands = Some(what);
        self.world.scene.troubles.push(Standing {
            what,
            pan: fact.pan,
            machine: fact.machine,
            since: self.now.wall,
            looked: false,
        });
        self.write(Draft::now(None, Fact::Trouble(Box::new(fact))));
    }
}

proptest! {
    #[test]
    fn no_heat_goes_on_under_what_stops_it(
        what in select(TroubleKind::ALL),
        at in 0..10_u32,
        set in any::<bool>(),
    ) {
        let fat = if set { Fat::Dripping } else { Fat::Rapeseed };
        let mut morning = Morning::new(fat);
        let mut was_on = false;
        for step in 0..20 {
            if step == at {
                was_on = matches!(morning.heat(), Some(Heat::On | Heat::Low));
                morning.trouble(what);
            }
            let Some(answered) = morning.answer(set) else {
                if step > at { break } else { continue }
            };
            if step >= at && stops(what).1 && answered.is_err() {
                prop_assert_eq!(answered, Err(Refusal::Guide(guide::Refusal::Trouble { what })));
                let heat = morning.heat();
                prop_assert!(matches!(heat, None | Some(Heat::Unknown | Heat::OffSeen)), "{:?}", heat);
                prop_assert!(!was_on || heat == Some(Heat::OffSeen), "heat that was on was not seen off");
                prop_assert_eq!(morning.order(&Command::EndLight), Ok(()));
                return Ok(());
            }
        }
        prop_assert!(!stops(what).1, "{what:?} stopped no heat");
        prop_assert!(morning.lit);
    }
}

#[test]
fn a_pan_whose_cut_out_tripped_waits_for_the_engineer_and_no_other_pan_does() {
    let mut morning = Morning::new(Fat::Rapeseed);
    morning.trouble(TroubleKind::CutOut);
    let what = TroubleKind::CutOut;
    let stopped = Some(Err(Refusal::Guide(guide::Refusal::Trouble { what })));
    assert_eq!(morning.answer(false), stopped);
    morning.stands = None;
    morning.world.scene.troubles[0].pan = Some(panward::domain::ids::PanId(11));
    assert_eq!(
        morning.answer(false),
        Some(Ok(())),
        "another pan's cut-out is no reason"
    );
    morning.world.scene.troubles.clear();
    while !morning.lit {
        assert_eq!(morning.answer(false), Some(Ok(())));
    }
}
