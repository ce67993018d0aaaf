//! Stray touches, double taps and adversarial clocks, at random.

use panward::domain::evidence::Item;
use panward::domain::facts::run::Form;
use panward::domain::facts::setup::OutBy;
use panward::domain::fat::Fat;
use panward::domain::guide::asking::{Asking, SETTLE_MS, Touched};
use panward::domain::guide::gate::Gate;
use panward::domain::guide::{Command, Guide, Run};
use panward::domain::procedure::Tables;
use panward::domain::time::{Millis, Now, PageLife};
use panward::domain::wait::Wait;
use proptest::prelude::*;

use crate::clean::hard_gates;
use crate::world::{ALL, start, world};

/// One finger-down somewhere on a screen.
#[derive(Clone, Copy, Debug)]
enum Touch {
    /// The n-th answer of the question on screen.
    Answer(usize),
    /// An answer of any question of the gate.
    Anywhere(usize, usize),
    All,
    OneByOne,
    Number(i32),
    GoOn,
}

fn touches() -> impl Strategy<Value = Touch> {
    prop_oneof![
        (0..3_usize).prop_map(Touch::Answer),
        (0..8_usize, 0..3_usize).prop_map(|(q, a)| Touch::Anywhere(q, a)),
        Just(Touch::All),
        Just(Touch::OneByOne),
        (900..2_000).prop_map(Touch::Number),
        Just(Touch::GoOn),
    ]
}

/// Whether the gate was passed by this touch.
fn passes(asking: &mut Asking, touch: Touch, run: Option<&Run>, now: &Now) -> bool {
    use panward::domain::guide::gate::QuestionKind;
    let touched = match touch {
        Touch::Answer(n) => match asking.current(run).map(|q| q.kind) {
            Some(QuestionKind::Look { item, answers }) => answers
                .get(n)
                .map_or(Touched::Ignored, |a| asking.look(item, a.word, run, now)),
            _ => Touched::Ignored,
        },
        Touch::Anywhere(q, n) => {
            let looks = asking.gate().looks();
            let answer = looks
                .get(q)
                .and_then(|(_, item, answers)| answers.get(n).map(|a| (*item, a.word)));
            answer.map_or(Touched::Ignored, |(item, word)| asking.look(item, word, run, now))
        }
        Touch::All => asking.all_so(run, now),
        Touch::OneByOne => asking.one_by_one(run, now),
        Touch::Number(dc) => asking.number(Item::OilTemp, dc, run, now),
        Touch::GoOn => return asking.goes_on(run, now),
    };
    touched == Touched::GoesOn
}

fn later(now: &Now, ms: i64) -> Now {
    Now {
        wall: Millis(now.wall.0 + ms),
        mono: now.mono + ms,
        ..*now
    }
}

/// Every hard hold of a clean run, with the run that stood there. Leaving a full pan unlit opens nothing, and a
/// number has its own accept.
fn gates() -> Vec<(Gate, Option<Run>)> {
    let mut all = Vec::new();
    for form in [Form::Long, Form::Short] {
        all.extend(hard_gates(&world(OutBy::Nozzle, Fat::Rapeseed, form, ALL)));
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn touches_too_soon_after_each_screen_pass_nothing(
        taps in proptest::collection::vec((touches(), 0..SETTLE_MS), 1..40),
    ) {
        for (gate, run) in gates() {
            let mut now = start();
            let mut asking = Asking::new(gate, &now);
            let shown = now.mono;
            for (touch, gap) in &taps {
                now = later(&now, *gap % 40);
                // Repaints do not count: the first screen is what the finger keeps hitting.
                if now.mono - shown < SETTLE_MS {
                    prop_assert!(!passes(&mut asking, *touch, run.as_ref(), &now));
                    prop_assert!(asking.seen().is_empty());
                }
            }
        }
    }

    #[test]
    fn one_touch_and_its_echoes_pass_no_hard_hold(touch in touches(), wait in 0..10_000_i64, echo in 1..SETTLE_MS) {
        for (gate, run) in gates() {
            let now = later(&start(), wait);
            let mut asking = Asking::new(gate, &start());
            prop_assert!(!passes(&mut asking, touch, run.as_ref(), &now));
            // A double tap, or a wet drag over other buttons.
            let soon = later(&now, echo);
            prop_assert!(!passes(&mut asking, touch, run.as_ref(), &soon));
        }
    }

    #[test]
    fn no_clock_ends_a_wait_early(
        steps in proptest::collection::vec((0..400_000_i64, -700_000..700_000_i64, 0..2_u64, any::<bool>()), 1..12),
    ) {
        let mut now = start();
        let wait = Wait::begin(600_000, &now);
        let (mut real, mut by_wall) = (0_i64, 0_i64);
        for (passes, jump, dies, jumps) in steps {
            let jump = if jumps { jump } else { 0 };
            real += passes;
            by_wall += passes + jump;
            now = later(&now, passes);
            now.wall = Millis(now.wall.0 + jump);
            now.life = PageLife(now.life.0 + u64::from(dies == 1 && jumps));
            if wait.is_over(&now) {
                prop_assert!(real >= 600_000 && by_wall >= 600_000);
            }
            // Nobody said the time is right: starting again never ends sooner than it would have.
            prop_assert!(!wait.after_asking(false, &now).is_over(&later(&now, 599_999)));
        }
    }

    #[test]
    fn a_yes_trusts_the_wall_clock_and_no_more(wall in -3_600_000..3_600_000_i64, then in 0..700_000_i64) {
        let began = start();
        let wait = Wait::recalled(600_000, began.wall);
        let asked = Now { wall: Millis(began.wall.0 + wall), mono: 7, life: PageLife(9), off_min: 0 };
        let sure = wait.after_asking(true, &asked);
        prop_assert_eq!(sure.is_over(&later(&asked, then)), wall.max(0) + then >= 600_000);
    }
}

#[test]
fn a_guide_with_no_job_has_nothing_to_stop() {
    let world = world(OutBy::Nozzle, Fat::Rapeseed, Form::Long, ALL);
    assert!(
        Guide::new(Tables::REAL)
            .decide(&world.scene, &Command::Stop, &start())
            .is_err()
    );
}
