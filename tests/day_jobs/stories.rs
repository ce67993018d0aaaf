//! Whole days, told one by one.

use panward::domain::day_jobs::{Command, DayJobs, LightPan, Refusal, Stage};
use panward::domain::entry::{Draft, Entry};
use panward::domain::evidence::{Evidence, Item, Seen, Word};
use panward::domain::facts::Fact;
use panward::domain::facts::job::{Grade, JobEvent, JobFact, JobKind};
use panward::domain::facts::oil::{Load, Service};
use panward::domain::facts::run::{Contents, Place};
use panward::domain::fat::Fat;
use panward::domain::guide;
use panward::domain::guide::Scene;
use panward::domain::guide::asking::{Asking, SETTLE_MS, Touched};
use panward::domain::guide::gate::{Gate, QuestionKind};
use panward::domain::ids::JobId;
use panward::domain::procedure::{DayTables, StepId};
use panward::domain::time::{Millis, Now};
use panward::domain::units::Minutes;
use panward::domain::wait::Standing;
use panward::words::Lang;
use panward::words::format::NBSP;
use panward::words::screens::day::heap_warm;

use crate::world::{
    ANN, BOB, LIGHT, LOCK, NEXT_LIGHT, PAN, STARTER, YOUNG, later, reloaded, replayed, scene, start, written,
};

/// A day as it goes on: every order carried out, every touch counted.
struct Day {
    jobs: DayJobs,
    scene: Scene,
    log: Vec<Entry>,
    now: Now,
    touches: u32,
}

impl Day {
    fn new(fat: Fat, contents: Contents) -> Self {
        Self {
            jobs: DayJobs::new(DayTables::REAL),
            scene: scene(fat, Place::InPan, contents),
            log: Vec::new(),
            now: start(),
            touches: 0,
        }
    }

    fn try_to(&mut self, command: &Command) -> Result<(), Refusal> {
        for draft in self.jobs.decide(&self.scene, command, &self.now)? {
            let seq = u32::try_from(self.log.len()).unwrap() + 1;
            let entry = written(draft, seq, &self.now, self.log.last());
            self.jobs.apply(&entry, Some(&self.now));
            self.log.push(entry);
        }
        Ok(())
    }

    fn must(&mut self, command: &Command) {
        self.try_to(command).unwrap_or_else(|no| panic!("{command:?}: {no:?}"));
    }

    fn open(&mut self, job: JobId, what: JobKind) {
        self.must(&Command::Open {
            job,
            what,
            who: ANN,
            supervisor: None,
        });
    }

    fn wait(&mut self, ms: i64) {
        self.now = later(self.now, ms);
    }

    fn kill(&mut self) {
        self.now = reloaded(self.now);
        self.jobs = replayed(DayTables::REAL, &self.log);
    }

    /// Answers a gate as a finger does, first answer unless another is named, and counts.
    fn asked(&mut self, gate: Gate, other: &[(Item, Word)], number: i32) -> Evidence {
        let mut asking = Asking::new(gate, &self.now);
        loop {
            self.wait(SETTLE_MS);
            let question = asking.current(None).unwrap();
            let led_to = match question.kind {
                QuestionKind::Look { item, answers } => {
                    let named = other.iter().find(|(i, _)| *i == item).map(|(_, w)| *w);
                    asking.look(item, named.unwrap_or(answers[0].word), None, &self.now)
                }
                QuestionKind::Together(_) => asking.all_so(None, &self.now),
                QuestionKind::Probe { item } => asking.number(item, number, None, &self.now),
                QuestionKind::Person | QuestionKind::Machine => panic!("not asked here"),
            };
            self.touches += 1;
            match led_to {
                Touched::Kept => {}
                Touched::GoesOn => break,
                Touched::AllAnswered => {
                    self.wait(SETTLE_MS);
                    self.touches += 1;
                    break;
                }
                Touched::Ignored | Touched::NotYet => panic!("{led_to:?}"),
            }
        }
        asking.seen().clone()
    }

    fn light(&mut self, step: StepId, other: &[(Item, Word)]) {
        let gate = self.jobs.light_gate(&self.scene, PAN, &self.now).unwrap().unwrap();
        assert_eq!(gate.id(), step);
        let evidence = self.asked(gate, other, 0);
        self.must(&Command::Light {
            pan: PAN,
            step,
            evidence,
        });
    }

    fn lock(&mut self, step: StepId, number: i32) -> Result<(), Refusal> {
        let asks = self.jobs.lock_asks(&self.scene, &self.now);
        let ask = asks.into_iter().find(|a| a.gate.id() == step).unwrap();
        let evidence = self.asked(ask.gate, &[], number);
        self.try_to(&Command::Lock {
            step,
            pan: ask.pan,
            evidence,
        })
    }

    fn lit(&self) -> &LightPan {
        self.jobs.state().light.as_ref().unwrap().pans.get(&PAN).unwrap()
    }

    fn stage(&self) -> Stage {
        self.lit().stage_at(&self.now)
    }

    fn last_event(&self) -> JobEvent {
        match &self.log.last().unwrap().fact {
            Fact::Job(fact) => fact.event,
            other => panic!("{other:?}"),
        }
    }

    fn left_outdoors(fat: Fat) -> Self {
        let mut day = Self::new(fat, Contents::Oil);
        day.open(LOCK, JobKind::LockUp);
        day.lock(StepId::Scraps, 650).unwrap();
        let gate = day.jobs.scraps_out_gate().unwrap();
        let evidence = day.asked(gate, &[], 0);
        let next_look = day.now.wall.plus(Millis::HOUR);
        day.must(&Command::ScrapsOut {
            evidence,
            looker: BOB,
            next_look,
        });
        day.lock(StepId::LockFloor, 0).unwrap();
        day.lock(StepId::LockPans, 0).unwrap();
        assert_eq!(day.last_event(), JobEvent::LeftOpen);
        day
    }

    fn found(&mut self, word: Word) {
        let evidence = Evidence::new().with(Item::Found, word);
        self.must(&Command::Looked {
            lock_up: LOCK,
            who: BOB,
            evidence,
        });
    }
}

#[test]
fn a_light_up_and_a_lock_up_take_few_touches() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    day.open(LIGHT, JobKind::LightUp);
    day.light(StepId::LightLevel, &[]);
    day.light(StepId::LightOn, &[]);
    println!("light-up, a pan of oil: {} touches", day.touches);
    assert!(day.touches <= 6);

    let mut day = Day::new(Fat::Dripping, Contents::SetFat);
    day.open(LIGHT, JobKind::LightUp);
    day.light(StepId::LightLevel, &[(Item::Melt, Word::Solid)]);
    day.light(StepId::MeltLow, &[]);
    day.light(StepId::MeltLook, &[(Item::Melt, Word::AllLiquid)]);
    day.light(StepId::MeltFull, &[]);
    day.light(StepId::LightOn, &[]);
    println!("light-up, set fat, one look: {} touches", day.touches);
    assert!(day.touches <= 17);

    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    day.open(LOCK, JobKind::LockUp);
    day.lock(StepId::Scraps, 250).unwrap();
    day.wait(10 * Millis::MINUTE);
    day.lock(StepId::ScrapsAgain, 250).unwrap();
    day.lock(StepId::LockFloor, 0).unwrap();
    day.lock(StepId::LockPans, 0).unwrap();
    println!("lock-up, one pan: {} touches and two numbers", day.touches);
    assert!(day.touches <= 6);
    assert_eq!(day.last_event(), JobEvent::Ended);
}

#[test]
fn the_heap_is_cold_under_forty_twice_ten_minutes_apart_and_not_rising() {
    for (first, again, ended) in [
        (399, 399, true),
        (399, 398, true),
        (399, 400, false),
        (398, 399, false),
        (400, 300, false),
        (401, 300, false),
    ] {
        let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
        day.open(LOCK, JobKind::LockUp);
        day.lock(StepId::LockFloor, 0).unwrap();
        day.lock(StepId::LockPans, 0).unwrap();
        day.lock(StepId::Scraps, first).unwrap();
        if first < 400 {
            day.wait(10 * Millis::MINUTE - 2 * SETTLE_MS);
            let early = day.lock(StepId::ScrapsAgain, again);
            assert_eq!(early, Err(Refusal::NotTenMinutes { left_ms: SETTLE_MS }));
            day.lock(StepId::ScrapsAgain, again).unwrap();
        }
        assert_eq!(day.jobs.state().lock.is_none(), ended, "{first} {again}");
    }
}

#[test]
fn a_reading_that_does_not_count_is_remembered_until_one_does() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    day.open(LOCK, JobKind::LockUp);
    let warm = |day: &Day| day.jobs.state().lock.as_ref().unwrap().warm;
    assert_eq!(warm(&day), None);
    day.lock(StepId::Scraps, 550).unwrap();
    assert_eq!(warm(&day), Some(550));
    day.kill();
    assert_eq!(warm(&day), Some(550));
    assert!(
        heap_warm(550, Lang::En)
            .replace(NBSP, " ")
            .contains("55 °C. Cold is under 40 °C.")
    );
    day.lock(StepId::Scraps, 300).unwrap();
    assert_eq!(warm(&day), None);
    day.wait(10 * Millis::MINUTE);
    day.lock(StepId::ScrapsAgain, 350).unwrap();
    assert_eq!(warm(&day), Some(350));
    let said = heap_warm(350, Lang::En).replace(NBSP, " ");
    assert!(said.starts_with("Warmer than before: 35 °C. Spread thin outdoors"));
}

#[test]
fn a_reload_resumes_the_wait_once_somebody_vouched_for_the_time() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    day.open(LOCK, JobKind::LockUp);
    day.lock(StepId::Scraps, 250).unwrap();
    day.wait(10 * Millis::MINUTE);
    day.kill();
    assert_eq!(
        day.lock(StepId::ScrapsAgain, 250),
        Err(Refusal::Guide(guide::Refusal::AskTime))
    );
    day.must(&Command::TimeIs(false));
    assert!(matches!(
        day.lock(StepId::ScrapsAgain, 250),
        Err(Refusal::Guide(_) | Refusal::NotTenMinutes { .. })
    ));
    day.kill();
    day.wait(10 * Millis::MINUTE);
    day.must(&Command::TimeIs(true));
    day.lock(StepId::ScrapsAgain, 250).unwrap();
}

#[test]
fn a_melt_is_looked_at_every_five_minutes_and_again_after_a_reload() {
    let mut day = Day::new(Fat::Dripping, Contents::SetFat);
    day.open(LIGHT, JobKind::LightUp);
    day.light(StepId::LightLevel, &[(Item::Melt, Word::PartLiquid)]);
    day.light(StepId::MeltLow, &[]);
    let due = |day: &Day| day.lit().next_look(&day.now);
    day.wait(5 * Millis::MINUTE - 1);
    assert_eq!(due(&day), Some(Standing::Running { left_ms: 1 }));
    day.wait(1);
    assert_eq!(due(&day), Some(Standing::Over { since_ms: 0 }));
    assert_eq!(day.try_to(&Command::EndLight), Err(Refusal::PanHalfLit { pan: PAN }));
    day.light(StepId::MeltLook, &[(Item::Melt, Word::AllLiquid)]);
    assert_eq!(day.stage(), Stage::MeltFull);
    day.kill();
    assert_eq!((day.stage(), due(&day)), (Stage::Melting, Some(Standing::AskTime)));
    let evidence = Evidence::new().with(Item::Warming, Word::Crackling);
    day.must(&Command::Light {
        pan: PAN,
        step: StepId::MeltLook,
        evidence,
    });
    assert_eq!(day.stage(), Stage::MakeSafe);
    day.light(StepId::LookAgain, &[]);
    day.must(&Command::EndLight);
}

#[test]
fn the_morning_asks_what_was_found_before_any_pan_is_lit() {
    for (found, still_owed) in [(Word::Cold, 0), (Word::Warm, 1), (Word::Burnt, 1)] {
        let mut day = Day::left_outdoors(Fat::Rapeseed);
        day.wait(12 * Millis::HOUR);
        day.kill();
        day.open(NEXT_LIGHT, JobKind::LightUp);
        assert_eq!(day.jobs.light_gate(&day.scene, PAN, &day.now), Err(Refusal::FoundFirst));
        assert!(day.jobs.state().owed[0].is_due(day.now.wall));
        day.found(found);
        assert_eq!(day.jobs.state().owed.len(), still_owed);
        day.light(StepId::LightLevel, &[]);
    }
}

#[test]
fn no_scraps_is_only_said_where_nothing_was_done() {
    let mut day = Day::left_outdoors(Fat::Rapeseed);
    day.found(Word::Cold);
    day.open(NEXT_LIGHT, JobKind::LockUp);
    let gate = day.jobs.no_scraps_gate().unwrap();
    let evidence = day.asked(gate, &[], 0);
    let mut probed = day.jobs.clone();
    day.must(&Command::NoScraps(evidence.clone()));
    let mut fact = JobFact::new(NEXT_LIGHT, JobKind::LockUp, JobEvent::Answered);
    fact.step = Some(StepId::Scraps);
    fact.evidence.put(Item::Heap, Seen::Number(500));
    let draft = Draft::now(None, Fact::Job(Box::new(fact)));
    probed.apply(&written(draft, 99, &day.now, None), Some(&day.now));
    let refused = probed.decide(&day.scene, &Command::NoScraps(evidence), &day.now);
    assert_eq!(refused, Err(Refusal::ScrapsSomewhere));
}

#[test]
fn a_service_worked_leaves_scraps_somewhere() {
    let mut day = Day::left_outdoors(Fat::Rapeseed);
    let service = |at| {
        let fact = Fact::Service(Service {
            pan: PAN,
            fry: Minutes::new(240).unwrap(),
            load: Load::Normal,
            temp: None,
            food_g: None,
        });
        let draft = Draft {
            at: Some(at),
            who: Some(ANN),
            fact,
        };
        written(draft, 99, &day.now, None)
    };
    let (yesterday, today) = (service(start().wall), service(day.now.wall.plus(Millis::HOUR)));
    day.open(NEXT_LIGHT, JobKind::LockUp);
    day.jobs.apply(&yesterday, Some(&day.now));
    assert!(day.jobs.no_scraps_gate().is_some());
    day.jobs.apply(&today, Some(&day.now));
    assert_eq!(day.jobs.no_scraps_gate(), None);
    assert_eq!(
        day.try_to(&Command::NoScraps(Evidence::new())),
        Err(Refusal::ScrapsSomewhere)
    );
}

#[test]
fn not_done_needs_its_reason_and_proves_nothing() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    let note = |how, why: &str| Command::Note {
        job: LOCK,
        what: JobKind::LockUp,
        how,
        why: why.into(),
        who: Some(ANN),
        at: None,
    };
    assert_eq!(day.try_to(&note(Grade::NotDone, "  ")), Err(Refusal::WhyNot));
    day.must(&note(Grade::NotDone, "closed early"));
    day.must(&note(Grade::Unguided, ""));
    assert_eq!(day.jobs.state(), DayJobs::new(DayTables::REAL).state());
    day.open(LOCK, JobKind::LockUp);
    assert_eq!(
        day.try_to(&note(Grade::NotDone, "tired")),
        Err(Refusal::Guide(guide::Refusal::JobOpen))
    );
}

#[test]
fn a_starter_lights_only_beside_a_named_supervisor() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    let open = |who, supervisor| Command::Open {
        job: LIGHT,
        what: JobKind::LightUp,
        who,
        supervisor,
    };
    let refused = |day: &mut Day, who, supervisor| match day.try_to(&open(who, supervisor)) {
        Err(Refusal::Guide(why)) => why,
        other => panic!("{who:?} beside {supervisor:?}: {other:?}"),
    };
    assert!(matches!(
        refused(&mut day, STARTER, None),
        guide::Refusal::NotSignedOff { .. }
    ));
    for not_fit in [STARTER, YOUNG] {
        let why = refused(&mut day, STARTER, Some(not_fit));
        assert_eq!(why, guide::Refusal::SupervisorNotFit);
    }
    // Under eighteen: never with hot oil, whoever stands beside.
    assert_eq!(refused(&mut day, YOUNG, Some(ANN)), guide::Refusal::UnderAge);
    assert!(day.log.is_empty());

    day.must(&open(STARTER, Some(BOB)));
    let proved = day.log.iter().find_map(|entry| match &entry.fact {
        Fact::Job(fact) if fact.event == JobEvent::Proved => Some((entry.who, fact)),
        _ => None,
    });
    let (who, fact) = proved.expect("hold 1 in the log");
    assert_eq!((who, fact.supervisor), (Some(STARTER), Some(BOB)));
    assert!(fact.evidence.is(Item::SignOff, Word::Supervised));
    // Whoever takes over is asked the same.
    let takes_over = |who, supervisor| Command::Who {
        what: JobKind::LightUp,
        who,
        supervisor,
    };
    assert!(day.try_to(&takes_over(YOUNG, Some(ANN))).is_err());
    day.must(&takes_over(ANN, None));
    assert_eq!(day.jobs.state().light.as_ref().and_then(|l| l.who), Some(ANN));
    // A lock-up asks only who it is.
    day.must(&Command::Open {
        job: LOCK,
        what: JobKind::LockUp,
        who: YOUNG,
        supervisor: None,
    });
}

#[test]
fn a_kitchen_that_empties_by_hand_lights_by_its_own_sign_off() {
    let mut day = Day::new(Fat::Rapeseed, Contents::Oil);
    for (person, _) in &mut day.scene.people {
        person.routes.retain(|_| false);
    }
    day.scene.people[0].0.routes = vec![panward::domain::facts::setup::Route::Cold];
    day.open(LIGHT, JobKind::LightUp);
}
